# Notas de higiene. Cada una tiene $rule (la fila de la tabla). Nada se llama seguro: los textos dicen qué hacer
# y hasta cuándo, y qué está declarado. `..._time` es hora de pared, `..._weekday` va de 0 (lunes) a 6 (domingo).

at-140 = { $metric ->
    [yes] 60 °C
   *[no] 140 °F
}
from-40-to-140 = { $metric ->
    [yes] 4 y 60 °C
   *[no] 40 y 140 °F
}
at-165 = { $metric ->
    [yes] 74 °C
   *[no] 165 °F
}
at-40 = { $metric ->
    [yes] 4 °C
   *[no] 40 °F
}
at-90 = { $metric ->
    [yes] 32 °C
   *[no] 90 °F
}
at-325 = { $metric ->
    [yes] 165 °C
   *[no] 325 °F
}
at-200 = { $metric ->
    [yes] 95 °C
   *[no] 200 °F
}
at-160 = { $metric ->
    [yes] 71 °C
   *[no] 160 °F
}
at-145 = { $metric ->
    [yes] 63 °C
   *[no] 145 °F
}
temp-said = { $metric ->
    [yes] { $temp_c } °C
   *[no] { $temp } °F
}
temp-likely = { $metric ->
    [yes] { $likely_c } °C
   *[no] { $likely } °F
}
temp-least = { $metric ->
    [yes] { $least_c } °C
   *[no] { $least } °F
}
so-heavy = { $metric ->
    [yes] { $lb_kg } kg
   *[no] { $lb } lb
}
so-much = { $metric ->
    [yes] { $volume_l } l
   *[no] { $volume } qt
}
so-large = { $metric ->
    [yes] { $size_l } l
   *[no] { $size } qt
}

safety-out-plan = «{ $dish }» puede estar fuera hasta las { $by_time } si se pone en la mesa a las { $at_time }{ $spent ->
        [0] {""}
        [one] , contando un minuto antes fuera del frío o del fuego
       *[other] , contando { $spent } minutos antes fuera del frío o del fuego
    }{ $assumed ->
        [yes] {" "}(al aire libre, en los meses cálidos contamos con { at-90 }: una hora)
       *[no] {""}
    }. Después, otra vez por debajo de { at-40 } o por encima de { at-140 }.
safety-out-running = «{ $dish }» está fuera. Antes de las { $by_time } devuélvelo al frío o caliéntalo bien; después, a la basura.
safety-out-over = «{ $dish }» lleva fuera más de { $limit ->
        [60] una hora con calor
       *[120] dos horas
    } (hasta las { $by_time }). A la basura.
safety-out-spent = «{ $dish }» ya estuvo { $spent } minutos fuera del frío o del fuego, y el límite es { $limit }. No debe ponerse en la mesa.
safety-out-between = «{ $dish }» sale del fuego a las { $at_time } y se come mucho después: { $hot ->
    [yes] mantenlo a { at-140 } o más hasta entonces. Pasadas las { $by_time } sin calor, no debe ponerse en la mesa.
   *[no] guárdalo entretanto en el refrigerador, en recipientes bajos. Lo que siga fuera a las { $by_time } no debe ponerse en la mesa.
}
safety-out-keeps = «{ $dish }» está en la lista de alimentos que se conservan a temperatura ambiente. El reloj se muestra solo porque se puso en marcha.

safety-cool-ahead = «{ $dish }»: después de cocinarlo, enfríalo en recipientes bajos, de no más de { $metric ->
    [yes] 5 cm
   *[no] { $inches } pulgadas
} de fondo, y en el refrigerador antes de { $hours } horas.
safety-way-cold = De camino lleva lo frío en una nevera portátil con hielo, a { at-40 } o menos; los minutos fuera del frío cuentan junto con los de la mesa.
safety-way-hot = De camino lleva lo caliente envuelto en un recipiente aislante, a { at-140 } o más; los minutos fuera del fuego cuentan junto con los de la mesa.
safety-leftovers-chill = Las sobras, al refrigerador antes de las { $by_time }{ $hours ->
        [1] {" "}(una hora, porque afuera hace calor)
       *[2] {""}
    }, o a la basura.
safety-leftovers-shallow = Enfría las sobras en recipientes bajos, de no más de { $metric ->
    [yes] 5 cm
   *[no] { $inches } pulgadas
} de fondo.
safety-leftovers-days = Come las sobras refrigeradas antes de { $days } días.
safety-leftovers-short = Sobras de «{ $dish }»: cómelas antes de { $days ->
        [one] { $days } día
       *[other] { $days } días
    }.

safety-thaw-fridge = «{ $dish }» ({ so-heavy }, congelado) debe estar en el refrigerador antes de las { $by_time } del { $by_weekday ->
        [0] lunes
        [1] martes
        [2] miércoles
        [3] jueves
        [4] viernes
        [5] sábado
       *[6] domingo
    }: un día por cada { $metric ->
        [yes] 1.8 kg
       *[no] 4 lb
    }, aquí { $days ->
        [one] { $days } día
       *[other] { $days } días
    }. Nunca sobre la mesa.
safety-thaw-water = «{ $dish }» ({ so-heavy }) ya no se descongela a tiempo en el refrigerador. En agua fría tarda { $hours } horas: empieza antes de las { $by_time } del { $by_weekday ->
        [0] lunes
        [1] martes
        [2] miércoles
        [3] jueves
        [4] viernes
        [5] sábado
       *[6] domingo
    }, cambia el agua cada 30 minutos y cocínalo en seguida.
safety-thaw-too-late = «{ $dish }» ({ so-heavy }, congelado) no se puede descongelar a tiempo: incluso en agua fría necesita { $hours } horas. Elige otra cosa.

safety-slow-warm = «{ $dish }»: la posición de mantener caliente no cocina. Caliéntalo antes a { at-165 } y luego mantenlo caliente.
safety-slow-reheat = «{ $dish }» ya está cocinado: la olla de cocción lenta no debe recalentarlo. Llévalo a { at-165 } o a hervir en la cocina y mantenlo luego en la olla a { at-140 } o más.
safety-slow-short = «{ $dish }»: { $minutes } minutos en una olla de cocción lenta calientan más que cocinan. Si ya está cocinado, caliéntalo antes a { at-165 } en la cocina.
safety-slow-frozen = «{ $dish }» no debe entrar congelado en la olla de cocción lenta. Descongélalo antes por completo.
safety-slow-full = «{ $dish }» son unos { so-much }, y una olla de { so-large } no debe llenarse más de dos tercios. Repártelo o usa una más grande.
safety-slow-empty = «{ $dish }» son unos { so-much }, y una olla de { so-large } debe estar llena al menos hasta la mitad. Usa una más pequeña.
safety-slow-big = «{ $dish }»: corta en trozos un ave entera o un asado grande para la olla de cocción lenta, o sigue el tamaño de su manual.
safety-kidney-dry = «{ $dish }»: los frijoles rojos secos deben hervir fuerte { $minutes } minutos en agua limpia antes de toda cocción lenta. Los de lata no hace falta.
safety-kidney-ask = «{ $dish }» lleva frijoles rojos. ¿Son de lata, o hervidos antes { $minutes } minutos? Los secos no deben ir directamente a la olla de cocción lenta.

safety-hold-hot = «{ $dish }»: mantenlo a { at-140 } o más hasta comerlo.
safety-hold-too-cool = «{ $dish }»: { temp-said } es muy poco para mantenerlo caliente. Mantenlo a { at-140 } o más.
safety-reheat = «{ $dish }»: recaliéntalo a { at-165 } por dentro.
safety-reheat-boil = «{ $dish }»: llévalo a hervir al recalentarlo.
safety-reheat-oven = «{ $dish }»: recaliéntalo con el horno a { at-325 } o más, no a { temp-said }.
safety-cook-through = «{ $dish }»: cocínalo a { $rule ->
        [COOK-02] { at-160 }
        [COOK-12] { at-160 }
        [COOK-15] { at-145 }
       *[other] { at-165 }
    } por dentro, con un termómetro en la parte más gruesa.

safety-raw-egg = «{ $dish }» suele hacerse con huevo crudo. Usa huevo pasteurizado.
safety-raw-dough = «{ $dish }»: la harina cruda no está lista para comer. Hornéala o usa harina tratada con calor, de la tienda.
safety-home-canned = «{ $dish }» está declarado como conserva casera. Verduras, carne y pescado en conserva casera sin olla de presión pueden tener botulismo: por favor, déjalo fuera.
safety-wild-mushroom = «{ $dish }» está declarado con setas silvestres. Lleva solo setas compradas en una tienda.
safety-rice = «{ $dish }»: mantén el arroz cocido a { at-140 } o más, o enfríalo en una o dos horas. Recalentar no deshace lo que crece entretanto.
safety-foil-potato = «{ $dish }»: saca las papas al horno del papel de aluminio o mantenlas calientes. No las dejes templadas en el papel.
safety-honey = «{ $dish }» lleva miel, que no se debe dar a menores de un año, ni siquiera cocida. Hay un bebé entre los invitados.
safety-choke = «{ $dish }» ({ $what }) puede atragantar a menores de cuatro años. Corta lo redondo a lo largo en cuartos, de { $metric ->
    [yes] 1 cm
   *[no] media pulgada
} como mucho; aleja de ellos frutos secos, palomitas y caramelos duros.
safety-choke-older = «{ $dish }» ({ $what }): que los niños se sienten a comerlo, y vigílalos.
safety-listeria-sprouts = «{ $dish }» ({ $what }): no crudo para quien está embarazada, es mayor o tiene pocas defensas.
safety-listeria-unpasteurized = «{ $dish }» ({ $what }): no para quien está embarazada, es mayor o tiene pocas defensas.
safety-listeria-raw-animal = «{ $dish }» ({ $what }): crudo o poco hecho, así que no para quien está embarazada, es mayor o tiene pocas defensas.
safety-listeria-soft-cheese = «{ $dish }» ({ $what }): quien está embarazada debe evitarlo, salvo que la etiqueta del queso diga pasteurizado.
safety-listeria-pate = «{ $dish }» ({ $what }): quien está embarazada debe evitar los patés y cremas de carne refrigerados.
safety-listeria-smoked-fish = «{ $dish }» ({ $what }): quien está embarazada debe evitar el pescado ahumado en frío, salvo cocinado en el plato.
safety-listeria-deli = «{ $dish }» ({ $what }): para quien está embarazada, solo humeante, a { at-165 }.
safety-listeria-seafood-salad = «{ $dish }» ({ $what }): quien está embarazada debe evitar las ensaladas preparadas de mariscos o carne.

safety-what-is-avoided = { $need ->
    [gluten-free] gluten
    [gluten] gluten
    [dairy-free] leche
    [milk] leche
    [egg] huevo
    [fish] pescado
    [shellfish] crustáceos
    [wheat] trigo
    [soy] soya
    [sesame] sésamo
    [nut-free] frutos secos
    [tree-nut] frutos de cáscara
    [peanut] maní
    [sulphites] sulfitos
   *[other] { $need }
}
safety-allergen = { $who ->
    [cook] «{ $dish }» contiene { safety-what-is-avoided }, según quien lo cocina.
   *[name] «{ $dish }» contiene { safety-what-is-avoided }, a juzgar por su nombre.
} { $degree ->
    [severe] Alguien aquí tiene alergia grave a eso y no debe comer nada de ello. Pide a quien cocina que lo deje fuera; si se queda, ponle etiqueta y cuchara propia, y lejos de los demás platos.
    [allergy] Alguien aquí no debe comer eso: ponle etiqueta y cuchara propia, y apártalo.
   *[intolerance] Alguien aquí no lo tolera: ponle etiqueta y cuchara propia.
}
safety-allergen-usual = «{ $dish }» suele hacerse con { safety-what-is-avoided }, y alguien aquí no debe comer eso. Pregunta a quien lo cocina qué lleva; ponle etiqueta y cuchara propia.
safety-allergen-perhaps = «{ $dish }» puede contener { safety-what-is-avoided }, y alguien aquí no debe comer eso. Pide a quien lo cocina que mire las etiquetas.
safety-allergen-topping = El ingrediente «{ $dish }» contiene { safety-what-is-avoided }. { $degree ->
    [severe] Alguien aquí tiene alergia grave a eso: mejor dejarlo fuera de la barra. Si se queda, ponlo al final con cuchara propia y que esa persona se sirva primero.
   *[allergy] Alguien aquí no debe comer eso: ponlo al final de la barra con cuchara propia y que esa persona se sirva primero.
}

safety-circuit-full = El circuito { $number } lleva en su peor momento { $watts } de { $most } W. No enchufes nada más en él.
safety-no-strips = Enchufa ollas de cocción lenta, microondas y asadores directamente en la pared, no en una regleta.

safety-planning-aid = Esto ayuda a planear; no es un servicio de comidas con licencia, ni sanidad, ni un médico. Los alérgenos son los que dijeron quienes cocinan.
safety-when-in-doubt = En la duda, a la basura.
safety-ill-cook = Quien tuvo vómitos o diarrea no cocina para nadie hasta { $hours } horas después del último síntoma.
safety-health-department = Si se invita al público o se venden platos, pregunta antes a la autoridad sanitaria local.
safety-poison-line = { $country ->
        [us] Ayuda en intoxicaciones: 1-800-222-1222.
       *[other] Ayuda en intoxicaciones: el número de tu país (en EE. UU., 1-800-222-1222).
    }
safety-emergency = { $country ->
        [us] Dificultad para respirar o desmayo: llama al 911.
       *[other] Dificultad para respirar o desmayo: llama a tu número de emergencias (112 en Europa, 911 en EE. UU.).
    }
