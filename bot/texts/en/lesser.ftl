trouble-oven-found = <b>One more oven, elsewhere.</b> { $left ->
    [one] One is there.
   *[other] { $left } are there.
} What is hot travels covered, in a preheated insulated box, at { at-140 } or more; what is half cooked goes in at once.
trouble-oven-offered = Another oven could be used. The host says so below.
button-use-oven = Use that oven
trouble-breaker = <b>One circuit is off.</b> Unplug what hangs on it before you switch it on again. { $known ->
    [yes] A circuit here
   *[no] A usual one (15 A, 120 V)
} carries about { $watts } W for hours on end{ $cookers ->
    [0] {""}
   *[other] ; a slow cooker here takes about { $each } W
}. A coffee urn, kettle or microwave each wants a circuit of its own: plug some of it in on another. What was hot has two hours without heat; what is half cooked is finished elsewhere at once and in one go, or thrown out; a slow cooker that went cold is boiled up on the stove, or thrown out once those are over. <i>({ $source })</i>
button-all-dark = All the power is out
trouble-not-here = Isn’t { $name } coming at all? Until somebody presses, nothing changes.
button-not-coming = { $name } stays away
trouble-fewer = { $n ->
    [0] <b>Nobody of those at the door stays.</b>
    [one] <b>One of those at the door stays.</b>
   *[other] <b>{ $n } of those at the door stay.</b>
}
trouble-no-show-known = { $name } is down as not coming already.
button-plan-so = Host: plan so
