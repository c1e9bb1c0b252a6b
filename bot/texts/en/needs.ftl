help-needs = say what you can’t eat
button-needs-none = Nothing
needs-sheet = For { $when }: what can’t you or your party eat? { $n ->
    [0] Nothing noted so far.
   *[other] Noted: { $needs }.
} Press to switch, or write it in words. Others only see “someone needs …”; the host sees your answer, for the cooking.
needs-now = { $n ->
    [0] Nothing noted.
   *[other] Noted: { $needs }.
}
needs-missed = If that was about something somebody can’t eat, I did not get it: write it like “/needs egg, milk”, here or in private.
needs-noted = { $n ->
    [0] Noted: no special needs.
   *[other] Noted: { $needs }.
}
needs-done = { $n ->
    [0] Noted: no special needs. Change it any time with /needs.
   *[other] Noted: { $needs }. Change it any time with /needs.
}
needs-open-private = Tell me privately through this button, or write it here openly, like “/needs vegetarian, no peanuts”.
board-need = { $n ->
    [1] { $need }
   *[other] { $need } × { $n }
}
board-needs = Someone needs: { $needs }
