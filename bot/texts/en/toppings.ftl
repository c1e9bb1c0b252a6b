help-bar = the toppings bar, like “/bar baked potato”
button-bar = Toppings bar
bar-none = There is no toppings bar yet. A host may open one – { $bases } – or name another base, like “/bar noodles”.
bar-chosen = The bar is { $base } now, with { $n } toppings to choose from.
bar-chosen-toast = Base: { $base }.
bar-closed = The toppings bar is closed.
bar-topping-added = On the list now: { $topping }.
bar-combo-added = Combo { $name }: { $toppings }.
bar-head = <b>Toppings bar: { $base }</b> – ✓ yours, • taken, ★ would open most
bar-taken = • { $topping } { $amount } – { $name }
bar-amount = (about { $value } { $unit })
bar-open = { $n ->
    [0] No combo is complete yet.
   *[other] Complete: { $names }.
}
bar-nearest = { $name } still needs { $missing }.
bar-best = { $n ->
    [one] One more topping – { $toppings } – opens { $m ->
        [0] nothing yet
       *[other] { $opens }
    }.
   *[other] { $n } more toppings – { $toppings } – open { $m ->
        [0] nothing yet
       *[other] { $opens }
    }.
}
bar-curve = More still: { $steps }.
bar-curve-step = { $n ->
    [one] with one more { $m ->
        [one] one combo
       *[other] { $m } combos
    }
   *[other] with { $n } more { $m }
}
bar-yours = { $topping } is yours { $amount }.{ $n ->
    [0] {""}
   *[other] {" "}That completes { $opened }!
}
bar-given-back = { $topping } is free again.
board-bar = <b>Bar: { $base }</b>{ $n ->
    [0] {" "}– no toppings taken yet
   *[other] {" "}– { $taken }
}{ $more ->
    [0] {""}
   *[other] {" "}and { $more } more
}
board-bar-open = Complete: { $names }
board-bar-next = { $name } needs { $missing }
