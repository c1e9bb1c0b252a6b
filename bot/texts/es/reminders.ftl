# Avisos. `..._time` es hora de pared como 16:10, `..._weekday` va de 0 (lunes) a 6 (domingo).

reminder-answer-by = { $answer ->
    [maybe] Dijiste quizá: ¿puedes decirnos antes de las { $by_time } del { $by_weekday ->
        [0] lunes
        [1] martes
        [2] miércoles
        [3] jueves
        [4] viernes
        [5] sábado
       *[6] domingo
    } si vienes?
   *[none] ¿Vienes? Dilo por favor antes de las { $by_time } del { $by_weekday ->
        [0] lunes
        [1] martes
        [2] miércoles
        [3] jueves
        [4] viernes
        [5] sábado
       *[6] domingo
    }, para que alcance para todos.
}

reminder-bring-today = Hoy es el día. Llevas: { $dishes }.{ $early ->
    [yes] {" "}Llega por favor antes de las { $at_time }.
   *[no] {""}
}
reminder-bring-tomorrow = Mañana es el día. Llevas: { $dishes }.{ $early ->
    [yes] {" "}Llega por favor antes de las { $at_time }.
   *[no] {""}
}
reminder-bring-before = Llevas: { $dishes }. Llega por favor antes de las { $at_time } del { $at_weekday ->
        [0] lunes
        [1] martes
        [2] miércoles
        [3] jueves
        [4] viernes
        [5] sábado
       *[6] domingo
    }.

reminder-your-heat = { $covered ->
    [yes] Trae { $hot } con tapa:
   *[no] { $hot }:
} { $where ->
    [oven] al horno a { temp-said }
    [stove] al fuego
    [slow-cooker] a una olla lenta
    [microwave] al microondas
   *[grill] a la parrilla
} de { $from_time } a { $until_time }.
reminder-bring-today-hot = { reminder-bring-today } { reminder-your-heat }
reminder-bring-tomorrow-hot = { reminder-bring-tomorrow } { reminder-your-heat }
reminder-bring-before-hot = { reminder-bring-before } { reminder-your-heat }

reminder-thaw = Pasa «{ $dish }» del congelador al refrigerador antes de las { $by_time } del { $by_weekday ->
        [0] lunes
        [1] martes
        [2] miércoles
        [3] jueves
        [4] viernes
        [5] sábado
       *[6] domingo
    }: { so-heavy } tardan allí { $days ->
        [one] { $days } día
       *[other] { $days } días
    } en descongelarse. Nunca sobre la mesa.

reminder-slow-cooker = Enciende ahora la olla de cocción lenta: «{ $dish }» en { $setting ->
        [high] alto
       *[low] bajo
    }, hasta las { $until_time }.

reminder-slow-cooker-before = «{ $dish }»: ¿se hace en olla de cocción lenta? En { $setting ->
        [high] alto
       *[low] bajo
    } suele tardar { $hours } horas y tendría que encenderse a las { $at_time }. Di cómo se hace, así: «/heat { $dish }: horno 40 min a 190 °C».
reminder-slow-cooker-usual = «{ $dish }»: ¿se hace en olla de cocción lenta? Entonces tendría que encenderse ahora, en { $setting ->
        [high] alto
       *[low] bajo
    }, hasta las { $until_time }. Si se hace de otra manera, dilo con /heat.

reminder-preheat-dial = Enciende ya el horno { $oven } y ponlo a { temp-said } en el mando (marca mal, como me dijiste). Adentro a las { $at_time }: { $dishes }.
reminder-preheat = Enciende ahora el horno { $oven }, { temp-said }. A las { $at_time } entra: { $dishes }.

reminder-grill = Enciende ahora la parrilla. A las { $at_time } se pone: { $dishes }.
reminder-grill-on = A la parrilla ahora: { $dishes }, hasta las { $until_time }.
reminder-swap = Horno { $oven }, sacar ahora: { $out }. { $change ->
        [yes] Ponlo a { temp-said }. A las { $at_time } entra: { $dishes }.
       *[no] A las { $at_time }, a los mismos { temp-said }, entra: { $dishes }.
    }

# $oven, $out; $dishes, $temp
reminder-take-out = Horno { $oven }, saca ahora: { $out }.
reminder-put-in = Horno { $oven }, mete ahora: { $dishes }. Sigue a { temp-said }.

reminder-leave = { $minutes ->
    [0] Te esperan a las { $at_time }: sal con tiempo.
    [one] Hora de salir: te esperan a las { $at_time } y tardas { $minutes } minuto.
   *[other] Hora de salir: te esperan a las { $at_time } y tardas { $minutes } minutos.
}

reminder-answer-by-named = Sin respuesta todavía de { $names }. A un nombre sin cuenta no le llega ningún mensaje, así que pregúntales tú; /answer con el nombre y yes, maybe o no lo anota.
reminder-start = Empieza ahora: ¡bienvenidos todos!

reminder-out-limit = «{ $dish }» casi ha agotado { $limit ->
        [60] su hora
       *[120] sus dos horas
    } a temperatura ambiente o más. Antes de las { $by_time } devuélvelo al frío o caliéntalo bien; después, a la basura.

reminder-out-limit-unsaid = En la mesa desde las { $since_time }, sin calor ni hielo: ¿{ $dishes }? Entonces, antes de las { $by_time } otra vez al frío o bien caliente; después, a la basura. Con /out me dices qué está fuera de verdad.
reminder-collect = { $has-names ->
        [yes] ¡Gracias, { $names }, y todos los que vinieron!
       *[no] ¡Gracias a todos!
    } { $count ->
        [0] Miren por favor si se quedó algo de ustedes.
       *[other] Recojan por favor lo suyo: { $dishes }.
    }
reminder-return = ¿Hay aquí un plato o una caja que no es tuya, o está la tuya en otra casa? Pulsa «Platos por devolver» cuando haya vuelto: { $dishes }.
