# Cómo se entendió un plato.
dishes-sure = { $name } es: { $category }.
dishes-guess = Entiendo { $name } como { $category }. ¿Es así?
dishes-unknown = No conozco { $name }. ¿Es un plato fuerte, una guarnición, un postre u otra cosa?
dishes-no-dish = { $name } no es nada para la mesa, así que no lo anoté.
dishes-time-estimate = Tiempo habitual, por práctica común: { $minutes } minutos.
