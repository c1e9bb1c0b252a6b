"""What storage hands out and takes in. Frozen; every instant is aware and in UTC."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from typing import Any, Protocol

from planning.kitchen.result import Timeline
from planning.potluck import Potluck, Say

Json = Any
"""Plain JSON: None, bool, int, float, str, lists and dicts with string keys."""
RecollectionKey = tuple[int, int, str, str]
"""Chat, person, kind, about."""


@dataclass(frozen=True)
class ChatRecord:
    """A chat and its settings. `kind` is group, supergroup or private; quiet hours are local "HH:MM"."""

    id: int
    kind: str = "group"
    title: str = ""
    timezone: str | None = None
    units: str = "us"
    language: str = "en"
    quiet_from: str = "21:00"
    quiet_to: str = "08:00"
    reminder_kinds_off: tuple[str, ...] = ()
    bot_is_admin: bool = False
    bot_present: bool = True
    settings: Mapping[str, Json] = field(default_factory=dict)


@dataclass(frozen=True)
class PersonRecord:
    """Somebody with an account. `private_potluck` is what their private chat is about just now."""

    id: int
    name: str = ""
    username: str | None = None
    language: str | None = None
    can_dm: bool = False
    muted: bool = False
    private_potluck: str | None = None
    units: str | None = None


@dataclass(frozen=True)
class PotluckPlace:
    """Where a potluck lives and its board there. `board_dirty_since` is also the mark that tells
    the courier whether the board was dirtied again while it was being sent: it grows every time."""

    potluck_id: str
    chat_id: int
    thread_id: int | None = None
    board_message_id: int | None = None
    board_pinned: bool = False
    current: bool = True
    board_dirty_since: datetime | None = None


@dataclass(frozen=True)
class Stored:
    """A potluck as it was at `revision`; give it back as `before` when you change it."""

    potluck: Potluck
    revision: int
    place: PotluckPlace


@dataclass(frozen=True)
class Dialog:
    """A question somebody was asked in a chat; one at a time for a person in a chat."""

    chat_id: int
    person_id: int
    kind: str
    data: Mapping[str, Json] = field(default_factory=dict)
    message_id: int | None = None
    expires_at: datetime | None = None


@dataclass(frozen=True)
class Recollection:
    """Something said or done a little while ago that the next words may lean on; it counts before `until`.

    One for each chat, person (0: the chat's own), kind and `about` (which of several); a newer one replaces it.
    """

    chat_id: int
    person_id: int
    kind: str
    value: Json
    at: datetime
    until: datetime
    about: str = ""
    potluck_id: str | None = None

    @property
    def key(self) -> RecollectionKey:
        return self.chat_id, self.person_id, self.kind, self.about


@dataclass(frozen=True)
class EntityChange:
    """One thing before and after a change; None = it was not there. `*_at` is its index in its list."""

    kind: str
    key: str
    before: Json
    after: Json
    before_at: int | None = None
    after_at: int | None = None


@dataclass(frozen=True)
class NewAction:
    """What somebody did, to be written with the change. `changes` None = the potluck's whole diff."""

    potluck_id: str
    actor: str
    at: datetime
    key: str
    facts: Mapping[str, Json] = field(default_factory=dict)
    changes: tuple[EntityChange, ...] | None = None


@dataclass(frozen=True)
class Action:
    id: int
    potluck_id: str
    actor: str
    at: datetime
    key: str
    facts: Mapping[str, Json]
    changes: tuple[EntityChange, ...]
    undone: bool = False


@dataclass(frozen=True)
class Post:
    """Something to be sent. `id` is 0 until it is stored. `state`: pending, claimed, sending, given-up.

    `tries` counts the calls begun. `doubtful` on a claimed post: somebody began the call before and
    never said how it ended.
    """

    chat_id: int
    method: str
    payload: Mapping[str, Json] = field(default_factory=dict)
    id: int = 0
    thread_id: int | None = None
    potluck_id: str | None = None
    reminder_key: str | None = None
    not_before: datetime | None = None
    tries: int = 0
    state: str = "pending"
    lease_until: datetime | None = None
    owner: str | None = None
    doubtful: bool = False
    why: str | None = None


class ReminderLike(Protocol):
    """What the pending set is made of (planning's reminders fit)."""

    @property
    def key(self) -> str: ...
    @property
    def kind(self) -> str: ...
    @property
    def to(self) -> str: ...
    @property
    def due_at(self) -> datetime: ...
    @property
    def expires_at(self) -> datetime: ...
    @property
    def about(self) -> Say: ...


@dataclass(frozen=True)
class ReminderRow:
    """A reminder in the database. `state`: pending, sending, sent, skipped, failed, withdrawn.

    `doubtful`: an earlier holder's lease ran out before it said whether it had sent it.
    `tries` counts claims and fences the finish.
    """

    potluck_id: str
    key: str
    kind: str
    to: str
    due_at: datetime
    expires_at: datetime | None
    about: Say
    state: str = "pending"
    lease_until: datetime | None = None
    owner: str | None = None
    tries: int = 0
    doubtful: bool = False
    message_id: int | None = None


@dataclass(frozen=True)
class SentMessage:
    """What a message of the bot was about, so that a reply to it can be understood."""

    chat_id: int
    message_id: int
    kind: str
    potluck_id: str | None = None
    reminder_key: str | None = None
    at: datetime | None = None


@dataclass(frozen=True)
class FinishedReminder:
    """The end of a claimed reminder, written with the change or post that comes of it."""

    potluck_id: str
    key: str
    owner: str
    state: str = "sent"
    message_id: int | None = None
    tries: int | None = None


@dataclass(frozen=True)
class Batch:
    """Everything one turn changes; written in one transaction or not at all.

    `chats` and `people` are written as they are; `changed_chats` and `changed_people` are pairs
    (as read, as wished) of which only the difference is written, so that nobody else's change is
    lost. `changed` with the same potluck twice writes nothing but checks and raises the revision.

    `places` sets chat, topic and `current` (and takes `current` from the potluck that had it
    there); the board's message belongs to the courier: see `board_sent` and `lost_boards`.
    `reminders` replaces the pending set of a potluck and raises its revision.
    """

    now: datetime
    update_id: int | None = None
    chats: tuple[ChatRecord, ...] = ()
    people: tuple[PersonRecord, ...] = ()
    changed_chats: tuple[tuple[ChatRecord, ChatRecord], ...] = ()
    changed_people: tuple[tuple[PersonRecord, PersonRecord], ...] = ()
    new_potlucks: tuple[tuple[Potluck, PotluckPlace], ...] = ()
    changed: tuple[tuple[Stored, Potluck], ...] = ()
    places: tuple[PotluckPlace, ...] = ()
    actions: tuple[NewAction, ...] = ()
    undone: tuple[int, ...] = ()
    dialogs: tuple[Dialog, ...] = ()
    dialogs_cleared: tuple[tuple[int, int], ...] = ()
    recollections: tuple[Recollection, ...] = ()
    let_go: tuple[RecollectionKey, ...] = ()
    posts: tuple[Post, ...] = ()
    reminders: tuple[tuple[str, tuple[ReminderLike, ...]], ...] = ()
    finished_reminders: tuple[FinishedReminder, ...] = ()
    dirty_boards: tuple[tuple[str, datetime], ...] = ()
    lost_boards: tuple[str, ...] = ()
    messages: tuple[SentMessage, ...] = ()
    plans_wanted: tuple[str, ...] = ()
    """Potlucks of `changed` or `new_potlucks` whose kitchen is to be planned anew."""
    plans: tuple[tuple[str, str, Timeline], ...] = ()
    """(potluck of `changed`, a mark of what of it the timeline was made for, timeline)."""
    forget_people: tuple[int, ...] = ()


@dataclass(frozen=True)
class CommitResult:
    """The posts with their ids, in the batch's order, and the new revision of every potluck touched."""

    posts: tuple[Post, ...] = ()
    revisions: Mapping[str, int] = field(default_factory=dict)
    actions: tuple[int, ...] = ()


@dataclass(frozen=True)
class TurnData:
    """All a turn needs to begin: None for what isn't known yet."""

    chat: ChatRecord | None
    person: PersonRecord | None
    stored: Stored | None
    dialog: Dialog | None
