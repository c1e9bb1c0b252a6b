"""Allergens among the guests and in the dishes. XCON-01 and XCON-03 are the published rows behind the advice."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.texts import Voice
from planning.potluck import Answer, Bar, Guest, Need, Party, Potluck, Promise, Topping
from planning.safety import BLOCK, NOTE, WARN, SafetyNote, safety
from tests.planning.test_safety import LONG_BEFORE, dish, supper

PEANUT = Need("peanut", 1, "severe")
PAD_THAI = dish("pad thai", ingredients=("peanuts", "egg", "rice noodles", "shrimp"))


def table(*needs: Need, answer: Answer = Answer.YES, **facts: object) -> Potluck:
    guest = Guest("vera", "Vera Voss", answer, Party(2), needs=needs)
    base = supper(PAD_THAI)
    return replace(base, **{"guests": (*base.guests, guest), **facts})  # type: ignore[arg-type]


def notes(potluck: Potluck) -> list[SafetyNote]:
    return [n for n in safety(potluck, LONG_BEFORE) if n.say.key.startswith("safety-allergen")]


def test_a_listed_allergen_and_a_guest_who_must_not_eat_it_is_a_warning() -> None:
    (found,) = notes(table(PEANUT))

    assert (found.severity, found.rule, found.promise) == (WARN, "XCON-01", PAD_THAI.id)
    assert found.say.facts["who"] == "cook"


@pytest.mark.parametrize(
    ("answer", "warned"), [(Answer.YES, True), (Answer.MAYBE, True), (Answer.NONE, True), (Answer.NO, False)]
)
def test_the_warning_is_for_everybody_who_may_come(answer: Answer, warned: bool) -> None:
    assert bool(notes(table(PEANUT, answer=answer))) is warned


@pytest.mark.parametrize(
    ("severity", "degree", "level"),
    [("severe", "severe", WARN), ("anaphylaxis", "severe", WARN), ("allergy", "allergy", WARN), ("", "allergy", WARN),
     ("intolerance", "intolerance", NOTE)],
)  # fmt: skip
def test_a_severe_allergy_is_worded_more_strongly(severity: str, degree: str, level: str) -> None:
    (found,) = notes(table(Need("peanut", 1, severity)))

    assert (found.say.facts["degree"], found.severity) == (degree, level)


def test_two_with_the_same_allergy_are_one_note_at_the_worse_degree() -> None:
    (found,) = notes(table(Need("peanut", 1, "allergy"), PEANUT))

    assert found.say.facts["degree"] == "severe"


def test_a_diet_of_choice_is_no_allergy() -> None:
    assert notes(table(Need("vegan", 2, "diet"), Need("halal", 1))) == []


def test_a_celiac_and_a_dish_with_flour_is_a_warning() -> None:
    bread = dish("flat bread", category="bread", ingredients=("wheat flour", "water", "salt"))

    (found,) = notes(table(Need("gluten-free", 1, "allergy"), promises=(bread,)))

    assert (found.severity, found.say.facts["need"]) == (WARN, "gluten-free")


def test_what_only_the_usual_recipe_holds_is_a_note_to_ask() -> None:
    (found,) = notes(table(Need("milk", 1, "allergy"), promises=(dish("lasagna"),)))

    assert (found.severity, found.say.key) == (NOTE, "safety-allergen-usual")


def test_a_name_that_says_peanut_needs_no_list() -> None:
    (found,) = notes(table(PEANUT, promises=(dish("peanut noodle thing"),)))

    assert (found.severity, found.say.facts["who"]) == (WARN, "name")


def test_a_topping_with_the_allergen_is_a_warning_about_spoons() -> None:
    bar = Bar("baked potato", (Topping("chopped peanuts", "g"), Topping("chives", "g"), Topping("peanut sauce")))

    (found,) = notes(table(PEANUT, promises=(), bar=bar))

    assert (found.rule, found.severity, found.say.facts["dish"]) == ("XCON-03", WARN, "chopped peanuts")


allergens = st.sampled_from(
    ["milk", "egg", "fish", "shellfish", "tree-nut", "peanut", "wheat", "soy", "sesame", "mustard", "gluten"]
)
FOODS = ("peanuts", "butter", "eggs", "flour", "tofu", "tahini", "walnuts", "shrimp", "salmon", "carrots", "wort")
foods = st.sampled_from(FOODS)
degrees = st.sampled_from(["allergy", "severe", "intolerance", ""])


@settings(deadline=None)
@given(
    st.lists(st.builds(Need, allergens, st.just(1), degrees), max_size=4),
    st.lists(st.lists(foods, max_size=4), max_size=4),
)
def test_nobody_is_named_and_every_note_can_be_said(needs: list[Need], lists: list[list[str]]) -> None:
    promises = tuple(
        Promise(f"p{n}", "g", f"dish {n}", "main", ingredients=tuple(one) or None) for n, one in enumerate(lists)
    )
    voice = Voice()

    for note in notes(table(*needs, promises=promises)):
        assert note.severity != BLOCK
        assert "Vera" not in voice.say(note.say)
        assert voice.say(note.say).endswith(".")
    assert len({(n.promise, n.say.facts["need"]) for n in notes(table(*needs, promises=promises))}) == len(
        notes(table(*needs, promises=promises))
    )


@settings(deadline=None)
@given(st.lists(foods, min_size=1, max_size=4))
def test_a_listed_peanut_is_never_passed_over(listed: list[str]) -> None:
    promise = Promise("p", "g", "supper dish", "main", ingredients=(*listed, "roasted peanuts"))

    assert [n.severity for n in notes(table(PEANUT, promises=(promise,)))] == [WARN]
