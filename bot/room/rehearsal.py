"""Plays a script of chat lines through a bot in the room, on a clock that only the script moves."""

from __future__ import annotations

import sys
from collections.abc import Awaitable, Callable, Mapping
from datetime import timedelta
from pathlib import Path
from typing import Any

from bot.clock import RealClock, SimulatedClock

from .errors import CannotDo
from .faults import Fault
from .player import BotProcess, BotSetup, NotAtRest, Player, _value
from .pointing import button_of, pointed
from .record import Record
from .room import Room
from .script import Line, Script, ScriptError, read_script
from .server import RoomServer
from .world import Chat

MakeBot = Callable[[BotSetup], BotProcess]
Writer = Callable[[Path, Mapping[int, str]], Any]
"""Given a path and user id -> script id; may be a coroutine function."""
A_LINE = timedelta(seconds=1)
UPDATES_A_SECOND = 100


async def rehearse(
    script_path: Path,
    out_dir: Path,
    make_bot: MakeBot,
    write_state: Writer,
    write_plan: Writer,
    write_prints: Writer,
    progress: Callable[[str], None],
    complain: Callable[[str], None] | None = None,
    language_of: Callable[[], Awaitable[str]] | None = None,
) -> int:
    """0, or 2 after one complaint that names the script's line.

    `write_state` and `write_plan` get the file to write, `write_prints` the folder; they are called after
    the bot has stopped in order, and not at all for a script that failed.
    """
    complain = complain or (lambda text: void(sys.stderr.write(f"{text}\n")))
    try:
        script = read_script(script_path)
        play = Rehearsal(script, out_dir, make_bot, progress)
        names, language = {person.id: person.name for person in script.people}, "en"
        try:
            await play.run()
            language = await language_of() if language_of is not None else language
        finally:
            play.record.write(out_dir, script.group, names, language)
    except ScriptError as fault:
        complain(f"{script_path}: {fault}")
        return 2
    except OSError as fault:
        complain(f"{script_path}: line 0: can't write to {out_dir}: {fault}")
        return 2
    people = play.people
    await _value(write_state(out_dir / "state.json", people))
    await _value(write_plan(out_dir / "plan.json", people))
    await _value(write_prints(out_dir, people))
    progress(f"{len(play.record.rows)} things seen, written to {out_dir}")
    return 0


def void(_: object) -> None:
    """For a lambda whose value nobody wants."""


class Rehearsal:
    def __init__(self, script: Script, out: Path, make_bot: MakeBot, progress: Callable[[str], None]) -> None:
        out.mkdir(parents=True, exist_ok=True)
        self.script = script
        self.out = out
        self.make_bot = make_bot
        self.progress = progress
        self.clock = SimulatedClock(script.start)
        # Counted on from the wall clock, so that a bot with a kept database does not take a new room's updates
        # for repetitions of an old one's. Nothing of what is written down shows them.
        first_update = int(RealClock().now().timestamp() * UPDATES_A_SECOND)
        self.room = Room(self.clock, sees_all=script.sees_all, first_update_id=first_update)
        self.player = Player(self.room, self.clock)
        self.ids: dict[str, int] = {}
        for person in script.people:
            user = self.room.add_person(person.name, username=person.username, language=person.language)
            self.ids[person.id] = user.id
        self.people = {user_id: person_id for person_id, user_id in self.ids.items()}
        self.group_id = self._group().id
        self.topics: dict[str, int] = {}
        self.lives = 0
        self._open_topics()
        first = script.first(("bot-added", "bot-admin", "bot-removed"))
        if first is None or first.text != "bot-added":
            self.room.add_bot(self.group_id, by=self._somebody(), quietly=True)
        self.record = Record(self.room, script.zone, self.people, out / "files")

    def _group(self) -> Chat:
        members = [self.ids[p.id] for p in self.script.people if not self._comes_later(p.id)]
        owner = self.ids[self.script.admins[0]] if self.script.admins else members[0] if members else 0
        forum = bool(self.script.topics()) and self.script.first(("upgraded",)) is None
        chat = self.room.add_group(self.script.group, owner, tuple(members), forum=forum)
        if not self.script.admins:
            # Nobody is named as an admin, so nobody is one.
            chat.members = {member: value for member, value in chat.members.items() if not value.admin}
            for member in members:
                self.room.seat(chat, member)
        for admin in self.script.admins[1:]:
            self.room.make_admin(chat.id, user_id=self.ids[admin], quietly=True)
        return chat

    def _comes_later(self, person: str) -> bool:
        """Whether a person joins in the script, before having said anything in the group."""
        event = self.script.first(("joined", "left"), person)
        if event is None or event.text != "joined":
            return False
        return not any(
            line.who == person and line.number < event.number and line.where != "private" and line.kind != "event"
            for line in self.script.lines
        )

    def _open_topics(self) -> None:
        if self.room.chat(self.group_id).forum:
            for name in self.script.topics():
                self.topics[name] = self.room.create_topic(self._somebody(), self.group_id, name).id

    def _somebody(self) -> int:
        """Who acts when the script does not say: the first admin, else the first person."""
        return self.ids[self.script.admins[0] if self.script.admins else self.script.people[0].id]

    async def run(self) -> None:
        async with RoomServer(self.room) as server:
            try:
                await self.play(server)
            finally:
                await self.end()

    async def play(self, server: RoomServer, played: Callable[[int, int], None] = lambda done, of: None) -> None:
        """Start the bot and play every line; the bot stays up. `played` hears of every line. Raises ScriptError."""
        self.server = server
        number = self.script.lines[0].number if self.script.lines else 1
        try:
            await self._start_bot()
            for done, line in enumerate(self.script.lines, start=1):
                number = line.number
                await self._play(line)
                self._ask_about_reminders()
                played(done, len(self.script.lines))
                if done % 25 == 0 or done == len(self.script.lines):
                    self.progress(f"{done} of {len(self.script.lines)} lines played")
        except (CannotDo, NotAtRest) as why:
            raise ScriptError(number, str(why)) from why

    async def end(self) -> None:
        bot, self.player.bot = self.player.bot, None
        if bot is not None:
            await bot.stop()

    async def _start_bot(self) -> None:
        self.lives += 1
        setup = BotSetup(
            self.room.token, self.server.base_url, self.server.base_file_url, self.clock, self.script.timezone,
            self.room.chat(self.group_id).id, dict(self.people), self.out, self.room.bot.username, self.lives,
        )  # fmt: skip
        bot = self.make_bot(setup)
        await bot.start()
        self.player.bot = bot
        await self.player.rest()

    async def _stop_bot(self) -> None:
        bot, self.player.bot = self.player.bot, None
        if bot is not None:
            self._ask_about_reminders(bot)
            await bot.kill()
            self.room.end_poll("gone")

    def _ask_about_reminders(self, bot: BotProcess | None = None) -> None:
        bot = bot or self.player.bot
        if bot is None:
            return
        self.record.ask_kinds(bot.reminder_kind)
        failed = getattr(bot, "take_failed_reminders", None)
        for chat_id, kind, why in failed() if failed is not None else ():
            self.record.failed_reminder(self.clock.now(), chat_id, kind, why)

    async def _play(self, line: Line) -> None:
        if line.kind == "clock":
            assert line.at is not None
            await self.player.move_to(line.at)
            return
        if line.kind == "down_for":
            await self._stop_bot()
            await self.player.move_by(line.lasts)
            await self._start_bot()
            return
        await self.player.move_by(A_LINE)
        match line.kind:
            case "down":
                await self._stop_bot()
            case "up":
                await self._start_bot()
            case "note":
                self.record.note(self.clock.now(), line.text)
            case "fault":
                fault = Fault(line.text, line.count, line.method, line.retry_after, line.stored)
                self.room.faults.add(fault)
            case "event":
                self._happen(line)
            case _:
                self._act(line)
        await self.player.rest()

    def _happen(self, line: Line) -> None:
        who = self.ids[line.who] if line.who else self._somebody()
        chat = self.room.chat(self.group_id)
        present = self.room.bot_in(chat)
        match line.text:
            case "bot-added" if present:
                raise CannotDo("the bot is in the group already")
            case "bot-added":
                self.room.add_bot(chat.id, who)
            case "bot-admin":
                self.room.make_admin(chat.id, who)
            case "bot-removed" if not present:
                raise CannotDo("the bot is not in the group")
            case "bot-removed":
                self.room.remove_bot(chat.id, who)
            case "joined":
                self.room.join(who, chat.id)
            case "left":
                self.room.leave(who, chat.id)
            case "blocked":
                self.room.block(who)
            case "upgraded":
                self.room.upgrade_group(chat.id, who, forum=bool(self.script.topics()))
                self._open_topics()

    # --- people's lines ------------------------------------------------------------------------

    def _act(self, line: Line) -> None:
        who = self.ids[line.who]
        chat, topic = self._where(line, who)
        match line.kind:
            case "say":
                text = self._follow_link(line.text, who) if chat.kind == "private" else line.text
                reply = pointed(self.room, chat, topic, line.reply)
                self.room.say(who, chat.id, text, reply_to=reply.id if reply else None, topic=topic)
            case "send":
                reply = pointed(self.room, chat, topic, line.reply)
                self.room.send(
                    who, chat.id, line.what, caption=line.text, reply_to=reply.id if reply else None, topic=topic
                )
            case "edit":
                own = [m for m in chat.messages.values() if m.sender == who and m.kind != "service"]
                own = [m for m in own if topic is None or m.thread == topic]
                if not own:
                    raise CannotDo(f"{line.who} has said nothing here that could be edited")
                self.room.edit(who, chat.id, own[-1].id, line.text)
            case "press":
                message, row, column = button_of(self.room, line, chat, topic, who)
                self.room.press(who, message.chat_id, message.id, row, column)

    def _where(self, line: Line, who: int) -> tuple[Chat, int | None]:
        if line.where == "private":
            return self.room.chats[who], None
        topic = self.topics[line.where.removeprefix("topic:")] if line.where.startswith("topic:") else None
        return self.room.chat(self.group_id), topic

    def _follow_link(self, text: str, who: int) -> str:
        command, _, rest = text.strip().partition(" ")
        if command != "/start" or rest.strip() != "@link":
            return text
        payload = self.room.link_shown_to(who)
        if payload is None:
            raise CannotDo(f"the bot has shown {self.people[who]} no link to follow")
        return f"/start {payload}"
