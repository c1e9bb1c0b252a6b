host-asked = { $name }, ¿te encargas de organizar? Pulsa abajo; hasta entonces no cambia nada.
host-offered = { $name } se ofrece a organizar. Decide { $host }.
button-hand-over = Organiza { $name }
host-new-place = Sigue siendo en { $place }. Si ahora es en otro sitio, quien organiza lo dice, así: «/where Calle Olmo 5».
place-of = casa de { $name }
place-of-what = { $what } de { $name }
when-dish = Según lo calculado ahora:
when-dish-unknown = { $dish } no tiene hora en la cocina: nadie me dijo cómo se calienta. Dilo así: «/heat { $dish }: horno 40 min a 190 °C».{ $frozen ->
    [yes] {" "}Cuándo sacarlo del congelador se le avisa a tiempo a quien lo hace.
   *[no] {""}
}
whose-asked = De quién es, que lo diga aquí su dueño, por favor.
eat-ask-them = { $known ->
    [yes] { $held } Lo que { $name } no puede comer lo dice { $name }: pregúntale.
   *[no] Lo que { $name } no puede comer lo dice { $name }: pregúntale. /table muestra qué llevan los platos.
}
eat-none-told = { $name } no me dijo nada. Eso no quiere decir que no haya nada: pregunta.
eat-for-guest = Para { $name }, según lo anotado:
eat-told-private = Te lo escribí en privado.
when-dish-conflict = { $dish } no encuentra sitio en la cocina tal como está calculada: /kitchen dice por qué y qué ayudaría.
cohost-awaited = { $name } también organiza desde el primer mensaje que escriba aquí.
thaw-when = { $dish }, { $lb } lb congelado: { $past ->
    [yes] tenía que pasar al refrigerador antes del { $when }, { $days } días antes de cocinarlo. Pásalo ya; lo que siga duro va a agua fría en una bolsa cerrada, cambiando el agua cada 30 minutos, unas { $hours } horas para todo, y se cocina enseguida.
   *[no] al refrigerador antes del { $when }: hace falta un día por cada 4 libras ({ $days } días). Te aviso entonces. En agua fría tarda unas { $hours } horas, cambiando el agua cada 30 minutos, y se cocina enseguida.
} <i>({ $source })</i>
thaw-rule = { $dish }: en el refrigerador un día por cada 4 libras (1.8 kg), listo antes de cocinarlo para el { $when }. Escribe cuántas libras están congeladas («{ $dish }, 16 lb, congelado») y te aviso a tiempo. Nunca en el mostrador. <i>({ $source })</i>
appliance-when = { $on }: así { $dish } entra a las { $at }, según lo calculado ahora. A quien organiza le llega un aviso; /now y /next lo dicen en cualquier momento.
