help-picture = a picture of the table; /picture kitchen for the cooking
help-calendar = the potluck for your phone’s calendar
help-print = hosts: run sheet, table cards, menu, shopping list, name tags

picture-table = <b>{ $title }</b> – the table so far, { $when }
picture-kitchen = <b>{ $title }</b> – the kitchen, serving { $when }
picture-names-needs = It tells whose each need is, for the cooking; the picture asked for in the group does not.
button-picture-table = Picture of the table
button-picture-kitchen = Picture of the kitchen
button-own-list = My list, privately
refused-picture-words = I can draw the table with /picture and the cooking with /picture kitchen.

print-which = What should I print? Each comes as a PDF.
button-print-run = Run sheet
button-print-cards = Table cards
button-print-bar = Bar menu
button-print-shop = Shopping list
button-print-tags = Name tags
button-print-all = Everything
print-private = It is in your private chat with me.
print-run = Run sheet for the kitchen – { $title }
print-cards = Table cards, to cut and fold – { $title }. They show what is listed and who said so.
print-bar = Menu for the bar – { $title }
print-shop = Shopping list – { $title }
print-tags = Name tags for dishes, so that they find home – { $title }
refused-print-words = I print the run sheet, table cards, bar menu, shopping list and name tags; /print alone shows them.

calendar-own = { $title } for your calendar, with what you bring and your reminders. Ask again after a change: it replaces the older entry.
calendar-all = { $title } for everybody’s calendar. Ask again after a change: it replaces the older entry.
calendar-private = The calendar file is in your private chat with me.
