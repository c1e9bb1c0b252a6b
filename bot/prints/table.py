"""What the picture of the table shows: what is missing, what is promised by whom, who can eat what."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any

from bot.prints.eating import diet_lines
from bot.prints.say import Writer, apart
from planning.menu import bar_category, kinds_missing
from planning.potluck import CATEGORIES, Answer, Potluck, Promise

Plan = Mapping[str, Any]

LONG_AMOUNT = 14
MOST_STEPS = 3


SHAPES = ((1, 390), (2, 700), (3, 1000))
"""Columns and width in points: a phone's width while the picture stays a few screens tall, then wider."""


def table_data(
    potluck: Potluck, plan: Plan, write: Writer, *, for_host: bool = False, at_least_columns: int = 1
) -> dict[str, Any]:
    """Everything `templates/table.typ` draws, as words and fractions.

    Whose need it is shows only when its owner wrote it openly, or in the host's own copy.
    """
    rows = {r["category"]: r for r in plan.get("menu") or ()}
    blocks = [b for c in CATEGORIES if (b := _block(c, rows.get(c), potluck, plan, write))]
    missing = [_missing(rows[c], potluck, write) for c in CATEGORIES if c in rows and _lacking(rows[c]) > 0]
    lines = len(potluck.promises) + 2 * len(blocks)
    columns, width = SHAPES[max(at_least_columns, 1 if lines <= 34 else 2 if lines <= 75 else 3) - 1]
    return {
        "title": write.title,
        "when": " · ".join(filter(None, (write.when, apart(potluck.place.strip())))),
        "people": _people(plan, write),
        "missing_title": write("missing") if missing else write("nothing-missing"),
        "missing": missing,
        "columns": _balanced(blocks, columns),
        "width": width,
        "bar": _bar(potluck, plan, write),
        "diets_title": write("diets"),
        "diets": diet_lines(potluck, plan, write, for_host=for_host),
        "key": [write(f"key-{k}") for k in ("have", "short", "target", "extra")],
        "footer": write("not-safe"),
    }


def _balanced(blocks: Sequence[dict[str, Any]], columns: int) -> list[list[dict[str, Any]]]:
    """Blocks in reading order, cut where columns come out about equally tall."""
    heights = [3.2 + sum(1 + len(line["dish"] + line["who"]) // 34 for line in b["lines"]) for b in blocks]
    out: list[list[dict[str, Any]]] = [[]]
    room = sum(heights) / columns
    used = 0.0
    for block, height in zip(blocks, heights, strict=True):
        if out[-1] and len(out) < columns and used + height / 2 > room:
            out.append([])
            used = 0.0
        out[-1].append(block)
        used += height
    return out + [[] for _ in range(columns - len(out))]


def _people(plan: Plan, write: Writer) -> str:
    count = plan.get("headcount") or {}
    expected, low, high = (count.get(k) for k in ("expected", "low", "high"))
    if expected is None:
        return ""
    if low is None or high is None or round(low) == round(high):
        return write("people", count=round(expected))
    return write("people-range", count=round(expected), low=round(low), high=round(high))


def _lacking(row: Mapping[str, Any] | None) -> float:
    """The eaters whom the promises do not cover."""
    return _number(row, "lacking_servings" if row and "lacking_servings" in row else "short_servings")


def _missing(row: Mapping[str, Any], potluck: Potluck, write: Writer) -> str:
    category, count = write("category", category=row["category"]), _whole(_lacking(row))
    if row["category"] == "supplies" and (kinds := _kinds_missing(potluck, write)):
        return write("short-kinds", category=category, kinds=kinds, count=count)
    return write("short-line", category=category, count=count)


def _kinds_missing(potluck: Potluck, write: Writer) -> str:
    """Of plates, cups, napkins and cutlery those that nobody brings."""
    missing = kinds_missing(p for p in potluck.promises if p.category == "supplies")
    return write.listed(write("kind", kind=k) for k in missing)


def _who(guest_id: str | None, name: str, potluck: Potluck, write: Writer) -> str:
    """Whoever has said that they can't come may not be counted on to bring it."""
    guest = potluck.guest(guest_id)
    return write("not-coming", name=name) if guest is not None and guest.answer is Answer.NO else name


def _block(
    category: str, row: Mapping[str, Any] | None, potluck: Potluck, plan: Plan, write: Writer
) -> dict[str, Any] | None:
    promises = [p for p in potluck.promises if p.category == category]
    lines = [_line(p, potluck, write) for p in promises]
    if category == "topping" and potluck.bar:
        lines += [
            {
                "dish": apart(write.goods(t.name)),
                "who": _who(t.guest, write.name(t.guest), potluck, write) if t.guest else write("nobody-yet"),
                "amount": "",
                "open": not t.guest,
            }
            for t in potluck.bar.toppings
        ]
    if potluck.bar and category == bar_category(potluck.bar.base) and not _base_brought(potluck):
        lines.insert(
            0,
            {
                "dish": write("bar-title", base=write.goods(potluck.bar.base)),
                "who": write.name(potluck.host),
                "amount": "",
                "open": False,
            },
        )
    target = _number(row, "target_servings")
    # What the promises are good for: of plates and cups, the people the fewest of them cover.
    counted = (
        "covered_servings" if category == "supplies" and row and "covered_servings" in row else "promised_servings"
    )
    promised = _number(row, counted)
    if not lines and target <= 0:
        return None
    short = _lacking(row)
    surplus = max(0.0, promised - target)
    full = target if target > 0 else max(promised, 1.0)
    return {
        "category": write("category", category=category),
        "have": min(1.0, promised / full),
        "missing": min(1.0, max(0.0, short / full)) if target > 0 else 0.0,
        "extra": min(1.0, surplus / full) if target > 0 else 0.0,
        "has_target": target > 0,
        "score": write(
            "of-people" if category == "supplies" else "of-target", have=_whole(promised), target=_whole(target)
        )
        if target > 0
        else (write("servings", count=_whole(promised)) if promised else ""),
        "state": write("short-by", count=_whole(short))
        if short > 0
        else (_plenty(surplus, write) if target > 0 else ""),
        "short": short > 0,
        "lacks": write("kinds-missing", kinds=kinds)
        if category == "supplies" and lines and short > 0 and (kinds := _kinds_missing(potluck, write))
        else "",
        "lines": lines,
    }


def _base_brought(potluck: Potluck) -> bool:
    """Whether somebody promised the bar's base; while nobody has, the plan counts on the host for it."""
    base = set(potluck.bar.base.casefold().split()) if potluck.bar else set()
    return any(all(any(w.startswith(b) for w in p.dish.casefold().split()) for b in base) for p in potluck.promises)


def _plenty(surplus: float, write: Writer) -> str:
    return write("over-by", count=int(surplus)) if surplus >= 1 else write("enough")


def _line(promise: Promise, potluck: Potluck, write: Writer) -> dict[str, Any]:
    amount = write.number(promise.servings) if promise.servings else (promise.quantity or "").strip()
    who = write.cooks(promise) if promise.sharers else _who(promise.guest, write.cooks(promise), potluck, write)
    if len(amount) > LONG_AMOUNT:  # in the narrow column on the right it would push the dish away
        who, amount = f"{who} · {amount}", ""
    return {"dish": write.called(promise), "who": who, "amount": amount, "open": False}


def _bar(potluck: Potluck, plan: Plan, write: Writer) -> dict[str, Any] | None:
    if not potluck.bar:
        return None
    combos = (plan.get("bar") or {}).get("combos") or ()
    possible = [write.goods(c["name"]) for c in combos if c["possible"]]
    return {
        "title": write("bar-title", base=write.goods(potluck.bar.base)),
        "possible": write("bar-possible", combos=write.listed(possible)) if possible else "",
        "next": _next_toppings((plan.get("bar") or {}).get("next_toppings") or (), write),
    }


def _next_toppings(steps: Sequence[Mapping[str, Any]], write: Writer) -> list[str]:
    """Each step counts on the ones before it; those that open nothing by themselves go with the next that does."""
    out: list[str] = []
    waiting: list[str] = []
    for step in steps:
        waiting.append(write.goods(step["topping"]))
        if step["opens"]:
            toppings, combos = write.listed(waiting), write.listed(write.goods(c) for c in step["opens"])
            out.append(write("bar-opens-then" if out else "bar-opens", topping=toppings, combos=combos))
            waiting = []
    return out[:MOST_STEPS]


def _number(row: Mapping[str, Any] | None, key: str) -> float:
    value = float((row or {}).get(key) or 0.0)
    return value if math.isfinite(value) else 0.0


def _whole(value: float) -> int:
    """Servings people read are whole; a part of one counts as one, as somebody has to bring it."""
    return math.ceil(value - 1e-6)
