help-potluck = start a potluck, or show its board again
ask-zone = Which clock do you live by? Reply with a large city near you, like “Chicago”.
ask-when = When is it? Reply with a day and an hour, like “Sat 18 Sep 5pm”.
ask-hour = { $day } – at what time? Reply like “5pm”.
opened-ask-people = It’s on: { $when }. About how many people do you expect? Reply with a number.
opened-ask-place = It’s on: { $when }. Where is it? Reply with the place, or leave it for later.
opened = It’s on: { $when }. Answer with the buttons on the board, or reply to it in your own words.
noted-people = Noted: about { $people } people.
noted-people-ask-place = Noted: about { $people } people. Where is it? Reply with the place, or leave it for later.
noted-later = All right, later: /where and /size take it at any time.
noted-place = Noted: { $place }.

board-title = <b>{ $title }</b>
board-title-none = <b>Potluck</b>
board-title-plain = Potluck
board-cancelled = <b>Cancelled</b>
board-when = { $when }{ $has-place ->
    [yes] {" "}· { $place }
   *[no] {""}
}{ $setting ->
    [outdoor] {" "}· outdoors
   *[indoor] {""}
}
board-host = Host: { $names }
board-answer-by = Please answer by { $when }
