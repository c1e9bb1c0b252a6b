"""Changes of who brings what."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

from planning.changes.guests import meet
from planning.changes.rules import (
    LONGEST_NAME,
    MOST_PROMISES,
    MOST_SERVINGS,
    Actor,
    Refusal,
    may_manage,
    next_id,
    require_open,
    require_voice,
    tidy,
    without,
)
from planning.potluck import CATEGORIES, Answer, Declined, HeatStep, Potluck, Promise


def promise(
    potluck: Potluck,
    by: Actor,
    guest_id: str,
    dish: str,
    category: str,
    servings: float | None = None,
    quantity: str | None = None,
    **more: object,
) -> tuple[Potluck, Promise]:
    """A new promise. Promising does not say one comes: people send dishes too.

    `more` are further fields of Promise as a cook may state them (ingredients, heat, serve, ...).
    """
    require_open(potluck)
    if guest_id == by.id:
        potluck = meet(potluck, by)
    guest = potluck.guest(guest_id)
    if guest is None:
        raise Refusal("refused-unknown-person", name="")
    require_voice(potluck, by, guest)
    if category not in CATEGORIES:
        raise Refusal("refused-category")
    if len(potluck.promises) >= MOST_PROMISES:
        raise Refusal("refused-too-many-promises", most=MOST_PROMISES)
    potluck, new_id = next_id(potluck, "p")
    made = Promise(
        new_id,
        guest_id,
        tidy(dish, LONGEST_NAME, empty="refused-no-dish"),
        category,
        _servings(servings),
        quantity and tidy(quantity, 64, empty="refused-empty"),
        **more,  # type: ignore[arg-type]
    )
    return replace(potluck, promises=(*potluck.promises, made)), made


def _servings(servings: float | None) -> float | None:
    if servings is not None and not 0 < servings <= MOST_SERVINGS:
        raise Refusal("refused-servings", most=MOST_SERVINGS)
    return servings


def owned(potluck: Potluck, by: Actor, promise_id: str) -> Promise:
    """The promise, if `by` may change it: it is theirs, or they share it, speak for its cook, or host."""
    found = potluck.promise(promise_id)
    if found is None:
        raise Refusal("refused-no-promise")
    if by.id in (found.guest, *found.sharers) or may_manage(potluck, by):
        return found
    cook = potluck.guest(found.guest)
    if cook is None or cook.added_by != by.id:
        raise Refusal("refused-not-your-dish", dish=found.dish, name=cook.name if cook else "")
    return found


def _put(potluck: Potluck, changed: Promise) -> Potluck:
    return replace(potluck, promises=tuple(changed if p.id == changed.id else p for p in potluck.promises))


def change_promise(
    potluck: Potluck,
    by: Actor,
    promise_id: str,
    *,
    dish: str | None = None,
    category: str | None = None,
    servings: float | None = None,
    quantity: str | None = None,
    ingredients: tuple[str, ...] | None = None,
    heat: tuple[HeatStep, ...] | None = None,
    arrives_at: datetime | None = None,
    frozen_lb: float | None = None,
    serve: str | None = None,
) -> Potluck:
    """Change what is given; None leaves a field as it is. A new amount in servings drops an old quantity."""
    require_open(potluck)
    was = owned(potluck, by, promise_id)
    if category is not None and category not in CATEGORIES:
        raise Refusal("refused-category")
    if frozen_lb is not None and not 0 <= frozen_lb <= 100:
        raise Refusal("refused-weight")
    said_amount = servings is not None or quantity is not None
    return _put(
        potluck,
        replace(
            was,
            dish=tidy(dish, LONGEST_NAME, empty="refused-no-dish") if dish else was.dish,
            category=category or was.category,
            servings=_servings(servings) if said_amount else was.servings,
            quantity=quantity if said_amount else was.quantity,
            ingredients=was.ingredients if ingredients is None else ingredients,
            heat=was.heat if heat is None else heat,
            arrives_at=arrives_at or was.arrives_at,
            frozen_lb=was.frozen_lb if frozen_lb is None else frozen_lb,
            serve=serve or was.serve,
        ),
    )


def drop_promise(potluck: Potluck, by: Actor, promise_id: str) -> Potluck:
    """Of a shared promise only one's own part is dropped: the other still brings it."""
    require_open(potluck)
    was = owned(potluck, by, promise_id)
    if by.id in was.sharers:
        return _put(potluck, replace(was, sharers=without(was.sharers, by.id)))
    if by.id == was.guest and was.sharers:
        return _put(potluck, replace(was, guest=was.sharers[0], sharers=was.sharers[1:]))
    return replace(potluck, promises=tuple(p for p in potluck.promises if p.id != promise_id))


def give_promise(potluck: Potluck, by: Actor, promise_id: str, to: str) -> Potluck:
    """Hand a promise to somebody else who is known here."""
    require_open(potluck)
    was = owned(potluck, by, promise_id)
    taker = potluck.guest(to)
    if taker is None:
        raise Refusal("refused-unknown-person", name="")
    if taker.answer is Answer.NO:
        raise Refusal("refused-not-coming", name=taker.name)
    return _put(potluck, replace(was, guest=to, sharers=without(was.sharers, to)))


def share_promise(potluck: Potluck, by: Actor, promise_id: str, with_: str) -> Potluck:
    """Two (or more) bring it together."""
    require_open(potluck)
    was = owned(potluck, by, promise_id)
    other = potluck.guest(with_)
    if other is None:
        raise Refusal("refused-unknown-person", name="")
    if with_ in (was.guest, *was.sharers):
        raise Refusal("refused-already-shared", name=other.name, dish=was.dish)
    return _put(potluck, replace(was, sharers=(*was.sharers, with_)))


def put_out(potluck: Potluck, by: Actor, promise_id: str, now: datetime) -> Potluck:
    """The dish is on the table: its clock runs. Anybody who brings something may say so of any dish."""
    found = potluck.promise(promise_id)
    if found is None:
        raise Refusal("refused-no-promise")
    if potluck.guest(by.id) is None and not may_manage(potluck, by):
        raise Refusal("refused-not-guest")
    return potluck if found.out_since is not None else _put(potluck, replace(found, out_since=now))


def put_on_heat(potluck: Potluck, by: Actor, promise_id: str, at: datetime) -> Potluck:
    """The dish went on the heat at this instant, whatever was planned. Anybody who brings something may say so."""
    found = potluck.promise(promise_id)
    if found is None:
        raise Refusal("refused-no-promise")
    if potluck.guest(by.id) is None and not may_manage(potluck, by):
        raise Refusal("refused-not-guest")
    return _put(potluck, replace(found, began_at=at))


def put_away(potluck: Potluck, by: Actor, promise_id: str, now: datetime) -> Potluck:
    """The dish is cold or hot again: the minutes it was out stay counted."""
    found = potluck.promise(promise_id)
    if found is None:
        raise Refusal("refused-no-promise")
    if potluck.guest(by.id) is None and not may_manage(potluck, by):
        raise Refusal("refused-not-guest")
    if found.out_since is None:
        return potluck
    minutes = max(0.0, (now - found.out_since).total_seconds() / 60)
    return _put(potluck, replace(found, out_since=None, out_min=found.out_min + minutes))


def decline(potluck: Potluck, by: Actor, category: str) -> Potluck:
    """Somebody was asked for something of this category and said no; they are not asked for it again."""
    require_open(potluck)
    said = Declined(by.id, category)
    return potluck if said in potluck.declined else replace(potluck, declined=(*potluck.declined, said))
