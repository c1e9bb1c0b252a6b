"""Whose a need is: another guest's is never the writer's, what is told of nobody here is nobody's, several count."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planning.replies import SetNeeds, SetPregnant, read
from tests.replies.corpus import context_of

TOLD = (
    "{} has a severe peanut allergy", "{} is severely allergic to peanuts", "{} can't eat peanuts",
    "{}'s allergic to peanuts",
    "{} - peanut allergy", "{}: no peanuts", "{} reacts badly to peanuts", "put {} down as vegan", "{} is vegan",
    "{} is a strict vegetarian", "{} needs gluten free", "note that {} can't have dairy", "no nuts for {} please",
    "I eat anything but {} is coeliac", "{} doesn't eat meat", "{}'s got a bad shellfish allergy",
)  # fmt: skip


def needs(text: str, place: str = "board") -> list[SetNeeds]:
    return [i for i in read(text, context_of(place)).intents if isinstance(i, SetNeeds) and i.needs]


@settings(max_examples=120, deadline=None)
@given(st.sampled_from(TOLD), st.sampled_from((("Pat", "pat"), ("Mei", "mei"))), st.sampled_from(("board", "bot")))
def test_what_is_told_of_a_guest_is_that_guests_and_asked_about(told: str, who: tuple[str, str], place: str) -> None:
    text = told.format(who[0])
    reading = read(text, context_of(place))

    assert {i.who for i in reading.intents if isinstance(i, SetNeeds) and i.needs} == {who[1]}, text
    assert not any(isinstance(i, SetNeeds) for i in (reading.intents if reading.sure else reading.now)), text


def test_the_writers_own_beside_a_guests_stays_the_writers() -> None:
    found = needs("Pat is vegan and I'm allergic to eggs")

    assert {(i.who, n.need) for i in found for n in i.needs} == {("pat", "vegan"), ("ravi", "egg")}


def test_a_guest_who_is_only_greeted_has_no_part_in_it() -> None:
    assert [i.who for i in needs("Hi Pat, I'm allergic to nuts")] == ["ravi"]


def test_a_child_of_a_guest_is_in_that_guests_party() -> None:
    assert [(i.who, i.member) for i in needs("Pat's son has an egg allergy")] == [("pat", "Pat's son")]


@pytest.mark.parametrize(
    "text",
    [
        "my dog is allergic to chicken", "our cat is lactose intolerant", "a man I knew died of a peanut allergy",
        "did you know 2% of kids are allergic to peanuts", "most people are lactose intolerant anyway",
        "if anyone is vegan I can leave out the cheese", "that plan is nuts", "my neighbour's dog has a wheat allergy",
    ],
)  # fmt: skip
@pytest.mark.parametrize("place", ["board", "chat"])
def test_what_nobody_here_has_is_no_need(text: str, place: str) -> None:
    assert needs(text, place) == []


def test_ones_own_after_what_is_told_of_others_is_heard() -> None:
    assert [n.need for i in needs("most people don't know it but I'm allergic to kiwi") for n in i.needs] == ["kiwi"]


@pytest.mark.parametrize(
    ("text", "count"),
    [
        ("no gluten for two of us", 2), ("no dairy for 3 of us", 3), ("gluten free for both of us", 2),
        ("both girls are allergic to eggs", 2), ("the twins are lactose intolerant", 2), ("my two kids are vegan", 2),
        ("three of the five of us are vegetarian", 3), ("four of us, two can't do dairy", 2), ("no eggs for me", 1),
        ("no nuts for both kids", 2), ("my son is allergic to egg and milk", 1),
    ],
)  # fmt: skip
def test_how_many_have_it_is_counted(text: str, count: int) -> None:
    assert {n.count for i in needs(text) for n in i.needs} == {count}


@pytest.mark.parametrize(
    ("text", "member"),
    [
        ("my daughter is vegetarian and allergic to peanuts", "daughter"),
        ("My wife is celiac and can't have dairy either", "wife"),
        ("our toddler is veggie and has an egg allergy", "toddler"),
        ("my guy Luis from work has a shellfish allergy and comes too", "guy"),
    ],
)
def test_what_is_told_behind_ones_diet_is_theirs_too(text: str, member: str) -> None:
    assert {i.member for i in needs(text)} == {member}


@pytest.mark.parametrize("text", ["Lou is vegan and allergic to cashews", "Tess is vegetarian and can't have nuts"])
def test_an_allergy_of_somebody_unknown_is_never_noted_as_the_writers(text: str) -> None:
    assert all(i.member for i in read(text, context_of("board")).intents if isinstance(i, SetNeeds))


@pytest.mark.parametrize(
    ("text", "needs"),
    [
        ("Timur is severely allergic to egg, even traces. we have epi", {("egg", "severe allergy")}),
        ("Anneke has a walnut allergy", {("tree-nut", "allergy")}),
        ("he has cow's milk protein allergy", {("milk", "allergy")}),
        ("my partner goes into anaphylaxis with kiwi", {("kiwi", "severe allergy")}),
        ("prob coming late. dont eat shrimp it kills me haha", {("shellfish", "allergy")}),
        ("can't do dairy, it wrecks me (lactose)", {("milk", "intolerance"), ("milk", "")}),
    ],
)
def test_an_illness_told_to_the_bot_waits_for_no_press(text: str, needs: set[tuple[str, str]]) -> None:
    reading = read(text, context_of("bot"))

    told = {(n.need, n.severity) for i in reading.intents if isinstance(i, SetNeeds) for n in i.needs}
    assert (reading.question, reading.unread, told) == (None, (), needs)


@pytest.mark.parametrize(
    "text",
    [
        "My mother joins us. She can only manage soft food since her operation.", "grandpa has trouble swallowing",
        "my uncle can't chew any more", "I can only have pureed food right now", "she needs everything blended",
    ],
)  # fmt: skip
def test_who_can_only_manage_soft_food_is_noted(text: str) -> None:
    assert [n.need for i in needs(text) for n in i.needs] == ["soft-food"]


@pytest.mark.parametrize(
    "text", ["I only like soft cheese", "she loves soft ice cream", "the kids have the soft play", "eggs boiled soft"]
)
def test_what_is_merely_soft_is_no_need(text: str) -> None:
    assert needs(text) == []


def test_a_pregnancy_is_heard_beside_a_secret_and_a_question() -> None:
    reading = read("my wife is pregnant (not told anyone yet). what should she avoid?", context_of("bot"))

    assert [i.pregnant for i in reading.intents if isinstance(i, SetPregnant)] == [True]
