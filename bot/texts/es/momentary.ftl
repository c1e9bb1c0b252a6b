help-now = qué está pasando ahora en la cocina
help-next = qué viene después en la cocina
button-now = Ahora mismo
button-next = Después
now-head = <b>Ahora, { $at }</b>{ $n ->
    [0] {" "}– nada en marcha.
   *[other] :
}
next-head = { $n ->
    [0] En la cocina no hay nada más previsto.
   *[other] <b>Después</b>:
}
