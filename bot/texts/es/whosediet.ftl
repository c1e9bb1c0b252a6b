# $dish is empty where there are several
whosediet-ask = { $has-dish ->
    [yes] ¿{ $diet }: { $dish } o tú?
   *[no] ¿{ $diet }: cuál de tus platos… o tú?
}
button-myself = Yo
whosediet-yours = Anotado para ti: { $diet }.
