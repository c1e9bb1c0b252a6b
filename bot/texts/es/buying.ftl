help-shopping = lo que nadie lleva, por paquetes
help-amount = cuánto hace falta de algo, por ejemplo «/amount papas»
help-price = quien organiza: tu propio precio, por ejemplo «/price potatoes 4.50 per 5 lb bag»
help-paid = quién pagó qué, por ejemplo «/paid 23.40 carbón»
shopping-head = { $n ->
    [0] No hay nada que comprar: todo está prometido.
   *[other] <b>Por comprar</b> – lo que nadie lleva:
}
package = { $count } × { $size }
shopping-row = ☐ { $item }: { $n ->
    [0] { $need } { $unit }
   *[other] { $packs } (hacen falta { $need } { $unit })
}{ $priced ->
    [yes] {" "}– { $estimated ->
        [yes] unos { $cost } (estimado)
       *[no] { $cost }
    }
   *[no] {""}
}
shopping-total = En total unos { $total }{ $has-budget ->
    [yes] {" "}de { $budget }{ $over ->
        [yes] {" "}– por encima del presupuesto
       *[no] {""}
    }
   *[no] {""}
}.
amount-of = { $item } para { $people } personas: { $total } { $unit } ({ $per } cada una); compra { $n ->
    [0] { $buy } { $buyunit }
   *[other] { $packs }
}. Fuente: { $source }.
price-noted = { $item }: { $money } por { $per }.
paid-head = <b>Gastos comunes</b>
paid-row = • { $name } pagó { $money }{ $has-what ->
    [yes] {" "}por { $what }
   *[no] {""}
}
handed-row = • { $name } dio a { $to } { $money }
owes-nothing = Todo está a mano.
owes-row = { $name } da { $money } a { $to }

# Paquetes, en el orden de este idioma.
package-of = { $pack } de { $n }
package-sized = { $pack } de { $amount }
pack-pack = paquete
pack-bag = bolsa
pack-bottle = botella
pack-jar = frasco
pack-jug = jarra
pack-tub = tarrina
pack-can = lata
pack-cans = latas
pack-bunch = manojo
pack-box = caja
pack-loaf = pan
pack-carton = cartón
pack-pan = fuente
