# Safety notes. Every one has $rule (the row of the table). Nothing is ever called safe: the texts say what to do
# and by when, and what is listed. `..._time` is wall time like 16:10, `..._weekday` is 0 (Monday) to 6 (Sunday).

# Measures in the potluck's own units ($metric: yes, no); every sentence below has the figures of both.
at-140 = { $metric ->
    [yes] 60 °C
   *[no] 140 °F
}
from-40-to-140 = { $metric ->
    [yes] 4 and 60 °C
   *[no] 40 and 140 °F
}
at-165 = { $metric ->
    [yes] 74 °C
   *[no] 165 °F
}
at-40 = { $metric ->
    [yes] 4 °C
   *[no] 40 °F
}
at-90 = { $metric ->
    [yes] 32 °C
   *[no] 90 °F
}
at-325 = { $metric ->
    [yes] 165 °C
   *[no] 325 °F
}
at-200 = { $metric ->
    [yes] 95 °C
   *[no] 200 °F
}
at-160 = { $metric ->
    [yes] 71 °C
   *[no] 160 °F
}
at-145 = { $metric ->
    [yes] 63 °C
   *[no] 145 °F
}
temp-said = { $metric ->
    [yes] { $temp_c } °C
   *[no] { $temp } °F
}
temp-likely = { $metric ->
    [yes] { $likely_c } °C
   *[no] { $likely } °F
}
temp-least = { $metric ->
    [yes] { $least_c } °C
   *[no] { $least } °F
}
so-heavy = { $metric ->
    [yes] { $lb_kg } kg
   *[no] { $lb } lb
}
so-much = { $metric ->
    [yes] { $volume_l } l
   *[no] { $volume } qt
}
so-large = { $metric ->
    [yes] { $size_l } l
   *[no] { $size } qt
}

# $dish, $limit (minutes in all), $spent (minutes already out), $by_time, $assumed (yes: heat is assumed)
safety-out-plan = “{ $dish }” may stand out until { $by_time } if it goes on the table at { $at_time }{ $spent ->
        [0] {""}
        [one] , counting one minute out of the cold or off the heat before
       *[other] , counting { $spent } minutes out of the cold or off the heat before
    }{ $assumed ->
        [yes] {" "}(outdoors in the warm months we reckon with { at-90 }: one hour)
       *[no] {""}
    }. Then back below { at-40 } or above { at-140 }.
safety-out-running = “{ $dish }” is out. By { $by_time } put it back in the cold or heat it through again; after that, throw it out.
safety-out-over = “{ $dish }” has been out for longer than { $limit ->
        [60] one hour in the heat
       *[120] two hours
    } (until { $by_time }). Throw it out.
safety-out-spent = “{ $dish }” has already spent { $spent } minutes out of the cold or off the heat, and { $limit } is the limit. It must not go on the table.
# $at_time off the heat, $by_time; $hot (yes: it is to be served hot)
safety-out-between = “{ $dish }” leaves the heat at { $at_time } and is not eaten until much later: { $hot ->
    [yes] keep it at { at-140 } or hotter until then. After { $by_time } without heat it must not go on the table.
   *[no] put it in the refrigerator in between, in shallow containers. What has stood outside it until { $by_time } must not go on the table.
}
safety-out-keeps = “{ $dish }” is on the list of foods that keep at room temperature. The clock is only shown because it was started.

safety-cool-ahead = “{ $dish }”: after cooking cool it in shallow containers, no deeper than { $metric ->
    [yes] 5 cm
   *[no] { $inches } inches
}, and have it in the refrigerator within { $hours } hours.
safety-way-cold = On the way keep cold food in a cooler with ice, at { at-40 } or colder; minutes out of the cold count with those on the table.
safety-way-hot = On the way keep hot food wrapped in an insulated carrier, at { at-140 } or hotter; minutes off the heat count with those on the table.
safety-leftovers-chill = Leftovers into the refrigerator by { $by_time }{ $hours ->
        [1] {" "}(one hour, as it is hot outside)
       *[2] {""}
    }, or throw them out.
safety-leftovers-shallow = Cool leftovers in shallow containers, no deeper than { $metric ->
    [yes] 5 cm
   *[no] { $inches } inches
}.
safety-leftovers-days = Eat refrigerated leftovers within { $days } days.
safety-leftovers-short = Leftover “{ $dish }”: eat within { $days ->
        [one] { $days } day
       *[other] { $days } days
    }.

# $dish, $lb, $days, $hours, $by_time, $by_weekday
safety-thaw-fridge = “{ $dish }” ({ so-heavy }, frozen) must be in the refrigerator by { $by_time } on { $by_weekday ->
        [0] Monday
        [1] Tuesday
        [2] Wednesday
        [3] Thursday
        [4] Friday
        [5] Saturday
       *[6] Sunday
    }: a day for every { $metric ->
        [yes] 1.8 kg
       *[no] 4 lb
    }, { $days ->
        [one] { $days } day
       *[other] { $days } days
    } here. Never on the counter.
safety-thaw-water = “{ $dish }” ({ so-heavy }) can no longer thaw in the refrigerator in time. In cold water it takes { $hours } hours: start by { $by_time } on { $by_weekday ->
        [0] Monday
        [1] Tuesday
        [2] Wednesday
        [3] Thursday
        [4] Friday
        [5] Saturday
       *[6] Sunday
    }, change the water every 30 minutes, and cook it at once.
safety-thaw-too-late = “{ $dish }” ({ so-heavy }, frozen) cannot be thawed in time: even in cold water it needs { $hours } hours. Plan something else.

safety-slow-warm = “{ $dish }”: the warm setting does not cook. Heat it to { at-165 } first, then keep it warm.
safety-slow-reheat = “{ $dish }” is cooked already: a slow cooker must not reheat it. Bring it to { at-165 } or to a boil on the stove, then keep it hot in the slow cooker at { at-140 } or more.
safety-slow-short = “{ $dish }”: { $minutes } minutes in a slow cooker warm it up rather than cook it. If it is cooked already, heat it to { at-165 } on the stove first.
safety-slow-frozen = “{ $dish }” must not go into the slow cooker frozen. Thaw it completely first.
safety-slow-full = “{ $dish }” is about { so-much }, and a { so-large } slow cooker should be no more than two thirds full. Split it or use a larger one.
safety-slow-empty = “{ $dish }” is about { so-much }, and a { so-large } slow cooker should be at least half full. Use a smaller one.
safety-slow-big = “{ $dish }”: cut a whole bird or a large roast into pieces for the slow cooker, or follow the size its manual gives.
safety-kidney-dry = “{ $dish }”: dry kidney beans must boil briskly for { $minutes } minutes in fresh water before any slow cooking. Canned ones need not.
safety-kidney-ask = “{ $dish }” has kidney beans. Are they canned, or boiled for { $minutes } minutes first? Dry ones must not go straight into a slow cooker.

safety-hold-hot = “{ $dish }”: keep it at { at-140 } or hotter until it is eaten.
safety-hold-too-cool = “{ $dish }”: { temp-said } is too cool to keep it hot. Hold it at { at-140 } or hotter.
safety-reheat = “{ $dish }”: reheat it to { at-165 } inside.
safety-reheat-boil = “{ $dish }”: bring it to a boil when you reheat it.
safety-reheat-oven = “{ $dish }”: reheat it with the oven at { at-325 } or more, not { temp-said }.
safety-cook-through = “{ $dish }”: cook it to { $rule ->
        [COOK-02] { at-160 }
        [COOK-12] { at-160 }
        [COOK-15] { at-145 }
       *[other] { at-165 }
    } inside, by a thermometer in the thickest part.

safety-raw-egg = “{ $dish }” is usually made with raw egg. Use pasteurized eggs.
safety-raw-dough = “{ $dish }”: raw flour is not ready to eat. Bake it, or use heat-treated flour from the shop.
safety-home-canned = “{ $dish }” is listed as home-canned. Vegetables, meat and fish canned at home without a pressure canner can carry botulism: please leave it out.
safety-wild-mushroom = “{ $dish }” is listed with wild mushrooms. Only bring mushrooms bought in a shop.
safety-rice = “{ $dish }”: keep cooked rice at { at-140 } or hotter, or chill it within an hour or two of cooking. Reheating does not undo what grows in between.
safety-foil-potato = “{ $dish }”: take baked potatoes out of their foil, or keep them hot. Do not let them stand warm in foil.
safety-honey = “{ $dish }” has honey, which must not be given to children under one year, not even cooked. There is an infant among the guests.
# $what is a list
safety-choke = “{ $dish }” ({ $what }) can choke children under four. Cut round food lengthwise into quarters, { $metric ->
    [yes] 1 cm
   *[no] half an inch
} at most; leave nuts, popcorn and hard sweets away from them.
safety-choke-older = “{ $dish }” ({ $what }): let children sit down to eat it, and keep an eye on them.
safety-listeria-sprouts = “{ $dish }” ({ $what }): not raw for anybody who is pregnant, old or has weak defences.
safety-listeria-unpasteurized = “{ $dish }” ({ $what }): not for anybody who is pregnant, old or has weak defences.
safety-listeria-raw-animal = “{ $dish }” ({ $what }): raw or undercooked, so not for anybody who is pregnant, old or has weak defences.
safety-listeria-soft-cheese = “{ $dish }” ({ $what }): anybody who is pregnant should skip it unless the cheese’s label says pasteurized.
safety-listeria-pate = “{ $dish }” ({ $what }): anybody who is pregnant should skip refrigerated pâté and meat spreads.
safety-listeria-smoked-fish = “{ $dish }” ({ $what }): anybody who is pregnant should skip cold-smoked fish unless it is cooked in the dish.
safety-listeria-deli = “{ $dish }” ({ $what }): for anybody who is pregnant only steaming hot, { at-165 }.
safety-listeria-seafood-salad = “{ $dish }” ({ $what }): anybody who is pregnant should skip ready-made seafood or meat salads.

# $dish, $need (peanut, tree-nut, gluten-free …), $who (cook: listed; name: the name says it), $degree (severe, allergy, intolerance)
safety-what-is-avoided = { $need ->
    [gluten-free] gluten
    [dairy-free] milk
    [nut-free] nuts
    [tree-nut] tree nuts
    [peanut] peanuts
    [sulphites] sulphites
   *[other] { $need }
}
safety-allergen = { $who ->
    [cook] “{ $dish }” contains { safety-what-is-avoided }, says the cook.
   *[name] “{ $dish }” contains { safety-what-is-avoided }, going by its name.
} { $degree ->
    [severe] Somebody here has a severe allergy to that and must not eat any of it. Ask the cook to leave it out; if it stays, label it, give it a spoon of its own, and keep it well away from the other dishes.
    [allergy] Somebody here must not eat that: label it, give it a spoon of its own, and keep it apart.
   *[intolerance] Somebody here does not tolerate that: label it, and give it a spoon of its own.
}
safety-allergen-usual = “{ $dish }” is usually made with { safety-what-is-avoided }, and somebody here must not eat that. Ask the cook what is in it; label it, and give it a spoon of its own.
safety-allergen-perhaps = “{ $dish }” may contain { safety-what-is-avoided }, and somebody here must not eat that. Ask the cook to look at the labels.
safety-allergen-topping = The topping “{ $dish }” contains { safety-what-is-avoided }. { $degree ->
    [severe] Somebody here has a severe allergy to that: better leave it off the bar. If it stays, put it at the far end with a spoon of its own, and let that guest go first.
   *[allergy] Somebody here must not eat that: put it at the far end of the bar with a spoon of its own, and let that guest go first.
}

# $number, $watts, $most
safety-circuit-full = Circuit { $number } carries { $watts } of { $most } W at its busiest. Plug nothing else into it.
safety-no-strips = Plug slow cookers, microwaves and roasters straight into the wall, not into a power strip.

safety-planning-aid = This is a planning aid, not a licensed food service, a health department or a doctor. Allergens are as the cooks reported them.
safety-when-in-doubt = When in doubt, throw it out.
safety-ill-cook = Whoever was ill with vomiting or diarrhea cooks for nobody until { $hours } hours after the last symptom.
safety-health-department = If the public is invited or plates are sold, ask the local health department first.
# $country (us, other)
safety-poison-line = { $country ->
        [us] Poison Help: 1-800-222-1222.
       *[other] Poison advice: your country’s own number (in the US 1-800-222-1222).
    }
safety-emergency = { $country ->
        [us] Trouble breathing or collapse: call 911.
       *[other] Trouble breathing or collapse: call your emergency number (112 in Europe, 911 in the US).
    }
