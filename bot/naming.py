"""Which dish of the list somebody's words name."""

from __future__ import annotations

import re

from rapidfuzz import fuzz

from bot.context import Turn
from planning.dishes import lookup
from planning.potluck import Promise

SAME_WORD = 85


def dish_named(turn: Turn, about: str, among: tuple[Promise, ...]) -> Promise | None:
    """The one dish these words name, by most of its words; one's own goes before others'."""
    near = dishes_named(turn, about, among)
    if len(near) > 1:
        near = [p for p in near if p.guest == turn.me] or near
    return near[0] if len(near) == 1 else None


def names_another(about: str, found: Promise) -> bool:
    """Whether words name another dish of the same sort: of "potato salad" the noodle salad is no part.

    Only where the head alone is said with another word before it, and the two together are a dish of the tables.
    """
    head = re.split(r",| with | con ", found.dish.casefold())[0].split()
    said = re.findall(r"[^\W\d_]+", about.casefold())
    if len(head) < 2 or set(head[:-1]) & set(said):
        return False
    before = next((said[n - 1] for n, word in enumerate(said) if n and word == head[-1]), "")
    return bool(before) and lookup(f"{before} {head[-1]}").dish is not None


def dishes_named(turn: Turn, about: str, among: tuple[Promise, ...]) -> list[Promise]:
    """All dishes these words name equally well: both pies for "the pies"."""
    spoken = [w.strip('.,;:!?()"“”«»¿¡').removesuffix("'s").removesuffix("\u2019s") for w in about.casefold().split()]

    def named(promise: Promise) -> int:
        words = promise.dish.casefold().split()
        return sum(any(fuzz.ratio(w, s) >= SAME_WORD for s in spoken) for w in words if len(w) > 2)

    best = max((named(p) for p in among), default=0)
    return [p for p in among if named(p) == best > 0]
