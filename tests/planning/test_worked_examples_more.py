"""Our figures beside published ones for bread, butter, desserts, ice, things for the table, and a crowd with children.

The figures and their sources stand in `planning/data/sources_quantities.csv` under the ids named here; "no publication
named" means that our notes have the figure and not where it was printed.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from planning.headcount import headcount
from planning.potluck import Answer, Guest, Party, Potluck
from tests.planning.pantry import bought, cookout, total


def school(**ages: int) -> Potluck:
    """One party of so many of each age who will certainly come."""
    plain = cookout(0, "lasagna", "milk", "cookies")
    return replace(plain, guests=(Guest("g", "x", Answer.YES, Party(**{"adults": 0, **ages})),))


@pytest.mark.parametrize(("people", "loaves"), [(12, 2), (20, 3), (35, 5), (50, 7), (65, 9.75)])
def test_sandwich_bread_for_every_column_of_the_illinois_table(people: int, loaves: float) -> None:
    # Three slices each (Q058); the table rounds its loaves down by up to a sixth.
    assert bought(cookout(people, "sandwich bread"), "sandwich bread", "each") == pytest.approx(loaves, rel=0.2)


@pytest.mark.parametrize("people", [25, 50, 100])
@pytest.mark.parametrize(
    ("item", "unit", "for_fifty", "low", "high"),
    [
        ("rolls", "each", 100, 50, 105),  # 100 (Q082); 1 to 2.1 a person (Q240, Q062)
        ("butter", "lb", 1.5, 1.4, 1.7),  # 1.5 lb (Q097); a tablespoon (Q023)
        ("nuts", "lb", 1.5, 1.4, 1.6),  # 1.5 lb (Q096)
        ("salad dressing", "qt", 1.5, 1.0, 3.2),  # 1.5 qt (Q087); 0.64 to 2 fl oz
        ("coffee", "lb", 1.5, 0.5, 2.0),  # 1.5 lb ground (Q092); a grocer 0.5, Illinois 2
        ("pie", "slice", 72, 50, 72),  # 9 pies of 8 (Q094), 5.6 to 8 people a pie
    ],
)
def test_w2_almanac_table_for_bread_and_what_goes_with_it(
    people: int, item: str, unit: str, for_fifty: float, low: float, high: float
) -> None:
    # A printed almanac's table, no publication named; 25, 50 and 100 people.
    ours = bought(cookout(people, item), item, unit) * 50 / people

    assert low * 0.99 <= for_fifty <= high * 1.01
    assert low * 0.99 <= ours <= high * 1.01


def test_ice_lies_between_a_pound_and_two_each_and_doubles_in_heat() -> None:
    # Q295: 1-2 lb a person, double outdoors in heat; no publication named.
    plain = bought(cookout(50, "ice"), "ice", "lb")
    hot = bought(cookout(50, "ice", setting="outdoor", outdoor_temp_f=95.0), "ice", "lb")

    assert 50 <= plain <= 100
    assert hot == 2 * plain


@pytest.mark.parametrize(("item", "each"), [("plates", 1.75), ("dessert plates", 1.25), ("napkins", 2.5), ("cups", 3)])
def test_things_for_the_table_are_a_sellers_guide(item: str, each: float) -> None:
    # Q298-Q301, no publication named.
    assert total(cookout(100, item), item, "each") == each * 100


@pytest.mark.parametrize(
    ("ages", "adults"),
    [
        ({"children": 40}, 30),  # school lunches: 600 of 800 kcal in grades K-5 (Q337, Q339)
        ({"teens": 40}, 40),  # the full pattern in grades 9-12 (Q339)
        ({"toddlers": 40}, 20),  # an afternoon snack's meat, 0.5 of 1 oz (Q345)
        ({"adults": 10, "children": 8, "toddlers": 4, "infants": 3}, 18),  # 10 + 6 + 2 + 0
    ],
)
def test_children_eat_by_their_school_meals_share_of_a_grown_ups(ages: dict[str, int], adults: int) -> None:
    mixed, plain = school(**ages), school(adults=adults)

    assert headcount(mixed).eaters == adults
    assert total(mixed, "lasagna", "cup") == pytest.approx(total(plain, "lasagna", "cup"), rel=0.005)


def test_a_supper_with_children_adds_up_line_by_line() -> None:
    # 20 adults and 16 children: 32 eaters. FDA's portions (Q041 1 cup of lasagna, Q001 a slice of bread, Q009 2/3
    # cup of ice cream); cups for all 36 people (Q301).
    family = replace(
        cookout(0, "lasagna", "garlic bread", "ice cream", "cups"),
        guests=(Guest("g", "x", Answer.YES, Party(20, 0, 16)),),
    )

    assert total(family, "lasagna", "cup") == pytest.approx(32, rel=0.005)
    assert total(family, "garlic bread", "slice") == pytest.approx(32, rel=0.005)
    assert total(family, "ice cream", "cup") == pytest.approx(32 * 2 / 3, rel=0.005)
    assert total(family, "cups", "each") == pytest.approx(3 * 36, rel=0.005)
