# $dishes of the list with honey in them, $n of them
may-infant-honey = ✋ <b>Nada de miel antes del primer cumpleaños, ni probarla ni horneada: puede enfermar gravemente a un bebé (botulismo).</b>{ $n ->
    [0] {""}
   *[other] {" "}Según lo declarado hay miel en { $dishes }.
} Qué más lleva un plato solo lo sabe quien lo cocina. <i>({ $source })</i>
# $n dishes named below
may-avoid-head = { $n ->
    [0] En el embarazo, según las listas publicadas: de ningún plato de nuestra lista se sabe hasta ahora que sea uno de ellos.
   *[other] En el embarazo, según las listas publicadas, de lo que hay en nuestra lista:
}
may-avoid-line = • { $said }
may-avoid-ask = Nadie ha dicho qué llevan { $dishes }: pregunta a quien cocina.
# $what sorts of food
may-avoid-lists = En el embarazo se dejan: { $what }. Ante la duda no se come, y se pregunta al médico o a la matrona. <i>({ $source })</i>
