help-needs = decir qué no puedes comer
button-needs-none = Nada
needs-sheet = Para { $when }: ¿qué no pueden comer tú o los tuyos? { $n ->
    [0] Nada anotado todavía.
   *[other] Anotado: { $needs }.
} Pulsa para cambiarlo o escríbelo. Los demás solo ven «alguien necesita …»; quien organiza ve tu respuesta, para cocinar.
needs-now = { $n ->
    [0] Nada anotado.
   *[other] Anotado: { $needs }.
}
needs-missed = Si eso era sobre algo que alguien no puede comer, no lo entendí: escríbelo como «/needs huevo, leche», aquí o en privado.
needs-noted = { $n ->
    [0] Anotado: nada especial.
   *[other] Anotado: { $needs }.
}
needs-done = { $n ->
    [0] Anotado: nada especial. Cámbialo cuando quieras con /needs.
   *[other] Anotado: { $needs }. Cámbialo cuando quieras con /needs.
}
needs-open-private = Dímelo en privado con este botón, o escríbelo aquí a la vista, por ejemplo «/needs vegetariano, sin maní».
board-need = { $n ->
    [1] { $need }
   *[other] { $need } × { $n }
}
board-needs = Alguien necesita: { $needs }
