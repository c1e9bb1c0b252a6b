help-unsent = lo que no pude entregar, y por qué
unsent-none = Todo lo que tenía que decir de esta comida se entregó o va de camino.
unsent-head = { $n ->
    [one] Un mensaje no se pudo entregar:
   *[other] { $n } mensajes no se pudieron entregar, el más reciente primero:
}
unsent-line = • { $whose ->
    [group] para el grupo
    [guest] para { $name }
   *[other] para alguien que ya no es invitado
}{ $reminds ->
    [yes] {", "}recordatorio «{ $kind }»
   *[no] {""}
}{ $said ->
    [yes] {", "}«{ $words }»
   *[no] {""}
}: { $why }
