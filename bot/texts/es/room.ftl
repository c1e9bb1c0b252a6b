# La sala de práctica: sus rótulos, lo que cuenta de las decisiones del bot y las cinco cosas para probar. Todo texto sencillo.

room-title = Tureen – la sala
room-name = sala de práctica
room-skip = Ir a escribir en el grupo
room-you-are = Eres
room-admin = { $name }, administra el grupo
room-view = Qué se ve
room-view-one = De uno en uno
room-view-all = Lado a lado
room-language = Idioma
room-clock = Reloj
room-hour = +1 hora
room-day = +1 día
room-next = Próximo aviso
room-move-to = Llevar a
room-move = Mover
room-moving = El reloj avanza …
room-playing = Se representa la demostración: línea { $n } de { $of }
room-busy = Tureen está trabajando …
room-away = La sala está cerrada. Vuelve a abrirla para seguir.
room-tabs = Qué mostrar
room-tab-group = Grupo
room-tab-private = Privado
room-tab-guide = Guía
room-news = nuevo
room-group = Grupo
room-people = Personas: { $n }
room-no-bot = El bot no está aquí.
room-board = Tablero fijado
room-board-above = El tablero, fijado arriba
room-group-chat = Chat del grupo
room-private-of = { $name } y el bot
room-who-here = De quién es el chat privado
room-speak = Hablar en el grupo como { $name }
room-stopped = detenido
room-not-opened = aún sin abrir
room-open-private = Abrir el chat privado
room-said-nothing = Nadie ha dicho nada todavía.
room-private-nothing = Aquí no se ha dicho nada todavía. Lo que escribas solo lo lee el bot.
room-write-group = Escribir en el grupo como { $name }
room-write-private = Escribir al bot como { $name }
room-send = Enviar
room-cancel = Cancelar
room-commands = Comandos …
room-send-else = Enviar …
room-send-photo = una foto
room-send-voice = un mensaje de voz
room-send-sticker = un sticker
room-send-location = una ubicación
room-changing = Cambiando: { $text }
room-replying = Respondiendo a { $name }: { $text }
room-reply = Responder
room-react = Reaccionar
room-edit = Editar
room-delete = Borrar
room-reply-to = Responder a: { $text }
room-react-to = Reaccionar a: { $text }
room-react-with = Reaccionar con { $text }
room-edit-it = Editar: { $text }
room-delete-it = Borrar: { $text }
room-reacted = { $text } de { $name }
room-changed = cambiado
room-buttons = Botones de este mensaje
room-picture = Imagen: { $name }
room-somebody = Alguien
room-told = { $name }: { $text }
room-ok = Vale

## Lo que decidió el bot

room-why = Qué decidió el bot y por qué
room-ahead = Qué dirá por su cuenta
room-why-read = leído en las palabras «{ $text }»
room-why-said = escrito al bot
room-why-pressed = se pulsó un botón
room-taken-back = { $text } (deshecho)
room-to-group = al grupo
room-to-host = a quien organiza
room-to-name = a { $name }
room-deed = { $deed ->
    [did-add] { $name } entró en la lista
    [did-answer] { $answer ->
        [yes] viene
        [maybe] quizá
        [no] no puede venir
       *[other] ya sin respuesta
    }
    [did-answer-by] se fijó el plazo para responder
    [did-arrive] se fijó cuándo llega un plato
    [did-began] { $dish } se puso al fuego
    [did-away] { $dish } se retiró de la mesa
    [did-bar] cambió la barra de ingredientes
    [did-budget] se fijó el presupuesto
    [did-cohost] cambió quién organiza
    [did-contains] se anotó qué lleva un plato
    [did-decline] se rechazó una petición
    [did-drop] { $dish } se quitó
    [did-edit] se volvió a leer un mensaje editado
    [did-frozen] { $dish } viene congelado
    [did-give] { $dish } pasó a otra persona
    [did-heat] se fijó cómo se calienta un plato
    [did-invite] se invitó a gente
    [did-item] se añadió algo que comprar
    [did-kitchen] se describió la cocina
    [did-meet] empezó una conversación sobre necesidades
    [did-needs] se anotó lo que alguien no puede comer
    [did-out] un plato salió a la mesa
    [did-party] se anotó cuántas personas vienen
    [did-pay] se anotó un pago
    [did-place] se fijó el lugar
    [did-price] se anotó un precio
    [did-promise] { $dish } quedó prometido
    [did-resize] se fijó el número de personas
    [did-share] { $dish } se trae entre varias personas
    [did-topping] { $topping } tiene dueño
    [did-units] se fijaron las unidades
    [did-when] cambió la hora
    [did-zone] se fijó el huso horario
    [did-answer-for] se respondió por otra persona
    [did-cancel] se canceló
    [did-host] ahora organiza otra persona
    [did-leave] se fue
    [did-remove] se quitó a alguien de la lista
    [did-title] tiene otro nombre
   *[other] cambió el plan
}

## Cinco cosas para probar

room-try = Cinco cosas para probar
room-try-count = { $n } de { $of } hechas
room-try-done = Las cinco están hechas. La sala es tuya.
room-try-write = Escribirlo por { $name }
room-try-go = Llévame allí como { $name }
room-try-clock = Llévame al reloj
room-try-skip = Saltar
room-try-is-done = hecho
room-try-no-button = Ese botón no existe todavía: empieza antes una comida.
room-try-start = Empieza una comida
room-try-start-how = Quien la empieza la organiza. Bastan un día, una hora y una idea de cuánta gente. Antes se le pide al bot que hable español.
room-try-start-say = /potluck sábado 17:00, unas 24 personas
room-try-start-then = El tablero queda fijado encima del chat. Cambia con cada respuesta.
room-try-answer = Responde como invitado
room-try-answer-how = Pulsa en el tablero el botón de quien viene («Coming» o «Voy»), como en un teléfono.
room-try-answer-then = El tablero cuenta una persona más. Si fue un error: deshacer, u otro botón.
room-try-bring = Trae algo, con tus propias palabras
room-try-bring-how = Una respuesta al tablero se lee como una frase dicha a un amigo.
room-try-bring-say = Somos 3, uno vegetariano, y traemos ensalada de maíz para 8
room-try-bring-then = Una frase, tres datos anotados. El panel de abajo dice qué palabras se leyeron.
room-try-needs = Di en privado lo que no puedes comer
room-try-needs-how = El enlace del tablero abre tu chat privado con el bot. El grupo solo lee que alguien tiene una necesidad.
room-try-needs-then = Cada plato se compara ahora con esa necesidad. Envía /eat en el chat privado para ver por cuáles preguntar.
room-try-move = Deja pasar el tiempo
room-try-move-how = Mueve el reloj al próximo aviso. El bot habla por su cuenta, cada vez a quien le toca.
room-try-move-then = Sigue hasta el día mismo: el horno, los relojes de lo que está fuera, lo que sobra.
room-more = Y después
room-more-picture = la mesa en una imagen
room-more-missing = qué falta y quién podría traerlo
room-more-bar = la barra de ingredientes y qué abre el siguiente
room-more-kitchen = horno, ollas lentas y fuegos para una sola hora de servir
room-more-table = los números detrás del tablero
room-more-print = tarjetas, hoja de cocina, lista de compra, etiquetas
room-more-late = veinte minutos tarde, y qué se desplaza
room-more-leftovers = qué se conserva y cuánto tiempo
room-more-again = la misma cena otra vez
room-more-language = el bot habla español en el grupo
