"""A potluck as its own row and the rows of its lists, by hand and exactly."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from decimal import Decimal
from typing import Any

from bot.storage import schema
from bot.storage.codec import decode, encode
from bot.storage.parts import More, Row, columns
from planning.potluck import Bar, Combo, Kitchen, Money, Potluck, Price, Stage

_potluck_more = More(
    Potluck,
    columns(schema.potluck, "budget", "guests", "promises", "bar", "history", "payments", "declined"),
)
_bar_more = More(Bar, {"base", "toppings", "combos", "most_asks"})
_BAR = "bar"


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
