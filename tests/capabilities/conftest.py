"""A chat to test in: lines in, what people could see out, through the real client library over loopback HTTP."""

import json
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import pytest

from bot.rehearsed import Rehearsed
from bot.room.rehearsal import Rehearsal
from bot.room.script import read_script

START = {"clock": "2027-09-10T09:00", "timezone": "America/Chicago"}
PEOPLE = [
    {"id": "ines", "name": "Inés"},
    {"id": "ravi", "name": "Ravi"},
    {"id": "mei", "name": "Mei"},
    {"id": "tom", "name": "Tom"},
]
OPENED = {"from": "ines", "say": "/potluck Sat 18 Sep 5pm, about 24 people, at the allotment hut"}


def say(who: str, text: str, **more: Any) -> dict[str, Any]:
    return {"from": who, "say": text, **more}


def press(who: str, label: str, **more: Any) -> dict[str, Any]:
    return {"from": who, "press": label, **more}


def board(who: str, text: str) -> dict[str, Any]:
    """Words in reply to the board."""
    return say(who, text, reply="board")


def until(when: str) -> dict[str, Any]:
    return {"clock": when}


@dataclass
class Played:
    """What a script came to: `rows` of chat.jsonl, the potluck and the plan at its end."""

    rows: list[dict[str, Any]]
    state: dict[str, Any] | None
    plan: dict[str, Any] | None = field(default=None)

    def texts(self, chat: str = "group", kind: str = "message") -> list[str]:
        """What the bot said in a chat, in order."""
        return [r["text"] for r in self.rows if r["from"] == "bot" and r["chat"] == chat and r["kind"] == kind]

    def last(self, chat: str = "group", kind: str = "message") -> str:
        return self.texts(chat, kind)[-1]

    @property
    def answers(self) -> list[str]:
        """What presses were acknowledged with."""
        return [r["text"] for r in self.rows if r["kind"] == "answer"]

    @property
    def board(self) -> str:
        """The board as it reads at the end: the newest text of the pinned message."""
        pinned = [r["message"] for r in self.rows if r["kind"] == "pin"][-1]
        shown = [r["text"] for r in self.rows if r.get("message") == pinned and r["kind"] in ("message", "edit")]
        return shown[-1]

    def reminders(self, kind: str) -> list[dict[str, Any]]:
        return [r for r in self.rows if r.get("reminder") == kind]

    def guest(self, guest_id: str) -> dict[str, Any]:
        return next(g for g in self.state["guests"] if g["id"] == guest_id)

    def promises(self, guest_id: str | None = None) -> list[dict[str, Any]]:
        return [p for p in self.state["promises"] if guest_id in (None, p["guest"])]

    def everything(self) -> str:
        return "\n".join(str(r.get("text")) for r in self.rows if r["from"] == "bot")


@pytest.fixture
def play(tmp_path: Path):
    """`await play(line, ...)` in a group of four; `first` and `setup` change the script's first two lines."""

    async def run(
        *lines: dict[str, Any],
        opened: bool = True,
        first: dict[str, Any] | None = None,
        people: list[dict[str, Any]] | None = None,
        admins: tuple[str, ...] = (),
        plan: bool = False,
    ) -> Played:
        head = [{**START, **(first or {})}, {"people": people or PEOPLE, "group": "Plot Nine", "admins": list(admins)}]
        script = tmp_path / "script.jsonl"
        all_lines = [*head, *([OPENED] if opened else []), *lines]
        script.write_text("\n".join(json.dumps(line, ensure_ascii=False) for line in all_lines), "utf-8")
        bots: list[Rehearsed] = []

        def make(setup: Any) -> Rehearsed:
            # The menu of commands is told in the room's tests; here it would take a tenth of every test's time.
            bots.append(Rehearsed(setup, menu=False))
            return bots[-1]

        out = tmp_path / f"out{len(list(tmp_path.iterdir()))}"
        rehearsal = Rehearsal(read_script(script), out, make, lambda _: None)
        await rehearsal.run()
        try:
            state = await bots[-1].state(rehearsal.people)
            made = await bots[-1].plan(rehearsal.people) if plan else None
        finally:
            await bots[-1].close()
        return Played([dict(r) for r in rehearsal.record.rows], state, made)

    return run
