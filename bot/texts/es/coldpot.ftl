# Comida que quedó tibia donde debía cocerse.
cold-over = ✋ <b>No coman { $dish }, y no lo sigan cociendo.</b> La olla lenta estaba apagada: estuvo entre { from-40-to-140 } desde las { $since }, { $minutes } minutos, y el límite son { $limit }. A la basura, aunque se vea y huela bien: cocerlo no quita lo que creció dentro. <i>({ $source })</i>
cold-in-time = ⚠ <b>{ $dish } está frío desde las { $since }</b>: van { $minutes } de { $limit } minutos. Llévenlo a hervir en la hornilla (o termínenlo en el horno) ahora mismo, no despacio en la olla lenta; si no empezó antes de las { $until }, a la basura. <i>({ $source })</i>
cold-unknown = ✋ <b>{ $dish }: nadie me dijo desde cuándo estaba en la olla apagada.</b> Más de { $limit } minutos entre { from-40-to-140 } y va a la basura; cocerlo más no lo arregla. Si nadie puede asegurar que fue menos, a la basura. <i>({ $source })</i>
cold-which = ✋ ¿Qué plato había dentro? Lo que estuvo entre { from-40-to-140 } más de dos horas (una con calor) va a la basura; cocerlo más no lo arregla. <i>({ $source })</i>
cold-unnamed = ✋ ¿Qué había dentro? Lo que estuvo entre { from-40-to-140 } más de dos horas (una con calor) va a la basura; cocerlo más no lo arregla. <i>({ $source })</i>
cold-was-it-on = { $dish }: ¿la olla lenta estaba encendida y está caliente ahora ({ at-140 } o más)? Si estaba apagada, lo que pasó ahí más de dos horas (una con calor) va a la basura, y cocerlo más no lo arregla. <i>({ $source })</i>
button-it-was-off = Estaba apagada: { $dish }
button-thrown-out = A la basura: { $dish }
recook-over = ✋ <b>Cocerlo más no lo arregla.</b> { $dishes }: se acabó el tiempo fuera, y el calor no quita todo lo que creció. A la basura. <i>({ $source })</i>
recook-unknown = { $dish }: depende de cuánto estuvo entre { from-40-to-140 }. Más de { $limit } minutos en total y cocerlo no lo arregla: a la basura. Si fue menos y nadie lo duda: a hervir, o caliéntenlo hasta { at-165 }, enseguida. En caso de duda, a la basura. <i>({ $source })</i>
