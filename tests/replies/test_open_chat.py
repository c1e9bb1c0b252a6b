"""The open chatter of the group: who comes is heard when every word is part of it, and nothing else is."""

from __future__ import annotations

import pytest

from planning.potluck import Answer, Party
from planning.replies import Reading, ReplyContext, SetAnswer, SetParty, read
from tests.replies.corpus import context_of


def parties(reading: Reading) -> list[Party]:
    return [i.party for i in reading.intents if isinstance(i, SetParty)]


def answers(reading: Reading) -> list[Answer]:
    return [i.answer for i in reading.intents if isinstance(i, SetAnswer)]


@pytest.mark.parametrize(
    ("text", "party"),
    [
        ("congrats!! we'll be there, 4 of us", Party(4)),
        ("I'm coming, plus my husband", Party(1)),
        ("We'd love to come, all 5 of us!", Party(5)),
        ("We're in for the harvest supper, 2 adults 1 kid", Party(2, children=1)),
    ],
)
def test_a_yes_with_its_number_is_heard(text: str, party: Party) -> None:
    reading = read(text, context_of("chat"))

    assert reading.sure
    assert answers(reading) == [Answer.YES]
    assert parties(reading) == [party]


@pytest.mark.parametrize("text", ["make that 5, grandma wants to come", "it'll just be 5 of us now"])
def test_a_new_number_is_heard_from_who_has_answered(text: str) -> None:
    assert parties(read(text, context_of("chat=4a"))) == [Party(5)]
    assert parties(read(text, context_of("chat"))) == []


@pytest.mark.parametrize(
    ("text", "answer"),
    [("Maybe, depends on my shift", Answer.MAYBE), ("Can't, we're away that weekend", Answer.NO)],
)
def test_a_reason_of_ones_own_makes_an_answer(text: str, answer: Answer) -> None:
    assert answers(read(text, context_of("chat"))) == [answer]


@pytest.mark.parametrize(
    "text",
    [
        "we'll be there in 10 mins",
        "I'm coming to help with the shed",
        "we're coming, 3 of us, with the van",
        "5 of us on the plot this morning",
        "maybe, depends on the weather",
        "can't make it, sorry",
        "coming! just parking",
        "are you coming, all 4 of you?",
    ],
)
def test_a_word_too_much_leaves_it_alone(text: str) -> None:
    reading = read(text, context_of("chat"))

    assert reading.intents == ()
    assert reading.question is None


def test_how_many_did_something_else_is_no_party() -> None:
    assert read("yes, 3 of us watched it", context_of("near")).intents == ()
    assert read("yes, 3 of us", context_of("near")).intents != ()


def test_an_allergy_told_alone_in_the_open_is_noted_and_nothing_is_asked() -> None:
    reading = read("one of my kids cant have eggs", ReplyContext("w", "Wes", None, guests=(("w", "Wes"),)))

    assert reading.sure
    assert reading.question is None
