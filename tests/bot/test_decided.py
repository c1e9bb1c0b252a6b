"""What the bot decided and why, as the practice room tells it."""

import json
import re
from pathlib import Path

import pytest

from bot.rehearsed import Rehearsed
from bot.room.rehearsal import Rehearsal
from bot.room.script import parse_script
from bot.texts.catalogue import catalogue

LINES = (
    {"clock": "2027-09-08T18:30", "timezone": "America/Chicago"},
    {"people": [{"id": "ines", "name": "Inés"}, {"id": "ravi", "name": "Ravi"}], "group": "Plot Nine"},
    {"from": "ines", "say": "/potluck Sat 18 Sep 5pm, about 24 people"},
    {"from": "ravi", "say": "3 of us, one vegetarian, slaw for 12", "reply": "board"},
    {"from": "ravi", "press": "Maybe", "on": "board"},
    {"from": "ravi", "say": "/bring corn salad for 8"},
    {"from": "ravi", "say": "/undo"},
)


async def told(folder: Path, language: str) -> list[dict]:
    bots: list[Rehearsed] = []

    def make(setup) -> Rehearsed:
        bots.append(Rehearsed(setup))
        return bots[-1]

    script = parse_script("\n".join(json.dumps(line, ensure_ascii=False) for line in LINES))
    await Rehearsal(script, folder, make, lambda _: None).run()
    try:
        return await bots[-1].decisions(language)
    finally:
        await bots[-1].close()


async def test_a_deed_names_its_person_and_the_words_it_was_read_in(tmp_path):
    deeds = [d for d in await told(tmp_path, "en") if not d.get("ahead")]

    read, pressed, brought = deeds[-3:]
    assert "Ravi" in read["what"]
    assert "3 of us" in read["why"]
    assert (pressed["what"], pressed["why"]) == ("Ravi: maybe", "a button was pressed")
    assert brought["what"] == "Ravi: corn salad was promised (taken back)"
    assert [d["at"] for d in deeds] == sorted(d["at"] for d in deeds)


async def test_what_it_will_say_by_itself_stands_in_order_with_whom_it_is_for(tmp_path):
    ahead = [d for d in await told(tmp_path, "es") if d.get("ahead")]

    assert ahead
    assert [d["at"] for d in ahead] == sorted(d["at"] for d in ahead)
    assert all(d["why"].startswith("a") for d in ahead)  # "al grupo", "a Ravi", "a quien organiza"


@pytest.mark.parametrize("language", ["en", "es"])
def test_a_deed_has_words_of_its_own_file_or_of_the_rooms_and_none_is_worded_twice(language):
    root = Path(__file__).parents[2] / "bot"
    done = {d for f in root.rglob("*.py") for d in re.findall(r'"(did-[a-z-]+)"', f.read_text("utf-8"))}
    texts = catalogue(language)
    own = {d for d in done if d in texts}
    rooms = set(re.findall(r"\[(did-[a-z-]+)\]", (root / "texts" / language / "room.ftl").read_text("utf-8")))

    assert len(rooms) > 20
    assert rooms - done == set()
    assert rooms & own == set()
