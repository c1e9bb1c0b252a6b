# $what kinds of food; $tag which kind
risky-food = { $tag ->
    [sprouts] raw sprouts
    [unpasteurized] raw milk, raw-milk cheese and unpasteurized juice
    [raw-animal] raw or undercooked fish, shellfish and meat
    [soft-cheese] soft cheese, unless its label says pasteurized
    [pate] refrigerated pâté and meat spreads
    [smoked-fish] refrigerated smoked fish
    [deli] cold cuts and hot dogs, unless steaming hot
    [seafood-salad] deli meat or seafood salads
   *[raw-egg] raw or soft eggs, unless pasteurized
}
risky-told = ✋ <b>Not for anybody pregnant, for babies and small children, the old or the frail: { $what }.</b> Whoever makes it says so on a label and has something else for them; who is in doubt leaves it out. What else is in it only the cook knows. <i>({ $source })</i>
