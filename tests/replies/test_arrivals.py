"""From when on somebody can be there is their hour of arrival and no "no"."""

from __future__ import annotations

from dataclasses import replace

import pytest

from planning.potluck import Answer
from planning.replies import Late, ReplyContext, SetAnswer, read

RAVI = ReplyContext("ravi", "Ravi", "board", guests=(("ravi", "Ravi"),))
NEAR = replace(RAVI, replying_to=None, near_board=True)


@pytest.mark.parametrize("context", [RAVI, NEAR], ids=["below the board", "in the open"])
@pytest.mark.parametrize(
    ("text", "hour"),
    [
        ("I can only be there at 4:30pm", "4:30 pm"),
        ("can't get there before 6", "6"),
        ("yes! but only from 7, kids have soccer", "7"),
        ("We won't be able to come until 7", "7"),
    ],
)
def test_the_hour_somebody_can_be_there_is_a_yes_from_then_on(context: ReplyContext, text: str, hour: str) -> None:
    reading = read(text, context)

    assert reading.sure
    assert [i.at for i in reading.intents if isinstance(i, Late)] == [hour]
    assert [i.answer for i in reading.intents if isinstance(i, SetAnswer)] == [Answer.YES]


@pytest.mark.parametrize("text", ["no llego antes de las 6", "solo puedo llegar a partir de las 6"])
def test_in_spanish_too(text: str) -> None:
    reading = read(text, replace(RAVI, language="es"))

    assert [i.at for i in reading.intents if isinstance(i, Late)] == ["6"]
    assert [i.answer for i in reading.intents if isinstance(i, SetAnswer)] == [Answer.YES]


@pytest.mark.parametrize("text", ["can't make it", "yes but only 2 of us", "I can't come before dessert"])
def test_without_an_hour_nothing_is_said_of_arriving(text: str) -> None:
    assert not any(isinstance(i, Late) for i in read(text, RAVI).intents)
