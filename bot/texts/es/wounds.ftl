# Alguien se hizo daño, o enfermó por lo que comió.
hurt-wound = <b>Primero la persona:</b> presionen fuerte con un paño limpio y no suelten. Si es profunda, sale a chorros o no para: { $country ->
    [us] llamen al 911
   *[other] llamen al número de emergencias (112 en Europa)
}. <i>({ $source })</i>
    Después la comida: a la basura todo lo que pudo tocar sangre o vidrio; laven tabla, cuchillo y manos, y que siga otra persona; un corte cubierto, solo con guante.
hurt-scald = <b>Agua corriente fresca ahora, al menos 10 minutos</b>; sin hielo, mantequilla ni pomada; fuera anillos y ropa si no se pega. Si es mayor que la palma, en la cara, de un niño, o blanca o carbonizada: { $country ->
    [us] llamen al 911
   *[other] llamen al número de emergencias (112 en Europa)
}. <i>({ $source })</i>
hurt-fire = <b>Sartén: tapa, fuego apagado, nunca agua, sin moverla. Horno: puerta cerrada, apagado.</b> Si no se apaga enseguida: todos afuera, puerta cerrada, y desde afuera { $country ->
    [us] llamen al 911
   *[other] llamen al número de emergencias (112 en Europa)
}. <i>({ $source })</i>
hurt-gas-smell = <b>Todos afuera ahora.</b> Ni interruptores, ni llamas, ni teléfono adentro; abran lo que quede de paso. Desde afuera llamen a la compañía de gas o { $country ->
    [us] al 911
   *[other] al número de emergencias (112 en Europa)
}. Lo mismo si suena la alarma de monóxido de carbono. <i>({ $source })</i>
hurt-poison = { $country ->
    [us] <b>Llamen ahora a Poison Help: 1-800-222-1222.</b> Inconsciente, con convulsiones o si le cuesta respirar: 911.
   *[other] <b>Llamen ahora a toxicología o al número de emergencias</b> (112 en Europa).
} Tengan el envase a mano y hagan lo que digan; no provoquen el vómito por su cuenta. En los ojos: enjuagar con agua enseguida. La comida que pudo tocar va a la basura. <i>({ $source })</i>
ill-eaters = <b>Primero las personas.</b> { $country ->
    [us] Si cuesta respirar, se desmaya, o se hinchan labios o garganta: 911.
   *[other] Si cuesta respirar, se desmaya, o se hinchan labios o garganta: número de emergencias (112 en Europa).
} Médico enseguida para bebés, mayores, embarazadas o personas delicadas; si hay sangre, no retiene nada, se deshidrata, ve borroso o le fallan los músculos, diarrea de más de tres días, dolor muy fuerte, o fiebre de más de 38 °C (100,4 °F). Sorbitos de agua. <i>({ $source })</i>
ill-eaters-dish = Nadie come más de { $dish }. Aparten lo que queda, tapado, frío y marcado, para las autoridades sanitarias, y pregunten quién más comió.{ $over ->
    [yes] {" "}Llevaba { $minutes } minutos fuera, que yo sepa: demasiado.
   *[other] {""}
}
ill-eaters-food = Nadie sigue comiendo hasta saber qué fue. Aparten lo que comieron todos, tapado, frío y marcado, y anoten quién comió qué.
ill-eaters-call = { $country ->
    [us] Poison Help también sabe de comida: 1-800-222-1222.
   *[other] El teléfono de salud o de toxicología también sabe de comida.
} Quien está enfermo no toca comida hasta dos días después del último síntoma, y se lava las manos aparte; /leftovers puede esperar.
grill-outside-only = ✋ <b>Ni carbón ni parrilla bajo techo</b>: ni en casa, salón, garaje, carpa o porche, ni con las puertas abiertas, ni brasas calientes adentro después. El monóxido de carbono no huele y mata. Afuera, lejos de las paredes, o en la hornilla o el horno. <i>({ $source })</i>
