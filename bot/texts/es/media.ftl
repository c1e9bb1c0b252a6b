# Lo que no es texto.

media-heard = No puedo escucharlo. Escríbelo, por ejemplo «venimos 3, llevo ensalada para 12».
media-seen = No puedo ver qué hay ahí. Escribe qué es, por ejemplo «ensalada para 12».
media-other = No puedo leer eso. Escríbelo, por favor.
