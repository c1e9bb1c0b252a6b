"""Laws of reading: what never changes a reading, and that no text breaks it."""

from __future__ import annotations

from itertools import islice

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planning.replies import ReplyContext, read
from tests.replies.corpus import context_of, lines, said

ALL = tuple(lines())
PLACES = (None, "board", "bot", "person", "question:people", "question:diets", "question:bring", "question:servings")


def meaning(text: str, context: ReplyContext) -> tuple[object, ...]:
    """A reading without the places in the text."""
    reading = read(text, context)
    return reading.sure, reading.question is not None, [said(i) for i in reading.intents]


def dots(text: str) -> str:
    return text if text.rstrip().endswith(("?", "!", ".", ")", "…")) else text + "."


NEUTRAL = (
    ("thanks first", lambda t: f"Thanks, {t}"),
    ("thanks last", lambda t: t if "\n" in t else t + ", thanks"),
    ("please last", lambda t: t + " please" if t[-1:].isalpha() else t),
    ("a greeting", lambda t: f"Hi everyone! {t}"),
    ("a smile", lambda t: t + " 😊"),
    ("two smiles", lambda t: "🙂 " + t + " :)"),
    ("a full stop", dots),
    ("an exclamation mark", lambda t: t + "!" if t[-1:].isalnum() else t),
    ("spaces", lambda t: "  " + t + " "),
)


EVERY = 7
"""Each addition is tried on every seventh line, beginning with another one: reading them all takes minutes."""


@pytest.mark.parametrize(("name", "add"), NEUTRAL, ids=[n for n, _ in NEUTRAL])
def test_neutral_additions_do_not_change_a_reading(name: str, add) -> None:  # type: ignore[no-untyped-def]
    at = [n for n, _ in NEUTRAL].index(name)
    changed = [
        line.text
        for line in ALL[at % EVERY :: EVERY]
        if any(c.isalnum() for c in line.text)
        and not line.text.startswith(">")
        and meaning(line.text, context_of(line.place)) != meaning(add(line.text), context_of(line.place))
    ]

    assert changed == []


def test_capitals_do_not_change_a_reading() -> None:
    changed = []
    some = ALL[::5]
    for line in some:
        plain = meaning(line.text, context_of(line.place))
        loud = meaning(line.text.upper(), context_of(line.place))
        if (plain[:2], str(plain[2]).lower()) != (loud[:2], str(loud[2]).lower()):
            changed.append(line.text)

    assert len(changed) <= len(some) * 0.01, changed  # names are told from words by their capital letter


def test_just_kidding_takes_every_statement_back() -> None:
    kept = [t.text for t in ALL if "?" not in t.text and read(f"{t.text}. Just kidding!", context_of(t.place)).intents]

    assert kept == []


@settings(max_examples=150, deadline=None)
@given(st.text(max_size=4096), st.sampled_from(PLACES))
def test_any_text_is_read_without_an_error(text: str, place: str | None) -> None:
    reading = read(text, ReplyContext("ravi", "Ravi", place, own_promises=(("p1", "slaw"),), toppings=("chives",)))

    assert all(0 <= i.start <= i.end <= len(text) for i in reading.intents)


WORDS = sorted({word for line in islice(ALL, 0, None, 3) for word in line.text.split()})


@settings(max_examples=150, deadline=None)
@given(st.lists(st.sampled_from(WORDS), max_size=40), st.sampled_from(PLACES))
def test_shuffled_words_of_guests_are_read_without_an_error(words: list[str], place: str | None) -> None:
    text = " ".join(words)

    reading = read(text, ReplyContext("ravi", "Ravi", place, own_promises=(("p1", "slaw"),)))

    assert all(0 <= i.confidence <= 1 for i in reading.intents)
