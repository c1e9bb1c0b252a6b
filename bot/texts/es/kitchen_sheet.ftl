help-kitchen = el plan del horno; «/kitchen 1 oven, 2 slow cookers» dice lo que hay
ovenplan-noted = Anotado: hornos { $ovens }, hornillas { $burners }, ollas de cocción lenta { $slow }, microondas { $microwaves }, cocinan { $cooks }{ $fridge ->
    [0] {""}
   *[other] , refrigerador { $fridge } l
}.
ovenplan-off = El horno { $oven } está { $off } por { $cold ->
    [yes] debajo
   *[no] encima
} de lo que marca: las cifras de aquí son las que hay que poner en el mando.
ovenplan-head = <b>Cocina para { $serve }</b>{ $n ->
    [0] {" "}– { $asked ->
        [0] nada que calentar por ahora; quien cocina lo añade con /heat.
       *[other] nada previsto todavía.
    }
   *[other] { $status ->
        [impossible] {" "}– así todavía no sale:
       *[other] {""}
    }
}
ovenplan-more-conflicts = ⚠ { $n ->
    [one] Otro plato tampoco cabe.
   *[other] Otros { $n } tampoco caben.
}
ovenplan-more = … y { $n } más; /print los tiene todos.
ovenplan-assumed = Tiempo habitual de { $dishes } ({ $source }). Quien cocina lo sabe mejor, por ejemplo «necesita 40 minutos a 190 °C».
ovenplan-asked = { $n ->
    [one] No está en el plan porque quien lo cocina no ha dicho cómo se calienta. Suele durar más o menos esto (práctica común, sin fuente):
   *[other] No están en el plan porque quienes los cocinan no han dicho cómo se calientan. Suelen durar más o menos esto (práctica común, sin fuente):
}
ovenplan-estimate = ? { $dish }: { $steps }
ovenplan-mended = { $kind ->
    [later] Anotado: se sirve a las { $when }.
    [more-hands] Anotado: cocina una persona más.
    [borrow-slow-cooker] Anotado: una olla de cocción lenta más.
    [borrow-oven] Anotado: un horno más.
    [another-circuit] Anotado: un circuito más.
    [arrive-earlier] Anotado: { $dish } llega { $minutes } minutos antes.
    [temperature] Anotado: { $dish } se hornea a la temperatura que se quiso decir.
    [hold-hotter] Anotado: { $dish } se mantiene a { at-140 }.
    [thaw-longer] Anotado: { $dish } se descongela el tiempo que dice la regla.
    [cook-ahead] Anotado: { $dish } se hace el día anterior, se enfría y aquí se calienta a { at-165 }.
    [cook-at-home] Anotado: { $dish } se hace en casa y llega caliente en una nevera aislante.
   *[cooler] Anotado: { $dish } llega caliente en una nevera aislante.
}
fix-not-needed = Eso ya no hace falta.
button-fix-later = Servir { $n } minutos más tarde
button-fix-more-hands = Cocina una persona más
button-fix-borrow-slow-cooker = Una olla lenta más
button-fix-borrow-oven = Un horno más
button-fix-another-circuit = Un circuito más
button-fix-arrive-earlier = { $dish } llega antes
button-fix-temperature = { $dish }: lo que se quiso decir
button-fix-hold-hotter = { $dish }: más caliente
button-fix-thaw-longer = { $dish }: más tiempo para descongelar
button-fix-cook-ahead = { $dish }: hecho el día anterior
button-fix-cook-at-home = { $dish }: llega caliente
button-fix-cooler = { $dish }: llega en nevera
button-heat-venue = { $dish }: se calienta aquí
button-heat-home = En casa
ovenplan-step = { $start }–{ $end } { $dish }: { $what }{ $has-where ->
    [yes] , { $where }
   *[no] {""}
}{ $has-temp ->
    [yes] , { $temp }
   *[no] {""}
}{ $home ->
    [yes] {" "}(en casa)
   *[no] {""}
}
ovenplan-conflict = ⚠ { $why } → { $fix }
ovenplan-too = { $fix } { $other }
ovenplan-or = { $fix } O bien: { $other }
ovenplan-late = ⚠ { $dish }: { $late } minutos tarde, { $wait } minutos de más fuera del fuego
heat-step = { $what } { $minutes } min{ $has-temp ->
    [yes] {" "}a { $temp }
   *[no] {""}
}
step-oven = horno
step-stove = cocina
step-slow-cooker-low = olla de cocción lenta en bajo
step-slow-cooker-high = olla de cocción lenta en alto
step-microwave = microondas
step-grill = parrilla
step-rest = reposar
step-prep = preparar
step-keep-warm = mantener caliente
step-chill = enfriar
step-thaw = descongelar
step-transport = de camino
step-serve = servir
appliance-oven = horno { $n }
appliance-burner = hornilla { $n }
appliance-stove = hornilla { $n }
appliance-slow-cooker = olla lenta { $n }
appliance-microwave = microondas { $n }
appliance-grill = parrilla { $n }
appliance-own = { $kind } propio
