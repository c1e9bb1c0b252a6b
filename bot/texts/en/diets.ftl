# What is listed in a dish, and who said so. A dish is never called safe.
diets-listed-free = Nothing with { $need } is listed, says the cook.
diets-contains-cook = { $marks } is listed, says the cook.
diets-contains-usual = Usually made with { $marks }.
diets-may-contain = May hold { $marks }: ask the cook.
diets-ask-usual = Nothing with { $need } in the usual recipe, but the cook has listed nothing yet: ask first.
diets-ask-unknown = Nobody has listed what is in it: ask the cook.
diets-ask-items = Not known to me: { $items }. Ask the cook.
diets-ask-always = A list of ingredients can’t answer { $need }: ask the cook.
diets-breaks = As listed, not { $need }.
diets-shared-bar = At a shared bar spoons wander: whoever has an allergy goes first, from unopened bowls.
