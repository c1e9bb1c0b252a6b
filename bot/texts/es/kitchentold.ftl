kitchen-unheard = No cuenta para el plan: { $words }.
kitchen-offered = { $name } tiene { $thing ->
    [microwave] un microondas más
   *[other] una olla lenta más
} para la cocina. { $host }, ¿lo cuento en el plan?
button-count-on-it = Contarlo
