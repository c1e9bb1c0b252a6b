help-table = cada plato de la mesa: de quién es, qué lleva, cubiertos para servir, etiquetas que faltan
table-head = { $n ->
    [0] Todavía no hay nada en la mesa; /bring pone un plato.
   *[other] <b>La mesa</b>
}
table-row = • { $dish } ({ $name }){ $hot ->
    [yes] , caliente
   *[no] {""}
}: { $basis ->
    [cook] { $has-contains ->
        [yes] contiene { $contains }, según quien lo cocina
       *[no] ninguno de los alérgenos declarados, según quien lo cocina
    }
    [usual-recipe] { $has-contains ->
        [yes] suele contener { $contains }; pregunta a quien lo cocina
       *[no] no suele llevar alérgenos declarados; pregunta a quien lo cocina
    }
   *[unknown] no se sabe qué lleva; pregunta a quien lo cocina
}{ $out ->
    [yes] {" "}– fuera desde las { $since }
   *[no] {""}
}
table-tools = <b>Preparen</b>: { $tools } – uno para cada plato, para no llevar nada de uno a otro.
table-tool = { $n } × { $what }
table-trivets = { $n ->
    [one] Un salvamanteles para el plato caliente.
   *[other] { $n } salvamanteles para los platos calientes.
}
table-labels = { $n ->
    [one] Quien lo cocina aún no ha dicho qué lleva: { $dishes }.
   *[other] Quienes los cocinan aún no han dicho qué llevan: { $dishes }.
} Escribe «/contains» con los ingredientes; /print hace las tarjetas.
tool-spoon = cuchara de servir
tool-ladle = cucharón
tool-salad-servers = par de cubiertos de ensalada
tool-tongs = pinzas
tool-slotted-spoon = espumadera
tool-cake-server = pala de pastel
tool-spatula = espátula
tool-carving-knife = cuchillo de trinchar con tabla
tool-bread-knife = cuchillo de pan con tabla
tool-cheese-knife = cuchillo de queso
