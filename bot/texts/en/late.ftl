help-late = you run late, like “/late 20” or “/late 5:30pm”
help-here = you have arrived
button-here = We're here
button-lates = I'm late
late-how-much = How late?
button-late = { $n } min
button-out = { $dish } is out
late-noted = Thank you – the host knows you are late. How much?
told-late = { $name } is running late.
late-moved = Noted: you come at { $when }; the host knows.
told-late-until = { $name } comes at { $when }.
told-lines = { $lines }
late-breaks-nothing = Nothing in the kitchen changes.
refused-late-words = Say by how many minutes or until when, like “/late 20” or “/late 5:30pm”.
refused-late-after-end = That is after the potluck is over; say /answer if you can't come.
did-late = later: { $when }
did-here = arrived
here-already = You are down as arrived.
here-toast = Welcome!
here-noted = { $name } is here – { $n } of { $of } people have arrived.{ $has-dishes ->
    [yes] {" "}Press when it stands on the table: { $dishes }.
   *[no] {""}
}
