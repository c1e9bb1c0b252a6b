evening-forgot-unlisted = «{ $thing }» no está en mi lista, así que nada se calculó con eso.
evening-forgot = «{ $dish }» sigue en la lista por ahora.{ $has-short ->
    [yes] {" "}Sin eso: { $short }.
   *[no] {""}
} ¿Vuelves por eso? Di cuánto te retrasas; si no, quítalo.
told-forgot = { $name } dejó «{ $dish }» en casa.{ $has-short ->
    [yes] {" "}Sin eso: { $short }.
   *[no] {""}
}
evening-ran-out = Se acabó: { $thing }.{ $has-others ->
    [yes] {" "}En la lista hay además: { $others }.
   *[no] {""}
}{ $has-coming ->
    [yes] {" "}Aún no llegan y podrían traer algo de camino: { $coming }.
   *[no] {""}
}{ $has-host ->
    [yes] {" "}Pregunta a { $host }.
   *[no] {""}
}{ $next ->
    [yes] {" "}La próxima vez cuento con más.
   *[no] {""}
}
told-ran-out = { $name } dice que se acabó: { $thing }.
evening-taken = Tuyo: { $dish }. Al refrigerador enseguida; ahí dura hasta el { $until }.
evening-hard = Más tiempo para «{ $dish }», donde está; { $left ->
    [0] la mesa puede esperar.
   *[other] quedan { $left } minutos hasta las { $serve }.
}{ $has-other ->
    [yes] {" "}«{ $other }» necesita ese lugar desde las { $next }.
   *[no] {""}
}{ $has-rule ->
    [yes] {" "}{ $rule }
   *[no] {""}
}
evening-forgot-part = Entonces falta «{ $thing }» y lo demás de { $dish } llega. ¿Vuelves por ello? Di cuánto te retrasas; si no, escribe para cuántos alcanza ahora, como «{ $dish } para 6».
