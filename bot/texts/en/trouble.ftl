# Something goes wrong on the day. What it changes follows below the first line.

help-trouble = something went wrong, like “/trouble the oven broke”; you get what it changes and what to do now
trouble-which = What happened?
button-oven-out = The oven is out
button-power-out = Power cut
button-burnt = A dish is lost
button-no-show = Somebody is missing
button-more-people = More people
button-rain = Rain: move inside
button-works-again = It works again
refused-trouble-words = Say what happened, like “/trouble the oven broke”, “/trouble the lasagna is burnt”, “/trouble power cut”, “/trouble 10 more people”, “/trouble Ravi isn't coming” or “/trouble rain”.
refused-no-oven-left = There is no oven on the list any more; /kitchen says what there is.
refused-which-oven = There are { $most } ovens; say which one, like “/trouble oven 1 broke”.
refused-nothing-failed = Nothing in the kitchen is down as broken; “/kitchen 1 oven” says what there is.
refused-nobody-missing = Nobody is waited for any more.
trouble-oven = <b>The oven is out.</b> { $left ->
    [0] There is none left. Take out what is in it; what is hot keeps its two hours, then it is thrown out.
    [one] One is left. Take out what is in the broken one; what is hot keeps its two hours.
   *[other] { $left } are left. Take out what is in the broken one; what is hot keeps its two hours.
}
trouble-power = <b>Power cut.</b> Keep the refrigerator and the freezer shut: closed, a refrigerator holds for 4 hours. Hot food has two hours without heat, in a slow cooker too; then it is thrown out; what is half cooked is finished elsewhere at once or thrown out. When the power is back, tell me; after 4 hours what is perishable in the refrigerator goes. Planned as if the stove were out as well; say /kitchen if it burns gas.
trouble-works-again = <b>It works again.</b> What stood between { from-40-to-140 } for two hours is thrown out all the same.{ $power ->
    [yes] {" "}If the refrigerator was without power for more than 4 hours, perishable food in it is thrown out, too; never taste to find out.
   *[other] {""}
}
trouble-which-dish = Which dish?
trouble-who = Who isn't coming?
trouble-how-many = How many more?
trouble-burnt = <b>{ $dish } is off the table.</b>
trouble-no-show = <b>{ $name } isn't coming.</b>{ $n ->
    [0] {" "}Nothing is missing because of it.
   *[other] {" "}Not on the table: { $dishes }.
}
trouble-more = <b>{ $n } more at the door.</b> Ask them what they can't eat before they take a plate.
trouble-rain = <b>It moves inside{ $has-place ->
    [yes] : { $place }
   *[no] {""}
}.</b> Carry in cold dishes first, then what is hot and covered; keep doors and the way to the stove free. No charcoal or gas grill comes in, not to a garage, tent or porch either: it burns outside or not at all.
trouble-inside-already = It is planned inside already; nothing changes.
name-at-the-door = more at the door
did-trouble = { $what }
day-nothing-else = Nothing else changes.
day-conflict = ⚠ { $why } → { $fix }
day-way-out = → { $fix }
day-short = Now short by { $n ->
    [one] one serving
   *[other] { $n } servings
}: { $what }.
day-none-left = <b>No { $what } is left.</b> Smallest change: { $category ->
    [main] buy one ready to eat (roast chicken, filled rolls; beans and rice for who eats no meat)
   *[other] buy one ready to eat (bread, a bagged salad, canned beans)
}, or whoever lives near cooks one.
# $need a diet or an allergen, $n people
day-need-none = <b>{ $n ->
    [one] One person with “{ $need }” has
   *[other] { $n } people with “{ $need }” have
} no { $what } listed for them any more.</b> Buy or cook one for them first, and ask what they can eat.
day-short-too = Short, too: { $what }.
day-smaller = Serve about { $percent } % of a usual portion, and seconds only when everybody has eaten.
day-moved-head = <b>Moved:</b>
day-soon-head = <b>In the next ten minutes:</b>
trouble-slow-cooker = <b>A slow cooker is out.</b> { $left ->
    [0] There is none left.
    [one] One is left.
   *[other] { $left } are left.
} What was hot in it until now has two hours: bring it to a boil on the stove, or eat it. If nobody knows since when it is cold, throw it out: cooking it again does not mend that.
trouble-gas = <b>The gas is out.</b> Burners and grill are down; the oven stays in the plan – say /kitchen if it burns gas too.
refused-no-slow-cooker-left = There is no slow cooker on the list; /kitchen says what there is.
day-too-little = Smaller plates are not enough: buy something that needs no cooking, or ask who lives near.
trouble-power-back = <b>The power is back.</b> If the refrigerator was without it for more than 4 hours, throw out the perishable food in it: meat, fish, eggs, milk, cooked dishes and salads; never taste to find out. Hot food that stood without heat for two hours goes, too, and what was half cooked and stood is not cooked on. <i>({ $source })</i>
trouble-fridge = <b>The refrigerator is out.</b> Keep it shut: closed it holds for 4 hours, and after that what is perishable in it is thrown out; never taste to find out. Before that: into another one, or into coolers with ice at { at-40 } or below. <i>({ $source })</i>{ $n ->
    [0] {""}
   *[other] {" "}To be kept cold here: { $dishes }.
}
trouble-burners = <b>A burner is out.</b> { $left ->
    [0] None is left.
    [one] One is left.
   *[other] { $left } are left.
}
refused-no-burner-left = There is no burner on the list any more; /kitchen says what there is.
trouble-dry = <b>It goes outside again.</b> The clocks of food outdoors hold: say “/weather { $metric ->
    [yes] 33 °C
   *[no] 92 °F
}” how warm it is, until then I reckon with the careful figure. Cold dishes go out last, on ice. If the place is another again, say /where.
trouble-outside-already = It is planned outside already; nothing changes.
# $raw: raw meat, fish or egg in it; $rule what it must reach inside
day-half = { $raw ->
    [yes] ✋ <b>{ $dish } was in since { $since } and is half cooked.</b> Go on cooking it at once, in one go, in another oven, on the stove or on a grill outdoors. { $rule } If that can’t begin right away, throw it out: never keep it half cooked to finish later. <i>({ $source })</i>
   *[no] ✋ <b>{ $dish } was in since { $since } and is not done.</b> Finish it at once in another oven, on the stove or on a grill outdoors; what is left half cooked is not kept for later, and two hours without heat are the end of it. <i>({ $source })</i>
}
