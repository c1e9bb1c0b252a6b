"""Potlucks as rows and back, by hand and exactly.

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
    Bar,
    Combo,
    Declined,
    Guest,
    HeatStep,
    Kitchen,
    Money,
    Need,
    Party,
    PastAnswer,
    Payment,
    Potluck,
    Price,
    Promise,
    Stage,
    Topping,
)

Row = dict[str, Any]

_STRINGS = tuple[str, ...]


class _More:
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


def _columns(table: Table, *also: str, without: Sequence[str] = ()) -> set[str]:
    return ({c.name for c in table.columns} | set(also)) - set(without) - {"potluck_id", "position", "more"}


_guest_more = _More(Guest, _columns(schema.guest, "party"))
_promise_more = _More(Promise, _columns(schema.promise))
_topping_more = _More(Topping, _columns(schema.topping))
_past_more = _More(PastAnswer, _columns(schema.past_answer))
_payment_more = _More(Payment, _columns(schema.payment, "money"))
_declined_more = _More(Declined, _columns(schema.declined))
_potluck_more = _More(
    Potluck,
    _columns(schema.potluck, "budget", "guests", "promises", "bar", "history", "payments", "declined"),
)
_bar_more = _More(Bar, {"base", "toppings", "combos", "most_asks"})
_BAR = "bar"


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


def own_fields(p: Potluck) -> tuple[Any, ...]:
    """All of a potluck that stands in its own row, to see whether that row changed."""
    bar = p.bar
    return (
        p.starts_at,
        p.timezone,
        p.host,
        p.title,
        p.ends_at,
        p.place,
        p.stage,
        p.mealtime,
        p.setting,
        p.outdoor_temp_f,
        p.units,
        p.service_level,
        p.budget,
        p.cohosts,
        p.expected_people,
        p.answer_by,
        None if bar is None else (bar.base, bar.combos, bar.most_asks, _bar_more.out(bar)),
        p.items,
        p.kitchen,
        p.answer_odds,
        p.prices,
        p.previous,
        p.last_number,
        _potluck_more.out(p),
    )


def potluck_row(p: Potluck) -> Row:
    """The potluck's own row, without its revision and its lists."""
    bar = p.bar
    more = _potluck_more.out(p)
    if bar is not None and (bar_more := _bar_more.out(bar)):
        more[_BAR] = bar_more
    return {
        "id": p.id,
        "starts_at": p.starts_at,
        "timezone": p.timezone,
        "host": p.host,
        "title": p.title,
        "ends_at": p.ends_at,
        "place": p.place,
        "stage": p.stage.value,
        "mealtime": p.mealtime,
        "setting": p.setting,
        "outdoor_temp_f": p.outdoor_temp_f,
        "units": p.units,
        "service_level": p.service_level,
        "budget_amount": None if p.budget is None else str(p.budget.amount),
        "budget_currency": None if p.budget is None else p.budget.currency,
        "cohosts": list(p.cohosts),
        "expected_people": p.expected_people,
        "answer_by": p.answer_by,
        "bar_base": None if bar is None else bar.base,
        "bar_combos": None if bar is None else encode(bar.combos),
        "bar_most_asks": None if bar is None else bar.most_asks,
        "items": list(p.items),
        "kitchen": encode(p.kitchen),
        "answer_odds": encode(p.answer_odds),
        "prices": encode(p.prices),
        "previous": encode(p.previous),
        "last_number": p.last_number,
        "more": more,
    }


def potluck_from(r: Any, parts: Mapping[str, Sequence[Any]]) -> Potluck:
    """`parts`: the elements of each list by its table's name, in order."""
    more = dict(r.more)
    bar_more = more.pop(_BAR, {})
    bar = None
    if r.bar_base is not None:
        bar = Bar(
            base=r.bar_base,
            toppings=tuple(parts["topping"]),
            combos=decode(tuple[Combo, ...] | None, r.bar_combos),
            most_asks=r.bar_most_asks,
            **_bar_more.back(bar_more),
        )
    return Potluck(
        id=r.id,
        starts_at=r.starts_at,
        timezone=r.timezone,
        host=r.host,
        title=r.title,
        ends_at=r.ends_at,
        place=r.place,
        stage=Stage(r.stage),
        mealtime=r.mealtime,
        setting=r.setting,
        outdoor_temp_f=r.outdoor_temp_f,
        units=r.units,
        service_level=r.service_level,
        budget=None if r.budget_amount is None else Money(Decimal(r.budget_amount), r.budget_currency),
        cohosts=tuple(r.cohosts),
        guests=tuple(parts["guest"]),
        expected_people=r.expected_people,
        answer_by=r.answer_by,
        promises=tuple(parts["promise"]),
        bar=bar,
        items=tuple(r.items),
        kitchen=decode(Kitchen, r.kitchen),
        history=tuple(parts["past_answer"]),
        answer_odds=r.answer_odds,
        prices=decode(Mapping[str, Price], r.prices),
        payments=tuple(parts["payment"]),
        previous=r.previous,
        declined=tuple(parts["declined"]),
        last_number=r.last_number,
        **_potluck_more.back(more),
    )
