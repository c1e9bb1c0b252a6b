help-bring = llevar algo, por ejemplo «/bring ensalada para 12»
help-drop = ya no llevar algo
help-give = pasarle un plato a otra persona, por ejemplo «/give ensalada to Mei»
help-share = llevar un plato entre dos, por ejemplo «/share ensalada with Mei»
help-contains = decir qué lleva tu plato

button-bring = Llevar algo
button-missing = Qué falta
button-own-words = Con mis palabras
button-something-else = Otra cosa
button-drop = Quitar { $dish }

bring-category = { $category } para unas { $servings }
bring-offer = { $name }, esto es lo que más ayudaría:
bring-which = { $name }, ¿qué { $category }, para unas { $servings } personas?
bring-see-private = Te escribí en privado.
bring-see-here = Mira abajo: esos botones son tuyos.
ask-bring = { $name }, ¿qué vas a llevar? Responde a esto, por ejemplo «ensalada para 12».
bring-told = llevo
bring-noted = Anotado: { $dish } { $amount } ({ $category }).{ $doubled ->
    [0] {""}
    [one] {" "}{ $others } también lo lleva: está bien, o elige otra cosa.
   *[other] {" "}{ $others } también lo llevan: está bien, o elige otra cosa.
}
bring-as-what = «{ $dish }»: no lo conozco. ¿Qué es en la mesa?
button-nothing = Nada, déjalo
bring-toast = Tuyo: { $dish }. ¡Gracias!
dropped = Fuera de la lista: { $dish }.
told-dropped = { $by } quitó tu plato de la lista: { $dish }.
given = { $dish } pasa a { $name }.
told-given = { $by } te pasó { $dish }. /list muestra lo que llevas; /drop lo quita.
shared = { $name } también lleva { $dish }, entre los dos.
told-shared = Tú y { $by } llevan { $dish } juntos.
contains-noted = { $dish } lleva, según quien lo cocina: { $ingredients }.

board-table = <b>La mesa</b> (porciones prometidas de las deseadas)
board-row = { $category } { $promised }/{ $target }{ $short ->
    [0] { $dishes ->
        [0] {" "}✓
        [one] {" "}– ayudaría un plato más
       *[other] {" "}– ayudarían { $dishes } platos más
    }
   *[other] {" "}– faltan { $short }
}
board-dish = {"  "}• { $dish } { $amount } – { $cooks }
board-more-dishes = {"  "}• y { $n } más
board-kinds = {"  "}• nadie todavía: { $kinds }
