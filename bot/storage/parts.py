"""The lists inside a potluck, element by element, as rows and back.

A field of a value without a column of its own (one added since the last migration) travels in the
row's `more`, so that a new field of the domain never gets lost.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Any

from sqlalchemy import Table

from bot.storage import schema
from bot.storage.codec import decode, defaults, encode, field_decoders
from planning.potluck import (
    Answer,
    Declined,
    Guest,
    HeatStep,
    Money,
    Need,
    Party,
    PastAnswer,
    Payment,
    Potluck,
    Promise,
    Topping,
)

Row = dict[str, Any]


class More:
    """The fields of `cls` that have no column: what `more` must carry."""

    def __init__(self, cls: type, known: set[str]) -> None:
        self._defaults = defaults(cls)
        decoders = field_decoders(cls)
        self.names = tuple(n for n in decoders if n not in known)
        self._decoders = decoders

    def out(self, value: Any) -> Row:
        return {n: encode(v) for n in self.names if (v := getattr(value, n)) != self._defaults[n]}

    def back(self, more: Mapping[str, Any]) -> Row:
        return {n: self._decoders[n](v) for n, v in more.items() if n in self._decoders}


def columns(table: Table, *also: str, without: Sequence[str] = ()) -> set[str]:
    return ({c.name for c in table.columns} | set(also)) - set(without) - {"potluck_id", "position", "more"}


_guest_more = More(Guest, columns(schema.guest, "party"))
_promise_more = More(Promise, columns(schema.promise))
_topping_more = More(Topping, columns(schema.topping))
_past_more = More(PastAnswer, columns(schema.past_answer))
_payment_more = More(Payment, columns(schema.payment, "money"))
_declined_more = More(Declined, columns(schema.declined))


def guest_row(g: Guest) -> Row:
    return {
        "id": g.id,
        "name": g.name,
        "answer": g.answer.value,
        "adults": g.party.adults,
        "teens": g.party.teens,
        "children": g.party.children,
        "toddlers": g.party.toddlers,
        "infants": g.party.infants,
        "diets": list(g.diets),
        "allergies": list(g.allergies),
        "needs": encode(g.needs),
        "pregnant": g.pregnant,
        "travel_min": g.travel_min,
        "can_cook": g.can_cook,
        "has_oven": g.has_oven,
        "added_by": g.added_by,
        "username": g.username,
        "more": _guest_more.out(g),
    }


def guest_from(r: Any) -> Guest:
    return Guest(
        id=r.id,
        name=r.name,
        answer=Answer(r.answer),
        party=Party(r.adults, r.teens, r.children, r.toddlers, r.infants),
        diets=tuple(r.diets),
        allergies=tuple(r.allergies),
        needs=decode(tuple[Need, ...], r.needs) if r.needs else (),
        pregnant=r.pregnant,
        travel_min=r.travel_min,
        can_cook=r.can_cook,
        has_oven=r.has_oven,
        added_by=r.added_by,
        username=r.username,
        **_guest_more.back(r.more),
    )


def promise_row(p: Promise) -> Row:
    return {
        "id": p.id,
        "guest": p.guest,
        "dish": p.dish,
        "category": p.category,
        "servings": p.servings,
        "quantity": p.quantity,
        "ingredients": None if p.ingredients is None else list(p.ingredients),
        "heat": encode(p.heat),
        "arrives_at": p.arrives_at,
        "frozen_lb": p.frozen_lb,
        "serve": p.serve,
        "out_since": p.out_since,
        "out_min": p.out_min,
        "sharers": list(p.sharers),
        "more": _promise_more.out(p),
    }


def promise_from(r: Any) -> Promise:
    return Promise(
        id=r.id,
        guest=r.guest,
        dish=r.dish,
        category=r.category,
        servings=r.servings,
        quantity=r.quantity,
        ingredients=None if r.ingredients is None else tuple(r.ingredients),
        heat=decode(tuple[HeatStep, ...] | None, r.heat),
        arrives_at=r.arrives_at,
        frozen_lb=r.frozen_lb,
        serve=r.serve,
        out_since=r.out_since,
        out_min=r.out_min,
        sharers=tuple(r.sharers),
        **_promise_more.back(r.more),
    )


def topping_row(t: Topping) -> Row:
    return {"name": t.name, "guest": t.guest, "more": _topping_more.out(t)}


def topping_from(r: Any) -> Topping:
    return Topping(r.name, r.guest, **_topping_more.back(r.more))


def past_row(p: PastAnswer) -> Row:
    return {
        "date": p.date,
        "guest": p.guest,
        "category": p.category,
        "said": p.said,
        "came": p.came,
        "more": _past_more.out(p),
    }


def past_from(r: Any) -> PastAnswer:
    return PastAnswer(r.date, r.guest, r.category, r.said, r.came, **_past_more.back(r.more))


def payment_row(p: Payment) -> Row:
    return {
        "guest": p.guest,
        "amount": str(p.money.amount),
        "currency": p.money.currency,
        "what": p.what,
        "more": _payment_more.out(p),
    }


def payment_from(r: Any) -> Payment:
    return Payment(r.guest, Money(Decimal(r.amount), r.currency), r.what, **_payment_more.back(r.more))


def declined_row(d: Declined) -> Row:
    return {"guest": d.guest, "category": d.category, "more": _declined_more.out(d)}


def declined_from(r: Any) -> Declined:
    return Declined(r.guest, r.category, **_declined_more.back(r.more))


@dataclass(frozen=True)
class Part:
    """A list inside a potluck: its table, how to reach it and how one element becomes a row.

    `unique` names the attribute no two elements may share (None: equal elements are allowed).
    """

    table: Table
    of: Callable[[Potluck], Sequence[Any]]
    row: Callable[[Any], Row]
    back: Callable[[Any], Any]
    unique: str | None = None


PARTS = (
    Part(schema.guest, lambda p: p.guests, guest_row, guest_from, "id"),
    Part(schema.promise, lambda p: p.promises, promise_row, promise_from, "id"),
    Part(schema.topping, lambda p: p.bar.toppings if p.bar else (), topping_row, topping_from),
    Part(schema.past_answer, lambda p: p.history, past_row, past_from),
    Part(schema.payment, lambda p: p.payments, payment_row, payment_from),
    Part(schema.declined, lambda p: p.declined, declined_row, declined_from),
)
