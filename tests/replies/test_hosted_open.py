"""What a host says in the open group is asked about; a plain yes right after, written below nothing, is the answer."""

from __future__ import annotations

from dataclasses import replace

import pytest

from planning.potluck import Answer
from planning.replies import Ask, MoveTo, Reschedule, SetAnswer, read
from tests.replies.corpus import context_of

OPEN = replace(context_of("board"), host=True, replying_to=None)


@pytest.mark.parametrize(
    "text", ["can we push dinner by 20 min?", "could we move it to 6:30pm?", "shall we start half an hour later?"]
)
def test_a_host_who_asks_to_move_it_is_asked_back(text: str) -> None:
    reading = read(text, OPEN)

    assert reading.question is not None
    assert [type(i) for i in reading.intents] == [Reschedule]


@pytest.mark.parametrize(
    ("text", "place"),
    [
        ("so everybody: 3 Mill Lane, not mine. still 6", "3 Mill Lane"),
        ("everyone, it's at 14 Elm Row instead", "14 Elm Row"),
        ("yes please. so everybody: 9 Quarry St, not ours", "9 Quarry St"),
    ],
)
def test_an_address_said_to_everybody_is_another_place_and_asked_about(text: str, place: str) -> None:
    reading = read(text, OPEN)

    assert [i.place for i in reading.intents if isinstance(i, MoveTo)] == [place]
    assert not reading.sure


@pytest.mark.parametrize("text", ["what is missing in this puzzle?", "what's missing from this picture?"])
def test_what_is_missing_elsewhere_is_no_question_for_us(text: str) -> None:
    assert not any(isinstance(i, Ask) for i in read(text, replace(OPEN, near_board=True)).intents)


@pytest.mark.parametrize("text", ["what is missing?", "what is still missing on the list?", "what are we missing"])
def test_what_the_table_lacks_is(text: str) -> None:
    assert any(isinstance(i, Ask) and i.topic == "missing" for i in read(text, OPEN).intents)


@pytest.mark.parametrize("text", ["count me as maybe", "mark us down as a maybe"])
def test_to_be_counted_as_maybe_is_a_maybe(text: str) -> None:
    found = read(text, context_of("board")).intents

    assert [i.answer for i in found if isinstance(i, SetAnswer)] == [Answer.MAYBE]
