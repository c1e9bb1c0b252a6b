# $dish is empty where there are several
whosediet-ask = { $has-dish ->
    [yes] Is { $dish } { $diet }, or are you?
   *[no] Which of your dishes is { $diet } – or are you?
}
button-myself = I am
whosediet-yours = Noted for you: { $diet }.
