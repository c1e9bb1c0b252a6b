"""The shopping list on paper: by shop section, with packages and boxes to tick."""

from __future__ import annotations

import csv
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any

from bot.prints.qr import qr_svg
from bot.prints.say import Writer
from planning.potluck import CATEGORIES, Potluck

SECTIONS = ("produce", "meat", "dairy", "bakery", "dry", "frozen", "drinks", "paper", "other")
"""In the order people usually walk through a shop (common practice, no source)."""


def shopping_data(potluck: Potluck, plan: Mapping[str, Any], write: Writer, link: str | None = None) -> dict[str, Any]:
    sections: dict[str, list[dict[str, Any]]] = {}
    sums: dict[str, float] = {}
    for row in plan.get("shopping") or ():
        section = str(row.get("section") or _section(row, plan))
        sections.setdefault(section, []).append(
            {
                "item": write.goods(row["item"]),
                "packages": write.quantity(row.get("packages")),
                "need": write.quantity(row.get("need")),
                "cost": write.money(row.get("cost")),
                "for": _for(row.get("for"), write),
            }
        )
        if cost := row.get("cost"):
            sums[cost.get("currency", "USD")] = sums.get(cost.get("currency", "USD"), 0.0) + float(cost["amount"])
    order = [s for s in SECTIONS if s in sections] + sorted(s for s in sections if s not in SECTIONS)
    return {
        "page": write.page,
        "title": write("shopping-title"),
        "subtitle": f"{write.title} · {write.when}",
        "heads": [write(f"shopping-{h}") for h in ("item", "buy", "need", "cost")],
        "sections": [{"title": write("section", section=s), "rows": sections[s]} for s in order],
        "empty": "" if sections else write("shopping-empty"),
        "total": write(
            "shopping-total",
            total=write.listed(write.money({"amount": f"{v:.2f}", "currency": c}) for c, v in sums.items()),
        )
        if sums
        else "",
        "no_price": write("shopping-no-price")
        if sums and any(not r["cost"] for rows in sections.values() for r in rows)
        else "",
        "estimated": write("shopping-estimated")
        if any(r.get("estimated") and r.get("cost") for r in plan.get("shopping") or ())
        else "",
        "qr": qr_svg(link),
        "qr_text": write("qr") if link else "",
    }


def _section(row: Mapping[str, Any], plan: Mapping[str, Any]) -> str:
    """By the longest known word in the item's name (the last of equally long ones), else by its category."""
    if found := section_of(str(row["item"])):
        return found
    item = str(row["item"])
    category = row.get("category") or next(
        (p.get("category") for p in plan.get("portions") or () if p.get("item") == item), None
    )
    usual = {"drink": "drinks", "supplies": "paper", "bread": "bakery", "salad": "produce"}
    return usual.get(str(category), "other")


def section_of(item: str) -> str | None:
    """ "orange juice" is found among the drinks, "oranges" among the fruit; None for an unknown item."""
    words = item.casefold().split()
    runs = ((length, end) for length in range(min(3, len(words)), 0, -1) for end in range(len(words), length - 1, -1))
    return next((s for n, end in runs if (s := _sections().get(" ".join(words[end - n : end])))), None)


@cache
def _sections() -> dict[str, str]:
    with (Path(__file__).parent / "shop_sections.csv").open(encoding="utf-8", newline="") as file:
        return {row["words"]: row["section"] for row in csv.DictReader(file)}


def _for(value: Any, write: Writer) -> str:
    if not value:
        return ""
    if isinstance(value, str):
        value = [value]
    if isinstance(value, Mapping):
        return write.sentence(value)
    return write.listed(
        write("category", category=v) if v in CATEGORIES else write.dish(v) if write.potluck.promise(v) else str(v)
        for v in value
    )
