eatfirst = Esto puede ir primero: { $dishes }.{ $clocks ->
    [yes] {" "}Su tiempo corre desde que está en la mesa; saquen una parte y dejen lo demás caliente o frío.
   *[no] {""}
}{ $has-waits ->
    [yes] {" "}{ $waits }, solo cuando esté hecho y medido, hacia las { $ready }.
   *[no] {" "}Lo que sigue al fuego, solo cuando esté hecho y medido.
}
