"""The words the courier asks for right before it sends: boards, reminders, notices of its own."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from typing import Any

from bot.board import render as render_board
from bot.board import voice_for
from bot.buttons import Button, Signer
from bot.courier.render import Drawn, ReminderCase
from bot.outgoing import mention, sign_rows
from bot.registry import Registry
from bot.storage.values import ChatRecord, Post, ReminderRow, Stored
from bot.texts import Html, Voice
from planning.again import next_month
from planning.headcount import headcount
from planning.menu import most_needed
from planning.potluck import Potluck, Say
from planning.reminders import Reminder

RULES = {"thaw": ("THAW-03", "THAW-12"), "out-limit": ("TIME-01", "TIME-02")}
"""The published rules a kind of reminder rests on."""


@dataclass(frozen=True)
class BotRenderer:
    registry: Registry
    signer: Signer
    username: str

    async def board(self, stored: Stored, chat: ChatRecord | None, now: datetime) -> Drawn:
        text, buttons = render_board(self.registry, self.signer, self.username, stored, chat, now)
        return Drawn(text, buttons)

    async def reminder(self, case: ReminderCase) -> Post | None:
        potluck = case.stored.potluck
        reader = case.people.get(str(case.private_to)) if case.private_to is not None else None
        voice = voice_for(case.chat, potluck, reader)
        rows = _together(case.rows)
        lines = [self._line(voice, potluck, row, private=case.private_to is not None) for row in rows]
        lines = [line for line in lines if line]
        if not lines:
            return None
        chat_id = case.private_to if case.private_to is not None else case.stored.place.chat_id
        buttons = sign_rows(self.signer, chat_id, potluck.id, self._buttons(voice, potluck, case))
        return Post(chat_id, "send", {"text": "\n".join(lines), "buttons": buttons})

    def _line(self, voice: Voice, potluck: Potluck, row: ReminderRow, *, private: bool) -> str:
        said = voice.say(row.about)
        guest = potluck.guest(potluck.host if row.to == "host" else row.to)
        title = potluck.title or voice.plain("board-title-plain")
        if private or guest is None:
            extra = self._preview(voice, potluck, row)
            return f"{voice('reminder-head', title=title)}\n{said}{extra}" if private else f"{said}{extra}"
        return voice("reminder-for", name=mention(guest), what=said)

    @staticmethod
    def _preview(voice: Voice, potluck: Potluck, row: ReminderRow) -> str:
        """What the group should still know at this moment: gaps while there is time, places at the start."""
        if row.kind != "start" or not potluck.place:
            return ""
        return "\n" + voice("answer-where", place=potluck.place, known=True)

    @staticmethod
    def _buttons(voice: Voice, potluck: Potluck, case: ReminderCase) -> list[list[Button]]:
        if case.kind == "answer-by" and all(row.to == "host" for row in case.rows):
            return []
        if case.kind == "answer-by":
            return [
                [
                    Button(voice.plain("button-coming"), "ans", ("yes",)),
                    Button(voice.plain("button-maybe"), "ans", ("maybe",)),
                    Button(voice.plain("button-cant"), "ans", ("no",)),
                ]
            ]
        if case.kind == "collect":
            rows = [[Button(voice.plain("button-leftovers"), "left"), Button(voice.plain("button-lessons"), "lessons")]]
            again = voice.plain("button-same-again", when=next_month(potluck))
            return [*rows, [Button(again, "again")]] if potluck.repeats else rows
        if case.kind == "return":
            return [[Button(voice.plain("button-dishes"), "backs")]]
        if case.kind == "start":
            return [[Button(voice.plain("button-here"), "here"), Button(voice.plain("button-lates"), "lates")]]
        if case.kind in RULES:
            return [[Button(voice.plain("button-why"), "whys", RULES[case.kind])]]
        if case.kind == "leave":
            return [[Button(voice.plain("button-lates"), "lates")]]
        if case.kind == "bring" and most_needed(potluck, headcount(potluck)):
            return [[Button(voice.plain("button-missing"), "missing")]]
        return []

    async def notice(
        self, stored: Stored | None, chat: ChatRecord | None, key: str, facts: Mapping[str, Any]
    ) -> str | None:
        voice = voice_for(chat, stored.potluck) if stored else Voice(chat.language if chat else "en")
        return voice(key, **facts) if voice.has(key) else None


def _names(row: ReminderRow) -> list[str]:
    names = row.about.facts["names"]
    return [str(n) for n in names] if isinstance(names, (list, tuple)) else []


def _together(rows: Sequence[ReminderRow]) -> list[ReminderRow]:
    """The names the host is to ask in one line instead of one each."""
    named = [row for row in rows if row.about.key == "reminder-answer-by-named"]
    if len(named) < 2:
        return list(rows)
    names = [name for row in named for name in _names(row)]
    one = replace(named[0], about=Say(named[0].about.key, {**named[0].about.facts, "names": names}))
    return [*(row for row in rows if row not in named), one]


def preview_lines(voice: Voice, potluck: Potluck, rows: Sequence[Reminder]) -> Html:
    """Reminders ahead, for the host: when, to whom, what kind."""
    lines = []
    for row in rows:
        guest = potluck.guest(potluck.host if row.to == "host" else row.to)
        to = guest.name if guest else voice.plain("reminder-to-group")
        kind = voice.plain(f"reminder-kind-{row.kind}")
        lines.append(voice("reminder-preview", when=row.due_at, name=to, kind=kind))
    return Html("\n".join(lines))
