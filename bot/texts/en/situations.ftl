# Food in some state, told or asked in free words. $dish as promised or as said; $minutes out so far of $limit; $until;
# $temp and $temp_c what was measured; $target and $target_c what it has to reach; $metric (yes, no).

sit-target = { $metric ->
    [yes] { $target_c } °C
   *[no] { $target } °F
}
sit-everything = everything that stood out
sit-yours = what you measured
sit-line-one = { $line } <i>({ $source })</i>
sit-over = <b>{ $dish }</b>: out for { $minutes } minutes, and { $limit } are the limit. Throw it out, however it looks and smells; heating it again does not mend it.
sit-over-store = <b>{ $dish }</b>: { temp-said } is above { at-40 }, the figure for cold food, and by what you say it was for longer than { $limit } minutes. Throw it out, however it looks and smells; cooking it does not mend it. Ice cream and frozen yogurt that went soft, and whatever raw meat juices ran onto, are thrown out in any case.
sit-running = <b>{ $dish }</b>: out for { $minutes } minutes as far as I was told, and { $limit } are the limit. Eat it, chill it or heat it through to { at-165 } by { $until }; after that throw it out.
sit-ask = <b>{ $dish }</b>: since when has it been out? { $limit } minutes in all are the limit, the car and the counter counted. If it was longer, or nobody knows, throw it out.
sit-hot = <b>{ $dish }</b>: being kept hot counts if it stayed at { at-140 } or more the whole time; measure it now. What is left goes into the refrigerator in shallow containers within two hours of coming off the heat and keeps { $days } { $days ->
    [one] day
   *[other] days
} there. If it was below { at-140 } for more than { $limit } minutes, throw it out.
sit-cold = <b>{ $dish }</b>: being kept cold counts if it stayed at { at-40 } or below; measure it. Once above that it has { $limit } minutes in all, then throw it out. In the refrigerator what is left keeps { $days } { $days ->
    [one] day
   *[other] days
}.
sit-keeps = <b>{ $dish }</b>: by its name it has no two-hour clock. Whoever made it knows what is in it; when in doubt, throw it out.
sit-below = <b>{ $dish }</b>: { temp-said } is not enough. It has to reach { sit-target } inside, in the thickest part and away from the bone, measured in two places. Back on the heat until then; nobody eats of it before. If its heat was off meanwhile, or it cooled down again, for more than { $limit } minutes in all, or nobody knows how long: throw it out.
sit-reached = <b>{ $dish }</b>: the figure to reach is { sit-target } inside, and { temp-said } is { $exact ->
    [yes] exactly that
   *[no] above it
}. Measure the thickest part in two places; the lowest figure counts.{ $rest ->
    [0] {""}
   *[other] {" "}When both reach it, it comes off the heat and rests { $rest } minutes before it is carved.
}
sit-cool = <b>{ $dish }</b>: { temp-said } is too cool; hot food is kept at { at-140 } or more. If it has been below that for less than { $limit } minutes in all, heat it through to { at-165 } right now on a stove or in an oven, not in a slow cooker, and then keep it at { at-140 }. If it was longer, or nobody knows, throw it out.
sit-held = <b>{ $dish }</b>: { temp-said } is above { at-140 }, the figure for hot food. Keep it on the heat that works and measure again; once it is below { at-140 } it has { $limit } minutes in all.
sit-warm = <b>{ $dish }</b>: { temp-said } is too warm; cold food is kept at { at-40 } or below. If it has been above that for less than { $limit } minutes in all, eat it or chill it now. If it was longer, or nobody knows, throw it out.
sit-chilled = <b>{ $dish }</b>: { temp-said } is within the figure for cold food, { at-40 }. Keep it there; once above that it has { $limit } minutes in all.
sit-raw = <b>{ $dish }</b>: don’t serve it yet. Color says little; cook it on to { sit-target } inside, by a thermometer in the thickest part, and until then nobody eats of it.
sit-frozen = <b>{ $dish }</b>: don’t thaw it on the counter or in hot water. In cold water, in a tight bag, it takes about 30 minutes a pound{ $known ->
    [yes] {" "}(whole and frozen through: about { $hours } hours, until about { $until })
   *[no] {""}
}; change the water every 30 minutes and cook it at once. In the refrigerator it takes a day for every 4 pounds. It does not go into a slow cooker while it is frozen.
sit-icy = <b>{ $dish }</b>: not done. Leave it in the oven, or put it there now, covered with foil, until it measures { sit-target } in the middle; hot edges say nothing, and until then nobody eats of it. Serve the rest first.
sit-freezer = <b>{ $dish }</b>: keep it only if it still has ice crystals inside or measures { at-40 } or below by a thermometer in its middle, not by touch. If it was warmer than that for more than { $limit } minutes, or nobody knows, throw it out; cooking it does not mend it. What is thawed and still cold is cooked at once.
sit-freezer-any = Freezer or refrigerator open or off: close it now, and check each thing with a thermometer. Keep what still has ice crystals inside or measures { at-40 } or below; throw out what was above that for more than two hours, or of which nobody knows, ice cream that went soft, and whatever raw meat juices ran onto. Never taste to find out. <i>({ $source })</i>
sit-limit = <b>{ $dish }</b>: { $limit } minutes in all, the car and the counter counted{ $known ->
    [yes] ; { $minutes } are gone, so until { $until }
   *[no] {""}
}. After that throw it out. On ice, at { at-40 } or below, its clock does not run.

sit-weather = { $set ->
    [yes] Noted: { temp-said } outside.
   *[no] At { temp-said } outside:
} { $hot ->
    [yes] From { at-90 } on, what spoils may be out for 60 minutes in all, the car counted, not two hours. Bring it out in small amounts, cold food on ice at { at-40 } or below, hot food at { at-140 } or more, and throw out what was out longer.
   *[no] What spoils may be out for two hours in all, the car counted.
}{ $n ->
    [0] {""}
   *[other] {" "}On the list: { $dishes }.
} <i>({ $source })</i>
sit-oven-kept = Noted that oven { $oven } is about { $off } { $cold ->
    [yes] colder
   *[no] hotter
} than it says: from now on the plan and my reminders name the figure to set on its dial. Give it longer to heat up and leave an oven thermometer inside; what counts is the figure inside the food. <i>({ $source })</i>
sit-oven-cold = Noted that the oven is about { $off } colder than it says: set it { $off } higher than the plan and my reminders say, give it longer to heat up, and leave an oven thermometer inside. Dishes may take longer: what counts is the figure inside the food. <i>({ $source })</i>
sit-oven-hot = Noted that the oven is about { $off } hotter than it says: set it { $off } lower than the plan and my reminders say, and leave an oven thermometer inside. What counts is the figure inside the food. <i>({ $source })</i>
sit-off-by = { $metric ->
    [yes] { $n } °C
   *[no] { $n } °F
}
