"""What a change on the day means: the smallest part of the plan that is another than before."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime

from planning.diets import diets, people_without
from planning.headcount import headcount
from planning.kitchen.result import PlannedStep, Timeline
from planning.menu import MenuRow, menu
from planning.potluck import Potluck, Say

MOVED_MIN = 5
"""A step that moves by less is not worth a word (the kitchen's own grid)."""

ENOUGH_FOR_ALL = 0.5
"""Below this share of the usual portion nobody is fed by smaller plates: food must come from somewhere."""

SMALLER_FROM = 0.97
"""Portions are told to shrink only below this share of the usual one."""


FILLING = ("main", "side")
"""Where nothing is left, a smaller plate of it is no plate."""

LEAST_MISSED = ("topping", "supplies", "starter", "drink")
"""Nobody goes hungry for want of these: they are only named (common practice, no source)."""

MOST_SHORT = 3


@dataclass(frozen=True)
class Difference:
    """`moved` are steps as they are now; `gone` dishes that have no place in the kitchen any more; `short` by
    category the servings that are newly missing; `says` all of it in sentences, the most urgent first."""

    moved: tuple[PlannedStep, ...]
    gone: tuple[str, ...]
    short: tuple[tuple[str, int], ...]
    share: float
    says: tuple[Say, ...]


def difference(
    before: Potluck, after: Potluck, was: Timeline | None, is_now: Timeline | None, now: datetime
) -> Difference:
    """Compare the plan of two potlucks that differ by one thing. `now` drops what is over."""
    moved = tuple(_moved(was, is_now, now))
    gone = tuple(_gone(before, after, was, is_now))
    short, share = _short(before, after)
    says = list(_conflicts(was, is_now))
    without = tuple(_left_without(before, after))
    bare = [r.category for r in menu(after, headcount(after)) if r.category in FILLING and r.promised_servings <= 0]
    gone_whole = [c for c, _ in short if c in bare and any(p.category == c for p in before.promises)]
    says += [Say("day-none-left", {"what": Say(f"category-{c}"), "category": c}) for c in gone_whole]
    for need, part, n in without:
        told = {"need": Say("prints-need", {"need": need}), "what": Say(f"category-{part}"), "n": n}
        says.append(Say("day-need-none", told))
    if share < SMALLER_FROM and before.promises:
        few = share < ENOUGH_FOR_ALL or bool(gone_whole)
        # The smallest change comes first: what can be done with what is there, then what is to be fetched.
        says.append(Say("day-too-little", {}) if few else Say("day-smaller", {"percent": 5 * round(share * 20)}))
    food = [(c, n) for c, n in short if c not in LEAST_MISSED]
    says += [Say("day-short", {"what": Say(f"category-{category}"), "n": n}) for category, n in food[:MOST_SHORT]]
    rest = [c for c, _ in (*food[MOST_SHORT:], *((c, n) for c, n in short if c in LEAST_MISSED))]
    if rest:
        says.append(Say("day-short-too", {"what": tuple(Say(f"category-{c}") for c in rest)}))
    return Difference(moved, gone, short, share, tuple(says))


def _steps(timeline: Timeline | None) -> dict[tuple[str, int], PlannedStep]:
    return {(s.promise, s.step): s for s in (timeline.doable if timeline is not None else ())}


def _moved(was: Timeline | None, is_now: Timeline | None, now: datetime) -> Iterator[PlannedStep]:
    old = _steps(was)
    for key, step in sorted(_steps(is_now).items(), key=lambda item: (item[1].start, item[0])):
        known = old.get(key)
        if step.end <= now or known is None:
            continue
        minutes = abs((step.start - known.start).total_seconds()) / 60
        if minutes >= MOVED_MIN or (step.appliance, step.kind) != (known.appliance, known.kind):
            yield step


def _gone(before: Potluck, after: Potluck, was: Timeline | None, is_now: Timeline | None) -> Iterator[str]:
    planned = {s.promise for s in (is_now.doable if is_now else ())}
    for promise in before.promises:
        had = any(s.promise == promise.id for s in (was.doable if was else ()))
        if had and after.promise(promise.id) is not None and promise.id not in planned:
            yield promise.id


def _short(before: Potluck, after: Potluck) -> tuple[tuple[tuple[str, int], ...], float]:
    was = {row.category: row for row in menu(before, headcount(before))}
    is_now = menu(after, headcount(after))
    found = []
    for row in is_now:
        more = row.lacking_servings - was[row.category].lacking_servings
        if more >= 1 and not row.tiny:
            found.append((row.category, round(row.lacking_servings)))
    share_before, share = _covered(was.values()), _covered(is_now)
    return tuple(found), (share / share_before if share_before > 0 else 1.0)


def _left_without(before: Potluck, after: Potluck) -> Iterator[tuple[str, str, int]]:
    """(need, part of the meal, people) who have no dish listed free of it now and had one before."""
    was = people_without(before, diets(before))
    for (need, part), people in people_without(after, diets(after)).items():
        if people > was.get((need, part), 0) and part == "main":
            yield need, part, people


def _covered(table: Iterable[MenuRow]) -> float:
    """How much of the food the table wants is promised, 0 to 1."""
    food = [r for r in table if r.category not in ("drink", "supplies", "topping")]
    want = sum(r.target_servings for r in food)
    return sum(min(r.promised_servings, r.target_servings) for r in food) / want if want else 1.0


def _conflicts(was: Timeline | None, is_now: Timeline | None) -> Iterator[Say]:
    """Conflicts there were not before, each with its way out."""
    known = {(c.promises, c.rule) for c in (was.conflicts if was else ())}
    for conflict in is_now.conflicts if is_now else ():
        if (conflict.promises, conflict.rule) not in known:
            yield Say("day-conflict", {"why": conflict.why, "fix": conflict.fix.text})
            # Where some of its dishes have another way out, it is theirs.
            for other in conflict.others:
                if other.promises:
                    yield Say("day-way-out", {"fix": other.text})
