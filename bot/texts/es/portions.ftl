# De dónde salen las cifras de quién viene; porcentajes, y cuántas respuestas anteriores las movieron.
headcount-odds-default = Se calcula así: de cada 100 que dicen sí vienen { $yes }, de los quizá { $maybe }, de los que no han respondido { $none } (práctica común, sin fuente).
headcount-odds-learned =
    { $learned ->
        [one] Se calcula así: de cada 100 que dicen sí vienen { $yes }, de los quizá { $maybe }, de los que no han respondido { $none }: práctica común, corregida por { $learned } respuesta de comidas anteriores del grupo.
       *[other] Se calcula así: de cada 100 que dicen sí vienen { $yes }, de los quizá { $maybe }, de los que no han respondido { $none }: práctica común, corregida por { $learned } respuestas de comidas anteriores del grupo.
    }
headcount-odds-host = Se calcula con las cifras de quien organiza: de cada 100 que dicen sí vienen { $yes }, de los quizá { $maybe }, de los que no han respondido { $none }.
