ice-gone = Sin hielo, lo que se echa a perder tiene { $limit } minutos en total por encima de { $metric ->
    [yes] 4 °C
   *[no] 40 °F
}, contando lo de antes; después, a la basura.{ $has-dishes ->
    [yes] {" "}Es: { $dishes }.
   *[no] {""}
} Tengan las hieleras cerradas y a la sombra, junten lo frío y cómanlo primero.{ $has-coming ->
    [yes] {" "}Aún no llegan y podrían traer hielo: { $coming }.
   *[no] {""}
} <i>({ $source })</i>
