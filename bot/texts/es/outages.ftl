# $since, $until clock times; $minutes between them; $long for a refrigerator
outage-was = <b>Sin luz de { $since } a { $until }: { $minutes } minutos.</b> { $long ->
    [yes] Son más de 4 horas: lo perecedero de la nevera se tira; nunca lo prueben para saberlo.
   *[no] Una nevera que quedó cerrada aguanta 4 horas; si se abrió, midan: 4 °C (40 °F) es el límite.
} <i>({ $source })</i>
# $minutes without heat so far, $limit in all
outage-in-time = ⚠ <b>{ $dish }</b> se quedó sin calor: van { $minutes } de { $limit } minutos, y siguen contando. Termínenlo ya en la estufa o en un horno, a hervor y de una vez, no despacio en la olla lenta; si a las { $until } no ha empezado, se tira.
outage-over = ✋ <b>{ $dish }</b> se quedó sin calor: { $minutes } minutos en total, y el límite son { $limit }. Tírenlo, se vea y huela como sea; seguir cocinándolo no lo arregla.
# $n how many dishes were named above
outage-rest = { $n ->
    [0] Lo que entonces estaba caliente o a medio cocer
   *[other] Lo demás que entonces estaba caliente o a medio cocer
} cuenta también estos minutos: a medio cocer, se termina ya y de una vez, o se tira; nadie come de ello a medio cocer. <i>({ $source })</i>
outage-planned = El plan vuelve a contar con todo.
