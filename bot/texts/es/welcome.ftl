welcome-group =
    ¡Hola! Mantengo en orden un convite: quién viene, quién lleva qué, cuánto y cuándo.
    Empieza con «/potluck sábado 18 de septiembre 17:00, unas 24 personas», o solo /potluck.
welcome-back = Estoy de vuelta. Guardé lo que me contaron, y el tablero está abajo.
welcome-admin = Gracias: como administrador puedo fijar el tablero y leer respuestas con sus propias palabras en todo el grupo.
welcome-no-admin = Ya no soy administrador: veo los comandos, los botones y las respuestas a mis mensajes, y eso basta.
left-host = { $name } salió del grupo; ahora organiza { $host }.
left-host-nobody = { $name } salió del grupo y nadie más viene todavía; cualquier administrador puede hacerse cargo.
left-dishes = { $name } salió del grupo; vuelve a estar libre: { $dishes }.
