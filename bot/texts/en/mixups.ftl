# Pots, trays and dishes that are with somebody else
mixup-took = { $whose }: { $thing } is said to be with { $who }. { $who }, please look, and say so here; { $whose }, press when it is back.
mixup-took-somebody = { $whose } misses: { $thing }. Whoever has it, please say so here.
mixup-took-own = Thank you for saying so. { $whose }, { $who } has your { $thing }.
mixup-left = { $whose } misses: { $thing }{ $has-spot ->
    [yes] , said to be { $spot }
   *[no] {""}
}. Whoever is there or has it, please set it aside and say so here.
mixup-hers = Understood: { $thing } goes back to { $whose }, nobody else’s.
mixup-found = { $who } has one of somebody else’s: { $thing }. { $n ->
    [0] Whoever misses it, please say so here.
   *[other] It may be what { $missing } – please look.
}
mixup-missed = { $whose } misses ({ $thing })
mixup-something = something
