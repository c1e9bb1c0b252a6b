"""Allergies written to the bot: whoever has them and however it is put, they are noted or asked about, never lost."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planning.replies import AddPerson, Reading, SetNeeds, read
from tests.replies.corpus import context_of

WHO = (
    "I",
    "my son",
    "our youngest",
    "hubby",
    "my mother-in-law",
    "one of us",
    "the baby",
    "my 6 year old",
    "my girlfriend",
    "our eldest daughter",
    "Grandpa",
    "the little one",
    "my mate",
)
TOLD = (
    ("am allergic to {}", "is allergic to {}"),
    ("have a {} allergy", "has a {} allergy"),
    ("can't eat {}", "can't eat {}"),
    ("have an allergy to {}", "has an allergy to {}"),
    ("react badly to {}", "reacts badly to {}"),
    ("am anaphylactic to {}", "is anaphylactic to {}"),
    ("swell up from {}", "swells up from {}"),
    ("mustn't have {}", "mustn't have {}"),
    ("am intolerant to {}", "is intolerant to {}"),
    ("go into shock from {}", "goes into shock from {}"),
    ("get hives from {}", "gets hives from {}"),
    ("have a bad reaction to {}", "has a bad reaction to {}"),
)
FOODS = (
    ("nuts", {"tree-nut", "peanut"}),
    ("sesame", {"sesame"}),
    ("milk and soy", {"milk", "soy"}),
    ("kiwi", {"kiwi"}),
    ("celery, mustard and lupin", {"celery", "mustard", "lupin"}),
    ("shellfish", {"shellfish"}),
    ("eggs", {"egg"}),
)
BEFORE = (
    "",
    "Yes! ",
    "3 of us. ",
    "Coming, but ",
    "We're in, 4 of us, and ",
    "FYI ",
    "Slaw for 12, and ",
    "heads up - ",
)
AFTER = ("", " please", " :(", " so please label everything", " (severe)", " - just in case")


def needs_of(reading: Reading) -> set[str]:
    return {n.need for i in reading.intents if isinstance(i, SetNeeds) and not i.cleared for n in i.needs}


@settings(max_examples=300, deadline=None)
@given(
    st.sampled_from(WHO),
    st.sampled_from(TOLD),
    st.sampled_from(FOODS),
    st.sampled_from(BEFORE),
    st.sampled_from(AFTER),
    st.sampled_from(["board", "bot"]),
)
def test_an_allergy_written_to_the_bot_is_heard(
    who: str, told: tuple[str, str], food: tuple[str, set[str]], before: str, after: str, place: str
) -> None:
    text = f"{before}{who} {told[who != 'I'].format(food[0])}{after}"

    assert needs_of(read(text, context_of(place))) == food[1], text


@pytest.mark.parametrize(
    "text", ["I'm allergic to dragonfruit", "my brother has a lychee allergy", "my son reacts badly to rambutan"]
)
def test_an_allergy_to_an_unknown_food_is_asked_about(text: str) -> None:
    assert read(text, context_of("board")).question is not None


@pytest.mark.parametrize(
    ("text", "who", "member"),
    [
        ("coming with my husband, he's coeliac", "ravi", "husband"),
        ("Dad is coming. He's allergic to nuts", "ravi", "Ravi's Dad"),
        ("the 5 yr old can't have egg", "ravi", "5 yr old"),
        ("Pat is allergic to peanuts", "pat", "Pat"),
        ("Mei told me she's allergic to fish", "mei", "Mei Lin"),
    ],
)
def test_a_need_is_its_owners(text: str, who: str, member: str) -> None:
    reading = read(text, context_of("board"))

    assert [(i.who, i.member) for i in reading.intents if isinstance(i, SetNeeds)] == [(who, member)]


def test_what_another_guest_cannot_eat_is_never_noted_unasked() -> None:
    assert not read("Pat is allergic to peanuts", context_of("board")).sure


def test_a_need_of_a_person_added_with_it_carries_that_persons_name() -> None:
    reading = read("coming with my mum, she's coeliac", context_of("board"))

    added = next(i.name for i in reading.intents if isinstance(i, AddPerson))
    assert [i.member for i in reading.intents if isinstance(i, SetNeeds)] == [added]


@pytest.mark.parametrize("text", ["we're all vegan, 4 of us", "4 of us, all vegan", "all 4 of us are vegan"])
def test_what_all_are_counts_for_all(text: str) -> None:
    reading = read(text, context_of("board"))

    assert [n.count for i in reading.intents if isinstance(i, SetNeeds) for n in i.needs] == [4]


@pytest.mark.parametrize(
    "text",
    [
        "remove the egg allergy",
        "please delete my nut allergy",
        "I can eat eggs again now",
        "you can take the soy allergy off",
        "my son grew out of his milk allergy",
    ],
)
def test_taking_an_allergy_back_is_always_asked_about(text: str) -> None:
    reading = read(text, context_of("board"))

    assert not reading.sure
    assert any(isinstance(i, SetNeeds) and i.cleared for i in reading.intents)


def test_no_allergies_beside_a_need_takes_nothing_away() -> None:
    reading = read("2 of us, both vegan, no allergies", context_of("board"))

    assert not any(isinstance(i, SetNeeds) and i.cleared for i in reading.intents)
