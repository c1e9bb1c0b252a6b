# Por qué se pide: una línea para quien organiza. Se cuenta a quien necesita algo, nunca se nombra.
asks-why-short = { $servings ->
    [0] hay porciones suficientes, pero poca variedad
    [one] falta una porción
   *[other] faltan { $servings } porciones
}; { $because ->
    [asked] ya se le pidió
    [likes] ya lo ha llevado antes
    [turn] todavía no lleva nada
    [host] te da tiempo de hacerlo
   *[free] aún le da tiempo
}
asks-why-diet = { $people ->
    [one] una persona todavía no tiene aquí nada que le sirva
   *[other] { $people } personas todavía no tienen aquí nada que les sirva
}; { $because ->
    [asked] ya se le pidió
    [likes] ya lo ha llevado antes
    [turn] todavía no lleva nada
    [host] te da tiempo de hacerlo
   *[free] aún le da tiempo
}
asks-why-host = { $open ->
    [yes] no queda a quién pedírselo
   *[no] si prefieres no pedirlo
}; { $servings ->
    [one] con una porción se cubre
   *[other] con { $servings } porciones se cubre
}
asks-why-buy = { $over ->
    [yes] esto se pasa del presupuesto
   *[no] { $open ->
        [yes] no queda a quién pedírselo
       *[no] si nadie dice que sí
    }
}; { $servings ->
    [one] con una porción se cubre
   *[other] con { $servings } porciones se cubre
}
asks-why-instead = en lugar de hacerlo tú; { $servings ->
    [0] hay poca variedad
    [one] falta una porción
   *[other] faltan { $servings } porciones
}
