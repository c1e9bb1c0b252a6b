# Algo sale mal el mismo día. Lo que cambia sigue debajo de la primera línea.

help-trouble = algo salió mal, por ejemplo «/trouble se rompió el horno»; te digo qué cambia y qué hacer ya
trouble-which = ¿Qué pasó?
button-oven-out = El horno no va
button-power-out = Se fue la luz
button-burnt = Se perdió un plato
button-no-show = Falta alguien
button-more-people = Más gente
button-rain = Lluvia: adentro
button-works-again = Ya funciona
refused-trouble-words = Di qué pasó, por ejemplo «/trouble se rompió el horno», «/trouble se quemó la lasaña», «/trouble se fue la luz», «/trouble 10 personas más», «/trouble Ravi no viene» o «/trouble llueve».
refused-no-oven-left = Ya no queda ningún horno en la lista; /kitchen dice lo que hay.
refused-which-oven = Hay { $most } hornos; di cuál, por ejemplo «/trouble el horno 1 se rompió».
refused-nothing-failed = En la cocina no hay nada anotado como roto; «/kitchen 1 oven» dice lo que hay.
refused-nobody-missing = Ya no se espera a nadie.
trouble-oven = <b>El horno no va.</b> { $left ->
    [0] No queda ninguno. Saca lo que hay dentro; lo caliente conserva sus dos horas, después se tira.
    [one] Queda uno. Saca lo que hay en el roto; lo caliente conserva sus dos horas.
   *[other] Quedan { $left }. Saca lo que hay en el roto; lo caliente conserva sus dos horas.
}
trouble-power = <b>Se fue la luz.</b> Mantén cerrados el refrigerador y el congelador: cerrado, un refrigerador aguanta 4 horas. La comida caliente tiene dos horas sin calor, también en la olla de cocción lenta; después se tira; lo que está a medio hacer se termina enseguida en otro sitio o se tira. Cuando vuelva la luz, dímelo; a las 4 horas lo perecedero del refrigerador se tira. Calculado como si tampoco hubiera cocina; di /kitchen si es de gas.
trouble-works-again = <b>Ya funciona.</b> Lo que estuvo dos horas entre { from-40-to-140 } se tira igualmente.{ $power ->
    [yes] {" "}Si el refrigerador pasó más de 4 horas sin luz, lo perecedero que tiene también se tira; no lo prueben para saber.
   *[other] {""}
}
trouble-which-dish = ¿Qué plato?
trouble-who = ¿Quién no viene?
trouble-how-many = ¿Cuántos más?
trouble-burnt = <b>Fuera de la mesa: { $dish }.</b>
trouble-no-show = <b>{ $name } no viene.</b>{ $n ->
    [0] {" "}No falta nada por eso.
   *[other] {" "}No estará en la mesa: { $dishes }.
}
trouble-more = <b>{ $n } más en la puerta.</b> Pregúntales qué no pueden comer antes de que tomen un plato.
trouble-rain = <b>Pasa adentro{ $has-place ->
    [yes] : { $place }
   *[no] {""}
}.</b> Lleven primero los platos fríos, luego lo caliente tapado; dejen libres las puertas y el paso a la cocina. Ni carbón ni parrilla de gas entran, tampoco en garaje, carpa o porche: arden afuera o nada.
trouble-inside-already = Ya está previsto adentro; no cambia nada.
name-at-the-door = más en la puerta
did-trouble = { $what }
day-nothing-else = No cambia nada más.
day-conflict = ⚠ { $why } → { $fix }
day-way-out = → { $fix }
day-short = Ahora { $n ->
    [one] falta una porción
   *[other] faltan { $n } porciones
}: { $what }.
day-none-left = <b>No queda ningún { $what }.</b> El cambio más pequeño: { $category ->
    [main] comprar uno listo (pollo asado, bocadillos; legumbres con arroz para quien no come carne)
   *[other] comprar algo listo (pan, ensalada de bolsa, legumbres en conserva)
}, o que cocine uno quien viva cerca.
day-need-none = <b>{ $n ->
    [one] Una persona con «{ $need }» ya no tiene
   *[other] { $n } personas con «{ $need }» ya no tienen
} { $what } en la lista.</b> Compren o cocinen primero algo para ellas, y pregunten qué pueden comer.
day-short-too = También falta: { $what }.
day-smaller = Sirvan más o menos el { $percent } % de una porción normal, y repetir solo cuando todos hayan comido.
day-moved-head = <b>Cambió de hora:</b>
day-soon-head = <b>En los próximos diez minutos:</b>
trouble-slow-cooker = <b>Una olla de cocción lenta no va.</b> { $left ->
    [0] No queda ninguna.
    [one] Queda una.
   *[other] Quedan { $left }.
} Lo que tenía caliente hasta ahora dispone de dos horas: llévalo a hervir en la cocina o cómanlo. Si nadie sabe desde cuándo está frío, a la basura: volver a cocerlo no lo arregla.
trouble-gas = <b>Se acabó el gas.</b> Hornillas y parrilla quedan fuera; el horno sigue en el plan: di /kitchen si también es de gas.
refused-no-slow-cooker-left = No hay ninguna olla de cocción lenta en la lista; /kitchen dice lo que hay.
day-too-little = Con platos más pequeños no alcanza: compren algo que no haya que cocinar, o pregunten quién vive cerca.
trouble-power-back = <b>Volvió la luz.</b> Si el refrigerador pasó más de 4 horas sin ella, a la basura lo perecedero: carne, pescado, huevos, leche, platos cocinados y ensaladas; no lo prueben para saber. Lo caliente que estuvo dos horas sin calor también, y lo que quedó a medio hacer no se sigue cociendo. <i>({ $source })</i>
trouble-fridge = <b>El refrigerador no va.</b> Manténganlo cerrado: así aguanta 4 horas, y después lo perecedero se tira; no lo prueben para saber. Antes de eso: a otro, o a neveras portátiles con hielo, a { at-40 } o menos. <i>({ $source })</i>{ $n ->
    [0] {""}
   *[other] {" "}Por mantener frío aquí: { $dishes }.
}
trouble-burners = <b>Una hornilla no va.</b> { $left ->
    [0] No queda ninguna.
    [one] Queda una.
   *[other] Quedan { $left }.
}
refused-no-burner-left = Ya no queda ninguna hornilla en la lista; /kitchen dice lo que hay.
trouble-dry = <b>Vuelve afuera.</b> Cuentan los relojes de la comida al aire libre: di «/weather { $metric ->
    [yes] 33 °C
   *[no] 92 °F
}» qué temperatura hace; hasta entonces calculo con la cifra prudente. Lo frío sale al final, sobre hielo. Si el lugar vuelve a ser otro, di /where.
trouble-outside-already = Ya está previsto afuera; no cambia nada.
day-half = { $raw ->
    [yes] ✋ <b>{ $dish } está dentro desde las { $since } y a medio cocer.</b> Sigan cociéndolo enseguida y de una vez, en otro horno, en la hornilla o en una parrilla al aire libre. { $rule } Si no puede empezar ahora mismo, a la basura: nunca se guarda a medio cocer para terminarlo después. <i>({ $source })</i>
   *[no] ✋ <b>{ $dish } está dentro desde las { $since } y no está hecho.</b> Termínenlo enseguida en otro horno, en la hornilla o en una parrilla al aire libre; lo que queda a medio hacer no se guarda, y a las dos horas sin calor se acabó. <i>({ $source })</i>
}
