"""What the reader of sentences may know of a chat."""

from __future__ import annotations

from bot.context import Turn
from planning.potluck import Answer
from planning.replies import ReplyContext

ABOUT_THE_POTLUCK = tuple(f"question:{kind}" for kind in ("place", "people", "when", "hour", "zone", "callsure"))
"""Questions about the potluck itself: what is written below them and is no answer is read as said to the bot."""


def context(turn: Turn, *, replying_to: str | None, replied_text: str = "") -> ReplyContext:
    """What the reader of sentences may know. Without a potluck there is nothing to know."""
    potluck = turn.potluck
    guest = potluck.guest(turn.me)
    bar = potluck.bar
    from planning.bar import toppings_for

    names = tuple(dict.fromkeys((*(t.name for t in bar.toppings), *toppings_for(bar.base)))) if bar else ()
    return ReplyContext(
        writer=turn.me,
        writer_name=turn.event.person.name,
        replying_to=replying_to,
        guests=tuple((g.id, g.name) for g in potluck.guests),
        own_promises=tuple((p.id, p.dish) for p in potluck.promises_of(turn.me)),
        all_promises=tuple((p.id, p.dish) for p in potluck.promises),
        party=guest.party if guest and guest.answer is not Answer.NONE else None,
        answer=guest.answer if guest else Answer.NONE,
        toppings=names,
        bar_base=bar.base if bar else "",
        now=turn.now,
        timezone=potluck.timezone,
        host=turn.me in (potluck.host, *potluck.cohosts),
        starts_at=potluck.starts_at,
        replied_text=replied_text,
        language=turn.voice.language,
        near_board=_near_board(turn),
        today=_today(turn),
        needs=tuple(n.need for n in guest.all_needs()) if guest else (),
    )


NEAR = 60
"""So many messages below the board people still speak of what it asks (common practice, no source)."""


def _near_board(turn: Turn) -> bool:
    """Whether the board stands a few messages above in the same chat; the platform numbers a chat's messages."""
    board = turn.stored.place.board_message_id if turn.stored is not None else None
    own = turn.event.message_id
    starts_at = turn.potluck.starts_at
    if starts_at is not None and turn.now >= starts_at:
        return False  # by then nobody is asked who comes
    return board is not None and own is not None and not turn.private and 0 < own - board <= NEAR


def _today(turn: Turn) -> bool:
    return not turn.private and turn.potluck.on_its_day(turn.now)


def place_of(turn: Turn) -> str | None:
    """Where the words stand, in the reader's terms."""
    event = turn.event
    if turn.echoed:
        return "person"
    if turn.about in ABOUT_THE_POTLUCK:
        return "bot"
    if turn.about == "board" or (turn.about or "").startswith("question:"):
        return turn.about
    if turn.about is not None or (event.private and event.reply_to is None):
        return "bot"
    if event.reply_to is not None:
        return "bot" if event.reply_to_bot else "person"
    return None
