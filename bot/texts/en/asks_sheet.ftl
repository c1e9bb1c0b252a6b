help-asks = hosts: three ways to close every gap
asks-head = { $n ->
    [0] There is nothing to ask for.
   *[other] Ways to close the gaps:
}
asks-ask = • ask <b>{ $name }</b>: { $dish } ({ $category }) for { $servings } – { $why }
asks-host-cooks = • make or bring it yourself: { $dish } ({ $category }) for { $servings }{ $minutes ->
    [0] {""}
   *[other] , about { $minutes } minutes
} – { $why }
asks-buy = • buy: { $dish } ({ $category }) for { $servings }{ $priced ->
    [yes] , about { $cost }
   *[no] {""}
} – { $why }
asks-others = Other ways:
button-ask = Ask { $name }: { $category }
button-ask-yes = Yes, I'll bring it
button-ask-no = No, sorry
ask-in-group = { $name }, could you bring { $one } for about { $servings }?
ask-sent = { $name } has been asked.
ask-accepted = { $name } brings { $one } for { $servings }. Thank you!
ask-thanks = Thank you!
ask-which-dish = { $name }, what will it be? Reply with the name of the dish, or leave it open.
ask-dish-noted = Noted: { $dish } ({ $category }).
ask-declined = { $name } can’t bring { $one } this time.
ask-declined-toast = All right – you won’t be asked for that again.
told-declined = { $name } can’t bring { $one }; here is who else could.
