# Palabras que se usan en varios sitios. {$n} es siempre un número de lo nombrado.

people-adults = { $n } { $n ->
    [one] adulto
   *[other] adultos
}
people-teens = { $n } { $n ->
    [one] adolescente
   *[other] adolescentes
}
people-children = { $n } { $n ->
    [one] niño
   *[other] niños
}
people-toddlers = { $n } { $n ->
    [one] niño pequeño
   *[other] niños pequeños
}
people-infants = { $n } { $n ->
    [one] bebé
   *[other] bebés
}

category-main = plato fuerte
category-side = guarnición
category-salad = ensalada
category-starter = entrada
category-bread = pan
category-dessert = postre
category-drink = bebidas
category-topping = ingrediente
category-supplies = utensilios

# Un plato de una categoría dentro de una pregunta: «¿podrías llevar ...?».
one-main = un plato fuerte
one-side = una guarnición
one-salad = una ensalada
one-starter = una entrada
one-bread = pan
one-dessert = un postre
one-drink = bebidas
one-topping = un ingrediente
one-supplies = utensilios

amount-for = para { $n }
amount-about = para unas { $n }

name-of-mine = { $who } de { $name }

button-undo = Deshacer
button-yes = Sí
button-no = No
button-done = Listo
button-back = ← Atrás
button-more = Más →

answer-below = Mira abajo.

need-vegetarian = vegetariano
need-vegan = vegano
need-pescatarian = pescetariano
need-halal = halal
need-kosher = kosher
need-gluten-free = sin gluten
need-dairy-free = sin lácteos
need-nut-free = sin frutos secos
need-egg-free = sin huevo
need-low-salt = bajo en sal
need-pork-free = sin cerdo
need-tree-nut = sin frutos de cáscara
need-no = sin { $what }

degrees-f = { $n } °F
degrees-c = { $n } °C

source-practice = práctica común, sin fuente

# Un aviso a quien no tiene chat privado con el bot.
told-in-group = { $name }: { $what }
need-alcohol-free = sin alcohol
need-beef-free = sin carne de res
need-diabetic = diabético
need-fish-free = sin pescado
need-gluten = sin gluten
need-hindu-vegetarian = vegetariano hindú
need-honey-free = sin miel
need-low-carb = bajo en carbohidratos
need-soft-food = comida blanda
need-low-fodmap = bajo en FODMAP
need-mollusc = sin moluscos
need-paleo = paleo
need-red-meat-free = sin carne roja
need-seafood-free = sin pescado ni mariscos
need-soy-free = sin soya
need-poultry-free = sin aves
need-gelatin-free = sin gelatina
need-oat-free = sin avena
need-alpha-gal = alfa-gal
need-jain = jainista
