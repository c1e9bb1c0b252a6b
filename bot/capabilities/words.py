"""Guests answer in their own words: below the board, below other messages of the bot, or in private.

Where the bot sees everything, open chatter is read too, but acted on only when the reading is sure.
"""

import re
from dataclasses import replace
from typing import Any

from bot.capabilities.needs import need_name
from bot.context import Turn
from bot.registry import Registry
from bot.understood import act, context, say_understood
from planning.changes import Refusal
from planning.potluck import Answer, Say, Stage
from planning.replies import Ask, Late, Reading, SetNeeds, Undo, read

MOST_READ = 4096
SURE_NEED = 0.85
CAN_NOT_EAT = re.compile(
    r"\b(?:allerg\w+|intoleran\w+|coeliac|celiac"
    r"|(?:can['’]?t|cannot|mustn['’]?t|doesn['’]?t|don['’]?t) (?:have|eat))\b",
    re.IGNORECASE,
)


def _place(turn: Turn) -> str | None:
    """Where the words stand, in the reader's terms."""
    event = turn.event
    if turn.about == "board" or (turn.about or "").startswith("question:"):
        return turn.about
    if turn.about is not None or (event.private and event.reply_to is None):
        return "bot"
    if event.reply_to is not None:
        return "bot" if event.reply_to_bot else "person"
    return None


async def read_words(turn: Turn) -> None:
    event = turn.event
    if turn.private and not turn.has_potluck and event.kind == "message" and event.media is None:
        # Nothing told in private may get lost in silence: say where the door is.
        raise Refusal("refused-no-potluck-private")
    without_words = event.media is not None and not event.text
    if not turn.has_potluck or without_words or event.forwarded or event.person.anonymous:
        return
    if event.kind == "edited" and not await _edit_of_something_read(turn):
        return
    place = _place(turn)
    if turn.potluck.stage is not Stage.PLANNED:
        if place == "board":
            raise Refusal("refused-cancelled" if turn.potluck.stage is Stage.CANCELLED else "refused-over")
        return
    said_before = event.reply_text[:MOST_READ]
    reading = read(turn.words[:MOST_READ], context(turn, replying_to=place, replied_text=said_before))
    await take(turn, reading, addressed=place is not None and place != "person")
    if event.kind == "edited" and turn.changed and not turn.handled:
        # Only the taking back is left of it: that must not happen without a word.
        turn.handled = True
        turn.say("edited-away", buttons=[[turn.undo_button()]])


async def _edit_of_something_read(turn: Turn) -> bool:
    """An edit replaces what the message said: what came of it is taken back first, if nothing came after."""
    from bot.storage.diffs import apply_diff
    from bot.storage.errors import Conflict

    action = await turn.store.last_action(turn.potluck.id, turn.me)
    if action is None or str(action.facts.get("message")) != str(turn.event.message_id):
        # What a message nobody read says now is read as if it were new, but only when it was for us.
        return turn.event.private or turn.event.reply_to_bot or turn.chat.bot_is_admin
    try:
        back = apply_diff(turn.potluck, action.changes, reverse=True)
    except Conflict:
        return True
    turn.change(back, "did-edit", message=turn.event.message_id)
    return True


async def take(turn: Turn, reading: Reading, *, addressed: bool) -> None:
    """Act on a sure reading, ask about an unsure one, stay out of the rest."""
    questions = [i for i in reading.intents if isinstance(i, Ask)]
    if reading.question is not None and not reading.sure:
        if not reading.intents and turn.question_is_fresh:
            # Nobody can read it as a reply: it may be the answer to what was asked a moment ago.
            return
        turn.handled = True
        # What is sure about somebody's needs does not wait for an answer that may never come.
        needs = tuple(i for i in reading.intents if isinstance(i, SetNeeds) and i.needs and i.confidence >= SURE_NEED)
        if needs and not any(i.cleared for i in needs):
            say_understood(turn, act(turn, replace(reading, intents=needs)))
        await _ask_back(turn, reading)
        return
    if not reading.sure or not reading.intents:
        return
    turn.handled = True
    for intent in reading.intents:
        if isinstance(intent, Undo):
            from bot.capabilities.undoing import command

            await command(turn)
            return
        if isinstance(intent, Late):
            from bot.capabilities.late import running_late

            await running_late(turn, intent.minutes)
    understood = act(turn, reading)
    if understood.lines:
        turn.react("👍")
        say_understood(turn, understood)
    if addressed and not any(isinstance(i, SetNeeds) for i in reading.intents) and CAN_NOT_EAT.search(turn.words):
        # Something was said about what somebody can't eat and nobody could read it: it must not get lost.
        turn.say("needs-missed")
    if understood.vague:
        from bot.capabilities.bringing import offer

        await offer(turn)
    for question in questions:
        await answer_question(turn, question)


async def _ask_back(turn: Turn, reading: Reading) -> None:
    from bot.buttons import Button

    buttons = [
        [
            Button(turn.voice.plain("button-yes"), "readyes", (), owner=turn.me),
            Button(turn.voice.plain("button-no"), "readno", (), owner=turn.me),
        ]
    ]
    question = reading.question or Say("read-left")
    facts: dict[str, Any] = dict(question.facts)
    if isinstance(facts.get("needs"), (list, tuple)):
        facts["needs"] = [need_name(turn.voice, str(n)) for n in facts["needs"]]
    text = turn.voice(question.key, **facts)
    if not reading.intents:
        turn.post(text)
        return
    turn.remember_question("confirm", {"words": turn.words[:1000], "place": _place(turn) or ""})
    turn.post(text, buttons=buttons, about="question:confirm")


async def confirmed(turn: Turn) -> None:
    """Yes below an unsure reading: the same words are read again, and this time acted on."""
    if turn.dialog is None or turn.dialog.kind != "confirm":
        raise Refusal("refused-button-old")
    words = str(turn.dialog.data["words"])
    reading = read(words, context(turn, replying_to=str(turn.dialog.data["place"]) or None))
    understood = act(turn, reading)
    turn.answered()
    if understood.asked:
        turn.delete_pressed()
        turn.toast("answer-below")
        return
    if not understood.lines:
        turn.edit_pressed("read-nothing")
        return
    from bot.texts import Html

    what = Html("; ".join(turn.voice.say(line) for line in understood.lines))
    turn.edit_pressed("understood", what=what, buttons=[[turn.undo_button()]])
    turn.toast("read-done")


async def denied(turn: Turn) -> None:
    turn.answered()
    turn.edit_pressed("read-left")
    turn.toast("read-left")


async def answer_question(turn: Turn, question: Ask) -> None:
    """Short, from the plan, to whoever asked."""
    from bot.capabilities import mylist
    from bot.capabilities.missing import missing_lines

    potluck = turn.potluck
    match question.topic:
        case "missing" | "what-should-i-bring":
            turn.post(missing_lines(turn))
        case "when":
            turn.say("answer-when", when=potluck.starts_at)
        case "where":
            turn.say("answer-where", place=potluck.place, known=bool(potluck.place))
        case "who-brings":
            await _who_brings(turn, question.about)
        case "who-comes":
            names = [g.name for g in potluck.guests if g.answer is Answer.YES]
            turn.say("answer-who-comes", names=names, n=len(names))
        case "my-list":
            await mylist.show(turn)
        case "can-eat":
            from bot.capabilities.eating import for_me

            await for_me(turn)
        case _:
            host = potluck.guest(potluck.host)
            turn.say("answer-ask-host", host=host.name if host else "")
            if host is not None:
                await turn.tell(host, "told-question", name=turn.event.person.name, words=turn.words[:200])


async def _who_brings(turn: Turn, about: str) -> None:
    from rapidfuzz import fuzz

    found = [
        p for p in turn.potluck.promises if not about or fuzz.partial_ratio(about.casefold(), p.dish.casefold()) > 85
    ]
    if not found:
        turn.say("answer-nobody-brings", what=about)
        return
    lines = [
        turn.voice.plain("answer-brings", dish=p.dish, name=g.name)
        for p in found[:12]
        if (g := turn.potluck.guest(p.guest)) is not None
    ]
    turn.say("answer-who-brings", lines=lines)


def register(app: Registry) -> None:
    app.reader(read_words, order=50)
    app.button("readyes", confirmed)
    app.button("readno", denied)
