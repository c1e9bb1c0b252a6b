help-now = what runs in the kitchen now
help-next = what comes next in the kitchen
button-now = Running
button-next = Next
now-head = <b>Now, { $at }</b>{ $n ->
    [0] {" "}– nothing runs.
   *[other] :
}
next-head = { $n ->
    [0] Nothing more is planned in the kitchen.
   *[other] <b>Next</b>:
}
