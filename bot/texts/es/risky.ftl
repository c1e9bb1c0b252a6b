# Qué clase de comida deja quien está embarazada, es pequeño, mayor o delicado.
risky-food = { $tag ->
    [sprouts] germinados crudos
    [unpasteurized] leche cruda, queso de leche cruda y jugo sin pasteurizar
    [raw-animal] pescado, marisco y carne crudos o poco hechos
    [soft-cheese] queso blando, salvo que la etiqueta diga pasteurizado
    [pate] paté y untables de carne refrigerados
    [smoked-fish] pescado ahumado refrigerado
    [deli] embutidos y salchichas, salvo bien calientes
    [seafood-salad] ensaladas de charcutería o de marisco
   *[raw-egg] huevo crudo o poco hecho, salvo pasteurizado
}
risky-told = ✋ <b>No es para embarazadas, bebés y niños pequeños, mayores o personas delicadas: { $what }.</b> Quien lo hace lo dice en una etiqueta y tiene otra cosa para ellos; ante la duda, se deja. Qué más lleva solo lo sabe quien cocina. <i>({ $source })</i>
