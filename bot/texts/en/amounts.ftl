# An amount of food. $number is how it is written, $count picks the plural.
amount = { $unit ->
    [pound] { $number } lb
    [ounce] { $number } oz
    [stick] { $count ->
        [one] { $number } stick
       *[other] { $number } sticks
    }
    [kilogram] { $number } kg
    [gram] { $number } g
    [gallon] { $number } gal
    [quart] { $number } qt
    [pint] { $number } pt
    [cup] { $count ->
        [one] { $number } cup
       *[other] { $number } cups
    }
    [fluid_ounce] { $number } fl oz
    [tablespoon] { $number } tbsp
    [teaspoon] { $number } tsp
    [liter] { $number } l
    [deciliter] { $number } dl
    [centiliter] { $number } cl
    [milliliter] { $number } ml
    [piece] { $number }
    [serving] { $count ->
        [one] { $number } serving
       *[other] { $number } servings
    }
    [can] { $count ->
        [one] { $number } can
       *[other] { $number } cans
    }
    [bag] { $count ->
        [one] { $number } bag
       *[other] { $number } bags
    }
    [bottle] { $count ->
        [one] { $number } bottle
       *[other] { $number } bottles
    }
    [bunch] { $count ->
        [one] { $number } bunch
       *[other] { $number } bunches
    }
    [loaf] { $count ->
        [one] { $number } loaf
       *[other] { $number } loaves
    }
   *[other] { $number } × { $unit }
}
