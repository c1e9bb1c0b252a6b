"""What no rule understood is asked about when its words speak for an answer; it never acts."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.potluck import Answer
from planning.replies import evidence, read
from planning.replies.english import message_of
from planning.replies.intents import ReplyContext, SetAnswer
from planning.tables import rows

BOARD = ReplyContext("ravi", "Ravi", "board")


@pytest.mark.parametrize(
    ("words", "answer"),
    [("would be there for sure gladly", Answer.YES), ("so sorry but that day is out for us", Answer.NO)],
)
def test_words_that_speak_for_an_answer_become_a_guess(words: str, answer: Answer) -> None:
    (guess,) = evidence.guessed(message_of(words), BOARD)

    assert isinstance(guess, SetAnswer)
    assert guess.answer is answer


def test_words_that_speak_for_nothing_are_left_alone() -> None:
    assert evidence.guessed(message_of("the grill at the hut has a new lid"), BOARD) == []


@given(
    st.text(max_size=200)
    | st.lists(st.sampled_from(sorted(r["feature"] for r in rows("words_evidence")))).map(" ".join)
)
def test_what_was_only_guessed_is_never_done_without_asking(text: str) -> None:
    guess = evidence.guessed(message_of(text), BOARD)

    assert all(i.confidence < 0.8 for i in guess)
    assert abs(sum(evidence.odds(message_of(text), None).values()) - 1) < 1e-9


def test_the_open_chatter_is_never_guessed_at() -> None:
    reading = read("would be there for sure gladly", ReplyContext("ravi", "Ravi", None))

    assert not reading.intents
    assert reading.question is None
