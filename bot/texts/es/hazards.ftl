# Alguien está en peligro, o algo llegó a la comida.
hazard-choking = <b>¿Puede toser, hablar o llorar? Que tosa, inclinada hacia delante, y no la dejen sola.</b> Si no, o si no sale: { $country ->
    [us] <b>llamen al 911</b>
   *[other] <b>llamen al número de emergencias</b> (112 en Europa)
}, y 5 golpes firmes con el talón de la mano entre los omóplatos y 5 compresiones rápidas hacia dentro y arriba sobre el ombligo, alternando, hasta que salga. Menor de un año: boca abajo sobre el brazo, 5 golpes en la espalda y luego 5 compresiones en el esternón, nunca en la barriga; embarazada: en el pecho. Ningún dedo a ciegas en la boca. No respira o no despierta: RCP y lo que diga emergencias. <i>({ $source })</i>
hazard-heat = <b>Puede ser un golpe de calor: { $country ->
    [us] llamen al 911 ahora
   *[other] llamen ahora al número de emergencias (112 en Europa)
}</b>, sobre todo si está confusa, se desmaya, vomita, dejó de sudar o no mejora enseguida. A la sombra o a un cuarto fresco; ropa floja o fuera; refrésquenla con agua, paños mojados y aire, frío en cuello, axilas e ingles. No la dejen sola; de lado si vomita. Nada de alcohol; de beber solo si está bien despierta. <i>({ $source })</i>
hazard-ate-raw = <b>Nadie come más de eso; el resto vuelve al fuego</b> hasta medir { at-165 } por dentro, o a la basura. Quien comió y se encuentra bien: que se enjuague la boca, no le hagan vomitar y atención los próximos días. Al médico si hay sangre, fiebre de más de 38 °C (100,4 °F), no retiene nada, señales de deshidratación o más de tres días de diarrea; antes si es niño pequeño, mayor, embarazada o delicado. { $country ->
    [us] Poison Help también sabe de comida: 1-800-222-1222.
   *[other] El teléfono de salud o de toxicología también sabe de comida.
} <i>({ $source })</i>
hazard-battery = <b>Una pila tragada, o solo quizá: a urgencias ya, sin esperar síntomas.</b> { $country ->
    [us] De camino: línea de pilas 1-800-498-8666.
   *[other] De camino: el teléfono de toxicología o de emergencias.
} Nada de comer ni beber salvo que se lo digan, y no le hagan vomitar. <i>({ $source })</i>
hazard-of = <b>{ $dish }:</b> { $what }
hazard-chemical = ✋ <b>Que nadie coma ni beba de eso. A la basura todo lo que pudo tocar</b>, también la comida y la bebida abiertas de alrededor: ni enjuagar ni cocinar lo quita. Luego laven platos, tabla y manos. Si alguien ya tomó: { $country ->
    [us] Poison Help, 1-800-222-1222.
   *[other] teléfono de toxicología o de emergencias.
} <i>({ $source })</i>
hazard-container = ✋ <b>No sirvan lo que está o estuvo dentro.</b> Cubetas, bolsas y botes de pintura, obra, basura o limpieza no son para comida: lavarlos no quita ni lo que llevaban ni lo que suelta el plástico. A la basura, y háganlo de nuevo en ollas o en recipientes aptos para alimentos. <i>({ $source })</i>
hazard-glass = ✋ <b>A la basura todo lo abierto que estaba al alcance; ni escogerlo ni colarlo:</b> las astillas no se ven. También hielo y bebidas. Aparten a la gente, a los descalzos y a los niños, recojan con papel húmedo y laven platos y fuentes cercanos. Quien tragó algo o sangra: al médico, o { $country ->
    [us] 911
   *[other] emergencias
}. <i>({ $source })</i>
hazard-pests = ✋ <b>No lo usen: a la basura la comida abierta en la que pudo haber ratones, ratas o insectos</b>, y lo que estaba en bolsas o cajas roídas, manchadas o invadidas; hornear o colar no lo arregla. Latas y frascos cerrados: lavarlos antes. Excrementos: ni barrer ni aspirar; guantes, empaparlos con desinfectante, recoger con papel, y lavar manos y todo lo que estaba allí. <i>({ $source })</i>
hazard-animal = ✋ <b>Lo que un animal lamió, mordió o pisó no se sirve</b>, ni lo que estaba abierto al lado: a la basura; cortar el trozo no lo arregla. Laven manos, platos y el sitio. <i>({ $source })</i>
hazard-floor = ✋ <b>Lo que cayó al suelo no se sirve:</b> enjuagarlo no lo arregla. A la basura, y limpien antes de que alguien resbale. <i>({ $source })</i>
hazard-flood = ✋ <b>No se come nada que pudo tocar agua de inundación o de desagüe</b>, tampoco lo empacado en papel, plástico, cartón o con tapa de rosca o a presión; solo las latas de metal cerradas y sin daño se pueden lavar y desinfectar. En esa cocina no se cocina hasta limpiar y desinfectar; no toquen enchufes ni interruptores mojados. Cocinen en otro sitio o compren algo listo para comer. <i>({ $source })</i>
hazard-water = ✋ <b>Sin agua de la llave: nadie cocina, bebe, hace hielo ni lava comida con ella.</b> Agua embotellada para beber, cocinar, lavar verdura y manos (con jabón, 20 segundos; el gel no lava); si hay aviso de hervirla, hervida como diga el aviso. Tiren el hielo y las bebidas hechos con ella. Platos y vasos desechables, un cubo para el baño. Si no alcanza para lavarse las manos, lo cocinado en otro sitio o listo para comer sustituye a cocinar allí. <i>({ $source })</i>
hazard-recall = ✋ <b>Comparen marca, lote y fecha con el aviso. Lo que está en él, o no se sabe, nadie lo come:</b> a la basura o de vuelta a la tienda, con cada plato que lo lleve. Cocinarlo por si acaso no sirve: no se sabe si todo llegó a estar bastante caliente. Laven el cajón de la nevera, la tabla y el cuchillo. Quien comió y tiene diarrea con sangre, fiebre o no retiene nada: al médico. <i>({ $source })</i>
hazard-can = ✋ <b>Ni probar, ni abrir, ni hervir:</b> lo que está hinchado, gotea, salpica, tiene abolladura profunda u óxido se tira, envuelto, donde no lleguen niños ni animales. Si estaba abierto: limpien y laven lo que tocó. Quien comió y ve borroso o doble, tiene párpados caídos, le cuesta tragar o músculos débiles: { $country ->
    [us] 911
   *[other] emergencias
} ya. <i>({ $source })</i>
hazard-mold = ✋ <b>Todo a la basura, y sin olerlo:</b> en pan, queso blando, salsas, mermelada, fruta y comida cocinada el moho llega más hondo de lo que se ve. Solo el queso duro se puede cortar, al menos 2,5 cm alrededor y debajo, sin meter el cuchillo en el moho. Miren lo que estaba al lado. <i>({ $source })</i>
hazard-juices = ✋ <b>Lo que tocó carne cruda o su jugo y ya no se cocina, a la basura:</b> ensalada, fruta, pan, lo que ya estaba hecho. Lo que aún se cocina, hasta { at-165 } por dentro, con termómetro. Laven tabla, cuchillo, pinzas, platos y manos con agua caliente y jabón antes de seguir. <i>({ $source })</i>
hazard-marinade = ✋ <b>Donde estuvo carne cruda no hay salsa.</b> Si no se hierve antes, a la basura, con lo que se bañó en ello; mejor uno nuevo, apartado antes. No lo prueben. <i>({ $source })</i>
hazard-spit = ✋ <b>Retiren ese plato de la mesa y tiren lo que tiene</b>; en su lugar uno nuevo con su propia cuchara, y porciones pequeñas en platos. <i>({ $source })</i>
hazard-pot-frozen = ✋ <b>Congelado no va a la olla lenta, y «mantener caliente» no cuece:</b> pasa demasiado tiempo entre { from-40-to-140 }. Más de dos horas (una con calor), o nadie lo sabe: a la basura, seguir cociendo no lo arregla. Menos, y sin dudas: ya al horno o al fuego hasta { at-165 } por dentro. <i>({ $source })</i>
