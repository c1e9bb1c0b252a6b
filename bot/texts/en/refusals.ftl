# Every refusal is one sentence that says what to do.

refused-no-potluck = There is no potluck here yet; start one with /potluck and a date, like “/potluck Sat 18 Sep 5pm, about 24 people”.
refused-no-potluck-private = I know of no potluck of yours; press a button on the board in your group first.
refused-potluck-in-private = A potluck lives in a group: add me to your group and write /potluck there.
refused-command = I don’t know /{ $command }; /help lists what I can do.
refused-in-group-only = /{ $command } works in the group; write it there.
refused-in-private-only = /{ $command } works in our private chat; open it from a button on the board.
refused-anonymous = You are writing as the group itself, so I can’t tell who you are; switch off “remain anonymous” and say it again.
refused-not-host = { $has-host ->
    [no] Only a host or a group administrator may change that; ask one of them.
   *[yes] Only { $host } (the host), a co-host or a group administrator may change that; ask one of them.
}
refused-not-yours = Only { $name } or a host may change that; ask them to say it.
refused-not-your-dish = “{ $dish }” belongs to { $name }; only they or a host may change it.
refused-not-guest = Say first whether you are coming, with a button on the board.
refused-cancelled = This potluck was cancelled; start a new one with /potluck.
refused-over = This potluck is over; start a new one with /potluck.
refused-edited-potluck = The potluck stands; change it with /when, /where or /size instead of editing the message.
refused-edited-late = You have done something since, so the edit changes nothing; write it anew, or /undo first.
refused-same-hour = There is a potluck at that hour already; change it with /when, /where or /size.
refused-oven-temperature = { $temp } degrees is not an oven's; write it like “375” or “190 °C”.
refused-past = That is already past; give a date and time still ahead.
refused-far = That is more than two years ahead; give a nearer date.
refused-end = The end must come after the start and within a day of it.
refused-size = Give a number of people from { $low } to { $high }.
refused-setting = Say “indoors” or “outdoors”.
refused-temperature = Give an outdoor temperature between { $metric ->
    [yes] −40 and 54 °C
   *[no] −40 and 130 °F
}.
refused-answer-by = The date to answer by must lie between now and the start.
refused-budget = Give the budget as an amount, like “/budget 120”.
refused-kitchen = Give each number from 0 to { $most }.
refused-kitchen-words = I could not read “{ $words }”; write it like “1 oven, 2 slow cookers, 4 burners”.
refused-heat-words = Write it like “/heat lasagna: 40 minutes at 375, covered, then rest 10 minutes”.
refused-frozen-words = Write it like “/frozen turkey 14 lb”.
refused-arrive = Give a time of that day before it is over, like “/arrive 4pm”.
refused-unknown-person = I don’t know { $has-name ->
    [no] that person
   *[yes] “{ $name }”
} here; use the name as it stands on the board, or add them with /add.
refused-known-person = “{ $name }” is already on the list; choose a name that tells them apart.
refused-already-host = { $name } is a host already.
refused-no-account = { $has-name ->
    [no] That person
   *[yes] { $name }
} has not written here yet, so I can’t make them a host; ask them to press a button on the board first.
refused-has-account = { $name } answers for themselves; ask them to press “Can't”.
refused-name-somebody = Name somebody, or reply to one of their messages.
refused-empty = That is empty; write some words.
refused-too-long = That is too long; use at most { $most } characters.
refused-party = Give whole numbers from { $low } to { $high } for each age group.
refused-party-words = I could not read “{ $words }”; write it like “2 adults and 1 child”.
refused-empty-party = Somebody must come; if nobody does, press “Can't”.
refused-too-many-guests = That is more than { $most } guests; a second potluck may carry the rest.
refused-too-many-promises = That is more than { $most } dishes; drop one first.
refused-too-many-toppings = That is more than { $most } toppings; drop one first.
refused-too-many-items = That is more than { $most } entries; remove one first.
refused-category = I don’t know that kind of dish; choose one of the buttons.
refused-servings = Give servings from 1 to { $most }.
refused-weight = Give a weight up to 100 lb (45 kg).
refused-no-dish = Name the dish, like “/bring slaw for 12”.
refused-no-promise = That dish is no longer on the list; /list shows what is.
refused-no-promises = Nobody has promised a dish yet.
refused-no-own-promise = You have no dish on the list yet; /bring adds one.
refused-which-promise = Which one: { $dishes }? Write it again with the name of the dish.
refused-no-such-promise = I find no “{ $words }” on the list; there is { $dishes }.
refused-what-to-bring = I could not tell the dish in “{ $words }”; write it like “slaw for 12”.
refused-not-a-dish = “{ $words }” does not sound like something for the table; write it like “slaw for 12”.
refused-whom = Say { $joint } whom, like “slaw { $joint } Mei”, or reply to their message.
refused-not-coming = { $name } is not coming; choose somebody else.
refused-already-shared = { $name } already shares “{ $dish }”.
refused-contains = Write it like “/contains slaw: cabbage, mayonnaise, mustard”.
refused-need = I don’t know the need “{ $words }”; write it like “vegetarian” or “no peanuts”.
refused-add-whom = Say whom, like “/add my mother” or “/add Sam, 2 adults and 1 child”.
refused-invite-whom = Say whom you expect, like “/invite Ravi, Mei and Tom”, or how many, like “/invite 24”.
refused-remove-whom = Say whom, like “/remove Sam”.
refused-answer-for = Write it like “/answer Pat no”.
refused-no-bar = There is no toppings bar yet; a host opens one with “/bar baked potato”.
refused-no-base = Name the base, like “/bar baked potato”.
refused-topping-taken = { $name } already brings { $topping }; choose another.
refused-no-topping = Nobody has taken “{ $topping }”.
refused-empty-combo = A combo needs at least one topping.
refused-combo-words = Write it like “/bar combo Garden Gate: chives, sour cream”.
refused-nothing-to-undo = You have nothing to undo from the last two days.
refused-undo-not-last = You have done something since; /undo takes back the latest first.
refused-undo-changed = Somebody has changed the same thing since, so I can’t take it back; change it by hand.
refused-button = This button does not belong to this chat; use the ones on your own board.
refused-button-old = This button is too old; use the ones on the board.
refused-button-not-yours = This button is somebody else’s; use the ones on the board.
refused-drawn = That was the tenth picture or paper in a short time: the newest one above still holds; ask again in a minute.
refused-flood = That was more at once than I read from one person or group: please wait a minute, then send once more what matters; I have passed over this one and what follows it.
refused-link-late = That link was good for three days only; ask again in the group and you get a new one.
refused-link-of-another = That link was made for somebody else; take the one on the board, or ask in the group for one of your own.
refused-link = This link leads nowhere any more; take a new one from the board.
refused-not-member = This is for people of that group; if you are in it, press a button on its board first.
refused-zone = I don’t know the clock of “{ $value }”; name a large city near you, like “Chicago”.
refused-hour = I could not read the hour in “{ $value }”; write it like “5pm” or “17:00”.
refused-setting-name = I can set { $names }; write it like “/settings timezone Chicago”.
refused-units = Say “/settings units us” or “/settings units metric”.
refused-language = I can speak { $languages }; write it like “/settings language en”.
refused-quiet = Write it like “/settings quiet 22:00-07:00”, or “/settings quiet off”.
refused-money = I could not read the amount “{ $words }”; write it like “23.40”.
refused-currency = Payments here are in { $currency }; give the amount in that.
refused-price-words = Write it like “/price potatoes 4.50 per 5 lb bag”.
refused-nothing-paid = Nobody has paid for anything yet; write it like “/paid 23.40 charcoal”.
refused-amount-of-what = Say of what, like “/amount potatoes”.
refused-unknown-item = I have no figure for “{ $words }”; try a plainer word, like “potato salad”.

trouble-storage = I can’t save anything just now; please try again in a minute.
trouble-inside = That went wrong on my side and nothing was changed; please try again.
