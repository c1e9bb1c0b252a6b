help-potlucks = several potlucks: choose which one is meant
several-head = { $n ->
    [one] There is one potluck ahead:
   *[other] { $n } potlucks ahead – choose the one we talk about:
}
several-row = { $current ->
    [yes] ✓{" "}
   *[no] {""}
}{ $has-title ->
    [yes] { $title }, { $when }
   *[no] { $when }
}
several-chosen = Now we talk about { $when }.
