"""Changes of the toppings bar."""

from __future__ import annotations

from dataclasses import replace

from planning.changes.guests import meet
from planning.changes.rules import (
    LONGEST_NAME,
    Actor,
    Refusal,
    may_manage,
    require_manager,
    require_open,
    require_voice,
    tidy,
)
from planning.potluck import Bar, Combo, Potluck, Topping

MOST_TOPPINGS = 120


def open_bar(potluck: Potluck, by: Actor, base: str) -> Potluck:
    """Choose the base. Toppings people have taken stay theirs when the base changes."""
    require_manager(potluck, by)
    require_open(potluck)
    clean = tidy(base, LONGEST_NAME, empty="refused-no-base").casefold()
    if potluck.bar is None:
        return replace(potluck, bar=Bar(clean))
    taken = tuple(t for t in potluck.bar.toppings if t.guest is not None)
    return replace(potluck, bar=replace(potluck.bar, base=clean, toppings=taken, combos=None))


def close_bar(potluck: Potluck, by: Actor) -> Potluck:
    require_manager(potluck, by)
    require_open(potluck)
    return replace(potluck, bar=None)


def _bar(potluck: Potluck) -> Bar:
    if potluck.bar is None:
        raise Refusal("refused-no-bar")
    return potluck.bar


def take_topping(potluck: Potluck, by: Actor, name: str, guest_id: str | None = None) -> Potluck:
    """Promise a topping; one that somebody else has is refused with their name."""
    require_open(potluck)
    bar = _bar(potluck)
    guest_id = guest_id or by.id
    if guest_id == by.id:
        potluck = meet(potluck, by)
    guest = potluck.guest(guest_id)
    if guest is None:
        raise Refusal("refused-unknown-person", name="")
    require_voice(potluck, by, guest)
    clean = tidy(name, LONGEST_NAME, empty="refused-no-dish").casefold()
    held = next((t for t in bar.toppings if t.name == clean), None)
    if held is not None and held.guest not in (None, guest_id):
        holder = potluck.guest(held.guest)
        raise Refusal("refused-topping-taken", topping=clean, name=holder.name if holder else "")
    if held is None and len(bar.toppings) >= MOST_TOPPINGS:
        raise Refusal("refused-too-many-toppings", most=MOST_TOPPINGS)
    taken = Topping(clean, guest_id)
    toppings = tuple(taken if t.name == clean else t for t in bar.toppings)
    return replace(potluck, bar=replace(bar, toppings=toppings if held else (*bar.toppings, taken)))


def drop_topping(potluck: Potluck, by: Actor, name: str) -> Potluck:
    require_open(potluck)
    bar = _bar(potluck)
    held = _own_topping(potluck, by, name)
    return replace(potluck, bar=replace(bar, toppings=tuple(t for t in bar.toppings if t.name != held.name)))


def _own_topping(potluck: Potluck, by: Actor, name: str) -> Topping:
    """A topping that `by` may give back or away: theirs, of a person they added, or any for a host."""
    clean = name.casefold()
    held = next((t for t in _bar(potluck).toppings if t.name == clean), None)
    if held is None or held.guest is None:
        raise Refusal("refused-no-topping", topping=name)
    holder = potluck.guest(held.guest)
    if held.guest != by.id and not may_manage(potluck, by) and (holder is None or holder.added_by != by.id):
        raise Refusal("refused-not-your-dish", dish=clean, name=holder.name if holder else "")
    return held


def give_topping(potluck: Potluck, by: Actor, name: str, to: str) -> Potluck:
    """Hand a topping to somebody else who is known here."""
    require_open(potluck)
    held = _own_topping(potluck, by, name)
    if potluck.guest(to) is None:
        raise Refusal("refused-unknown-person", name="")
    bar = _bar(potluck)
    toppings = tuple(Topping(t.name, to) if t.name == held.name else t for t in bar.toppings)
    return replace(potluck, bar=replace(bar, toppings=toppings))


def add_topping(potluck: Potluck, by: Actor, name: str) -> Potluck:
    """The host puts a topping of their own on the list; nobody has it yet."""
    require_manager(potluck, by)
    require_open(potluck)
    bar = _bar(potluck)
    clean = tidy(name, LONGEST_NAME, empty="refused-no-dish").casefold()
    if any(t.name == clean for t in bar.toppings):
        return potluck
    if len(bar.toppings) >= MOST_TOPPINGS:
        raise Refusal("refused-too-many-toppings", most=MOST_TOPPINGS)
    return replace(potluck, bar=replace(bar, toppings=(*bar.toppings, Topping(clean))))


def add_combo(potluck: Potluck, by: Actor, name: str, toppings: tuple[str, ...], known: tuple[Combo, ...]) -> Potluck:
    """A combo of the host's own beside the `known` ones of the base."""
    require_manager(potluck, by)
    require_open(potluck)
    bar = _bar(potluck)
    clean = tidy(name, LONGEST_NAME, empty="refused-no-dish")
    parts = tuple(dict.fromkeys(tidy(t, LONGEST_NAME, empty="refused-no-dish").casefold() for t in toppings))
    if not parts:
        raise Refusal("refused-empty-combo")
    before = bar.combos if bar.combos is not None else known
    others = tuple(c for c in before if c.name.casefold() != clean.casefold())
    return replace(potluck, bar=replace(bar, combos=(*others, Combo(clean, parts))))
