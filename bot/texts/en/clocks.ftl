clocks-none = No: between now and then the clocks are not changed. It is on { $when }.
clocks-change = Yes: on { $day }, at { $before } the clocks go { $back ->
    [yes] back
   *[no] forward
} to { $after }. It stays at { $when } by the new time, and so does every hour I tell: starting times and reminders go by the clock on the wall of that day.
clocks-whose = { $when } by the clocks where it takes place ({ $zone }){ $has-other ->
    [yes] ; in { $place } that is { $other }
   *[no] {""}
}.
