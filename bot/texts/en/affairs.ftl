host-asked = { $name }, will you take over as host? Press below; until then nothing changes.
host-offered = { $name } offers to take over. { $host } decides.
button-hand-over = { $name } is the host
host-new-place = It is still at { $place }. If it is elsewhere now, the new host says so, like “/where 5 Elm Court”.
place-of = { $name }’s place
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
