help-bar = la barra de ingredientes, por ejemplo «/bar papa al horno»
button-bar = Barra de ingredientes
bar-none = No hay barra de ingredientes todavía. Quien organiza puede abrir una – { $bases } – o nombrar otra base, por ejemplo «/bar fideos».
bar-chosen = La barra es ahora de { $base }, con { $n } ingredientes para elegir.
bar-chosen-toast = Base: { $base }.
bar-closed = La barra de ingredientes está cerrada.
bar-topping-added = Ya está en la lista: { $topping }.
bar-combo-added = Combinación { $name }: { $toppings }.
bar-head = <b>Barra: { $base }</b> – ✓ tuyo, • tomado, ★ abriría más
bar-taken = • { $topping } { $amount } – { $name }
bar-amount = (unos { $value } { $unit })
bar-open = { $n ->
    [0] Ninguna combinación está completa todavía.
   *[other] Completas: { $names }.
}
bar-nearest = A { $name } le falta { $missing }.
bar-best = { $n ->
    [one] Un ingrediente más – { $toppings } – abre { $m ->
        [0] nada todavía
       *[other] { $opens }
    }.
   *[other] { $n } ingredientes más – { $toppings } – abren { $m ->
        [0] nada todavía
       *[other] { $opens }
    }.
}
bar-curve = Y más: { $steps }.
bar-curve-step = { $n ->
    [one] con un ingrediente más { $m ->
        [one] una combinación
       *[other] { $m } combinaciones
    }
   *[other] con { $n } más hay { $m }
}
bar-yours = { $topping } es tuyo { $amount }.{ $n ->
    [0] {""}
   *[other] {" "}¡Con eso se completa { $opened }!
}
bar-given-back = { $topping } vuelve a estar libre.
board-bar = <b>Barra: { $base }</b>{ $n ->
    [0] {" "}– ningún ingrediente tomado todavía
   *[other] {" "}– { $taken }
}{ $more ->
    [0] {""}
   *[other] {" "}y { $more } más
}
board-bar-open = Completas: { $names }
board-bar-next = A { $name } le falta { $missing }
