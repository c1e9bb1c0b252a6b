help-potlucks = varios convites: elegir de cuál se habla
several-head = { $n ->
    [one] Hay un convite por delante:
   *[other] Hay { $n } convites por delante: elige de cuál hablamos:
}
several-row = { $current ->
    [yes] ✓{" "}
   *[no] {""}
}{ $has-title ->
    [yes] { $title }, { $when }
   *[no] { $when }
}
several-chosen = Ahora hablamos de { $when }.
