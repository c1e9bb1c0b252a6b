"""Which dish of the list somebody's words name."""

from __future__ import annotations

from rapidfuzz import fuzz

from bot.context import Turn
from planning.potluck import Promise

SAME_WORD = 85


def dish_named(turn: Turn, about: str, among: tuple[Promise, ...]) -> Promise | None:
    """The one dish these words name, by most of its words; one's own goes before others'."""
    near = dishes_named(turn, about, among)
    if len(near) > 1:
        near = [p for p in near if p.guest == turn.me] or near
    return near[0] if len(near) == 1 else None


def dishes_named(turn: Turn, about: str, among: tuple[Promise, ...]) -> list[Promise]:
    """All dishes these words name equally well: both pies for "the pies"."""
    spoken = [w.strip('.,;:!?()"“”«»¿¡').removesuffix("'s").removesuffix("\u2019s") for w in about.casefold().split()]

    def named(promise: Promise) -> int:
        words = promise.dish.casefold().split()
        return sum(any(fuzz.ratio(w, s) >= SAME_WORD for s in spoken) for w in words if len(w) > 2)

    best = max((named(p) for p in among), default=0)
    return [p for p in among if named(p) == best > 0]
