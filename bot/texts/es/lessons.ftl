help-lessons = qué se acabó y qué sobró, para que la próxima vez salga mejor
button-lessons = ¿Qué se acabó?
button-ran-out = { $on ->
    [yes] ✓ { $dish }: se acabó
   *[no] { $dish }: se acabó
}
button-came-back = { $on ->
    [yes] ✓ sobró
   *[no] sobró
}
lessons-head = <b>¿Qué tal salió?</b> Pulsa lo que se acabó y lo que sobró.
lessons-ran-out = Se acabó: { $dishes }.
lessons-came-back = Sobró: { $dishes }.
lessons-next = La próxima vez: { $percent } % { $more ->
    [yes] más
   *[no] menos
} de { $category } que en la tabla.
lessons-noted = Anotado para la próxima vez.
refused-lessons-early = Eso se puede decir cuando ya se haya comido.
did-lesson = qué tal salió { $dish }
missing-learned = { $category }: { $percent } % { $more ->
    [yes] más
   *[no] menos
} que de costumbre, aprendido de sus propios convites.
