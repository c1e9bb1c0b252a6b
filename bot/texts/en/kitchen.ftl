# Conflicts in the kitchen and the ways out. Facts: $dish; $number and $kind of the step; others as named.

kitchen-frozen-weight = “{ $dish }”: { $lb } lb frozen is more than we can believe or plan.
kitchen-unknown-kind = “{ $dish }”, step { $number }: “{ $kind }” is not a kind of step we know.
# $minutes
kitchen-minutes = “{ $dish }”, step { $number } ({ $kind }): { $minutes } minutes cannot be right.
kitchen-unknown-place = “{ $dish }”, step { $number }: “{ $at }” is neither at home nor at the venue.
# $temp, $likely
kitchen-temperature-typo = “{ $dish }”, step { $number }: no oven goes to { $temp } °F{ $likely ->
        [0] .
       *[other] . Is { $likely } °F meant?
    }
kitchen-celsius = “{ $dish }”, step { $number }: { $temp } looks like °C. That would be { $likely } °F.
kitchen-temperature = “{ $dish }”, step { $number } ({ $kind }): { $temp } °F cannot be right.
kitchen-hold-too-cool = “{ $dish }”, step { $number }: { $temp } °F is too cool to keep food hot; { $least } °F is the least.
kitchen-home-after-venue = “{ $dish }” has a step at home after one at the venue.
kitchen-thaw-after-heat = “{ $dish }” is thawed after it is heated.
kitchen-no-oven = “{ $dish }” needs an oven, and there is none.
# $pans, $most
kitchen-too-many-pans = “{ $dish }” needs room for { $pans } pans at once, and the largest oven holds { $most }.
kitchen-no-burner = “{ $dish }” needs the stove, and there is no burner.
kitchen-no-grill = “{ $dish }” needs a grill, and there is none.
kitchen-no-slow-cooker = “{ $dish }” needs a slow cooker, and there is none.
kitchen-no-microwave = “{ $dish }” needs a microwave, and there is none.
kitchen-no-hands = “{ $dish }” needs somebody’s hands, and nobody is down to cook.
kitchen-nothing-to-hold-in = “{ $dish }” is to be kept warm, and there is neither an oven nor a slow cooker for it.
# $watts
kitchen-watts = “{ $dish }”, { $watts } W cannot be right.
kitchen-no-outlet = “{ $dish }” needs an outlet, and there is none.
# $watts, $most
kitchen-too-much-power = “{ $dish }” draws { $watts } W, and no circuit carries more than { $most } W for long.
# $minutes late, $need and $left (minutes), $short (oven, slow-cooker, hands, power, other)
kitchen-late = “{ $dish }” cannot be ready in time: it comes { $minutes ->
        [one] { $minutes } minute
       *[other] { $minutes } minutes
    } late{ $short ->
        [oven] , because the oven is taken.
        [slow-cooker] , because the slow cookers are taken.
        [hands] , because nobody has a hand free.
        [power] , because the circuits are full.
       *[other] .
    }
kitchen-too-long = “{ $dish }” needs { $need } minutes, and only { $left } are left before serving.
kitchen-arrives-late = “{ $dish }” arrives when the food is already to be on the table.
# $minutes off heat
kitchen-off-heat = “{ $dish }” would stand off the heat for { $minutes } minutes before it is served{ $short ->
        [oven] , because the oven is taken.
        [slow-cooker] , because the slow cookers are taken.
        [hands] , because nobody has a hand free.
        [power] , because the circuits are full.
       *[other] .
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
fix-temperature = Set it to { $likely } °F?
fix-smaller = Two smaller ones of up to { $most } lb thaw and cook in time.
fix-hold-hotter = Hold it at { $least } °F or hotter.
fix-cook-ahead = Cook it ahead at home, chill it, and reheat it to 165 °F.
fix-split = Split it over two rounds or two ovens.
fix-borrow-slow-cooker = Borrow a slow cooker.
# $by (minutes)
fix-later = Serve { $by } minutes later.
fix-arrive-earlier = Have it there { $by ->
        [one] { $by } minute
       *[other] { $by } minutes
    } earlier.
fix-more-hands = Ask one more person to lend a hand.
fix-another-circuit = Plug it in on another circuit, in another room.
fix-borrow-oven = Use a neighbor’s oven as well.
fix-cook-at-home = Ask for it to be cooked at home and brought hot in a preheated insulated cooler, 140 °F or more.
fix-leave-out = Plan something cold instead.
fix-cooler = Bring it hot in a preheated insulated cooler, 140 °F or more.
