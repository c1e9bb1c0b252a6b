help-eat = qué puedes comer, según lo que declararon quienes cocinan
eat-no-needs = No me has dicho que necesites nada; /needs lo anota.
eat-nobody-needs = Nadie me ha dicho que necesite algo.
eat-head = Según lo que declararon quienes cocinan:
eat-head-all = Toda la mesa, según lo que declararon quienes cocinan:
eat-row = • { $need }, { $category }: { $n ->
    [0] nada todavía que se haya declarado sin ello
   *[other] nada declarado en { $dishes }, según quienes cocinan
}{ $m ->
    [0] {""}
   *[other] ; pregunta antes por { $ask }
}{ $short ->
    [yes] {" "}– falta
   *[no] {""}
}
eat-never = ✋ No es para ti: { $dish } – { $needs } ({ $sure ->
    [yes] está en la lista o en el nombre
   *[no] suele llevarlo
})
eat-ask-cook = { $dish } ({ $name })
eat-note = En las cocinas de casa y con cucharas compartidas todo se mezcla; si hay alergia, pregunta a quien cocina antes de comer.
eat-in-private = Te lo digo en privado.
button-private = Abrir nuestro chat privado
eat-of-dish = { $dish }: { $said }{ $has-name ->
    [yes] {" "}Lo cocina { $name }.
   *[no] {""}
}
eat-suits = { $n ->
    [0] Nada en la lista todavía que, según quien lo cocina, sirva para { $need }.
   *[other] Para { $need }, según la lista de quien lo cocina: { $dishes }.
}
eat-suits-ask = Pregunta antes a quien cocina: { $dishes }.
eat-suits-not = • para eso no: { $dish }. { $said }
eat-food = • { $dish }: { $how ->
    [listed] con { $what }, según quien lo cocina.
    [named] { $what }, por su nombre.
    [usual] suele llevar { $what }; quien lo cocina no lo ha dicho.
    [without] { $what } no está en lo que declaró quien lo cocina.
   *[open] nadie ha dicho si lleva { $what }.
}{ $has-name ->
    [yes] {" "}{ $name } lo sabe.
   *[no] {""}
}
eat-who-free = Según la lista de quien lo cocina, sin { $what }: { $dishes }.
# $contains the main allergens, $items as the cook listed them, $basis (cook, usual-recipe, unknown)
eat-in-dish = { $dish }: { $basis ->
    [cook] { $items }, según quien lo cocina.
    [usual-recipe] quien lo cocina no ha dicho qué lleva; { $has-contains ->
        [yes] suele llevar { $contains }.
       *[no] la receta habitual no nombra ninguno de los alérgenos principales.
    }
   *[unknown] quien lo cocina no ha dicho qué lleva{ $has-contains ->
        [yes] ; por su nombre, { $contains }.
       *[no] .
    }
}
# $what an allergen or a diet, $n dishes
eat-who-has = { $n ->
    [0] En la lista nada lo nombra por ahora ({ $what }).
   *[other] En la lista con ello, o quizá ({ $what }):
}
eat-spoken-of = No está en la lista, pero { $known ->
    [yes] { $name }
   *[no] alguien
} habló de { $what }: pregunta antes de comerlo.
eat-who-unknown = Nadie ha dicho qué llevan: { $dishes }.
