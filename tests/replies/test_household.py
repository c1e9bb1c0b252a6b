"""Who a party is, told in pieces, apart or anew."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.potluck import Answer
from planning.replies import SetAnswer, SetNeeds, SetParty, read
from planning.replies.ages import group_of_age
from tests.replies.corpus import context_of, party_of


def party(text: str, place: str = "board") -> object:
    """The party a message tells as the whole one; None when it tells none."""
    reading = read(text, context_of(place))
    return next((i.party for i in reading.intents if isinstance(i, SetParty) and not i.relative), None)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("4 of us. my daughter's 15", "3a1t"),
        ("us 4, kids 8 + 10", "2a2c"),
        ("we'd love to, all five of us, the youngest is 2 and the other two are 8 and 12", "2a2c1d"),
        ("We are 5. Mia is 7 and Leo is 2.", "3a1c1d"),
        ("2 adults, Mia is 7", "2a1c"),
        ("me and my son, he's 15", "1a1t"),
        ("yes! 3, and one's still in diapers", "2a1d"),
        ("Two of us and a newborn", "2a1i"),
        ("Party of 4. Two of those are under one year old", "2a2i"),
    ],
)
def test_ages_told_beside_a_number_divide_it(text: str, told: str) -> None:
    assert party(text) == party_of(told)


@given(
    st.integers(3, 9), st.integers(0, 17), st.sampled_from(("my son", "our daughter", "the youngest", "one of them"))
)
def test_one_whose_age_is_told_is_one_of_the_number(n: int, age: int, who: str) -> None:
    told = party(f"{n} of us, {who} is {age}")

    assert told == party_of(
        f"{n - 1}a1{ {'teens': 't', 'children': 'c', 'toddlers': 'd', 'infants': 'i'}[group_of_age(age)] }"
    )


@pytest.mark.parametrize(
    ("text", "told"),
    [("me and luis", "2a"), ("just me and Rosa", "2a"), ("Yep, me and Dana.", "2a"), ("me, Sam and the baby", "2a1i")],
)
def test_who_is_called_by_name_beside_the_writer_counts_without_a_question(text: str, told: str) -> None:
    assert party(text) == party_of(told)
    assert read(text, context_of("board")).question is None


def test_what_a_named_friend_does_with_the_writer_is_no_party() -> None:
    assert party("Me and Dave will sort drinks for 20") is None


@pytest.mark.parametrize(
    ("known", "text", "told"),
    [
        ("=2a1c1t", "actually make it 3, the 13yo has a match", "2a1c"),
        ("=1a", "actually 2, my mom too", "2a"),
        ("=2a2c", "5 of us now", "3a2c"),
        ("=3a", "not 3, 4", "4a"),
        ("=2a3c", "The eldest is away, so two kids now", "2a2c"),
    ],
)
def test_a_new_number_keeps_the_ages_that_are_known(known: str, text: str, told: str) -> None:
    assert party(text, f"board{known}") == party_of(told)


@pytest.mark.parametrize("text", ["not gonna make it, but my wife and son will be there", "my wife and son but not me"])
def test_who_stays_away_and_sends_the_others_comes_as_those_others(text: str) -> None:
    answers = [i.answer for i in read(text, context_of("board")).intents if isinstance(i, SetAnswer)]

    assert (party(text), answers) == (party_of("1a1c"), [Answer.YES])


@pytest.mark.parametrize("text", ["I'm coming but my wife isn't", "hubby can't make it but I'm coming"])
def test_the_no_of_another_beside_it_leaves_a_yes_as_it_is(text: str) -> None:
    reading = read(text, context_of("board"))

    assert [i.answer for i in reading.intents if isinstance(i, SetAnswer)] == [Answer.YES]
    assert reading.question is None


@pytest.mark.parametrize(
    ("text", "need", "severity"),
    [
        ("shellfish = hospital for me", "shellfish", "severe allergy"),
        ("lactose stuff gives me trouble", "milk", "intolerance"),
        ("no kiwi please, my daughter swells up", "kiwi", "allergy"),
        ("mum can't do spicy", "chili", ""),
    ],
)
def test_a_need_told_by_what_it_does_is_noted_as_bad_as_it_is(text: str, need: str, severity: str) -> None:
    told = [n for i in read(text, context_of("board")).intents if isinstance(i, SetNeeds) for n in i.needs]

    assert [(n.need, n.severity) for n in told] == [(need, severity)]
