clocks-none = No: de aquí a entonces no cambia la hora. Es el { $when }.
clocks-change = Sí: el { $day }, a las { $before } los relojes se { $back ->
    [yes] atrasan
   *[no] adelantan
} a las { $after }. Sigue siendo el { $when } en la hora nueva, y así todas las horas que digo: las de inicio y los avisos van por el reloj de ese día.
clocks-whose = { $when } según los relojes de donde es ({ $zone }){ $has-other ->
    [yes] ; en { $place } son las { $other }
   *[no] {""}
}.
