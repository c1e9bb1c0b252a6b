# What a host said of the kitchen that no figure comes from
kitchen-unheard = Not used for the plan: { $words }.
