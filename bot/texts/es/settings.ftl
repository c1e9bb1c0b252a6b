help-settings = zona horaria, unidades, idioma, horas de silencio, avisos
help-mute = sin más avisos para ti, o de nuevo con ellos
settings-group =
    <b>Ajustes de este grupo</b>
    Zona horaria: { $zone }
    Unidades: { $units ->
        [us] estadounidenses
       *[metric] métricas
    }
    Idioma: { $language }
    Silencio: { $from }–{ $to }
    { $n ->
        [0] Todos los avisos están activos.
       *[other] Avisos apagados: { $off }
    }
    Cámbialo con los botones, o «/settings timezone Chicago», «/settings quiet 22:00-07:00».
settings-personal = { $muted ->
    [yes] No recibes avisos.
   *[no] Recibes avisos de lo que prometiste.
}
settings-saved = Guardado.
zone-moved = La hora que lees se queda, en la zona horaria de { $zone }: { $when }.
mute-now = { $muted ->
    [yes] Sin más avisos para ti; /mute otra vez los enciende.
   *[no] Los avisos vuelven a estar activos para ti.
}
button-units = { $units ->
    [us] Usar unidades estadounidenses
   *[metric] Usar unidades métricas
}
button-language = Idioma: { $language }
button-mute = Apagar mis avisos
button-unmute = Encender mis avisos
reminder-kind-answer-by = responder
reminder-kind-bring = qué llevar
reminder-kind-thaw = descongelar
reminder-kind-slow-cooker = olla de cocción lenta
reminder-kind-preheat = precalentar
reminder-kind-swap = cambiar bandejas
reminder-kind-leave = salir ya
reminder-kind-start = comienzo
reminder-kind-out-limit = demasiado tiempo fuera
reminder-kind-collect = gracias y platos
reminder-kind-return = platos por devolver
reminder-to-group = todos
reminder-head = <b>{ $title }</b>
reminder-for = { $name }: { $what }
reminder-preview = { $when } – { $name }: { $kind }
