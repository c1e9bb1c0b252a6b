"""Hypothesis strategies for planning's values; whole potlucks that hang together.

Ids are unique, promises and toppings belong to guests, times are in UTC. `wide` texts have any
character a message can have; names and dishes are short. Use `potlucks()` for properties of the
whole and the smaller ones for single rules.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Any

from hypothesis import strategies as st

from planning.potluck import (
    CATEGORIES,
    Answer,
    Bar,
    Circuit,
    Combo,
    Declined,
    Guest,
    HeatStep,
    Kitchen,
    Microwave,
    Money,
    Need,
    Oven,
    Party,
    PastAnswer,
    Payment,
    Potluck,
    Price,
    Promise,
    SlowCooker,
    Stage,
    Topping,
)

START = datetime(2027, 9, 18, 22, tzinfo=UTC)

NEEDS = ("vegetarian", "vegan", "halal", "gluten-free", "milk", "egg", "peanut", "tree-nut", "sesame")
STEP_KINDS = (
    "oven", "stove", "slow-cooker-low", "slow-cooker-high", "microwave", "grill", "rest", "prep",
    "keep-warm", "chill", "thaw", "transport", "serve",
)  # fmt: skip
ZONES = ("America/Chicago", "Europe/Berlin", "Asia/Kathmandu", "Australia/Lord_Howe", "UTC")

words = st.text(st.characters(exclude_categories=("Cs", "Cc")), min_size=1, max_size=12)
wide = st.text(st.characters(exclude_categories=("Cs",), exclude_characters="\x00"), max_size=20)
instants = st.integers(0, 15 * 365 * 86_400_000_000).map(
    lambda n: datetime(2020, 1, 1, tzinfo=UTC) + timedelta(microseconds=n)
)
amounts = st.decimals(0, 10_000, places=2, allow_nan=False)
moneys = st.builds(Money, amounts, st.sampled_from(("USD", "EUR", "GBP")))
floats = st.floats(0, 1000, allow_nan=False, allow_infinity=False)
categories = st.sampled_from(CATEGORIES)
small = st.integers(0, 12)
parties = st.builds(Party, small, small, small, small, small)
needs = st.builds(
    Need,
    st.sampled_from(NEEDS),
    st.integers(1, 5),
    st.sampled_from(("allergy", "intolerance", "diet", "")),
    st.booleans(),
)
json_values: st.SearchStrategy[Any] = st.recursive(
    st.none() | st.booleans() | st.integers(-(2**53), 2**53) | floats | wide,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(words, inner, max_size=3),
    max_leaves=6,
)


def tuples(elements: st.SearchStrategy[Any], most: int = 3, **how: Any) -> st.SearchStrategy[tuple[Any, ...]]:
    return st.lists(elements, max_size=most, **how).map(tuple)


heat_steps = st.builds(
    HeatStep,
    kind=st.sampled_from(STEP_KINDS),
    minutes=st.integers(1, 600),
    temp_f=st.none() | st.floats(32, 550).map(round).map(float),
    pans=st.integers(1, 4),
    covered=st.booleans(),
    at=st.sampled_from(("venue", "home")),
    hands_min=st.integers(0, 60),
    movable=st.booleans(),
    watts=st.none() | st.integers(1, 2000),
    own_appliance=st.booleans(),
)
kitchens = st.builds(
    Kitchen,
    ovens=tuples(st.builds(Oven, st.integers(1, 4), st.integers(1, 4)), 2),
    burners=st.integers(0, 6),
    grills=st.integers(0, 2),
    slow_cookers=tuples(st.builds(SlowCooker, st.floats(1, 10), st.integers(50, 400))),
    microwaves=tuples(st.builds(Microwave, st.integers(500, 1500)), 2),
    circuits=tuples(
        st.builds(Circuit, st.sampled_from((10.0, 15.0, 20.0)), st.sampled_from((120.0, 230.0)), st.integers(1, 6))
    ),
    cooks=st.integers(0, 5),
    fridge_l=st.none() | floats,
    awake=st.sampled_from((("07:00", "22:00"), ("05:30", "23:45"))),
)


@st.composite
def guests(draw: st.DrawFn, guest_id: str) -> Guest:
    return Guest(
        id=guest_id,
        name=draw(words),
        answer=draw(st.sampled_from(Answer)),
        party=draw(parties),
        diets=draw(tuples(st.sampled_from(NEEDS[:4]), 2, unique=True)),
        allergies=draw(tuples(st.sampled_from(NEEDS[4:]), 2, unique=True)),
        needs=draw(tuples(needs, 2)),
        pregnant=draw(st.booleans()),
        travel_min=draw(st.integers(0, 240)),
        can_cook=draw(st.booleans()),
        has_oven=draw(st.booleans()),
        added_by=draw(st.none() | words),
        username=draw(st.none() | words),
        arrived_at=draw(st.none() | instants),
    )


@st.composite
def promises(draw: st.DrawFn, promise_id: str, guest_ids: tuple[str, ...]) -> Promise:
    whose = st.sampled_from(guest_ids)
    return Promise(
        id=promise_id,
        guest=draw(whose),
        dish=draw(words),
        category=draw(categories),
        servings=draw(st.none() | floats),
        quantity=draw(st.none() | wide),
        ingredients=draw(st.none() | tuples(words)),
        heat=draw(st.none() | tuples(heat_steps)),
        arrives_at=draw(st.none() | instants),
        frozen_lb=draw(st.none() | floats),
        serve=draw(st.sampled_from((None, "hot", "cold", "room"))),
        out_since=draw(st.none() | instants),
        began_at=draw(st.none() | instants),
        out_min=draw(floats),
        sharers=draw(tuples(whose, 2, unique=True)),
        takers=draw(tuples(whose, 2, unique=True)),
        outcome=draw(st.sampled_from(("", "ran-out", "came-back"))),
        returned=draw(st.booleans()),
    )


@st.composite
def bars(draw: st.DrawFn, guest_ids: tuple[str, ...]) -> Bar:
    names = draw(tuples(words, 5, unique=True))
    whose = st.none() | st.sampled_from(guest_ids) if guest_ids else st.none()
    combos = (
        st.builds(Combo, words, tuples(st.sampled_from(names), 3)) if names else st.builds(Combo, words, st.just(()))
    )
    return Bar(
        base=draw(words),
        toppings=tuple(Topping(n, draw(whose)) for n in names),
        combos=draw(st.none() | tuples(combos)),
        most_asks=draw(st.integers(0, 5)),
    )


@st.composite
def potlucks(draw: st.DrawFn, potluck_id: str = "p1", most_guests: int = 5) -> Potluck:
    ids = tuple(str(1000 + n) for n in range(draw(st.integers(0, most_guests))))
    whose = st.sampled_from(ids) if ids else st.just("nobody")
    promised = [f"d{n}" for n in range(draw(st.integers(0, 4)))] if ids else []
    starts_at = draw(instants)
    return Potluck(
        id=potluck_id,
        starts_at=starts_at,
        timezone=draw(st.sampled_from(ZONES)),
        host=draw(st.none() | whose),
        title=draw(wide),
        ends_at=draw(st.none() | st.integers(1, 600).map(lambda m: starts_at + timedelta(minutes=m))),
        place=draw(wide),
        stage=draw(st.sampled_from(Stage)),
        mealtime=draw(st.sampled_from(("meal", "between-meals"))),
        setting=draw(st.sampled_from(("indoor", "outdoor"))),
        outdoor_temp_f=draw(st.none() | st.floats(-40, 130)),
        units=draw(st.sampled_from(("us", "metric"))),
        service_level=draw(st.floats(0.5, 0.99)),
        budget=draw(st.none() | moneys),
        cohosts=draw(tuples(whose, 2, unique=True)) if ids else (),
        guests=tuple(draw(guests(i)) for i in ids),
        expected_people=draw(st.none() | st.integers(0, 500)),
        answer_by=draw(st.none() | instants),
        promises=tuple(draw(promises(i, ids)) for i in promised),
        bar=draw(st.none() | bars(ids)),
        items=draw(tuples(words, 3, unique=True)),
        kitchen=draw(kitchens),
        history=draw(
            tuples(st.builds(PastAnswer, st.just("2027-05-01"), whose, st.none() | categories, words, st.booleans()))
        ),
        answer_odds=draw(st.none() | st.fixed_dictionaries({k: st.floats(0, 1) for k in ("yes", "maybe", "none")})),
        prices=draw(st.dictionaries(words, st.builds(Price, moneys, words), max_size=3)),
        payments=draw(tuples(st.builds(Payment, whose, moneys, words))),
        previous=draw(st.none() | st.dictionaries(words, json_values, max_size=2)),
        declined=draw(tuples(st.builds(Declined, whose, categories))),
        kitchen_before=draw(st.none() | kitchens),
        weather=draw(wide),
        parking=draw(wide),
        door_code=draw(wide),
        pin=draw(st.none() | st.tuples(st.floats(-90, 90), st.floats(-180, 180))),
        repeats=draw(st.sampled_from(("", "monthly"))),
        corrections=draw(st.dictionaries(categories, st.floats(0.7, 1.4), max_size=2)),
        last_number=draw(st.integers(0, 1000)),
    )


@st.composite
def pairs(draw: st.DrawFn) -> tuple[Potluck, Potluck]:
    """A potluck and what became of it: parts of another one, elements gone, added, moved."""
    before, other = draw(potlucks()), draw(potlucks())
    mixed: dict[str, Any] = {}
    for name in before.__dataclass_fields__:
        choice = draw(st.integers(0, 3))
        if choice == 0:
            mixed[name] = getattr(other, name)
        elif choice == 1 and name in ("guests", "promises", "payments", "declined", "history", "items", "cohosts"):
            keep = [e for e in getattr(before, name) if draw(st.booleans())]
            mixed[name] = tuple(draw(st.permutations(keep)))
    after = replace(before, **mixed)
    if after.bar is not None and draw(st.booleans()):
        after = replace(after, bar=replace(after.bar, toppings=tuple(draw(st.permutations(after.bar.toppings)))))
    return before, after
