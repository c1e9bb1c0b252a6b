trouble-oven-found = <b>Un horno más, en otro sitio.</b> { $left ->
    [one] Hay uno.
   *[other] Hay { $left }.
} Lo caliente viaja tapado, en una caja aislada precalentada, a { at-140 } o más; lo que está a medio hacer entra enseguida.
trouble-oven-offered = Se podría usar otro horno. Quien organiza lo dice abajo.
button-use-oven = Usar ese horno
trouble-breaker = <b>Saltó un circuito.</b> Desenchufen lo que cuelga de él antes de subirlo otra vez. { $known ->
    [yes] Un circuito de aquí
   *[no] Uno corriente (15 A, 120 V)
} aguanta unos { $watts } W durante horas{ $cookers ->
    [0] {""}
   *[other] ; una olla de cocción lenta de aquí toma unos { $each } W
}. Una cafetera grande, un hervidor o un microondas quieren cada uno su propio circuito: enchufen algo en otro. Lo que estaba caliente tiene dos horas sin calor; lo que está a medio cocer se termina ya en otro lado y de una vez, o se tira; una olla que se enfrió se lleva a hervir en la cocina, o se tira cuando pasan. <i>({ $source })</i>
button-all-dark = Se fue toda la luz
trouble-not-here = ¿{ $name } no viene? Mientras nadie pulse, no cambia nada.
button-not-coming = { $name } falta
trouble-fewer = { $n ->
    [0] <b>De los de la puerta no se queda nadie.</b>
    [one] <b>De los de la puerta se queda una persona.</b>
   *[other] <b>De los de la puerta se quedan { $n }.</b>
}
trouble-no-show-known = { $name } ya figura como que no viene.
button-plan-so = Quien organiza: calcular así
