"""JSON object -> Potluck."""

from __future__ import annotations

from collections import Counter
from datetime import UTC, datetime
from typing import Any
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from planning.potluck import (
    AGE_GROUPS,
    CATEGORIES,
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
    Price,
    Promise,
    Say,
    Stage,
)
from planning.potluck_file.fields import WEEK, Faults, Fields, Notes
from planning.potluck_file.places import read_bar, read_corrections, read_kitchen, read_pin


def read(document: object) -> tuple[Potluck, datetime, tuple[Say, ...]]:
    """The potluck, the file's `now` (a week before the start when missing) and warnings.

    Raises Faults with every fault of schema found: missing start, unknown zone or category, a
    doubled id, a promise of nobody, a negative party. Implausible values are left for the plan to
    report as conflicts.
    """
    notes = Notes()
    top = Fields(document, "", notes)
    if notes.faults:
        # Not an object at all: everything else would be missing, too, and none of it is worth a line.
        raise Faults(notes.faults)
    if top.get("format") not in (None, 1):
        notes.fault("file-format", value=str(top.get("format")))
    timezone = _zone_name(top, notes)
    zone = ZoneInfo(timezone)
    starts_at = top.instant("starts_at", zone)
    if starts_at is None and top.value.get("starts_at") is None:
        notes.fault("file-missing", place="starts_at")
    if top.value.get("guests") is None:
        notes.fault("file-missing", place="guests")
    now = top.instant("now", zone)
    guests = tuple(_guest(f, zone) for f in top.each("guests"))
    promises = tuple(_promise(f, zone) for f in top.each("promises"))
    ends_at = top.instant("ends_at", zone)
    if starts_at and ends_at and ends_at <= starts_at:
        notes.fault("file-ends-before-start", place="ends_at")
    service = top.number("service_level", 0.9)
    if not 0 < service < 1:
        notes.fault("file-service-level", place="service_level", value=service)
    potluck = Potluck(
        id=top.text("id", "file"),
        starts_at=starts_at or datetime(2000, 1, 1, tzinfo=UTC),
        timezone=timezone,
        host=top.text("host", None),
        title=top.text("title"),
        ends_at=ends_at,
        place=top.text("place"),
        stage=Stage(top.choice("stage", tuple(Stage), "planned")),
        mealtime=top.choice("mealtime", ("meal", "between-meals"), "meal"),
        setting=top.choice("setting", ("indoor", "outdoor"), "indoor"),
        outdoor_temp_f=top.number("outdoor_temp_f"),
        units=top.choice("units", ("us", "metric"), "us"),
        service_level=service,
        budget=_money(top.part("budget")),
        cohosts=top.texts("cohosts"),
        guests=guests,
        expected_people=top.count("expected_people", None) if top.value.get("expected_people") is not None else None,
        answer_by=top.instant("answer_by", zone),
        promises=promises,
        bar=read_bar(top.part("bar")),
        items=top.texts("items"),
        kitchen=read_kitchen(top.part("kitchen")),
        kitchen_before=read_kitchen(f) if (f := top.part("kitchen_before")) is not None else None,
        history=tuple(_past(f) for f in top.each("history")),
        answer_odds=_odds(top.part("answer_odds")),
        prices=_prices(top),
        payments=tuple(_payment(f) for f in top.each("payments")),
        previous=top.get("previous") if isinstance(top.get("previous"), dict) else None,
        declined=tuple(_declined(f) for f in top.each("declined")),
        last_number=top.count("last_number"),
        weather=top.text("weather"),
        parking=top.text("parking"),
        door_code=top.text("door_code"),
        pin=read_pin(top),
        repeats=top.choice("repeats", ("", "monthly"), ""),
        hearty=min(1.0, top.number("hearty", 0.0, low=0) or 0.0),
        corrections=read_corrections(top.part("corrections")),
    )
    top.asked.update(("format", "expected_people"))
    top.unknown_keys()
    _check_references(potluck, notes)
    if notes.faults:
        raise Faults(notes.faults)
    return potluck, now or potluck.starts_at - WEEK, tuple(notes.warnings)


def _zone_name(top: Fields, notes: Notes) -> str:
    name = top.text("timezone", None)
    if name is None:
        if top.value.get("timezone") is None:
            notes.fault("file-missing", place="timezone")
        return "UTC"
    try:
        ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError, OSError):
        notes.fault("file-unknown-zone", place="timezone", value=name)
        return "UTC"
    return str(name)


def _guest(f: Fields, zone: ZoneInfo) -> Guest:
    needs = tuple(
        Need(n.text("need"), max(n.count("count", 1), 1), n.text("severity", "") or "", n.flag("open", False))
        for n in f.each("needs")
    )
    party = Party(**{group: f.count(group, 1 if group == "adults" else 0) for group in AGE_GROUPS})
    guest = Guest(
        id=_id(f),
        name=f.text("name") or f.text("id"),
        answer=Answer(f.choice("answer", tuple(Answer), "none")),
        party=party,
        diets=f.texts("diets"),
        allergies=f.texts("allergies"),
        needs=needs,
        pregnant=f.flag("pregnant", False),
        travel_min=int(f.number("travel_min", 0, low=0)),
        can_cook=f.flag("can_cook", True),
        has_oven=f.flag("has_oven", True),
        added_by=f.text("added_by", None),
        username=f.text("username", None),
        arrived_at=f.instant("arrived_at", zone),
    )
    f.unknown_keys()
    return guest


def _id(f: Fields) -> str:
    value = f.text("id", None)
    if value is None:
        if f.value.get("id") is None:
            f.notes.fault("file-missing", place=f.at("id"))
        return ""
    return str(value)


def _promise(f: Fields, zone: ZoneInfo) -> Promise:
    steps = f.get("heat")
    made = Promise(
        id=_id(f),
        guest=f.text("guest", None) or "",
        dish=f.text("dish"),
        category=f.choice("category", CATEGORIES, None) or "",
        servings=f.number("servings", None, low=0),
        quantity=f.text("quantity", None),
        ingredients=f.texts_or_none("ingredients"),
        heat=None if steps is None else tuple(_step(s) for s in f.each("heat")),
        arrives_at=f.instant("arrives_at", zone),
        frozen_lb=f.number("frozen_lb", None, low=0),
        serve=f.choice("serve", ("hot", "cold", "room"), None),
        out_since=f.instant("out_since", zone),
        out_min=float(f.number("out_min", 0.0, low=0)),
        sharers=f.texts("sharers"),
        takers=f.texts("takers"),
        outcome=f.choice("outcome", ("", "ran-out", "came-back"), ""),
        returned=f.flag("returned", False),
        began_at=f.instant("began_at", zone),
    )
    for key in ("dish", "category"):
        if f.value.get(key) is None:
            f.notes.fault("file-missing", place=f.at(key))
    f.unknown_keys()
    return made


def _step(f: Fields) -> HeatStep:
    step = HeatStep(
        # A kind nobody knows is an impossible value too: one conflict of the kitchen, and the rest stands.
        kind=f.text("kind", "prep"),
        # A step of no or negative length is an impossible value, which the kitchen reports.
        minutes=int(f.number("minutes", 0)),
        temp_f=f.number("temp_f"),
        pans=f.count("pans", 1),
        covered=f.flag("covered", False),
        at=f.choice("at", ("venue", "home"), "venue"),
        hands_min=int(f.number("hands_min", 0, low=0)),
        movable=f.flag("movable", True),
        watts=None if f.value.get("watts") is None else f.count("watts", 0),
        own_appliance=f.flag("own_appliance", False),
    )
    f.asked.add("watts")
    f.unknown_keys()
    return step


def _money(f: Fields | None) -> Money | None:
    if f is None:
        return None
    amount = f.decimal("amount")
    if amount is None:
        f.notes.fault("file-missing", place=f.at("amount"))
        return None
    return Money(amount, f.text("currency", "USD"))


def _past(f: Fields) -> PastAnswer:
    came: Any = f.get("came")
    return PastAnswer(f.day("date"), f.text("guest"), f.text("category", None), f.text("said"), bool(came))


def _odds(f: Fields | None) -> dict[str, float] | None:
    if f is None:
        return None
    odds: dict[str, float] = {}
    for key in ("yes", "maybe", "none"):
        value = f.number(key)
        if value is not None and not 0 <= value <= 1:
            f.notes.fault("file-odds", place=f.at(key), value=value)
        elif value is not None:
            odds[key] = float(value)
    f.unknown_keys()
    return odds


def _prices(top: Fields) -> dict[str, Price]:
    part = top.part("prices")
    if part is None:
        return {}
    prices: dict[str, Price] = {}
    for item in part.value:
        f = part.part(item)
        money = _money(f)
        if f is not None and money is not None:
            prices[item] = Price(money, f.text("per", "each"))
    return prices


def _payment(f: Fields) -> Payment:
    # The amount is a money object; a bare amount beside a currency is read as well.
    value = f.get("amount")
    money = _money(Fields(value, f.at("amount"), f.notes) if isinstance(value, dict) else f)
    return Payment(f.text("guest"), money or Money(_zero()), f.text("for"), f.text("to"))


def _zero() -> Any:
    from decimal import Decimal

    return Decimal(0)


def _declined(f: Fields) -> Declined:
    return Declined(f.text("guest"), f.choice("category", CATEGORIES, "") or "")


def _check_references(potluck: Potluck, notes: Notes) -> None:
    for sort, ids in (("guests", [g.id for g in potluck.guests]), ("promises", [p.id for p in potluck.promises])):
        for doubled in sorted(i for i, n in Counter(ids).items() if n > 1 and i):
            notes.fault("file-doubled-id", place=sort, id=doubled)
    known = {g.id for g in potluck.guests}
    for p in potluck.promises:
        for who in (p.guest, *p.sharers):
            if who not in known:
                notes.fault("file-promise-of-nobody", id=p.id, guest=who)
    for key, named in (("host", potluck.host), *(("cohosts", c) for c in potluck.cohosts)):
        if named is not None and named not in known:
            notes.fault("file-unknown-guest", place=key, guest=named)
    for n, payment in enumerate(potluck.payments):
        for who in filter(None, (payment.guest, payment.to)):
            if who not in known:
                notes.fault("file-payment-of-nobody", place=f"payments[{n}]", guest=who)
    for n, declined in enumerate(potluck.declined):
        # Whoever is gone has said no for good: nothing in the plan depends on it.
        if declined.guest not in known:
            notes.warn("file-declined-by-nobody", place=f"declined[{n}]", guest=declined.guest)
    for topping in potluck.bar.toppings if potluck.bar else ():
        if topping.guest is not None and topping.guest not in known:
            notes.fault("file-unknown-guest", place="bar.toppings", guest=topping.guest)
