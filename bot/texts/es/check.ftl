# Las líneas de `check`: una por cada cosa comprobada.

check-settings-ok = ajustes: leídos, modo { $mode }
check-settings-bad = ajustes: { $what }
check-limits-off = ajustes: TUREEN_SEND_LIMITS está en off, que es solo para medir; la plataforma responderá 429 a las avalanchas
check-database-ok = base de datos: { $kind } responde y se puede escribir
check-database-new = base de datos: { $what } no existe todavía; el primer arranque la crea
check-database-bad = base de datos: no se puede usar ({ $why }); revisa TUREEN_DATABASE_URL, los permisos de la carpeta y el disco
check-durable-ok = durabilidad: { $kind } tiene cada cambio en el disco antes de que se responda
check-durable-bad = durabilidad: fsync está apagado en este servidor { $kind } y un corte de luz se lleva cambios ya respondidos; pon fsync = on
check-migrations-ok = migraciones: al día ({ $revision })
check-migrations-first = migraciones: ninguna todavía; el primer arranque las aplica todas
check-migrations-behind = migraciones: en { $revision }; el próximo arranque las lleva a { $newest }
check-migrations-newer = migraciones: en { $revision }, que esta versión no conoce; usa la versión que la escribió o una más nueva
check-clock-ok = reloj: a { $seconds } s del de la plataforma
check-clock-bad = reloj: a { $seconds } s del de la plataforma; los avisos se desviarían otro tanto, así que pon en hora esta máquina
check-clock-unknown = reloj: no se pudo comparar, la plataforma no dijo su hora
check-token-ok = token: aceptado, el bot es @{ $username }
check-token-privacy = token: aceptado, el bot es @{ $username }; ve todos los mensajes de los grupos (el modo de privacidad está apagado)
check-token-bad = token: la plataforma lo rechaza; cópialo otra vez de donde lo obtuviste
check-token-missing = token: falta TUREEN_TOKEN
check-token-unknown = token: no se llega a la plataforma ({ $why }); revisa la red y TUREEN_API_BASE_URL
check-webhook-ok = webhook: puesto en { $url }, { $waiting } novedades en espera
check-webhook-error = webhook: la plataforma informa «{ $why }»; comprueba que se llega a { $url } desde fuera
check-webhook-other = webhook: hay otro puesto; arrancar con TUREEN_MODE=polling lo quita
