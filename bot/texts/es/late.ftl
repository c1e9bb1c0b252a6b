help-late = llegas tarde, por ejemplo «/late 20» o «/late 17:30»
help-here = ya llegaste
button-here = Ya llegamos
button-lates = Llego tarde
late-how-much = ¿Cuánto?
button-late = { $n } min
button-out = { $dish }: en la mesa
late-noted = Gracias: quien organiza ya sabe que llegas tarde. ¿Cuánto?
told-late = { $name } llega tarde.
late-moved = Anotado: llegas a las { $when }; quien organiza lo sabe.
told-late-until = { $name } llega a las { $when }.
told-lines = { $lines }
late-breaks-nothing = En la cocina no cambia nada.
refused-late-words = Di cuántos minutos o hasta cuándo, por ejemplo «/late 20» o «/late 17:30».
refused-late-after-end = A esa hora ya habrá terminado; di /answer si no puedes venir.
did-late = más tarde: { $when }
did-here = llegó
here-already = Ya está anotado que llegaste.
here-toast = ¡Bienvenidos!
here-noted = { $name } ya está aquí: han llegado { $n } de { $of } personas.{ $has-dishes ->
    [yes] {" "}Pulsa cuando esté en la mesa: { $dishes }.
   *[no] {""}
}
