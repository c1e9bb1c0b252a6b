"""What the picture of the table shows: what is missing, what is promised by whom, who can eat what."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from typing import Any

from bot.prints.bar import combo_toppings
from bot.prints.eating import base_of, diet_lines, stays_away
from bot.prints.say import Writer, apart
from planning.menu import kinds_missing, targets
from planning.potluck import CATEGORIES, Potluck, Promise

Plan = Mapping[str, Any]

LONG_AMOUNT = 14
MOST_STEPS = 3
LEAST_REACH, MOST_REACH = 0.28, 0.6
"""How far the bars reach beyond what is wanted, in parts of it."""


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
    carriers = _without_carrier(potluck, write)
    lines = len(potluck.promises) + 2 * len(blocks)
    columns, width = SHAPES[max(at_least_columns, 1 if lines <= 34 else 2 if lines <= 75 else 3) - 1]
    diets = diet_lines(potluck, plan, write, for_host=for_host)
    return {
        "title": write.title,
        "when": " · ".join(filter(None, (write.when, apart(potluck.place.strip())))),
        "people": _people(plan, write),
        "missing_title": write("missing") if missing or carriers else write("nothing-missing"),
        "missing": missing,
        "carriers": carriers,
        "reach": min(MOST_REACH, max([LEAST_REACH, *(b["extra"] for b in blocks)])),
        "columns": _balanced(blocks, columns),
        "width": width,
        "bar": _bar(potluck, plan, write),
        "diets_title": write("diets"),
        "diets": _side_by_side(diets, columns),
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


def _side_by_side(entries: Sequence[dict[str, Any]], columns: int) -> list[list[dict[str, Any]]]:
    """Each entry under the shortest column so far, so that a long one leaves no hole beside it."""
    out: list[list[dict[str, Any]]] = [[] for _ in range(columns)]
    tall = [0] * columns
    for entry in entries:
        shortest = tall.index(min(tall))
        out[shortest].append(entry)
        texts = (entry["who"], entry["unfit"], *entry["rest"], entry["short"])
        tall[shortest] += sum(1 + len(text) // 40 for text in texts if text) + 1
    return out


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


def _without_carrier(potluck: Potluck, write: Writer) -> list[str]:
    """What is promised only by people who can't come: it counts as promised, and somebody has to carry it."""
    dishes: dict[str, list[str]] = {}
    for promise in potluck.promises:
        if all(stays_away(g, potluck) for g in (promise.guest, *promise.sharers)):
            dishes.setdefault(promise.guest, []).append(write.called(promise))
    for topping in potluck.bar.toppings if potluck.bar else ():
        if topping.guest and stays_away(topping.guest, potluck):
            dishes.setdefault(topping.guest, []).append(apart(write.goods(topping.name)))
    return [write("no-carrier", name=write.name(g), dishes=write.listed(d)) for g, d in dishes.items()]


def _block(
    category: str, row: Mapping[str, Any] | None, potluck: Potluck, plan: Plan, write: Writer
) -> dict[str, Any] | None:
    promises = [p for p in potluck.promises if p.category == category]
    lines = [_line(p, potluck, write) for p in promises]
    if category == "topping" and potluck.bar:
        amounts = {a["topping"]: a for a in (plan.get("bar") or {}).get("amounts") or ()}
        lines += [
            {
                "dish": apart(write.goods(t.name)),
                "who": _who((t.guest,), write.name(t.guest), potluck, write) if t.guest else write("nobody-yet"),
                "amount": write.quantity((amounts.get(t.name) or {}).get("total")),
                "open": not t.guest or stays_away(t.guest, potluck),
            }
            for t in potluck.bar.toppings
        ]
    target = _number(row, "target_servings")
    if (base := base_of(potluck)) is not None and base.category == category:
        lines.insert(
            0,
            {
                "dish": write("bar-title", base=write.goods(base.dish)),
                "who": write.name(base.guest),
                "amount": write.number(_whole(target / targets()[category].servings)) if target > 0 else "",
                "open": False,
            },
        )
    # What the promises are good for: of plates and cups, the people the fewest of them cover.
    counted = (
        "covered_servings" if category == "supplies" and row and "covered_servings" in row else "promised_servings"
    )
    promised = _number(row, counted)
    if not lines and target <= 0:
        return None
    short = _lacking(row)
    surplus = max(0.0, promised - target)
    have, wanted, missing = _in_whole(promised, target, short)
    full = target if target > 0 else max(promised, 1.0)
    return {
        "category": write("category", category=category),
        "have": min(1.0, promised / full),
        "missing": min(1.0, max(0.0, short / full)) if target > 0 else 0.0,
        "extra": surplus / full if target > 0 else 0.0,
        "has_target": target > 0,
        "score": write("of-people" if category == "supplies" else "of-target", have=have, target=wanted)
        if target > 0
        else (write("servings", count=_whole(promised)) if promised else ""),
        "state": write("short-by", count=missing)
        if short > 0
        else (_plenty(have - wanted, write) if target > 0 else ""),
        "short": short > 0,
        "lacks": write("kinds-missing", kinds=kinds)
        if category == "supplies" and lines and short > 0 and (kinds := _kinds_missing(potluck, write))
        else "",
        "lines": lines,
    }


def _in_whole(promised: float, target: float, short: float) -> tuple[int, int, int]:
    """(promised, wanted, missing) as people read them: whole, and such that the three of them add up."""
    wanted, missing = _whole(target), _whole(short)
    if promised >= target:
        return max(wanted, math.floor(promised + 1e-6)), wanted, missing
    if abs(promised + short - target) < 0.1:
        return max(0, wanted - missing), wanted, missing
    return _whole(promised), wanted, missing


def _plenty(surplus: int, write: Writer) -> str:
    return write("over-by", count=surplus) if surplus >= 1 else write("enough")


def _who(guests: Sequence[str | None], name: str, potluck: Potluck, write: Writer) -> str:
    return write("not-coming", name=name) if all(stays_away(g, potluck) for g in guests) else name


def _line(promise: Promise, potluck: Potluck, write: Writer) -> dict[str, Any]:
    amount = write.number(promise.servings) if promise.servings else (promise.quantity or "").strip()
    cooks = (promise.guest, *promise.sharers)
    who = _who(cooks, write.cooks(promise), potluck, write)
    if len(amount) > LONG_AMOUNT:  # in the narrow column on the right it would push the dish away
        who, amount = f"{who} · {amount}", ""
    away = all(stays_away(g, potluck) for g in cooks)
    return {"dish": write.called(promise), "who": who, "amount": amount, "open": away}


def _bar(potluck: Potluck, plan: Plan, write: Writer) -> dict[str, Any] | None:
    if not potluck.bar:
        return None
    combos = (plan.get("bar") or {}).get("combos") or ()
    possible = [c["name"] for c in combos if c["possible"]]
    explained = _explained(potluck, write)
    return {
        "title": write("bar-title", base=write.goods(potluck.bar.base)),
        "possible_title": write("bar-possible") if possible else "",
        "possible": [explained(name) for name in possible],
        "next": _next_toppings((plan.get("bar") or {}).get("next_toppings") or (), explained, write),
    }


def _explained(potluck: Potluck, write: Writer) -> Callable[[str], str]:
    """A combination's name with what is in it: the names are ours, and nobody can guess from them."""
    inside = combo_toppings(potluck)

    def said(name: str) -> str:
        toppings = write.listed(write.goods(t) for t in inside.get(name, ()))
        return write("combo-of", combo=write.goods(name), toppings=toppings) if toppings else write.goods(name)

    return said


def _next_toppings(steps: Sequence[Mapping[str, Any]], explained: Callable[[str], str], write: Writer) -> list[str]:
    """Each step counts on the ones before it; those that open nothing by themselves go with the next that does."""
    out: list[str] = []
    waiting: list[str] = []
    for step in steps:
        waiting.append(write.goods(step["topping"]))
        if step["opens"]:
            toppings, combos = write.listed(waiting), write.listed(map(explained, step["opens"]))
            out.append(write("bar-opens-then" if out else "bar-opens", topping=toppings, combos=combos))
            waiting = []
    return out[:MOST_STEPS]


def _number(row: Mapping[str, Any] | None, key: str) -> float:
    value = float((row or {}).get(key) or 0.0)
    return value if math.isfinite(value) else 0.0


def _whole(value: float) -> int:
    """Servings people read are whole; a part of one counts as one, as somebody has to bring it."""
    return math.ceil(value - 1e-6)
