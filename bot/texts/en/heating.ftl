help-heat = how your dish is heated, like “/heat lasagna: 40 minutes at 375”
help-frozen = your dish is frozen, like “/frozen turkey 14 lb”
help-arrive = when you arrive with your dishes, like “/arrive 4pm”
heat-noted = Noted for { $dish }: { $steps }.
heat-taken-celsius = I read { $n } as °C; say it again with “°F” if it was meant so.
frozen-noted = { $dish }, { $metric ->
    [yes] { $kg } kg
   *[no] { $lb } lb
} frozen: { $days ->
    [one] one day
   *[other] { $days } days
} in the refrigerator; you will be reminded.
button-at-home = { $dish }: heated at home
