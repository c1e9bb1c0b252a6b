standing-pending = { $has-waiting ->
    [yes] No answer yet from { $waiting }.
   *[no] Everybody I know of has answered; who never wrote I do not know.
}{ $has-maybe ->
    [yes] {" "}Maybe: { $maybe }.
   *[no] {""}
}
standing-ran-out = { $has-dishes ->
    [yes] Ran out, as was told: { $dishes }.
   *[no] Nobody has told me that anything ran out.
}
