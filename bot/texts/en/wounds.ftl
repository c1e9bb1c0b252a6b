# Somebody is hurt, or ill from what was eaten. $country (us, other); $source who says so.
hurt-wound = <b>First the person:</b> press firmly on it with a clean cloth and keep pressing. If it is deep, spurts or does not stop: { $country ->
    [us] call 911
   *[other] call your emergency number (112 in Europe)
}. <i>({ $source })</i>
    Then the food: throw out everything that blood or glass may have got on, wash board, knife and hands, and let somebody else go on; a covered cut only under a glove.
hurt-scald = <b>Cool running water on it now, for at least 10 minutes</b>; no ice, butter or ointment; rings and clothes off unless they stick. Bigger than the palm, on the face, a child, or white and charred: { $country ->
    [us] call 911
   *[other] call your emergency number (112 in Europe)
}. <i>({ $source })</i>
hurt-fire = <b>Pan: lid on, heat off, never water, don’t carry it. Oven: door shut, off.</b> If it is not out at once: everybody out, door closed, and from outside { $country ->
    [us] call 911
   *[other] call your emergency number (112 in Europe)
}. <i>({ $source })</i>
hurt-gas-smell = <b>Everybody out now.</b> No switch, flame or phone inside; open what is on your way. From outside call the gas company or { $country ->
    [us] 911
   *[other] your emergency number (112 in Europe)
}. The same when a carbon monoxide alarm sounds. <i>({ $source })</i>
hurt-poison = { $country ->
    [us] <b>Call Poison Help now: 1-800-222-1222.</b> Unconscious, seizing or trouble breathing: 911.
   *[other] <b>Call your poison line or emergency number now</b> (112 in Europe).
} Have the package at hand and do what they say; don’t make anybody throw up by yourselves. In the eyes: rinse with water at once. Food it may have got into is thrown out. <i>({ $source })</i>
ill-eaters = <b>First the people.</b> { $country ->
    [us] Trouble breathing, collapse, swelling of lips or throat: 911.
   *[other] Trouble breathing, collapse, swelling of lips or throat: your emergency number (112 in Europe).
} A doctor at once for babies, the old, pregnant or frail; for blood, nothing staying down, signs of drying out, blurred sight or weak muscles, diarrhea for more than three days, severe cramps, or fever above 100.4 °F (38 °C). Small sips of water. <i>({ $source })</i>
ill-eaters-dish = Nobody eats any more of { $dish }. Put what is left aside, covered, cold and marked, for the health department, and ask who else had some.{ $over ->
    [yes] {" "}It had been out for { $minutes } minutes as far as I was told: too long.
   *[other] {""}
}
ill-eaters-food = Nobody eats on until it is clear what it was. Put aside what they all ate, covered, cold and marked, and write down who had what.
ill-eaters-call = { $country ->
    [us] Poison Help knows about food, too: 1-800-222-1222.
   *[other] Your health line or poison line knows about food, too.
} Who is ill touches no food for two days after the last symptom, and washes hands alone at one sink; /leftovers can wait.
grill-outside-only = ✋ <b>No charcoal and no grill under a roof</b>: not in a house, hall, garage, tent or porch, not with the doors open, and no hot coals carried in afterwards. Carbon monoxide has no smell and kills. Outside, away from walls – or cook it on the stove or in the oven. <i>({ $source })</i>
