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
trouble-power = <b>Power cut.</b> Keep the refrigerator and the freezer shut: closed, a refrigerator holds for 4 hours (POWER-01). Hot food has two hours without heat, in a slow cooker too (TIME-01); then it is thrown out. Planned as if the stove were out as well; say /kitchen if it burns gas.
trouble-works-again = <b>It works again.</b> What stood between 40 and 140 °F for two hours is thrown out all the same.
trouble-which-dish = Which dish?
trouble-who = Who isn't coming?
trouble-how-many = How many more?
trouble-burnt = <b>{ $dish } is off the table.</b>
trouble-no-show = <b>{ $name } isn't coming.</b>{ $n ->
    [0] {" "}Nothing is missing because of it.
   *[other] {" "}Not on the table: { $dishes }.
}
trouble-more = <b>{ $n } more at the door.</b> Ask them what they can't eat before they take a plate.
trouble-rain = <b>It moves inside.</b> Carry in cold dishes first, then what is hot and covered; keep doors and the way to the stove free.
trouble-inside-already = It is planned inside already; nothing changes.
name-at-the-door = more at the door
did-trouble = { $what }
day-nothing-else = Nothing else changes.
day-conflict = ⚠ { $why } → { $fix }
day-short = Now short by { $n ->
    [one] one serving
   *[other] { $n } servings
}: { $what }.
day-smaller = Serve about { $percent } % of a usual portion, and seconds only when everybody has eaten.
day-moved-head = <b>Moved:</b>
day-soon-head = <b>In the next ten minutes:</b>
trouble-slow-cooker = <b>A slow cooker is out.</b> { $left ->
    [0] There is none left.
    [one] One is left.
   *[other] { $left } are left.
} What was hot in it has two hours from now (TIME-01): bring it to a boil on the stove, or eat it.
trouble-gas = <b>The gas is out.</b> Burners and grill are down; the oven stays in the plan – say /kitchen if it burns gas too.
refused-no-slow-cooker-left = There is no slow cooker on the list; /kitchen says what there is.
day-too-little = Smaller plates are not enough: buy something that needs no cooking, or ask who lives near.
