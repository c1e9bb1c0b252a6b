evening-forgot-unlisted = “{ $thing }” is not on my list, so nothing is reckoned with it.
evening-forgot = “{ $dish }” stays on the list for now.{ $has-short ->
    [yes] {" "}Without it: { $short }.
   *[no] {""}
} Going back for it? Say how late you will be; else take it off.
told-forgot = { $name } has left “{ $dish }” at home.{ $has-short ->
    [yes] {" "}Without it: { $short }.
   *[no] {""}
}
evening-ran-out = Out of { $thing }.{ $has-others ->
    [yes] {" "}On the list besides: { $others }.
   *[no] {""}
}{ $has-coming ->
    [yes] {" "}Not here yet, and could bring some on the way: { $coming }.
   *[no] {""}
}{ $has-host ->
    [yes] {" "}{ $host } is the one to ask.
   *[no] {""}
}{ $next ->
    [yes] {" "}I reckon with more of it next time.
   *[no] {""}
}
told-ran-out = { $name } says that { $thing } ran out.
evening-taken = Yours: { $dish }. Into the refrigerator at once; there it keeps until { $until }.
evening-hard = More time for “{ $dish }”, where it is; { $left ->
    [0] the table can wait for it.
   *[other] { $left } minutes are left until { $serve }.
}{ $has-other ->
    [yes] {" "}“{ $other }” wants that place from { $next }.
   *[no] {""}
}{ $has-rule ->
    [yes] {" "}{ $rule }
   *[no] {""}
}
evening-forgot-part = Then “{ $thing }” is missing and the rest of { $dish } comes. Going back for it? Say how late you will be; else write how many it is enough for now, like “{ $dish } for 6”.
