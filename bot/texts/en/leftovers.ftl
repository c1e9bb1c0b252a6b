help-leftovers = what is left: how long it keeps, what must go, who takes it home
help-dishes = whose dish and container is still to be returned
button-leftovers = Leftovers
button-take = { $dish }: mine
button-dishes = Dishes to return
button-back-home = { $dish }: back
left-head = <b>Leftovers</b> – what was out is chilled within two hours, in shallow boxes, with the date on it.
left-keeps = • { $dish }: until { $until } in the refrigerator ({ $source }){ $has-names ->
    [yes] – { $names }
   *[no] {""}
}
left-must-go = ✋ { $dish }: out for { $minutes } minutes – throw it out ({ $source })
left-how = Reheat to 165 °F. Press what you take home. <i>({ $source })</i>
left-taken = Yours: { $dish }. Chill it within two hours.
left-not-taken = No longer yours: { $dish }.
did-take = took { $dish } home
did-back = { $dish } is back
back-head = { $n ->
    [0] Every dish is back with its owner. Thank you!
   *[other] <b>Still to be returned</b> – press what is back:
}
back-row = • { $dish } → { $name }
back-noted = Back: { $dish }. Thank you!
