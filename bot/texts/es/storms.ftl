storm-what = <b>Al primer trueno todos bajo techo</b>, a un edificio con paredes o a un carro cerrado –no debajo de árboles, carpas ni toldos–, y ahí se quedan hasta 30 minutos después del último trueno. Las parrillas se quedan afuera: lo que está en ellas se saca o se termina en una estufa; la comida que se mete va tapada, caliente o con hielo. { $outdoor ->
    [yes] { $manages ->
        [yes] Sigue planeado afuera: di a dónde se pasan («nos pasamos adentro, al salón») u otra hora («empezamos a las 5»), o pulsa abajo.
       *[no] Si cambia de lugar o de hora lo dice { $host }.
    }
   *[no] Está planeado bajo techo.
} <i>({ $source })</i>
