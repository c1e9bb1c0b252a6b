"""A turn's reading side: the update, whom and what it is about, and how to look things up."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from bot.buttons import Pressed
from bot.events import Event
from bot.services import Services
from bot.storage.store import Store
from bot.storage.values import (
    ChatRecord,
    Dialog,
    EntityChange,
    PersonRecord,
    Post,
    PotluckPlace,
    Stored,
)
from bot.texts import Voice, languages
from planning.changes import Actor, Refusal, may_manage
from planning.potluck import Bar, Guest, Potluck, Promise
from planning.replies.languages import other_language

DIALOG_KEPT = timedelta(days=2)
FRESH_QUESTION = timedelta(minutes=10)


@dataclass
class Toast:
    text: str = ""
    alert: bool = False


@dataclass
class Reading:
    """What a turn knows and may look up; its effects so far are part of the picture."""

    services: Services
    event: Event
    now: datetime
    chat: ChatRecord
    person: PersonRecord
    stored: Stored | None
    dialog: Dialog | None
    group: ChatRecord | None = None
    """In private: the group whose potluck this turn is about."""
    is_admin: bool = False
    admin_known: bool = False
    pressed: Pressed | None = None
    words: str = ""
    """What stands behind a command, or the whole text of a free message."""
    about: str | None = None
    """What the replied-to message was about ("board", "question:when", "reminder:bring", ...)."""
    echoed: str = ""
    """What somebody else said just before, where these words only say "me too"."""
    link: tuple[str, ...] = ()
    handled: bool = False
    toast_: Toast = field(default_factory=Toast)
    warned_of: set[str] = field(default_factory=set)
    """The promises whose allergens this turn has spoken of already."""
    _after: dict[str, tuple[Stored | None, Potluck]] = field(default_factory=dict)
    _new_places: dict[str, PotluckPlace] = field(default_factory=dict)
    _actions: dict[str, tuple[str, dict[str, Any], tuple[EntityChange, ...] | None]] = field(default_factory=dict)
    _undone: list[int] = field(default_factory=list)
    _posts: list[Post] = field(default_factory=list)
    _chats: dict[int, ChatRecord] = field(default_factory=dict)
    _people: dict[int, PersonRecord] = field(default_factory=dict)
    _dialogs: list[Dialog] = field(default_factory=list)
    _cleared: list[tuple[int, int]] = field(default_factory=list)
    _places: list[PotluckPlace] = field(default_factory=list)
    _dirty: set[str] = field(default_factory=set)
    _lost: set[str] = field(default_factory=set)
    _forget: list[int] = field(default_factory=list)

    @property
    def store(self) -> Store:
        return self.services.store

    @property
    def private(self) -> bool:
        return self.event.private

    @property
    def me(self) -> str:
        """The guest id of whoever acts."""
        return str(self.event.person.id)

    @property
    def actor(self) -> Actor:
        return self.event.actor(is_admin=self.is_admin)

    @property
    def zone(self) -> ZoneInfo:
        if self.stored is not None:
            return ZoneInfo(self.stored.potluck.timezone)
        return ZoneInfo(self.chat.timezone or "UTC")

    @property
    def voice(self) -> Voice:
        """In private each person's own language, where they chose one; else the group's."""
        return self.voice_in((self.private and (self.person.language or self._stranger_speaks)) or self.group_language)

    @property
    def _stranger_speaks(self) -> str | None:
        """Of whoever has no group with us yet: the language they write, else their app's; None where we lack it."""
        if self.group is not None or self.stored is not None:
            return None
        written = other_language(self.event.text, self.chat.language) if self.event.is_words else None
        app = (self.event.person.language or "").partition("-")[0]
        return next((one for one in (written, app) if one in languages()), None)

    def voice_in(self, language: str) -> Voice:
        units = self.stored.potluck.units if self.stored else self.chat.units
        return Voice(language, self.zone, units)

    @property
    def group_language(self) -> str:
        """The language of the group this turn is about, also while its people write in private."""
        return self.group.language if self.group is not None else self.chat.language

    @property
    def has_potluck(self) -> bool:
        return self.stored is not None

    @property
    def potluck(self) -> Potluck:
        """The potluck this turn is about, with this turn's own changes. Refuses when there is none."""
        if self.stored is None:
            raise Refusal("refused-no-potluck-private" if self.private else "refused-no-potluck")
        return self.latest(self.stored.potluck)

    @property
    def before(self) -> Potluck | None:
        """This turn's potluck as it was before the turn changed it; None where it did not, or made it."""
        found = self._after.get(self.stored.potluck.id) if self.stored is not None else None
        return found[0].potluck if found is not None and found[0] is not None else None

    def latest(self, potluck: Potluck) -> Potluck:
        return self._after[potluck.id][1] if potluck.id in self._after else potluck

    @property
    def args(self) -> tuple[str, ...]:
        """What the pressed button carried."""
        return self.pressed.args if self.pressed is not None else ()

    def known_guest(self, guest_id: str) -> Guest:
        """A guest who is known to be there; refuses when somebody took them out meanwhile."""
        found = self.potluck.guest(guest_id)
        if found is None:
            raise Refusal("refused-unknown-person", name="")
        return found

    def known_promise(self, promise_id: str) -> Promise:
        """A promise that is still on the list, or a refusal."""
        found = self.potluck.promise(promise_id)
        if found is None:
            raise Refusal("refused-no-promise")
        return found

    def known_bar(self) -> Bar:
        """The potluck's bar, or a refusal where there is none."""
        if self.potluck.bar is None:
            raise Refusal("refused-no-bar")
        return self.potluck.bar

    @property
    def place(self) -> PotluckPlace:
        if self.stored is None:
            raise Refusal("refused-no-potluck")
        return self._new_places.get(self.stored.potluck.id, self.stored.place)

    def guest(self) -> Guest | None:
        return self.potluck.guest(self.me)

    def hosts_only(self) -> None:
        """Refuses, naming the host, whoever may not manage this potluck."""
        if not may_manage(self.potluck, self.actor):
            host = self.potluck.guest(self.potluck.host)
            raise Refusal("refused-not-host", host=host.name if host else "")

    async def about_potluck(self, stored: Stored) -> None:
        """Go on with another potluck than the current one."""
        self.stored = stored
        if self.services.planner is not None:
            await self.services.planner.look(stored)

    @property
    def question_is_fresh(self) -> bool:
        """This person was asked something a moment ago."""
        if self.dialog is None or self.dialog.expires_at is None:
            return False
        return self.now - (self.dialog.expires_at - DIALOG_KEPT) <= FRESH_QUESTION
