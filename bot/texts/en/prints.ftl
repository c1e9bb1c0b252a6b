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
   *[other] { $need }
}

## Picture of the table

prints-people = About { $count } people
prints-people-range = About { $count } people ({ $low } to { $high })
prints-missing = Still missing
prints-nothing-missing = Nothing is missing
prints-short-line = { $category }: { $count } more { $count ->
    [one] serving
   *[other] servings
}
prints-of-target = { $have } of { $target } servings
prints-short-by = { $count } missing
prints-enough = enough
prints-over-by = { $count } extra
prints-key-have = promised
prints-key-short = missing
prints-key-target = wanted
prints-bar-title = Build your own: { $base }
prints-bar-possible = Can be built: { $combos }
prints-bar-opens = With { $topping } also: { $combos }
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
prints-diet-unfit = Do not eat: { $dishes }
prints-diet-ask = Ask the cook first: { $dishes }
prints-diet-fits = Fits by what is listed: { $dishes }
prints-diet-fits-count = Fits by what is listed: { $count } dishes
prints-diet-fits-none = Nothing fits yet
prints-diet-short = Not enough for them: { $categories }
prints-not-safe = This goes by what the cooks and usual recipes list. No dish is promised to be free of anything: ask the cook.

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
