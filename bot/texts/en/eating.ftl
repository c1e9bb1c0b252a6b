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
