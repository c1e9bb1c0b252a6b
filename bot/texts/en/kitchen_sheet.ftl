help-kitchen = the oven plan; “/kitchen 1 oven, 2 slow cookers” says what there is
help-heat = how your dish is heated, like “/heat lasagna: 40 minutes at 375”
help-frozen = your dish is frozen, like “/frozen turkey 14 lb”
help-arrive = when you arrive with your dishes, like “/arrive 4pm”
ovenplan-noted = Noted: ovens { $ovens }, burners { $burners }, slow cookers { $slow }, microwaves { $microwaves }, cooks { $cooks }.
ovenplan-head = <b>Kitchen for { $serve }</b>{ $n ->
    [0] {" "}– nothing to heat so far; cooks add it with /heat.
   *[other] { $status ->
        [impossible] {" "}– this does not work yet:
       *[other] {""}
    }
}
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
ovenplan-late = ⚠ { $dish }: { $late } minutes late, { $wait } minutes off heat too long
heat-noted = Noted for { $dish }: { $steps }.
heat-step = { $what } { $minutes } min{ $has-temp ->
    [yes] {" "}at { $temp }
   *[no] {""}
}
frozen-noted = { $dish }, { $lb } lb frozen: { $days ->
    [one] one day
   *[other] { $days } days
} in the refrigerator; you will be reminded.
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
