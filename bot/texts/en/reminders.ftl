# Reminders. Facts: $title, and per kind those named beside it. `..._time` is wall time like 16:10,
# `..._weekday` is 0 (Monday) to 6 (Sunday).

# $by_time, $by_weekday, $answer (none, maybe)
reminder-answer-by = { $answer ->
    [maybe] You said maybe – can you tell us by { $by_time } on { $by_weekday ->
        [0] Monday
        [1] Tuesday
        [2] Wednesday
        [3] Thursday
        [4] Friday
        [5] Saturday
       *[6] Sunday
    } whether you are coming?
   *[none] Are you coming? Please say by { $by_time } on { $by_weekday ->
        [0] Monday
        [1] Tuesday
        [2] Wednesday
        [3] Thursday
        [4] Friday
        [5] Saturday
       *[6] Sunday
    }, so that there is enough for everybody.
}

# $dishes (a list of names), $count, $early (yes: to be there at $at_time on $at_weekday, before the start)
reminder-bring-today = Today is the day. You are bringing: { $dishes }.{ $early ->
    [yes] {" "}Please be there by { $at_time }.
   *[no] {""}
}
reminder-bring-tomorrow = Tomorrow is the day. You are bringing: { $dishes }.{ $early ->
    [yes] {" "}Please be there by { $at_time }.
   *[no] {""}
}
reminder-bring-before = You are bringing: { $dishes }. Please be there by { $at_time } on { $at_weekday ->
        [0] Monday
        [1] Tuesday
        [2] Wednesday
        [3] Thursday
        [4] Friday
        [5] Saturday
       *[6] Sunday
    }.

# $hot (a dish), $where (oven, stove, slow-cooker, microwave, grill), $temp, $from_time, $until_time, $covered (yes, no)
reminder-your-heat = { $covered ->
    [yes] Bring { $hot } covered:
   *[no] { $hot }:
} { $where ->
    [oven] into the oven at { temp-said }
    [stove] onto the stove
    [slow-cooker] into a slow cooker
    [microwave] into the microwave
   *[grill] onto the grill
} from { $from_time } to { $until_time }.
reminder-bring-today-hot = { reminder-bring-today } { reminder-your-heat }
reminder-bring-tomorrow-hot = { reminder-bring-tomorrow } { reminder-your-heat }
reminder-bring-before-hot = { reminder-bring-before } { reminder-your-heat }

# $dish, $lb, $days, $by_time, $by_weekday
reminder-thaw = Move “{ $dish }” from the freezer to the refrigerator by { $by_time } on { $by_weekday ->
        [0] Monday
        [1] Tuesday
        [2] Wednesday
        [3] Thursday
        [4] Friday
        [5] Saturday
       *[6] Sunday
    }: { so-heavy } needs { $days ->
        [one] { $days } day
       *[other] { $days } days
    } to thaw there. Never on the counter.

# $dish, $setting (low, high), $at_time, $until_time
reminder-slow-cooker = Start the slow cooker now: “{ $dish }” on { $setting ->
        [high] high
       *[low] low
    }, until { $until_time }.

reminder-slow-cooker-before = “{ $dish }”: is it made in a slow cooker? On { $setting ->
        [high] high
       *[low] low
    } it usually takes { $hours } hours and would have to go on at { $at_time }. Say how it is made, like “/heat { $dish }: oven 40 min at 375”.
reminder-slow-cooker-usual = “{ $dish }”: is it made in a slow cooker? Then it would go on now, on { $setting ->
        [high] high
       *[low] low
    }, until { $until_time }. If it is made otherwise, /heat says how.

# $oven (number), $temp, $dishes, $at_time
reminder-preheat-dial = Turn on oven { $oven } now and set its dial to { temp-said } (it is off by as much as you told me). In at { $at_time }: { $dishes }.
reminder-preheat = Turn on oven { $oven } now, { temp-said }. In at { $at_time }: { $dishes }.

# $oven, $temp, $dishes, $out, $at_time, $change (yes, no)
# $dishes, $at_time, $until_time
reminder-grill = Light the grill now. On at { $at_time }: { $dishes }.
reminder-grill-on = On the grill now: { $dishes }, until { $until_time }.
reminder-swap = Oven { $oven }, out now: { $out }. { $change ->
        [yes] Set it to { temp-said }. In at { $at_time }: { $dishes }.
       *[no] In at { $at_time }, still at { temp-said }: { $dishes }.
    }

# $oven, $out; $dishes, $temp
reminder-take-out = Oven { $oven }, out now: { $out }.
reminder-put-in = Oven { $oven }, in now: { $dishes }. It stays at { temp-said }.

# $at_time, $minutes (0: nobody told how far it is)
reminder-leave = { $minutes ->
    [0] You are expected at { $at_time }: please set out in time.
    [one] Time to leave: you are expected at { $at_time }, and it takes you { $minutes } minute.
   *[other] Time to leave: you are expected at { $at_time }, and it takes you { $minutes } minutes.
}

reminder-answer-by-named = No answer yet from { $names }. No message reaches a name without an account, so please ask yourself; /answer with the name and yes, maybe or no notes it.
reminder-start = It starts now – welcome, everybody!

# $dish, $by_time, $limit (minutes)
reminder-out-limit = “{ $dish }” has nearly used up its { $limit ->
        [60] hour
       *[120] two hours
    } at room temperature or warmer. By { $by_time } put it back in the cold or heat it through again; after that, throw it out.

# $dishes, $count, $names of those who brought something
# $dishes nobody has said anything about, $since_time they were to be on the table, $by_time
reminder-out-limit-unsaid = On the table since { $since_time }, without heat or ice: { $dishes }? Then by { $by_time } back in the cold or heated through again; after that, throw it out. /out tells me what really stands there.
reminder-collect = { $has-names ->
        [yes] Thank you, { $names }, and everybody who came!
       *[no] Thank you all!
    } { $count ->
        [0] Please look whether anything of yours was left behind.
       *[other] Please collect what is yours: { $dishes }.
    }
reminder-return = Is a dish or a box here that isn't yours, or yours somewhere else? Press Dishes to return when it is back: { $dishes }.
