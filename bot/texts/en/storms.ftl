# $outdoor it is planned outside, $manages whoever asks may change that
storm-what = <b>At the first thunder everybody goes indoors</b>, into a building with walls or a closed car – not under trees, a tent or an open shelter – and stays there until 30 minutes after the last thunder. Grills stay outside, so what is on them comes off or is finished on a stove; food carried in stays covered, hot or on ice. { $outdoor ->
    [yes] { $manages ->
        [yes] The plan is for outdoors still: say where you move to (“moving inside to the hall”) or a later hour (“we start at 5”), or press below.
       *[no] Whether it moves or starts later is for { $host } to say.
    }
   *[no] It is planned indoors.
} <i>({ $source })</i>
