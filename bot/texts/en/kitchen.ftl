# Conflicts in the kitchen and the ways out. Facts: $dish; $number and $kind of the step; others as named.

kitchen-frozen-weight = “{ $dish }”: { so-heavy } frozen is more than we can believe or plan.
kitchen-too-heavy = “{ $dish }”: { so-heavy } is more than the roasting timetable knows.
kitchen-unknown-kind = “{ $dish }”, step { $number }: “{ $kind }” is not a kind of step we know.
# $minutes
kitchen-minutes = “{ $dish }”, step { $number } ({ $kind }): { $minutes } minutes cannot be right.
kitchen-unknown-place = “{ $dish }”, step { $number }: “{ $at }” is neither at home nor at the venue.
# $temp, $likely
kitchen-temperature-typo = “{ $dish }”, step { $number }: no oven goes to { temp-said }{ $likely ->
        [0] .
       *[other] . Is { temp-likely } meant?
    }
kitchen-celsius = “{ $dish }”, step { $number }: { $temp } °F looks like a figure in °C. { $temp } °C would be { $likely } °F.
kitchen-temperature = “{ $dish }”, step { $number } ({ $kind }): { temp-said } cannot be right.
kitchen-hold-too-cool = “{ $dish }”, step { $number }: { temp-said } is too cool to keep food hot; { temp-least } is the least.
kitchen-home-after-venue = “{ $dish }” has a step at home after one at the venue.
kitchen-thaw-after-heat = “{ $dish }” is thawed after it is heated.
kitchen-no-oven = { $several ->
    [yes] { $dishes } need an oven
   *[no] “{ $dish }” needs an oven
}, and there is none.
# $pans, $most
kitchen-too-many-pans = “{ $dish }” needs room for { $pans } pans at once, and the largest oven holds { $most }.
kitchen-no-burner = { $several ->
    [yes] { $dishes } need the stove
   *[no] “{ $dish }” needs the stove
}, and there is no burner.
kitchen-no-grill = { $several ->
    [yes] { $dishes } need a grill
   *[no] “{ $dish }” needs a grill
}, and there is none.
kitchen-no-slow-cooker = { $several ->
    [yes] { $dishes } need a slow cooker
   *[no] “{ $dish }” needs a slow cooker
}, and there is none.
kitchen-no-microwave = { $several ->
    [yes] { $dishes } need a microwave
   *[no] “{ $dish }” needs a microwave
}, and there is none.
kitchen-no-hands = { $several ->
    [yes] { $dishes } need somebody’s hands
   *[no] “{ $dish }” needs somebody’s hands
}, and nobody is down to cook.
kitchen-nothing-to-hold-in = { $several ->
    [yes] { $dishes } are to be kept warm
   *[no] “{ $dish }” is to be kept warm
}, and there is neither an oven nor a slow cooker for it.
# $watts
kitchen-watts = “{ $dish }”, { $watts } W cannot be right.
kitchen-no-outlet = { $several ->
    [yes] { $dishes } need an outlet
   *[no] “{ $dish }” needs an outlet
}, and there is none.
# $watts, $most
kitchen-too-much-power = “{ $dish }” draws { $watts } W, and no circuit carries more than { $most } W for long.
# A stretch of time: $hours, $minutes (0 to 59)
kitchen-span = { $hours ->
    [0] { $minutes ->
        [one] { $minutes } minute
       *[other] { $minutes } minutes
    }
    [one] { $hours } hour{ $minutes ->
        [0] {""}
       *[other] {" "}{ $minutes } min
    }
   *[other] { $hours } hours{ $minutes ->
        [0] {""}
       *[other] {" "}{ $minutes } min
    }
}
# $span late, $need-span and $left-span, $short (oven, slow-cooker, burner, microwave, grill, hands, power, other)
kitchen-late = “{ $dish }” cannot be ready in time: it comes { $span } late{ $short ->
        [oven] , because the oven is taken.
        [slow-cooker] , because the slow cookers are taken.
        [burner] , because the burners are taken.
        [microwave] , because the microwave is taken.
        [grill] , because the grill is taken.
        [hands] , because nobody has a hand free.
        [power] , because the circuits are full.
       *[other] . Its steps do not fit in before then.
    }
kitchen-too-long = “{ $dish }” needs { $need-span }, and only { $left-span } are left before serving: it comes { $span } late.
kitchen-arrives-late = “{ $dish }” arrives when the food is already to be on the table.
# $span off heat
kitchen-off-heat = “{ $dish }” would stand off the heat for { $span } before it is served{ $short ->
        [oven] , because the oven is taken.
        [slow-cooker] , because the slow cookers are taken.
        [burner] , because the burners are taken.
        [microwave] , because the microwave is taken.
        [grill] , because the grill is taken.
        [hands] , because nobody has a hand free.
        [power] , because the circuits are full.
       *[other] .
    }
# $litres needed and $room there, about; $dishes a list; $at_time, $at_weekday
kitchen-fridge-full = The refrigerator holds about { $metric ->
    [yes] { $room } l
   *[no] { $room_ft } cu ft
}, and { $dishes } need about { $metric ->
    [yes] { $litres } l
   *[no] { $litres_ft } cu ft
} (an estimate) from { $at_time } on { $at_weekday ->
    [0] Monday
    [1] Tuesday
    [2] Wednesday
    [3] Thursday
    [4] Friday
    [5] Saturday
   *[6] Sunday
}.
# What is frozen: $lb, $days by the rule, $given (a span of time), $by_time and $by_weekday; $water_time, $water_weekday
# and $hours for cold water
kitchen-thaw-short = “{ $dish }” ({ so-heavy }, frozen) is given { $given } to thaw, and the rule is a day in the refrigerator for every { $metric ->
    [yes] 1.8 kg
   *[no] 4 lb
}: { $days ->
    [one] one day
   *[other] { $days } days
}.
kitchen-thaw-late = “{ $dish }” ({ so-heavy }, frozen) needs { $days ->
    [one] one day
   *[other] { $days } days
} in the refrigerator to thaw: it had to be there by { $by_time } on { thaw-by-weekday }.
thaw-by-weekday = { $by_weekday ->
        [0] Monday
        [1] Tuesday
        [2] Wednesday
        [3] Thursday
        [4] Friday
        [5] Saturday
       *[6] Sunday
    }
thaw-water-weekday = { $water_weekday ->
        [0] Monday
        [1] Tuesday
        [2] Wednesday
        [3] Thursday
        [4] Friday
        [5] Saturday
       *[6] Sunday
    }
# $n: a figure nobody can mean
kitchen-servings = “{ $dish }”: { $n } servings cannot be right.
kitchen-out-min = “{ $dish }”: { $n } minutes out of the cold or off the heat cannot be right.
# $name of the guest
kitchen-party = { $name }: a party of { $n } cannot be right.
kitchen-travel = { $name }: { $n } minutes on the way cannot be right.
kitchen-need-count = A diet or an allergy is down for more people than any party has.
kitchen-expected = { $n } people expected cannot be right.
kitchen-price = { $item }: a price of { $n } cannot be right.

fix-figure = Please correct the figure.
fix-correct = Please correct the step.
fix-correct-arrival = Please correct when it arrives.
fix-temperature = Set it to { temp-likely }, if that was meant.
fix-smaller = Two smaller ones of up to { $metric ->
    [yes] { $most_kg } kg
   *[no] { $most } lb
} thaw and cook in time.
fix-thaw-longer = Move it from the freezer to the refrigerator by { $by_time } on { thaw-by-weekday }.
fix-cold-water = If it is still frozen: cold water, changed every 30 minutes, for { $hours } hours, from { $water_time } on { thaw-water-weekday } at the latest; then cook it at once.
fix-thawed = If it is still frozen, plan something else or buy it thawed.
fix-hold-hotter = Hold it at { temp-least } or hotter.
fix-cook-ahead = { $several ->
    [yes] Cook { $dishes } ahead
   *[no] Cook it ahead at home
}, chill it, and reheat it to { at-165 }{ $again ->
    [oven] {" "}in the oven
    [stove] {" "}on the stove
    [microwave] {" "}in the microwave
    [home] {" "}at home
   *[other] {""}
}.
fix-split = { $rounds ->
    [1] Split it over { $ovens } ovens.
   *[other] Bake it in { $rounds } rounds, { $in_all } in all{ $many ->
        [yes] , or ask others to bake part of it at home
       *[no] {""}
    }.
}
fix-borrow-slow-cooker = Borrow a slow cooker.
# $by-span, $until_time, $until_weekday, $that_day (yes: on the day of the potluck)
fix-later = Serve { $by-span } later, at { $until_time }.
fix-arrive-earlier = Have it there { $by-span } earlier, by { $until_time }{ $that_day ->
        [yes] .
       *[no] {" "}on { $until_weekday ->
            [0] Monday
            [1] Tuesday
            [2] Wednesday
            [3] Thursday
            [4] Friday
            [5] Saturday
           *[6] Sunday
        }.
    }
fix-keep-hot = Keep it hot until it is served, at { at-140 } or more: in a slow cooker, or covered in an oven at { at-200 }.
fix-more-hands = Ask one more person to lend a hand.
fix-another-circuit = Plug it in on another circuit, in another room.
fix-borrow-oven = Borrow time in a neighbor’s oven{ $several ->
    [yes] {" "}for { $dishes }.
   *[no] .
}
fix-cook-at-home = { $several ->
    [yes] Ask for { $dishes } to be cooked at home and brought hot in preheated insulated coolers, { at-140 } or more.
   *[no] Ask for it to be cooked at home and brought hot in a preheated insulated cooler, { at-140 } or more.
}
fix-fewer = Have fewer dishes heated here that late: cook them ahead or elsewhere, or plan cold ones.
fix-leave-out = Plan something else, which needs no heat at that time.
# $dishes, $several, $dish; $at_time when the first would begin, $bed_time
kitchen-asleep = { $several ->
    [yes] { $dishes } would begin only at { $at_time } or later
   *[no] “{ $dish }” would begin only at { $at_time }
}, and the kitchen is down as asleep from { $bed_time } on.
# $out is a list of dishes
fix-cooler-cold = Keep { $out } in a cooler with plenty of ice, at { at-40 } or colder, until serving.
fix-second-fridge = Ask a neighbor for room in a second refrigerator: { $out }.
fix-cooler = Bring it hot in a preheated insulated cooler, { at-140 } or more.
