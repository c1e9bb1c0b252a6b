help-add = add somebody without an account, like “/add my mother”
help-invite = name people you wait to hear from
help-remove = take out somebody who was added
help-answer = answer for somebody you know, like “/answer Pat no”
person-added = Added: { $name } ({ $party }).
person-removed = Taken out: { $name }.
invited = { $n ->
    [0] They are all on the list already.
   *[other] Waiting to hear from { $names }.
}
answered-for = { $name }: { $answer ->
    [yes] coming
    [maybe] maybe
   *[no] can’t come
}.
told-answered-for = { $by } answered for you: { $answer ->
    [yes] coming
    [maybe] maybe
   *[no] can’t come
}. Change it with a button on the board.
