help-out = a dish is on the table: its clock starts
help-safety = cautions for this table, and who says so
help-why = who says so, like “/why slaw”, or in reply to what I said
help-reminders = hosts: the reminders ahead
out-which = Which dish is on the table, or off it again?
out-started = { $dish } is on the table.
# $spent: minutes counted before
out-started-until = { $dish } is on the table{ $spent ->
    [0] {""}
   *[other] , and { $spent } minutes before that count
}: eat it, chill it or heat it through by { $until }; after that throw it out.
out-over = { $dish } has been out for { $minutes } minutes in all: its time is over. Throw it out.
out-all = { $n ->
    [one] One clock is running.
   *[other] { $n } clocks are running.
} The first to be over: { $dishes }, at { $until }. You will be told before; /out takes a dish off the table again.
out-all-over = ✋ <b>Over the limit: { $dishes }.</b> Throw { $n ->
    [one] it
   *[other] them
} out, however { $n ->
    [one] it looks and smells
   *[other] they look and smell
}; heating it again does not mend it.
out-all-running = Every dish with a clock is on the table already.
out-stopped = { $dish } is off the table after { $minutes } minutes in all, which stay counted.
button-table = It's on the table now
button-all-out = Everything is on the table now
button-way-too = It was warm on the way: { $n } min
button-why = Who says so?
button-put-away = Cold or hot again
safety-head = <b>Cautions</b> – a planning aid, not a licensed food service; local rules come first.
safety-row = { $severity ->
    [block] ✋
    [warn] ⚠
   *[note] •
} { $what } <i>({ $source })</i>
safety-more = … and { $n } more; /why with a dish shows all of it.
why-head = <b>Who says so</b>
why-row = • { $has-what ->
    [yes] { $what } – by the rule
   *[no] The rule
} “{ $text }{ $has-value ->
    [yes] : { $value }
   *[no] {""}
}” <i>({ $source }; { $rule })</i>
why-more = … and { $n } more.
refused-why = I know of no rule about that. Write /why in reply to what I said, or /why with a dish or one of these: { $topics }.
# $n dishes, $until when somebody whose last symptom was just now may cook, $late: that is after the start
ill-noted = Get well soon. Who was ill like that cooks for nobody until two days after the last symptom: from today that is { $until }{ $late ->
    [yes] , after we eat
   *[no] {""}
} ({ $source }). { $n ->
    [0] You are not down for any food.
   *[other] Please let somebody else make { $dishes }: /give hands it over, /drop takes it off.
}
ill-follows = Please don’t: no food goes to others out of a kitchen where somebody is ill like that, not what was made just before either (the careful reading), and who is ill, or cares for them, stays home. Two days after the last symptom it is over: from now that is { $until }{ $late ->
    [yes] , after we eat
   *[no] {""}
}. Somebody else may bring something in its place. ({ $source })
button-ill-off = Take { $dish } off
ill-off = { $dishes }: off the list. { $has-short ->
    [yes] Now short: { $short }.
   *[no] {""}
}
reminders-head = { $n ->
    [one] One reminder ahead:
   *[other] { $n } reminders ahead:
}
reminders-none = No reminders are ahead.
