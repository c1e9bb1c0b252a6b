"""The day itself: dishes on the table and their clocks, the cautions and who says so, what reminders are ahead."""

import re
from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import datetime, timedelta
from itertools import accumulate
from typing import Any

from bot.buttons import Button, Link
from bot.capabilities.buying import source_words
from bot.context import Turn
from bot.registry import Registry
from bot.renderer import preview_lines
from bot.texts import Html, Voice
from planning.changes import Refusal, may_manage, put_away, put_out
from planning.kitchen import PlannedStep, Timeline, timeline
from planning.potluck import Potluck, Promise
from planning.reminders import reminders
from planning.safety import safety
from planning.safety.clocks import clock, more_minutes, on_the_table
from planning.safety.told import over
from planning.safety.topics import names
from planning.safety.why import because
from planning.safety.words import perishable

LONGEST_MESSAGE = 3600
"""Characters of markup; the platform takes 4096, and a heading and a last line come on top."""

MOST_DISHES = 11
TABLE_FROM = timedelta(minutes=30)

_MINUTES = re.compile(
    r"[,:;]?\s*(?:\b(?:was|been|for|spent|already|out)\s+)*(?P<n>\d{1,3})\s*(?P<unit>min(?:ute)?s?|h(?:ou)?rs?)\b"
    r"(?:\s+(?:already|in the car|on the counter|on the way|out|warm|outside|before))*\s*$",
    re.IGNORECASE,
)


async def out(turn: Turn) -> None:
    """/out slaw, or buttons to choose: "it's on the table now" starts the clock.

    "/out slaw, 40 minutes in the car" counts what was before.
    """
    from bot.capabilities.bringing import find_promise

    if turn.words:
        before = _MINUTES.search(turn.words)
        words = turn.words[: before.start()] if before else turn.words
        found = find_promise(turn, words.strip(" ,"), mine_only=False)
        if before:
            minutes = int(before["n"]) * (60 if before["unit"].casefold().startswith("h") else 1)
            _start(turn, found.id)
            turn.change(more_minutes(turn.potluck, found.id, minutes), "did-out")
        else:
            _start(turn, found.id)
        told_clock(turn, found.id)
        return
    _ask_which(turn)


async def table_button(turn: Turn) -> None:
    _ask_which(turn)
    turn.toast("answer-below")


def on_board(potluck: Potluck, voice: Voice, facts: Any) -> Iterable[list[Button | Link]]:
    """From half an hour before the start until people go home."""
    if potluck.starts_at - TABLE_FROM <= facts.now <= potluck.ends and _waiting(potluck):
        yield [Button(voice.plain("button-table"), "table")]


def _ask_which(turn: Turn) -> None:
    standing = [p for p in turn.potluck.promises if p.category not in ("drink", "supplies")]
    if not standing:
        raise Refusal("refused-no-promises")
    rows = [[Button(p.dish, "out", (p.id,))] for p in standing[:MOST_DISHES]]
    if len(_waiting(turn.potluck)) > 1:
        rows.insert(0, [Button(turn.voice.plain("button-all-out"), "allout")])
    turn.say("out-which", buttons=rows, reply=None if turn.event.kind == "message" else False)


def _waiting(potluck: Potluck) -> list[Promise]:
    """What could go on the table and has a clock."""
    return [p for p in potluck.promises if p.out_since is None and perishable(p)]


async def all_out(turn: Turn) -> None:
    """Everything is on the table now: every clock starts."""
    turn.toast("answer-below")
    all_out_since(turn, None)


def all_out_since(turn: Turn, since: datetime | None) -> None:
    """Every clock that waits starts, at `since` or now."""
    waiting = _waiting(turn.potluck)
    for promise in waiting:
        start_clock(turn, promise.id, since)
    gone = over(turn.potluck, turn.now)
    if gone:
        turn.say("out-all-over", reply=False, dishes=[p.dish for p in gone], n=len(gone))
        waiting = [p for p in waiting if p.id not in {g.id for g in gone}]
    if not waiting:
        if not gone:
            turn.say("out-all-running", reply=False)
        return
    rows = [(p.dish, end) for p in waiting if (end := _deadline(turn, p.id)) is not None]
    first = min((end for _, end in rows), default=turn.now)
    soonest = [dish for dish, end in rows if end == first]
    turn.say("out-all", reply=False, n=len(rows), until=turn.voice.time(first), dishes=soonest)


async def out_button(turn: Turn) -> None:
    found = turn.potluck.promise(turn.args[0])
    if found is None:
        raise Refusal("refused-no-promise")
    if found.out_since is None:
        _start(turn, found.id)
        told_clock(turn, found.id)
    else:
        turn.change(put_away(turn.potluck, turn.actor, found.id, turn.now), "did-away", dish=found.dish)
        away_said(turn, found.id)
    turn.toast("answer-below")


def away_said(turn: Turn, promise_id: str) -> None:
    """The dish is off the table; what it stood stays counted, and may be too much already."""
    off = turn.known_promise(promise_id)
    over = perishable(off) and clock(turn.potluck, off).left_min(turn.now) <= 0
    turn.say("out-over" if over else "out-stopped", reply=False, dish=off.dish, minutes=round(off.out_min))


async def way_too(turn: Turn) -> None:
    """The minutes on the way were warm ones: they count."""
    promise_id, minutes = turn.args[0], int(turn.args[1])
    turn.known_promise(promise_id)
    turn.change(more_minutes(turn.potluck, promise_id, minutes), "did-out")
    turn.edit_pressed_html(_said(turn, promise_id), buttons=_out_buttons(turn, promise_id, way=False))


def _timeline(turn: Turn) -> Timeline | None:
    planner = turn.services.planner
    found: Timeline | None = planner.timeline(turn.potluck) if planner is not None else None
    return found


def _start(turn: Turn, promise_id: str) -> None:
    start_clock(turn, promise_id, None)


def start_clock(turn: Turn, promise_id: str, since: datetime | None) -> None:
    """The dish is on the table since then, or since now; what it spent off heat before counts."""
    at = since or turn.now
    counted = on_the_table(turn.potluck, promise_id, _steps(turn, promise_id), at)
    turn.change(put_out(counted, turn.actor, promise_id, at), "did-out")


def _steps(turn: Turn, promise_id: str) -> tuple[PlannedStep, ...]:
    """As last planned; once the start has come nothing is planned any more, and the day is reckoned as it was to be."""
    made = _timeline(turn)
    if made is not None and any(s.promise == promise_id for s in made.steps):
        return made.steps
    potluck = turn.potluck
    alone = replace(potluck, promises=tuple(p for p in potluck.promises if p.id == promise_id))
    return timeline(alone, potluck.starts_at - timedelta(hours=12), effort=0, searched=0).steps


def _deadline(turn: Turn, promise_id: str) -> datetime | None:
    promise = turn.known_promise(promise_id)
    return clock(turn.potluck, promise).deadline if perishable(promise) else None


def told_clock(turn: Turn, promise_id: str) -> None:
    """Until when the dish may stay out, with the buttons that go with a running clock."""
    turn.post(_said(turn, promise_id), reply=False, buttons=_out_buttons(turn, promise_id, way=True))


def _said(turn: Turn, promise_id: str) -> Html:
    found, end = turn.known_promise(promise_id), _deadline(turn, promise_id)
    if end is None:
        return turn.voice("out-started", dish=found.dish)
    if end <= turn.now:
        ticking = clock(turn.potluck, found)
        return turn.voice("out-over", dish=found.dish, minutes=round(ticking.limit_min - ticking.left_min(turn.now)))
    return turn.voice("out-started-until", dish=found.dish, until=turn.voice.time(end), spent=round(found.out_min))


def _out_buttons(turn: Turn, promise_id: str, *, way: bool) -> list[list[Button]]:
    """Off the table again, the way counted too where it is known and the dish came cold, and who says so."""
    found = turn.known_promise(promise_id)
    guest = turn.potluck.guest(found.guest)
    rows = [[Button(turn.voice.plain("button-put-away"), "out", (promise_id,))]]
    travel = guest.travel_min if guest is not None and guest.id != turn.potluck.host else 0
    if way and perishable(found) and 0 < travel <= 24 * 60 and found.out_min == 0:
        rows.append([Button(turn.voice.plain("button-way-too", n=travel), "waytoo", (promise_id, str(travel)))])
    rows.append([Button(turn.voice.plain("button-why"), "why", (promise_id,))])
    return rows


async def cautions(turn: Turn) -> None:
    """/safety: clocks, blocks and warnings, each with who says so."""
    notes = sorted(
        safety(turn.potluck, turn.now, _timeline(turn)), key=lambda n: ("block", "warn", "note").index(n.severity)
    )
    lines = [turn.voice("safety-head")]
    rows = [
        turn.voice("safety-row", severity=n.severity, what=turn.voice.say(n.say), source=source_words(turn, n.source))
        for n in notes
    ]
    shown = _fitting(rows)
    lines += rows[:shown]
    if shown < len(rows):
        lines.append(turn.voice("safety-more", n=len(rows) - shown))
    turn.post(Html("\n".join(lines)))


def _fitting(rows: Sequence[str]) -> int:
    """How many of the rows a message holds."""
    sizes = accumulate(len(row) + 1 for row in rows)
    return sum(size <= LONGEST_MESSAGE for size in sizes)


async def why(turn: Turn) -> None:
    """/why slaw, /why thawing, or /why in reply to what the bot said: the published rule behind it."""
    reasons(turn, turn.words, said=turn.event.reply_text)


async def why_button(turn: Turn) -> None:
    reasons(turn, turn.known_promise(turn.args[0]).dish)
    turn.toast("answer-below")


async def why_rules(turn: Turn) -> None:
    """The rows behind a message that rests on several."""
    reasons(turn, *turn.args)
    turn.toast("answer-below")


def reasons(turn: Turn, *words: str, said: str = "") -> None:
    """The published rules behind what these words, or what the bot said, is about."""
    found = [one for w in words for one in because(turn.potluck, turn.now, _timeline(turn), w, said)]
    if not found:
        raise Refusal("refused-why", topics=list(names(turn.voice.language)))
    lines = [turn.voice("why-head")]
    rows = [
        turn.voice(
            "why-row",
            what=turn.voice.say(one.say).rstrip(".") if one.say is not None else "",
            has_what=one.say is not None,
            text=one.text,
            value=f"{one.value} {one.unit}".strip(),
            has_value=bool(one.value),
            source=source_words(turn, one.rule),
            rule=one.rule,
        )
        for one in found
    ]
    shown = _fitting(rows)
    lines += rows[:shown]
    if shown < len(rows):
        lines.append(turn.voice("why-more", n=len(rows) - shown))
    turn.post(Html("\n".join(lines)), reply=None if turn.event.kind == "message" else False)


async def ahead(turn: Turn) -> None:
    """/reminders: what will go out by itself, when and to whom - for hosts."""
    if not may_manage(turn.potluck, turn.actor):
        raise Refusal("refused-not-host", host="")
    timeline = _timeline(turn)
    off = turn.chat.reminder_kinds_off
    rows = sorted((r for r in reminders(turn.potluck, timeline, turn.now) if r.kind not in off), key=lambda r: r.due_at)
    if not rows:
        turn.say("reminders-none")
        return
    turn.post(
        Html("\n".join([turn.voice("reminders-head", n=len(rows)), preview_lines(turn.voice, turn.potluck, rows[:25])]))
    )


def register(app: Registry) -> None:
    app.command("out", out, order=74)
    app.command("safety", cautions, order=75)
    app.command("why", why, order=75)
    app.command("reminders", ahead, order=76, hosts=True)
    app.button("out", out_button)
    app.button("allout", all_out)
    app.button("waytoo", way_too)
    app.button("why", why_button)
    app.button("whys", why_rules)
    app.button("table", table_button)
    app.on_board(40, buttons=on_board)
