"""What is read right is read right in other words, too (`python -m tests.replies.stress` shows all of it)."""

from __future__ import annotations

from collections import Counter

import pytest

from planning.replies import AddPromise, SetAnswer, SetNeeds, SetParty, read
from planning.replies.english import message_of
from tests.replies.corpus import context_of, said
from tests.replies.stress import fates


def pieces(text: str, place: str = "board") -> list[tuple[str, str]]:
    reading = read(text, context_of(place))
    return [p for i in reading.intents if not getattr(i, "implied", False) for p in said(i)]


def test_a_sentence_told_otherwise_is_seldom_read_as_something_else() -> None:
    tally = Counter(became for _, became, _, _ in fates(every=23))

    assert tally["wrong silent"] / tally.total() <= 0.01
    assert tally["kept"] / tally.total() >= 0.94


@pytest.mark.parametrize(
    "text",
    [
        "Just to let you know, slaw for 12",
        "Sorry for the late reply - slaw for 12",
        "slaw for 12, hope that's ok",
        "slaw for 12 - let me know if that's a problem",
        "As far as I can tell: slaw for 12",
        "slaw for 12 /Ravi",
        "so yeah, slaw for 12",
        "Ravi here, slaw for 12",
    ],
)
def test_what_news_is_wrapped_in_is_no_part_of_it(text: str) -> None:
    assert pieces(text) == [("bring", "slaw|salad|12|")]


def test_so_yeah_is_no_yes() -> None:
    assert not any(isinstance(i, SetAnswer) for i in read("so yeah, the hut is cold", context_of("board")).intents)


def test_nothing_but_wrapping_stays_as_it_is() -> None:
    assert message_of("just to let you know").plain == "just to let you know"


def test_short_lines_are_pieces_of_one_sentence() -> None:
    assert pieces("2 adults\n1 teen\n1 baby") == [("party", "2a1t1i")]


def test_a_question_on_a_line_of_its_own_stays_one() -> None:
    found = read("slaw for 12\nwhat time?", context_of("board")).intents

    assert [type(i).__name__ for i in found if not getattr(i, "implied", False)] == ["AddPromise", "Ask"]


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        ("were in", "we are in"),
        ("well be there", "we will be there"),
        ("all is well", "all is well"),
        ("where were you", "where were you"),
        ("my sisters tagging along", "my sister is tagging along"),
        ("my sisters are coming", "my sisters are coming"),
        ("coming w/ slaw", "coming with slaw"),
        ("slaw w/o nuts", "slaw without nuts"),
        ("allergic 2 nuts", "allergic to nuts"),
        ("have 2 cancel", "have to cancel"),
        ("have 2 kids", "have 2 kids"),
        ("no dairy 4 me", "no dairy for me"),
        ("just 4 of us", "just 4 of us"),
    ],
)
def test_short_forms_are_told_from_words_by_what_follows(text: str, plain: str) -> None:
    assert message_of(text).plain == plain


def test_what_only_begins_like_a_question_is_an_offer() -> None:
    found = read("will take care of the ice", context_of("board")).intents

    assert [i.dish for i in found if isinstance(i, AddPromise)] == ["ice"]


def test_a_need_behind_a_smile_is_read() -> None:
    found = read("2 of us :) My wife is vegan", context_of("board")).intents

    assert {type(i) for i in found} >= {SetParty, SetNeeds}
