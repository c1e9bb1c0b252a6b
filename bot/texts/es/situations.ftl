# Comida en algún estado, contada o preguntada con palabras sueltas. $dish como se prometió o se dijo; $minutes fuera de
# $limit; $until; $temp y $temp_c lo medido; $target y $target_c lo que tiene que alcanzar; $metric (yes, no).

sit-target = { $metric ->
    [yes] { $target_c } °C
   *[no] { $target } °F
}
sit-everything = todo lo que estuvo fuera
sit-yours = lo que mediste
sit-line-one = { $line } <i>({ $source })</i>
sit-over = <b>{ $dish }</b>: { $minutes } minutos fuera, y el límite son { $limit }. A la basura, aunque se vea y huela bien; recalentar no lo arregla.
sit-over-store = <b>{ $dish }</b>: { temp-said } pasa de { at-40 }, la cifra para lo frío, y por lo que dices fue durante más de { $limit } minutos. A la basura, aunque se vea y huela bien; cocinarlo no lo arregla. El helado y el yogur helado que se ablandaron, y todo lo que tocaron jugos de carne cruda, va a la basura de todos modos.
sit-running = <b>{ $dish }</b>: lleva { $minutes } minutos fuera, que yo sepa, y el límite son { $limit }. A comer, enfriar o calentar hasta { at-165 } antes de las { $until }; después, a la basura.
sit-ask = <b>{ $dish }</b>: ¿desde cuándo está fuera? El límite son { $limit } minutos en total, contando el coche y la encimera. Si fue más, o nadie lo sabe, a la basura.
sit-hot = <b>{ $dish }</b>: cuenta como caliente si estuvo a { at-140 } o más todo el tiempo; mídanlo ahora. Lo que sobre va al refrigerador en recipientes bajos antes de dos horas de apagarlo y ahí aguanta { $days } { $days ->
    [one] día
   *[other] días
}. Si estuvo por debajo de { at-140 } más de { $limit } minutos, a la basura.
sit-cold = <b>{ $dish }</b>: cuenta como frío si estuvo a { at-40 } o menos; mídanlo. Por encima de eso tiene { $limit } minutos en total y luego va a la basura. Lo que sobre aguanta { $days } { $days ->
    [one] día
   *[other] días
} en el refrigerador.
sit-keeps = <b>{ $dish }</b>: por su nombre no tiene reloj de dos horas. Quien lo hizo sabe qué lleva; en caso de duda, a la basura.
sit-below = <b>{ $dish }</b>: { temp-said } no alcanza. Tiene que llegar a { sit-target } por dentro, en la parte más gruesa y lejos del hueso, medido en dos sitios. De vuelta al fuego hasta entonces; antes nadie lo come. Si el fuego estuvo apagado entretanto, o se volvió a enfriar, más de { $limit } minutos en total, o nadie sabe cuánto: a la basura.
sit-reached = <b>{ $dish }</b>: la cifra por dentro es { sit-target }, y { temp-said } { $exact ->
    [yes] es justo eso
   *[no] la pasa
}. Midan la parte más gruesa en dos sitios; cuenta la cifra más baja.{ $rest ->
    [0] {""}
   *[other] {" "}Cuando las dos llegan, se saca y reposa { $rest } minutos antes de cortarlo.
}
sit-cool = <b>{ $dish }</b>: { temp-said } es poco; lo caliente se mantiene a { at-140 } o más. Si lleva por debajo de eso menos de { $limit } minutos en total, caliéntenlo ya hasta { at-165 } en la estufa o el horno, no en la olla lenta, y luego manténganlo a { at-140 }. Si fue más, o nadie lo sabe, a la basura.
sit-held = <b>{ $dish }</b>: { temp-said } pasa de { at-140 }, la cifra para lo caliente. Déjenlo al fuego que funcione y vuelvan a medir; por debajo de { at-140 } tiene { $limit } minutos en total.
sit-warm = <b>{ $dish }</b>: { temp-said } es demasiado; lo frío se mantiene a { at-40 } o menos. Si lleva por encima de eso menos de { $limit } minutos en total, a comerlo o a enfriarlo ya. Si fue más, o nadie lo sabe, a la basura.
sit-chilled = <b>{ $dish }</b>: { temp-said } está dentro de la cifra para lo frío, { at-40 }. Que siga ahí; por encima tiene { $limit } minutos en total.
sit-raw = <b>{ $dish }</b>: no lo sirvan todavía. El color dice poco; que siga hasta { sit-target } por dentro, con termómetro en la parte más gruesa, y hasta entonces nadie lo come.
sit-frozen = <b>{ $dish }</b>: no lo descongelen en la encimera ni en agua caliente. En agua fría, en bolsa bien cerrada, tarda unos 30 minutos por libra (medio kilo){ $known ->
    [yes] {" "}(entero y congelado del todo: unas { $hours } horas, hasta las { $until } más o menos)
   *[no] {""}
}; cambien el agua cada 30 minutos y cocínenlo enseguida. En el refrigerador tarda un día por cada 4 libras (casi 2 kilos). Congelado no va a la olla lenta.
sit-icy = <b>{ $dish }</b>: no está hecho. Que siga en el horno, o métanlo ya, tapado con papel de aluminio, hasta medir { sit-target } en el centro; que los bordes quemen no dice nada, y hasta entonces nadie lo come. Sirvan antes lo demás.
sit-freezer = <b>{ $dish }</b>: solo se queda si todavía tiene cristales de hielo por dentro o mide { at-40 } o menos con un termómetro en el centro, no al tacto. Si estuvo más caliente durante más de { $limit } minutos, o nadie lo sabe, a la basura; cocinarlo no lo arregla. Lo descongelado que sigue frío se cocina enseguida.
sit-freezer-any = Congelador o refrigerador abierto o apagado: ciérrenlo ya y midan cada cosa con un termómetro. Se queda lo que todavía tiene cristales de hielo por dentro o mide { at-40 } o menos; a la basura lo que pasó de eso más de dos horas, o de lo que nadie sabe, el helado que se ablandó y todo lo que tocaron jugos de carne cruda. No lo prueben para saberlo. <i>({ $source })</i>
sit-limit = <b>{ $dish }</b>: { $limit } minutos en total, contando el coche y la encimera{ $known ->
    [yes] ; van { $minutes }, así que hasta las { $until }
   *[no] {""}
}. Después, a la basura. Sobre hielo, a { at-40 } o menos, su reloj no corre.

sit-weather = { $set ->
    [yes] Anotado: { temp-said } afuera.
   *[no] Con { temp-said } afuera:
} { $hot ->
    [yes] Desde { at-90 }, lo que se echa a perder puede estar fuera 60 minutos en total, contando el coche, no dos horas. Sáquenlo de a poco, lo frío sobre hielo a { at-40 } o menos, lo caliente a { at-140 } o más, y a la basura lo que estuvo más.
   *[no] Lo que se echa a perder puede estar fuera dos horas en total, contando el coche.
}{ $n ->
    [0] {""}
   *[other] {" "}En la lista: { $dishes }.
} <i>({ $source })</i>
sit-oven-kept = Anotado que el horno { $oven } está unos { $off } por { $cold ->
    [yes] debajo
   *[no] encima
} de lo que marca: desde ahora el plan y mis avisos dicen la cifra que hay que poner en el mando. Denle más tiempo para calentar y dejen dentro un termómetro de horno; cuenta la cifra dentro de la comida. <i>({ $source })</i>
sit-oven-cold = Anotado que el horno está unos { $off } por debajo de lo que marca: pónganlo { $off } más alto de lo que dicen el plan y mis avisos, denle más tiempo para calentar y dejen dentro un termómetro de horno. Los platos pueden tardar más: cuenta la cifra dentro de la comida. <i>({ $source })</i>
sit-oven-hot = Anotado que el horno está unos { $off } por encima de lo que marca: pónganlo { $off } más bajo de lo que dicen el plan y mis avisos y dejen dentro un termómetro de horno. Cuenta la cifra dentro de la comida. <i>({ $source })</i>
sit-off-by = { $metric ->
    [yes] { $n } °C
   *[no] { $n } °F
}
