"""The same again: a new date for the last potluck, people's usual dishes proposed, mains going round."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime

from bot.buttons import Button
from bot.capabilities.opening import new_id
from bot.context import Turn
from bot.outgoing import mention
from bot.registry import Registry
from bot.servings import one_ask
from bot.storage.values import PotluckPlace, Stored
from bot.texts import Html
from bot.understood import add_promise
from planning.again import Proposal, carried, next_month, proposals, repeat
from planning.changes import Actor, Refusal, answer, may_manage, set_repeats
from planning.potluck import CATEGORIES, Answer, Potluck, Stage
from planning.when import Unclear, as_read_here, parse_when

MOST_PROPOSALS = 12
MONTHLY = ("monthly", "every month", "each month")
ONCE = ("once", "never", "stop", "no more")


async def command(turn: Turn) -> None:
    """/again Sat 16 Oct 5pm; /again monthly; alone it takes the same weekday of the next month."""
    if turn.private:
        raise Refusal("refused-in-group-only", command="again")
    words = turn.words.casefold().strip(" .!")
    if words in MONTHLY or words in ONCE:
        last = await _last(turn)
        await turn.about_potluck(last)
        turn.change(set_repeats(turn.potluck, turn.actor, "monthly" if words in MONTHLY else ""), "did-repeats")
        when = next_month(turn.potluck)
        turn.say("again-monthly" if words in MONTHLY else "again-once", when=when, buttons=[[turn.undo_button()]])
        return
    last = await _last(turn)
    starts_at = _date(turn, last.potluck) if turn.words else next_month(last.potluck)
    await _start(turn, last, starts_at)


async def pressed(turn: Turn) -> None:
    """The button below the thanks: the same weekday of the next month."""
    last = turn.stored
    if last is None:
        raise Refusal("refused-no-potluck")
    if not await _is_new(turn, next_month(last.potluck)):
        turn.toast("again-already")
        return
    await _start(turn, last, next_month(last.potluck))
    turn.toast("answer-below")


async def _is_new(turn: Turn, starts_at: datetime) -> bool:
    others = await turn.store.potlucks_in(turn.place.chat_id)
    return not any(s.potluck.starts_at == starts_at and s.potluck.stage is Stage.PLANNED for s in others)


async def _last(turn: Turn) -> Stored:
    """The newest potluck of this chat that was not called off, the one under way included."""
    all_ = [s for s in await turn.store.potlucks_in(turn.event.chat_id) if s.potluck.stage is not Stage.CANCELLED]
    begun = [s for s in all_ if s.potluck.starts_at <= turn.now]
    found = max(begun or all_, key=lambda s: s.potluck.starts_at, default=None)
    if found is None:
        raise Refusal("refused-nothing-again")
    return found


def _date(turn: Turn, last: Potluck) -> datetime:
    try:
        said = parse_when(as_read_here(turn.words, turn.voice.language), turn.now, last.timezone)
        if not said.has_time:
            day = last.local(said.starts_at).date()
            hour = last.local(last.starts_at)
            said = parse_when(f"{day.isoformat()} {hour:%H:%M}", turn.now, last.timezone)
    except Unclear as unclear:
        raise Refusal(unclear.say.key, **unclear.say.facts) from None
    return said.starts_at


async def _start(turn: Turn, last: Stored, starts_at: datetime) -> None:
    if turn.event.person.anonymous:
        raise Refusal("refused-anonymous")
    if not may_manage(last.potluck, turn.actor):
        host = last.potluck.guest(last.potluck.host)
        raise Refusal("refused-not-host", host=host.name if host else "")
    if not await _is_new(turn, starts_at):
        raise Refusal("refused-same-hour")
    past = [s.potluck for s in await turn.store.potlucks_in(last.place.chat_id)]
    history = carried(past, turn.now)
    fresh = repeat(last.potluck, turn.actor, new_id(), starts_at, turn.now, history)
    turn.start_potluck(fresh, PotluckPlace(fresh.id, last.place.chat_id, last.place.thread_id))
    made = proposals(last.potluck, history)
    lines: list[str] = [turn.voice("again-opened", when=starts_at, people=len(fresh.guests))]
    lines += _learned(turn, fresh)
    shown = [p for p in made if p.guest != turn.me and fresh.guest(p.guest) is not None][:MOST_PROPOSALS]
    if shown:
        lines.append(turn.voice("again-proposed"))
        lines += [_line(turn, fresh, p) for p in shown]
    rows = [[_button(turn, fresh, p)] for p in shown]
    turn.post(Html("\n".join(lines)), buttons=rows, reply=None if turn.event.kind == "message" else False)


def _learned(turn: Turn, fresh: Potluck) -> Iterable[str]:
    for category, factor in fresh.corrections.items():
        yield turn.voice(
            "lessons-next",
            category=turn.voice.plain(f"category-{category}"),
            percent=round(abs(factor - 1) * 100),
            more=factor > 1,
        )


def _line(turn: Turn, fresh: Potluck, proposal: Proposal) -> Html:
    guest = fresh.guest(proposal.guest)
    assert guest is not None
    return turn.voice(
        "again-line", name=mention(guest), dish=proposal.dish, one=turn.voice.plain(f"one-{proposal.category}")
    )


def _button(turn: Turn, fresh: Potluck, proposal: Proposal) -> Button:
    guest = fresh.guest(proposal.guest)
    assert guest is not None
    label = turn.voice.plain(
        "button-again",
        name=guest.name,
        dish=proposal.dish,
        category=turn.voice.plain(f"category-{proposal.category}"),
    )
    owner = guest.id if guest.id.isdecimal() else None
    servings = str(one_ask(proposal.servings)) if proposal.servings else ""
    # The dish itself is looked up in the last potluck when pressed: a button carries few letters.
    return Button(label, "usual", (guest.id, proposal.category, servings), owner=owner)


async def usual(turn: Turn) -> None:
    """A press below a proposal: the person comes and brings their usual dish, or names one."""
    guest_id, category, servings = turn.args
    guest = turn.potluck.guest(guest_id)
    if guest is None or category not in CATEGORIES:
        raise Refusal("refused-button-old")
    if any(p.category == category for p in turn.potluck.promises_of(guest_id)):
        turn.toast("again-brings-already")
        return
    dish = await _usual_dish(turn, guest_id, category)
    by: Actor = turn.actor
    turn.change(answer(turn.potluck, by, guest_id, Answer.YES), "did-answer", answer="yes")
    name = dish or turn.voice.plain(f"category-{category}")
    made = add_promise(turn, guest_id, name, category, float(servings) if servings else None, None)
    turn.say("again-taken", name=guest.name, dish=made.dish, reply=False, buttons=[[turn.undo_button()]])
    if not dish:
        turn.ask("askdish", "ask-which-dish", data={"promise": made.id}, name=guest.name)
    turn.toast("ask-thanks")


async def _usual_dish(turn: Turn, guest_id: str, category: str) -> str:
    """What this person brought of this category at the newest earlier potluck here."""
    before = [s.potluck for s in await turn.store.potlucks_in(turn.place.chat_id) if s.potluck.id != turn.potluck.id]
    for potluck in sorted(before, key=lambda p: p.starts_at, reverse=True):
        for promise in potluck.promises_of(guest_id):
            if promise.category == category:
                return promise.dish
    return ""


def register(app: Registry) -> None:
    app.command("again", command, order=3)
    app.button("again", pressed)
    app.button("usual", usual)
