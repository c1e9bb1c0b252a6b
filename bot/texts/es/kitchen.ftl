# Choques en la cocina y sus salidas. Datos: $dish; $number y $kind del paso; otros según su nombre.

kitchen-frozen-weight = «{ $dish }»: { so-heavy } congelados es más de lo que podemos creer o calcular.
kitchen-too-heavy = «{ $dish }»: { so-heavy } es más de lo que conoce la tabla de asado.
kitchen-unknown-kind = «{ $dish }», paso { $number }: «{ $kind }» no es una clase de paso que conozcamos.
kitchen-minutes = «{ $dish }», paso { $number } ({ $kind }): { $minutes } minutos no puede ser.
kitchen-unknown-place = «{ $dish }», paso { $number }: «{ $at }» no es ni en casa ni en el lugar.
kitchen-temperature-typo = «{ $dish }», paso { $number }: ningún horno llega a { temp-said }{ $likely ->
        [0] .
       *[other] . ¿Se quiso decir { temp-likely }?
    }
kitchen-celsius = «{ $dish }», paso { $number }: { $temp } °F parece una cifra en °C. { $temp } °C serían { $likely } °F.
kitchen-temperature = «{ $dish }», paso { $number } ({ $kind }): { temp-said } no puede ser.
kitchen-hold-too-cool = «{ $dish }», paso { $number }: { temp-said } es muy poco para mantenerlo caliente; lo mínimo es { temp-least }.
kitchen-home-after-venue = «{ $dish }» tiene un paso en casa después de uno en el lugar.
kitchen-thaw-after-heat = «{ $dish }» se descongela después de calentarse.
kitchen-no-oven = { $several ->
    [yes] { $dishes } necesitan horno
   *[no] «{ $dish }» necesita horno
} y no hay ninguno.
kitchen-too-many-pans = «{ $dish }» necesita sitio para { $pans } bandejas a la vez y en el horno más grande caben { $most }.
kitchen-no-burner = { $several ->
    [yes] { $dishes } necesitan la cocina
   *[no] «{ $dish }» necesita la cocina
} y no hay hornilla.
kitchen-no-grill = { $several ->
    [yes] { $dishes } necesitan parrilla
   *[no] «{ $dish }» necesita parrilla
} y no hay ninguna.
kitchen-no-slow-cooker = { $several ->
    [yes] { $dishes } necesitan olla de cocción lenta
   *[no] «{ $dish }» necesita olla de cocción lenta
} y no hay ninguna.
kitchen-no-microwave = { $several ->
    [yes] { $dishes } necesitan microondas
   *[no] «{ $dish }» necesita microondas
} y no hay ninguno.
kitchen-no-hands = { $several ->
    [yes] { $dishes } necesitan las manos de alguien
   *[no] «{ $dish }» necesita las manos de alguien
} y nadie está anotado para cocinar.
kitchen-nothing-to-hold-in = { $several ->
    [yes] { $dishes } se deben mantener calientes
   *[no] «{ $dish }» se debe mantener caliente
} y no hay ni horno ni olla de cocción lenta para ello.
kitchen-watts = «{ $dish }», { $watts } W no puede ser.
kitchen-no-outlet = { $several ->
    [yes] { $dishes } necesitan un enchufe
   *[no] «{ $dish }» necesita un enchufe
} y no hay ninguno.
kitchen-too-much-power = «{ $dish }» consume { $watts } W y ningún circuito aguanta mucho tiempo más de { $most } W.
kitchen-span = { $hours ->
    [0] { $minutes ->
        [one] { $minutes } minuto
       *[other] { $minutes } minutos
    }
    [one] { $hours } hora{ $minutes ->
        [0] {""}
       *[other] {" "}{ $minutes } min
    }
   *[other] { $hours } horas{ $minutes ->
        [0] {""}
       *[other] {" "}{ $minutes } min
    }
}
kitchen-late = «{ $dish }» no puede estar a tiempo: llega { $span } tarde{ $short ->
        [oven] , porque el horno está ocupado.
        [slow-cooker] , porque las ollas de cocción lenta están ocupadas.
        [burner] , porque las hornillas están ocupadas.
        [microwave] , porque el microondas está ocupado.
        [grill] , porque la parrilla está ocupada.
        [hands] , porque nadie tiene una mano libre.
        [power] , porque los circuitos están llenos.
       *[other] . Sus pasos no caben antes.
    }
kitchen-too-long = «{ $dish }» necesita { $need-span } y antes de servir solo quedan { $left-span }: llega { $span } tarde.
kitchen-arrives-late = «{ $dish }» llega cuando la comida ya debe estar en la mesa.
kitchen-off-heat = «{ $dish }» estaría { $span } fuera del fuego antes de servirse{ $short ->
        [oven] , porque el horno está ocupado.
        [slow-cooker] , porque las ollas de cocción lenta están ocupadas.
        [burner] , porque las hornillas están ocupadas.
        [microwave] , porque el microondas está ocupado.
        [grill] , porque la parrilla está ocupada.
        [hands] , porque nadie tiene una mano libre.
        [power] , porque los circuitos están llenos.
       *[other] .
    }
kitchen-fridge-full = En el refrigerador caben unos { $metric ->
    [yes] { $room } l
   *[no] { $room_ft } pies cúbicos
}, y { $dishes } ocupan unos { $metric ->
    [yes] { $litres } l
   *[no] { $litres_ft } pies cúbicos
} (estimado) desde las { $at_time } del { $at_weekday ->
    [0] lunes
    [1] martes
    [2] miércoles
    [3] jueves
    [4] viernes
    [5] sábado
   *[6] domingo
}.
kitchen-thaw-short = Para «{ $dish }» ({ so-heavy }, congelado) se dan { $given } de descongelación y la regla es un día en el refrigerador por cada { $metric ->
    [yes] 1.8 kg
   *[no] 4 lb
}: { $days ->
    [one] un día
   *[other] { $days } días
}.
kitchen-thaw-late = «{ $dish }» ({ so-heavy }, congelado) necesita { $days ->
    [one] un día
   *[other] { $days } días
} en el refrigerador para descongelarse: tenía que estar ahí a las { $by_time } del { thaw-by-weekday }.
thaw-by-weekday = { $by_weekday ->
        [0] lunes
        [1] martes
        [2] miércoles
        [3] jueves
        [4] viernes
        [5] sábado
       *[6] domingo
    }
thaw-water-weekday = { $water_weekday ->
        [0] lunes
        [1] martes
        [2] miércoles
        [3] jueves
        [4] viernes
        [5] sábado
       *[6] domingo
    }
kitchen-servings = «{ $dish }»: { $n } porciones no puede ser.
kitchen-out-min = «{ $dish }»: { $n } minutos fuera del frío o del fuego no puede ser.
kitchen-party = { $name }: { $n } personas juntas no puede ser.
kitchen-travel = { $name }: { $n } minutos de camino no puede ser.
kitchen-need-count = Una dieta o alergia está anotada para más personas de las que vienen juntas.
kitchen-expected = Esperar a { $n } personas no puede ser.
kitchen-price = { $item }: un precio de { $n } no puede ser.

fix-figure = Corrige por favor la cifra.
fix-correct = Corrige por favor el paso.
fix-correct-arrival = Corrige por favor cuándo llega.
fix-temperature = Ponlo a { temp-likely }, si eso se quiso decir.
fix-smaller = Dos más pequeños, de hasta { $metric ->
    [yes] { $most_kg } kg
   *[no] { $most } lb
}, se descongelan y se hacen a tiempo.
fix-thaw-longer = Pásalo del congelador al refrigerador a más tardar a las { $by_time } del { thaw-by-weekday }.
fix-cold-water = Si sigue congelado: en agua fría, cambiada cada 30 minutos, durante { $hours } horas, a más tardar desde las { $water_time } del { thaw-water-weekday }; después se cocina enseguida.
fix-thawed = Si sigue congelado, elige otra cosa o cómpralo descongelado.
fix-hold-hotter = Mantenlo a { temp-least } o más.
fix-cook-ahead = { $several ->
    [yes] Haz antes { $dishes }, enfríalo
   *[no] Hazlo antes en casa, enfríalo
} y recaliéntalo a { at-165 }{ $again ->
    [oven] {" "}en el horno
    [stove] {" "}en la hornilla
    [microwave] {" "}en el microondas
    [home] {" "}en casa
   *[other] {""}
}.
fix-split = { $rounds ->
    [1] Repártelo en { $ovens } hornos.
   *[other] Hornéalo en { $rounds } tandas, { $in_all } en total{ $many ->
        [yes] , o pide a otros que horneen una parte en casa
       *[no] {""}
    }.
}
fix-borrow-slow-cooker = Pide prestada una olla de cocción lenta.
fix-later = Sirve { $by-span } más tarde, a las { $until_time }.
fix-arrive-earlier = Que esté ahí { $by-span } antes, a las { $until_time }{ $that_day ->
        [yes] .
       *[no] {" "}del { $until_weekday ->
            [0] lunes
            [1] martes
            [2] miércoles
            [3] jueves
            [4] viernes
            [5] sábado
           *[6] domingo
        }.
    }
fix-keep-hot = Mantenlo caliente hasta servirlo, a { at-140 } o más: en una olla de cocción lenta, o tapado en un horno a { at-200 }.
fix-more-hands = Pide a una persona más que eche una mano.
fix-another-circuit = Enchúfalo en otro circuito, en otra habitación.
fix-borrow-oven = Pide a un vecino que te preste su horno un rato{ $several ->
    [yes] {" "}para { $dishes }.
   *[no] .
}
fix-cook-at-home = { $several ->
    [yes] Pide que { $dishes } se hagan en casa y lleguen calientes en neveras aislantes precalentadas, a { at-140 } o más.
   *[no] Pide que se haga en casa y llegue caliente en una nevera aislante precalentada, a { at-140 } o más.
}
fix-fewer = Que se calienten aquí menos platos tan tarde: hazlos antes o en otro sitio, o elige platos fríos.
fix-leave-out = Elige otra cosa que no necesite fuego a esa hora.
kitchen-asleep = { $several ->
    [yes] { $dishes } empezarían a las { $at_time } o más tarde
   *[no] «{ $dish }» empezaría a las { $at_time }
}, y desde las { $bed_time } en la cocina ya se duerme.
fix-cooler-cold = Guarda { $out } en una nevera portátil con mucho hielo, a { at-40 } o menos, hasta servir.
fix-second-fridge = Pide a un vecino sitio en un segundo refrigerador: { $out }.
fix-cooler = Tráelo caliente en una nevera aislante precalentada, a { at-140 } o más.
