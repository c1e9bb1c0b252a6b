help-forget = remove everything I know of you
forget-sure = Remove your answers, dishes, needs and name from everything I keep?
button-forget-yes = Yes, remove it
button-forget-no = No, keep it
forget-not = Nothing was removed.
forgotten = Removed: I no longer know anything of you.
