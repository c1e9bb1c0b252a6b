"""The toppings bar: what is possible, what to ask for next, and how much."""

from __future__ import annotations

import itertools
from dataclasses import replace
from datetime import UTC, datetime

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planning.bar import (
    amounts,
    base_named,
    bases,
    combos,
    combos_for,
    curve,
    ingredients_of,
    match_topping,
    next_toppings,
    picked_twice,
    topping_row,
    toppings_for,
    warm_toppings,
)
from planning.headcount import headcount
from planning.portions.measures import convert
from planning.potluck import Answer, Bar, Combo, Guest, Party, Potluck, Topping

SATURDAY = datetime(2027, 9, 18, 22, tzinfo=UTC)


def supper(bar: Bar, people: int = 20, **fields: object) -> Potluck:
    crowd = tuple(Guest(f"g{n}", "x", Answer.YES) for n in range(people))
    return replace(
        Potluck("p1", SATURDAY, "UTC", guests=crowd, bar=bar, answer_odds={"yes": 1.0}),
        **fields,  # type: ignore[arg-type]
    )


def potato(*taken: str, free: tuple[str, ...] = (), **fields: object) -> Bar:
    held = tuple(Topping(name, "g1") for name in taken) + tuple(Topping(name) for name in free)
    return replace(Bar("baked potato", held), **fields)  # type: ignore[arg-type]


def test_there_are_eight_bases_and_more() -> None:
    assert len(bases()) >= 8


@pytest.mark.parametrize("base", bases())
def test_every_base_has_25_toppings_and_10_combinations_of_them(base: str) -> None:
    assert len(toppings_for(base)) >= 25
    assert len(combos_for(base)) >= 10
    assert {t for c in combos_for(base) for t in c.toppings} <= set(toppings_for(base))


@pytest.mark.parametrize("base", bases())
def test_every_topping_is_found_by_its_own_name(base: str) -> None:
    assert [t for t in toppings_for(base) if match_topping(base, t) != t] == []


def test_no_two_combinations_share_a_name() -> None:
    names = [c.name for base in bases() for c in combos_for(base)]

    assert len(names) == len(set(names))


def test_every_ingredient_is_known_to_the_allergen_tables_by_some_word() -> None:
    ingredients = pytest.importorskip("planning.diets.ingredients")
    named = sorted({i for base in bases() for i in ingredients_of(base, toppings_for(base))})

    assert [name for name in named if not ingredients.find(name).rows] == []


@pytest.mark.parametrize(
    ("said", "meant"),
    [("jacket spuds", "baked potato"), ("Tacos", "taco"), ("hot dogs", "sausage in a bun"),
     ("burgers", "burger"), ("sundaes", "ice-cream sundae"), ("pancakes", "waffle"), ("xyzzy", None)],
)  # fmt: skip
def test_a_base_is_known_in_other_words(said: str, meant: str | None) -> None:
    assert base_named(said) == meant


def test_a_topping_is_known_in_other_words() -> None:
    assert match_topping("baked potato", "a big bag of grated cheese") == "grated cheddar"
    assert match_topping("taco", "cilantro") == "fresh coriander"
    assert match_topping("taco", "bicycle") is None


def test_a_combination_lights_up_when_its_last_topping_is_taken() -> None:
    before = {c.name: c for c in combos(supper(potato("grated cheddar", "bacon bits")))}["Hay Barn"]
    after = {c.name: c for c in combos(supper(potato("cheese", "bacon", "sour cream")))}["Hay Barn"]

    assert (before.possible, before.missing) == (False, ("sour cream",))
    assert (after.possible, after.missing) == (True, ())


def test_a_topping_on_the_list_that_nobody_has_taken_opens_nothing() -> None:
    found = {c.name: c for c in combos(supper(potato("chives", free=("butter",))))}["Plain Dealing"]

    assert found.missing == ("butter",)


def test_hosts_can_have_their_own_combinations_and_base() -> None:
    own = Bar("porridge", (Topping("Plum jam", "g1"),), (Combo("Ours", ("plum jam", "seeds")),))

    assert [(c.name, c.missing) for c in combos(supper(own))] == [("Ours", ("seeds",))]


def test_one_topping_at_a_time_is_not_good_enough() -> None:
    # "x" alone opens one; "a" and "b" together open three. With two to ask for, the pair wins over x first.
    own = potato(combos=(
        Combo("one", ("x",)), Combo("two", ("a", "b")), Combo("three", ("b", "a")), Combo("four", ("a", "b")),
    ))  # fmt: skip
    potluck = supper(own)

    found = next_toppings(potluck, headcount(potluck), 2)

    assert {n.topping for n in found} == {"a", "b"}
    assert sum(len(n.opens) for n in found) == 3


def test_fewer_people_are_asked_for_the_same_number_of_combinations() -> None:
    own = potato(combos=(Combo("one", ("x",)), Combo("two", ("a", "b"))))
    potluck = supper(own)

    assert [n.topping for n in next_toppings(potluck, headcount(potluck), 2)] == ["x"]


def test_when_nothing_can_be_opened_yet_the_shortest_way_is_named() -> None:
    potluck = supper(potato(combos=(Combo("far", ("a", "b", "c")), Combo("farther", ("d", "e", "f", "g")))))

    found = next_toppings(potluck, headcount(potluck), 1)

    assert [(n.topping in "abc", n.opens) for n in found] == [(True, ())]


def test_the_bars_own_number_of_asks_is_the_default() -> None:
    potluck = supper(potato("grated cheddar", most_asks=2))

    assert len(next_toppings(potluck, headcount(potluck))) <= 2


def test_a_combination_for_a_vegan_goes_before_one_of_equal_number() -> None:
    own = potato(combos=(Combo("meat", ("bacon bits",)), Combo("green", ("chives",))))
    vegan = supper(own)
    vegan = replace(vegan, guests=(replace(vegan.guests[0], diets=("vegan",)), *vegan.guests[1:]))

    assert [n.topping for n in next_toppings(vegan, headcount(vegan), 1)] == ["chives"]


def test_the_curve_never_falls_and_starts_with_what_is_possible() -> None:
    potluck = supper(potato("grated cheddar", "butter", "chives"))
    found = curve(potluck, 6)

    assert found[0] == (0, sum(c.possible for c in combos(potluck)))
    assert [n for _, n in found] == sorted(n for _, n in found)


def test_w4_the_armed_forces_potato_bar_for_a_hundred() -> None:
    # Card Q-G-4: 2 tbsp of every topping for every diner, 3.25 qt for 100, which is 4 % over the exact 3.125 qt;
    # cottage cheese 0.25 cup each, 6.25 qt (Q178, Q179, Q181).
    potluck = supper(potato("grated cheddar", "diced tomatoes", "cottage cheese"), 100)
    found = {a.topping: a for a in amounts(potluck, headcount(potluck), everybody=True)}

    quarts = {name: convert(a.total, a.total_unit, "qt") for name, a in found.items()}
    assert quarts["grated cheddar"] == pytest.approx(3.125, rel=0.005)
    assert quarts["diced tomatoes"] == pytest.approx(3.125, rel=0.005)
    assert quarts["cottage cheese"] == pytest.approx(6.25, rel=0.005)
    # 3 lb 2 oz of cheese are 3.25 qt there.
    assert convert(12.5, "cup", "lb", grams_per_cup=113) == pytest.approx(3.125, rel=0.01)


def test_two_picks_in_turn_agree_with_trying_every_pair() -> None:
    weights = [0.5, 0.3, 0.9, 0.1]
    p = [w / sum(weights) for w in weights]
    by_hand = [0.0] * 4
    for i, j in itertools.permutations(range(4), 2):
        chance = p[i] * p[j] / (1 - p[i])
        by_hand[i] += chance
        by_hand[j] += chance

    assert picked_twice(weights) == pytest.approx(by_hand)
    assert sum(picked_twice(weights)) == pytest.approx(2)


def test_a_topping_that_many_combinations_use_is_taken_by_more() -> None:
    alone = supper(potato("cottage cheese"))
    asked = supper(potato("cottage cheese", "chives", "sunflower seeds"))

    one = {a.topping: a for a in amounts(alone, headcount(alone))}["cottage cheese"]
    many = {a.topping: a for a in amounts(asked, headcount(asked))}["cottage cheese"]
    assert many.share > one.share


def test_a_topping_of_the_hosts_own_gets_two_tablespoons_for_every_second_eater() -> None:
    potluck = supper(potato("moon dust"))
    (found,) = amounts(potluck, headcount(potluck))

    assert (found.share, found.source) == (0.5, "common practice, no source")


def test_a_hot_topping_needs_an_outlet() -> None:
    assert warm_toppings(supper(potato("bean chili", "chives", "cheese sauce"))) == ("bean chili", "cheese sauce")


def test_amounts_follow_the_share_who_take_it() -> None:
    row = topping_row("baked potato", "blue cheese")
    assert row is not None
    assert row.uptake < 0.5


@settings(max_examples=40, deadline=None)
@given(
    st.lists(st.sampled_from(toppings_for("baked potato")), max_size=6, unique=True),
    st.integers(0, 40),
    st.sampled_from(list(Answer)),
    st.builds(Party, adults=st.integers(0, 4), children=st.integers(0, 4), infants=st.integers(0, 2)),
)
def test_more_guests_never_mean_less_of_a_topping(taken: list[str], people: int, answer: Answer, party: Party) -> None:
    small = supper(potato(*taken), people)
    large = replace(small, guests=(*small.guests, Guest("new", "x", answer, party)))

    for one, other in zip(amounts(small, headcount(small)), amounts(large, headcount(large)), strict=True):
        row = topping_row("baked potato", one.topping)
        assert row is not None
        own = {"grams_per_cup": row.grams_per_cup, "grams_each": row.grams_each}
        assert convert(other.total, other.total_unit, row.unit, **own) >= 0.995 * convert(
            one.total, one.total_unit, row.unit, **own
        )


def test_a_potluck_without_a_bar_has_nothing_to_say_about_it() -> None:
    plain = replace(supper(potato()), bar=None)

    assert combos(plain) == next_toppings(plain, headcount(plain)) == curve(plain) == amounts(plain, headcount(plain))


def test_bacon_is_weighed_on_a_taco_as_on_a_potato() -> None:
    def bought(base: str) -> str:
        potluck = supper(Bar(base, (Topping("bacon bits"),)), 26)
        return amounts(potluck, headcount(potluck))[0].buy_unit

    assert bought("taco") == bought("baked potato") == "oz"


def test_a_topping_of_somebody_who_cannot_come_makes_no_combination_possible() -> None:
    brought = {"butter": "tom", "chives": "bea"}
    toppings = tuple(Topping(name, guest) for name, guest in brought.items())
    plain = Potluck("p", SATURDAY, "UTC", guests=(Guest("bea", "Bea", Answer.YES), Guest("tom", "Tom", Answer.NO)))

    state = combos(replace(plain, bar=Bar("baked potato", toppings, (Combo("Plain", ("butter", "chives")),))))

    assert not state[0].possible
    assert state[0].missing == ("butter",)
