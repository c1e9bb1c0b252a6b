"""Potluck -> JSON object, in the order the file format lists its keys."""

from __future__ import annotations

from datetime import datetime
from typing import Any

from planning.potluck import AGE_GROUPS, Bar, Guest, HeatStep, Kitchen, Money, Oven, Potluck, Promise


def write(potluck: Potluck, now: datetime) -> dict[str, Any]:
    """Times carry their offset, so that an hour the clocks show twice stays unambiguous."""

    def at(instant: datetime | None) -> str | None:
        return None if instant is None else potluck.local(instant).isoformat()

    return {
        "format": 1,
        "id": potluck.id,
        "title": potluck.title,
        "starts_at": at(potluck.starts_at),
        "ends_at": at(potluck.ends_at),
        "timezone": potluck.timezone,
        "now": at(now),
        "place": potluck.place,
        "stage": potluck.stage.value,
        "mealtime": potluck.mealtime,
        "setting": potluck.setting,
        "outdoor_temp_f": potluck.outdoor_temp_f,
        "units": potluck.units,
        "service_level": potluck.service_level,
        "expected_people": potluck.expected_people,
        "answer_by": at(potluck.answer_by),
        "budget": _money(potluck.budget),
        "host": potluck.host,
        "cohosts": list(potluck.cohosts),
        "guests": [{**_guest(g), "arrived_at": at(g.arrived_at)} for g in potluck.guests],
        "promises": [_promise(p, at) for p in potluck.promises],
        "bar": _bar(potluck.bar),
        "items": list(potluck.items),
        "kitchen": _kitchen(potluck.kitchen),
        "kitchen_before": None if potluck.kitchen_before is None else _kitchen(potluck.kitchen_before),
        "history": [
            {"date": h.date, "guest": h.guest, "category": h.category, "said": h.said, "came": h.came}
            for h in potluck.history
        ],
        "answer_odds": None if potluck.answer_odds is None else dict(potluck.answer_odds),
        "prices": {
            item: {"amount": str(p.money.amount), "currency": p.money.currency, "per": p.per}
            for item, p in sorted(potluck.prices.items())
        },
        "payments": [
            {"guest": p.guest, "amount": _money(p.money), "for": p.what, **({"to": p.to} if p.to else {})}
            for p in potluck.payments
        ],
        "previous": potluck.previous,
        "declined": [{"guest": d.guest, "category": d.category} for d in potluck.declined],
        "weather": potluck.weather,
        "parking": potluck.parking,
        "door_code": potluck.door_code,
        "pin": None if potluck.pin is None else list(potluck.pin),
        "repeats": potluck.repeats,
        "hearty": potluck.hearty,
        "corrections": dict(potluck.corrections),
        "last_number": potluck.last_number,
    }


def _money(money: Money | None) -> dict[str, str] | None:
    return None if money is None else {"amount": str(money.amount), "currency": money.currency}


def _guest(g: Guest) -> dict[str, Any]:
    return {
        "id": g.id,
        "name": g.name,
        "answer": g.answer.value,
        **{group: getattr(g.party, group) for group in AGE_GROUPS},
        "diets": list(g.diets),
        "allergies": list(g.allergies),
        "needs": [{"need": n.need, "count": n.count, "severity": n.severity, "open": n.open} for n in g.needs],
        "pregnant": g.pregnant,
        "travel_min": g.travel_min,
        "can_cook": g.can_cook,
        "has_oven": g.has_oven,
        "added_by": g.added_by,
        "username": g.username,
    }


def _promise(p: Promise, at: Any) -> dict[str, Any]:
    return {
        "id": p.id,
        "guest": p.guest,
        "dish": p.dish,
        "category": p.category,
        "servings": p.servings,
        "quantity": p.quantity,
        "ingredients": None if p.ingredients is None else list(p.ingredients),
        "heat": None if p.heat is None else [_step(s) for s in p.heat],
        "arrives_at": at(p.arrives_at),
        "frozen_lb": p.frozen_lb,
        "serve": p.serve,
        "out_since": at(p.out_since),
        "out_min": p.out_min,
        "sharers": list(p.sharers),
        "takers": list(p.takers),
        "outcome": p.outcome,
        "returned": p.returned,
        "began_at": at(p.began_at),
    }


def _step(s: HeatStep) -> dict[str, Any]:
    return {
        "kind": s.kind,
        "minutes": s.minutes,
        "temp_f": s.temp_f,
        "pans": s.pans,
        "covered": s.covered,
        "at": s.at,
        "hands_min": s.hands_min,
        "movable": s.movable,
        "watts": s.watts,
        "own_appliance": s.own_appliance,
    }


def _bar(bar: Bar | None) -> dict[str, Any] | None:
    if bar is None:
        return None
    return {
        "base": bar.base,
        "toppings": [{"name": t.name, "guest": t.guest} for t in bar.toppings],
        "combos": None if bar.combos is None else [{"name": c.name, "toppings": list(c.toppings)} for c in bar.combos],
        "most_asks": bar.most_asks,
    }


def _oven(o: Oven) -> dict[str, Any]:
    known: dict[str, Any] = {"racks": o.racks, "pans_per_rack": o.pans_per_rack}
    return {**known, "off_f": o.off_f} if o.off_f else known


def _kitchen(k: Kitchen) -> dict[str, Any]:
    return {
        "ovens": [_oven(o) for o in k.ovens],
        "burners": k.burners,
        "grills": k.grills,
        "slow_cookers": [{"quarts": c.quarts, "watts": c.watts} for c in k.slow_cookers],
        "microwaves": [{"watts": m.watts} for m in k.microwaves],
        "circuits": [{"amps": c.amps, "volts": c.volts, "outlets": c.outlets} for c in k.circuits],
        "cooks": k.cooks,
        "fridge_l": k.fridge_l,
        "awake": list(k.awake),
    }
