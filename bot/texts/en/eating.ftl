help-eat = what you can eat, going by what the cooks listed
eat-no-needs = You told me of no needs; /needs notes them.
eat-nobody-needs = Nobody has told me of any needs.
eat-head = Going by what the cooks listed:
eat-head-all = The whole table, going by what the cooks listed:
eat-row = • { $need }, { $category }: { $n ->
    [0] nothing yet that the cook listed without it
   *[other] nothing listed in { $dishes }, say the cooks
}{ $m ->
    [0] {""}
   *[other] ; ask first about { $ask }
}{ $short ->
    [yes] {" "}– short
   *[no] {""}
}
eat-never = ✋ Not for you: { $dish } – { $needs } ({ $sure ->
    [yes] listed, or in its name
   *[no] usually in it
})
eat-ask-cook = { $dish } ({ $name })
eat-note = Home kitchens and shared spoons mix things; with an allergy ask the cook before you eat.
eat-in-private = I’ll tell you in private.
button-private = Open our private chat
# $name of its cook, where it is theirs to say
eat-of-dish = { $dish }: { $said }{ $has-name ->
    [yes] {" "}{ $name } cooks it.
   *[no] {""}
}
# $need a diet, $dishes whose cooks listed nothing against it
eat-suits = { $n ->
    [0] Nothing on the list yet whose cook’s own list fits { $need }.
   *[other] Fits { $need }, going by the cook’s own list: { $dishes }.
}
eat-suits-ask = Ask the cook first: { $dishes }.
eat-suits-not = • not for it: { $dish }. { $said }
# $how (listed, named, usual, without, open), $what a food, $name of the cook
eat-food = • { $dish }: { $how ->
    [listed] with { $what }, says the cook.
    [named] { $what } by its name.
    [usual] usually made with { $what }; the cook has not said.
    [without] { $what } is not among what the cook listed.
   *[open] nobody has said whether { $what } is in it.
}{ $has-name ->
    [yes] {" "}{ $name } knows.
   *[no] {""}
}
eat-who-free = Listed by the cook, without { $what } among it: { $dishes }.
# $contains the main allergens, $items as the cook listed them, $basis (cook, usual-recipe, unknown)
eat-in-dish = { $dish }: { $basis ->
    [cook] { $items }, says the cook.
    [usual-recipe] the cook has not listed what is in it; { $has-contains ->
        [yes] usually made with { $contains }.
       *[no] the usual recipe names none of the main allergens.
    }
   *[unknown] the cook has not listed what is in it{ $has-contains ->
        [yes] ; { $contains } by its name.
       *[no] .
    }
}
# $what an allergen or a diet, $n dishes
eat-who-has = { $n ->
    [0] On the list nothing names it so far ({ $what }).
   *[other] On the list with it, or perhaps ({ $what }):
}
eat-spoken-of = Not on the list, but { $known ->
    [yes] { $name }
   *[no] somebody
} spoke of { $what }: ask before you eat it.
eat-who-unknown = Nobody has said what is in { $dishes }.
