allergy-of = { safety-what-is-avoided }
# $what the whole message
allergy-told = { $what }
allergy-aloud = { $names }:
    { $what }
# $degree (severe, allergy), $name of whose it is, only for the host’s eyes
allergy-head = ⚠️ { $has-name ->
    [yes] { $name }
   *[no] A guest
} { $degree ->
    [severe] has a severe allergy to { $needs }.
   *[allergy] must not eat { $needs }.
}
# $how (listed, named, usual, perhaps), $names of the cooks
allergy-dish = • { $dish }{ $has-names ->
    [yes] {" "}({ $names })
   *[no] {""}
}: { $how ->
    [listed] { $needs } by its cook’s own words
    [named] { $needs } by its name
    [usual] usually made with { $needs }
   *[perhaps] perhaps with { $needs }
}
allergy-nothing-known = Nothing on the list is known to hold it so far.
allergy-unlisted = Nobody has said what is in { $dishes }: the cook is asked before that guest eats of it.
allergy-list-it = Say what is in it, all of it: “/contains { $dish }: …”.
# $to (host, cook, group)
allergy-do = { $to ->
    [host] The cooks hear it too, without a name. Agree with them: make it without, bring something else, or label it and keep it apart with a spoon of its own.
    [group] Please make it without, bring something else, or label it and keep it apart with a spoon of its own; /contains says what is in a dish.
   *[cook] Can you make it without, or bring something else? If it stays as it is: a label, a spoon of its own, and away from the other dishes.
} <i>({ $source })</i>
allergy-do-now = <b>Now:</b> { $to ->
    [cook] tell the host what is in it. It gets a label, a spoon of its own and a place away from the other dishes.
   *[host] these dishes get a label, a spoon of their own and a place away from the others. That guest takes first, and only of dishes whose cook can name everything in them.
} <i>({ $source })</i>
allergy-passed-on = { $cooks ->
    [yes] The host and the cooks of these are told, without your name to the cooks.
   *[no] The host is told.
} { $urgent ->
    [yes] Eat only of dishes whose cook can name you everything in them, and take before the others do.
   *[no] Ask the cooks before you eat.
}
allergy-back = Taken back: of those who come, nobody is down any more as “no { $needs }” ({ $dishes }). Ask the host before you change what you cook.
allergy-comes-after-all = You are down as not coming; the cooks are told of a severe allergy all the same. Are you coming after all?
# $what the lines of what is new
allergy-new-dish = ⚠️ New on the list, and not for you:
    { $what }
