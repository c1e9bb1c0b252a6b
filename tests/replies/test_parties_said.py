"""Parties in the grammar of who, how many and how old: whatever is put together is counted by its ages.

The age groups are those of `planning.potluck`: infants under 1, toddlers 1-3, children 4-12, teens 13-17.
"""

from __future__ import annotations

from collections import Counter

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planning.potluck import AGE_GROUPS, Party
from planning.replies import SetParty, read, read_party
from planning.replies.ages import group_of_age
from tests.replies.corpus import context_of

WORDS = ("zero", "one", "two", "three", "four", "five", "six", "seven", "eight")
BESIDE = (("my wife", 1), ("hubby", 1), ("my partner", 1), ("my parents", 2), ("Taro", 1), ("my mum and dad", 2))
EXTRA = (("", ""), ("a baby", "infants"), ("a toddler", "toddlers"), ("one teen", "teens"))


def number(n: int) -> st.SearchStrategy[str]:
    return st.sampled_from([str(n), WORDS[n]] if n < len(WORDS) else [str(n)])


@st.composite
def kids(draw: st.DrawFn) -> tuple[str, Counter[str]]:
    """ "3 kids (4, 7 and 9)" in its forms, and how many of which age."""
    ages = draw(st.lists(st.integers(1, 16), min_size=1, max_size=4))
    n, noun = len(ages), draw(st.sampled_from(["kid", "girl", "boy"]))
    listed = " and ".join([", ".join(map(str, ages[:-1])), str(ages[-1])] if n > 1 else [str(ages[0])])
    counted = f"{draw(number(n))} {noun}{'s' if n > 1 else ''}"
    told = Counter(group_of_age(age) for age in ages)
    forms = [
        (counted, Counter({"children": n})),
        (f"{counted} ({listed})", told),
        (f"{counted} aged {listed}", told),
        (f"{counted} (ages {listed})", told),
        (f"{counted}, {listed}", told),
    ]
    if n == 1:
        forms += [(f"a {ages[0]}{old}", told) for old in (" year old", "yo", " yr old", "-year-old", " y/o")]
    else:
        small = Counter({"children": n - 1, "toddlers": 1})
        forms += [(f"{counted} (one's {which})", small) for which in ("a toddler", "2", "under 4")]
    return draw(st.sampled_from(forms))


@st.composite
def parties(draw: st.DrawFn) -> tuple[str, Party]:
    """A party as a list with the writer, as a list alone or as a total with its parts."""
    words, counted = draw(kids())
    extra, group = draw(st.sampled_from(EXTRA))
    small = counted + Counter({group: 1} if group else {})
    shape = draw(st.integers(0, 3))
    if shape == 0:
        n = draw(st.integers(1, 4))
        items = [f"{draw(number(n))} {draw(st.sampled_from(['adult', 'grown-up']))}{'s' if n > 1 else ''}", words]
        items += [extra] if extra else []
        return ", ".join(items[:-1]) + " and " + items[-1], party(small + Counter(adults=n))
    if shape == 3:
        total = small.total() + draw(st.integers(1, 4))
        inner = f"{words} and {extra}" if extra else words
        lead = draw(
            st.sampled_from(["{n} of us, {x}", "we're {n} ({x})", "{n} of us incl. {x}", "party of {n}, with {x}"])
        )
        return lead.format(n=total, x=inner), party(small + Counter(adults=total - small.total()))
    who, more = draw(st.sampled_from(BESIDE))
    items = [draw(st.sampled_from(["me", "myself"])), who, words, *([extra] if extra else [])]
    whole = party(small + Counter(adults=1 + more))
    listed = " + ".join(items) if draw(st.booleans()) else ", ".join(items[:-1]) + " and " + items[-1]
    return (f"{whole.total} of us: {listed}" if shape == 2 else listed), whole


def party(counted: Counter[str]) -> Party:
    return Party(**{group: counted[group] for group in AGE_GROUPS})


BEFORE = ("", "Yes! ", "We're coming, ", "Hi all, ", "count us in: ")
AFTER = ("", ".", "!", " please", ", see you there", ", my son has a peanut allergy")


@settings(max_examples=250, deadline=None)
@given(parties(), st.sampled_from(BEFORE), st.sampled_from(AFTER))
def test_a_party_is_counted_by_its_ages_however_it_is_put(said: tuple[str, Party], before: str, after: str) -> None:
    text, whole = said

    reading = read(before + text + after, context_of("board"))

    assert [i.party for i in reading.intents if isinstance(i, SetParty)] == [whole], before + text + after


@settings(max_examples=100, deadline=None)
@given(st.integers(2, 30), st.sampled_from(["{} of us", "we'll be {}", "party of {}", "there are {} of us"]))
def test_a_bare_number_of_us_is_so_many_adults(n: int, shape: str) -> None:
    reading = read(shape.format(n), context_of("board"))

    assert [i.party for i in reading.intents if isinstance(i, SetParty)] == [Party(adults=n)]


@pytest.mark.parametrize(
    "text", ["200 of us", "4 or 5 of us", "between 4 and 6 of us", "about 7ish of us", "2 adults, 1 grockle"]
)
def test_a_number_that_is_open_or_absurd_changes_nothing_unasked(text: str) -> None:
    reading = read(text, context_of("board"))

    assert not reading.sure


def test_a_sentence_that_only_divides_belongs_to_the_number_before_it() -> None:
    reading = read("Six of us. Two of them are under 3.", context_of("board"))

    assert [i.party for i in reading.intents if isinstance(i, SetParty)] == [Party(adults=4, toddlers=2)]


def test_the_known_party_divides() -> None:
    reading = read("one of the five is a 2 year old", context_of("board=5a"))

    assert [i.party for i in reading.intents if isinstance(i, SetParty)] == [Party(adults=4, toddlers=1)]


@pytest.mark.parametrize(
    ("words", "party"),
    [
        ("half a dozen of us", Party(6)),
        ("2 under 4s and an adult", Party(1, toddlers=2)),
        ("me + hubby + baby", Party(2, infants=1)),
    ],
)
def test_a_party_in_words_by_itself_is_read(words: str, party: Party) -> None:
    assert read_party(words) == party
