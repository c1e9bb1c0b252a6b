help-when = cuándo es; quien organiza lo cambia, por ejemplo «/when domingo 16:00»
help-where = dónde es; quien organiza lo cambia
help-size = para cuántas personas calcular
help-title = ponerle nombre
help-answerby = hasta cuándo responder
help-budget = cuánto se puede gastar, por ejemplo «/budget 120»
help-cohost = hacer a alguien coorganizador, o que deje de serlo
help-host = pasar el convite a otra persona
help-cancel = cancelarlo, tras una pregunta
when-changed = Nueva fecha: { $when }.
setting-changed = { $setting ->
    [outdoor] Anotado: al aire libre.
   *[indoor] Anotado: bajo techo.
}
title-changed = Ahora se llama «{ $title }».
answer-by-set = Se pide responder hasta { $when }.
budget-set = Presupuesto: { $money }.
button-cancel-yes = Sí, cancelarlo
button-cancel-no = No, dejarlo
cancel-sure = ¿Cancelar { $when }, con { $dishes ->
    [0] nada prometido todavía
    [one] un plato prometido
   *[other] { $dishes } platos prometidos
}?
cancel-not = Sigue en pie.
cancelled = { $name } lo canceló: { $when }.
cancelled-toast = Cancelado.
cohost-new = { $name } también organiza ahora.
cohost-gone = { $name } ya no organiza.
host-new = Ahora organiza { $name }.
