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
trouble-power = <b>Se fue la luz.</b> Mantén cerrados el refrigerador y el congelador: cerrado, un refrigerador aguanta 4 horas (POWER-01). La comida caliente tiene dos horas sin calor, también en la olla de cocción lenta (TIME-01); después se tira. Calculado como si tampoco hubiera cocina; di /kitchen si es de gas.
trouble-works-again = <b>Ya funciona.</b> Lo que estuvo dos horas entre 4 y 60 °C (40 y 140 °F) se tira igualmente.
trouble-which-dish = ¿Qué plato?
trouble-who = ¿Quién no viene?
trouble-how-many = ¿Cuántos más?
trouble-burnt = <b>Fuera de la mesa: { $dish }.</b>
trouble-no-show = <b>{ $name } no viene.</b>{ $n ->
    [0] {" "}No falta nada por eso.
   *[other] {" "}No estará en la mesa: { $dishes }.
}
trouble-more = <b>{ $n } más en la puerta.</b> Pregúntales qué no pueden comer antes de que tomen un plato.
trouble-rain = <b>Pasa adentro.</b> Lleven primero los platos fríos, luego lo caliente tapado; dejen libres las puertas y el paso a la cocina.
trouble-inside-already = Ya está previsto adentro; no cambia nada.
name-at-the-door = más en la puerta
did-trouble = { $what }
day-nothing-else = No cambia nada más.
day-conflict = ⚠ { $why } → { $fix }
day-short = Ahora { $n ->
    [one] falta una porción
   *[other] faltan { $n } porciones
}: { $what }.
day-smaller = Sirvan más o menos el { $percent } % de una porción normal, y repetir solo cuando todos hayan comido.
day-moved-head = <b>Cambió de hora:</b>
day-soon-head = <b>En los próximos diez minutos:</b>
trouble-slow-cooker = <b>Una olla de cocción lenta no va.</b> { $left ->
    [0] No queda ninguna.
    [one] Queda una.
   *[other] Quedan { $left }.
} Lo que tenía caliente dispone de dos horas desde ahora (TIME-01): llévalo a hervir en la cocina o cómanlo.
trouble-gas = <b>Se acabó el gas.</b> Hornillas y parrilla quedan fuera; el horno sigue en el plan: di /kitchen si también es de gas.
refused-no-slow-cooker-left = No hay ninguna olla de cocción lenta en la lista; /kitchen dice lo que hay.
day-too-little = Con platos más pequeños no alcanza: compren algo que no haya que cocinar, o pregunten quién vive cerca.
