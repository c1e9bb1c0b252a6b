# What a host said of the kitchen that no figure comes from
kitchen-unheard = Not used for the plan: { $words }.
kitchen-offered = { $name } has one more { $thing ->
    [microwave] microwave
   *[other] slow cooker
} for the kitchen. { $host }, shall the plan count on it?
button-count-on-it = Count on it
