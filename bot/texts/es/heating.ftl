help-heat = cómo se calienta tu plato, por ejemplo «/heat lasaña: 40 minutes at 375»
help-frozen = tu plato está congelado, por ejemplo «/frozen pavo 14 lb»
help-arrive = a qué hora llegas con tus platos, por ejemplo «/arrive 16:00»
heat-noted = Anotado para { $dish }: { $steps }.
heat-taken-celsius = Leí { $n } como °C; si eran °F, dilo otra vez con «°F».
frozen-noted = { $dish }, { $metric ->
    [yes] { $kg } kg
   *[no] { $lb } lb
} en congelador: { $days ->
    [one] un día
   *[other] { $days } días
} en el refrigerador; se te avisará.
button-at-home = { $dish }: se calienta en casa
