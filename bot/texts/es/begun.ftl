begun-done = <b>{ $dish }</b>: puesto desde las { $since }; { $minutes } minutos al fuego terminan hacia las { $done }; mídelo entonces.{ $rest ->
    [0] {""}
   *[other] {" "}Reposa { $rest } minutos: hacia las { $ready }.
}{ $early ->
    [yes] {" "}Eso es antes de las { $start }: desde entonces mantenlo a { at-140 } o más hasta servirlo{ $slow ->
        [yes] , la olla en calentar
       *[no] {""}
    }.
   *[no] {""}
}
begun-late = Son { $late } minutos después de las { $start }. { $manages ->
    [yes] Di otra hora («comemos a las { $ready }») o sirvan antes lo demás; lo que espera se queda a { at-140 } o más, o al frío.
   *[no] Si la comida espera lo dice { $host }; lo que espera se queda a { at-140 } o más, o al frío.
}
begun-when = Es el { $when }; { $dish } está hacia las { $ready }, según lo dicho.
