# $minutes on the heat, $rest of resting, $late minutes after the start (less than 0: before), $early well before it
begun-done = <b>{ $dish }</b>: in since { $since }, so { $minutes } minutes on the heat end at about { $done }; measure it then.{ $rest ->
    [0] {""}
   *[other] {" "}It rests { $rest } minutes: about { $ready }.
}{ $early ->
    [yes] {" "}That is before { $start }: from then on keep it at { at-140 } or more until it is served{ $slow ->
        [yes] , the cooker on warm
       *[no] {""}
    }.
   *[no] {""}
}
begun-late = That is { $late } minutes after { $start }. { $manages ->
    [yes] Say a new hour (“we eat at { $ready }”), or serve the rest first; what waits stays at { at-140 } or more, or in the cold.
   *[no] Whether the meal waits is for { $host } to say; what waits stays at { at-140 } or more, or in the cold.
}
begun-when = It is on { $when }; { $dish } is ready at about { $ready }, as was told.
