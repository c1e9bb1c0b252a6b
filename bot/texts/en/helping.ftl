help-help = this help
help-head-group = <b>What I can do here</b>
help-head-private = <b>What I can do in private</b>
help-line = /{ $command } – { $what }
help-words-group = Or reply to the board in your own words: “3 of us, one vegetarian, slaw for 12”.
help-words-private = Or just write: “3 of us, one vegetarian, slaw for 12”.
help-rights = Anybody here may start a potluck and is its host. Everybody answers for themselves, their party and people they add; hosts, co-hosts and group administrators may change the rest. Named others are told.
help-hosts-too = <b>For hosts</b>
start-private = Hello! { $n ->
    [0] Here you can tell me privately what you can’t eat, once your group has a potluck.
   *[other] Here you can tell me privately what you can’t eat (/needs), see your list (/list) and be reminded.
}
