help-list = lo que dijiste y lo que llevas
list-stranger = Todavía no estás en la lista; pulsa antes un botón del tablero.
list-head = <b>{ $name }</b> – { $when }{ $has-place ->
    [yes] , { $place }
   *[no] {""}
}
list-answer = { $answer ->
    [yes] Vienes: { $party }.
    [maybe] Quizá: { $party }.
    [no] No puedes venir.
   *[none] Todavía no has dicho si vienes.
}
list-promise = • { $dish } { $amount }{ $n ->
    [0] {""}
   *[other] , junto con { $names }
}
list-arrive = {"  "}llega antes de { $when }
list-toppings = • ingredientes: { $toppings }
list-added = • añadido por ti: { $name } ({ $answer ->
    [yes] viene
    [maybe] quizá
    [no] no puede
   *[none] sin respuesta
})
list-nothing = No llevas nada todavía; /bring muestra qué ayudaría.
list-needs = Lo que necesitas: { $needs }
