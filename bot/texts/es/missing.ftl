help-missing = qué falta todavía, con cantidades
missing-head = Para { $people } personas (probablemente { $low }–{ $high }, se esperan { $expected }):
missing-row = • <b>{ $category }</b>: { $short ->
    [0] porciones suficientes, pero { $dishes ->
        [one] ayudaría un plato más
       *[other] ayudarían { $dishes } platos más
    }
    [one] una porción más{ $dishes ->
        [0] {""}
        [one] , un plato
       *[other] , { $dishes } platos
    }
   *[other] { $short } porciones más{ $dishes ->
        [0] {""}
        [one] , un plato
       *[other] , { $dishes } platos
    }
} ({ $promised } de { $target } prometidas)
missing-nothing = No falta nada. ¡Gracias a todos!
missing-double = Doble: { $dish } – { $names }.
missing-surplus = Más que suficiente en { $category }: { $n ->
    [one] sobra una porción
   *[other] sobran { $n } porciones
}.
button-asks = Quién podría llevarlo
