help-table = every dish on the table: whose it is, what it contains, serving tools, labels missing
table-head = { $n ->
    [0] Nothing stands on the table yet; /bring puts a dish there.
   *[other] <b>The table</b>
}
table-row = • { $dish } ({ $name }){ $hot ->
    [yes] , hot
   *[no] {""}
}: { $basis ->
    [cook] { $has-contains ->
        [yes] contains { $contains }, says the cook
       *[no] none of the listed allergens, says the cook
    }
    [usual-recipe] { $has-contains ->
        [yes] usually contains { $contains }; ask the cook
       *[no] usually none of the listed allergens; ask the cook
    }
   *[unknown] contents not known; ask the cook
}{ $out ->
    [yes] {" "}– out since { $since }
   *[no] {""}
}
table-tools = <b>Lay out</b>: { $tools } – one for each dish, so that nothing is carried from one to another.
table-tool = { $n } × { $what }
table-trivets = { $n ->
    [one] One trivet for the hot dish.
   *[other] { $n } trivets for the hot dishes.
}
table-labels = { $n ->
    [one] Its cook has not said what is in it yet: { $dishes }.
   *[other] Their cooks have not said what is in them yet: { $dishes }.
} Say “/contains” with the ingredients; /print makes the cards.
tool-spoon = serving spoon
tool-ladle = ladle
tool-salad-servers = pair of salad servers
tool-tongs = tongs
tool-slotted-spoon = slotted spoon
tool-cake-server = cake server
tool-spatula = spatula
tool-carving-knife = carving knife and board
tool-bread-knife = bread knife and board
tool-cheese-knife = cheese knife
