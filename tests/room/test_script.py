"""What a script may say, and the one line it gets for a fault."""

from __future__ import annotations

import json
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.room.script import ScriptError, duration, parse_script

FIRST = {"clock": "2027-09-10T09:00", "timezone": "America/Chicago"}
SECOND = {"people": [{"id": "ines", "name": "Inés"}, {"id": "ravi", "name": "Ravi"}], "group": "Plot 9"}


def read(*lines: Any, first: Any = FIRST, second: Any = SECOND) -> Any:
    texts = [line if isinstance(line, str) else json.dumps(line) for line in (first, second, *lines)]
    return parse_script("\n".join(texts))


def test_the_first_lines_time_is_wall_time_in_its_zone() -> None:
    assert read().start == datetime(2027, 9, 10, 14, tzinfo=UTC)  # Chicago is five hours behind UTC in summer


def test_a_time_in_the_hour_that_is_skipped_moves_forward() -> None:
    # IANA: Chicago goes from 02:00 to 03:00 on 14 March 2027.
    script = read(first={"clock": "2027-03-14T02:30", "timezone": "America/Chicago"})

    assert script.start == datetime(2027, 3, 14, 8, 30, tzinfo=UTC)


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("{", "not JSON"),
        ("[]", "JSON object"),
        ({}, "nothing happens"),
        ({"from": "nobody", "say": "x"}, "not one of the people"),
        ({"from": "ravi"}, "does nothing"),
        ({"from": "ravi", "say": 3}, "must be a text"),
        ({"from": "ravi", "sya": "x"}, 'unknown key "sya"'),
        ({"from": "ravi", "say": "x", "in": "attic"}, '"in" must be'),
        ({"from": "ravi", "say": "x", "in": "topic: "}, '"in" must be'),
        ({"from": "ravi", "say": "x", "reply": "first"}, '"reply" must be'),
        ({"from": "ravi", "say": "x", "reply": 0}, '"reply" must be'),
        ({"from": "ravi", "press": ""}, "not empty"),
        ({"from": "ravi", "press": "x", "say": "y"}, 'unknown key "say"'),
        ({"from": "ravi", "edit": "first", "say": "y"}, '"edit" must be'),
        ({"from": "ravi", "send": "elephant"}, '"send" must be'),
        ({"clock": "tomorrow"}, "can't read the time"),
        ({"clock": "2027-09-01T09:00"}, "can't go back"),
        ({"down_for": "6 hours"}, "can't read the duration"),
        ({"down_for": "P"}, "can't read the duration"),
        ({"down": "yes"}, "true or false"),
        ({"down": False}, "not down"),
        ({"fault": "418"}, '"fault" must be'),
        ({"fault": "429", "count": 0}, '"count" must be'),
        ({"fault": "timeout", "stored": 1}, "true or false"),
        ({"event": "exploded"}, '"event" must be'),
        ({"event": "left"}, 'needs "who"'),
        ('{"note": "a", "note": "b"}', "stands twice"),
        (SECOND, "second line"),
    ],
)
def test_a_fault_names_its_line(line: Any, words: str) -> None:
    with pytest.raises(ScriptError, match=r"^line 4: ") as caught:
        read({"note": "fine"}, line)

    assert words in str(caught.value)
    assert "\n" not in str(caught.value)


@pytest.mark.parametrize(
    ("first", "second", "line"),
    [
        ({"clock": "2027-09-10T09:00"}, SECOND, 1),
        (FIRST | {"timezone": "Mars/Olympus"}, SECOND, 1),
        (FIRST | {"timezone": "../etc/passwd"}, SECOND, 1),
        (FIRST | {"colour": "red"}, SECOND, 1),
        (FIRST | {"bot_sees_all": "yes"}, SECOND, 1),
        (FIRST, {"people": [], "group": "x"}, 2),
        (FIRST, {"people": [{"id": "a", "name": "A"}] * 2, "group": "x"}, 2),
        (FIRST, {"people": [{"id": "bot", "name": "A"}], "group": "x"}, 2),
        (FIRST, SECOND | {"admins": ["mei"]}, 2),
        (FIRST, {"people": SECOND["people"]}, 2),
    ],
)
def test_a_fault_in_the_head_names_its_line(first: Any, second: Any, line: int) -> None:
    with pytest.raises(ScriptError, match=f"^line {line}: "):
        read(first=first, second=second)


def test_down_twice_is_a_fault_of_the_second() -> None:
    with pytest.raises(ScriptError, match="line 4: the bot is down already"):
        read({"down": True}, {"down_for": "PT1H"})


def test_blank_lines_count_as_lines() -> None:
    with pytest.raises(ScriptError, match=r"^line 5: "):
        read("", "", {})


@pytest.mark.parametrize(
    ("text", "span"),
    [
        ("PT6H", timedelta(hours=6)),
        ("P1DT30M", timedelta(days=1, minutes=30)),
        ("P2W", timedelta(weeks=2)),
        ("PT90S", timedelta(seconds=90)),
    ],
)
def test_a_duration_is_iso_8601(text: str, span: timedelta) -> None:
    assert duration(1, text) == span


json_values = st.recursive(
    st.none()
    | st.booleans()
    | st.integers()
    | st.text(max_size=8)
    | st.sampled_from(["ravi", "last", "2027-09-10T10:00"]),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=5), inner, max_size=3),
    max_leaves=6,
)
WORDS = """from say press on reply in edit send clock down down_for fault count method stored event who note people"""
keys = st.sampled_from(WORDS.split())


@given(st.lists(st.dictionaries(keys, json_values, min_size=1, max_size=4), max_size=4))
def test_any_lines_read_or_are_refused_with_a_line_number(lines: list[Any]) -> None:
    try:
        script = read(*lines)
    except ScriptError as fault:
        outcome = str(fault)
    else:
        outcome = f"line {len(script.lines)}"

    assert outcome.startswith("line ")
    assert "\n" not in outcome
