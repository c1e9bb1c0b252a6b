help-potluck = empezar un convite o mostrar su tablero otra vez
ask-zone = ¿En qué zona horaria viven? Responde con una ciudad grande cercana, por ejemplo «Chicago».
ask-when = ¿Cuándo es? Responde con un día y una hora, por ejemplo «sábado 18 de septiembre 17:00».
ask-hour = { $day } – ¿a qué hora? Responde por ejemplo «17:00».
opened-ask-people = En marcha: { $when }. ¿Cuántas personas esperas, más o menos? Responde con un número.
opened-ask-place = En marcha: { $when }. ¿Dónde es? Responde con el lugar o déjalo para luego.
opened = En marcha: { $when }. Respondan con los botones del tablero o con sus propias palabras.
noted-people = Anotado: unas { $people } personas.
noted-people-ask-place = Anotado: unas { $people } personas. ¿Dónde es? Responde con el lugar o déjalo para luego.
noted-later = Bien, más tarde: /where y /size lo reciben cuando quieras.
noted-place = Anotado: { $place }.

board-title = <b>{ $title }</b>
board-title-none = <b>Convite</b>
board-title-plain = Convite
board-cancelled = <b>Cancelado</b>
board-when = { $when }{ $has-place ->
    [yes] {" "}· { $place }
   *[no] {""}
}{ $setting ->
    [outdoor] {" "}· al aire libre
   *[indoor] {""}
}
board-host = Organiza: { $names }
board-answer-by = Por favor, respondan hasta { $when }
