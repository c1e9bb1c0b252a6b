"""What hosts change: date, place, size, answer-by, co-hosts; and calling it off."""

import re
from dataclasses import replace
from decimal import Decimal, InvalidOperation

from bot.buttons import Button
from bot.context import Turn
from bot.outgoing import mention
from bot.registry import Registry
from bot.understood.reading_on import read_on
from planning.changes import (
    Actor,
    Refusal,
    add_cohost,
    cancel,
    find_guest,
    hand_over,
    meet,
    remove_cohost,
    reschedule,
    resize,
    set_answer_by,
    set_budget,
    set_place,
    set_setting,
    set_title,
)
from planning.potluck import Answer, Guest, Potluck
from planning.when import Unclear, When, as_read_here, moved, parse_when


def understand_when(turn: Turn, words: str) -> When:
    try:
        return parse_when(as_read_here(words, turn.voice.language), turn.now, turn.potluck.timezone)
    except Unclear as unclear:
        raise Refusal(unclear.say.key, **unclear.say.facts) from None


def _manage(turn: Turn) -> Potluck:
    """The potluck, when this person may change it: asked before anything else is."""
    potluck = turn.potluck
    turn.hosts_only()
    return potluck


def new_start(turn: Turn, words: str) -> When:
    """A new date in words, seen from the old one; a day alone keeps the hour, an hour alone keeps the day."""
    potluck = turn.potluck
    try:
        return moved(as_read_here(words, turn.voice.language), potluck.starts_at, turn.now, potluck.timezone)
    except Unclear as unclear:
        raise Refusal(unclear.say.key, **unclear.say.facts) from None


async def when(turn: Turn) -> None:
    """/when Sun 19 Sep 4pm; a new day alone keeps the hour, a new hour alone keeps the day."""
    if not turn.words:
        turn.say("answer-when", when=turn.potluck.starts_at)
        return
    _manage(turn)
    move_to(turn, new_start(turn, turn.words))


def move_to(turn: Turn, said: When) -> None:
    """Move the potluck to that time, and say so in the group."""
    starts_at = said.starts_at
    turn.change(reschedule(turn.potluck, turn.actor, starts_at, turn.now), "did-when")
    for note in said.notes:
        turn.post(turn.voice.say(note))
    turn.say("when-changed", when=starts_at, buttons=[[turn.undo_button()]])
    if turn.event.chat_id != turn.place.chat_id:
        turn.say("when-changed", when=starts_at, where="group", reply=False)


async def where(turn: Turn) -> None:
    if not turn.words:
        turn.say("answer-where", place=turn.potluck.place, known=bool(turn.potluck.place))
        return
    words = turn.words
    if words.casefold() in ("outdoors", "outdoor", "outside", "indoors", "indoor", "inside"):
        setting = "outdoor" if words.casefold().startswith("out") else "indoor"
        turn.change(set_setting(turn.potluck, turn.actor, setting), "did-place")
        turn.say("setting-changed", setting=setting, buttons=[[turn.undo_button()]])
        return
    turn.change(set_place(turn.potluck, turn.actor, words), "did-place")
    turn.say("noted-place", place=turn.potluck.place, buttons=[[turn.undo_button()]])


async def size(turn: Turn) -> None:
    digits = turn.words.casefold().removeprefix("about").strip().split(" ")[0] if turn.words else ""
    if not digits.lstrip("-").isdecimal():
        raise Refusal("refused-size", low=1, high=1000)
    turn.change(resize(turn.potluck, turn.actor, int(digits)), "did-resize")
    turn.say("noted-people", people=int(digits), buttons=[[turn.undo_button()]])


async def title(turn: Turn) -> None:
    turn.change(set_title(turn.potluck, turn.actor, turn.words), "did-title")
    turn.say("title-changed", title=turn.potluck.title, buttons=[[turn.undo_button()]])


async def answer_by(turn: Turn) -> None:
    said = understand_when(turn, turn.words)
    by = said.starts_at
    if not said.has_time:
        day = turn.potluck.local(by).date()
        by = understand_when(turn, f"{day.isoformat()} 20:00").starts_at
    turn.change(set_answer_by(turn.potluck, turn.actor, by, turn.now), "did-answer-by")
    turn.say("answer-by-set", when=by, buttons=[[turn.undo_button()]])


async def budget(turn: Turn) -> None:
    words = turn.words.replace(",", "").strip()
    currency = next((c for sign, c in (("$", "USD"), ("€", "EUR"), ("£", "GBP")) if sign in words), "USD")
    try:
        amount = Decimal("".join(c for c in words if c.isdecimal() or c in ".-"))
    except InvalidOperation:
        raise Refusal("refused-budget") from None
    turn.change(set_budget(turn.potluck, turn.actor, amount, currency), "did-budget")
    turn.say("budget-set", money=turn.potluck.budget, buttons=[[turn.undo_button()]])


async def ask_cancel(turn: Turn) -> None:
    potluck = _manage(turn)
    turn.remember_question("callsure", {})
    turn.say(
        "cancel-sure",
        about="question:callsure",
        when=potluck.starts_at,
        dishes=len(potluck.promises),
        buttons=[
            [
                Button(turn.voice.plain("button-cancel-yes"), "cancel", ("yes",), owner=turn.me),
                Button(turn.voice.plain("button-cancel-no"), "cancel", ("no",), owner=turn.me),
            ]
        ],
    )


async def call_off_told(turn: Turn) -> None:
    """Yes or no in words below the question."""
    from bot.capabilities.confirming import plain_answer

    match plain_answer(turn):
        case Answer.YES:
            turn.answered()
            turn.change(cancel(turn.potluck, turn.actor), "did-cancel")
            for where in ("here", "group") if turn.event.chat_id != turn.place.chat_id else ("here",):
                turn.say(
                    "cancelled",
                    where=where,
                    reply=False,
                    when=turn.potluck.starts_at,
                    name=turn.event.person.name,
                    buttons=[[turn.undo_button()]] if where == "here" else (),
                )
        case Answer.NO:
            turn.answered()
            turn.say("cancel-not")
        case _:
            await read_on(turn)


async def cancelled(turn: Turn) -> None:
    if turn.dialog is not None and turn.dialog.kind == "callsure":
        turn.answered()
    if turn.args[0] != "yes":
        turn.edit_pressed("cancel-not")
        turn.toast("cancel-not")
        return
    turn.change(cancel(turn.potluck, turn.actor), "did-cancel")
    turn.edit_pressed(
        "cancelled", when=turn.potluck.starts_at, name=turn.event.person.name, buttons=[[turn.undo_button()]]
    )
    turn.toast("cancelled-toast")
    if turn.event.chat_id != turn.place.chat_id:
        turn.say("cancelled", where="group", reply=False, when=turn.potluck.starts_at, name=turn.event.person.name)


def _named(turn: Turn) -> Guest:
    """The guest named in the words, or the writer of the message replied to."""
    if turn.words:
        guest = find_guest(turn.potluck, turn.words)
        if guest is None:
            raise Refusal("refused-unknown-person", name=turn.words[:60])
        return guest
    replied = turn.event.reply_to_person
    guest = turn.potluck.guest(str(replied.id)) if replied else None
    if guest is None:
        raise Refusal("refused-name-somebody")
    return guest


async def _seen(turn: Turn) -> Guest:
    """As `_named`, and also who wrote the message replied to, or is known from this group's other potlucks."""
    try:
        return _named(turn)
    except Refusal:
        replied = turn.event.reply_to_person
        if not turn.words and replied is not None and not turn.event.reply_to_bot:
            met = Actor(str(replied.id), replied.name, username=replied.username)
        elif turn.words and (known := await _of_this_group(turn)) is not None:
            met = Actor(known.id, known.name, username=known.username)
        else:
            raise
    turn.change(meet(_manage(turn), met), "did-cohost")
    return turn.known_guest(met.id)


async def _of_this_group(turn: Turn) -> Guest | None:
    """The one person of that name with an account in the potlucks of this group."""
    found = {}
    for stored in await turn.store.potlucks_in(turn.place.chat_id):
        guest = find_guest(stored.potluck, turn.words)
        if guest is not None and guest.id.isdecimal():
            found[guest.id] = guest
    return next(iter(found.values())) if len(found) == 1 else None


async def cohost(turn: Turn) -> None:
    guest = await _seen(turn)
    if guest.id in turn.potluck.cohosts:
        turn.change(remove_cohost(turn.potluck, turn.actor, guest.id), "did-cohost")
        turn.say("cohost-gone", name=guest.name, buttons=[[turn.undo_button()]])
        return
    turn.change(add_cohost(turn.potluck, turn.actor, guest.id), "did-cohost")
    turn.say("cohost-new", name=mention(guest), buttons=[[turn.undo_button()]])


async def new_host(turn: Turn) -> None:
    handed_over(turn, await _seen(turn))


MINE = re.compile(
    r"^(?:at )?(?:my|our|mi|nuestr[oa])\b|^(?:at )?(?:mine|ours)$|^(?:en )?mi casa\b", re.IGNORECASE
)


def handed_over(turn: Turn, guest: Guest, by: Actor | None = None) -> None:
    """Another host; a place told as "my place" was the old one's, and is asked about."""
    before = turn.potluck
    turn.change(hand_over(before, by or turn.actor, guest.id), "did-host")
    turn.say("host-new", name=mention(guest), buttons=[[turn.undo_button()]])
    old = before.guest(before.host)
    if old is not None and (MINE.search(before.place) or old.name.casefold() in before.place.casefold()):
        theirs = turn.voice.plain("place-of", name=old.name)
        turn.change(replace(turn.potluck, place=theirs))
        turn.say("host-new-place", place=theirs, reply=False)


def register(app: Registry) -> None:
    app.command("when", when, order=30)
    app.command("where", where, order=31)
    app.command("size", size, order=32, hosts=True)
    app.command("title", title, order=33, hosts=True)
    app.command("answerby", answer_by, order=34, hosts=True)
    app.command("budget", budget, order=35, hosts=True)
    app.command("cohost", cohost, order=36, hosts=True)
    app.command("host", new_host, order=37, hosts=True)
    app.command("cancel", ask_cancel, order=38, hosts=True)
    app.button("cancel", cancelled)
    app.question("callsure", call_off_told)
