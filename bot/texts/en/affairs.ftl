host-asked = { $name }, will you take over as host? Press below; until then nothing changes.
host-offered = { $name } offers to take over. { $host } decides.
button-hand-over = { $name } is the host
host-new-place = It is still at { $place }. If it is elsewhere now, the new host says so, like “/where 5 Elm Court”.
place-of = { $name }’s place
place-of-what = { $name }’s { $what }
when-dish = As planned now:
when-dish-unknown = { $dish } has no hour in the kitchen: nobody has told me how it is heated. Say it like “/heat { $dish }: oven 40 min at 375”.{ $frozen ->
    [yes] {" "}When to take it out of the freezer, a message tells its cook in time.
   *[no] {""}
}
whose-asked = Whose it is, its owner says here, please.
eat-ask-them = { $known ->
    [yes] { $held } What { $name } can’t eat is { $name }’s to say: ask there.
   *[no] What { $name } can’t eat is { $name }’s to say: ask there. /table shows what is in the dishes.
}
eat-none-told = { $name } told me of no needs. That is not to say there are none: ask.
eat-for-guest = For { $name }, going by what is listed:
eat-told-private = I wrote it to you in private.
when-dish-conflict = { $dish } finds no place in the kitchen as it is planned now: /kitchen says why and what would help.
cohost-awaited = { $name } is a co-host from the first message they write here.
# $lb pounds frozen, $days in the refrigerator, $when the last moment for it, $hours in cold water
thaw-when = { $dish }, { $lb } lb frozen: { $past ->
    [yes] it should have been in the refrigerator by { $when }, { $days } days before it is cooked. Move it now; what is still hard then goes into cold water in a tight bag, the water changed every 30 minutes, about { $hours } hours for all of it, and is cooked at once.
   *[no] into the refrigerator by { $when }, as a day is needed for every 4 pounds ({ $days } days). A message tells you then. In cold water it takes about { $hours } hours, the water changed every 30 minutes, and it is cooked at once.
} <i>({ $source })</i>
thaw-rule = { $dish }: in the refrigerator a day for every 4 pounds, done before it is cooked for { $when }. Write how many pounds are frozen (“{ $dish }, 16 lb, frozen”), and a message tells you in time. Never on the counter. <i>({ $source })</i>
appliance-when = { $on }: so that { $dish } goes in at { $at }, as planned now. Whoever hosts gets a message then; /now and /next tell it at any time.
