# Lo que está declarado en un plato y quién lo dijo. Nunca se dice que un plato sea seguro ni libre de algo.
diets-listed-free = { $need ->
    [gluten-free] Nada con gluten declarado, según quien lo cocina.
    [gluten] Nada con gluten declarado, según quien lo cocina.
   *[other] { $kind ->
        [allergy] Nada de { $need } declarado, según quien lo cocina.
       *[other] Nada declarado en contra de { $need }, según quien lo cocina.
    }
}
diets-contains-cook = Con { $marks }, según quien lo cocina.
diets-contains-usual = Suele hacerse con { $marks }.
diets-breaks = Tal como está declarado, no sirve para { $need }.
diets-may-contain = Puede llevar { $marks }: pregunta a quien lo cocina.
diets-ask-usual = La receta habitual no lleva nada contra { $need }, pero quien lo cocina todavía no ha declarado nada: pregunta antes.
diets-ask-unknown = Nadie ha declarado qué lleva: pregunta a quien lo cocina.
diets-ask-items = No sé qué lleva { $items }: pregunta a quien lo cocina.
diets-ask-always = Una lista de ingredientes no basta para { $need }: pregunta a quien lo cocina.
diets-shared-bar = En una barra compartida las cucharas viajan: quien tiene alergia se sirve primero, de recipientes que nadie ha tocado.
