"""Where a "maybe" belongs, and other things that hang on what stands beside them."""

from __future__ import annotations

from dataclasses import replace

import pytest

from planning.potluck import Answer, Party
from planning.replies import AddPromise, ChangePromise, ReplyContext, SetAnswer, SetParty, read
from planning.replies.hosted import hour_instead

RAVI = ReplyContext("ravi", "Ravi", "board", guests=(("ravi", "Ravi"), ("pat", "Pat")))
COMING = replace(RAVI, answer=Answer.YES, party=Party(2), own_promises=(("p1", "slaw"),))
NEAR = replace(RAVI, replying_to=None, near_board=True)


@pytest.mark.parametrize("hedge", ["maybe", "Perhaps", "probably", "hmm, possibly", "I think maybe"])
@pytest.mark.parametrize(("people", "n"), [("me and 3 friends", 4), ("the two of us", 2), ("5 of us", 5)])
def test_people_behind_a_maybe_are_a_maybe_of_so_many(hedge: str, people: str, n: int) -> None:
    found = read(f"{hedge} {people}", RAVI).intents

    assert [i.answer for i in found if isinstance(i, SetAnswer)] == [Answer.MAYBE]
    assert [i.party.total for i in found if isinstance(i, SetParty)] == [n]


def test_a_yes_before_an_estimate_stays_a_yes() -> None:
    found = read("we're coming, probably 4 of us", RAVI).intents

    assert [i.answer for i in found if isinstance(i, SetAnswer)] == [Answer.YES]


@pytest.mark.parametrize("start", ["a dozen deviled eggs", "I'll bring rolls for 12"])
def test_only_the_dish_behind_a_maybe_is_asked_about(start: str) -> None:
    reading = read(f"{start} and maybe a fruit tray", RAVI)

    assert not reading.sure
    assert [i.answer for i in reading.now if isinstance(i, SetAnswer)] == [Answer.YES]
    assert [i.dish for i in reading.intents if isinstance(i, AddPromise) and i not in reading.now] == ["fruit tray"]


@pytest.mark.parametrize("reason", ["my mom visits", "my brother is in town", "our old neighbor will come"])
def test_make_it_three_for_a_visitor_counts_people(reason: str) -> None:
    found = read(f"make it 3, {reason}", COMING).intents

    assert [i.party.total for i in found if isinstance(i, SetParty)] == [3]
    assert not any(isinstance(i, ChangePromise) for i in found)


@pytest.mark.parametrize("text", ["1. guacamole 2. rolls", "1) guacamole\n2) rolls"])
def test_a_numbered_list_right_below_the_board_is_what_its_writer_brings(text: str) -> None:
    reading = read(text, NEAR)

    assert reading.sure
    assert [i.dish for i in reading.intents if isinstance(i, AddPromise)] == ["guacamole", "rolls"]


def test_a_numbered_list_of_other_things_is_left_alone() -> None:
    assert read("1. call the bank 2. rolls", NEAR).intents == ()


@pytest.mark.parametrize("text", ["I'll bring whatever is missing", "I can bring whatever you need"])
def test_whatever_is_missing_is_an_offer_of_anything_and_nothing_to_ask_about(text: str) -> None:
    reading = read(text, RAVI)

    assert reading.sure
    assert [i.vague for i in reading.intents if isinstance(i, AddPromise)] == [True]


@pytest.mark.parametrize(
    ("words", "hour"),
    [("no, 6", "at 6"), ("lets say 6:30pm", "at 6:30pm"), ("mejor a las 7", "a las 7"), ("no", None)],
)
def test_an_hour_instead_is_told_from_a_mere_no(words: str, hour: str | None) -> None:
    assert hour_instead(words) == hour
