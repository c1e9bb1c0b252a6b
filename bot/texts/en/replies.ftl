# Questions about what a guest wrote; answered with Yes and No. $words is what they wrote.
reply-ask-answer = Shall I put you down as { $answer ->
    [yes] coming
    [maybe] a maybe
   *[no] not coming
}?
reply-ask-answer-of = Shall I put { $name } down as { $answer ->
    [yes] coming
    [maybe] a maybe
   *[no] not coming
}?
reply-ask-answers-of = Shall I put { $names } down as { $answer ->
    [yes] coming
    [maybe] a maybe
   *[no] not coming
}?
reply-ask-party = Are you { $people ->
    [one] 1 person
   *[other] { $people } people
} in all?
reply-ask-more = { $people ->
    [one] One more person
   *[other] { $people } more people
} with you?
reply-ask-fewer = { $people ->
    [one] One person fewer
   *[other] { $people } people fewer
} with you?
reply-ask-needs = Shall I note for your party: { $needs }?
reply-needs-known = Noted already: { $needs }. { $question }
reply-ask-needs-gone = Shall I take this off your needs: { $needs }?
reply-ask-needs-of = Shall I note for { $name }: { $needs }?
reply-ask-needs-gone-of = Shall I take this off { $name }’s needs: { $needs }?
reply-ask-promise = Will you bring { $dish }?
reply-ask-promise-of = Does { $name } bring { $dish }?
reply-ask-promise-if = Shall I put you down for { $dish }?
reply-ask-what-is-it = Is “{ $dish }” something for the table?
reply-ask-change = Shall I change your { $dish }?
reply-ask-drop = Shall I take { $dish } off your list?
reply-ask-give = Shall I hand { $dish } over to { $name }?
reply-ask-drop-which = Which of your dishes shall I take off?
reply-ask-topping = Will you bring { $toppings }?
reply-ask-person = Shall I add { $names }?
reply-ask-pregnant = Shall I note that “{ $words }”?
reply-ask-size = Are you { $people } people in all, everybody counted?
reply-ask-move = Is the potluck at { $place } now?
reply-ask-reschedule = Shall I move the potluck to { $when }?
reply-ask-kitchen = Shall I note this for the kitchen?
reply-not-understood = I did not get that; write it like “3 of us, slaw for 12”.
reply-other-language = That language I can’t read. Please write it like “3 of us, slaw for 12”, or use the buttons.
reply-ask-late = Will you be late?
reply-ask-undo = Shall I take back your last change?
reply-ask-ask = Is that a question for me?
reply-ask-allergy = Is “{ $words }” an allergy I should note?

# Why the bot did what it did.
reply-why-read = I read it from “{ $words }”.
reply-why-nothing = { $reason ->
    [joke] You took it back as a joke.
    [hypothetical] It said what might be, not what will be.
    [reported] It told what somebody else said.
    [past] It was about the past.
    [others] It was about what others should do.
    [elsewhere] It was about something else.
    [unsure] I wasn't sure enough.
   *[none] I found nothing in it for the supper.
}
reply-why-chatter = It wasn't written to me, and I wasn't sure it was about this supper.
