# What is listed in a dish, and who said so. A dish is never called safe, nor free of anything: what is listed counts.
diets-listed-free = { $need ->
    [gluten-free] No gluten ingredients listed, says the cook.
    [gluten] No gluten ingredients listed, says the cook.
   *[other] { $kind ->
        [allergy] No { $need } listed, says the cook.
       *[other] Nothing listed against { $need }, says the cook.
    }
}
diets-contains-cook = With { $marks }, says the cook.
diets-contains-usual = Usually made with { $marks }.
diets-breaks = As listed, this does not suit { $need }.
diets-may-contain = May hold { $marks }: ask the cook.
diets-ask-usual = The usual recipe lists nothing against { $need }, but the cook has listed nothing yet: ask first.
diets-ask-unknown = Nobody has listed what is in it: ask the cook.
diets-ask-items = I don’t know what is in { $items }: ask the cook.
diets-ask-always = A list of ingredients can’t answer { $need }: ask the cook.
diets-shared-bar = At a shared bar spoons wander: whoever has an allergy goes first, from bowls nobody has touched.
