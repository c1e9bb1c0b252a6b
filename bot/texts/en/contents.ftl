# $whole: its cook has listed what is in it; otherwise only this is known
contents-heard = In { $dish }, says the cook: { $what }.{ $whole ->
    [yes] {""}
   *[no] {" "}What else is in it nobody has listed: /contains notes all of it.
}
contents-which = Which of your dishes has { $what } in it?
