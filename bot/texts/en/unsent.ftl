help-unsent = what I could not deliver, and why
unsent-none = Everything I had to say about this potluck was delivered, or is on its way.
unsent-head = { $n ->
    [one] One message could not be delivered:
   *[other] { $n } messages could not be delivered, newest first:
}
unsent-line = • { $whose ->
    [group] for the group
    [guest] for { $name }
   *[other] for somebody who is no guest any more
}{ $reminds ->
    [yes] {", "}reminder “{ $kind }”
   *[no] {""}
}{ $said ->
    [yes] {", "}“{ $words }”
   *[no] {""}
}: { $why }
