help-missing = what is still missing, with amounts
missing-head = For { $people } people ({ $low }–{ $high } likely, { $expected } expected):
missing-row = • <b>{ $category }</b>: { $short ->
    [0] enough servings, but { $dishes ->
        [one] one more dish would help
       *[other] { $dishes } more dishes would help
    }
    [one] one more serving{ $dishes ->
        [0] {""}
        [one] , one dish
       *[other] , { $dishes } dishes
    }
   *[other] { $short } more servings{ $dishes ->
        [0] {""}
        [one] , one dish
       *[other] , { $dishes } dishes
    }
} ({ $promised } of { $target } promised)
missing-nothing = Nothing is missing. Thank you all!
missing-double = Double: { $dish } – { $names }.
missing-surplus = More than enough { $category }: { $n ->
    [one] one serving over
   *[other] { $n } servings over
}.
button-asks = Who could bring it
