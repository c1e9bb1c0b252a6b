help-again = the last potluck again with a new date, like “/again Sat 16 Oct 5pm” or “/again monthly”
button-same-again = Same again on { $when }
again-opened = Same again: <b>{ $when }</b>. { $people ->
    [one] You are on the list.
   *[other] { $people } people are on the list; each answers anew.
}
again-proposed = Who brings what? Main dishes go round. Press your own:
again-line = • { $name }: { $has-dish ->
    [yes] { $dish } again?
   *[no] { $one } this time?
}
button-again = { $name }: { $has-dish ->
    [yes] { $dish }
   *[no] { $category }
}
again-taken = { $name } comes and brings { $dish }.
again-brings-already = That is on the list already.
again-already = That one has been started already.
again-monthly = Every month from now on: when one is over I propose the next, { $when } first.
again-once = Only once from now on.
refused-nothing-again = There is no potluck here to repeat; start one with /potluck.
did-repeats = how often it is held
refused-repeats = Say “/again monthly” or “/again once”.
