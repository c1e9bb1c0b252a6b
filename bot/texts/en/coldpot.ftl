# Food that stood warm where it was meant to cook. $since, $until clock times; $minutes out, $limit minutes in all.
cold-over = ✋ <b>Don’t eat { $dish }, and don’t cook it on.</b> The slow cooker was off: it stood between { from-40-to-140 } since { $since }, { $minutes } minutes, and { $limit } are the limit. Throw it out, however it looks and smells: cooking does not take away what grew in it. <i>({ $source })</i>
cold-in-time = ⚠ <b>{ $dish } stood cold since { $since }</b>: { $minutes } of { $limit } minutes are gone. Bring it to a full boil on the stove (or finish it in the oven) right now, not slowly in the slow cooker; if that has not begun by { $until }, throw it out. <i>({ $source })</i>
cold-unknown = ✋ <b>{ $dish }: nobody told me since when it stood in a cold slow cooker.</b> More than { $limit } minutes between { from-40-to-140 } and it is thrown out; cooking it longer does not mend that. If nobody can say for sure that it was less, throw it out. <i>({ $source })</i>
cold-which = ✋ Which dish was in it? What stood between { from-40-to-140 } for more than two hours (one hour in heat) is thrown out; cooking it longer does not mend that. <i>({ $source })</i>
cold-unnamed = ✋ What was in it? What stood between { from-40-to-140 } for more than two hours (one hour in heat) is thrown out; cooking it longer does not mend that. <i>({ $source })</i>
cold-was-it-on = { $dish }: was the slow cooker on, and is it hot now ({ at-140 } or more)? If it was off, what stood in it for more than two hours (one hour in heat) is thrown out, and cooking it longer does not mend that. <i>({ $source })</i>
button-it-was-off = It was off: { $dish }
button-thrown-out = Thrown out: { $dish }
recook-over = ✋ <b>Cooking it longer does not make it good.</b> { $dishes }: the time out is over, and heat does not take away all that grew in it. Throw it out. <i>({ $source })</i>
recook-unknown = { $dish }: that depends on how long it stood between { from-40-to-140 }. More than { $limit } minutes in all and cooking does not mend it: throw it out. Less, and nobody doubts it: bring it to a boil, or heat it through to { at-165 }, at once. When in doubt, throw it out. <i>({ $source })</i>
