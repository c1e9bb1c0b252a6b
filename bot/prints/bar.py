"""The bar's menu on paper: what can be built today and of what, each topping with its amount and what it contains."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from bot.prints.cards import ListedOf, allergen_lines, also_line, listed_by_planning
from bot.prints.eating import base_of, stays_away
from bot.prints.qr import qr_svg
from bot.prints.say import Writer, apart
from planning.bar import combos_for, topping_anywhere
from planning.portions.wanted import base_item
from planning.potluck import Bar, Combo, Potluck, Promise

Plan = Mapping[str, Any]


def combo_toppings(potluck: Potluck) -> dict[str, tuple[str, ...]]:
    """The toppings of every combination of the bar, by its name; nothing without a bar."""
    return {c.name: c.toppings for c in _combos(potluck.bar)} if potluck.bar else {}


def bar_menu_data(
    potluck: Potluck, plan: Plan, write: Writer, listed: ListedOf = listed_by_planning, link: str | None = None
) -> dict[str, Any]:
    bar = potluck.bar
    planned = plan.get("bar") or {}
    combos = _combo_cards(potluck, planned.get("combos") or (), write)
    return {
        "page": write.page,
        "title": write("bar-title", base=write.goods(bar.base) if bar else ""),
        "subtitle": f"{write.title} · {write.when}",
        "combos_title": write("bar-possible"),
        "combos": [c for c in combos if c["possible"]],
        "almost_title": write("bar-almost"),
        "almost": [c for c in combos if not c["possible"]],
        "toppings_title": write("bar-contents"),
        "toppings": _rows(potluck, plan, write, listed),
        "heads": [write(f"bar-head-{h}") for h in ("topping", "who", "amount")],
        "half": write("bar-half"),
        "footer": write("card-footer"),
        "empty": "" if bar else write("bar-none"),
        "qr": qr_svg(link),
        "qr_text": write("qr") if link else "",
    }


def _combo_cards(potluck: Potluck, planned: Iterable[Mapping[str, Any]], write: Writer) -> list[dict[str, Any]]:
    """The combinations that can be built, and those which lack one topping; what of them is not sure to come."""
    inside = combo_toppings(potluck)
    away = {t.name.casefold() for t in potluck.bar.toppings if stays_away(t.guest, potluck)} if potluck.bar else set()
    out = []
    for combo in planned:
        lacking = combo.get("missing") or ()
        if not combo["possible"] and len(lacking) != 1:
            continue
        toppings = combo.get("toppings") or inside.get(combo["name"]) or ()
        unsure = [t for t in toppings if t.casefold() in away]
        out.append(
            {
                "name": write.goods(combo["name"]),
                "possible": bool(combo["possible"]),
                "toppings": write.listed(_portion(potluck, t, write) for t in toppings),
                "missing": write("bar-missing", toppings=write.listed(map(write.goods, lacking))) if lacking else "",
                "unsure": write("bar-unsure", toppings=write.listed(map(write.goods, unsure))) if unsure else "",
            }
        )
    return out


def _portion(potluck: Potluck, topping: str, write: Writer) -> str:
    """A topping with what one who takes it puts on, where the table knows it."""
    row = topping_anywhere(potluck.bar.base, topping) if potluck.bar else None
    if row is None:
        return write.goods(topping)
    amount = write.quantity({"value": row.amount, "unit": row.unit})
    return write("bar-portion", topping=write.goods(topping), amount=amount)


def _rows(potluck: Potluck, plan: Plan, write: Writer, listed: ListedOf) -> list[dict[str, Any]]:
    """The base first, as nobody at the bar eats without it, then the toppings."""
    amounts = {a["topping"]: a for a in (plan.get("bar") or {}).get("amounts") or ()}
    out = []
    base = base_of(potluck)
    for number, topping in enumerate(potluck.bar.toppings if potluck.bar else ()):
        what = Promise(f"topping:{number}", topping.guest or "", topping.name, "topping")
        total = (amounts.get(topping.name) or {}).get("total")
        out.append(_row(what, write.quantity(total), potluck, write, listed))
    return [_row(base, base_amount(potluck, plan, write), potluck, write, listed), *out] if base else out


def _row(what: Promise, amount: str, potluck: Potluck, write: Writer, listed: ListedOf) -> dict[str, Any]:
    found = listed(what)
    away = stays_away(what.guest, potluck)
    who = write.name(what.guest) if what.guest else write("nobody-yet")
    return {
        "name": apart(write.goods(what.dish)),
        "who": write("not-coming", name=who) if away else who,
        "open": not what.guest or away,
        "amount": amount,
        "contains": list(filter(None, (*allergen_lines(found, write), also_line(found, write)))),
    }


def base_amount(potluck: Potluck, plan: Plan, write: Writer) -> str:
    """What the plan reckons of the base for everybody, as it is bought; nothing where the plan has no figure."""
    name = base_item(potluck.bar.base).name if potluck.bar else ""
    row: Mapping[str, Any] = next((r for r in plan.get("portions") or () if r.get("item") == name), {})
    return write.quantity(row.get("buy"))


def _combos(bar: Bar) -> Iterable[Combo]:
    return bar.combos if bar.combos is not None else combos_for(bar.base)
