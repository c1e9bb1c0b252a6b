"""From an update to a committed turn: who reads it, what happens on a refusal, what is acknowledged."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace
from typing import Protocol

import structlog
import telegram
from telegram.error import BadRequest, TelegramError

from bot.admins import Admins
from bot.context import Turn
from bot.derived import Derived
from bot.events import Event, read
from bot.membership import is_outside
from bot.routing import run
from bot.services import Services
from bot.storage.errors import AlreadyTaken, Stale, StorageTrouble
from bot.storage.values import Batch, ChatRecord, CommitResult, PersonRecord, Post, Stored
from planning.changes import Refusal
from planning.potluck import Potluck, Stage
from planning.reminders import Reminder

log = structlog.get_logger("dispatch")

MOST_TRIES = 12


class Wakes(Protocol):
    def wake(self, result: CommitResult | None = None, *, potlucks: Iterable[str] = ()) -> None:
        """There is something to send; `potlucks` are those whose boards may be behind."""


class Dispatcher:
    def __init__(
        self,
        services: Services,
        bot: telegram.Bot,
        courier: Wakes,
        committed: Callable[[telegram.Update], None] = lambda _: None,
    ) -> None:
        """`committed` hears of an update as soon as its change is safe, before it is acknowledged."""
        self.committed = committed
        self.on_failure: Callable[[], None] = lambda: None
        """Hears of every update whose handling failed."""
        self.services = services
        self.bot = bot
        self.courier = courier
        self.admins = Admins(bot, services.clock)
        self._derived = Derived(services.store)

    async def handle(self, update: telegram.Update) -> None:
        """Take one update: at most one committed turn comes of it."""
        event = read(update, self.bot.id)
        if event is None:
            return
        try:
            await self._handle(event, update)
        except StorageTrouble as trouble:
            # The update is tried again; a press is acknowledged when it is done, not at every try.
            log.error("storage", chat=event.chat_id, trouble=str(trouble))
            raise
        except Exception:
            log.exception("turn failed", chat=event.chat_id, update=event.update_id)
            self.on_failure()
            await self._apologise(event)

    async def too_much(self, update: telegram.Update) -> None:
        """Says once, to whoever spoke to the bot, that they sent more than it reads; nothing of the update is done."""
        event = read(update, self.bot.id)
        if event is None or not (event.kind == "press" or event.private or event.reply_to_bot or event.text[:1] == "/"):
            return
        turn = await self._begin(event)
        refuse(turn, Refusal("refused-flood"))
        try:
            self.courier.wake(await self.services.store.commit(turn.batch({})))
        except (AlreadyTaken, Stale):
            return
        await self._acknowledge(event, turn.toast_.text, alert=True)

    async def _handle(self, event: Event, update: telegram.Update) -> None:
        if event.kind in ("admins", "left", "joined", "bot-admin"):
            self.admins.forget(event.chat_id)
        is_admin = admin_known = sure = event.person.anonymous
        for _ in range(MOST_TRIES):
            turn = await self._begin(event)
            turn.is_admin, turn.admin_known = is_admin, admin_known
            try:
                await run(turn)
                for watcher in self.services.registry.watchers if turn.changed else ():
                    await watcher(turn)
                if is_admin and not sure and _is_grave(turn):
                    sure = True
                    is_admin = await self.admins.is_admin(self._group_of(turn), event.person.id, anew=True)
                    if not is_admin:
                        continue
                if event.kind in ("message", "edited"):
                    turn.tag_action(message=event.message_id)
            except Refusal as no:
                # Only where it would make a difference is the platform asked who is an administrator.
                if no.key in ("refused-not-host", "refused-not-yours", "refused-not-your-dish") and not admin_known:
                    admin_known = True
                    is_admin = await self.admins.is_admin(self._group_of(turn), event.person.id)
                    if is_admin:
                        continue
                turn.discard()
                refuse(turn, no)
            try:
                result = await self.services.store.commit(await self._batch(turn))
            except AlreadyTaken:
                await self._acknowledge(event, "")
                return
            except Stale:
                continue
            self.committed(update)
            self.courier.wake(result, potlucks=turn.dirty)
            if self.services.planner is not None:
                self.services.planner.changed(turn.changed_potlucks, result.revisions)
            await self._acknowledge(event, turn.toast_.text, alert=turn.toast_.alert)
            return
        raise RuntimeError("the potluck changed too often")

    async def _batch(self, turn: Turn) -> Batch:
        """What the turn changes, with its potlucks' reminders; marked are those whose kitchen must be planned."""
        batch = turn.batch(await self._reminders(turn))
        planner = self.services.planner
        wanted = tuple(p.id for p in turn.changed_potlucks if planner is not None and not planner.settled(p))
        return replace(batch, plans_wanted=wanted) if wanted else batch

    async def _reminders(self, turn: Turn) -> dict[str, tuple[Reminder, ...]]:
        """The reminders of every potluck this turn changed."""
        planner = self.services.planner
        found = {}
        for potluck in turn.changed_potlucks:
            timeline = planner.timeline(potluck) if planner else None
            found[potluck.id] = await self._derived.reminders(potluck, timeline, turn.now)
        return found

    @staticmethod
    def _group_of(turn: Turn) -> int:
        return turn.place.chat_id if turn.stored is not None else turn.event.chat_id

    async def _begin(self, event: Event) -> Turn:
        store = self.services.store
        data = await store.load_turn(event.chat_id, event.thread_id, event.person.id)
        now = self.services.clock.now()
        fresh_chat = ChatRecord(event.chat_id, event.chat_kind, event.chat_title)
        chat = data.chat or fresh_chat
        person = data.person or PersonRecord(event.person.id)
        turn = Turn(self.services, event, now, chat, person, data.stored, data.dialog)
        if data.dialog is not None and data.dialog.expires_at is not None and data.dialog.expires_at < now:
            turn.dialog = None
        self._remember(turn, data.chat is None, data.person)
        if event.private:
            turn.stored = await self._private_potluck(turn)
            if turn.stored is not None and await is_outside(self.services, turn.stored, event.person.id):
                turn.stored = None
            if turn.stored is not None:
                turn.group = await store.chat(turn.stored.place.chat_id)
        if self.services.planner is not None:
            await self.services.planner.look(turn.stored)
        return turn

    def _remember(self, turn: Turn, new_chat: bool, known: PersonRecord | None) -> None:
        event, chat = turn.event, turn.chat
        if not event.private and (new_chat or (chat.title, chat.kind) != (event.chat_title, event.chat_kind)):
            turn.save_chat(replace(chat, title=event.chat_title or chat.title, kind=event.chat_kind))
        elif event.private and new_chat:
            turn.save_chat(chat)
        if event.person.anonymous:
            return
        seen = replace(
            turn.person,
            name=event.person.name,
            username=event.person.username,
            can_dm=turn.person.can_dm or (event.private and event.kind in ("message", "press")),
        )
        if seen != known:
            turn.save_person(seen)

    async def _private_potluck(self, turn: Turn) -> Stored | None:
        """The potluck a private chat is about: chosen by link or button, else the only one, else the next."""
        store = self.services.store
        if turn.person.private_potluck:
            stored = await store.potluck(turn.person.private_potluck)
            if stored is not None:
                return stored
        theirs = [s for s in await store.potlucks_of_person(turn.person.id) if s.potluck.ends >= turn.now]
        return min(theirs, key=lambda s: s.potluck.starts_at, default=None)

    async def _acknowledge(self, event: Event, text: str, *, alert: bool = False) -> None:
        if event.query_id is None:
            return
        try:
            await self.bot.answer_callback_query(event.query_id, text or None, show_alert=alert)
        except BadRequest as error:
            # Too late, or answered before: the change stands all the same.
            log.info("acknowledgement not taken", error=str(error))
        except TelegramError as error:
            log.info("acknowledgement is tried again", error=type(error).__name__)
            body = {"query_id": event.query_id, "text": text, "alert": alert}
            now = self.services.clock.now()
            result = await self.services.store.commit(Batch(now=now, posts=(Post(event.chat_id, "answer", body),)))
            self.courier.wake(result)

    def _plain(self, event: Event, key: str) -> str:
        from bot.texts import Voice

        return Voice().plain(key)

    async def _apologise(self, event: Event) -> None:
        text = self._plain(event, "trouble-inside")
        if event.query_id is not None:
            await self._acknowledge(event, text, alert=True)
            return
        if event.kind == "message" and (event.private or event.text.startswith("/")):
            try:
                await self.bot.send_message(event.chat_id, text, message_thread_id=event.thread_id)
            except TelegramError:
                log.info("apology not taken", chat=event.chat_id)


def _is_grave(turn: Turn) -> bool:
    """Whether a potluck is called off (or taken up again) or gets other hosts: no right of a minute ago is enough."""

    def held(potluck: Potluck) -> tuple[object, ...]:
        return potluck.host, potluck.cohosts, potluck.stage is Stage.CANCELLED

    return any(held(was.potluck) != held(now) for was, now in turn.batch({}).changed)


def refuse(turn: Turn, no: Refusal) -> None:
    """One sentence that says what to do; on a press only to whoever pressed."""
    turn.toast(no.key, alert=True, **no.facts)
