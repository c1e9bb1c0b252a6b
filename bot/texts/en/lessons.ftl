help-lessons = what ran out and what came back, so that next time fits better
button-lessons = What ran out?
button-ran-out = { $on ->
    [yes] ✓ { $dish } ran out
   *[no] { $dish } ran out
}
button-came-back = { $on ->
    [yes] ✓ came back
   *[no] came back
}
lessons-head = <b>How did it go?</b> Press what ran out and what came back.
lessons-ran-out = Ran out: { $dishes }.
lessons-came-back = Came back: { $dishes }.
lessons-next = Next time: { $percent } % { $more ->
    [yes] more
   *[no] less
} of { $category } than the table says.
lessons-noted = Noted for next time.
refused-lessons-early = That can be told once people have eaten.
did-lesson = how { $dish } went
missing-learned = { $category }: { $percent } % { $more ->
    [yes] more
   *[no] less
} than usual, learned from your own potlucks.
