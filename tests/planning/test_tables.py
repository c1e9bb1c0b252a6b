"""Every figure names its source, and the sources say what we say they say."""

from __future__ import annotations

import re

import pytest

from planning.portions import find, items, kinds, sizes
from planning.portions.measures import NoConversion, convert
from planning.portions.wanted import item_for
from planning.tables import PRACTICE, rows, source_text, sources, table_names

OURS = ("portions", "packages", "kinds", "weights", "odds", "targets", "bases", "toppings", "combos", "prices",
        "vessels", "cans")  # fmt: skip
CITED = [item for item in items().values() if item.source != PRACTICE]


@pytest.mark.parametrize("table", OURS)
def test_every_row_of_a_table_has_a_source_that_is_found(table: str) -> None:
    unknown = {row["source"] for row in rows(table)} - set(sources())

    assert rows(table)
    assert unknown == set()


def test_every_table_of_the_folder_can_be_read() -> None:
    assert {"portions", "sources_quantities"} <= set(table_names())
    assert all(rows(name) for name in table_names())


def test_a_missing_table_is_said_so() -> None:
    with pytest.raises(FileNotFoundError):
        rows("no-such-table")


def test_there_are_as_many_items_and_named_sources_as_promised() -> None:
    firmly = [item for item in CITED if "memory" not in sources()[item.source].how_known]

    assert len(items()) >= 250
    assert len(firmly) >= 110


def test_no_row_cites_a_source_that_is_itself_common_practice() -> None:
    assert [i.name for i in CITED if sources()[i.source].title.startswith("common practice")] == []


def test_a_figure_without_a_source_is_called_common_practice() -> None:
    assert source_text(PRACTICE) == source_text("") == "common practice, no source"
    assert source_text("Q061") == "Q061"


UNITS = {"cups": "cup", "pieces": "each", "slices": "slice", "per guest": "each", "oz": "oz", "servings": "serving"}


def published(row: dict[str, str]) -> tuple[float, float, str]:
    """The lowest and highest figure for one person in a source row, and its unit."""
    low, _, high = row["quantity"].partition("-")
    unit = re.sub(r" (AP|raw|cooked)$", "", row["unit"])
    figures = [float(low), float(high or low)]
    if row["basis"].startswith("per lb"):
        return 1 / max(figures), 1 / min(figures), "lb"
    people = re.match(r"per (\d+) (people|portions)$", row["basis"])
    if unit == "No. 10 cans":
        # One No. 10 can holds 12 to 13 cups (Q367).
        figures, unit = [figures[0] * 12, figures[1] * 13], "cup"
    n = int(people[1]) if people else 1
    return min(figures) / n, max(figures) / n, UNITS.get(unit, unit)


@pytest.mark.parametrize("item", CITED, ids=lambda item: item.name)
def test_the_portion_is_the_one_its_source_gives(item) -> None:  # type: ignore[no-untyped-def]
    row = next(r for r in rows("sources_quantities") if r["id"] == item.source)
    low, high, unit = published(row)
    raw = row["unit"].endswith((" raw", " AP"))

    def served(value: float) -> float:
        bought = convert(value, unit, item.unit, grams_per_cup=item.grams_per_cup, grams_each=item.grams_each)
        return bought * item.cooked_yield if raw else bought

    # Figures are rounded to what a cook would measure: 5 %.
    assert served(low) * 0.95 <= item.amount * portions_held(item) <= served(high) * 1.05


def portions_held(item) -> float:  # type: ignore[no-untyped-def]
    """Some sources add an allowance for sauce in their conditions (55 g, Q042), which the note of the row tells."""
    return 140 / 195 if "55 g" in item.note else 1.0


def test_items_can_be_bought_in_the_packages_they_name() -> None:
    for item in items().values():
        need = item.to_buy(item.amount * 10)
        assert need > 0, item.name
        assert item.sizes, item.name
        for size in item.sizes:
            try:
                convert(
                    size.amount, size.unit, item.buy_unit, grams_per_cup=item.grams_per_cup, grams_each=item.grams_each
                )
            except NoConversion:
                pytest.fail(f"{item.name}: {size.id} is not in {item.buy_unit}")


def test_items_stay_within_sense() -> None:
    for item in items().values():
        assert item.kind in kinds(), item.name
        assert 0 < item.uptake <= 1, item.name
        assert 0.25 <= item.cooked_yield <= 1.2, item.name
        assert all(size.id in sizes() for size in item.sizes)


def test_every_item_is_found_by_its_own_name() -> None:
    assert [item.name for item in items().values() if find(item.name) != item] == []


@pytest.mark.parametrize(
    ("said", "meant"),
    [
        ("Grandma's creamy slaw", "coleslaw"),
        ("Potato Salad", "potato salad"),
        ("salad with potatoes and ham", "green salad"),
        ("hot dog buns", "buns"),
        ("HOTDOGS, hot dogs", "hot dogs"),
        ("pulled pork in my crock pot", "pulled pork"),
        ("a bag of ice", "ice"),
        ("mac & cheese", "macaroni and cheese"),
        ("jacket potatoes", "baked potatoes"),
        ("paper plates", "plates"),
        ("blackberry pies", "berry pie"),
        ("brownies", "brownies"),
        ("chilli con carne", "chili"),
    ],
)
def test_words_find_the_item_they_mean(said: str, meant: str) -> None:
    found = find(said)

    assert found is not None
    assert found.name == meant


@pytest.mark.parametrize(
    ("said", "category", "unit"),
    [
        ("orange chicken", "main", "cup"),  # no oranges
        ("butternut squash soup", "main", "cup"),  # no squash
        ("honey roasted parsnips", "side", "g"),  # no honey
        ("cake pops", "dessert", "slice"),  # no pop to drink
        ("sweet and sour pork", "main", "cup"),  # no sweets
    ],
)
def test_a_dish_is_reckoned_as_a_dish_and_not_as_one_of_its_words(said: str, category: str, unit: str) -> None:
    found = item_for(said, category)

    assert (found.category, found.unit) == (category, unit)


def test_words_about_nothing_to_eat_find_nothing() -> None:
    assert find("xyzzy") is None
    assert find("") is None
