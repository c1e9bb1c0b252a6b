help-help = esta ayuda
help-head-group = <b>Lo que puedo hacer aquí</b>
help-head-private = <b>Lo que puedo hacer en privado</b>
help-line = /{ $command } – { $what }
help-words-group = O responde al tablero con tus palabras: «venimos 3, uno vegetariano, ensalada para 12».
help-words-private = O simplemente escribe: «venimos 3, uno vegetariano, ensalada para 12».
help-rights = Cualquiera puede empezar un convite aquí y lo organiza. Cada quien responde por sí, por los suyos y por quienes añade; lo demás lo cambian quienes organizan y los administradores del grupo. A las personas nombradas se les avisa.
help-hosts-too = <b>Para quienes organizan</b>
start-private = ¡Hola! { $n ->
    [0] Aquí puedes decirme en privado qué no puedes comer, en cuanto tu grupo tenga un convite.
   *[other] Aquí puedes decirme en privado qué no puedes comer (/needs), ver tu lista (/list) y recibir avisos.
}
