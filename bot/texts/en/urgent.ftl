# $country (us, other)
urgent-call = { $country ->
    [us] <b>Call 911 now.</b>
   *[other] <b>Call your emergency number now</b> (112 in Europe, 911 in the US).
}
urgent-injector = <b>Allergic reaction: use their own adrenaline auto-injector (EpiPen) now</b>, at the first sign, if they were prescribed one; somebody else calls meanwhile, even if it gets better. Keep them lying or sitting, don’t leave them alone, have the second pen at hand, and do what the emergency service says. <i>({ $source })</i>
# $minutes out so far, $limit minutes in all, $until
urgent-still-running = { $dish }: out for { $minutes } minutes as far as I was told, and { $limit } are the limit. Eat it, chill it or heat it through by { $until }; after that throw it out. When in doubt, throw it out. <i>({ $source })</i>
urgent-still-rested = { $dish }: out for { $minutes } minutes in all as far as I was told, and { $limit } are the limit. If it stood out longer, or is not cold or hot now, throw it out. When in doubt, throw it out. <i>({ $source })</i>
urgent-still-over = { $dish }: out for { $minutes } minutes, and { $limit } are the limit. Throw it out, however it looks and smells. <i>({ $source })</i>
urgent-still-unknown = { $dish }: nobody told me how long it stood out. The limit is { $limit } minutes in all, the car and the counter counted. When in doubt, throw it out; if it has only just come out, press below and its clock starts. <i>({ $source })</i>
urgent-still-keeps = { $dish }: by its name it has no two-hour clock. Whoever made it knows what is in it; when in doubt, throw it out.
urgent-still-which = Which dish? Nothing perishable stays out for more than { $limit } minutes in all, the car and the counter counted. When in doubt, throw it out. <i>({ $source })</i>
urgent-still-over-unnamed = Out for { $minutes } minutes, and { $limit } are the limit for anything perishable. When in doubt, throw it out. <i>({ $source })</i>
urgent-raw = Don’t serve it yet. { $rule } Measure in the thickest part; until then nobody eats of it. <i>({ $source })</i>
urgent-raw-unknown = Don’t serve it yet. Cook it on to { at-165 } inside, the highest figure of the list, by a thermometer in the thickest part; until then nobody eats of it. <i>({ $source })</i>
urgent-frozen = Don’t thaw it on the counter or in hot water. In cold water, in a tight bag, it takes about 30 minutes a pound; change the water every 30 minutes and cook it at once. <i>({ $source })</i>
