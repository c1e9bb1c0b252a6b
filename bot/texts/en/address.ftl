help-door = the way in, told privately to those who come; hosts set it in private
help-parking = where to park; hosts set it with “/parking behind the hall”
help-weather = the weather in the host's words, like “/weather hot, 95 °F”
help-pin = the place on the map; hosts send a location in reply to the board
door-noted = Noted. I tell it privately, and only to those who come.
door-is = { $has-words ->
    [yes] The way in: { $words }.
   *[no] The host has not told the way in yet.
}{ $has-parking ->
    [yes] {" "}Parking: { $parking }.
   *[no] {""}
}
door-in-private = The way in is told privately.
parking-noted = Parking: { $words }.
parking-is = { $has-words ->
    [yes] Parking: { $words }.
   *[no] Nothing is said about parking yet; a host can with /parking.
}
weather-noted = Weather: { $words }.{ $outdoors ->
    [yes] { $hot ->
        [yes] {" "}Food outdoors has one hour.
       *[no] { $known ->
            [yes] {" "}Food outdoors has two hours.
           *[no] {" "}Say a temperature, and the clocks of food outdoors follow it.
        }
    }
   *[no] {""}
}
weather-is = { $has-words ->
    [yes] Weather: { $words }.
   *[no] Nothing is said about the weather yet; a host can with /weather.
}
pin-is = { $has-place ->
    [yes] { $place }
   *[no] Here it is.
}
pin-noted = The pin is set; /pin shows it.
refused-door-in-group = Not here: everybody in the group would read it. Write it to me in private.
refused-door-not-coming = The way in is told to those who said they come; press Coming first.
refused-no-pin = There is no pin yet; a host can send a location in reply to the board.
refused-pin = That is no place on the map; send the location again.
did-door = told the way in
did-parking = parking
did-weather = weather
did-pin = the pin on the map
