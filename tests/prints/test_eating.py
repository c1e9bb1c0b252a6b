from __future__ import annotations

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from bot.prints.eating import diet_lines
from bot.prints.say import Writer
from planning.diets import can_eat, diets
from planning.potluck import Answer, Bar, Guest, Need, Promise, Topping
from tests.prints.builders import a_guest, a_potluck, words_from_texts

WORDS = words_from_texts()


def _lines(potluck, **options):
    rows = [
        {"guest": r.guest, "need": r.need, "category": r.category, "safe_promises": list(r.safe_promises),
         "ask_first": list(r.ask_first), "short": r.short}
        for r in diets(potluck)
    ]  # fmt: skip
    return diet_lines(potluck, {"diets": rows}, Writer(potluck, WORDS), **options)


def _allergic(need: str, *dishes: tuple[str, str], open: bool = True, bar: Bar | None = None, count: int = 1):
    guests = (a_guest(0, needs=(Need(need, count, "allergy", open),)), a_guest(1))
    promises = tuple(Promise(f"p{n}", "g1", dish, category, 8) for n, (dish, category) in enumerate(dishes))
    return a_potluck(0, guests=guests, promises=promises, bar=bar)


def test_a_salad_with_the_allergen_is_named_though_the_plan_counts_it_among_the_sides() -> None:
    (entry,) = _lines(_allergic("peanut", ("peanut noodle salad", "salad"), ("green salad", "salad")))

    assert entry["unfit"] == "May not eat: peanut noodle salad"


def test_drinks_and_toppings_are_judged_though_the_plan_has_no_rows_for_them() -> None:
    bar = Bar("baked potato", (Topping("chopped peanuts", "g1"), Topping("chives", "g1")))

    (entry,) = _lines(_allergic("peanut", ("peanut milk", "drink"), bar=bar))

    assert "chopped peanuts" in entry["unfit"]
    assert "peanut milk" in entry["unfit"]
    assert "chives" not in entry["unfit"]


def test_a_need_written_another_way_than_the_plan_writes_it_keeps_its_owner_and_kind() -> None:
    (entry,) = _lines(_allergic("peanuts", ("green salad", "salad")))

    assert entry["who"].startswith("Inés Łukasiewicz: ")
    assert "(allergy)" in entry["who"]


def test_people_who_share_a_need_that_is_not_open_make_one_line_without_names() -> None:
    need = (Need("vegetarian", 2, "diet"),)
    guests = (a_guest(0, needs=need), a_guest(1, needs=need), a_guest(2))
    potluck = a_potluck(0, guests=guests, promises=(Promise("p0", "g2", "beef stew", "main", 8),))

    (entry,) = _lines(potluck)

    assert entry["who"] == "4 people: vegetarian"
    assert entry["unfit"] == "May not eat: beef stew"


def test_where_no_cook_listed_anything_every_dish_is_to_be_asked_about() -> None:
    (entry,) = _lines(_allergic("egg", ("green salad", "salad"), ("beef stew", "main")))

    assert entry["to_ask"] == WORDS("prints-diet-ask-all")
    assert entry["rest"] == [WORDS("prints-diet-fits-none")]


def test_a_guest_who_does_not_come_has_no_line() -> None:
    potluck = _allergic("egg", ("green salad", "salad"))
    potluck = replace(potluck, guests=(replace(potluck.guests[0], answer=Answer.NO), potluck.guests[1]))

    assert _lines(potluck) == []


def test_nothing_known_against_any_dish_never_reads_as_if_all_might_be_eaten() -> None:
    dishes = [(f"green salad {n}", "salad") for n in range(9)]
    potluck = _allergic("peanut", *dishes)
    (entry,) = _lines(potluck)
    listed = replace(potluck.promises[0], ingredients=("lettuce",))
    (with_one,) = _lines(replace(potluck, promises=(listed, *potluck.promises[1:])))

    assert entry["to_ask"] == "Every dish: not before asking the cook"
    assert with_one["to_ask"] == "Not before asking the cook: 8 of 9 dishes"
    assert with_one["rest"] == ["May eat, by what is listed: green salad 0"]
    assert "othing known" not in str((entry, with_one))


def test_two_dishes_of_one_name_are_told_apart_by_their_cooks() -> None:
    potluck = _allergic("peanut", ("slaw", "salad"), ("slaw", "salad"))
    listed = replace(potluck.promises[0], guest="g0", ingredients=("cabbage", "peanuts"))
    potluck = replace(potluck, promises=(listed, potluck.promises[1]))

    (entry,) = _lines(potluck)

    assert entry["unfit"] == "May not eat: slaw (Inés Łukasiewicz)"


def test_the_bars_base_is_judged_like_any_dish() -> None:
    (entry,) = _lines(_allergic("wheat", bar=Bar("burger", (Topping("chives", "g1"),))))

    assert entry["unfit"] == "May not eat: burger"
    assert "chives" not in entry["unfit"]


def test_of_a_long_table_the_longer_list_is_everything_else_with_its_number() -> None:
    dishes = [(f"green salad {n}", "salad") for n in range(9)]
    potluck = _allergic("peanut", ("peanut noodles", "main"), ("rice", "side"), *dishes)
    rice = replace(potluck.promises[1], ingredients=("rice",))
    potluck = replace(potluck, promises=(potluck.promises[0], rice, *potluck.promises[2:]))

    (entry,) = _lines(potluck)

    assert entry["unfit"] == "May not eat: peanut noodles"
    assert entry["rest"] == [
        "May eat, by what is listed: rice",
        "Everything else (9 dishes): not before asking the cook",
    ]


dish = st.sampled_from(["peanut noodle salad", "green salad", "beef stew", "cheese pie", "apple pie", "shrimp curry"])
category = st.sampled_from(["main", "side", "salad", "starter", "bread", "dessert", "drink", "topping"])


@settings(max_examples=60, deadline=None)
@given(
    st.lists(
        st.tuples(dish, category, st.one_of(st.none(), st.just(("rice", "peanut")), st.just(("apple",)))), max_size=6
    ),
    st.lists(st.sampled_from(["peanut", "milk", "vegan", "halal", "shellfish"]), min_size=1, max_size=3, unique=True),
    st.booleans(),
)
def test_every_dish_listed_against_a_need_is_named_and_none_of_them_fits(brought, needs, open_: bool) -> None:
    guest = Guest("g0", "Inés", Answer.YES, needs=tuple(Need(n, 1, "allergy", open_) for n in needs))
    promises = tuple(Promise(f"p{n}", "g1", f"{d} {n}", c, 8, None, i) for n, (d, c, i) in enumerate(brought))
    potluck = a_potluck(0, guests=(guest, a_guest(1)), promises=promises)

    for entry in _lines(potluck):
        need = next(n for n in needs if WORDS("prints-need", need=n) in entry["who"])
        for promise in promises:
            if can_eat(promise, need) == "contains":
                assert promise.dish in entry["unfit"]
                assert promise.dish not in str(entry["rest"])
        told = " ".join([entry["unfit"], entry["to_ask"], *entry["rest"]])
        assert any(w in told for w in ("verything else", "Every dish", " dishes")) or all(
            p.dish in told for p in promises
        )
