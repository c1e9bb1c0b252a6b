"""Who takes an event: a button's handler, a command, the owner of an open question, or the readers of free words."""

from __future__ import annotations

import contextlib
from datetime import timedelta

from bot.buttons import Forged, Pressed
from bot.context import Turn
from bot.membership import is_outside
from bot.reading import DIALOG_KEPT
from bot.storage.diffs import apply_diff
from bot.storage.errors import Conflict
from bot.understood.fitting import other_business
from planning.changes import Refusal

FIRST = 15
"""Readers up to this order go before everything else."""


async def run(turn: Turn) -> None:
    """Find who takes this event and let them."""
    event, registry = turn.event, turn.services.registry
    if event.kind == "press":
        await _press(turn)
        return
    if event.kind not in ("message", "edited"):
        for reaction in registry.events.get(event.kind, ()):
            await reaction.handler(turn)
        return
    if event.reply_to is not None and event.reply_to_bot:
        sent = await turn.store.message_about(event.chat_id, event.reply_to)
        turn.about = sent.kind if sent else "bot"
        if sent is not None and sent.potluck_id:
            stored = await turn.store.potluck(sent.potluck_id)
            outside = stored and event.private and await is_outside(turn.services, stored, event.person.id)
            if stored is not None and not outside:
                await turn.about_potluck(stored)
    if event.media is None and event.text.startswith("/"):
        await _command(turn)
        return
    turn.words = event.text
    # Somebody in danger must not be taken for the answer to a question of ours.
    if await _read(turn, upto=FIRST):
        return
    if event.kind == "message" and event.media is None and await _question(turn):
        return
    if await _read(turn, above=FIRST):
        return
    if event.kind == "message" and event.media is None and turn.about and turn.question_is_fresh and _fits(turn):
        # Asked a moment ago, and answered below another message of ours instead of below the question.
        await _ask_owner(turn)


async def _press(turn: Turn) -> None:
    event, registry = turn.event, turn.services.registry
    pressed = await _signed(turn)
    handler = registry.buttons.get(pressed.name)
    if handler is None:
        raise Refusal("refused-button-old")
    if pressed.owner is not None and pressed.owner != turn.me:
        raise Refusal("refused-button-not-yours")
    if pressed.potluck:
        known = turn.stored
        here = known is not None and known.potluck.id == pressed.potluck
        stored = known if here else await turn.store.potluck(pressed.potluck)
        if stored is None:
            raise Refusal("refused-button-old")
        if not event.private and stored.place.chat_id != event.chat_id:
            raise Refusal("refused-button")
        if event.private and await is_outside(turn.services, stored, event.person.id):
            raise Refusal("refused-not-member")
        await turn.about_potluck(stored)
    turn.pressed = pressed
    await handler(turn)


async def _signed(turn: Turn) -> Pressed:
    """What the button says, signed for this chat or for the group that it was before it became a supergroup: a
    message that waited while it moved carries the old one's."""
    event, signer = turn.event, turn.services.signer
    with contextlib.suppress(Forged):
        return signer.read(event.chat_id, event.data)
    for former in () if event.private else await turn.store.moved_from(event.chat_id):
        with contextlib.suppress(Forged):
            return signer.read(former, event.data)
    raise Refusal("refused-button")


async def _command(turn: Turn) -> None:
    event, registry = turn.event, turn.services.registry
    first, _, rest = event.text.partition(" ")
    if "\n" in first:
        first, _, more = event.text.partition("\n")
        rest = more
    name, _, addressed = first[1:].partition("@")
    if addressed and addressed.casefold() != turn.services.username.casefold():
        return
    command = registry.commands.get(name.casefold())
    turn.words = rest.strip()
    if command is None:
        # In a group an unknown command may be another bot's.
        if event.private or addressed:
            raise Refusal("refused-command", command=name)
        return
    if event.kind == "edited" and not await take_back_edited(turn, command.name):
        return
    if command.where == "group" and event.private:
        raise Refusal("refused-in-group-only", command=command.name)
    if command.where == "private" and not event.private:
        raise Refusal("refused-in-private-only", command=command.name)
    await command.handler(turn)


ONLY_ASK = (
    "help",
    "missing",
    "list",
    "picture",
    "print",
    "calendar",
    "kitchen",
    "eat",
    "safety",
    "reminders",
    "potlucks",
)
"""Commands that change nothing by themselves: an edit of them is answered anew."""


async def take_back_edited(turn: Turn, command: str) -> bool:
    """An edited command replaces what it said: that is taken back first. False: nothing more is to be done."""
    if command in ONLY_ASK or not turn.has_potluck:
        return True
    if command == "potluck":
        raise Refusal("refused-edited-potluck")
    action = await turn.store.last_action(turn.potluck.id, turn.me)
    if action is None or str(action.facts.get("message")) != str(turn.event.message_id):
        raise Refusal("refused-edited-late")
    try:
        turn.change(apply_diff(turn.potluck, action.changes, reverse=True), "did-edit")
    except Conflict:
        raise Refusal("refused-undo-changed") from None
    return True


async def _read(turn: Turn, *, above: int = -1, upto: int | None = None) -> bool:
    """Let the readers with orders above `above` up to `upto` read, until one has taken the words."""
    for reader in turn.services.registry.readers:
        if reader.order > above and (upto is None or reader.order <= upto):
            await reader.handler(turn)
            if turn.handled:
                return True
    return False


async def _question(turn: Turn) -> bool:
    """A reply to a question of ours, or in private whatever comes next after it."""
    dialog = turn.dialog
    if dialog is None or dialog.kind not in turn.services.registry.questions:
        return False
    asked_here = turn.about == f"question:{dialog.kind}" or (turn.private and turn.event.reply_to is None)
    if not asked_here and not _plain_yes_or_no(turn):
        return False
    if other_business(turn):
        return False
    await _ask_owner(turn)
    return True


_YES_OR_NO = frozenset(
    ("yes", "yep", "yeah", "yup", "sure", "ok", "okay", "no", "nope", "nah", "sí", "si", "vale", "claro", "sip", "dale")
)
JUST_ASKED = timedelta(minutes=3)
"""So long a bare "yes" that is no reply answers what its writer was just asked (common practice, no source)."""


def _plain_yes_or_no(turn: Turn) -> bool:
    """ "Yes" written below nothing, right after this person was asked something with a yes and a no."""
    dialog, event = turn.dialog, turn.event
    if dialog is None or dialog.kind != "confirm" or turn.about is not None or event.reply_to is not None:
        return False
    words = [w.strip(".!,") for w in turn.words.casefold().split()]
    asked_at = dialog.expires_at - DIALOG_KEPT if dialog.expires_at is not None else None
    fresh = asked_at is not None and turn.now - asked_at <= JUST_ASKED
    return fresh and 0 < len(words) <= 2 and words[0] in _YES_OR_NO and {*words[1:]} <= {"please", "thanks", "gracias"}


def _fits(turn: Turn) -> bool:
    """Whether words that nobody could read may be the answer to the open question. Below the board people
    say many things: there only a bare number or hour is taken for an answer."""
    if turn.dialog is None or other_business(turn):
        return False
    if turn.dialog.kind in ("people", "hour"):
        return any(c.isdecimal() for c in turn.words) and len(turn.words) <= 30
    return turn.about != "board" and turn.dialog.kind in ("when", "place") and len(turn.words) <= 80


async def _ask_owner(turn: Turn) -> None:
    owner = turn.services.registry.questions.get(turn.dialog.kind) if turn.dialog is not None else None
    if owner is not None:
        turn.handled = True
        await owner(turn)
