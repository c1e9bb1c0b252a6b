"""Slips of the pen: what is mended, and what must be left as it is."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.potluck import Answer
from planning.replies import AddPromise, Ask, Late, SetAnswer, read
from planning.replies.english import message_of
from planning.replies.english.spelling import known, mended
from planning.tables import rows
from tests.replies.corpus import context_of

BOARD = context_of("board")
REAL = [w for row in rows("words_real_en") for w in row["words"].split()]
CORE = [w for row in rows("words_core_en") for w in row["words"].split()]
LONG = [w for w in CORE if len(w) > 6]


def plain(text: str) -> str:
    return message_of(text).plain


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("cnat", "cant"), ("brign", "bring"), ("cominng", "coming"), ("cookin", "cooking"), ("yesssss", "yes"),
        ("shld", "should"), ("husbnd", "husband"), ("enoguh", "enough"), ("tomrorow", "tomorrow"), ("adn", "and"),
        ("bribg", "bring"), ("minuts", "minutes"),
    ],
)  # fmt: skip
def test_one_slip_in_a_word_of_ours_is_mended(typed: str, meant: str) -> None:
    assert mended(typed) == meant


def test_real_words_are_left_as_they_are() -> None:
    assert [w for w in REAL if mended(w) is not None] == []


def test_words_of_ours_are_left_as_they_are() -> None:
    assert [w for w in CORE if mended(w) is not None] == []


@given(st.sampled_from(LONG), st.data())
def test_two_letters_changed_about_in_a_long_word_never_make_another_word(word: str, data: st.DataObject) -> None:
    at = data.draw(st.integers(1, len(word) - 2))
    typed = word[:at] + word[at + 1] + word[at] + word[at + 2 :]

    assert known(typed) or mended(typed) in (word, None)


@given(st.text(min_size=1, max_size=30))
def test_no_word_breaks_it(word: str) -> None:
    mended(word.lower())


@pytest.mark.parametrize("text", ["Kate is in", "Dale and Nate will come", "we asked Wen", "Cole can't come"])
def test_a_name_is_not_mended(text: str) -> None:
    assert not message_of(text).mended


def test_spoken_punctuation_is_punctuation() -> None:
    assert plain("I will bring rolls comma for twelve period") == "i will bring rolls , for twelve"


def test_a_period_of_time_is_not_spoken_punctuation() -> None:
    assert "period" in plain("in that period I was away")


def test_a_mended_no_is_a_no() -> None:
    answers = [i.answer for i in read("sory we cnat come", BOARD).intents if isinstance(i, SetAnswer)]

    assert answers == [Answer.NO]


def test_a_mended_question_is_answered() -> None:
    assert [i.topic for i in read("waht time dose it strat?", BOARD).intents if isinstance(i, Ask)] == ["when"]


def test_a_mended_delay_is_noted() -> None:
    assert [i.minutes for i in read("runing late, 20 minuts", BOARD).intents if isinstance(i, Late)] == [20]


def test_a_guess_is_less_sure_than_the_word_itself() -> None:
    typed, meant = (
        next(i for i in read(text, BOARD).intents if isinstance(i, AddPromise))
        for text in ("I will brign lasagna for 12", "I will bring lasagna for 12")
    )

    assert typed.dish == meant.dish
    assert typed.confidence < meant.confidence
