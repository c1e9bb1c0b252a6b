# Cada negativa es una frase que dice qué hacer.

refused-no-potluck = Aquí no hay ningún convite todavía; empieza uno con /potluck y una fecha, por ejemplo «/potluck sábado 18 de septiembre 17:00, unas 24 personas».
refused-no-potluck-private = No sé de ningún convite tuyo; pulsa antes un botón del tablero en tu grupo.
refused-potluck-in-private = Un convite vive en un grupo: añádeme a tu grupo y escribe allí /potluck.
refused-command = No conozco /{ $command }; /help dice lo que sé hacer.
refused-in-group-only = /{ $command } funciona en el grupo; escríbelo allí.
refused-in-private-only = /{ $command } funciona en nuestro chat privado; ábrelo con un botón del tablero.
refused-anonymous = Escribes como el propio grupo y así no sé quién eres; quita «permanecer anónimo» y dilo otra vez.
refused-not-host = { $has-host ->
    [no] Eso solo lo cambia quien organiza o un administrador del grupo; pídeselo a uno de ellos.
   *[yes] Eso solo lo cambian { $host } (organiza), quien también organiza o un administrador del grupo; pídeselo a uno de ellos.
}
refused-not-yours = Eso solo lo cambia { $name } o quien organiza; pídele que lo diga.
refused-not-your-dish = «{ $dish }» es de { $name }; solo esa persona o quien organiza puede cambiarlo.
refused-not-guest = Di antes si vienes, con un botón del tablero.
refused-cancelled = Este convite se canceló; empieza otro con /potluck.
refused-over = Este convite ya pasó; empieza otro con /potluck.
refused-edited-potluck = El convite sigue; cámbialo con /when, /where o /size en lugar de editar el mensaje.
refused-edited-late = Has hecho otra cosa después, así que la edición no cambia nada; escríbelo de nuevo o usa antes /undo.
refused-same-hour = Ya hay un convite a esa hora; cámbialo con /when, /where o /size.
refused-oven-temperature = { $temp } grados no son de un horno; escríbelo como «375» o «190 °C».
refused-past = Eso ya pasó; da una fecha y hora que estén por venir.
refused-far = Faltan más de dos años; da una fecha más cercana.
refused-end = El final debe ser después del comienzo y dentro de un día.
refused-size = Da un número de personas de { $low } a { $high }.
refused-setting = Di «outdoors» (al aire libre) o «indoors» (bajo techo).
refused-temperature = Da una temperatura exterior entre { $metric ->
    [yes] −40 y 54 °C
   *[no] −40 y 130 °F
}.
refused-answer-by = La fecha para responder debe estar entre ahora y el comienzo.
refused-budget = Da el presupuesto como importe, por ejemplo «/budget 120».
refused-kitchen = Da cada número de 0 a { $most }.
refused-kitchen-words = No pude leer «{ $words }»; escríbelo como «1 oven, 2 slow cookers, 4 burners».
refused-heat-words = Escríbelo como «/heat lasaña: 40 minutes at 375, covered, then rest 10 minutes».
refused-frozen-words = Escríbelo como «/frozen pavo 14 lb».
refused-arrive = Da una hora de ese día antes de que termine, por ejemplo «/arrive 16:00».
refused-unknown-person = No conozco aquí { $has-name ->
    [no] a esa persona
   *[yes] a «{ $name }»
}; usa el nombre tal como está en el tablero, o añádela con /add.
refused-known-person = «{ $name }» ya está en la lista; elige un nombre que los distinga.
refused-already-host = { $name } ya organiza.
refused-no-account = { $has-name ->
    [no] Esa persona
   *[yes] { $name }
} no ha escrito aquí todavía, así que no puede organizar; pídele que pulse antes un botón del tablero.
refused-has-account = { $name } responde por sí; pídele que pulse «No puedo».
refused-name-somebody = Nombra a alguien, o responde a uno de sus mensajes.
refused-empty = Está vacío; escribe unas palabras.
refused-too-long = Es demasiado largo; usa como mucho { $most } caracteres.
refused-party = Da números enteros de { $low } a { $high } para cada edad.
refused-party-words = No pude leer «{ $words }»; escríbelo como «2 adultos y 1 niño».
refused-empty-party = Alguien tiene que venir; si no viene nadie, pulsa «No puedo».
refused-too-many-guests = Son más de { $most } invitados; un segundo convite puede llevar al resto.
refused-too-many-promises = Son más de { $most } platos; quita uno antes.
refused-too-many-toppings = Son más de { $most } ingredientes; quita uno antes.
refused-too-many-items = Son más de { $most } entradas; quita una antes.
refused-category = No conozco esa clase de plato; elige uno de los botones.
refused-servings = Da porciones de 1 a { $most }.
refused-weight = Da un peso de hasta 100 lb (45 kg).
refused-no-dish = Nombra el plato, por ejemplo «/bring ensalada para 12».
refused-no-promise = Ese plato ya no está en la lista; /list muestra lo que hay.
refused-no-promises = Nadie ha prometido un plato todavía.
refused-no-own-promise = No tienes ningún plato en la lista; /bring añade uno.
refused-which-promise = ¿Cuál: { $dishes }? Escríbelo otra vez con el nombre del plato.
refused-no-such-promise = No encuentro «{ $words }» en la lista; hay { $dishes }.
refused-what-to-bring = No pude ver el plato en «{ $words }»; escríbelo como «ensalada para 12».
refused-not-a-dish = «{ $words }» no suena a algo para la mesa; escríbelo como «ensalada para 12».
refused-whom = Di con o a quién, por ejemplo «ensalada { $joint } Mei», o responde a su mensaje.
refused-not-coming = { $name } no viene; elige a otra persona.
refused-already-shared = { $name } ya comparte «{ $dish }».
refused-contains = Escríbelo como «/contains ensalada: col, mayonesa, mostaza».
refused-need = No conozco «{ $words }»; escríbelo como «vegetariano» o «sin maní».
refused-add-whom = Di a quién, por ejemplo «/add mi madre» o «/add Sam, 2 adultos y 1 niño».
refused-invite-whom = Di a quién esperas, por ejemplo «/invite Ravi, Mei y Tom», o a cuántos, por ejemplo «/invite 24».
refused-remove-whom = Di a quién, por ejemplo «/remove Sam».
refused-answer-for = Escríbelo como «/answer Pat no».
refused-no-bar = No hay barra de ingredientes todavía; quien organiza abre una con «/bar papa al horno».
refused-no-base = Nombra la base, por ejemplo «/bar papa al horno».
refused-topping-taken = { $name } ya lleva { $topping }; elige otro.
refused-no-topping = Nadie ha tomado «{ $topping }».
refused-empty-combo = Una combinación necesita al menos un ingrediente.
refused-combo-words = Escríbelo como «/bar combo Huerta: cebollín, crema agria».
refused-nothing-to-undo = No hay nada tuyo que deshacer de los últimos dos días.
refused-undo-not-last = Has hecho otra cosa después; /undo deshace primero lo último.
refused-undo-changed = Alguien cambió lo mismo después, así que no puedo deshacerlo; cámbialo a mano.
refused-button = Este botón no es de este chat; usa los de tu propio tablero.
refused-button-old = Este botón es demasiado viejo; usa los del tablero.
refused-button-not-yours = Este botón es de otra persona; usa los del tablero.
refused-drawn = Ya van diez imágenes o papeles en poco tiempo: la última de arriba sigue valiendo; pide otra dentro de un minuto.
refused-flood = Eso es más de lo que leo de golpe de una persona o de un grupo: espera un minuto y envía otra vez lo que importa; esto y lo que siga por ahora no lo he tomado en cuenta.
refused-link-late = Ese enlace solo valía tres días; vuelve a preguntar en el grupo y te doy uno nuevo.
refused-link-of-another = Ese enlace se hizo para otra persona; usa el del tablero o pide en el grupo uno tuyo.
refused-link = Este enlace ya no lleva a ninguna parte; toma uno nuevo del tablero.
refused-not-member = Esto es para la gente de ese grupo; si estás en él, pulsa antes un botón de su tablero.
refused-zone = No conozco la zona horaria de «{ $value }»; nombra una ciudad grande cercana, por ejemplo «Chicago».
refused-hour = No pude leer la hora en «{ $value }»; escríbela como «17:00» o «5pm».
refused-setting-name = Puedo ajustar { $names }; escríbelo como «/settings timezone Chicago».
refused-units = Di «/settings units us» o «/settings units metric».
refused-language = Sé hablar { $languages }; escríbelo como «/settings language es».
refused-quiet = Escríbelo como «/settings quiet 22:00-07:00», o «/settings quiet off».
refused-money = No pude leer el importe «{ $words }»; escríbelo como «23.40».
refused-currency = Aquí se paga en { $currency }; da el importe en eso.
refused-price-words = Escríbelo como «/price potatoes 4.50 per 5 lb bag».
refused-nothing-paid = Nadie ha pagado nada todavía; escríbelo como «/paid 23.40 carbón».
refused-amount-of-what = Di de qué, por ejemplo «/amount papas».
refused-unknown-item = No tengo cifra para «{ $words }»; prueba una palabra más sencilla, por ejemplo «ensalada de papa».

trouble-storage = Ahora mismo no puedo guardar nada; inténtalo otra vez en un minuto.
trouble-inside = Algo falló de mi lado y no se cambió nada; inténtalo otra vez.
