help-kitchen = the oven plan; “/kitchen 1 oven, 2 slow cookers” says what there is
ovenplan-noted = Noted: ovens { $ovens }, burners { $burners }, slow cookers { $slow }, microwaves { $microwaves }, cooks { $cooks }{ $fridge ->
    [0] {""}
   *[other] , refrigerator { $fridge } l
}.
# $n steps planned, $asked dishes whose heating nobody has told
ovenplan-off = Oven { $oven } is { $off } { $cold ->
    [yes] colder
   *[no] hotter
} than it says: the figures here are those to set on its dial.
ovenplan-head = <b>Kitchen for { $serve }</b>{ $n ->
    [0] {" "}– { $asked ->
        [0] nothing to heat so far; cooks add it with /heat.
       *[other] nothing is planned yet.
    }
   *[other] { $status ->
        [impossible] {" "}– this does not work yet:
       *[other] {""}
    }
}
ovenplan-more-conflicts = ⚠ { $n ->
    [one] One more dish does not fit either.
   *[other] { $n } more do not fit either.
}
ovenplan-more = … and { $n } more; /print has them all.
ovenplan-assumed = Usual time for { $dishes } ({ $source }). Cooks say it better, like “needs 40 minutes at 375”.
ovenplan-asked = { $n ->
    [one] Not planned, as its cook has not said how it is heated. It is usually about this long (common practice, no source):
   *[other] Not planned, as their cooks have not said how they are heated. They are usually about this long (common practice, no source):
}
ovenplan-estimate = ? { $dish }: { $steps }
# What was done: $kind of the way out, $dish, $when (for later), $minutes
ovenplan-mended = { $kind ->
    [later] Noted: the food is served at { $when }.
    [more-hands] Noted: one more person cooks.
    [borrow-slow-cooker] Noted: one more slow cooker.
    [borrow-oven] Noted: one more oven.
    [another-circuit] Noted: one more circuit.
    [arrive-earlier] Noted: { $dish } comes { $minutes } minutes earlier.
    [temperature] Noted: { $dish } is baked at the temperature that was meant.
    [hold-hotter] Noted: { $dish } is kept at { at-140 }.
    [thaw-longer] Noted: { $dish } thaws for as long as the rule says.
    [cook-ahead] Noted: { $dish } is cooked the day before, chilled, and heated through to { at-165 } here.
    [cook-at-home] Noted: { $dish } is cooked at home and comes hot in a cooler.
   *[cooler] Noted: { $dish } comes hot in a cooler.
}
fix-not-needed = That is no longer needed.
button-fix-later = Serve { $n } minutes later
button-fix-more-hands = One more person cooks
button-fix-borrow-slow-cooker = One more slow cooker
button-fix-borrow-oven = One more oven
button-fix-another-circuit = One more circuit
button-fix-arrive-earlier = { $dish } comes earlier
button-fix-temperature = { $dish }: as was meant
button-fix-hold-hotter = { $dish }: kept hotter
button-fix-thaw-longer = { $dish }: thaws for longer
button-fix-cook-ahead = { $dish }: cooked the day before
button-fix-cook-at-home = { $dish }: comes hot in a cooler
button-fix-cooler = { $dish }: comes in a cooler
button-heat-venue = { $dish }: heated here
button-heat-home = At home
ovenplan-step = { $start }–{ $end } { $dish }: { $what }{ $has-where ->
    [yes] , { $where }
   *[no] {""}
}{ $has-temp ->
    [yes] , { $temp }
   *[no] {""}
}{ $home ->
    [yes] {" "}(at home)
   *[no] {""}
}
ovenplan-conflict = ⚠ { $why } → { $fix }
ovenplan-too = { $fix } { $other }
ovenplan-or = { $fix } Or: { $other }
ovenplan-late = ⚠ { $dish }: { $late } minutes late, { $wait } minutes off heat too long
heat-step = { $what } { $minutes } min{ $has-temp ->
    [yes] {" "}at { $temp }
   *[no] {""}
}
step-oven = oven
step-stove = stove
step-slow-cooker-low = slow cooker on low
step-slow-cooker-high = slow cooker on high
step-microwave = microwave
step-grill = grill
step-rest = rest
step-prep = prepare
step-keep-warm = keep warm
step-chill = chill
step-thaw = thaw
step-transport = on the way
step-serve = serve
appliance-oven = oven { $n }
appliance-burner = burner { $n }
appliance-stove = burner { $n }
appliance-slow-cooker = slow cooker { $n }
appliance-microwave = microwave { $n }
appliance-grill = grill { $n }
appliance-own = own { $kind }
