help-leftovers = what is left: how long it keeps, what must go, who takes it home
help-dishes = whose dish and container is still to be returned
button-leftovers = Leftovers
button-take = { $dish }: mine
button-dishes = Dishes to return
button-back-home = { $dish }: back
left-head = <b>Leftovers</b> – what was out is chilled within { $hours ->
    [one] one hour
   *[other] { $hours } hours
} of coming out, in shallow boxes, with the date on it.
left-keeps = • { $dish }: { $timed ->
    [yes] into the refrigerator by { $by }, then
   *[no] {""}
} until { $until } in the refrigerator{ $has-names ->
    [yes] – { $names }
   *[no] {""}
}
# nobody told when it came out: reckoned from the start of the meal, $since
left-perhaps = ✋ { $dish }: nobody told me how long it was out; on the table since { $since } it is { $minutes } minutes, and { $limit } are the limit – throw it out, unless whoever kept it says it was cold ({ at-40 }) or hot ({ at-140 }) all the time{ $has-names ->
    [yes] {" "}– taken by { $names }
   *[no] {""}
}
left-perhaps-all = ✋ Nobody told me how long these were out: { $dishes }. On the table since { $since } it is { $minutes } minutes, and { $limit } are the limit – throw them out, unless whoever kept one says it was cold ({ at-40 }) or hot ({ at-140 }) all the time. If it was put away in time, say so like “chili was in the fridge by 8 PM”.
left-taken-by = { $dish } (taken by { $names })
left-must-go = ✋ { $dish }: out for { $minutes } minutes – throw it out
left-unlisted = Not on my list{ $has-things ->
    [yes] : { $things }
   *[no] {""}
}. Nothing is known of how long that stood. What is perishable and was out for more than { $limit } minutes in all is thrown out; the rest goes into the refrigerator now, in shallow boxes, with the date on it.
left-how = Reheat to { at-165 }. Press what you take home. <i>({ $source })</i>
left-taken = Yours: { $dish }. Into the refrigerator at once.
left-not-taken = No longer yours: { $dish }.
did-take = took { $dish } home
did-back = { $dish } is back
back-head = { $n ->
    [0] Every dish is back with its owner. Thank you!
   *[other] <b>Still to be returned</b> – press what is back:
}
back-row = • { $dish } → { $name }
back-noted = Back: { $dish }. Thank you!
