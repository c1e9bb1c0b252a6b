"""What the sourced rules say of one food in one state. Nothing is called safe: a figure, a limit, and who said so."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from planning.dishes import lookup
from planning.potluck import Potluck, Promise
from planning.safety.clocks import HOT_DAY_F, LIMIT_HOT_MIN, clock, warm_half
from planning.safety.standing_out import leftover_days
from planning.safety.thaw import thaw_days
from planning.safety.urgent import out_so_far
from planning.safety.words import has, perishable
from planning.theday.situation.foods import Food, as_promise

HOLD_HOT_F, HOLD_COLD_F = 140.0, 40.0
"""HOLD-06 and HOLD-07."""
HIGHEST_F = 165.0
"""COOK-01: the highest figure of the list, for what no row names."""
COLD_WATER_MIN_PER_LB = 30
"""THAW-05."""
TARGETS = (
    ("poultry", 165.0, "COOK-01"), ("stuffing", 165.0, "COOK-11"), ("casserole", 165.0, "COOK-14"),
    ("ground", 160.0, "COOK-02"), ("egg", 160.0, "COOK-12"), ("fish", 145.0, "COOK-15"),
)  # fmt: skip
"""The first that fits; they stand from the highest figure to the lowest, so the careful one wins."""
COLD_WORDS = ("salad", "deviled", "slaw", "dip", "sushi", "ceviche", "shrimp cocktail", "cheesecake", "custard")


@dataclass(frozen=True)
class State:
    """What was said of one food. `place`: out, car, sun, off, hot, cold, raw, frozen, freezer, thaw, limit or "".

    `since` an instant (UTC), `minutes` a length of time out of temperature, `f` a thermometer's figure in °F; `stage`
    "cook", "hold" or "" for that figure; `crystals` whether ice is still in it.
    """

    place: str = ""
    since: datetime | None = None
    minutes: float | None = None
    f: float | None = None
    stage: str = ""
    crystals: bool = False
    until: bool = False


@dataclass(frozen=True)
class Verdict:
    """`kind`: over, running, ask, keeps, limit by the clocks; hot, cold as kept; below, reached, cool, held, warm,
    chilled by a thermometer; raw, frozen, freezer.

    `minutes` out so far of `limit`; `by` until when it lasts (UTC); `f` what was measured and `target_f` what it has to
    reach; `lb` frozen pounds and `water_min` their minutes in cold water; `source` the row behind it.
    """

    food: Food
    kind: str
    source: str
    minutes: float = 0.0
    limit: int = 120
    by: datetime | None = None
    f: float | None = None
    target_f: float = HIGHEST_F
    lb: float | None = None
    water_min: int = 0
    days: int = 3
    state: State = State()


def verdict(potluck: Potluck, food: Food, state: State, now: datetime, outside_f: float | None = None) -> Verdict:
    """The rule for one food. `outside_f`: the weather, where the same words tell it."""
    dish = as_promise(food, potluck.promises)
    if state.f is not None:
        return _measured(potluck, food, dish, state, now, outside_f)
    limit, _ = limit_of(potluck, dish, state, outside_f)
    match state.place:
        case "raw":
            target, source = target_of(food)
            return Verdict(food, "raw", source, target_f=target, state=state)
        case "frozen" if _bakes(food) and now >= potluck.starts_at - BAKES:
            return Verdict(food, "icy", "COOK-14", target_f=target_of(food)[0], state=state)
        case "frozen" | "thaw":
            lb = dish.frozen_lb
            water = round((lb or 0) * COLD_WATER_MIN_PER_LB)
            return Verdict(food, "frozen", "THAW-05", lb=lb, water_min=water,
                           days=thaw_days(lb) if lb else 0, state=state)  # fmt: skip
        case "freezer":
            return Verdict(food, "freezer", "POWER-14", state=state)
        case "hot":
            limit = limit_of(potluck, dish, state, outside_f)[0]
            return Verdict(food, "hot", "HOLD-06", limit=limit, days=leftover_days(dish)[0], state=state)
        case "cold":
            limit = limit_of(potluck, dish, state, outside_f)[0]
            return Verdict(food, "cold", "HOLD-07", limit=limit, days=leftover_days(dish)[0], state=state)
    return _clocked(potluck, food, dish, state, now, outside_f)


BAKES = timedelta(hours=3)
"""So near the meal a casserole with ice inside is in the oven, or goes there (common practice, no source)."""
_BAKED = ("lasagna", "casserole", "gratin", "bake", "pie", "quiche", "enchilada", "macaroni", "moussaka", "burrito")


def _bakes(food: Food) -> bool:
    words = (food.english or food.label).casefold()
    return any(word in words for word in _BAKED)


def limit_of(potluck: Potluck, dish: Promise, state: State, outside_f: float | None = None) -> tuple[int, str]:
    """(minutes, rule): an hour in heat, told or to be reckoned with; two else."""
    ticking = clock(potluck, dish)
    told = outside_f if outside_f is not None else potluck.outdoor_temp_f
    hot = state.place == "sun" or (outside_f is not None and outside_f >= HOT_DAY_F)
    if state.place == "car":
        hot = hot or (
            told >= HOT_DAY_F if told is not None else warm_half(potluck.timezone, potluck.local(potluck.starts_at))
        )
    return (LIMIT_HOT_MIN, "TIME-02") if hot else (ticking.limit_min, ticking.rule)


def target_of(food: Food) -> tuple[float, str]:
    """(°F, rule) to reach inside; the highest figure where no row names it."""
    named = Promise("", "", f"{food.english or food.label}", "main")
    for tag, degrees, rule in TARGETS:
        if has(named, tag):
            return degrees, rule
    words = named.dish.casefold()
    if food.part:
        return 165.0, "COOK-01"
    if "ham" not in words.split() and "pulled" not in words:
        if any(w in words.split() for w in ("beef", "lamb", "veal", "steak", "brisket")):
            return 145.0, "COOK-04"
        if "pork" in words.split() and any(w in words for w in ("roast", "chop", "loin", "tenderloin", "steak")):
            return 145.0, "COOK-06"
    return HIGHEST_F, "COOK-01" if not has(named, "sauce") else "REHEAT-01"


def served_cold(food: Food) -> bool:
    english = food.english or food.label
    found = lookup(english).dish
    return (found is not None and found.serve == "cold") or any(w in english.casefold() for w in COLD_WORDS)


def _measured(
    potluck: Potluck, food: Food, dish: Promise, state: State, now: datetime, outside_f: float | None
) -> Verdict:
    f = state.f or 0.0
    limit, rule = limit_of(potluck, dish, state, outside_f)
    target, source = target_of(food)
    known = out_so_far(potluck, dish, now) if dish.id else None
    if known is not None and known >= limit and HOLD_COLD_F < f < HOLD_HOT_F:
        return Verdict(food, "over", rule, known, limit, state=state)
    if state.stage == "cold":
        kind = "warm" if f > HOLD_COLD_F else "chilled"
        if kind == "warm" and _long(state, now, limit):
            return replace(_clocked(potluck, food, dish, replace(state, f=None), now, outside_f), kind="over", f=f)
        return Verdict(food, kind, "HOLD-07", limit=limit, f=f, target_f=HOLD_COLD_F, state=state)
    if state.stage == "cook":
        return Verdict(
            food, "below" if f < target else "reached", source, limit=limit, f=f, target_f=target, state=state
        )
    if f >= HOLD_HOT_F:
        return Verdict(food, "held", "HOLD-06", limit=limit, f=f, target_f=HOLD_HOT_F, state=state)
    if _long(state, now, limit):
        return replace(_clocked(potluck, food, dish, replace(state, f=None), now, outside_f), f=f)
    return Verdict(food, "cool", rule, limit=limit, f=f, target_f=HOLD_HOT_F, state=state)


def _long(state: State, now: datetime, limit: int) -> bool:
    spent = state.minutes or 0.0
    if state.since is not None:
        spent = max(spent, (now - state.since).total_seconds() / 60)
    return spent >= limit


def _clocked(
    potluck: Potluck, food: Food, dish: Promise, state: State, now: datetime, outside_f: float | None
) -> Verdict:
    """The two-hour and one-hour clocks; minutes of the car come on top of those of the table."""
    limit, rule = limit_of(potluck, dish, state, outside_f)
    if not perishable(as_known(dish, food)):
        return Verdict(food, "keeps", "TCS-06", limit=limit, state=state)
    if state.place == "limit":
        known = out_so_far(potluck, dish, now) if dish.id else None
        by = now + timedelta(minutes=limit - known) if known is not None else None
        over = known is not None and known >= limit
        return Verdict(food, "over" if over else "limit", rule, known or 0.0, limit, by, state=state)
    known = out_so_far(potluck, dish, now) if dish.id else None
    told = state.minutes
    if state.since is not None:
        told = max(told or 0.0, (now - state.since).total_seconds() / 60)
    elif told is not None and known is not None and state.place in ("car", "off"):
        told += known
    spent = max(known or 0.0, told or 0.0)
    if told is None and known is None:
        return Verdict(food, "ask", rule, 0.0, limit, state=state)
    if spent >= limit:
        return Verdict(food, "over", rule, spent, limit, state=state)
    return Verdict(food, "running", rule, spent, limit, now + timedelta(minutes=limit - spent), state=state)


def as_known(dish: Promise, food: Food) -> Promise:
    """A dish named in another language, by what the tables know it by."""
    if food.english and food.english.casefold() != dish.dish.casefold():
        return replace(dish, dish=food.english)
    return dish
