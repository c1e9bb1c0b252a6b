whoneeds-none = Nadie de los que vienen me ha dicho una alergia ni una dieta. Eso no quiere decir que no las haya: pregunta.
whoneeds-table = Lo que sé de esta mesa: { $needs }. Quien no dijo nada también puede tener algo: pregunta, y pregunta a quien cocina qué lleva cada plato.
whoneeds-of = { $name }: { $needs }
whoneeds-ask = Quien no dijo nada también puede tener algo: pregunta.
