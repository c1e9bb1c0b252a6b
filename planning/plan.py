"""The whole plan in one call: everything the other modules compute, over one potluck at one moment."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime

from planning.asks import Ask, asks
from planning.bar import ComboState, NextTopping, ToppingAmount, amounts, combos, next_toppings
from planning.diets import DietRow, diets
from planning.headcount import Headcount, headcount
from planning.kitchen import Timeline, timeline
from planning.kitchen.implausible import believable
from planning.menu import MenuRow, menu
from planning.portions import Portion, portions
from planning.potluck import Potluck
from planning.reminders import Reminder, reminders
from planning.safety import SafetyNote, safety
from planning.shopping import ShoppingRow, Transfer, evening_out, shopping

EFFORT = 1.0
"""The deterministic budget of the solvers when nobody says otherwise; a unit is a few seconds at most."""


@dataclass(frozen=True)
class Plan:
    """All sections of the plan, each as its own module returns it."""

    headcount: Headcount
    menu: tuple[MenuRow, ...]
    portions: tuple[Portion, ...]
    diets: tuple[DietRow, ...]
    asks: tuple[Ask, ...]
    combos: tuple[ComboState, ...]
    next_toppings: tuple[NextTopping, ...]
    topping_amounts: tuple[ToppingAmount, ...]
    kitchen: Timeline
    shopping: tuple[ShoppingRow, ...]
    evening_out: tuple[Transfer, ...]
    safety: tuple[SafetyNote, ...]
    reminders: tuple[Reminder, ...]


def plan(
    potluck: Potluck,
    now: datetime,
    *,
    effort: float = EFFORT,
    seed: int = 0,
    seconds: float | None = None,
    clock: Callable[[], float] | None = None,
) -> Plan:
    """The plan as of `now`. Deterministic in (potluck, now, effort, seed); `seconds` is a backstop by the `clock`."""
    kitchen = timeline(potluck, now, effort, seed, seconds, clock)
    potluck = believable(potluck)  # the timeline has told of what is not
    count = headcount(potluck)
    table = menu(potluck, count)
    needs = diets(potluck)
    needed = portions(potluck, count)
    return Plan(
        headcount=count,
        menu=table,
        portions=needed,
        diets=needs,
        asks=asks(potluck, table, needs, now, effort=effort, seed=seed),
        combos=combos(potluck),
        next_toppings=next_toppings(potluck, count),
        topping_amounts=amounts(potluck, count),
        kitchen=kitchen,
        shopping=shopping(potluck, count, needed),
        evening_out=evening_out(potluck),
        safety=safety(potluck, now, kitchen),
        reminders=reminders(potluck, kitchen, now),
    )
