understood = Noted: { $what }.
read-answer = { $answer ->
    [yes] coming
    [maybe] maybe
   *[no] can’t come
}
read-answer-for = { $name } { $answer ->
    [yes] is coming
    [maybe] maybe
   *[no] can’t come
}
read-still-theirs = still on the list: { $dishes } – /drop takes it off if nobody brings it
read-party = { $party }
read-needs = { $n ->
    [1] { $needs }
   *[other] { $needs } ({ $n } people)
}
read-no-needs = no special needs
read-needs-gone = no longer { $needs }
read-person = { $name } comes too
read-promise = { $dish } { $amount } ({ $category }){ $has-heat ->
    [yes] {" "}– { $heat }
   *[no] {""}
}
read-doubled = { $others } { $doubled ->
    [one] brings
   *[other] bring
} { $dish } too
read-changed = { $dish } { $amount } instead of { $was }
read-pregnant = { $pregnant ->
    [yes] something for the cautions, kept without your name
   *[no] nothing more for the cautions
}
read-when = it is on { $when }
read-where = it is at { $place }
read-size = about { $people } people
read-kitchen = the kitchen has { $words }
read-dropped = not { $dish } any more
read-topping = { $topping } for the bar
edited-away = Taken back: what this message said before.
read-nothing = There was nothing left to note.
read-left = Left as it was.
read-done = Done.
answer-when = It is on { $when }.
answer-where = { $known ->
    [yes] It is at { $place }.
   *[no] The place is not set yet; the host can set it with /where.
}
answer-who-comes = { $n ->
    [0] Nobody has said yes yet.
   *[other] Coming so far: { $names }.
}
answer-brings = { $name }: { $dish }
answer-who-brings = { $lines }
answer-nobody-brings = Nobody brings { $has-what ->
    [no] anything
   *[yes] { $what }
} yet.
answer-ask-host = That is for { $has-host ->
    [no] the host
   *[yes] { $host }
} to say; I passed it on.
told-question = { $name } asks: “{ $words }”
