help-asks = quien organiza: tres maneras de cubrir cada hueco
asks-head = { $n ->
    [0] No hay nada que pedir.
   *[other] Maneras de cubrir lo que falta:
}
asks-ask = • pide a <b>{ $name }</b>: { $dish } ({ $category }) para { $servings } – { $why }
asks-host-cooks = • hazlo o llévalo tú: { $dish } ({ $category }) para { $servings }{ $minutes ->
    [0] {""}
   *[other] , unos { $minutes } minutos
} – { $why }
asks-buy = • compra: { $dish } ({ $category }) para { $servings }{ $priced ->
    [yes] , unos { $cost }
   *[no] {""}
} – { $why }
asks-others = Otras maneras:
button-ask = Pedir a { $name }: { $category }
button-ask-yes = Sí, lo llevo
button-ask-no = No, lo siento
ask-in-group = { $name }, ¿podrías llevar { $one } para unas { $servings } personas?
ask-sent = Se le pidió a { $name }.
ask-accepted = { $name } lleva { $one } para { $servings }. ¡Gracias!
ask-thanks = ¡Gracias!
ask-which-dish = { $name }, ¿qué será? Responde con el nombre del plato o déjalo abierto.
ask-dish-noted = Anotado: { $dish } ({ $category }).
ask-declined = { $name } no puede llevar { $one } esta vez.
ask-declined-toast = De acuerdo: no se te volverá a pedir eso.
told-declined = { $name } no puede llevar { $one }; aquí está quién más podría.
