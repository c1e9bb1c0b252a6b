"""Guests answer in their own words: below the board, below other messages of the bot, or in private.

Where the bot sees everything, open chatter is read too, but acted on only when the reading is sure.
"""

import re
from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from bot.capabilities.late import arrival_of, running_late
from bot.context import Turn
from bot.registry import Registry
from bot.understood import Understood, act, context, place_of, say_understood
from bot.understood.asked import answer_question
from bot.understood.consequences import gaps, tell_host
from bot.understood.contents import told_beside
from bot.understood.echoes import said_before_it
from planning.changes import Refusal, come_late
from planning.diets.contents import contents_told
from planning.potluck import Answer, Say, Stage
from planning.replies import (
    AddPromise,
    Ask,
    CallOff,
    Intent,
    Late,
    MoveTo,
    Reading,
    Reschedule,
    SetAnswer,
    SetNeeds,
    Undo,
    echo,
    read,
)

MOST_READ = 4096
SAID = 300
"""So many characters of a message are kept beside what came of it, for who says "me too"."""
LINE_KEPT = timedelta(seconds=30)
"""In a rush a line that could only come later is left out: the reaction and the board say it, too."""
CAN_NOT_EAT = re.compile(
    r"\b(?:allerg\w+|al[eé]rgic\w+|alergia\w*|epi-?pens?|anaphyla\w+|anafil\w+|intoleran\w+|coeliac|celiac"
    r"|(?:can['’]?t|cannot|mustn['’]?t|doesn['’]?t|don['’]?t) (?:have|eat))\b",
    re.IGNORECASE,
)


async def read_words(turn: Turn) -> None:
    event = turn.event
    if turn.private and not turn.has_potluck and event.kind == "message" and (event.media is None or event.text):
        # Nothing told in private may get lost in silence: say where the door is.
        raise Refusal("refused-no-potluck-private")
    without_words = event.media is not None and not event.text
    if not turn.has_potluck or without_words or event.forwarded or event.person.anonymous:
        return
    if event.kind == "edited" and not await _edit_of_something_read(turn):
        return
    place = place_of(turn)
    if turn.potluck.stage is not Stage.PLANNED:
        if place == "board":
            raise Refusal("refused-cancelled" if turn.potluck.stage is Stage.CANCELLED else "refused-over")
        return
    said_before = event.reply_text[:MOST_READ]
    reading = await _read_echo(turn, place)
    if reading is None:
        reading = read(turn.words[:MOST_READ], context(turn, replying_to=place, replied_text=said_before))
    await take(turn, reading, addressed=place is not None and place != "person")
    if event.kind == "edited" and turn.changed and not turn.handled:
        # Only the taking back is left of it: that must not happen without a word.
        turn.handled = True
        turn.say("edited-away", buttons=[[turn.undo_button()]])


async def _read_echo(turn: Turn, place: str | None) -> Reading | None:
    """ "Same here" below our answer to somebody, or right after what we read of them: what they said of themselves."""
    if place == "person" or turn.private or echo(turn.words, turn.voice.language) is None:
        return None
    turn.echoed = await said_before_it(turn)
    if not turn.echoed:
        return None
    reading = read(turn.words, context(turn, replying_to="person", replied_text=turn.echoed))
    if not reading.intents:
        turn.echoed = ""
        return None
    return reading


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
    """Act on a sure reading, ask about an unsure one and do what is sure of it, stay out of the rest."""
    first_place = addressed and not turn.potluck.place and all(isinstance(i, MoveTo) for i in reading.intents)
    if first_place and len(reading.intents) == 1:
        # Nothing is lost by believing the host where no place stands yet.
        reading = replace(reading, sure=True, question=None)
    if reading.question is not None and not reading.sure:
        if not reading.intents and turn.words != turn.event.text:
            # The rest of a message of which the first half was answered: nothing more need be said.
            return
        if not reading.intents and turn.question_is_fresh:
            # Nobody can read it as a reply: it may be the answer to what was asked a moment ago.
            return
        turn.handled = True
        understood = await carry_out(turn, reading, reading.now)
        from bot.capabilities.confirming import ask_back

        await ask_back(turn, reading, understood)
        if (addressed or reading.overheard) and (unread := _unread(reading)):
            # A question about one part must not let another get lost.
            turn.say("read-unread", words=unread, n=len(unread))
        return
    if not reading.sure or not reading.intents:
        return
    if not addressed and _nothing_new(turn, reading.intents):
        return
    turn.handled = True
    if any(isinstance(i, Undo) for i in reading.intents):
        from bot.capabilities.undoing import command

        await command(turn)
        return
    if any(isinstance(i, CallOff) for i in reading.intents):
        from bot.capabilities.hosting import ask_cancel

        await ask_cancel(turn)
        return
    understood = await carry_out(turn, reading, reading.intents)
    if understood.lines:
        turn.react("👍")
        say_understood(turn, understood, until=None if turn.private else turn.now + LINE_KEPT)
    told_us = addressed or reading.overheard
    needs = [i for i in reading.intents if isinstance(i, SetNeeds)]
    if told_us and ((not needs and CAN_NOT_EAT.search(turn.words)) or _half_noted(turn.words, reading.intents)):
        # Something was said about what somebody can't eat and nobody could read it: it must not get lost.
        turn.say("needs-missed")
    elif told_us and (unread := _unread(reading)):
        # Half a message must not get lost behind the half that was understood.
        turn.say("read-unread", words=unread, n=len(unread))
    if understood.vague:
        from bot.capabilities.bringing import offer

        await offer(turn)


def _unread(reading: Reading) -> list[str]:
    """The sentences that came to nothing; what tells what is in a dish that is promised beside it did not."""
    promised = any(isinstance(i, AddPromise) for i in reading.intents)
    return [words for words in reading.unread if not (promised and contents_told(words))]


_NO_FOOD = re.compile(
    r"(?:[&+,]|\band\b|\by\b)\s*(?:no|sin|ni)\s+(?:shellfish|seafood|fish|(?:tree )?nuts?|peanuts?|eggs?|dairy|milk"
    r"|gluten|wheat|soy|sesame|pork|mariscos|pescado|nueces|man[ií]|cacahuates?|huevos?|l[aá]cteos|leche|soya|ajonjol[ií]|cerdo)\b",
    re.IGNORECASE,
)


def _half_noted(words: str, intents: Sequence[Intent]) -> bool:
    """Whether a food stands behind what was noted that somebody can't eat, and nobody read it."""
    said = _NO_FOOD.search(words)
    if said is None or not any(isinstance(i, SetNeeds) for i in intents):
        return False
    return not any(i.start < said.end() and i.end >= said.end() for i in intents if i.end > i.start)


def _nothing_new(turn: Turn, intents: Sequence[Intent]) -> bool:
    """Whether a host only told the group the hour it is at already, or one that can't be."""
    from bot.capabilities.hosting import new_start

    try:
        return all(
            isinstance(i, Reschedule) and new_start(turn, i.words).starts_at == turn.potluck.starts_at for i in intents
        )
    except Refusal:
        return True


async def carry_out(turn: Turn, reading: Reading, intents: Sequence[Intent], said: str = "") -> Understood:
    """Do what these intents of a reading ask for; questions among them are answered. `said`: the words, where a press
    below the question has none."""
    before = turn.potluck.promises_of(turn.me)
    was = turn.guest()
    came = bool(before) or (was is not None and was.answer is Answer.YES)
    early: datetime | None = None
    for intent in intents:
        if isinstance(intent, Late):
            at = arrival_of(turn, intent.at) if intent.at else None
            if at is not None and at < turn.potluck.starts_at:
                early = at
            elif at is None or at != turn.potluck.starts_at:  # who comes when it starts is not late
                await running_late(turn, intent.minutes, at=at)
    understood = act(turn, replace(reading, intents=tuple(intents)))
    made = [p for p in turn.potluck.promises_of(turn.me) if p not in before and p.category != "supplies"]
    if len(made) == 1 and turn.potluck != (turn.before or turn.potluck) and all(p.id != made[0].id for p in before):
        told_beside(turn, made[0], turn.words or said)
    if early is not None:
        turn.change(come_late(turn.potluck, turn.actor, early), "did-late", when=turn.voice.time(early))
        understood.lines.append(Say("read-arrives", {"at": turn.voice.time(early)}))
    for taker, dish in understood.given:
        await turn.tell(taker, "told-given", by=turn.event.person.name, dish=dish)
    words = reading.why.facts.get("words")
    if words and understood.lines:
        turn.tag_action(read=str(words)[:120], said=(turn.echoed or turn.words)[:SAID], chat=turn.event.chat_id)
    left = came and any(isinstance(i, SetAnswer) and i.who == turn.me and i.answer is Answer.NO for i in intents)
    if left:
        from bot.capabilities.ill import spoke_of_illness, without_their_food

        if await spoke_of_illness(turn, now_too=True) and (off := without_their_food(turn)):
            # No food goes to others out of a kitchen where somebody is ill.
            understood.lines = [s for s in understood.lines if s.key != "read-still-theirs"]
            understood.lines += [Say("read-dropped", {"dish": p.dish}) for p in off]
            understood.lines += gaps(turn, [p.category for p in off])
    gone = [p for p in before if turn.potluck.promise(p.id) is None]
    if left or gone:
        await tell_host(turn, list(before) if left else gone, left=left)
    for question in intents:
        if isinstance(question, Ask):
            await answer_question(turn, question)
    return understood


def register(app: Registry) -> None:
    app.reader(read_words, order=50)
