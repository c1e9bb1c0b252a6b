# Somebody says what is in a food that others must not eat. $what the foods, $needs, $degree (severe, allergy)
alarm-left-out = Noted for { $dish }, says the cook: { $what } left out. Traces from board, pan and kitchen are another matter: say so, too, if there were any; a clean pan, knife and spoon of its own.
alarm-heard = In { $dish }, says { $by }: { $what }. { $cook }, is that so? Until you say what is in it, it counts as in it.
alarm-unlisted = ⚠️ <b>{ $what }: somebody at this table has { $degree ->
    [severe] a severe allergy
   *[other] an allergy
} to { $needs }.</b> Best it stays away, or something without comes in its place. If it comes: tell the host now, keep it shut and labelled, on a table and with a spoon of its own, and wash hands after it. It is not on my list; /bring puts it there.
alarm-passed-on = Somebody told me in private: “{ $words }”. It meets an allergy of a guest; please settle it with them.
