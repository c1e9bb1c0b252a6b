"""Food safety. Each worked case names the published source it is checked against."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.texts import Voice
from planning import tables
from planning.kitchen import timeline
from planning.kitchen.modes import adjusted_minutes
from planning.kitchen.result import PlannedStep, Timeline
from planning.potluck import Answer, Guest, HeatStep, Kitchen, Party, Potluck, Promise, SlowCooker, Stage
from planning.safety import BLOCK, NOTE, WARN, SafetyNote, safety
from planning.safety.clocks import clock, warm_half
from planning.safety.ill import may_cook_from
from planning.safety.notes import note
from planning.safety.standing_out import cooling, leftover_days
from planning.safety.thaw import cold_water_min
from planning.safety.words import perishable

CHICAGO = "America/Chicago"


def at(text: str) -> datetime:
    return datetime.fromisoformat(text).replace(tzinfo=ZoneInfo(CHICAGO)).astimezone(UTC)


START = at("2027-09-18T17:00")
LONG_BEFORE = at("2027-09-01T12:00")


def dish(name: str, *steps: HeatStep, **facts: object) -> Promise:
    usual: dict[str, object] = {"category": "main", "heat": steps or None}
    return Promise("1", "g", name, **(usual | facts))  # type: ignore[arg-type]


def supper(*promises: Promise, party: Party | None = None, pregnant: bool = False, **facts: object) -> Potluck:
    guest = Guest("g", "G", Answer.YES, party or Party(2), pregnant=pregnant)
    return replace(Potluck("p", START, CHICAGO, guests=(guest,), promises=promises), **facts)  # type: ignore[arg-type]


def rules(potluck: Potluck, now: datetime = LONG_BEFORE, plan: Timeline | None = None) -> dict[str, SafetyNote]:
    """Notes about promises, by the key of their sentence."""
    return {n.say.key.removeprefix("safety-"): n for n in safety(potluck, now, plan)}


# 1 and 2. Clocks: TIME-01 two hours, TIME-02 one hour in heat (federal consumer advice, FDA/USDA).


def test_potato_salad_out_of_the_refrigerator_at_half_past_eleven_is_discarded_at_half_past_one() -> None:
    salad = dish("potato salad", out_since=at("2027-09-18T11:30"))

    found = rules(supper(salad), at("2027-09-18T13:30"))["out-over"]

    assert (found.rule, found.severity, found.deadline) == ("TIME-01", BLOCK, at("2027-09-18T13:30"))


def test_the_same_at_92_degrees_outdoors_is_discarded_at_half_past_twelve() -> None:
    salad = dish("potato salad", out_since=at("2027-09-18T11:30"))
    hot = supper(salad, setting="outdoor", outdoor_temp_f=92)

    found = rules(hot, at("2027-09-18T12:00"))["out-running"]

    assert (found.rule, found.severity, found.deadline) == ("TIME-02", WARN, at("2027-09-18T12:30"))


@pytest.mark.parametrize(("temp", "limit"), [(89.9, 120), (90.0, 60), (90.1, 60)])
def test_the_hour_holds_from_ninety_degrees_on(temp: float, limit: int) -> None:
    # Conflict 5 of the notes: "above 90" against "90 or above"; the stricter reading is used.
    salad = dish("potato salad")

    assert clock(supper(salad, setting="outdoor", outdoor_temp_f=temp), salad).limit_min == limit


def test_an_unknown_temperature_outdoors_in_summer_counts_as_heat() -> None:
    salad = dish("potato salad")

    assert clock(supper(salad, setting="outdoor"), salad).assumed_hot


@pytest.mark.parametrize(
    ("zone", "month", "warm"),
    [("America/Chicago", 7, True), ("America/Chicago", 1, False), ("Australia/Sydney", 1, True),
     ("Australia/Sydney", 7, False), ("Asia/Singapore", 1, True), ("Etc/GMT+6", 1, True)],
)  # fmt: skip
def test_the_warm_half_of_the_year_follows_the_hemisphere(zone: str, month: int, warm: bool) -> None:
    assert warm_half(zone, datetime(2027, month, 15, tzinfo=UTC)) is warm


@given(st.integers(0, 300), st.integers(0, 300), st.booleans())
def test_minutes_out_of_temperature_add_up(before: int, since: int, hot: bool) -> None:
    salad = dish("potato salad", out_since=START, out_min=before)
    party = supper(salad, setting="outdoor", outdoor_temp_f=95 if hot else 70)
    limit = 60 if hot else 120

    found = [n for n in safety(party, START + timedelta(minutes=since)) if n.rule in ("TIME-01", "TIME-02")]

    assert [n.severity for n in found] == [BLOCK if before + since >= limit else WARN]


def test_bread_keeps_and_a_custard_tart_does_not() -> None:
    assert not perishable(dish("Soda bread", category="bread"))
    assert perishable(dish("Bread pudding with custard", category="dessert"))
    assert perishable(dish("Something nobody knows"))


@pytest.mark.parametrize(
    ("name", "listed"),
    [
        ("Shrimp scampi", ("shrimp", "butter", "garlic")),  # LEFT-16: fish and meat
        ("Beef pot", ("beef", "bread")),  # LEFT-16
        ("Lobster rolls", None),  # LEFT-16
        ("Rice and pickles", None),  # TCS-04: cooked rice
        ("Eggplant parmesan", None),  # TCS-04: cooked vegetables
        ("Mashed potatoes", ("potatoes", "butter")),  # LEFT-14
        ("Chips and salsa", None),  # TCS-01: cut tomatoes
        ("Cheese board", ("brie", "crackers")),  # LEFT-07: soft cheese
        ("Something nobody knows", ("butter", "apple")),
    ],
)
def test_what_keeps_on_its_own_does_not_make_the_rest_keep(name: str, listed: tuple[str, ...] | None) -> None:
    # Allegheny County Health Department, Refrigerated Foods Holding Guide (LEFT-05 to LEFT-16); TCS-01, TCS-04.
    assert perishable(replace(dish(name), ingredients=listed))


@pytest.mark.parametrize("name", ["Dinner rolls", "Sliced bread", "Apple pie", "Oatmeal cookies", "Potato chips"])
def test_bread_dry_snacks_and_fruit_pies_still_keep(name: str) -> None:
    # TCS-06 (FDA Food Code, from memory) and LEFT-13 (read).
    assert not perishable(dish(name))


# 4. Slow-cooker misuse: REHEAT-05 and SLOW-05 (USDA FSIS, Cooking for Groups; Iowa State University Extension).


def test_chilled_chili_reheated_in_the_slow_cooker_is_blocked() -> None:
    chili = dish("chili", HeatStep("stove", 60, at="home"), HeatStep("chill", 600, at="home"),
                 HeatStep("slow-cooker-low", 240))  # fmt: skip

    assert rules(supper(chili))["slow-reheat"].severity == BLOCK


def test_chili_boiled_on_the_stove_and_held_in_the_slow_cooker_is_not_blocked() -> None:
    chili = dish("chili", HeatStep("chill", 600, at="home"), HeatStep("stove", 30), HeatStep("slow-cooker-low", 60))

    assert BLOCK not in {n.severity for n in safety(supper(chili), LONG_BEFORE)}


def test_meatballs_straight_from_the_freezer_are_blocked_and_thawed_ones_not() -> None:
    slow = HeatStep("slow-cooker-low", 240)

    assert rules(supper(dish("meatballs", slow, frozen_lb=3)))["slow-frozen"].severity == BLOCK
    thawed = dish("meatballs", HeatStep("thaw", 1440, at="home"), slow, frozen_lb=3)
    assert "slow-frozen" not in rules(supper(thawed))


def test_a_slow_cooker_for_half_an_hour_asks_whether_the_dish_is_cooked_already() -> None:
    assert rules(supper(dish("queso", HeatStep("slow-cooker-low", 30))))["slow-short"].severity == WARN


@pytest.mark.parametrize(
    ("quantity", "key"),
    [("5 qt", "slow-full"), ("4 qt", None), ("3 qt", None), ("2 qt", "slow-empty")],  # 6 qt: 3 to 4 qt (FSIS)
)
def test_a_slow_cooker_is_filled_from_half_to_two_thirds(quantity: str, key: str | None) -> None:
    soup = dish("soup", HeatStep("slow-cooker-low", 300), quantity=quantity)
    found = rules(supper(soup, kitchen=Kitchen(slow_cookers=(SlowCooker(6),))))

    assert {k for k in found if k in ("slow-full", "slow-empty")} == ({key} if key else set())


@pytest.mark.parametrize(
    ("ingredients", "key", "severity"),
    [(("dried kidney beans",), "kidney-dry", BLOCK), (("kidney beans",), "kidney-ask", WARN),
     (("canned kidney beans",), None, None)],
)  # fmt: skip
def test_dry_kidney_beans_do_not_go_straight_into_a_slow_cooker(
    ingredients: tuple[str, ...], key: str | None, severity: str | None
) -> None:
    # SLOW-18, Food Safety Information Council (Australia): ten minutes at a brisk boil first.
    found = rules(supper(dish("chili", HeatStep("slow-cooker-low", 480), ingredients=ingredients)))

    beans = {k: n.severity for k, n in found.items() if k.startswith("kidney")}
    assert beans == ({key: severity} if key else {})


# 6. Turkey: THAW-05 (30 min a pound in cold water), COOK-01 (165 °F), COOK-31 (14-18 lb at 325 °F: up to 4.25 h).

TURKEY = dish("roast turkey", HeatStep("oven", 255, 325), HeatStep("rest", 20), frozen_lb=14, serve="hot")
SATURDAY = replace(supper(TURKEY), starts_at=at("2027-11-27T16:00"))


def test_a_fourteen_pound_turkey_goes_into_the_refrigerator_on_tuesday_at_11_25() -> None:
    plan = timeline(SATURDAY, at("2027-11-15T12:00"), effort=0)

    found = rules(SATURDAY, at("2027-11-15T12:00"), plan)["thaw-fridge"]

    assert min(s.start for s in plan.steps) == at("2027-11-27T11:25")  # 16:00 - 20 min - 4.25 h
    assert found.deadline == at("2027-11-23T11:25")  # ceil(14 / 4) = 4 days


def test_too_late_for_the_refrigerator_it_thaws_in_cold_water_from_04_25() -> None:
    plan = timeline(SATURDAY, at("2027-11-26T12:00"), effort=0)

    found = rules(SATURDAY, at("2027-11-26T12:00"), plan)["thaw-water"]

    assert cold_water_min(14) == 7 * 60
    assert (found.deadline, found.severity) == (at("2027-11-27T04:25"), WARN)


def test_too_late_even_for_cold_water_it_is_blocked() -> None:
    assert rules(SATURDAY, at("2027-11-27T06:00"))["thaw-too-late"].severity == BLOCK


def test_a_turkey_is_cooked_to_165_degrees() -> None:
    assert rules(SATURDAY)["cook-through"].value == 165


# 8. Sharing an oven: OVEN-16 (the linear time rule) and OVEN-13 (15 % more in a full oven), planning estimates.


def test_forty_minutes_at_375_are_forty_three_at_350() -> None:
    assert adjusted_minutes(40, 375, 350) == 43


# 11. Children: CHOKE-02 (Caring for Our Children 4.5.0.10, AAP/APHA), SPEC-09 (INSPQ: honey from 12 months on).

TODDLER, CHILD, INFANT = Party(1, toddlers=1), Party(1, children=1), Party(1, infants=1)


@pytest.mark.parametrize("name", ["whole grapes", "hot dogs", "popcorn"])
def test_choking_shapes_are_blocked_where_a_child_under_four_comes(name: str) -> None:
    assert rules(supper(dish(name), party=TODDLER))["choke"].severity == BLOCK


@pytest.mark.parametrize("name", ["grapes, quartered", "hot dogs cut in strips"])
def test_food_cut_small_is_not_blocked(name: str) -> None:
    assert "choke" not in rules(supper(dish(name), party=TODDLER))


@pytest.mark.parametrize("name", ["peanut butter and whole grapes", "grated cheese and hot dogs", "strips and nuts"])
def test_another_food_that_is_soft_or_cut_does_not_unblock_the_whole_one(name: str) -> None:
    # CHOKE-02: grapes, hot dogs and nuts stay on the list whatever stands beside them.
    assert rules(supper(dish(name), party=TODDLER))["choke"].severity == BLOCK


def test_peanut_butter_in_a_dough_is_no_peanut_to_choke_on() -> None:
    # CHOKE-02 lists peanuts, and peanut butter only by the spoonful.
    assert "choke" not in rules(supper(dish("peanut butter cookies"), party=TODDLER))


@pytest.mark.parametrize("party", [TODDLER, INFANT])
def test_nuts_only_named_as_part_of_a_dish_warn_and_bar_nothing(party: Party) -> None:
    # CHOKE-02 bars whole peanuts; the noodles may hold them chopped or as a sauce, so it is no worse than an allergy.
    assert rules(supper(dish("peanut noodles"), party=party))["choke"].severity == WARN
    assert rules(supper(dish("noodles and peanuts"), party=party))["choke"].severity == BLOCK


def test_from_four_years_on_it_is_only_a_caution() -> None:
    assert rules(supper(dish("whole grapes"), party=CHILD))["choke-older"].severity == NOTE


def test_honey_glazed_ham_is_blocked_where_an_infant_comes_and_not_otherwise() -> None:
    assert rules(supper(dish("honey-glazed ham"), party=INFANT))["honey"].severity == BLOCK
    assert "honey" not in rules(supper(dish("honey-glazed ham"), party=TODDLER))


# 14. Cooling: COOL-01 and COOL-02 (Food Code by COMAR 10.15.03.11), COOL-06 (two inches).


def test_soup_at_135_degrees_at_eight_is_at_70_by_ten_and_at_41_by_two() -> None:
    assert cooling(at("2027-09-18T20:00")) == ((70.0, at("2027-09-18T22:00")), (41.0, at("2027-09-19T02:00")))


def test_leftovers_are_chilled_within_two_hours_in_shallow_containers() -> None:
    found = rules(supper(dish("soup")))

    assert (found["leftovers-chill"].deadline, found["leftovers-shallow"].value) == (at("2027-09-18T19:00"), 2)


@pytest.mark.parametrize(("name", "days"), [("stew", 3), ("cooked rice", 3), ("melon salad", 2), ("whipped cream", 1)])
def test_leftovers_keep_for_the_shorter_of_two_sources(name: str, days: int) -> None:
    # LEFT-01 (3-4 days) against FoodKeeper's 4-6 days for rice, 2-4 for melon, 1 for whipped cream.
    assert leftover_days(dish(name))[0] == days


# 16. The ill cook: ILL-01 (CDC: two days after symptoms stop).


def test_somebody_ill_on_thursday_evening_may_not_cook_for_saturday_but_for_sunday() -> None:
    free = may_cook_from(at("2027-09-16T20:00"))

    assert at("2027-09-18T18:00") < free < at("2027-09-19T18:00")  # 46 h and 70 h; 48 h are needed


# Holding, reheating, risky food.


def test_a_hot_dish_is_held_at_140_degrees_and_a_lukewarm_hold_is_blocked() -> None:
    cool = dish("gravy", HeatStep("stove", 10), HeatStep("keep-warm", 30, 120), serve="hot")

    assert rules(supper(cool))["hold-too-cool"].severity == BLOCK  # HOLD-06, USDA FSIS: 140 °F


def test_a_reheated_casserole_needs_165_degrees_and_an_oven_of_325() -> None:
    again = dish("lasagna", HeatStep("oven", 60, 375, at="home"), HeatStep("chill", 600, at="home"),
                 HeatStep("oven", 40, 300))  # fmt: skip
    found = rules(supper(again))

    assert (found["reheat"].value, found["reheat-oven"].severity) == (165, WARN)  # REHEAT-01, REHEAT-04, USDA FSIS


@pytest.mark.parametrize(
    ("name", "severity"),
    [
        ("bean sprout salad", BLOCK),
        ("brie board", WARN),
        ("smoked salmon", WARN),
        ("tiramisu", BLOCK),
        ("cold cuts", WARN),
    ],
)
def test_listeria_food_is_marked_where_somebody_is_pregnant(name: str, severity: str) -> None:
    found = {k: n.severity for k, n in rules(supper(dish(name), pregnant=True)).items() if k.startswith("listeria")}

    assert set(found.values()) == {severity}
    assert not [k for k in rules(supper(dish(name))) if k.startswith("listeria")]


def test_home_canned_vegetables_are_blocked() -> None:
    assert rules(supper(dish("beets", ingredients=("home-canned beets",))))["home-canned"].severity == BLOCK


def test_a_nearly_full_circuit_is_a_warning() -> None:
    began = START - timedelta(hours=5)
    steps = tuple(PlannedStep("1", "slow-cooker-low", f"slow-cooker:{n}", 0, began, START, watts=480) for n in range(3))

    found = rules(supper(dish("soup")), plan=Timeline("feasible", 0, 0, steps))["circuit-full"]

    assert (found.value, found.say.facts["watts"], found.severity) == (1440, 1440, WARN)  # ELEC-03


# The whole.


def test_a_row_known_only_from_memory_makes_no_block() -> None:
    assert note("SPEC-12", BLOCK, "rice", {}).severity == NOTE


def test_every_row_names_a_source_that_is_listed() -> None:
    listed = tables.sources()
    for name in ("safety", "appliances", "cooking_times", "safety_words"):
        assert [r for r in tables.rows(name) if r["source"] not in listed] == []


def test_a_cancelled_potluck_has_no_notes() -> None:
    assert safety(supper(dish("soup"), stage=Stage.CANCELLED), LONG_BEFORE) == ()


def test_a_guest_who_cannot_come_brings_no_notes() -> None:
    party = supper(dish("sushi"))
    gone = replace(party, guests=(replace(party.guests[0], answer=Answer.NO),))

    assert {n.promise for n in safety(gone, LONG_BEFORE)} == {None}


WORDS = [r["word"] for r in tables.rows("safety_words")]
NAMES = st.lists(st.sampled_from([*WORDS, "stew", "slaw"]), min_size=1, max_size=3)
KINDS = st.sampled_from(["oven", "stove", "slow-cooker-low", "keep-warm", "chill", "thaw"])
STEPS = st.lists(st.builds(HeatStep, KINDS, st.integers(1, 500), st.sampled_from([None, 110.0, 300.0])), max_size=4)


@st.composite
def suppers(draw: st.DrawFn) -> Potluck:
    promise = dish(
        " with ".join(draw(NAMES)),
        *draw(STEPS),
        serve=draw(st.sampled_from([None, "hot", "cold"])),
        frozen_lb=draw(st.none() | st.floats(0.1, 30)),
        out_min=draw(st.integers(0, 200)),
        out_since=draw(st.none() | st.just(START)),
        quantity=draw(st.sampled_from([None, "2 qt", "3 lb"])),
    )
    some = st.integers(0, 1)
    return supper(
        promise,
        party=Party(1, 0, draw(some), draw(some), draw(some)),
        pregnant=draw(st.booleans()),
        setting=draw(st.sampled_from(["indoor", "outdoor"])),
    )


@given(suppers(), st.integers(-20_000, 300))
def test_every_note_rests_on_a_row_blocks_on_a_read_one_and_none_calls_a_dish_safe(
    potluck: Potluck, later: int
) -> None:
    voice = Voice()
    rows = {r["id"]: r for r in tables.rows("safety")}

    for found in safety(potluck, START + timedelta(minutes=later)):
        said = voice.say(found.say)
        assert found.rule in rows
        assert found.severity == NOTE or rows[found.rule]["how_known"] == "read"
        assert " safe" not in said.casefold()
        assert said.rstrip().endswith((".", "?"))


@given(suppers(), st.integers(0, 300), st.integers(0, 300))
def test_time_never_makes_a_dish_better(potluck: Potluck, first: int, then: int) -> None:
    def blocks(minutes: int) -> set[str]:
        return {n.say.key for n in safety(potluck, START + timedelta(minutes=minutes)) if n.severity == BLOCK}

    assert blocks(first) <= blocks(first + then)
