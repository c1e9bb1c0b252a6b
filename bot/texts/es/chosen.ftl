# $needs what somebody at the table eats or does not eat, $marks what of the dish is against it
chosen-dish = 🏷 { $dish } { $n ->
    [0] no va con lo que come alguien de la mesa: { $needs }.
   *[other] { $usual ->
        [yes] (suele llevar { $marks })
       *[no] ({ $marks })
    } no es para alguien que come: { $needs }.
}
# $to who reads it (dish: its cook, need: whoever told of it, host)
chosen-do = { $to ->
    [need] Qué más hay: /eat.
   *[other] Puede quedarse así, con etiqueta y cuchara propia.
}
# $what the whole message
chosen-told = { $what }
