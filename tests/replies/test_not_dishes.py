"""Nouns that are no food must not become dishes. Outside: WordNet's nouns (Princeton, 3.0), from the
distribution's package; food, plants, animals and substances left out."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from planning.replies import AddPromise, ReplyContext, read

WORDNET = Path("/usr/share/wordnet/data.noun")
EDIBLE = (5, 13, 20, 27)  # lexicographer files noun.animal, noun.food, noun.plant, noun.substance


def nouns() -> list[str]:
    edible: set[str] = set()
    other: set[str] = set()
    for line in WORDNET.read_text(encoding="utf-8").splitlines():
        if line.startswith("  "):
            continue  # the licence
        parts = line.split()
        words = [parts[4 + 2 * i] for i in range(int(parts[3], 16))]
        if int(parts[1]) in EDIBLE:
            edible.update(w.lower() for w in words)
        elif words[0].islower() and words[0].replace("_", "").isalpha():
            other.add(words[0])
    return sorted(other - edible)


@pytest.mark.wordnet
def test_fewer_than_one_in_a_hundred_nouns_of_wordnet_become_a_dish() -> None:
    sample = random.Random(20270918).sample(nouns(), 2000)
    below_the_board = ReplyContext("ravi", "Ravi", "board")

    taken = []
    for noun in sample:
        reading = read(f"I'll bring the {noun.replace('_', ' ')}", below_the_board)
        if reading.sure and any(isinstance(i, AddPromise) for i in reading.intents):
            taken.append(noun)

    assert len(taken) < 20, taken


@pytest.mark.wordnet
def test_nouns_alone_change_nothing() -> None:
    sample = random.Random(5).sample(nouns(), 1000)
    below_the_board = ReplyContext("ravi", "Ravi", "board")

    assert [n for n in sample if read(n.replace("_", " "), below_the_board).sure] == []
