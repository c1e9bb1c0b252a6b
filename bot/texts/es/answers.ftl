button-coming = Voy
button-maybe = Quizá
button-cant = No puedo
button-party = Quiénes venimos
button-needs = Mi dieta, en privado

answer-noted = { $answer ->
    [yes] Vienes: { $party }. Cámbialo con «Quiénes venimos».
    [maybe] Anotado como quizá: { $party }.
   *[no] Anotado: no puedes venir. Gracias por avisar.
}
answer-same = { $answer ->
    [yes] Ya estás en la lista: { $party }.
    [maybe] Ya estás como quizá: { $party }.
   *[no] Ya está anotado que no vienes.
}
answer-no-with-dishes = Anotado: no puedes venir. Sigue siendo tuyo: { $dishes }. Quítalo con /drop si nadie lo lleva por ti.

party-sheet = { $name }, ¿quién viene contigo? Ahora: { $party }.
party-done = { $name }: { $party }.
party-now = Ahora: { $party }.
party-press-signs = Pulsa + o −.
party-see-private = Te escribí en privado.
party-see-here = Mira abajo: esos botones son tuyos.

board-coming = <b>Vienen: { $people }</b>{ $people ->
    [0] {""}
   *[other] {" "}({ $by-age })
}{ $maybe ->
    [0] {""}
   *[other] {" "}· quizá { $maybe }
}{ $no ->
    [0] {""}
   *[other] {" "}· no pueden { $no }
}{ $silent ->
    [0] {""}
   *[other] {" "}· sin respuesta { $silent }
}
board-party = { $n ->
    [1] { $name }
   *[other] { $name } ({ $n })
}
board-names = { $names }{ $more ->
    [0] {""}
   *[other] {" "}y { $more } más
}
board-silent = Sin respuesta: { $names }{ $more ->
    [0] {""}
   *[other] {" "}y { $more } más
}
board-plan-for = Calculado para { $people } (probablemente { $low }–{ $high })
