contents-heard = En { $dish }, según quien lo hace: { $what }.{ $whole ->
    [yes] {""}
   *[no] {" "}Qué más lleva no lo ha dicho nadie: /contains lo anota todo.
}
contents-which = ¿Cuál de tus platos lleva { $what }?
