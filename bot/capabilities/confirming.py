"""Questions about an unsure reading: one message, buttons, and "yes" in words does as well."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from bot.buttons import Button
from bot.capabilities.needs import need_name
from bot.context import Turn
from bot.registry import Registry
from bot.servings import amount_words
from bot.texts import Html
from bot.understood import Understood, context, place_of, say_understood
from bot.understood.reading_on import read_on
from planning.changes import Refusal, may_manage
from planning.potluck import AGE_GROUPS, Answer, Party, Promise, Say
from planning.replies import Intent, MoveTo, Reading, ReplyContext, Reschedule, SetAnswer, read
from planning.replies.hosted import hour_instead
from planning.when import Unclear, When, as_read_here, moved


def _mark(intent: Intent) -> str:
    return f"{intent.kind}:{intent.start}:{intent.end}"


def _seen(turn: Turn) -> dict[str, Any]:
    """What the words were read against: before this turn did the sure part of them."""
    potluck = turn.before or turn.potluck
    me = potluck.guest(turn.me)
    return {
        "guests": [g.id for g in potluck.guests],
        "promises": [p.id for p in potluck.promises],
        "answer": (me.answer if me is not None else Answer.NONE).value,
        "party": [getattr(me.party, g) for g in AGE_GROUPS] if me and me.answer is not Answer.NONE else None,
        "needs": [n.need for n in me.all_needs()] if me else [],
    }


def _as_seen(turn: Turn, data: Mapping[str, Any]) -> ReplyContext:
    """The context of then, so that the same words are read the same again; what is gone meanwhile stays out."""
    now = context(turn, replying_to=str(data["place"]) or None, replied_text=str(data.get("replied", "")))
    seen = data.get("seen")
    if not seen:
        return now
    party = Party(**dict(zip(AGE_GROUPS, seen["party"], strict=True))) if seen["party"] else None
    return replace(
        now,
        guests=tuple(g for g in now.guests if g[0] in seen["guests"] or g[0] == turn.me),
        own_promises=tuple(p for p in now.own_promises if p[0] in seen["promises"]),
        all_promises=tuple(p for p in now.all_promises if p[0] in seen["promises"]),
        answer=Answer(seen["answer"]),
        party=party,
        needs=tuple(seen["needs"]),
    )


async def ask_back(turn: Turn, reading: Reading, understood: Understood) -> None:
    """The question, behind what was done already; its buttons are the dishes where one of them is meant."""
    question = reading.question or Say("read-left")
    facts = dict(question.facts)
    needs = facts.get("needs")
    if isinstance(needs, (list, tuple)):
        facts["needs"] = [need_name(turn.voice, str(n)) for n in needs]
    if not _as_it_would_be(turn, reading, facts):
        return
    text: str = turn.voice(question.key, **facts)
    guest = turn.guest()
    if question.key == "reply-ask-needs" and turn.private and guest is not None and (known := guest.all_needs()):
        # Who tells of an allergy again, and of another, sees that the first was heard.
        names = list(dict.fromkeys(need_name(turn.voice, n.need) for n in known))
        text = turn.voice("reply-needs-known", needs=names, question=Html(text))
    if understood.lines:
        done = "; ".join(turn.voice.say(line).rstrip(".") for line in understood.lines)
        text = turn.voice("understood-and-ask", what=Html(done), question=Html(text))
        turn.react("👍")
    if not reading.intents:
        turn.post(text)
        return
    if question.key == "reply-ask-drop-which":
        which(turn, text, turn.potluck.promises_of(turn.me))
        return
    yes = Button(turn.voice.plain("button-yes"), "readyes", (), owner=turn.me)
    no = Button(turn.voice.plain("button-no"), "readno", (), owner=turn.me)
    row = [yes, no, turn.undo_button()] if understood.lines else [yes, no]
    data = {
        "words": turn.words[:1000],
        "place": place_of(turn) or "",
        "replied": (turn.echoed or turn.event.reply_text)[:1000],
        "done": [_mark(i) for i in reading.now],
        "seen": _seen(turn),
    }
    turn.remember_question("confirm", data)
    turn.post(text, buttons=[row], about="question:confirm")


def _as_it_would_be(turn: Turn, reading: Reading, facts: dict[str, object]) -> bool:
    """Puts the day into the facts that a host's words come to, so that the answer is to that and not to a word.

    False when nothing need be asked: it is there and then already, or (in the open chatter) can't be."""
    potluck, addressed = turn.potluck, place_of(turn) not in (None, "person")
    only = reading.intents[0] if len(reading.intents) == 1 else None
    for intent in reading.intents:
        if isinstance(intent, Reschedule):
            from bot.capabilities.hosting import new_start

            try:
                facts["when"] = new_start(turn, intent.words).starts_at
            except Refusal:
                if addressed:
                    raise
                return False
    if isinstance(only, Reschedule) and facts["when"] == potluck.starts_at:
        if addressed:
            turn.say("answer-when", when=potluck.starts_at)
        return False
    if isinstance(only, MoveTo) and only.place.casefold() == potluck.place.casefold():
        if addressed:
            turn.say("answer-where", place=potluck.place, known=True)
        return False
    return True


def which(turn: Turn, text: str, own: Sequence[Promise]) -> None:
    """Which of one's dishes is meant: a button each, with its amount, so that namesakes can be told apart."""
    if not own:
        raise Refusal("refused-no-own-promise")
    labels = [" ".join((p.dish, amount_words(turn.voice, turn.potluck, p))).strip() for p in own]
    rows = [
        [
            Button(
                turn.voice.plain("numbered", n=n, what=label) if labels.count(label) > 1 else label,
                "drop",
                (p.id,),
                owner=turn.me,
            )
        ]
        for n, (p, label) in enumerate(zip(own, labels, strict=True), start=1)
    ]
    rows.append([Button(turn.voice.plain("button-nothing"), "readno", (), owner=turn.me)])
    turn.remember_question("dropwhich", {})
    turn.post(text, buttons=rows, about="question:dropwhich")


async def which_told(turn: Turn) -> None:
    """The dish named in words."""
    from bot.capabilities.bringing import drop

    turn.answered()
    await drop(turn)


async def confirmed(turn: Turn) -> None:
    """Yes below an unsure reading: the same words are read again, and this time acted on."""
    if turn.dialog is None or turn.dialog.kind != "confirm":
        raise Refusal("refused-button-old")
    understood = await _carry_out_rest(turn)
    if understood.asked and not understood.lines:
        turn.delete_pressed()
        turn.toast("answer-below")
        return
    if not understood.lines:
        turn.edit_pressed("read-nothing")
        return
    what = Html("; ".join(turn.voice.say(line) for line in understood.lines))
    turn.edit_pressed("understood", what=what, buttons=[[turn.undo_button()]])
    turn.toast("read-done")


async def _carry_out_rest(turn: Turn) -> Understood:
    from bot.capabilities.words import carry_out

    assert turn.dialog is not None
    data = turn.dialog.data
    reading = read(str(data["words"]), _as_seen(turn, data))
    done = data.get("done") or []
    rest = [i for i in reading.intents if _mark(i) not in done]
    understood = await carry_out(turn, reading, rest, str(data["words"]))
    turn.answered()
    return understood


async def denied(turn: Turn) -> None:
    turn.answered()
    turn.edit_pressed("read-left")
    turn.toast("read-left")


def plain_answer(turn: Turn) -> Answer | None:
    """Whether the words are a yes or a no to the question and nothing more."""
    reading = read(turn.words[:200], context(turn, replying_to="bot"))
    said: Sequence[Intent] = [i for i in reading.intents if not (isinstance(i, SetAnswer) and i.implied)]
    only = said[0] if len(said) == 1 else None
    if not isinstance(only, SetAnswer) or only.who != turn.me or only.conditional or len(turn.words.split()) > 4:
        return None
    return only.answer if only.answer is not Answer.MAYBE else None


def other_time(turn: Turn) -> When | None:
    """ "No, 6", "let's say 6:30" below the question whether it moves: another hour, on the day that was asked about."""
    assert turn.dialog is not None
    words = hour_instead(turn.words[:100])
    if words is None or not may_manage(turn.potluck, turn.actor):
        return None
    asked = read(str(turn.dialog.data["words"]), _as_seen(turn, turn.dialog.data)).intents
    if len(asked) != 1 or not isinstance(asked[0], Reschedule):
        return None
    from bot.capabilities.hosting import new_start

    try:
        day = new_start(turn, asked[0].words).starts_at
        said = moved(as_read_here(words, turn.voice.language), day, turn.now, turn.potluck.timezone)
    except (Refusal, Unclear):
        return None
    return None if said.rest else said


async def told(turn: Turn) -> None:
    """Words below the question: yes, no, another hour, or something of their own."""
    if (instead := other_time(turn)) is not None:
        from bot.capabilities.hosting import move_to

        turn.answered()
        move_to(turn, instead)
        return
    match plain_answer(turn):
        case Answer.YES:
            say_understood(turn, await _carry_out_rest(turn))
        case Answer.NO:
            turn.answered()
            turn.say("read-left")
        case _:
            await read_on(turn)


def register(app: Registry) -> None:
    app.button("readyes", confirmed)
    app.button("readno", denied)
    app.question("confirm", told)
    app.question("dropwhich", which_told)
