"""A cook who is, or just was, ill with what food passes on: what they made stays away, and so do they."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import timedelta

from bot.buttons import Button
from bot.capabilities.buying import source_words
from bot.capabilities.urgent import readable
from bot.context import Turn
from bot.recalling import Memory
from bot.registry import Registry
from bot.understood import context
from planning.changes import Refusal, drop_promise
from planning.potluck import Answer, Promise
from planning.replies import SetAnswer, read
from planning.safety.ill import may_cook_from
from planning.safety.urgent import asks_after_illness, illness, languages, says_more
from planning.theday.hazards import ailing

ILL_NEAR, ILL_SPOKEN = timedelta(days=4), timedelta(hours=24)
"""From so long before the start the illness of somebody who has not answered yet matters, too; so long what they ask
next is about it (common practice, no source)."""
MOST_READ, SURE = 400, 0.8


@dataclass(frozen=True)
class ToldIll:
    """The message in which somebody told of illness. What of is not kept."""

    message: int


TOLD_ILL = Memory("ill", ToldIll, ILL_SPOKEN)


async def read_ill(turn: Turn) -> None:
    """Two days from the last symptom nobody cooks for others (ILL-01)."""
    if not readable(turn) or (turn.event.reply_to is not None and not turn.event.reply_to_bot):
        return
    language = next((one for one in languages() if illness(turn.words, one)), None)
    if language is None and ailing(turn.words):
        language = turn.voice.language
    asks = any(asks_after_illness(turn.words, one) for one in languages())
    guest, near = turn.guest(), turn.potluck.starts_at - ILL_NEAR <= turn.now <= turn.potluck.ends
    if language is None:
        if await spoke_of_illness(turn):
            await _what_follows(turn, asks=asks)
        return
    if guest is None and not near:
        return
    turn.remember(TOLD_ILL, ToldIll(turn.event.message_id or 0))
    dishes = _cooked(turn)
    free = may_cook_from(turn.now)
    late = free > turn.potluck.starts_at
    turn.say(
        "ill-noted", dishes=[p.dish for p in dishes], n=len(dishes), until=free, late=late,
        source=source_words(turn, "ILL-01"), buttons=_take_off(turn, dishes) if late and not asks else (),
    )  # fmt: skip
    if asks:
        _follows(turn)
    if await _stays_away(turn):
        return
    # Whoever cannot come for it says so in the same message: the other readers go on.
    turn.handled = turn.handled or not says_more(turn.words, language)


async def spoke_of_illness(turn: Turn, *, now_too: bool = False) -> bool:
    """Whether they told of it a while ago; `now_too`: or in this very message."""
    told = await turn.recall(TOLD_ILL)
    return told is not None and (now_too or told.message != turn.event.message_id)


async def _what_follows(turn: Turn, *, asks: bool) -> None:
    if asks:
        turn.handled = True
        _follows(turn)
        return
    await _stays_away(turn)


async def _stays_away(turn: Turn) -> bool:
    """ "Ok, we stay home then": after what they told nobody need ask whether it is meant for us."""
    if turn.guest() is None:
        return False
    reading = read(turn.words[:MOST_READ], context(turn, replying_to="board"))
    stays = tuple(i for i in reading.intents if isinstance(i, SetAnswer) and i.who == turn.me)
    if len(stays) != 1 or len(reading.intents) != 1 or stays[0].answer is not Answer.NO or stays[0].confidence < SURE:
        return False
    from bot.capabilities.words import take

    await take(turn, replace(reading, sure=True, question=None), addressed=True)
    return True


def _follows(turn: Turn) -> None:
    free = may_cook_from(turn.now)
    late = free > turn.potluck.starts_at
    buttons = _take_off(turn, _cooked(turn)) if late else []
    turn.say("ill-follows", until=free, late=late, source=source_words(turn, "ILL-01"), buttons=buttons)


def _cooked(turn: Turn) -> list[Promise]:
    return [p for p in turn.potluck.promises_of(turn.me) if p.category != "supplies"]


def _take_off(turn: Turn, dishes: list[Promise]) -> list[list[Button]]:
    if not dishes:
        return []
    label = turn.voice.plain("button-ill-off", dish=", ".join(p.dish for p in dishes[:3]))
    return [[Button(label, "illoff", (), owner=turn.me)]]


def without_their_food(turn: Turn) -> list[Promise]:
    """Takes off the list what somebody ill has cooked, or was to; what it was."""
    gone = _cooked(turn)
    for dish in gone:
        turn.change(drop_promise(turn.potluck, turn.actor, dish.id), "did-drop", dish=dish.dish)
    return gone


async def take_off(turn: Turn) -> None:
    from bot.understood.consequences import gaps, tell_host

    gone = without_their_food(turn)
    if not gone:
        raise Refusal("refused-button-old")
    short = [turn.voice.say(one) for one in gaps(turn, [p.category for p in gone])]
    dishes = [p.dish for p in gone]
    turn.edit_pressed("ill-off", dishes=dishes, short=short, buttons=[[turn.undo_button()]])
    await tell_host(turn, gone, left=False)


def register(app: Registry) -> None:
    app.reader(read_ill, order=16)
    app.button("illoff", take_off)
