# Ollas, bandejas y platos que tiene otra persona
mixup-took = { $whose }: { $thing } lo tendría { $who }. { $who }, mira por favor y dilo aquí; { $whose }, pulsa cuando esté de vuelta.
mixup-took-somebody = A { $whose } le falta: { $thing }. Quien lo tenga, que lo diga aquí, por favor.
mixup-took-own = Gracias por decirlo. { $whose }, { $who } tiene lo tuyo: { $thing }.
mixup-left = A { $whose } le falta: { $thing }{ $has-spot ->
    [yes] , estaría { $spot }
   *[no] {""}
}. Quien esté ahí o lo tenga, que lo aparte y lo diga aquí, por favor.
mixup-hers = Entendido: { $thing } es de { $whose } y de nadie más.
mixup-found = { $who } tiene algo que no es suyo: { $thing }. { $n ->
    [0] A quien le falte, que lo diga aquí, por favor.
   *[other] Puede ser lo que { $missing }: mírenlo, por favor.
}
mixup-missed = le falta a { $whose } ({ $thing })
mixup-something = algo
