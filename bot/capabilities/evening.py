"""The evening in free words: we are here, I forgot the dip, we ran out of plates, who takes the rest, it is hard."""

from __future__ import annotations

import re
from datetime import timedelta

from bot.buttons import Button
from bot.capabilities.late import here, running_late
from bot.capabilities.leftovers import show
from bot.capabilities.ranout import ran_out, tell_host
from bot.capabilities.stowed import away, left, one_line, own_back, row_of, unlisted
from bot.context import Turn
from bot.naming import dish_named
from bot.registry import Registry
from bot.understood import Understood, place_of, say_understood
from bot.understood.consequences import gaps
from bot.understood.dishes import add_dish
from planning.changes import drop_promise, take_home
from planning.dishes import lookup
from planning.kitchen import PlannedStep, Timeline
from planning.potluck import Answer, Promise, Stage
from planning.replies import AddPromise
from planning.safety.heat import cook_notes
from planning.theday.evening import Said, next_hour, of_a_table, read_evening

LANGUAGES = ("en", "es")
BEFORE, HERE_BEFORE, AFTER = timedelta(hours=12), timedelta(hours=6), timedelta(days=2)
SERVED = timedelta(minutes=30)
"""From so long after the start on, what is left is talked about. All four: common practice, no source."""
_SOME = re.compile(
    r"\b(?:some|a bit|a little|half|a portion|a box|a slice|un poco|algo|la mitad|una porci[oó]n)\b", re.IGNORECASE
)
"""Who takes a part leaves the rest where it stands."""

_PART = re.compile(
    r"(?:(?:second|third|other|last|1|2|one|half|half of the|rest of the|segunda|segundo|otra|otro|mitad de la"
    r"|mitad del) )+(?:\w+ ){0,2}\w+"
)
"""A part of a dish by its number or share."""


async def read_words(turn: Turn) -> None:
    """Words about the evening, on the day: below a message of the bot, in private, or where it reads along."""
    event = turn.event
    if not event.is_words or event.person.anonymous:
        return
    if not turn.has_potluck or turn.potluck.stage is not Stage.PLANNED or place_of(turn) == "person":
        return
    potluck = turn.potluck
    if not potluck.starts_at - BEFORE <= turn.now <= potluck.ends + AFTER:
        return
    languages = dict.fromkeys((turn.voice.language, *LANGUAGES))
    for _ in range(2):
        said = next((s for language in languages if (s := read_evening(turn.words, language))), None)
        if said is None or not await _take(turn, said):
            return
        turn.handled = not said.rest
        # "We're here! Where do we park?": the other sentence is read again, and by those who come after.
        turn.words = said.rest or turn.words
        if turn.handled:
            return


async def _take(turn: Turn, said: Said) -> bool:
    """Answer it; False when it is nothing to us."""
    potluck, addressed = turn.potluck, place_of(turn) is not None
    over = turn.now > potluck.ends
    served = turn.now >= potluck.starts_at + SERVED
    match said.kind:
        case "here":
            return await _here(turn, said, addressed=addressed)
        case "late" | "eta" if not over:
            return await _late(turn, said, addressed=addressed)
        case "forgot" if not over:
            return await _forgot(turn, said, addressed=addressed)
        case "ran-out":
            return await ran_out(turn, said)
        case "take-home" if served:
            return _takes(turn, said, addressed=addressed)
        case "own-back" if served:
            return own_back(turn)
        case "left" if served:
            return await left(turn, said, addressed=addressed)
        case "away":
            return away(turn, said, addressed=addressed)
        case "rest" | "may-i" if served:
            return await _rest(turn, said, addressed=addressed)
        case "hard" if not served:
            return _hard(turn, said)
        case _:
            return False


async def _here(turn: Turn, said: Said, *, addressed: bool) -> bool:
    potluck, known = turn.potluck, turn.guest()
    if not potluck.starts_at - HERE_BEFORE <= turn.now <= potluck.ends:
        return False
    if not addressed and (known is None or known.answer not in (Answer.YES, Answer.MAYBE)):
        return False
    if known is not None and known.arrived_at is not None:
        turn.react("👍")
        return True
    if said.thing and _missed(turn, said.thing):
        await _brings_after_all(turn, said.thing)
        return True
    await here(turn)
    return True


def _missed(turn: Turn, thing: str) -> bool:
    """Whether somebody brings a dish that is not on the list any more: they were given up, or it was."""
    known = dish_named(turn, thing, turn.potluck.promises) is not None
    return not known and of_a_table(thing, turn.voice.language)


async def _brings_after_all(turn: Turn, thing: str) -> None:
    """They are here, and what they carry is on the table again."""
    understood = Understood()
    add_dish(turn, AddPromise(dish=thing, category=lookup(thing).category or "", confidence=1.0), understood)
    await here(turn)
    say_understood(turn, understood)


async def _late(turn: Turn, said: Said, *, addressed: bool) -> bool:
    """So many minutes late, or the hour of coming: only later than the start or one's dish needs is it late."""
    potluck, known = turn.potluck, turn.guest()
    if turn.now < potluck.starts_at - BEFORE or (not addressed and (known is None or known.answer is not Answer.YES)):
        return False
    if said.minutes is not None:
        await running_late(turn, said.minutes)
        return True
    at = next_hour(said.at, turn.now, turn.zone)
    if at is None or known is None or at >= potluck.ends:
        return False
    await running_late(turn, None, at=at)
    return True


def _named(turn: Turn, thing: str) -> Promise | None:
    """The dish of the list these words mean; one's own goes first."""
    own = turn.potluck.promises_of(turn.me)
    return dish_named(turn, thing, own) or dish_named(turn, thing, turn.potluck.promises)


async def _forgot(turn: Turn, said: Said, *, addressed: bool) -> bool:
    """It is still on the list; what its being away leaves short, and the two ways out."""
    own = tuple(p for p in turn.potluck.promises_of(turn.me) if p.category != "supplies")
    found = dish_named(turn, said.thing, own)
    part = _PART.fullmatch(said.thing.casefold())
    if part is not None and (found is not None or len(own) == 1):
        # "The second tray": the rest of the dish comes.
        dish = found or own[0]
        late = [Button(turn.voice.plain("button-late", n=n), "late", (str(n),), owner=turn.me) for n in (20, 40, 60)]
        turn.say("evening-forgot-part", thing=said.thing, dish=dish.dish, buttons=[late])
        return True
    if found is None:
        if not addressed or not of_a_table(said.thing, turn.voice.language):
            return False
        turn.say("evening-forgot-unlisted", thing=said.thing)
        return True
    short = _short_without(turn, found)
    late = [Button(turn.voice.plain("button-late", n=n), "late", (str(n),), owner=turn.me) for n in (20, 40, 60)]
    drop = [Button(turn.voice.plain("button-drop", dish=found.dish), "drop", (found.id,), owner=turn.me)]
    turn.say("evening-forgot", dish=found.dish, short=short, buttons=[late, drop])
    await tell_host(turn, "told-forgot", dish=found.dish, short=short)
    return True


def _short_without(turn: Turn, found: Promise) -> list[str]:
    """What the table is short of when this dish does not come. The change is only tried."""
    before = turn.potluck
    without = drop_promise(before, turn.actor, found.id)
    return [turn.voice.say(gap) for gap in gaps(turn, [found.category], without)]


def _takes(turn: Turn, said: Said, *, addressed: bool) -> bool:
    """ "I'll take the chili home": noted as by the button; what stood out too long is nobody's."""
    found = _named(turn, said.thing)
    if found is None and addressed and of_a_table(said.thing, turn.voice.language):
        unlisted(turn, [said.thing])
        return True
    if found is None or (row := row_of(turn, found)) is None:
        return False
    if row.must_go:
        turn.post(one_line(turn, row))
        return True
    if turn.me in found.takers:
        turn.react("👍")
        return True
    whole = not _SOME.search(turn.words)
    turn.change(take_home(turn.potluck, turn.actor, found.id, turn.now, all_of_it=whole), "did-take", dish=found.dish)
    if row.perhaps:
        turn.post(one_line(turn, row), buttons=[[turn.undo_button()]])
        return True
    why = [Button(turn.voice.plain("button-why"), "whys", (row.rule,))] if row.rule != "practice" else []
    turn.say("evening-taken", dish=found.dish, until=row.keep_until, buttons=[[turn.undo_button(), *why]])
    return True


async def _rest(turn: Turn, said: Said, *, addressed: bool) -> bool:
    """How long it keeps and a button for whoever takes it; of no dish in particular, all of them."""
    if not said.thing or said.thing in ("leftovers", "leftover", "rest", "food", "las sobras", "sobras"):
        if not any(p.category not in ("drink", "supplies") for p in turn.potluck.promises):
            return False
        await show(turn)
        return True
    found = _named(turn, said.thing)
    if found is None or (row := row_of(turn, found)) is None:
        return False
    buttons = (
        [] if row.must_go else [[Button(turn.voice.plain("button-take", dish=found.dish), "takeone", (found.id,))]]
    )
    turn.post(one_line(turn, row), buttons=buttons)
    return True


def _hard(turn: Turn, said: Said) -> bool:
    """More time where it is, until when there is any, and what next wants the place."""
    found = _named(turn, said.thing)
    if found is None:
        return False
    potluck, steps = turn.potluck, _steps(turn)
    mine = [s for s in steps if s.promise == found.id and s.appliance and s.start <= turn.now]
    place = mine[-1].appliance if mine else None
    after = [s for s in steps if s.appliance == place and s.promise != found.id and s.start > turn.now] if place else []
    wanted = min(after, key=lambda s: s.start, default=None)
    other = potluck.promise(wanted.promise) if wanted is not None else None
    note = next(iter(cook_notes(found)), None)
    turn.say(
        "evening-hard",
        dish=found.dish,
        serve=turn.voice.time(potluck.starts_at),
        left=max(0, round((potluck.starts_at - turn.now).total_seconds() / 60)),
        next=turn.voice.time(wanted.start) if wanted is not None else "",
        other=other.dish if other is not None else "",
        rule=turn.voice.say(note.say) if note is not None else "",
        has_rule=note is not None,
    )
    return True


def _steps(turn: Turn) -> tuple[PlannedStep, ...]:
    known: Timeline | None = turn.services.planner.timeline(turn.potluck) if turn.services.planner is not None else None
    return known.doable if known is not None else ()


def register(app: Registry) -> None:
    app.reader(read_words, order=30)
