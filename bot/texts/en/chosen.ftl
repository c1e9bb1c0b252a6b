# $needs what somebody at the table eats or does not eat, $marks what of the dish is against it
chosen-dish = 🏷 { $dish } { $n ->
    [0] does not go with what a guest eats: { $needs }.
   *[other] { $usual ->
        [yes] (usually with { $marks })
       *[no] ({ $marks })
    } is not for a guest who eats: { $needs }.
}
# $to who reads it (dish: its cook, need: whoever told of it, host)
chosen-do = { $to ->
    [need] What else there is: /eat.
   *[other] It can stay as it is, with a label and a spoon of its own.
}
# $what the whole message
chosen-told = { $what }
