allergy-of = { safety-what-is-avoided }
# $what the whole message
allergy-told = { $what }
allergy-aloud = { $names }:
    { $what }
# $degree (severe, allergy), $name of whose it is, only for the host’s eyes
allergy-head = ⚠️ { $has-name ->
    [yes] { $name }
   *[no] Alguien
} { $degree ->
    [severe] tiene alergia grave a: { $needs }.
   *[allergy] no debe comer: { $needs }.
}
# $how (listed, named, usual, perhaps), $names of the cooks
allergy-dish = • { $dish }{ $has-names ->
    [yes] {" "}({ $names })
   *[no] {""}
}: { $how ->
    [listed] lleva { $needs }, según quien lo cocina
    [named] lleva { $needs }, a juzgar por su nombre
    [usual] suele llevar { $needs }
   *[perhaps] quizá lleva { $needs }
}
allergy-nothing-known = De nada de la lista se sabe por ahora que lo lleve.
allergy-unlisted = Nadie ha dicho qué llevan: { $dishes }. Antes de comer de ello se pregunta a quien lo cocina.
allergy-list-it = Di todo lo que lleva: «/contains { $dish }: …».
# $to (host, cook, group)
allergy-do = { $to ->
    [host] Quienes cocinan también lo saben, sin nombre. Acuerda con ellos: hacerlo sin eso, traer otra cosa, o etiqueta y cuchara propia, aparte.
    [group] Por favor, háganlo sin eso, traigan otra cosa, o etiqueta y cuchara propia, aparte; con /contains se dice qué lleva un plato.
   *[cook] ¿Puedes hacerlo sin eso o traer otra cosa? Si se queda como está: etiqueta, cuchara propia y lejos de los demás platos.
} <i>({ $source })</i>
allergy-do-now = <b>Ahora:</b> { $to ->
    [cook] di a quien organiza qué lleva. Ponle etiqueta, cuchara propia y un sitio lejos de los demás platos.
   *[host] estos platos llevan etiqueta, cuchara propia y un sitio aparte. Esa persona se sirve primero, y solo de platos cuyo cocinero sepa nombrar todo lo que llevan.
} <i>({ $source })</i>
allergy-passed-on = { $cooks ->
    [yes] Lo saben quien organiza y quienes cocinan esos platos, ellos sin tu nombre.
   *[no] Lo sabe quien organiza.
} { $urgent ->
    [yes] Come solo de platos cuyo cocinero sepa nombrarte todo lo que llevan, y sírvete antes que los demás.
   *[no] Pregunta a quien cocina antes de comer.
}
allergy-back = Ya no: de quienes vienen, nadie figura ahora como «sin { $needs }» ({ $dishes }). Pregunta a quien organiza antes de cambiar lo que cocinas.
allergy-comes-after-all = Tengo anotado que no vienes; de una alergia grave aviso igual a quienes cocinan. ¿Vienes entonces?
# $what the lines of what is new
allergy-new-dish = ⚠️ Nuevo en la lista, y no es para ti:
    { $what }
