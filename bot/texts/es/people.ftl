help-add = añadir a alguien sin cuenta, por ejemplo «/add mi madre»
help-invite = nombrar a quienes se espera que respondan
help-remove = quitar a alguien que se añadió
help-answer = responder por alguien que conoces, por ejemplo «/answer Pat no»
person-added = Añadido: { $name } ({ $party }).
person-removed = Quitado: { $name }.
invited = { $n ->
    [0] Todos están ya en la lista.
   *[other] Se espera respuesta de { $names }.
}
answered-for = { $name }: { $answer ->
    [yes] viene
    [maybe] quizá
   *[no] no puede
}.
told-answered-for = { $by } respondió por ti: { $answer ->
    [yes] vienes
    [maybe] quizá
   *[no] no puedes
}. Cámbialo con un botón del tablero.
