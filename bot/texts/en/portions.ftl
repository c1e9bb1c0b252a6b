# Where the figures for who comes are from; percentages, and how many earlier answers moved them.
headcount-odds-default = Reckoned with: of those who say yes { $yes } in 100 come, of the maybes { $maybe }, of those who haven't answered { $none } (common practice, no source).
headcount-odds-learned =
    { $learned ->
        [one] Reckoned with: of those who say yes { $yes } in 100 come, of the maybes { $maybe }, of those who haven't answered { $none } - common practice, corrected by { $learned } answer from this group's earlier meals.
       *[other] Reckoned with: of those who say yes { $yes } in 100 come, of the maybes { $maybe }, of those who haven't answered { $none } - common practice, corrected by { $learned } answers from this group's earlier meals.
    }
headcount-odds-host = Reckoned with the host's own figures: of those who say yes { $yes } in 100 come, of the maybes { $maybe }, of those who haven't answered { $none }.
