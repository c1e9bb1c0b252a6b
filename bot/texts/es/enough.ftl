enough-listed = Anotado: { $rows }; unas { $have } porciones en total. Si las { $people } personas toman una, son { $wanted } porciones de adulto{ $short ->
    [0] .
   *[other] : faltan unas { $short }.
}
enough-row = { $dish }{ $has-amount ->
    [yes] {" "}{ $amount }
   *[no] {""}
} ({ $name })
enough-nobody = Nadie tiene { $thing } en la lista todavía.
