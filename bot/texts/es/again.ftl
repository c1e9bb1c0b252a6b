help-again = el último convite otra vez con nueva fecha, por ejemplo «/again sábado 16 de octubre 17:00» o «/again monthly»
button-same-again = Otra vez, { $when }
again-opened = Otra vez: <b>{ $when }</b>. { $people ->
    [one] Estás en la lista.
   *[other] Hay { $people } personas en la lista; cada una responde de nuevo.
}
again-proposed = ¿Quién lleva qué? Los platos fuertes se turnan. Pulsa el tuyo:
again-line = • { $name }: { $has-dish ->
    [yes] ¿otra vez { $dish }?
   *[no] ¿esta vez { $one }?
}
button-again = { $name }: { $has-dish ->
    [yes] { $dish }
   *[no] { $category }
}
again-taken = { $name } viene y lleva { $dish }.
again-brings-already = Eso ya está en la lista.
again-already = Ese ya está empezado.
again-monthly = Cada mes a partir de ahora: cuando uno termina propongo el siguiente, primero { $when }.
again-once = A partir de ahora, solo esta vez.
refused-nothing-again = Aquí no hay ningún convite que repetir; empieza uno con /potluck.
did-repeats = cada cuánto se hace
refused-repeats = Di «/again monthly» (cada mes) o «/again once» (solo una vez).
