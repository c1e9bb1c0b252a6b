help-door = cómo entrar, solo en privado para quienes vienen; quien organiza lo pone en privado
help-parking = dónde estacionar; quien organiza lo pone con «/parking detrás del salón»
help-weather = el tiempo en palabras de quien organiza, por ejemplo «/weather calor, 35 °C»
help-pin = el lugar en el mapa; quien organiza envía una ubicación en respuesta al tablero
door-noted = Anotado. Lo digo en privado y solo a quienes vienen.
door-is = { $has-words ->
    [yes] Cómo entrar: { $words }.
   *[no] Quien organiza todavía no ha dicho cómo entrar.
}{ $has-parking ->
    [yes] {" "}Estacionamiento: { $parking }.
   *[no] {""}
}
door-in-private = Cómo entrar se dice en privado.
parking-noted = Estacionamiento: { $words }.
parking-is = { $has-words ->
    [yes] Estacionamiento: { $words }.
   *[no] No se ha dicho nada del estacionamiento; quien organiza puede con /parking.
}
weather-noted = Tiempo: { $words }.{ $outdoors ->
    [yes] { $hot ->
        [yes] {" "}La comida al aire libre tiene una hora.
       *[no] { $known ->
            [yes] {" "}La comida al aire libre tiene dos horas.
           *[no] {" "}Di una temperatura y los relojes de la comida al aire libre la siguen.
        }
    }
   *[no] {""}
}
weather-is = { $has-words ->
    [yes] Tiempo: { $words }.
   *[no] No se ha dicho nada del tiempo; quien organiza puede con /weather.
}
pin-is = { $has-place ->
    [yes] { $place }
   *[no] Aquí es.
}
pin-noted = El punto está puesto; /pin lo muestra.
refused-door-in-group = Aquí no: lo leería todo el grupo. Escríbemelo en privado.
refused-door-not-coming = Cómo entrar se dice a quienes dijeron que vienen; pulsa antes «Voy».
refused-no-pin = Todavía no hay punto en el mapa; quien organiza puede enviar una ubicación en respuesta al tablero.
refused-pin = Eso no está en el mapa; envía la ubicación otra vez.
did-door = dijo cómo entrar
did-parking = estacionamiento
did-weather = el tiempo
did-pin = el punto en el mapa
