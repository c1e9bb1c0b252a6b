understood = Anotado: { $what }.
understood-and-ask = Anotado: { $what }. { $question }
numbered = { $n }. { $what }
read-answer = { $answer ->
    [yes] vienes
    [maybe] quizá
   *[no] no puedes
}
read-answer-for = { $name } { $answer ->
    [yes] viene
    [maybe] quizá
   *[no] no puede
}
read-still-theirs = sigue en la lista: { $dishes } – /drop lo quita si nadie lo lleva
read-party = { $party }
# $n how many have it
read-need = { $n ->
    [1] { $need }
   *[other] { $need } para { $n }
}
# $name of whose it is, where it is not the writer
read-needs = { $needs }{ $has-name ->
    [yes] {" "}({ $name })
   *[no] {""}
}
read-no-needs = nada especial
read-needs-gone = ya no { $needs }
read-person = { $name } viene también
read-promise = { $dish } { $amount } ({ $category }){ $has-heat ->
    [yes] {" "}– { $heat }
   *[no] {""}
}
read-doubled = { $others } también { $doubled ->
    [one] lleva
   *[other] llevan
} { $dish }
read-resized = ahora { $dish } { $amount }
read-changed = { $dish } { $amount } en lugar de { $was }
read-pregnant = { $pregnant ->
    [yes] algo para las precauciones, guardado sin tu nombre
   *[no] nada más para las precauciones
}
read-arrives = ahí desde las { $at }
read-when = es { $when }
read-where = es en { $place }
read-size = unas { $people } personas
read-heat-unclear = no dijiste cuánto se calienta { $dish } («{ $words }»): /heat lo anota
read-kitchen = la cocina tiene { $words }
read-dropped = ya no { $dish }
read-given = { $name } lleva ahora { $dish }
read-topping = { $topping } para la barra
read-unread = No entendí «{ $words }»: escríbelo otra vez con otras palabras.
edited-away = Retirado: lo que decía antes este mensaje.
read-nothing = No quedaba nada que anotar.
read-left = Se queda como estaba.
read-done = Hecho.
answer-when = Es { $when }.
answer-where = { $known ->
    [yes] Es en { $place }.
   *[no] El lugar todavía no está; quien organiza lo pone con /where.
}
answer-who-comes = { $n ->
    [0] Nadie ha dicho que sí todavía.
   *[other] Por ahora vienen { $people ->
        [one] 1 persona
       *[other] { $people } personas
    } en total: { $names }.
}
answer-brings = { $name }: { $dish }
answer-who-brings = { $lines }
answer-nobody-brings = Nadie lleva todavía { $has-what ->
    [no] nada
   *[yes] { $what }
}.
answer-ask-host = Eso lo dice { $host }; se lo pasé.
answer-nobody-knows = Eso no lo sé.
answer-comes = { $answer ->
    [yes] { $name } viene.
    [maybe] Quizá viene { $name }.
    [no] { $name } no puede venir.
   *[none] { $name } todavía no ha dicho nada.
}
answer-brings-all = { $has-dishes ->
    [yes] { $name } lleva { $dishes }.
   *[no] { $name } todavía no ha prometido nada.
}
why-done = Por tus palabras «{ $words }». /undo lo deshace.
why-asked = No estaba seguro de qué querías decir con «{ $words }», así que pregunté.
why-unknown = No hice nada por tus palabras que pueda explicar. /undo deshace tu último cambio.
gap = { $short ->
    [one] falta 1 porción: { $category }
   *[other] faltan { $short } porciones: { $category }
}
told-dropped-out = { $name } al final no puede venir{ $has-dishes ->
    [yes] {""}. Sigue a su nombre: { $dishes }
   *[no] {""}
}.{ $has-short ->
    [yes] {" "}Ahora { $short }.
   *[no] {""}
}
told-gave-up = { $name } ya no lleva { $dishes }.{ $has-short ->
    [yes] {" "}Ahora { $short }.
   *[no] {""}
}
told-question = { $name } pregunta: «{ $words }»
