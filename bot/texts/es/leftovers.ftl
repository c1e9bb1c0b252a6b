help-leftovers = lo que sobra: cuánto se conserva, qué hay que tirar, quién se lo lleva
help-dishes = qué platos y recipientes faltan por devolver
button-leftovers = Sobras
button-take = { $dish }: para mí
button-dishes = Platos por devolver
button-back-home = { $dish }: devuelto
left-head = <b>Sobras</b> – lo que estuvo fuera se enfría antes de { $hours ->
    [one] una hora
   *[other] { $hours } horas
} desde que salió, en recipientes bajos, con la fecha puesta.
left-keeps = • { $dish }: { $timed ->
    [yes] al refrigerador antes de las { $by }, y luego
   *[no] {""}
} hasta { $until } en el refrigerador{ $has-names ->
    [yes] – { $names }
   *[no] {""}
}
left-perhaps = ✋ { $dish }: nadie me dijo cuánto estuvo fuera; en la mesa desde las { $since } son { $minutes } minutos, y el límite son { $limit } – a la basura, salvo que quien lo guardó diga que estuvo frío ({ at-40 }) o caliente ({ at-140 }) todo el tiempo{ $has-names ->
    [yes] {" "}– se lo lleva: { $names }
   *[no] {""}
}
left-perhaps-all = ✋ Nadie me dijo cuánto estuvieron fuera: { $dishes }. En la mesa desde las { $since } son { $minutes } minutos, y el límite son { $limit } – a la basura, salvo que quien guardó alguno diga que estuvo frío ({ at-40 }) o caliente ({ at-140 }) todo el tiempo. Si se guardó a tiempo, díganlo así: «las lentejas estaban en la nevera a las 20:00».
left-taken-by = { $dish } (se lo lleva { $names })
left-must-go = ✋ { $dish }: { $minutes } minutos fuera – a la basura
left-unlisted = No está en mi lista{ $has-things ->
    [yes] : { $things }
   *[no] {""}
}. No se sabe cuánto estuvo fuera. Lo perecedero que estuvo más de { $limit } minutos en total se tira; lo demás va al refrigerador ahora, en recipientes bajos, con la fecha puesta.
left-how = Recalentar a { at-165 }. Pulsa lo que te llevas. <i>({ $source })</i>
left-taken = Tuyo: { $dish }. Al refrigerador enseguida.
left-not-taken = Ya no es tuyo: { $dish }.
did-take = se llevó { $dish }
did-back = { $dish } ha vuelto
back-head = { $n ->
    [0] Cada plato está de vuelta con su dueño. ¡Gracias!
   *[other] <b>Por devolver</b> – pulsa lo que ya volvió:
}
back-row = • { $dish } → { $name }
back-noted = De vuelta: { $dish }. ¡Gracias!
