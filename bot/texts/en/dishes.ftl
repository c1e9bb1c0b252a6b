# How a dish was understood.
dishes-sure = { $name } is a { $category }.
dishes-guess = I take { $name } for a { $category }. Is that right?
dishes-unknown = I don’t know { $name }. Is it a main dish, a side, a dessert or something else?
dishes-no-dish = { $name } is nothing for the table, so I left it off the list.
dishes-time-estimate = Usual time, by common practice: { $minutes } minutes.
