"""The courier's dealings with storage, under one owner's name."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime, timedelta

from bot.clock import Clock
from bot.storage.errors import StorageTrouble
from bot.storage.pace import Place
from bot.storage.store import Store
from bot.storage.values import (
    Batch,
    ChatRecord,
    CommitResult,
    PersonRecord,
    Post,
    PotluckPlace,
    ReminderRow,
    SentMessage,
    Stored,
)

LEASE = timedelta(seconds=120)
"""Of a post whose call is being made: longer than a call with all its time-outs (45 s, files 90 s)."""
CLAIM = timedelta(seconds=60)
"""Of a post that waits for its chat's worker; a longer wait loses it to whoever is free, and does no harm."""
BOARD_LEASE = timedelta(seconds=60)
REMINDER_LEASE = timedelta(seconds=60)


class Desk:
    def __init__(self, store: Store, clock: Clock, owner: str) -> None:
        self._store = store
        self._clock = clock
        self._owner = owner
        self._unsure: set[int] = set()

    async def release_the_dead(self, of: str | None) -> int:
        """Free what earlier processes held: all others' (`of` None), or those of this replica's name."""
        return await self._store.release_claims(self._clock.now(), self._owner, of)

    # --- posts ---

    def holds(self, post: Post) -> bool:
        """Whether this process has claimed the post."""
        return post.owner == self._owner

    async def claim_posts(self, limit: int, *, reminders: bool, lapsed: datetime) -> tuple[Post, ...]:
        now = self._clock.now()
        return await self._store.claim_posts(now, self._owner, now + CLAIM, limit, reminders=reminders, lapsed=lapsed)

    async def waiting_posts(self, limit: int) -> tuple[Post, ...]:
        return await self._store.pending_posts(limit)

    async def begin(self, post: Post, place: Place | None) -> Post | datetime | None:
        """Write down that the call is made now. None: the claim was lost (a process that slept learns it
        here); an instant: other replicas have used up the limits until then."""
        now, again = self._clock.now(), post.id in self._unsure
        self._unsure.discard(post.id)
        try:
            begun = await self._store.begin_post(post.id, self._owner, now, now + LEASE, place, again=again)
        except StorageTrouble:
            # Perhaps written, but no call was made: the next try may find its own beginning.
            self._unsure.add(post.id)
            raise
        if not isinstance(begun, int):
            return begun
        return replace(post, tries=begun, state="sending", lease_until=now + LEASE)

    async def sent(self, post: Post, message_id: int | None) -> None:
        about = post.payload.get("about")
        message = None
        if message_id is not None and about:
            message = SentMessage(
                post.chat_id, message_id, str(about), post.potluck_id, post.reminder_key, self._clock.now()
            )
        await self._store.mark_post_sent(post.id, message)

    async def again(self, post: Post, at: datetime, *, made: bool) -> None:
        """Another try at `at`; `made`: the call may have been carried out, and counts as begun."""
        await self._store.requeue(post.id, at, self._owner, made=made)

    async def give_back(self, post: Post, at: datetime) -> None:
        """The call was not begun; somebody may make it at `at`."""
        await self._store.give_back(post.id, self._owner, at)

    async def given_up(self, post: Post, why: str) -> None:
        await self._store.give_up(post.id, why, self._owner)

    async def post(self, *posts: Post) -> CommitResult:
        return await self._store.commit(Batch(now=self._clock.now(), posts=posts))

    # --- boards ---

    async def dirty_boards(self) -> tuple[PotluckPlace, ...]:
        return await self._store.dirty_boards()

    async def stored(self, potluck_id: str) -> Stored | None:
        return await self._store.potluck(potluck_id)

    async def claim_board(self, potluck_id: str, place: Place | None) -> datetime | None:
        """None: ours to edit. An instant: others have it, or have used up the limits, until then."""
        now = self._clock.now()
        return await self._store.claim_board(potluck_id, self._owner, now, now + BOARD_LEASE, place)

    async def leave_board(self, potluck_id: str) -> None:
        await self._store.release_board(potluck_id, self._owner)

    async def board_shown(self, seen: PotluckPlace, message_id: int | None, *, pinned: bool) -> None:
        await self._store.board_sent(seen.potluck_id, message_id, pinned, seen.board_dirty_since, chat_id=seen.chat_id)

    async def board_posted(self, seen: PotluckPlace, message_id: int) -> None:
        """A new message is the board from now on; it stays dirty until it is pinned or not."""
        await self._store.board_sent(seen.potluck_id, message_id, False, None, chat_id=seen.chat_id)
        await self._store.remember_message(seen.chat_id, message_id, "board", seen.potluck_id)

    # --- chats and people ---

    async def chat(self, chat_id: int) -> ChatRecord | None:
        return await self._store.chat(chat_id)

    async def people(self, ids: Iterable[int]) -> dict[int, PersonRecord]:
        return await self._store.people(ids)

    async def cannot_dm(self, person_id: int) -> None:
        person = await self._store.person(person_id)
        if person is not None and person.can_dm:
            await self._store.commit(Batch(now=self._clock.now(), people=(replace(person, can_dm=False),)))

    async def first_time(self, chat_id: int, what: str) -> bool:
        """True the first time this is asked for a chat; remembered in its settings."""
        chat = await self._store.chat(chat_id)
        if chat is None or chat.settings.get(what):
            return False
        kept = replace(chat, settings={**chat.settings, what: True})
        await self._store.commit(Batch(now=self._clock.now(), chats=(kept,)))
        return True

    async def move_chat(self, old: int, new: int) -> None:
        await self._store.migrate_chat(old, new)
        now = self._clock.now()
        boards = tuple((s.potluck.id, now) for s in await self._store.potlucks_in(new) if s.place.current)
        if boards:
            # Messages of the old group can't be edited in the new one: the boards are posted anew.
            await self._store.commit(Batch(now=now, dirty_boards=boards))

    # --- reminders ---

    async def claim_reminders(self, limit: int) -> tuple[ReminderRow, ...]:
        now = self._clock.now()
        return await self._store.claim_reminders(now, self._owner, now + REMINDER_LEASE, limit)

    async def postpone(self, row: ReminderRow, due_at: datetime) -> None:
        await self._store.requeue_reminder(row.potluck_id, row.key, self._owner, due_at)

    async def next_due(self) -> datetime | None:
        return await self._store.next_due(self._clock.now())

    async def commit(self, batch: Batch) -> CommitResult:
        return await self._store.commit(batch)

    async def clock_set_back(self) -> None:
        now = self._clock.now()
        await self._store.cut_waits(now, now + LEASE)

    async def queue_length(self) -> int:
        lengths = await self._store.queue_length()
        return sum(lengths.get(state, 0) for state in ("pending", "claimed", "sending"))
