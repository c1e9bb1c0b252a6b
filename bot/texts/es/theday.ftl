help-out = un plato está en la mesa: empieza su reloj
help-safety = precauciones para esta mesa y quién lo dice
help-why = quién lo dice, por ejemplo «/why ensalada», o en respuesta a lo que dije
help-reminders = quien organiza: los avisos que vienen
out-which = ¿Qué plato está en la mesa, o ya no?
out-started = { $dish } está en la mesa.
out-started-until = { $dish } está en la mesa{ $spent ->
    [0] {""}
   *[other] , y cuentan { $spent } minutos de antes
}: cómanlo, enfríenlo o caliéntenlo bien antes de las { $until }; después, a la basura.
out-over = { $dish } estuvo fuera { $minutes } minutos antes de la mesa: se le acabó el tiempo. A la basura.
out-all = { $n ->
    [one] Corre un reloj.
   *[other] Corren { $n } relojes.
} El primero en acabar: { $dishes }, a las { $until }. Se les avisará antes; /out quita un plato de la mesa.
out-all-over = ✋ <b>Fuera de plazo: { $dishes }.</b> A la basura, { $n ->
    [one] se vea y huela como sea
   *[other] se vean y huelan como sea
}; recalentar no lo arregla.
out-all-running = Todos los platos con reloj están ya en la mesa.
out-stopped = { $dish } ya no está en la mesa, tras { $minutes } minutos en total, que siguen contando.
button-table = Ya está en la mesa
button-all-out = Todo está en la mesa
button-way-too = Templado en el camino: { $n } min
button-why = ¿Quién lo dice?
button-put-away = Frío o caliente otra vez
safety-head = <b>Precauciones</b> – una ayuda para planear, no un servicio de comidas con licencia; las normas locales van primero.
safety-row = { $severity ->
    [block] ✋
    [warn] ⚠
   *[note] •
} { $what } <i>({ $source })</i>
safety-more = … y { $n } más; /why con un plato lo muestra todo.
why-head = <b>Quién lo dice</b>
why-row = • { $has-what ->
    [yes] { $what } – por la regla
   *[no] La regla
} «{ $text }{ $has-value ->
    [yes] : { $value }
   *[no] {""}
}» <i>({ $source }; { $rule })</i>
why-more = … y { $n } más.
refused-why = No conozco ninguna regla sobre eso. Escribe /why en respuesta a lo que dije, o /why con un plato o una de estas cosas: { $topics }.
ill-noted = Que te mejores pronto. Quien estuvo así no cocina para nadie hasta dos días después del último síntoma: desde hoy, hasta { $until }{ $late ->
    [yes] , después de comer
   *[no] {""}
} ({ $source }). { $n ->
    [0] No tienes ninguna comida anotada.
   *[other] Deja por favor que otra persona haga { $dishes }: /give lo pasa, /drop lo quita.
}
ill-follows = Mejor no: de una cocina donde alguien está enfermo así no sale comida para otros, tampoco la hecha justo antes (la lectura prudente), y quien está enfermo, o lo cuida, se queda en casa. Dos días después del último síntoma ya pasó: desde ahora, hasta { $until }{ $late ->
    [yes] , después de comer
   *[no] {""}
}. Otra persona puede traer algo en su lugar. ({ $source })
button-ill-off = Quitar { $dish }
ill-off = { $dishes }: fuera de la lista. { $has-short ->
    [yes] Ahora falta: { $short }.
   *[no] {""}
}
reminders-head = { $n ->
    [one] Viene un aviso:
   *[other] Vienen { $n } avisos:
}
reminders-none = No viene ningún aviso.
