# Why an ask: one line for the host, after the dish. People with needs are counted, never named.
asks-why-short = { $servings ->
    [0] there are enough servings, but few kinds
    [one] one serving short
   *[other] { $servings } servings short
}; { $because ->
    [asked] already asked
    [likes] has brought this before
    [turn] brings nothing yet
    [host] you have the time for it
   *[free] can still fit it in
}
asks-why-diet = { $people ->
    [one] one person has nothing here yet that suits them
   *[other] { $people } people have nothing here yet that suits them
}; { $because ->
    [asked] already asked
    [likes] has brought this before
    [turn] brings nothing yet
    [host] you have the time for it
   *[free] can still fit it in
}
asks-why-host = { $open ->
    [yes] nobody is left to ask
   *[no] if you would rather not ask
}; { $servings ->
    [one] one serving closes the gap
   *[other] { $servings } servings close the gap
}
asks-why-buy = { $over ->
    [yes] this goes over the budget
   *[no] { $open ->
        [yes] nobody is left to ask
       *[no] if nobody says yes
    }
}; { $servings ->
    [one] one serving closes the gap
   *[other] { $servings } servings close the gap
}
asks-why-instead = instead of cooking it yourself; { $servings ->
    [0] few kinds so far
    [one] one serving short
   *[other] { $servings } servings short
}
