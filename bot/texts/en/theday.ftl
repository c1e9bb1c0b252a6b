help-out = a dish is on the table: its clock starts
help-safety = cautions for this table, and who says so
help-reminders = hosts: the reminders ahead
out-which = Which dish is on the table, or off it again?
out-started = { $dish } is on the table.
out-started-until = { $dish } is on the table: eat it, chill it or heat it through by { $until }; after that throw it out.
out-stopped = { $dish } is off the table after { $minutes } minutes in all, which stay counted.
button-put-away = Cold or hot again
safety-head = <b>Cautions</b> – a planning aid, not a licensed food service; local rules come first.
safety-row = { $severity ->
    [block] ✋
    [warn] ⚠
   *[note] •
} { $what } <i>({ $source })</i>
reminders-head = { $n ->
    [one] One reminder ahead:
   *[other] { $n } reminders ahead:
}
reminders-none = No reminders are ahead.
