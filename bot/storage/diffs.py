"""What a change did to a potluck, thing by thing, and how to take it back.

Undo works on things (one guest, one promise, one setting), not on the whole potluck: taking back
what Ravi did leaves what Mei did since then, and is refused when both touched the same thing.
`previous` (the last plan) and `last_number` (ids are never used twice) are bookkeeping and are
neither compared nor undone.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import fields, replace
from typing import Any

from bot.storage.codec import decode, encode, field_decoders
from bot.storage.columns import dump
from bot.storage.errors import Conflict
from bot.storage.values import EntityChange
from planning.potluck import Bar, Declined, Guest, PastAnswer, Payment, Potluck, Promise, Topping


def _whole(value: Any) -> str:
    return dump(encode(value))


# kind, field of Potluck, element's type, what tells two elements apart
_LISTS: tuple[tuple[str, str, type, Callable[[Any], str]], ...] = (
    ("guest", "guests", Guest, lambda g: g.id),
    ("promise", "promises", Promise, lambda p: p.id),
    ("topping", "toppings", Topping, lambda t: t.name),
    ("cohost", "cohosts", str, lambda c: c),
    ("item", "items", str, lambda i: i),
    ("history", "history", PastAnswer, _whole),
    ("payment", "payments", Payment, _whole),
    ("declined", "declined", Declined, _whole),
)
_LIST_FIELDS = {name for _, name, _, _ in _LISTS}
_SKIPPED = {"id", "previous", "last_number", "bar", "prices"} | _LIST_FIELDS
_DECODERS = field_decoders(Potluck)
_FIELDS = tuple(f.name for f in fields(Potluck) if f.name not in _SKIPPED)
_BAR_DECODERS = field_decoders(Bar)
_PRICE = "price"
_FIELD = "field"
_BAR = "bar"
_ORDER = "order"


def _elements(potluck: Potluck, name: str) -> Sequence[Any]:
    if name == "toppings":
        return potluck.bar.toppings if potluck.bar else ()
    found: Sequence[Any] = getattr(potluck, name)
    return found


def _keys(elements: Sequence[Any], key: Callable[[Any], str]) -> list[str]:
    """Each element's key; the second of two equal ones is marked, so that keys are unique."""
    seen: dict[str, int] = {}
    keys = []
    for e in elements:
        k = key(e)
        n = seen[k] = seen.get(k, 0) + 1
        keys.append(_nth(k, n))
    return keys


def _nth(key: str, n: int) -> str:
    return key if n == 1 else f"{key}\x1f{n}"


def _bar_json(bar: Bar | None) -> Any:
    if bar is None:
        return None
    data = encode(bar)
    del data["toppings"]
    return data


def diff(before: Potluck, after: Potluck) -> tuple[EntityChange, ...]:
    """Everything that differs. `apply_diff(after, diff(before, after))` is `before` again."""
    changes: list[EntityChange] = []
    for name in _FIELDS:
        old, new = getattr(before, name), getattr(after, name)
        if old is not new and old != new:
            changes.append(EntityChange(_FIELD, name, encode(old), encode(new)))
    if before.bar is not after.bar:
        old, new = _bar_json(before.bar), _bar_json(after.bar)
        if old != new:
            changes.append(EntityChange(_BAR, "", old, new))
    if before.prices is not after.prices:
        for key in sorted({*before.prices, *after.prices}):
            old, new = encode(before.prices.get(key)), encode(after.prices.get(key))
            if old != new:
                changes.append(EntityChange(_PRICE, key, old, new))
    for kind, name, _, key_of in _LISTS:
        changes.extend(_list_diff(kind, _elements(before, name), _elements(after, name), key_of))
    return tuple(changes)


def _list_diff(kind: str, before: Sequence[Any], after: Sequence[Any], key: Callable[[Any], str]) -> list[EntityChange]:
    if before is after or before == after:
        return []
    if len(before) == len(after):
        differing = [i for i, (old, new) in enumerate(zip(before, after, strict=True)) if old is not new and old != new]
        if all(key(before[i]) == key(after[i]) for i in differing):  # nothing came, went or moved
            return [_changed_at(kind, before, after, i, key) for i in differing]
    old_keys, new_keys = _keys(before, key), _keys(after, key)
    old_at = {k: i for i, k in enumerate(old_keys)}
    new_at = {k: i for i, k in enumerate(new_keys)}
    changes = []
    for k in [*old_keys, *(k for k in new_keys if k not in old_at)]:
        i, j = old_at.get(k), new_at.get(k)
        old = None if i is None else before[i]
        new = None if j is None else after[j]
        if old is not new and old != new:
            changes.append(EntityChange(kind, k, encode(old), encode(new), i, j))
    stayed = [k for k in old_keys if k in new_at]
    moved = [k for k in new_keys if k in old_at]
    if stayed != moved:
        changes.append(EntityChange(_ORDER, kind, stayed, moved))
    return changes


def _changed_at(
    kind: str, before: Sequence[Any], after: Sequence[Any], at: int, key: Callable[[Any], str]
) -> EntityChange:
    name = key(before[at])
    again = sum(1 for e in before[:at] if key(e) == name)
    return EntityChange(kind, _nth(name, again + 1), encode(before[at]), encode(after[at]), at, at)


def apply_diff(potluck: Potluck, changes: Sequence[EntityChange], *, reverse: bool = True) -> Potluck:
    """Take the changes back (or, with `reverse=False`, make them again).

    Raises Conflict, naming the thing, when it is no longer as the change left it. What others did
    to other things stays.
    """
    wanted: dict[str, Any] = {}
    lists: dict[str, list[EntityChange]] = {}
    bar_change: EntityChange | None = None
    for c in changes:
        was, new = (c.after, c.before) if reverse else (c.before, c.after)
        if c.kind == _FIELD:
            if encode(getattr(potluck, c.key)) != was:
                raise Conflict(c.kind, c.key)
            wanted[c.key] = _DECODERS[c.key](new)
        elif c.kind == _PRICE:
            prices = dict(wanted.get("prices", potluck.prices))
            if encode(prices.get(c.key)) != was:
                raise Conflict(c.kind, c.key)
            prices.pop(c.key, None)
            if new is not None:
                prices |= _DECODERS["prices"]({c.key: new})
            wanted["prices"] = prices
        elif c.kind == _BAR:
            if _bar_json(potluck.bar) != was:
                raise Conflict(c.kind, c.key)
            bar_change = c
        else:
            lists.setdefault(c.key if c.kind == _ORDER else c.kind, []).append(c)
    toppings: tuple[Topping, ...] = potluck.bar.toppings if potluck.bar else ()
    for kind, name, cls, key in _LISTS:
        if kind in lists:
            after = _apply_list(_elements(potluck, name), lists[kind], kind, cls, key, reverse)
            if name == "toppings":
                toppings = after
            else:
                wanted[name] = after
    wanted["bar"] = _bar_after(potluck, bar_change, toppings, reverse)
    return replace(potluck, **wanted)


def _bar_after(
    potluck: Potluck, change: EntityChange | None, toppings: tuple[Topping, ...], reverse: bool
) -> Bar | None:
    if change is None:
        if potluck.bar is None and toppings:
            raise Conflict(_BAR, "")
        return None if potluck.bar is None else replace(potluck.bar, toppings=toppings)
    new = change.before if reverse else change.after
    if new is None:
        if toppings:  # somebody took something else at this bar meanwhile
            raise Conflict(_BAR, "")
        return None
    known = {n: _BAR_DECODERS[n](v) for n, v in new.items() if n in _BAR_DECODERS}
    return Bar(**known, toppings=toppings)


def _apply_list(
    elements: Sequence[Any],
    changes: Sequence[EntityChange],
    kind: str,
    cls: type,
    key: Callable[[Any], str],
    reverse: bool,
) -> tuple[Any, ...]:
    now = dict(zip(_keys(elements, key), elements, strict=True))
    added: list[tuple[int, str, Any]] = []
    order: Sequence[str] | None = None
    for c in changes:
        was, new = (c.after, c.before) if reverse else (c.before, c.after)
        at = c.before_at if reverse else c.after_at
        if c.kind == _ORDER:
            order = new
            continue
        current = now.get(c.key)
        if encode(current) != was:
            raise Conflict(kind, c.key)
        if new is None:
            del now[c.key]
        elif current is None:
            added.append((at if at is not None else len(now), c.key, decode(cls, new)))
        else:
            now[c.key] = decode(cls, new)
    keys = list(now)
    if order is not None:
        theirs = set(order)
        ranked = iter([k for k in order if k in now])
        keys = [next(ranked) if k in theirs else k for k in keys]
    for at, k, value in sorted(added, key=lambda a: a[0]):
        now[k] = value
        keys.insert(at, k)
    return tuple(now[k] for k in keys)
