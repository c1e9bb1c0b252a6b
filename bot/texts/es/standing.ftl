standing-pending = { $has-waiting ->
    [yes] Todavía no contestan: { $waiting }.
   *[no] Todos los que conozco contestaron; a quien nunca escribió no lo conozco.
}{ $has-maybe ->
    [yes] {" "}Quizá: { $maybe }.
   *[no] {""}
}
standing-ran-out = { $has-dishes ->
    [yes] Se acabó, según dijeron: { $dishes }.
   *[no] Nadie me ha dicho que algo se haya acabado.
}
