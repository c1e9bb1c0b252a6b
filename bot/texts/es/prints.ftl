# Palabras en imágenes, en papel y en el archivo de calendario. Todo texto llano.

prints-untitled = Nuestro convite
prints-somebody = alguien
prints-a-dish = un plato
prints-nobody-yet = nadie todavía
prints-package = { $count } × { $size }
prints-servings = { $count ->
    [one] { $count } porción
   *[other] { $count } porciones
}
prints-category = { $category ->
    [main] Platos fuertes
    [side] Guarniciones
    [salad] Ensaladas
    [starter] Entradas
    [bread] Pan
    [dessert] Postres
    [drink] Bebidas
    [topping] Ingredientes
    [supplies] Utensilios
   *[other] { $category }
}
prints-need = { $need ->
    [milk] leche
    [egg] huevo
    [fish] pescado
    [shellfish] crustáceos
    [tree-nut] frutos de cáscara
    [peanut] maní
    [wheat] trigo
    [soy] soya
    [sesame] sésamo
    [mustard] mostaza
    [celery] apio
    [lupin] altramuz
    [mollusc] moluscos
    [sulphite] sulfitos
    [vegetarian] vegetariano
    [vegan] vegano
    [pescatarian] pescetariano
    [gluten] gluten
    [gluten-free] sin gluten
    [dairy-free] sin lácteos
    [nut-free] sin frutos secos
    [halal] halal
    [kosher] kosher
    [egg-free] sin huevo
    [soy-free] sin soya
    [pork-free] sin cerdo
    [beef-free] sin carne de res
    [red-meat-free] sin carne roja
    [alcohol-free] sin alcohol
    [fish-free] sin pescado
    [seafood-free] sin pescado ni mariscos
    [honey-free] sin miel
    [low-salt] bajo en sal
    [low-carb] bajo en carbohidratos
    [diabetic] diabético
    [soft-food] comida blanda
    [low-fodmap] bajo en FODMAP
    [paleo] paleo
    [poultry-free] sin aves
    [gelatin-free] sin gelatina
    [oat-free] sin avena
    [alpha-gal] alfa-gal
    [jain] jainista
    [hindu-vegetarian] vegetariano hindú
    [sulphites] sulfitos
    [coconut] coco
   *[other] { $need }
}

## Imagen de la mesa

prints-people = Unas { $count } personas
prints-people-range = Unas { $count } personas ({ $low } a { $high })
prints-missing = Falta todavía
prints-nothing-missing = No falta nada
prints-short-line = { $category }: { $count ->
    [one] { $count } porción
   *[other] { $count } porciones
}
prints-short-kinds = { $category }: { $kinds } para { $count ->
    [one] { $count } persona
   *[other] { $count } personas
}
prints-kind = { $kind ->
    [plates] platos
    [cups] vasos
    [napkins] servilletas
    [cutlery] cubiertos
   *[other] { $kind }
}
prints-of-target = { $have } de { $target } porciones
prints-of-people = juegos completos para { $have } de { $target }
prints-kinds-missing = sin { $kinds } todavía
prints-not-coming = { $name } (no puede venir)
prints-no-carrier = { $name } no puede venir, así que alguien tiene que llevarlo: { $dishes }
prints-short-by = faltan { $count }
prints-enough = suficiente
prints-over-by = sobran { $count }
prints-key-have = prometido
prints-key-short = falta
prints-key-target = deseado
prints-key-extra = de más
prints-bar-title = Ármalo a tu gusto: { $base }
prints-bar-possible = Se puede armar
prints-combo-of = { $combo } ({ $toppings })
prints-bar-opens = Con { $topping } también: { $combos }
prints-bar-opens-then = Luego, con { $topping } también: { $combos }
prints-diets = Quién puede comer qué
prints-need-allergy = { $need } (alergia)
prints-need-of = { $name }: { $need }{ $count ->
    [one] {""}
   *[other] {" "}× { $count }
}
prints-need-of-somebody = { $count ->
    [one] Una persona: { $need }
   *[other] { $count } personas: { $need }
}
prints-dish-of = { $dish } ({ $name })
prints-diet-unfit = No puede comer: { $dishes }
prints-diet-ask = No sin preguntar antes a quien cocina: { $dishes }
prints-diet-ask-count = Todo lo demás ({ $count } platos): no sin preguntar antes a quien cocina
prints-diet-ask-most = No sin preguntar antes a quien cocina: { $count } de { $all } platos
prints-diet-ask-rest = Todo lo demás: no sin preguntar antes a quien cocina
prints-diet-ask-all = Ningún plato sin preguntar antes a quien cocina
prints-diet-fits = Puede comer, según lo declarado: { $dishes }
prints-diet-fits-count = Todo lo demás ({ $count } platos): puede comerlo, según lo declarado
prints-diet-fits-none = Puede comer: nada todavía, nadie ha declarado un plato que sirva
prints-diet-short = Nada declarado todavía para quien lo necesita: { $categories }
prints-not-safe = Esto se basa en lo que declaran quienes cocinan, en recetas habituales y en lo que cada persona dijo que no puede comer: otras quizá no lo han dicho. De ningún plato se promete que esté libre de algo: pregunta a quien cocina.

## Archivo de calendario

prints-calendar-you-bring = Llevas: { $dishes }
prints-calendar-menu = En la mesa: { $dishes }
prints-calendar-party = { $count ->
    [one] Vienes solo
   *[other] Son { $count }
}

## Lista de compras

prints-shopping-title = Lista de compras
prints-shopping-item = qué
prints-shopping-buy = comprar
prints-shopping-need = hace falta
prints-shopping-cost = precio
prints-shopping-empty = No hay nada que comprar.
prints-shopping-total = En total { $total }
prints-shopping-no-price = sin las líneas que no tienen precio
prints-shopping-estimated = con precios supuestos donde no diste ninguno (práctica común, sin fuente)
prints-section = { $section ->
    [produce] Frutas y verduras
    [meat] Carne y pescado
    [dairy] Lácteos y huevos
    [bakery] Pan y pasteles
    [dry] Latas, frascos y secos
    [frozen] Congelados
    [drinks] Bebidas
    [paper] Papel y hogar
    [other] Todo lo demás
   *[other-section] { $section }
}
prints-qr = Abrir en el chat

## Cocina: imagen y hoja

prints-timeline-title = En la cocina para { $when }
prints-run-sheet = Hoja de cocina
prints-oven-changes = Cuándo cambia el horno
prints-oven-inside = En el horno: { $dishes }
prints-oven-dish = { $dish } (entra { $start }, sale { $end })
prints-what-when = Qué pasa y cuándo
prints-arrivals = Llega
prints-deadlines = Límites de higiene
prints-food-safety = Higiene de los alimentos
prints-at-home = En casa, antes de venir
prints-since = desde las { $time }
prints-from-to = de { $start } a { $end }
prints-serve = servir
prints-now = ahora { $time }
prints-more-limits = { $count } más en la hoja de cocina
prints-key-heating = calentando o enfriando
prints-fix = Salida:
prints-source = Regla: { $source }
prints-note-same = Lo mismo para: { $dishes }
prints-late = { $dish } está listo { $minutes } min después de la hora de servir.
prints-kitchen-impossible = Así todavía no sale
prints-kitchen-conflicts = Mira esto primero
prints-kitchen-empty = Ningún plato necesita la cocina.
prints-appliance = { $kind ->
    [oven] Horno
    [burner] Hornilla
    [grill] Parrilla
    [slow-cooker] Olla de cocción lenta
    [microwave] Microondas
   *[other] { $kind }
}
prints-appliance-number = { $name } { $number }
prints-appliance-own = Propio: { $kind ->
    [oven] horno
    [burner] hornilla
    [stove] cocina
    [grill] parrilla
    [slow-cooker] olla de cocción lenta
    [slow-cooker-low] olla de cocción lenta
    [slow-cooker-high] olla de cocción lenta
    [microwave] microondas
   *[other] { $kind }
}
prints-event-arrive = { $name } llega con { $dish }
prints-event-oven-on = { $place }: encender a { $temp }, caliente a las { $ready }
prints-event-oven-change = { $place }: de { $before } a { $temp }, listo a las { $ready }
prints-event-oven-off = { $place }: apagar
prints-event-in = { $dish }: { $place } a { $temp }, hasta { $end }
prints-event-in-plain = { $dish }: { $place }{ $kind ->
    [slow-cooker-low] {" "}en bajo
    [slow-cooker-high] {" "}en alto
    [keep-warm] {" "}en caliente
   *[other] {""}
}, hasta { $end }
prints-event-out = { $dish }: listo, sacar ({ $place })
prints-event-work = { $dish }: { $kind ->
    [prep] preparar
    [rest] dejar reposar
    [chill] enfriar
    [thaw] descongelar en el refrigerador
    [keep-warm] mantener caliente
   *[other] { $kind }
}, hasta { $end }
prints-event-home = { $name }: { $dish }, { $kind ->
    [prep] preparar
    [rest] dejar reposar
    [chill] enfriar
    [thaw] descongelar en el refrigerador
    [keep-warm] mantener caliente
    [oven] en el horno
    [stove] en la cocina
    [grill] en la parrilla
    [slow-cooker-low] olla de cocción lenta en bajo
    [slow-cooker-high] olla de cocción lenta en alto
    [microwave] en el microondas
   *[other] { $kind }
} hasta { $end }
prints-event-serve = Servir

## Tarjetas, menú de la barra, etiquetas

prints-cards-title = Tarjetas de mesa
prints-cards-empty = Nadie ha prometido un plato todavía.
prints-cut-here = cortar aquí
prints-fold-here = doblar aquí
prints-card-by = hecho por { $name }
prints-card-serve = { $serve ->
    [hot] se sirve caliente
    [cold] se sirve frío
    [room] a temperatura ambiente
   *[other] { $serve }
}
prints-card-contains = Contiene, según lo declarado: { $allergens }
prints-card-contains-usually = La receta habitual contiene: { $allergens }
prints-card-nothing-listed = Los ingredientes están declarados; ninguno de los alérgenos principales está entre ellos.
prints-card-nothing-usual = Nadie ha declarado qué lleva. La receta habitual no nombra ninguno de los alérgenos principales.
prints-card-unknown = Nadie ha declarado qué lleva este plato.
prints-card-not-listed = Quien lo cocina no ha declarado qué lleva.
prints-card-may-usually = La receta habitual puede contener: { $allergens }
prints-card-may = Puede contener también: { $allergens }
prints-card-also = Hecho con: { $marks }
prints-card-not-known = Declarado también, pero desconocido para nosotros: { $items }
prints-mark = { $mark ->
    [gelatin] gelatina
    [carmine] carmín (colorante rojo de insectos)
    [rennet] cuajo animal
    [meat] carne
    [beef] carne de res
    [pork] cerdo
    [poultry] ave
    [lard] manteca de cerdo
    [honey] miel
    [alcohol] alcohol
   *[other] { $mark }
}
prints-card-diets = Según esa lista es { $diets }
prints-card-diets-usually = Suele ser { $diets }
prints-card-ask = ¿Alergia a algo? Pregunta a { $name } antes de comer.
prints-card-footer = En las cocinas de casa se comparten cuchillos, tablas y cucharas. De ningún plato se promete que esté libre de algo.
prints-bar-missing = falta: { $toppings }
prints-bar-unsure = quien lo lleva no puede venir: { $toppings }
prints-bar-portion = { $topping } { $amount }
prints-bar-contents = Lo que hay en la barra
prints-bar-almost = Falta un ingrediente
prints-bar-half = Arma medias porciones y prueba más de una.
prints-bar-none = No hay barra para armar.
prints-bar-head-topping = qué
prints-bar-head-who = lo lleva
prints-bar-head-amount = para todos
prints-tags-title = Etiquetas
prints-tags-line = Este plato vuelve a casa con
