help-list = what you said and what you bring
list-stranger = You are not on the list yet; press a button on the board first.
list-head = <b>{ $name }</b> – { $when }{ $has-place ->
    [yes] , { $place }
   *[no] {""}
}
list-answer = { $answer ->
    [yes] You are coming: { $party }.
    [maybe] Maybe: { $party }.
    [no] You can’t come.
   *[none] You have not said yet whether you come.
}
list-promise = • { $dish } { $amount }{ $n ->
    [0] {""}
   *[other] , together with { $names }
}
list-arrive = {"  "}be there by { $when }
list-toppings = • toppings: { $toppings }
list-added = • added by you: { $name } ({ $answer ->
    [yes] coming
    [maybe] maybe
    [no] can’t come
   *[none] no answer yet
})
list-nothing = You bring nothing so far; /bring shows what would help.
list-needs = Your needs: { $needs }
