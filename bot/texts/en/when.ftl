# Dates that can't be acted on, and notes about dates that were. Days come as weekday, day, month number.
when-not-understood = I can't find a date in that. Write it like “Sat 18 Sep 5pm”.
when-which-day = Which day do you mean by “{ $words }”? Write it like “Sat 18 Sep 5pm”.
when-past = { $time ->
    [none] { $weekday ->
        [monday] Monday
        [tuesday] Tuesday
        [wednesday] Wednesday
        [thursday] Thursday
        [friday] Friday
        [saturday] Saturday
       *[sunday] Sunday
    } { $day } { $month ->
        [1] January
        [2] February
        [3] March
        [4] April
        [5] May
        [6] June
        [7] July
        [8] August
        [9] September
        [10] October
        [11] November
       *[12] December
    } has passed. The next such day is { $other_weekday ->
        [monday] Monday
        [tuesday] Tuesday
        [wednesday] Wednesday
        [thursday] Thursday
        [friday] Friday
        [saturday] Saturday
       *[sunday] Sunday
    } { $other_day } { $other_month ->
        [1] January
        [2] February
        [3] March
        [4] April
        [5] May
        [6] June
        [7] July
        [8] August
        [9] September
        [10] October
        [11] November
       *[12] December
    } { $other_year_text }: write that date if you mean it.
   *[other] { $weekday ->
        [monday] Monday
        [tuesday] Tuesday
        [wednesday] Wednesday
        [thursday] Thursday
        [friday] Friday
        [saturday] Saturday
       *[sunday] Sunday
    } { $day } { $month ->
        [1] January
        [2] February
        [3] March
        [4] April
        [5] May
        [6] June
        [7] July
        [8] August
        [9] September
        [10] October
        [11] November
       *[12] December
    } { $time } has passed. The next such time is on { $other_weekday ->
        [monday] Monday
        [tuesday] Tuesday
        [wednesday] Wednesday
        [thursday] Thursday
        [friday] Friday
        [saturday] Saturday
       *[sunday] Sunday
    } { $other_day } { $other_month ->
        [1] January
        [2] February
        [3] March
        [4] April
        [5] May
        [6] June
        [7] July
        [8] August
        [9] September
        [10] October
        [11] November
       *[12] December
    } { $other_year_text }: write that date if you mean it.
}
when-weekday-disagrees = { $day } { $month ->
        [1] January
        [2] February
        [3] March
        [4] April
        [5] May
        [6] June
        [7] July
        [8] August
        [9] September
        [10] October
        [11] November
       *[12] December
    } is a { $weekday ->
        [monday] Monday
        [tuesday] Tuesday
        [wednesday] Wednesday
        [thursday] Thursday
        [friday] Friday
        [saturday] Saturday
       *[sunday] Sunday
    }, not a { $said ->
        [monday] Monday
        [tuesday] Tuesday
        [wednesday] Wednesday
        [thursday] Thursday
        [friday] Friday
        [saturday] Saturday
       *[sunday] Sunday
    }. Did you mean { $day } { $month ->
        [1] January
        [2] February
        [3] March
        [4] April
        [5] May
        [6] June
        [7] July
        [8] August
        [9] September
        [10] October
        [11] November
       *[12] December
    } or { $other_weekday ->
        [monday] Monday
        [tuesday] Tuesday
        [wednesday] Wednesday
        [thursday] Thursday
        [friday] Friday
        [saturday] Saturday
       *[sunday] Sunday
    } { $other_day } { $other_month ->
        [1] January
        [2] February
        [3] March
        [4] April
        [5] May
        [6] June
        [7] July
        [8] August
        [9] September
        [10] October
        [11] November
       *[12] December
    }?
when-29-february = { $year_text } has no 29 February; the next one is in { $leap_text }. Which day do you mean?
when-no-such-day = { $month ->
        [1] January
        [2] February
        [3] March
        [4] April
        [5] May
        [6] June
        [7] July
        [8] August
        [9] September
        [10] October
        [11] November
       *[12] December
    } has no day { $day }. Which day do you mean?
when-no-fifth = That month has only four of them. Which day do you mean?
when-no-such-day-number = No month has a day { $day }. Which day do you mean?
when-day-or-month = “{ $written }” can be { $day } { $month ->
        [1] January
        [2] February
        [3] March
        [4] April
        [5] May
        [6] June
        [7] July
        [8] August
        [9] September
        [10] October
        [11] November
       *[12] December
    } or { $other_day } { $other_month ->
        [1] January
        [2] February
        [3] March
        [4] April
        [5] May
        [6] June
        [7] July
        [8] August
        [9] September
        [10] October
        [11] November
       *[12] December
    }. Write the month as a word.
when-am-or-pm = “{ $written }” in the morning or in the evening? Write “am” or “pm” with it.
when-no-such-time = “{ $written }” is not a time of day. Write it like “5pm” or “17:00”.
when-too-far = { $weekday ->
        [monday] Monday
        [tuesday] Tuesday
        [wednesday] Wednesday
        [thursday] Thursday
        [friday] Friday
        [saturday] Saturday
       *[sunday] Sunday
    } { $day } { $month ->
        [1] January
        [2] February
        [3] March
        [4] April
        [5] May
        [6] June
        [7] July
        [8] August
        [9] September
        [10] October
        [11] November
       *[12] December
    } { $year_text } is more than three years away. Which year do you mean?
when-next-weekday = I took that as { $weekday ->
        [monday] Monday
        [tuesday] Tuesday
        [wednesday] Wednesday
        [thursday] Thursday
        [friday] Friday
        [saturday] Saturday
       *[sunday] Sunday
    } { $day } { $month ->
        [1] January
        [2] February
        [3] March
        [4] April
        [5] May
        [6] June
        [7] July
        [8] August
        [9] September
        [10] October
        [11] November
       *[12] December
    }, in next week.
when-skipped-hour = Clocks go forward that night and { $said } does not exist, so I took { $shown }.
when-doubled-hour = Clocks go back that night and { $said } comes twice; I took the first.
when-midnight = I took midnight as the end of { $weekday ->
        [monday] Monday
        [tuesday] Tuesday
        [wednesday] Wednesday
        [thursday] Thursday
        [friday] Friday
        [saturday] Saturday
       *[sunday] Sunday
    } { $day } { $month ->
        [1] January
        [2] February
        [3] March
        [4] April
        [5] May
        [6] June
        [7] July
        [8] August
        [9] September
        [10] October
        [11] November
       *[12] December
    }.
when-no-date = On which day? Write it like “Sat 18 Sep { $words }”.
when-people-number = { $n } people is not a number I can plan with; write one from { $low } to { $high }.
