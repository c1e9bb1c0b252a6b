# $since, $until clock times; $minutes between them; $long for a refrigerator
outage-was = <b>No power from { $since } to { $until }: { $minutes } minutes.</b> { $long ->
    [yes] That is more than 4 hours: what is perishable in the refrigerator is thrown out; never taste to find out.
   *[no] A refrigerator that stayed shut holds for 4 hours; one that was opened: measure it, 40 °F (4 °C) is the limit.
} <i>({ $source })</i>
# $minutes without heat so far, $limit in all
outage-in-time = ⚠ <b>{ $dish }</b> lost its heat: { $minutes } of { $limit } minutes are gone, and stay counted. Finish it on the stove or in an oven right now, at a full boil and in one go, not slowly in a slow cooker; if that has not begun by { $until }, throw it out.
outage-over = ✋ <b>{ $dish }</b> lost its heat: { $minutes } minutes in all, and { $limit } are the limit. Throw it out, however it looks and smells; cooking it on does not mend that.
# $n how many dishes were named above
outage-rest = { $n ->
    [0] What was hot or half cooked then
   *[other] What else was hot or half cooked then
} counts these minutes, too: half cooked, it is finished at once and in one go, or thrown out; nobody eats of it half cooked. <i>({ $source })</i>
outage-planned = The plan counts on everything again.
