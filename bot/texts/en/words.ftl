understood = Noted: { $what }.
understood-and-ask = Noted: { $what }. { $question }
numbered = { $n }. { $what }
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
# $n how many have it
read-need = { $n ->
    [1] { $need }
   *[other] { $need } for { $n }
}
# $name of whose it is, where it is not the writer
read-needs = { $needs }{ $has-name ->
    [yes] {" "}({ $name })
   *[no] {""}
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
read-resized = { $dish } { $amount } now
read-changed = { $dish } { $amount } instead of { $was }
read-pregnant = { $pregnant ->
    [yes] something for the cautions, kept without your name
   *[no] nothing more for the cautions
}
read-arrives = there from { $at }
read-when = it is on { $when }
read-where = it is at { $place }
read-size = about { $people } people
read-heat-unclear = how long { $dish } is heated you did not say (“{ $words }”): /heat notes it
read-kitchen = the kitchen has { $words }
read-dropped = not { $dish } any more
read-given = { $name } brings { $dish } now
read-topping = { $topping } for the bar
read-unread = I did not get “{ $words }” – please write it again in other words.
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
   *[other] Coming so far, { $people ->
        [one] 1 person
       *[other] { $people } people
    } in all: { $names }.
}
answer-brings = { $name }: { $dish }
answer-who-brings = { $lines }
answer-nobody-brings = Nobody brings { $has-what ->
    [no] anything
   *[yes] { $what }
} yet.
answer-ask-host = That is for { $host } to say; I passed it on.
answer-nobody-knows = That I do not know.
answer-comes = { $answer ->
    [yes] { $name } is coming.
    [maybe] { $name } may come.
    [no] { $name } can’t come.
   *[none] { $name } has not said yet.
}
answer-brings-all = { $has-dishes ->
    [yes] { $name } brings { $dishes }.
   *[no] { $name } has not promised anything yet.
}
why-done = Because of your words “{ $words }”. /undo takes it back.
why-asked = I was not sure what you meant by “{ $words }”, so I asked.
why-unknown = I did not do anything on your words that I could explain. /undo takes back your last change.
gap = { $short ->
    [one] 1 serving short: { $category }
   *[other] { $short } servings short: { $category }
}
told-dropped-out = { $name } can’t come after all{ $has-dishes ->
    [yes] {""}. Still in that name: { $dishes }
   *[no] {""}
}.{ $has-short ->
    [yes] {" "}Now { $short }.
   *[no] {""}
}
told-gave-up = { $name } does not bring { $dishes } any more.{ $has-short ->
    [yes] {" "}Now { $short }.
   *[no] {""}
}
told-question = { $name } asks: “{ $words }”
