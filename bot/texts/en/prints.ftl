# Words on pictures, on paper and in the calendar file. All plain text.

prints-untitled = Our potluck
prints-somebody = somebody
prints-a-dish = a dish
prints-nobody-yet = nobody yet
prints-package = { $count } × { $size }
prints-servings = { $count ->
    [one] { $count } serving
   *[other] { $count } servings
}
prints-category = { $category ->
    [main] Mains
    [side] Sides
    [salad] Salads
    [starter] Starters
    [bread] Bread
    [dessert] Desserts
    [drink] Drinks
    [topping] Toppings
    [supplies] Supplies
   *[other] { $category }
}
prints-need = { $need ->
    [tree-nut] tree nuts
    [peanut] peanuts
    [shellfish] shellfish
    [egg] egg
    [gluten-free] gluten-free
    [dairy-free] dairy-free
    [nut-free] nut-free
    [soft-food] soft food
    [low-fodmap] low FODMAP
    [hindu-vegetarian] Hindu vegetarian
   *[other] { $need }
}

## Picture of the table

prints-people = About { $count } people
prints-people-range = About { $count } people ({ $low } to { $high })
prints-missing = Still missing
prints-nothing-missing = Nothing is missing
prints-short-line = { $category }: { $count ->
    [one] { $count } serving
   *[other] { $count } servings
}
prints-short-kinds = { $category }: { $kinds } for { $count ->
    [one] { $count } person
   *[other] { $count } people
}
prints-kind = { $kind }
prints-of-target = { $have } of { $target } servings
prints-of-people = full sets for { $have } of { $target }
prints-kinds-missing = no { $kinds } yet
prints-not-coming = { $name } (can't come)
prints-no-carrier = { $name } can't come, so somebody has to bring it: { $dishes }
prints-short-by = { $count } missing
prints-enough = enough
prints-over-by = { $count } extra
prints-key-have = promised
prints-key-short = missing
prints-key-target = wanted
prints-key-extra = extra
prints-bar-title = Build your own: { $base }
prints-bar-possible = Can be built
prints-combo-of = { $combo } ({ $toppings })
prints-bar-opens = With { $topping } also: { $combos }
prints-bar-opens-then = Then with { $topping } also: { $combos }
prints-diets = Who can eat what
prints-need-allergy = { $need } (allergy)
prints-need-of = { $name }: { $need }{ $count ->
    [one] {""}
   *[other] {" "}× { $count }
}
prints-need-of-somebody = { $count ->
    [one] One person: { $need }
   *[other] { $count } people: { $need }
}
prints-dish-of = { $dish } ({ $name })
prints-diet-unfit = May not eat: { $dishes }
prints-diet-ask = Not before asking the cook: { $dishes }
prints-diet-ask-count = Everything else ({ $count } dishes): not before asking the cook
prints-diet-ask-most = Not before asking the cook: { $count } of { $all } dishes
prints-diet-ask-rest = Everything else: not before asking the cook
prints-diet-ask-all = Every dish: not before asking the cook
prints-diet-fits = May eat, by what is listed: { $dishes }
prints-diet-fits-count = Everything else ({ $count } dishes): may eat, by what is listed
prints-diet-fits-none = May eat: nothing yet, no cook has listed a dish that fits
prints-diet-short = Nothing listed for them yet: { $categories }
prints-not-safe = This goes by what the cooks and usual recipes list, and by the needs people told: others may have some they have not told. No dish is promised to be free of anything: ask the cook.

## Calendar file

prints-calendar-you-bring = You bring: { $dishes }
prints-calendar-menu = On the table: { $dishes }
prints-calendar-party = { $count ->
    [one] You come alone
   *[other] There are { $count } of you
}

## Shopping list

prints-shopping-title = Shopping list
prints-shopping-item = what
prints-shopping-buy = buy
prints-shopping-need = needed
prints-shopping-cost = cost
prints-shopping-empty = Nothing to buy.
prints-shopping-total = Together { $total }
prints-shopping-no-price = without the lines that have no price
prints-shopping-estimated = with prices we guessed where you gave none (common practice, no source)
prints-section = { $section ->
    [produce] Fruit and vegetables
    [meat] Meat and fish
    [dairy] Dairy and eggs
    [bakery] Bread and cakes
    [dry] Tins, jars and dry goods
    [frozen] Frozen
    [drinks] Drinks
    [paper] Paper and household
    [other] Everything else
   *[other-section] { $section }
}
prints-qr = Open in the chat

## Kitchen: picture and run sheet

prints-timeline-title = In the kitchen for { $when }
prints-run-sheet = Kitchen run sheet
prints-oven-changes = When the oven changes
prints-oven-inside = In the oven: { $dishes }
prints-oven-dish = { $dish } (in { $start }, out { $end })
prints-what-when = What happens when
prints-arrivals = Arrives
prints-deadlines = Food safety limits
prints-food-safety = Food safety
prints-at-home = At home, before coming
prints-since = since { $time }
prints-from-to = { $start } to { $end }
prints-serve = serve
prints-now = now { $time }
prints-more-limits = { $count } more on the run sheet
prints-key-heating = heating up or cooling down
prints-fix = Way out:
prints-source = Rule: { $source }
prints-note-same = The same for: { $dishes }
prints-late = { $dish } is ready { $minutes } min after serving time.
prints-kitchen-impossible = This does not work yet
prints-kitchen-conflicts = Look at this first
prints-kitchen-empty = No dish needs the kitchen.
prints-appliance = { $kind ->
    [oven] Oven
    [burner] Burner
    [grill] Grill
    [slow-cooker] Slow cooker
    [microwave] Microwave
   *[other] { $kind }
}
prints-appliance-number = { $name } { $number }
prints-appliance-own = Their own { $kind ->
    [oven] oven
    [burner] burner
    [stove] stove
    [grill] grill
    [slow-cooker] slow cooker
    [slow-cooker-low] slow cooker
    [slow-cooker-high] slow cooker
    [microwave] microwave
   *[other] { $kind }
}
prints-event-arrive = { $name } arrives with { $dish }
prints-event-oven-on = { $place }: turn on to { $temp }, hot by { $ready }
prints-event-oven-change = { $place }: from { $before } to { $temp }, ready by { $ready }
prints-event-oven-off = { $place }: turn off
prints-event-in = { $dish }: { $place } at { $temp }, until { $end }
prints-event-in-plain = { $dish }: { $place }{ $kind ->
    [slow-cooker-low] {" "}on low
    [slow-cooker-high] {" "}on high
    [keep-warm] {" "}on warm
   *[other] {""}
}, until { $end }
prints-event-out = { $dish }: done, take it out ({ $place })
prints-event-work = { $dish }: { $kind ->
    [prep] prepare
    [rest] let rest
    [chill] chill
    [thaw] thaw in the fridge
    [keep-warm] keep warm
   *[other] { $kind }
}, until { $end }
prints-event-home = { $name }: { $dish }, { $kind ->
    [prep] prepare
    [rest] let rest
    [chill] chill
    [thaw] thaw in the fridge
    [keep-warm] keep warm
    [oven] in the oven
    [stove] on the stove
    [grill] on the grill
    [slow-cooker-low] slow cooker on low
    [slow-cooker-high] slow cooker on high
    [microwave] in the microwave
   *[other] { $kind }
} until { $end }
prints-event-serve = Serve

## Cards, bar menu, tags

prints-cards-title = Table cards
prints-cards-empty = Nobody has promised a dish yet.
prints-cut-here = cut here
prints-fold-here = fold here
prints-card-by = made by { $name }
prints-card-serve = { $serve ->
    [hot] served hot
    [cold] served cold
    [room] at room temperature
   *[other] { $serve }
}
prints-card-contains = Contains, as listed by the cook: { $allergens }
prints-card-contains-usually = The usual recipe contains: { $allergens }
prints-card-nothing-listed = The cook listed the ingredients; none of the main allergens is among them.
prints-card-nothing-usual = The cook has not listed what is in it. The usual recipe names none of the main allergens.
prints-card-unknown = Nobody has listed what is in this dish.
prints-card-not-listed = The cook has not listed what is in it.
prints-card-may-usually = The usual recipe may contain: { $allergens }
prints-card-may = May also contain: { $allergens }
prints-card-also = Made with: { $marks }
prints-card-not-known = Also listed, but unknown to us: { $items }
prints-mark = { $mark ->
    [gelatin] gelatine
    [carmine] carmine (red colouring from insects)
    [rennet] animal rennet
   *[other] { $mark }
}
prints-card-diets = By that list it is { $diets }
prints-card-diets-usually = Usually { $diets }
prints-card-ask = Allergic to something? Ask { $name } before you eat.
prints-card-footer = Home kitchens share knives, boards and spoons. No dish here is promised to be free of anything.
prints-bar-missing = missing: { $toppings }
prints-bar-unsure = who brings it can't come: { $toppings }
prints-bar-portion = { $topping } { $amount }
prints-bar-contents = What is on the bar
prints-bar-almost = One topping short
prints-bar-half = Build half portions and try more than one.
prints-bar-none = There is no build-your-own bar.
prints-bar-head-topping = what
prints-bar-head-who = brought by
prints-bar-head-amount = for everybody
prints-tags-title = Name tags
prints-tags-line = This dish goes home with
