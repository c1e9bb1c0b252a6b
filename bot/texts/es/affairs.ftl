host-asked = { $name }, ¿te encargas de organizar? Pulsa abajo; hasta entonces no cambia nada.
host-offered = { $name } se ofrece a organizar. Decide { $host }.
button-hand-over = Organiza { $name }
host-new-place = Sigue siendo en { $place }. Si ahora es en otro sitio, quien organiza lo dice, así: «/where Calle Olmo 5».
place-of = casa de { $name }
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
