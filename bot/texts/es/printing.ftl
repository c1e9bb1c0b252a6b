help-picture = una imagen de la mesa; /picture cocina para la cocina
help-calendar = el convite para el calendario de tu teléfono
help-print = quien organiza: hoja de cocina, tarjetas, menú, compras, etiquetas

picture-table = <b>{ $title }</b> – la mesa hasta ahora, { $when }
picture-kitchen = <b>{ $title }</b> – la cocina, se sirve { $when }
picture-names-needs = Dice de quién es cada necesidad, para cocinar; la imagen pedida en el grupo no lo dice.
button-picture-table = Imagen de la mesa
button-picture-kitchen = Imagen de la cocina
button-own-list = Mi lista, en privado
refused-picture-words = Puedo dibujar la mesa con /picture y la cocina con /picture cocina.

print-which = ¿Qué imprimo? Cada cosa llega como PDF.
button-print-run = Hoja de cocina
button-print-cards = Tarjetas de mesa
button-print-bar = Menú de la barra
button-print-shop = Lista de compras
button-print-tags = Etiquetas
button-print-all = Todo
print-private = Está en tu chat privado conmigo.
print-run = Hoja para la cocina – { $title }
print-cards = Tarjetas de mesa, para cortar y doblar – { $title }. Muestran lo que está declarado y quién lo dijo.
print-bar = Menú de la barra – { $title }
print-shop = Lista de compras – { $title }
print-tags = Etiquetas para que cada plato vuelva a su casa – { $title }
refused-print-words = Imprimo la hoja de cocina, las tarjetas, el menú de la barra, la lista de compras y las etiquetas; /print a solas los muestra.

calendar-own = { $title } para tu calendario, con lo que llevas y tus avisos. Pídelo de nuevo tras un cambio: sustituye la entrada anterior.
calendar-all = { $title } para el calendario de todos. Pídelo de nuevo tras un cambio: sustituye la entrada anterior.
calendar-private = El archivo de calendario está en tu chat privado conmigo.
