"""The bot as a rehearsal runs it: its own database in the output folder, on the script's clock."""

from __future__ import annotations

import asyncio
from collections.abc import Mapping
from dataclasses import replace
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

from bot import plan_json, prints
from bot.assembly import Tureen
from bot.board import voice_for
from bot.decided import Told, decided
from bot.storage.store import Store
from bot.storage.values import Batch, ChatRecord, Stored
from bot.texts import Voice
from planning import potluck_file
from planning.kitchen import timeline
from planning.plan import Plan, plan
from planning.potluck import Potluck
from planning.safety.standing import units_usual_in


class Rehearsed:
    """One life of the bot process; the next one opens the same database."""

    def __init__(self, setup: Any, file: Path | None = None, menu: bool = True) -> None:
        """`file`: a database that is kept, else the folder's own. `menu`: whether the platform is told the commands."""
        self._setup = setup
        self._kept = file
        self._menu = menu
        self._file = file or Path(setup.out) / "tureen.sqlite"
        self._bot: Tureen | None = None
        self._store: Store | None = None

    async def start(self) -> None:
        setup = self._setup
        if self._kept is None and setup.life == 1:
            # A rehearsal begins with nothing, whatever an earlier one left in the folder.
            for left in self._file.parent.glob(f"{self._file.name}*"):
                left.unlink()
        url = f"sqlite+aiosqlite:///{self._file.resolve()}"
        self._store = await Store.open(url, durable=self._kept is not None)
        if self._kept is not None and setup.life == 1:
            # The room forgets its messages at the end: kept potlucks get new boards.
            ids = await self._store.potluck_ids()
            now = setup.clock.now()
            await self._store.commit(Batch(now=now, lost_boards=ids, dirty_boards=tuple((i, now) for i in ids)))
        if await self._store.chat(setup.group) is None:
            zone = setup.timezone
            units = units_usual_in(zone)
            group = ChatRecord(setup.group, "group", timezone=zone, units=units)
            await self._store.commit(Batch(now=setup.clock.now(), chats=(group,)))
        self._bot = Tureen(
            token=setup.token, store=self._store, clock=setup.clock, base_url=setup.base_url,
            base_file_url=setup.base_file_url, menu=self._menu,
        )  # fmt: skip
        await self._bot.start()

    async def stop(self) -> None:
        if self._bot is not None:
            await self._bot.stop()

    async def kill(self) -> None:
        if self._bot is not None:
            await self._bot.kill()
        await self.close()

    def quiet(self) -> bool:
        assert self._bot is not None
        return self._bot.quiet()

    def waiting_to_send(self) -> datetime | None:
        assert self._bot is not None
        return self._bot.waiting_to_send()

    def due(self) -> datetime | None:
        assert self._bot is not None
        return self._bot.due()

    def reminder_kind(self, chat_id: int, message_id: int) -> str | None:
        assert self._bot is not None
        return self._bot.reminder_kind(chat_id, message_id)

    def take_failed_reminders(self) -> list[tuple[int, str, str]]:
        """(chat id, kind, why in words) of reminders given up since the last time this was asked."""
        assert self._bot is not None
        voice = Voice()
        return [(chat, kind, voice.plain(why)) for chat, kind, why in self._bot.take_failed_reminders()]

    async def decisions(self, language: str) -> list[Told]:
        """What was decided about the group's potluck and why, in a language; for the room's page."""
        stored = await self._stored() if self._store is not None else None
        if stored is None or self._store is None:
            return []
        return await decided(self._store, stored.potluck, self._setup.clock.now(), language)

    async def close(self) -> None:
        if self._store is not None:
            await self._store.close()
            self._store = None

    async def _stored(self) -> Stored | None:
        """The potluck the rehearsal ended with: the current one of the group, else the latest."""
        assert self._store is not None
        ids = await self._store.potluck_ids()
        all_ = [s for i in ids if (s := await self._store.potluck(i)) is not None]
        current = [s for s in all_ if s.place.current]
        found = current or all_
        return found[-1] if found else None

    async def state(self, people: Mapping[int, str]) -> dict[str, Any] | None:
        stored = await self._stored()
        if stored is None:
            return None
        return potluck_file.write(renamed(stored.potluck, people), self._setup.clock.now())

    async def plan(self, people: Mapping[int, str]) -> dict[str, Any] | None:
        stored = await self._stored()
        if stored is None:
            return None
        potluck, now = renamed(stored.potluck, people), self._setup.clock.now()
        made = await asyncio.to_thread(plan_as_of, potluck, now)
        return plan_json.write(made, potluck, now, Voice(zone=potluck.zone, units=potluck.units))

    async def language(self) -> str:
        """The group's language, for the headings of its record."""
        stored = await self._stored()
        if stored is None or self._store is None:
            return "en"
        return voice_for(await self._store.chat(stored.place.chat_id), stored.potluck).language

    async def prints(self, folder: Path, people: Mapping[int, str]) -> None:
        """Pictures, paper and calendar as the group would get them: in its language, with its link."""
        stored = await self._stored()
        if stored is None:
            return
        potluck, now = renamed(stored.potluck, people), self._setup.clock.now()
        made = await asyncio.to_thread(plan_as_of, potluck, now)
        assert self._store is not None
        voice = voice_for(await self._store.chat(stored.place.chat_id), potluck)
        document = plan_json.write(made, potluck, now, voice)
        link = f"https://t.me/{self._setup.username}?start=board-{potluck.id}" if self._setup.username else None
        await asyncio.to_thread(
            prints.write_all, potluck, document, folder, voice.plain, voice.language,
            now=now, reminders=made.reminders, link=link,
        )  # fmt: skip


def plan_as_of(potluck: Potluck, now: datetime) -> Plan:
    """The plan now; after the start, with the timeline the kitchen worked by."""
    made = plan(potluck, now)
    if now < potluck.starts_at:
        return made
    return replace(made, kitchen=timeline(potluck, potluck.starts_at - DAY))


DAY = timedelta(days=1)


def renamed(potluck: Potluck, people: Mapping[int, str]) -> Potluck:
    """Accounts under the script's ids of the people."""
    names = {str(user): person for user, person in people.items()}

    def one(guest_id: str | None) -> Any:
        return names.get(guest_id or "", guest_id)

    bar = potluck.bar and replace(
        potluck.bar, toppings=tuple(replace(t, guest=one(t.guest)) for t in potluck.bar.toppings)
    )
    return replace(
        potluck,
        host=one(potluck.host),
        cohosts=tuple(one(c) for c in potluck.cohosts),
        guests=tuple(replace(g, id=one(g.id), added_by=one(g.added_by)) for g in potluck.guests),
        promises=tuple(
            replace(
                p,
                guest=one(p.guest),
                sharers=tuple(one(s) for s in p.sharers),
                takers=tuple(one(t) for t in p.takers),
            )
            for p in potluck.promises
        ),
        bar=bar,
        history=tuple(replace(h, guest=one(h.guest)) for h in potluck.history),
        payments=tuple(replace(p, guest=one(p.guest), to=one(p.to) if p.to else "") for p in potluck.payments),
        declined=tuple(replace(d, guest=one(d.guest)) for d in potluck.declined),
    )
