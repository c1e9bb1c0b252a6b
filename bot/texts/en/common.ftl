# Words used in several places. {$n} is always a number of the thing named.

people-adults = { $n } { $n ->
    [one] adult
   *[other] adults
}
people-teens = { $n } { $n ->
    [one] teen
   *[other] teens
}
people-children = { $n } { $n ->
    [one] child
   *[other] children
}
people-toddlers = { $n } { $n ->
    [one] toddler
   *[other] toddlers
}
people-infants = { $n } { $n ->
    [one] baby
   *[other] babies
}

category-main = main dish
category-side = side dish
category-salad = salad
category-starter = starter
category-bread = bread
category-dessert = dessert
category-drink = drinks
category-topping = topping
category-supplies = supplies

# One dish of a category, as it stands in a question: "could you bring ...".
one-main = a main dish
one-side = a side dish
one-salad = a salad
one-starter = a starter
one-bread = bread
one-dessert = a dessert
one-drink = drinks
one-topping = a topping
one-supplies = supplies

amount-for = for { $n }
amount-about = for about { $n }

name-of-mine = { $name }’s { $who }

button-undo = Undo
button-yes = Yes
button-no = No
button-done = Done
button-back = ← Back
button-more = More →

answer-below = Look below.

need-vegetarian = vegetarian
need-vegan = vegan
need-pescatarian = pescatarian
need-halal = halal
need-kosher = kosher
need-gluten-free = no gluten
need-dairy-free = no dairy
need-nut-free = no nuts
need-egg-free = no egg
need-low-salt = low salt
need-pork-free = no pork
need-tree-nut = no tree nuts
need-no = no { $what }

degrees-f = { $n } °F
degrees-c = { $n } °C

source-practice = common practice, no source

# A reminder or a word to somebody who has no private chat with the bot.
told-in-group = { $name }: { $what }
need-alcohol-free = no alcohol
need-beef-free = no beef
need-diabetic = diabetic
need-fish-free = no fish
need-gluten = no gluten
need-hindu-vegetarian = Hindu vegetarian
need-honey-free = no honey
need-low-carb = low carb
need-soft-food = soft food
need-low-fodmap = low FODMAP
need-mollusc = no molluscs
need-paleo = paleo
need-red-meat-free = no red meat
need-seafood-free = no seafood
need-soy-free = no soy
need-poultry-free = no poultry
need-gelatin-free = no gelatin
need-oat-free = no oats
need-alpha-gal = alpha-gal
need-jain = Jain
