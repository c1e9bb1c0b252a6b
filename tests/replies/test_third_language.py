"""A third language is data alone: French here, as a few phrases of our own (from memory), no line of code its own."""

from __future__ import annotations

import csv
import json
import os
import shutil
import subprocess
import sys
from functools import cache
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.potluck import Answer, Need, Party
from planning.replies import worded
from planning.replies.intents import (
    AddPromise,
    Ask,
    DropPromise,
    Intent,
    Late,
    ReplyContext,
    SetAnswer,
    SetNeeds,
    SetParty,
)

HERE = Path(__file__).parent
ROOT = HERE.parents[1]


@cache
def french() -> worded.Words:
    with (HERE / "third" / "sentences_fr.csv").open(encoding="utf-8") as file:
        return worded.Words("fr", csv.DictReader(file))


def said(text: str, **known: object) -> list[Intent]:
    context = ReplyContext("lea", "Léa", **({"replying_to": "board", "language": "fr"} | known))  # type: ignore[arg-type]
    return worded.read_with(french(), french().message_of(text), context)[0]


def facts(intents: list[Intent]) -> list[object]:
    told: list[object] = []
    for i in intents:
        if isinstance(i, SetAnswer):
            told.append(i.answer)
        elif isinstance(i, SetParty):
            told.append((i.party, i.relative))
        elif isinstance(i, SetNeeds):
            told.append(i.needs)
        elif isinstance(i, AddPromise):
            told.append((i.dish, i.servings, i.quantity))
        elif isinstance(i, Ask):
            told.append(i.topic)
        elif isinstance(i, Late):
            told.append(i.minutes)
        elif isinstance(i, DropPromise):
            told.append(("drop", i.promise))
    return told


@pytest.mark.parametrize(
    ("text", "means"),
    [
        ("Oui, je viens !", [Answer.YES]),
        ("désolée, je ne peux pas venir", [Answer.NO]),
        ("peut-être, je ne sais pas encore", [Answer.MAYBE]),
        ("nous serons 4", [(Party(4), False)]),
        ("nous serons quatre dont 2 enfants (4 et 9 ans)", [(Party(2, 0, 2), False)]),
        ("oui, avec mon mari et mes 2 filles de 2 et 14 ans", [Answer.YES, (Party(2, 1, 0, 1), False)]),
        ("je viens seule", [Answer.YES, (Party(1), False)]),
        ("une de plus", [(Party(1), True)]),
        ("j'apporte une salade de pommes de terre pour 12", [("salade de pommes de terre", 12.0, None)]),
        (
            "on apporte deux douzaines de petits pains et du jus d'orange",
            [("petits pains", None, "2 dozen"), ("jus d'orange", None, None)],
        ),
        ("j'apporte un dessert", [("1 dessert", None, None)]),
        ("je suis gravement allergique aux arachides", [(Need("peanut", 1, "severe allergy"),)]),
        ("2 végétariens", [(Need("vegetarian", 2, "diet"),)]),
        ("qu'est-ce qui manque ?", ["missing"]),
        ("j'aurai 20 minutes de retard", [20]),
    ],
)
def test_a_sentence_is_read_by_the_table_of_phrases(text: str, means: list[object]) -> None:
    assert facts(said(text)) == means


@pytest.mark.parametrize(
    "text",
    [
        "je plaisante, j'apporte une girafe",
        "l'année dernière nous serons 4",
        "il paraît que je viens",
        "j'aimerais bien, j'apporte des lasagnes",
        "quelqu'un apporte du pain ?",
    ],
)
def test_jokes_memories_wishes_and_hearsay_change_nothing(text: str) -> None:
    assert [i for i in said(text) if not isinstance(i, Ask)] == []


def test_in_the_open_chatter_such_a_language_stays_silent() -> None:
    assert said("oui, je viens, j'apporte des lasagnes", replying_to=None) == []


def test_one_s_own_dish_is_taken_off() -> None:
    own = (("p1", "Lasagnes"),)

    assert facts(said("je n'apporte plus de lasagnes", own_promises=own)) == [("drop", "p1")]


def test_a_dish_nobody_knows_is_asked_about() -> None:
    (promise,) = said("j'apporte des crozets")

    assert promise.confidence < 0.8


def test_every_role_of_the_table_is_one_that_is_read() -> None:
    with (HERE / "third" / "sentences_fr.csv").open(encoding="utf-8") as file:
        assert {row["role"] for row in csv.DictReader(file)} <= worded.ROLES


@given(
    st.text(max_size=300)
    | st.lists(st.sampled_from(["oui", "pas", "pour 3", "j'apporte", "l'", ",", "(4", "et"])).map(" ".join)
)
def test_no_text_raises(text: str) -> None:
    said(text)


def test_three_files_of_data_are_a_third_language_in_the_whole_bot(tmp_path: Path) -> None:
    """A copy of the program gets the tables and two texts, and a group that speaks it is understood and answered."""
    for package in ("planning", "bot"):
        shutil.copytree(ROOT / package, tmp_path / package, ignore=shutil.ignore_patterns("__pycache__"))
    for table in ("sentences_fr.csv", "dishes_fr.csv"):
        shutil.copy(HERE / "third" / table, tmp_path / "planning" / "data" / table)
    shutil.copytree(HERE / "third" / "fr", tmp_path / "bot" / "texts" / "fr")
    script = [
        {"clock": "2027-09-10T09:00", "timezone": "Europe/Paris"},
        {"people": [{"id": "lea", "name": "Léa"}, {"id": "noe", "name": "Noé"}], "group": "Jardin", "admins": ["lea"]},
        {"from": "lea", "say": "/potluck Sat 18 Sep 5pm, about 24 people"},
        {"from": "lea", "say": "/settings language fr"},
        {"from": "noe", "say": "oui, nous serons 3 et j'apporte des lasagnes pour 12", "reply": "board"},
    ]
    (tmp_path / "evening.jsonl").write_text("\n".join(json.dumps(line) for line in script), encoding="utf-8")

    run = subprocess.run(
        [sys.executable, "-m", "bot", "rehearse", "evening.jsonl", "--out", "out"],
        cwd=tmp_path, env=os.environ | {"PYTHONPATH": str(tmp_path)}, capture_output=True, text=True, check=False,
    )  # fmt: skip

    assert run.returncode == 0, run.stderr
    state = json.loads((tmp_path / "out" / "state.json").read_text(encoding="utf-8"))
    noe = next(g for g in state["guests"] if g["id"] == "noe")
    assert (noe["answer"], noe["adults"]) == ("yes", 3)
    assert [(p["dish"], p["category"], p["servings"]) for p in state["promises"]] == [("lasagnes", "main", 12)]
    seen = (tmp_path / "out" / "chat.jsonl").read_text(encoding="utf-8")
    assert "C’est noté" in seen
