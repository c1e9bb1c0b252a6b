# Fechas con las que no se puede hacer nada, y notas sobre las que sí. Los días vienen como día, número y mes.
when-not-understood = No encuentro ahí una fecha. Escríbela como «sábado 18 de septiembre 17:00».
when-which-day = ¿Qué día quieres decir con «{ $words }»? Escríbelo como «sábado 18 de septiembre 17:00».
when-past = { $time ->
    [none] El { $weekday ->
        [monday] lunes
        [tuesday] martes
        [wednesday] miércoles
        [thursday] jueves
        [friday] viernes
        [saturday] sábado
       *[sunday] domingo
    } { $day } de { $month ->
        [1] enero
        [2] febrero
        [3] marzo
        [4] abril
        [5] mayo
        [6] junio
        [7] julio
        [8] agosto
        [9] septiembre
        [10] octubre
        [11] noviembre
       *[12] diciembre
    } ya pasó. El próximo día así es el { $other_weekday ->
        [monday] lunes
        [tuesday] martes
        [wednesday] miércoles
        [thursday] jueves
        [friday] viernes
        [saturday] sábado
       *[sunday] domingo
    } { $other_day } de { $other_month ->
        [1] enero
        [2] febrero
        [3] marzo
        [4] abril
        [5] mayo
        [6] junio
        [7] julio
        [8] agosto
        [9] septiembre
        [10] octubre
        [11] noviembre
       *[12] diciembre
    } de { $other_year_text }: escribe esa fecha si es la que quieres.
   *[other] El { $weekday ->
        [monday] lunes
        [tuesday] martes
        [wednesday] miércoles
        [thursday] jueves
        [friday] viernes
        [saturday] sábado
       *[sunday] domingo
    } { $day } de { $month ->
        [1] enero
        [2] febrero
        [3] marzo
        [4] abril
        [5] mayo
        [6] junio
        [7] julio
        [8] agosto
        [9] septiembre
        [10] octubre
        [11] noviembre
       *[12] diciembre
    } a las { $time } ya pasó. La próxima vez así es el { $other_weekday ->
        [monday] lunes
        [tuesday] martes
        [wednesday] miércoles
        [thursday] jueves
        [friday] viernes
        [saturday] sábado
       *[sunday] domingo
    } { $other_day } de { $other_month ->
        [1] enero
        [2] febrero
        [3] marzo
        [4] abril
        [5] mayo
        [6] junio
        [7] julio
        [8] agosto
        [9] septiembre
        [10] octubre
        [11] noviembre
       *[12] diciembre
    } de { $other_year_text }: escribe esa fecha si es la que quieres.
}
when-weekday-disagrees = El { $day } de { $month ->
        [1] enero
        [2] febrero
        [3] marzo
        [4] abril
        [5] mayo
        [6] junio
        [7] julio
        [8] agosto
        [9] septiembre
        [10] octubre
        [11] noviembre
       *[12] diciembre
    } es { $weekday ->
        [monday] lunes
        [tuesday] martes
        [wednesday] miércoles
        [thursday] jueves
        [friday] viernes
        [saturday] sábado
       *[sunday] domingo
    }, no { $said ->
        [monday] lunes
        [tuesday] martes
        [wednesday] miércoles
        [thursday] jueves
        [friday] viernes
        [saturday] sábado
       *[sunday] domingo
    }. ¿Quisiste decir el { $day } de { $month ->
        [1] enero
        [2] febrero
        [3] marzo
        [4] abril
        [5] mayo
        [6] junio
        [7] julio
        [8] agosto
        [9] septiembre
        [10] octubre
        [11] noviembre
       *[12] diciembre
    } o el { $other_weekday ->
        [monday] lunes
        [tuesday] martes
        [wednesday] miércoles
        [thursday] jueves
        [friday] viernes
        [saturday] sábado
       *[sunday] domingo
    } { $other_day } de { $other_month ->
        [1] enero
        [2] febrero
        [3] marzo
        [4] abril
        [5] mayo
        [6] junio
        [7] julio
        [8] agosto
        [9] septiembre
        [10] octubre
        [11] noviembre
       *[12] diciembre
    }?
when-29-february = { $year_text } no tiene 29 de febrero; el próximo es en { $leap_text }. ¿Qué día quieres decir?
when-no-such-day = El mes de { $month ->
        [1] enero
        [2] febrero
        [3] marzo
        [4] abril
        [5] mayo
        [6] junio
        [7] julio
        [8] agosto
        [9] septiembre
        [10] octubre
        [11] noviembre
       *[12] diciembre
    } no tiene día { $day }. ¿Qué día quieres decir?
when-no-fifth = Ese mes solo tiene cuatro. ¿Qué día quieres decir?
when-no-such-day-number = Ningún mes tiene día { $day }. ¿Qué día quieres decir?
when-day-or-month = «{ $written }» puede ser el { $day } de { $month ->
        [1] enero
        [2] febrero
        [3] marzo
        [4] abril
        [5] mayo
        [6] junio
        [7] julio
        [8] agosto
        [9] septiembre
        [10] octubre
        [11] noviembre
       *[12] diciembre
    } o el { $other_day } de { $other_month ->
        [1] enero
        [2] febrero
        [3] marzo
        [4] abril
        [5] mayo
        [6] junio
        [7] julio
        [8] agosto
        [9] septiembre
        [10] octubre
        [11] noviembre
       *[12] diciembre
    }. Escribe el mes con letras.
when-am-or-pm = ¿«{ $written }» de la mañana o de la tarde? Escríbelo con 24 horas, por ejemplo «17:00».
when-no-such-time = «{ $written }» no es una hora del día. Escríbela como «17:00» o «5pm».
when-too-far = El { $weekday ->
        [monday] lunes
        [tuesday] martes
        [wednesday] miércoles
        [thursday] jueves
        [friday] viernes
        [saturday] sábado
       *[sunday] domingo
    } { $day } de { $month ->
        [1] enero
        [2] febrero
        [3] marzo
        [4] abril
        [5] mayo
        [6] junio
        [7] julio
        [8] agosto
        [9] septiembre
        [10] octubre
        [11] noviembre
       *[12] diciembre
    } de { $year_text } está a más de tres años. ¿Qué año quieres decir?
when-next-weekday = Lo tomé como el { $weekday ->
        [monday] lunes
        [tuesday] martes
        [wednesday] miércoles
        [thursday] jueves
        [friday] viernes
        [saturday] sábado
       *[sunday] domingo
    } { $day } de { $month ->
        [1] enero
        [2] febrero
        [3] marzo
        [4] abril
        [5] mayo
        [6] junio
        [7] julio
        [8] agosto
        [9] septiembre
        [10] octubre
        [11] noviembre
       *[12] diciembre
    }, de la semana que viene.
when-skipped-hour = Esa noche se adelantan los relojes y las { $said } no existen, así que tomé las { $shown }.
when-doubled-hour = Esa noche se atrasan los relojes y las { $said } llegan dos veces; tomé la primera.
when-midnight = Tomé la medianoche como el final del { $weekday ->
        [monday] lunes
        [tuesday] martes
        [wednesday] miércoles
        [thursday] jueves
        [friday] viernes
        [saturday] sábado
       *[sunday] domingo
    } { $day } de { $month ->
        [1] enero
        [2] febrero
        [3] marzo
        [4] abril
        [5] mayo
        [6] junio
        [7] julio
        [8] agosto
        [9] septiembre
        [10] octubre
        [11] noviembre
       *[12] diciembre
    }.
when-no-date = ¿Qué día? Escríbelo como «sábado 18 de septiembre { $words }».
when-people-number = Con { $n } personas no puedo calcular; escribe un número de { $low } a { $high }.
