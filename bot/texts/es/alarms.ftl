# Alguien dice qué lleva una comida que otros no pueden comer.
alarm-left-out = Anotado para { $dish }, lo dice quien cocina: sin { $what }. Las trazas de tabla, sartén y cocina son otra cosa: díganlo también si las hay; sartén, cuchillo y cuchara limpios y propios.
alarm-heard = { $dish }, dice { $by }: lleva { $what }. { $cook }, ¿es así? Hasta que digas qué lleva, cuenta como que lo lleva.
alarm-unlisted = ⚠️ <b>{ $what }: alguien de esta mesa tiene { $degree ->
    [severe] una alergia grave
   *[other] una alergia
} a { $needs }.</b> Mejor que no venga, o que venga otra cosa sin eso. Si viene: avisen ya al anfitrión, cerrado y con etiqueta, en otra mesa y con su propia cuchara, y manos lavadas después. No está en mi lista; /bring lo apunta.
alarm-passed-on = Alguien me escribió en privado: «{ $words }». Toca la alergia de un invitado; por favor acláralo con esa persona.
