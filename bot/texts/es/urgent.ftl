urgent-call = { $country ->
    [us] <b>Llamen al 911 ahora.</b>
   *[other] <b>Llamen ahora al número de emergencias</b> (112 en Europa, 911 en EE. UU.).
}
urgent-injector = <b>Reacción alérgica: usen ya su propio autoinyector de adrenalina (EpiPen)</b>, a la primera señal, si se lo recetaron; otra persona llama mientras tanto, aunque mejore. Que esté tumbada o sentada, no la dejen sola, tengan a mano el segundo autoinyector y hagan lo que diga emergencias. <i>({ $source })</i>
urgent-still-running = { $dish }: lleva { $minutes } minutos fuera, que yo sepa, y el límite son { $limit }. A comer, enfriar o calentar bien antes de { $until }; después, a la basura. En caso de duda, a la basura. <i>({ $source })</i>
urgent-still-rested = { $dish }: estuvo { $minutes } minutos fuera en total, que yo sepa, y el límite son { $limit }. Si estuvo más, o ahora no está frío ni caliente, a la basura. En caso de duda, a la basura. <i>({ $source })</i>
urgent-still-over = { $dish }: { $minutes } minutos fuera, y el límite son { $limit }. A la basura, aunque se vea y huela bien. <i>({ $source })</i>
urgent-still-unknown = { $dish }: nadie me dijo cuánto tiempo estuvo fuera. El límite son { $limit } minutos en total, contando el coche y la encimera. En caso de duda, a la basura; si acaba de salir, pulsa abajo y empieza su reloj. <i>({ $source })</i>
urgent-still-keeps = { $dish }: por su nombre no tiene reloj de dos horas. Quien lo hizo sabe qué lleva; en caso de duda, a la basura.
urgent-still-which = ¿Qué plato? Nada perecedero queda fuera más de { $limit } minutos en total, contando el coche y la encimera. En caso de duda, a la basura. <i>({ $source })</i>
urgent-still-over-unnamed = { $minutes } minutos fuera, y el límite son { $limit } para todo lo perecedero. En caso de duda, a la basura. <i>({ $source })</i>
urgent-raw = No lo sirvan todavía. { $rule } Mide en la parte más gruesa; hasta entonces nadie lo come. <i>({ $source })</i>
urgent-raw-unknown = No lo sirvan todavía. Que siga hasta { at-165 } por dentro, la cifra más alta de la lista, con termómetro en la parte más gruesa; hasta entonces nadie lo come. <i>({ $source })</i>
urgent-frozen = No lo descongeles sobre la encimera ni en agua caliente. En agua fría, en bolsa cerrada, tarda unos 30 minutos por libra (medio kilo); cambia el agua cada 30 minutos y cocínalo enseguida. <i>({ $source })</i>
