button-coming = Coming
button-maybe = Maybe
button-cant = Can't
button-party = My party
button-needs = My diet, privately

answer-noted = { $answer ->
    [yes] You are coming: { $party }. Change it with “My party”.
    [maybe] Noted as maybe: { $party }.
   *[no] Noted: you can’t come. Thank you for saying so.
}
answer-same = { $answer ->
    [yes] You are already down as coming: { $party }.
    [maybe] You are already down as maybe: { $party }.
   *[no] You are already down as not coming.
}
answer-no-with-dishes = Noted: you can’t come. Still yours: { $dishes } – drop it with /drop if nobody brings it for you.

party-sheet = { $name }, who comes with you? Now: { $party }.
party-done = { $name }: { $party }.
party-now = Now: { $party }.
party-press-signs = Press + or −.
party-see-private = I wrote to you in private.
party-see-here = Look below: those buttons are yours.

board-coming = <b>Coming: { $people }</b>{ $people ->
    [0] {""}
   *[other] {" "}({ $by-age })
}{ $maybe ->
    [0] {""}
   *[other] {" "}· maybe { $maybe }
}{ $no ->
    [0] {""}
   *[other] {" "}· can’t { $no }
}{ $silent ->
    [0] {""}
   *[other] {" "}· no answer yet { $silent }
}
board-party = { $n ->
    [1] { $name }
   *[other] { $name } ({ $n })
}
board-names = { $names }{ $more ->
    [0] {""}
   *[other] {" "}and { $more } more
}
board-silent = No answer yet: { $names }{ $more ->
    [0] {""}
   *[other] {" "}and { $more } more
}
board-plan-for = Plan for { $people } ({ $low }–{ $high } likely)
