# Somebody is hurt, or something got at the food. $country (us, other); $dish the dish meant; $source who says so.
hazard-choking = <b>Can they cough, speak or cry? Let them cough, bent forward, and stay with them.</b> If not, or it does not come out: { $country ->
    [us] <b>call 911</b>
   *[other] <b>call your emergency number</b> (112 in Europe)
}, then 5 firm blows with the heel of the hand between the shoulder blades and 5 quick thrusts in and up above the navel, in turns, until it is out. Under one year old: face down on your arm, 5 blows on the back, then 5 pushes on the breastbone, no thrusts to the belly; pregnant: thrusts to the chest. No finger blindly into the mouth. Not breathing or not awake: start CPR and do what the emergency service says. <i>({ $source })</i>
hazard-heat = <b>This can be heat stroke: { $country ->
    [us] call 911 now
   *[other] call your emergency number now (112 in Europe)
}</b>, above all when somebody is confused, faints, throws up, has stopped sweating or does not get better at once. Into the shade or a cool room; clothes off or loosened; cool them with water, wet cloths and a fan, cold packs on neck, armpits and groin. Stay with them, on their side if they throw up. No alcohol; something to drink only if they are fully awake. <i>({ $source })</i>
hazard-ate-raw = <b>Nobody eats on of it; the rest goes back on the heat</b> until it measures { at-165 } inside, or is thrown out. Whoever ate some and feels well: rinse the mouth, don’t make anybody throw up, and watch for the next days. A doctor for blood, fever above 100.4 °F (38 °C), nothing staying down, signs of drying out or diarrhea for more than three days; sooner for small children, the old, the pregnant and the frail. { $country ->
    [us] Poison Help knows about food, too: 1-800-222-1222.
   *[other] Your health line or poison line knows about food, too.
} <i>({ $source })</i>
hazard-battery = <b>A battery swallowed, or only perhaps: to an emergency room at once, without waiting for signs.</b> { $country ->
    [us] On the way: battery hotline 1-800-498-8666.
   *[other] On the way: your poison line or emergency number.
} Nothing to eat or drink unless they tell you to, and don’t make them throw up. <i>({ $source })</i>
hazard-of = <b>{ $dish }:</b> { $what }
hazard-chemical = ✋ <b>Nobody eats or drinks of it. Throw out everything it may have got on</b>, open food and drinks around it, too: rinsing and cooking don’t take it out. Then wash plates, board and hands. Whoever had some already: { $country ->
    [us] Poison Help, 1-800-222-1222.
   *[other] your poison line or emergency number.
} <i>({ $source })</i>
hazard-container = ✋ <b>Don’t serve what is or was in it.</b> Buckets, bags and bottles made for paint, building, trash or cleaning are not made for food: washing takes neither what was in them nor what the plastic gives off out of them. Throw it out and make it anew in pots, or in tubs marked for food. <i>({ $source })</i>
hazard-glass = ✋ <b>Throw out everything open within reach, and don’t pick or sieve it out:</b> splinters are not to be seen. That holds for ice and drinks, too. Keep people, bare feet and children away, wipe with damp paper, wash plates and bowls that stood near. Who swallowed some or bleeds: a doctor, or { $country ->
    [us] 911
   *[other] your emergency number
}. <i>({ $source })</i>
hazard-pests = ✋ <b>Don’t use it: throw out open food that mice, rats or insects may have been at or on</b>, and what was in bags or boxes that are gnawed, stained or crawled through; baking or sieving does not mend it. Cans and glass jars that are shut: wash them first. Droppings: don’t sweep or vacuum; gloves, wet them well with disinfectant, wipe up with paper, then wash hands and everything that stood there. <i>({ $source })</i>
hazard-animal = ✋ <b>What an animal licked, bit or walked over is not served</b>, what lay open beside it neither: throw it out; cutting it off does not mend it. Wash hands, plates and the place. <i>({ $source })</i>
hazard-floor = ✋ <b>What fell on the floor or the ground is not served:</b> rinsing does not mend it. Throw it out, and wipe up before somebody slips. <i>({ $source })</i>
hazard-flood = ✋ <b>Nothing is eaten that flood or drain water may have touched</b>, packed in paper, plastic, cardboard or behind a screw or snap cap neither; only shut, undamaged metal cans can be washed and disinfected. Nobody cooks in that kitchen until it is cleaned and disinfected; hands off wet plugs and switches. Cook elsewhere, or buy what is ready to eat. <i>({ $source })</i>
hazard-water = ✋ <b>No tap water: nobody cooks, drinks, makes ice or washes food with it.</b> Bottled water for drinking, cooking, washing produce and hands (with soap, 20 seconds; gel does not wash); under a boil-water notice boiled water as the notice says. Throw out ice and drinks made with the tap. Paper plates and cups, one bucket for the toilet. If there is not enough water to wash hands, what is cooked elsewhere or ready to eat takes the place of cooking there. <i>({ $source })</i>
hazard-recall = ✋ <b>Compare brand, lot and date with the notice. What is on it, or can’t be told, nobody eats:</b> throw it out or take it back, with every dish it is in. Cooking it to be sure is no way out: you can’t know that all of it got hot enough. Wash the refrigerator drawer, board and knife it touched. Who ate of it and gets bloody diarrhea, fever or can’t keep anything down: a doctor. <i>({ $source })</i>
hazard-can = ✋ <b>Don’t taste it, don’t open it, don’t boil it:</b> what bulges, leaks, spurts, is deeply dented or rusty goes, wrapped, where neither children nor animals get at it. Was it open: wipe up and wash what it touched. Who ate of it and has blurred or double sight, drooping lids, trouble swallowing or weak muscles: { $country ->
    [us] 911
   *[other] your emergency number
} at once. <i>({ $source })</i>
hazard-mold = ✋ <b>Throw out all of it, and don’t sniff at it:</b> in bread, soft cheese, sauces, jam, berries and cooked food mold goes deeper than it shows. Only hard cheese may be cut, at least an inch (2.5 cm) around and below the spot, the knife kept out of it. Look at what lay beside it. <i>({ $source })</i>
hazard-juices = ✋ <b>What raw meat or its juice touched, and is not cooked any more, goes:</b> salad, fruit, bread, what was cooked already. What is still to be cooked reaches { at-165 } inside, by a thermometer. Wash board, knife, tongs, plates and hands with hot water and soap before anything else. <i>({ $source })</i>
hazard-marinade = ✋ <b>What raw meat lay in is no sauce.</b> Unless it is boiled first, throw it out, with what it was poured over; better a fresh one that was kept apart. Don’t taste it before. <i>({ $source })</i>
hazard-spit = ✋ <b>Take that bowl or tray off the table and throw out what is in it</b>; a fresh one with its own spoon comes in its place, and small portions go on plates. <i>({ $source })</i>
hazard-pot-frozen = ✋ <b>Not from frozen, and warm does not cook:</b> in a slow cooker it stays between { from-40-to-140 } too long. More than two hours in it (one in heat), or nobody knows: throw it out, cooking on does not mend it. Less, and nobody doubts it: right now into the oven or onto the stove until it measures { at-165 } inside. <i>({ $source })</i>
