ice-gone = Without ice, what spoils has { $limit } minutes in all above { $metric ->
    [yes] 4 °C
   *[no] 40 °F
}, the time before counted; then it is thrown out.{ $has-dishes ->
    [yes] {" "}That is: { $dishes }.
   *[no] {""}
} Keep coolers shut and in the shade, put what is cold together, and eat it first.{ $has-coming ->
    [yes] {" "}Not here yet, and could bring ice: { $coming }.
   *[no] {""}
} <i>({ $source })</i>
