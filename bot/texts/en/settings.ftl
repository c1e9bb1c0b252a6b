help-settings = clock, units, language, quiet hours, reminders
help-mute = no more reminders for you, or again
settings-group =
    <b>Settings of this group</b>
    Clock: { $zone }
    Units: { $units ->
        [us] US customary
       *[metric] metric
    }
    Language: { $language }
    Quiet: { $from }–{ $to }
    { $n ->
        [0] All reminders are on.
       *[other] Reminders off: { $off }
    }
    Change with the buttons, or “/settings timezone Chicago”, “/settings quiet 22:00-07:00”.
settings-personal = { $muted ->
    [yes] You get no reminders.
   *[no] You get reminders for what you promised.
}
settings-saved = Saved.
zone-moved = The hour you read stays, on the clock of { $zone }: { $when }.
mute-now = { $muted ->
    [yes] No more reminders for you; /mute again turns them on.
   *[no] Reminders are on for you again.
}
button-units = { $units ->
    [us] Use US units
   *[metric] Use metric units
}
button-language = Language: { $language }
button-mute = Turn my reminders off
button-unmute = Turn my reminders on
reminder-kind-answer-by = answer by
reminder-kind-bring = what to bring
reminder-kind-thaw = thaw
reminder-kind-slow-cooker = slow cooker
reminder-kind-preheat = preheat
reminder-kind-swap = swap pans
reminder-kind-leave = leave now
reminder-kind-start = start
reminder-kind-out-limit = out too long
reminder-kind-collect = thanks and dishes
reminder-kind-return = dishes to return
reminder-to-group = everybody
reminder-head = <b>{ $title }</b>
reminder-for = { $name }: { $what }
reminder-preview = { $when } – { $name }: { $kind }
