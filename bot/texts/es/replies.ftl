# Preguntas sobre lo que escribió alguien; se contestan con Sí y No. $words es lo que escribió.
reply-ask-answer = ¿Te anoto como { $answer ->
    [yes] que vienes
    [maybe] quizá
   *[no] que no vienes
}?
reply-ask-answer-of = ¿Anoto a { $name } como { $answer ->
    [yes] que viene
    [maybe] quizá
   *[no] que no viene
}?
reply-ask-answers-of = ¿Anoto a { $names } como { $answer ->
    [yes] que vienen
    [maybe] quizá
   *[no] que no vienen
}?
reply-ask-party = ¿Son { $people ->
    [one] 1 persona
   *[other] { $people } personas
} en total?
reply-ask-more = ¿{ $people ->
    [one] Una persona más
   *[other] { $people } personas más
} contigo?
reply-ask-fewer = ¿{ $people ->
    [one] Una persona menos
   *[other] { $people } personas menos
} contigo?
reply-ask-needs = ¿Anoto para los tuyos: { $needs }?
reply-needs-known = Ya está anotado: { $needs }. { $question }
reply-ask-needs-gone = ¿Quito esto de lo que necesitas: { $needs }?
reply-ask-needs-of = ¿Anoto para { $name }: { $needs }?
reply-ask-needs-gone-of = ¿Quito esto de lo que necesita { $name }: { $needs }?
reply-ask-promise = ¿Vas a llevar { $dish }?
reply-ask-promise-of = ¿{ $name } lleva { $dish }?
reply-ask-promise-if = ¿Te anoto { $dish }?
reply-ask-what-is-it = ¿«{ $dish }» es algo para la mesa?
reply-ask-change = ¿Cambio lo tuyo: { $dish }?
reply-ask-drop = ¿Quito { $dish } de tu lista?
reply-ask-give = ¿Le paso { $dish } a { $name }?
reply-ask-drop-which = ¿Cuál de tus platos quito?
reply-ask-topping = ¿Llevas { $toppings }?
reply-ask-person = ¿Añado a { $names }?
reply-ask-pregnant = ¿Anoto que «{ $words }»?
reply-ask-size = ¿Son { $people } personas en total, contando a todos?
reply-ask-move = ¿El convite es ahora en { $place }?
reply-ask-reschedule = ¿Paso el convite a { $when }?
reply-ask-kitchen = ¿Anoto esto para la cocina?
reply-not-understood = No lo entendí; escríbelo como «venimos 3, ensalada para 12».
reply-other-language = Ese idioma no lo leo. Escríbelo como «venimos 3, ensalada para 12», o usa los botones.
reply-ask-late = ¿Vas a llegar tarde?
reply-ask-undo = ¿Deshago tu último cambio?
reply-ask-ask = ¿Es una pregunta para mí?
reply-ask-allergy = ¿«{ $words }» es una alergia que debo anotar?

reply-why-read = Lo leí en «{ $words }».
reply-why-nothing = { $reason ->
    [joke] Lo retiraste como broma.
    [hypothetical] Decía lo que podría pasar, no lo que pasará.
    [reported] Contaba lo que dijo otra persona.
    [past] Era sobre el pasado.
    [others] Era sobre lo que deben hacer otros.
    [elsewhere] Era sobre otra cosa.
    [unsure] No estaba lo bastante seguro.
   *[none] No encontré nada para el convite.
}
reply-why-chatter = No me lo escribían a mí y no estaba seguro de que fuera sobre este convite.
