# $rows what is promised; $have portions of it, $wanted if everybody takes one, $short how many fewer
enough-listed = On the list: { $rows } – about { $have } portions in all. If all { $people } people take one, that is { $wanted } { $short ->
    [0] grown-up portions.
   *[other] grown-up portions: about { $short } short.
}
enough-row = { $dish }{ $has-amount ->
    [yes] {" "}{ $amount }
   *[no] {""}
} ({ $name })
enough-nobody = Nobody has { $thing } on the list yet.
