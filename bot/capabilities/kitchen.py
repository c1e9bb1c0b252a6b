"""The kitchen: what the host has, the timeline that comes of it, and ways out where it fails."""

import asyncio
from collections.abc import Iterator, Sequence
from dataclasses import replace

from bot.buttons import Button
from bot.context import Turn
from bot.kitchen_words import conflict_lines, degrees, step_line
from bot.registry import Registry
from bot.texts import Html
from planning.changes import Refusal, change_promise, reschedule, set_kitchen
from planning.kitchen import Conflict, Fix, Timeline, timeline
from planning.kitchen.known import with_last
from planning.kitchen.mend import mended
from planning.kitchen.usual import Estimate, estimates, steps_of
from planning.kitchen_words import Unread, read_kitchen
from planning.potluck import HeatStep, Kitchen, Potluck
from planning.when import as_read_here

EFFORT, SECONDS = 0.3, 10.0
MOST_STEPS, MOST_CONFLICTS = 30, 8
MOST_BUTTONS = 4


COOKING = "words_cooking"


async def kitchen(turn: Turn) -> None:
    """/kitchen shows the timeline; "/kitchen 1 oven, 2 slow cookers, 4 burners" says what there is."""
    if not turn.words:
        made = await planned(turn)
        turn.post(in_words(turn, turn.potluck, made), buttons=_buttons(turn, made))
        return
    try:
        now = read_kitchen(as_read_here(turn.words, turn.voice.language, COOKING), turn.potluck.kitchen)
    except Unread as unread:
        raise Refusal("refused-kitchen-words", words=unread.words) from None
    noted = kitchen_note(turn, now)
    await with_conflicts(turn, noted, None)


def kitchen_note(turn: Turn, now: Kitchen) -> Html:
    turn.change(set_kitchen(turn.potluck, turn.actor, now), "did-kitchen")
    return turn.voice(
        "ovenplan-noted",
        ovens=len(now.ovens),
        burners=now.burners,
        slow=len(now.slow_cookers),
        microwaves=len(now.microwaves),
        cooks=now.cooks,
        fridge=round(now.fridge_l) if now.fridge_l is not None else 0,
    )


def note_kitchen(turn: Turn, now: Kitchen) -> None:
    """What there is to cook with, told beside something else."""
    turn.post(kitchen_note(turn, now), silent=True)


async def planned(turn: Turn) -> Timeline:
    """The timeline as it would be now, near to what people have been told."""
    planner = turn.services.planner
    known = planner.timeline(turn.potluck) if planner is not None else None
    potluck = with_last(turn.potluck, known, turn.now)
    return await asyncio.to_thread(timeline, potluck, turn.now, EFFORT, 0, SECONDS)


def in_words(turn: Turn, potluck: Potluck, made: Timeline) -> Html:
    voice = turn.voice
    asked = estimates(potluck)
    lines = [voice("ovenplan-head", serve=potluck.starts_at, status=made.status, n=len(made.doable), asked=len(asked))]
    lines += _conflicts(turn, made)
    lines += [_off(turn, number, oven.off_f) for number, oven in enumerate(potluck.kitchen.ovens, 1) if oven.off_f]
    steps = sorted(made.doable, key=lambda s: (s.start, s.promise, s.step))
    lines += [step_line(voice, potluck, s) for s in steps[:MOST_STEPS]]
    if len(steps) > MOST_STEPS:
        lines.append(voice("ovenplan-more", n=len(steps) - MOST_STEPS))
    lines += _by_the_book(turn, potluck)
    if asked:
        lines.append(voice("ovenplan-asked", n=len(asked)))
        lines += [
            voice("ovenplan-estimate", dish=_dish(potluck, e.promise), steps=_words(turn, e.steps)) for e in asked
        ]
    return Html("\n".join(lines))


def _off(turn: Turn, number: int, off_f: float) -> Html:
    """An oven that heats to another figure than its dial says: what stands here is what to set."""
    n = round(abs(off_f) / 1.8) if turn.voice.units == "metric" else round(abs(off_f))
    metric = "yes" if turn.voice.units == "metric" else "no"
    off = turn.voice.plain("sit-off-by", n=n, metric=metric)
    return turn.voice("ovenplan-off", oven=number, off=off, cold="yes" if off_f < 0 else "no")


def _conflicts(turn: Turn, made: Timeline) -> list[Html]:
    """The worst first, as many as a message can hold beside the steps."""
    shown = conflict_lines(turn.voice, replace(made, conflicts=made.conflicts[:MOST_CONFLICTS]))
    left = len(made.conflicts) - len(shown)
    return [*shown, turn.voice("ovenplan-more-conflicts", n=left)] if left > 0 else shown


def _by_the_book(turn: Turn, potluck: Potluck) -> list[Html]:
    """Dishes planned with a table's minutes, as their cooks said nothing: to be corrected in words."""
    from bot.capabilities.buying import source_words

    taken = [(p.dish, steps_of(potluck, p)[1]) for p in potluck.promises if p.heat is None]
    by_source = {source: [d for d, of in taken if of == source] for _, source in taken if source}
    return [
        turn.voice("ovenplan-assumed", dishes=dishes, source=source_words(turn, source))
        for source, dishes in sorted(by_source.items())
    ]


def _dish(potluck: Potluck, promise_id: str) -> str:
    promise = potluck.promise(promise_id)
    return promise.dish if promise is not None else ""


def _words(turn: Turn, steps: Sequence[HeatStep]) -> list[str]:
    return [step_words(turn, s) for s in steps]


def step_words(turn: Turn, step: HeatStep) -> str:
    temp = degrees(turn.voice, step.temp_f)
    return turn.voice.plain("heat-step", what=turn.voice.plain(f"step-{step.kind}"), minutes=step.minutes, temp=temp)


def _buttons(turn: Turn, made: Timeline) -> list[list[Button]]:
    return [*_ways_out(turn, made.conflicts), *_estimate_buttons(turn, estimates(turn.potluck))]


def _ways_out(turn: Turn, conflicts: Sequence[Conflict]) -> list[list[Button]]:
    """One for each way out that is a change of the potluck and not offered yet, the worst dish first."""
    rows: list[list[Button]] = []
    labels: set[str] = set()
    for fix, promise in _offers(conflicts):
        kind, minutes = fix.kind, fix.minutes
        if kind == "leave-out" or mended(turn.potluck, promise, kind, minutes) is None:
            continue
        label = turn.voice.plain(f"button-fix-{kind}", dish=_dish(turn.potluck, promise), n=minutes)
        if label not in labels and len(rows) < MOST_BUTTONS:
            labels.add(label)
            of_all = kind in FOR_ALL
            rows.append([Button(label, "mend", ("" if of_all else promise, kind, str(minutes)))])
    return rows


def _offers(conflicts: Sequence[Conflict]) -> Iterator[tuple[Fix, str]]:
    """Every way out with each dish it is for."""
    for conflict in conflicts:
        for fix in (conflict.fix, *conflict.others):
            for promise in fix.promises or conflict.promises or ("",):
                yield fix, promise


def _estimate_buttons(turn: Turn, asked: Sequence[Estimate]) -> list[list[Button]]:
    rows = []
    for one in asked[:MOST_BUTTONS]:
        dish = _dish(turn.potluck, one.promise)
        rows.append(
            [Button(turn.voice.plain(f"button-heat-{at}", dish=dish), "usualhot", (one.promise, at)) for at in PLACES]
        )
    return rows


PLACES = ("venue", "home")
FOR_ALL = ("later", "more-hands", "borrow-slow-cooker", "borrow-oven", "another-circuit")
"""Ways out that change the kitchen or the hour, whichever dish they were found for."""


async def mend(turn: Turn) -> None:
    """The way out is taken: hosts for all of it, cooks for their own dish."""
    promise_id, kind, minutes = turn.args[0], turn.args[1], int(turn.args[2])
    potluck = turn.potluck
    # Pressed twice, or late: what is mended by now is left as it is.
    open_ones = (await planned(turn)).conflicts
    offered = {(f.kind, p) for f, of in _offers(open_ones) for p in ("", of)}
    if (kind, "" if kind in FOR_ALL else promise_id) not in offered:
        turn.toast("fix-not-needed")
        return
    after = mended(potluck, promise_id, kind, minutes)
    if after is None:
        raise Refusal("refused-no-promise")
    dish = _dish(potluck, promise_id)
    if kind == "later":
        turn.change(reschedule(potluck, turn.actor, after.starts_at, turn.now), "did-when")
    elif after.kitchen != potluck.kitchen:
        turn.change(set_kitchen(potluck, turn.actor, after.kitchen), "did-kitchen")
    else:
        now = next(p for p in after.promises if p.id == promise_id)
        turn.change(
            change_promise(potluck, turn.actor, promise_id, heat=now.heat, arrives_at=now.arrives_at, serve=now.serve),
            "did-heat",
        )
    turn.toast("answer-below")
    said = turn.voice(
        "ovenplan-mended", kind=kind, dish=dish, when=after.starts_at, minutes=minutes,
        metric="yes" if turn.voice.units == "metric" else "no",
    )  # fmt: skip
    await with_conflicts(turn, said, None, reply=False)


OF_ALL_DISHES = ("late", "too-long", "off-heat", "fridge-full")
"""Rules that one dish breaks for want of room beside others."""


async def with_conflicts(turn: Turn, said: Html, promise: str | None, rows: list[list[Button]] | None = None,
                          *, reply: bool | None = None) -> None:  # fmt: skip
    """What was noted, and at once what does not fit now, with its ways out.

    Where one dish is meant: what is wrong with it, and every dish that does not find its place beside the others.
    """
    made = await planned(turn)
    about = tuple(c for c in made.conflicts if promise is None or promise in c.promises or c.rule in OF_ALL_DISHES)
    buttons = [*(rows or []), *_ways_out(turn, about), [turn.undo_button()]]
    lines = [said, *_conflicts(turn, replace(made, conflicts=about))]
    turn.post(Html("\n".join(lines)), buttons=buttons, reply=reply)


def register(app: Registry) -> None:
    app.command("kitchen", kitchen, order=70, hosts=True)
    app.button("mend", mend)
