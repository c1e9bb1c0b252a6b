# The meal was moved to later on the day itself. $when, $end clock times.
delay-head = <b>We eat at { $when } now.</b> Food that is out or hot does not wait by itself <i>({ $source })</i>:
delay-ends-before = { $over ->
    [yes] ✋ { $dish }: its time out was over at { $end }. Throw it out.
   *[no] ✋ { $dish }: its time out ends at { $end }, before we eat. Into the refrigerator or onto ice now (/out stops its clock; the minutes so far stay counted), or eat it before.
}
delay-keep-hot = • Keep at { at-140 } or hotter until then, covered, in a low oven or a slow cooker on warm: { $dishes }. What can’t be kept so hot is chilled and heated through again.
delay-keep-cold = • Stay in the refrigerator or on ice until just before: { $dishes }.
