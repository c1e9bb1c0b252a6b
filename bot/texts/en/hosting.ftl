help-when = when it is; hosts change it, like “/when Sun 4pm”
help-where = where it is; hosts change it
help-size = about how many people to plan for
help-title = give it a name
help-answerby = the date to answer by
help-budget = what may be spent, like “/budget 120”
help-cohost = make somebody a co-host, or no longer
help-host = hand the potluck to another host
help-cancel = call it off, after a question
when-changed = New date: { $when }.
setting-changed = { $setting ->
    [outdoor] Noted: outdoors.
   *[indoor] Noted: indoors.
}
title-changed = It is called “{ $title }” now.
answer-by-set = People are asked to answer by { $when }.
budget-set = Budget: { $money }.
button-cancel-yes = Yes, call it off
button-cancel-no = No, keep it
cancel-sure = Call off { $when }, with { $dishes ->
    [0] nothing promised yet
    [one] one dish promised
   *[other] { $dishes } dishes promised
}?
cancel-not = It stays on.
cancelled = { $name } called it off: { $when }.
cancelled-toast = Called off.
cohost-new = { $name } is a co-host now.
cohost-gone = { $name } is no longer a co-host.
host-new = { $name } is the host now.
