"""From the answers to the shopping: amounts follow the count at the service level, dishes the expected count."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta

from hypothesis import given, settings
from hypothesis import strategies as st

from planning.plan import Plan, plan
from planning.portions.measures import convert
from planning.potluck import Answer, Bar, Guest, Party, PastAnswer, Potluck, Topping

START = datetime(2027, 9, 18, 22, tzinfo=UTC)


def supper(guests: tuple[Guest, ...], **fields: object) -> Potluck:
    bar = Bar("baked potato", (Topping("grated cheddar", "g0"), Topping("chives", "g0")))
    items = ("lasagna", "coleslaw", "lemonade", "dinner rolls")
    return Potluck("p", START, "UTC", guests=guests, bar=bar, items=items, **fields)  # type: ignore[arg-type]


def planned(potluck: Potluck) -> Plan:
    return plan(potluck, START - timedelta(days=7), effort=0)


def people(*answers: Answer, adults: int = 1) -> tuple[Guest, ...]:
    return tuple(Guest(f"g{n}", "x", answer, Party(adults)) for n, answer in enumerate(answers))


guests = st.lists(
    st.tuples(st.sampled_from(list(Answer)), st.integers(1, 4), st.integers(0, 3)), min_size=1, max_size=25
).map(
    lambda made: tuple(
        Guest(f"g{n}", "x", answer, Party(adults, children=children))
        for n, (answer, adults, children) in enumerate(made)
    )
)


@settings(max_examples=12, deadline=None)
@given(guests, st.floats(0.05, 0.99), st.floats(0.05, 0.99))
def test_a_higher_service_level_never_means_less_of_anything_nor_other_dishes(
    crowd: tuple[Guest, ...], one: float, other: float
) -> None:
    lower, higher = (planned(supper(crowd, service_level=level)) for level in sorted((one, other)))

    for few, many in zip(lower.menu, higher.menu, strict=True):
        assert few.target_servings <= many.target_servings + 1e-9
        if few.target_servings > 0:
            assert few.target_dishes == many.target_dishes
    for small, large in zip(lower.portions, higher.portions, strict=True):
        assert small.total <= 1.005 * convert(large.total, large.total_unit, small.total_unit)
    for pinch, heap in zip(lower.topping_amounts, higher.topping_amounts, strict=True):
        assert pinch.total <= 1.005 * convert(heap.total, heap.total_unit, pinch.total_unit)


def test_the_unsure_crowd_gets_more_food_and_as_many_dishes_as_a_sure_one_of_the_same_size() -> None:
    half = {"yes": 1.0, "maybe": 0.5}
    sure = planned(supper(people(*[Answer.YES] * 20), answer_odds=half))
    unsure = planned(supper(people(*[Answer.MAYBE] * 40), answer_odds=half))

    assert sure.headcount.expected == unsure.headcount.expected == 20
    for one, other in zip(sure.menu, unsure.menu, strict=True):
        assert one.target_dishes == other.target_dishes
        assert one.target_servings < other.target_servings
    for small, large in zip(sure.portions, unsure.portions, strict=True):
        assert small.total < convert(large.total, large.total_unit, small.total_unit)
    for pinch, heap in zip(sure.topping_amounts, unsure.topping_amounts, strict=True):
        assert pinch.total < convert(heap.total, heap.total_unit, pinch.total_unit)


def test_the_hosts_own_odds_reach_every_amount() -> None:
    crowd = people(*[Answer.MAYBE] * 30)

    few = planned(supper(crowd, answer_odds={"maybe": 0.2}))
    many = planned(supper(crowd, answer_odds={"maybe": 0.9}))

    assert few.headcount.expected < many.headcount.expected
    assert all(a.target_servings < b.target_servings for a, b in zip(few.menu, many.menu, strict=True))


def test_the_groups_own_past_reaches_every_amount() -> None:
    crowd = people(*[Answer.MAYBE] * 30)
    stayed_away = tuple(PastAnswer("2027-06-01", f"g{n}", None, "maybe", False) for n in range(24))

    before, after = planned(supper(crowd)), planned(supper(crowd, history=stayed_away))

    # (0.5 x 8 + 0) / (8 + 24) = 1/8
    assert after.headcount.expected == 30 / 8
    assert all(a.target_servings < b.target_servings for a, b in zip(after.menu, before.menu, strict=True))


def test_service_levels_of_one_feed_everybody_who_might_come() -> None:
    found = planned(replace(supper(people(*[Answer.MAYBE] * 12)), service_level=1.0))

    assert found.headcount.at_service_level == found.headcount.eaters == 12
