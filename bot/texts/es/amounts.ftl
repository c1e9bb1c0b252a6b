# Una cantidad de comida. $number es como se escribe, $count elige el plural.
amount = { $unit ->
    [pound] { $number } lb
    [ounce] { $number } oz
    [stick] { $count ->
        [one] { $number } barra
       *[other] { $number } barras
    }
    [kilogram] { $number } kg
    [gram] { $number } g
    [gallon] { $number } gal
    [quart] { $number } qt
    [pint] { $number } pt
    [cup] { $count ->
        [one] { $number } taza
       *[other] { $number } tazas
    }
    [fluid_ounce] { $number } oz líq.
    [tablespoon] { $number } cda.
    [teaspoon] { $number } cdta.
    [liter] { $number } l
    [deciliter] { $number } dl
    [centiliter] { $number } cl
    [milliliter] { $number } ml
    [piece] { $number }
    [serving] { $count ->
        [one] { $number } porción
       *[other] { $number } porciones
    }
    [can] { $count ->
        [one] { $number } lata
       *[other] { $number } latas
    }
    [bag] { $count ->
        [one] { $number } bolsa
       *[other] { $number } bolsas
    }
    [bottle] { $count ->
        [one] { $number } botella
       *[other] { $number } botellas
    }
    [bunch] { $count ->
        [one] { $number } manojo
       *[other] { $number } manojos
    }
    [loaf] { $count ->
        [one] { $number } pan
       *[other] { $number } panes
    }
   *[other] { $number } × { $unit }
}
