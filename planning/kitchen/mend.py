"""A way out taken: the potluck as it is once people do what a conflict's fix says.

The search for conflicts tries these very changes, and the chat makes them when somebody presses the button; so what
is offered is what was tried. Where only a cook can tell what is meant (a figure to correct, a dish to split) there is
nothing to change here.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

from planning.kitchen.dial import likely_f
from planning.kitchen.usual import HEATING, steps_of
from planning.potluck import Circuit, HeatStep, Kitchen, Oven, Potluck, Promise, SlowCooker

REHEATS = (HeatStep("oven", 30, 350), HeatStep("stove", 15, hands_min=5), HeatStep("microwave", 10, hands_min=2))
"""A dish cooked ahead and reheated, by what there is; the times are common practice, no source."""

HOLD_F = 140.0
"""HOLD-06 and TRANS-02: hot food is held and carried at this temperature or above."""

USUAL_WAY_MIN = 15
"""What the way takes where nobody said; common practice, no source."""


def mended(potluck: Potluck, promise_id: str, kind: str, minutes: int = 0) -> Potluck | None:
    """The potluck with the fix `kind` made for this promise; None where no change of ours can make it."""
    promise = potluck.promise(promise_id)
    has = potluck.kitchen
    kitchen = {
        "borrow-slow-cooker": replace(has, slow_cookers=(*has.slow_cookers, SlowCooker())),
        "borrow-oven": replace(has, ovens=(*has.ovens, Oven())),
        "more-hands": replace(has, cooks=has.cooks + 1),
        "another-circuit": replace(has, circuits=(*has.circuits, Circuit())),
    }.get(kind)
    if kitchen is not None:
        return replace(potluck, kitchen=kitchen)
    if kind == "later":
        return later(potluck, minutes)
    if promise is None:
        return None
    if kind == "arrive-earlier" and promise.arrives_at is not None:
        return _put(potluck, replace(promise, arrives_at=promise.arrives_at - timedelta(minutes=minutes)))
    steps, _ = steps_of(potluck, promise)
    if kind == "temperature":
        meant = tuple(replace(s, temp_f=float(likely)) if (likely := likely_f(s)) else s for s in steps)
        return _put(potluck, replace(promise, heat=meant)) if meant != steps else None
    if kind == "hold-hotter":
        hot = tuple(replace(s, temp_f=HOLD_F) if _holds_too_cool(s) else s for s in steps)
        return _put(potluck, replace(promise, heat=hot)) if hot != steps else None
    if kind == "thaw-longer":
        return _thawed_for(potluck, promise, minutes)
    if kind == "cook-ahead":
        again = reheated_at_home(potluck, promise, steps) or reheated(potluck.kitchen, steps)
        return _heated(potluck, promise, again) if again else None
    if kind == "cook-at-home":
        return _heated(potluck, promise, carried_hot(potluck, promise, tuple(replace(s, at="home") for s in steps)))
    if kind == "cooler":
        return _heated(potluck, promise, carried_hot(potluck, promise, steps))
    if kind == "leave-out":
        return replace(potluck, promises=tuple(p for p in potluck.promises if p is not promise))
    return None


def _holds_too_cool(step: HeatStep) -> bool:
    return step.kind == "keep-warm" and step.temp_f is not None and step.temp_f < HOLD_F


def later(potluck: Potluck, minutes: int) -> Potluck:
    """Everything served so much later; when people go home moves along."""
    by = timedelta(minutes=minutes)
    return replace(potluck, starts_at=potluck.starts_at + by, ends_at=potluck.ends_at and potluck.ends_at + by)


def reheated(kitchen: Kitchen, steps: tuple[HeatStep, ...]) -> tuple[HeatStep, ...]:
    """Cooked the day before and chilled: what is left to do at the venue; () where nothing there can reheat it.

    Never in a slow cooker (REHEAT-05).
    """
    pans = max((s.pans for s in steps), default=1)
    there = {
        "oven": any(o.racks * o.pans_per_rack >= pans for o in kitchen.ovens),
        "stove": kitchen.burners > 0,
        "microwave": bool(kitchen.microwaves) and any(c.outlets > 0 for c in kitchen.circuits),
    }
    return next(((replace(s, pans=pans),) for s in REHEATS if there[s.kind]), ())


def reheated_at_home(potluck: Potluck, promise: Promise, steps: tuple[HeatStep, ...]) -> tuple[HeatStep, ...]:
    """A guest who cooks at home reheats there too; () for a dish that is heated at the venue, or by the host."""
    if any(s.kind in HEATING and s.at == "venue" for s in steps) or promise.guest == potluck.host:
        return ()
    guest = potluck.guest(promise.guest)
    kind = "oven" if guest is None or guest.has_oven else "stove"
    return tuple(replace(s, at="home") for s in REHEATS if s.kind == kind)


def reheated_in(potluck: Potluck, promise: Promise, steps: tuple[HeatStep, ...]) -> str:
    """What reheats a dish cooked ahead: "home", else "oven", "stove" or "microwave" at the venue; "" for nothing."""
    if reheated_at_home(potluck, promise, steps):
        return "home"
    again = reheated(potluck.kitchen, steps)
    return again[0].kind if again else ""


def can_cook_at_home(potluck: Potluck, promise: Promise, steps: tuple[HeatStep, ...]) -> bool:
    """Whether a guest, not the host, could do the dish's heating at home."""
    guest = potluck.guest(promise.guest)
    if guest is None or guest.id == potluck.host or not guest.can_cook:
        return False
    return guest.has_oven or not any(s.kind == "oven" for s in steps)


def elsewhere(potluck: Potluck, promise: Promise, steps: tuple[HeatStep, ...]) -> str:
    """The way out for a dish whose heat the venue cannot give at all."""
    if can_cook_at_home(potluck, promise, steps):
        return "cook-at-home"
    if any(s.kind == "oven" and s.at == "venue" and not s.own_appliance for s in steps) and not potluck.kitchen.ovens:
        # Who has the table has no other kitchen to cook it in beforehand.
        return "borrow-oven"
    return "cook-ahead" if reheated(potluck.kitchen, steps) else "leave-out"


def carried_hot(potluck: Potluck, promise: Promise, steps: tuple[HeatStep, ...]) -> tuple[HeatStep, ...]:
    """The same steps with the way in a preheated insulated carrier, at 140 °F or more until it is served (TRANS-02).

    The way takes the minutes listed, the guest's own, or the usual ones. A rest after the last heat is over
    before it is packed, so the carrier follows the heat; an empty `transport` says that the way is in the list.
    """
    guest = potluck.guest(promise.guest)
    way = sum(s.minutes for s in steps if s.kind == "transport")
    way = way or (min(guest.travel_min, 1440) if guest is not None and guest.travel_min > 0 else USUAL_WAY_MIN)
    last = max((n for n, s in enumerate(steps) if s.kind in (*HEATING, "keep-warm")), default=-1)
    rest = sum(s.minutes for s in steps[last + 1 :] if s.kind == "rest")
    before = tuple(s for s in steps[: last + 1] if s.kind != "transport")
    hot = HeatStep("keep-warm", max(1, way + rest), HOLD_F, at="home")
    return (*before, hot, HeatStep("transport", 0, at="home"), *(s for s in steps[last + 1 :] if s.kind == "serve"))


def _thawed_for(potluck: Potluck, promise: Promise, minutes: int) -> Potluck:
    """The first thaw among its steps as long as that, any other gone."""
    first = next((n for n, s in enumerate(promise.heat or ()) if s.kind == "thaw"), -1)
    steps = tuple(
        replace(s, minutes=minutes) if n == first else s
        for n, s in enumerate(promise.heat or ()) if s.kind != "thaw" or n == first
    )  # fmt: skip
    return _put(potluck, replace(promise, heat=steps))


def _heated(potluck: Potluck, promise: Promise, steps: tuple[HeatStep, ...]) -> Potluck:
    return _put(potluck, replace(promise, heat=steps, serve=promise.serve or "hot"))


def _put(potluck: Potluck, promise: Promise) -> Potluck:
    return replace(potluck, promises=tuple(promise if p.id == promise.id else p for p in potluck.promises))
