help-shopping = what nobody brings, in packages
help-amount = how much of something, like “/amount potatoes”
help-price = hosts: your own price, like “/price potatoes 4.50 per 5 lb bag”
help-paid = who paid what, like “/paid 23.40 charcoal”
shopping-head = { $n ->
    [0] Nothing to buy: everything is promised.
   *[other] <b>To buy</b> – what nobody brings:
}
package = { $count } × { $size }
shopping-row = ☐ { $item }: { $n ->
    [0] { $need } { $unit }
   *[other] { $packs } (need { $need } { $unit })
}{ $priced ->
    [yes] {" "}– { $estimated ->
        [yes] about { $cost } (estimate)
       *[no] { $cost }
    }
   *[no] {""}
}
shopping-total = Together about { $total }{ $has-budget ->
    [yes] {" "}of { $budget }{ $over ->
        [yes] {" "}– over the budget
       *[no] {""}
    }
   *[no] {""}
}.
amount-of = { $item } for { $people } people: { $total } { $unit } ({ $per } each); buy { $n ->
    [0] { $buy } { $buyunit }
   *[other] { $packs }
}. Source: { $source }.
price-noted = { $item }: { $money } per { $per }.
paid-head = <b>Shared costs</b>
paid-row = • { $name } paid { $money }{ $has-what ->
    [yes] {" "}for { $what }
   *[no] {""}
}
handed-row = • { $name } gave { $to } { $money }
owes-nothing = All is even.
owes-row = { $name } gives { $to } { $money }

# Packages, where a language puts them in another order than the tables.
package-of = { $pack } of { $n }
package-sized = { $amount } { $pack }
pack-pack = pack
pack-bag = bag
pack-bottle = bottle
pack-jar = jar
pack-jug = jug
pack-tub = tub
pack-can = can
pack-cans = cans
pack-bunch = bunch
pack-box = box
pack-loaf = loaf
pack-carton = carton
pack-pan = pan
