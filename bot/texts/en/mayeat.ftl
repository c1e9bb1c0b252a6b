# $dishes of the list with honey in them, $n of them
may-infant-honey = ✋ <b>No honey before the first birthday, not a taste and not baked: it can make an infant badly ill (botulism).</b>{ $n ->
    [0] {""}
   *[other] {" "}By what is listed there is honey in { $dishes }.
} What else is in a dish only its cook knows. <i>({ $source })</i>
# $n dishes named below
may-avoid-head = { $n ->
    [0] In pregnancy, by the published lists: no dish on our list is known to be one of them so far.
   *[other] In pregnancy, by the published lists, of what is on our list:
}
may-avoid-line = • { $said }
may-avoid-ask = Nobody has said what is in { $dishes }: ask the cook.
# $what sorts of food
may-avoid-lists = Left out in pregnancy: { $what }. Who is in doubt leaves it out and asks their doctor or midwife. <i>({ $source })</i>
