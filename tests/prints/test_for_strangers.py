"""What somebody who sees nothing but the picture or the page has to get right."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from bot import prints
from bot.prints.run_sheet import run_sheet_data
from bot.prints.say import Writer
from bot.prints.shopping import shopping_data
from bot.prints.table import table_data
from bot.prints.timeline import timeline_data
from bot.texts import Voice
from planning.menu import SETS
from planning.potluck import Answer, Potluck
from planning.tables import rows
from tests.prints.builders import START, a_plan, a_potluck, a_promise, with_bar, with_kitchen, words_from_texts
from tests.prints.papers import text_of

WORDS = words_from_texts()


def _writer(potluck: Potluck, lang: str = "en") -> Writer:
    return Writer(potluck, Voice(lang, potluck.zone, potluck.units).plain, lang)


def _supplies(potluck: Potluck) -> tuple[list[str], dict[str, Any]]:
    row = {"category": "supplies", "target_servings": 25, "promised_servings": 50, "covered_servings": 0}
    data = table_data(potluck, a_plan(potluck, menu=[{**row, "lacking_servings": 25}]), _writer(potluck))
    return data["missing"], next(b for b in data["columns"][0] if b["lacks"] or b["short"])


def test_plates_without_cups_say_that_cups_are_missing() -> None:
    promises = tuple(a_promise(n, dish=d, category="supplies") for n, d in enumerate(("paper plates", "napkins")))

    missing, block = _supplies(a_potluck(2, promises=promises))

    assert missing == ["Supplies: cups, cutlery for 25 people"]
    assert block["lacks"] == "no cups, cutlery yet"
    assert block["score"] == "full sets for 0 of 25"


def test_a_table_without_anything_to_eat_from_lacks_the_whole_set() -> None:
    missing, block = _supplies(a_potluck(2, promises=()))

    assert all(kind in missing[0] for kind in SETS)
    assert block["lacks"] == "", "the line above says it already"


def test_who_cannot_come_is_marked_beside_what_they_promised() -> None:
    potluck = with_bar(a_potluck(5))
    potluck = replace(potluck, guests=tuple(replace(g, answer=Answer.NO) for g in potluck.guests))

    lines = [line for b in table_data(potluck, a_plan(potluck), _writer(potluck))["columns"][0] for line in b["lines"]]

    assert lines
    promised = [line for line in lines if not line["open"] and "baked potato" not in line["dish"]]
    assert all("can't come" in line["who"] for line in promised)


def test_what_began_before_the_picture_does_says_since_when() -> None:
    potluck, plan = with_kitchen(a_potluck(9))

    since = {s["dish"]: s["since"] for r in timeline_data(potluck, plan, _writer(potluck))["rows"] for s in r["steps"]}

    assert since["Bean chilli"].replace("\u00a0", " ") == "since 10:30 AM"
    assert since["Cabbage slaw"] == ""


def test_what_is_said_of_several_dishes_alike_is_said_once_and_names_them_all() -> None:
    potluck, plan = with_kitchen(a_potluck(9))
    note = {"key": "safety-hold-hot", "say": "Bean chilli: keep it hot.", "severity": "note", "deadline": None}
    facts = {"rule": "HOLD-06", "metric": "no"}
    alike = [{**note, "promise": f"p{n}", "source": "HOLD-06", "facts": {**facts, "dish": f"d{n}"}} for n in range(3)]
    other = {**note, "promise": "p4", "facts": {**facts, "dish": "d4", "limit": 60}, "source": "HOLD-06"}

    notes = run_sheet_data(potluck, {**plan, "safety": [*alike, other]}, _writer(potluck))["notes"]

    assert [n["same"] for n in notes] == ["The same for: Roast squash, Cabbage slaw", ""]
    assert "USDA FSIS (HOLD-06)" in notes[0]["source"]


def test_a_deadline_of_its_own_keeps_a_note_apart() -> None:
    potluck, plan = with_kitchen(a_potluck(9))
    note = {"key": "safety-out-plan", "say": "Out until then.", "severity": "warn", "facts": {}}
    notes = [{**note, "promise": f"p{n}", "deadline": f"2027-09-18T18:{n}0:00"} for n in range(3)]

    assert len(run_sheet_data(potluck, {**plan, "safety": notes}, _writer(potluck))["notes"]) == 3


@pytest.mark.parametrize(("units", "time"), [("us", "5:00 p. m."), ("metric", "17:00")])
def test_hours_stand_on_paper_as_the_bot_says_them_in_the_chat(units: str, time: str) -> None:
    potluck = a_potluck(3, units=units)

    written = _writer(potluck, "es").time(START).replace("\u00a0", " ").replace("p.m.", "p. m.")

    assert written == time


def test_packages_and_things_to_buy_are_in_the_language_of_the_list() -> None:
    potluck = a_potluck(3)
    row = {"item": "cups", "packages": [{"size": "10 lb bag", "count": 2}], "need": {"value": 2, "unit": "cup"}}

    data = shopping_data(potluck, a_plan(potluck, shopping=[{**row, "for": "supplies"}]), _writer(potluck, "es"))
    (listed,) = data["sections"][0]["rows"]

    assert listed["packages"] == "2 × bolsa de 10 lb"
    assert listed["need"] == "2\u00a0tazas"
    assert listed["item"] == "vasos"


@pytest.mark.paper
def test_every_paper_is_whole_in_spanish(tmp_path: Path) -> None:
    potluck, plan = with_kitchen(with_bar(a_potluck(9)))
    say = Voice("es", potluck.zone, potluck.units).plain

    for made in (prints.run_sheet, prints.table_cards, prints.shopping_list, prints.bar_menu, prints.name_tags):
        text = text_of(made(potluck, plan, say, "es"), tmp_path)
        assert len(text) > 100
        assert not {"Serve", "Contains", "needed", "brought by"} & set(text.split())


SAME_IN_BOTH = {"gluten", "halal", "kosher", "paleo"}


@pytest.mark.parametrize("need", [r["need"] for r in rows("diets")] + [r["allergen"] for r in rows("allergens")])
def test_every_need_is_printed_in_spanish_words(need: str) -> None:
    potluck = a_potluck(2)

    assert need in SAME_IN_BOTH or _writer(potluck, "es")("need", need=need) != need
