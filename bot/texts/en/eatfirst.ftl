eatfirst = These can go first: { $dishes }.{ $clocks ->
    [yes] {" "}Their clocks run from when they are on the table; put out a part, and keep the rest hot or cold.
   *[no] {""}
}{ $has-waits ->
    [yes] {" "}{ $waits } only when it is done and measured, about { $ready }.
   *[no] {" "}What is still cooking only when it is done and measured.
}
