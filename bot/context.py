"""A turn: one update, what it may read, and the effects it asks for.

A capability reads through the turn and only records what should happen. When it returns, the
dispatcher writes everything in one transaction; if somebody else changed the potluck meanwhile, the
turn is thrown away and the capability runs again on the newer state. So a handler may run twice,
and nothing it does is visible before the commit.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from bot import doors
from bot.buttons import Button
from bot.outgoing import Buttons, mention, moment_key, sign_rows
from bot.reading import DIALOG_KEPT, Toast
from bot.recalling import Recalling
from bot.storage.values import (
    Batch,
    ChatRecord,
    Dialog,
    NewAction,
    PersonRecord,
    Post,
    PotluckPlace,
    Stored,
)
from bot.texts import Voice
from planning.potluck import Guest, Potluck

TOAST_LONGEST = 200


@dataclass
class Turn(Recalling):
    """An update in work."""

    def start_potluck(self, potluck: Potluck, place: PotluckPlace) -> None:
        self._after[potluck.id] = (None, potluck)
        self._new_places[potluck.id] = place
        self.stored = Stored(potluck, 0, place)
        self._dirty.add(potluck.id)

    def change(self, after: Potluck, key: str = "did-change", **facts: Any) -> Potluck:
        """Record the potluck as changed; `key` says in the undo list what was done."""
        assert self.stored is not None
        before = self._after.get(after.id, (self.stored, self.stored.potluck))[0]
        if after == self.potluck:
            return after
        self._after[after.id] = (before, after)
        self._dirty.add(after.id)
        if before is not None:
            self._actions.setdefault(after.id, (key, _plain(facts), None))
        return after

    def record_undo(self, action_id: int) -> None:
        """This turn takes an action back; it is not an action itself."""
        self._undone.append(action_id)
        self._actions.clear()

    def say(
        self,
        key: str,
        *,
        buttons: Buttons = (),
        reply: bool | None = None,
        where: str = "here",
        about: str | None = None,
        silent: bool = False,
        **facts: Any,
    ) -> None:
        """Send a text. `where`: here, group (the potluck's chat and topic) or private (to this person).

        In a group an answer to a message is a reply to it, so that it stays clear who is meant.
        """
        voice = self.voice_in(self.group_language) if where == "group" else self.voice
        self.post(voice(key, **facts), buttons=buttons, reply=reply, where=where, about=about, silent=silent)

    def post(
        self,
        text: str,
        *,
        buttons: Buttons = (),
        reply: bool | None = None,
        where: str = "here",
        about: str | None = None,
        silent: bool = False,
        force_reply: bool = False,
        method: str = "send",
        **payload: Any,
    ) -> None:
        chat_id, thread_id = self._target(where)
        body: dict[str, Any] = {"text": str(text), **payload}
        if buttons:
            body["buttons"] = self.signed(chat_id, buttons)
        here = chat_id == self.event.chat_id
        if reply is None:
            reply = not self.private and self.event.kind in ("message", "edited")
        if reply and here and self.event.message_id is not None:
            body["reply_to"] = self.event.message_id
        if about:
            body["about"] = about
        if silent:
            body["silent"] = True
        if force_reply:
            body["force_reply"] = True
        potluck_id = self.stored.potluck.id if self.stored else None
        self._posts.append(Post(chat_id, method, body, thread_id=thread_id, potluck_id=potluck_id))

    def _target(self, where: str) -> tuple[int, int | None]:
        if where == "private":
            return self.person.id, None
        if where == "group" and self.stored is not None:
            return self.place.chat_id, self.place.thread_id
        return self.event.chat_id, self.event.thread_id

    def signed(self, chat_id: int, buttons: Buttons) -> list[list[dict[str, str]]]:
        potluck_id = self.stored.potluck.id if self.stored else ""
        return sign_rows(self.services.signer, chat_id, potluck_id, buttons)

    def edit_pressed(self, key: str, *, buttons: Buttons = (), **facts: Any) -> None:
        """Put new words and buttons into the message whose button was pressed."""
        self.edit_pressed_html(self.voice(key, **facts), buttons=buttons)

    def edit_pressed_html(self, text: str, *, buttons: Buttons = ()) -> None:
        body = {
            "text": str(text),
            "message_id": self.event.message_id,
            "buttons": self.signed(self.event.chat_id, buttons),
        }
        self._here("edit", body)

    def delete_pressed(self) -> None:
        self._here("delete", {"message_id": self.event.message_id})

    def react(self, emoji: str = "👍") -> None:
        if self.event.message_id is not None:
            self._here("react", {"message_id": self.event.message_id, "emoji": emoji})

    def _here(self, method: str, body: dict[str, Any]) -> None:
        """Something done to a message of this chat; it belongs to the potluck spoken of and goes when that goes."""
        potluck_id = self.stored.potluck.id if self.stored else None
        self._posts.append(
            Post(self.event.chat_id, method, body, thread_id=self.event.thread_id, potluck_id=potluck_id)
        )

    def toast(self, key: str, *, alert: bool = False, **facts: Any) -> None:
        """Words only the person who pressed sees; elsewhere than on a press they are said aloud."""
        if self.event.kind != "press":
            self.say(key, **facts)
            return
        text = self.voice.plain(key, **facts)
        self.toast_ = Toast(text if len(text) <= TOAST_LONGEST else text[: TOAST_LONGEST - 1] + "…", alert)

    async def tell(self, guest: Guest, key: str, *, buttons: Buttons = (), **facts: Any) -> None:
        """Tell somebody else: privately if they may be written to, else by a mention in the group."""
        if guest.id == self.me or not guest.id.lstrip("-").isdecimal():
            return
        person = await self.store.person(int(guest.id))
        potluck_id = self.stored.potluck.id if self.stored else None
        if person is not None and person.can_dm:
            voice = self.voice_in(person.language or self.group_language)
            body: dict[str, Any] = {"text": str(voice(key, **facts))}
            if buttons:
                body["buttons"] = self.signed(person.id, buttons)
            self._posts.append(Post(person.id, "send", body, potluck_id=potluck_id))
            return
        self.say(
            "told-in-group",
            where="group",
            reply=False,
            name=mention(guest),
            what=self.voice_in(self.group_language)(key, **facts),
            buttons=buttons,
        )

    async def private_voice(self, guest: Guest) -> Voice | None:
        """How to speak to somebody in private; None where they can't be written to."""
        person = await self.store.person(int(guest.id)) if guest.id.isdecimal() else None
        return self.voice_in(person.language or self.group_language) if person and person.can_dm else None

    def ask(
        self,
        kind: str,
        key: str,
        *,
        data: Mapping[str, Any] | None = None,
        where: str = "here",
        **facts: Any,
    ) -> None:
        """Ask this person one thing; their reply to it comes back to `registry.question(kind)`."""
        chat_id, _ = self._target(where)
        self._dialogs.append(Dialog(chat_id, self.person.id, kind, dict(data or {}), expires_at=self.now + DIALOG_KEPT))
        self.post(
            self.voice(key, **facts),
            where=where,
            about=f"question:{kind}",
            force_reply=True,
            reply=None if self.event.kind == "message" else False,
        )

    def remember_question(self, kind: str, data: Mapping[str, Any]) -> None:
        """Keep what a question with buttons is about until one is pressed."""
        self._dialogs.append(
            Dialog(self.event.chat_id, self.person.id, kind, dict(data), expires_at=self.now + DIALOG_KEPT)
        )

    def tag_action(self, **facts: Any) -> None:
        """Add facts to what this turn will be remembered by."""
        for _, known, _ in self._actions.values():
            known.update(_plain(facts))

    def answered(self) -> None:
        """The open question is settled."""
        if self.dialog is not None:
            self._cleared.append((self.dialog.chat_id, self.dialog.person_id))

    def save_chat(self, chat: ChatRecord) -> None:
        self._chats[chat.id] = chat
        if chat.id == self.chat.id:
            self.chat = chat

    def save_person(self, person: PersonRecord) -> None:
        self._people[person.id] = person
        if person.id == self.person.id:
            self.person = person

    def move(self, place: PotluckPlace) -> None:
        self._places.append(place)

    def refresh_board(self, potluck_id: str | None = None, *, anew: bool = False) -> None:
        """Draw the board again; `anew` posts a new one below everything."""
        target = potluck_id or (self.stored.potluck.id if self.stored else None)
        if target:
            self._dirty.add(target)
            if anew:
                self._lost.add(target)

    def forget_me(self) -> None:
        self._forget.append(self.person.id)

    def undo_button(self) -> Button:
        """Takes back what this turn does. It names the moment, which the action carries too."""
        return Button(self.voice.plain("button-undo"), "undo", (moment_key(self.now),), owner=self.me)

    @property
    def changed(self) -> bool:
        return bool(self._after)

    def deep_link(self, *parts: str) -> str:
        return f"https://t.me/{self.services.username}?start={'-'.join(parts)}"

    def own_link(self, kind: str, *, of_potluck: bool = True) -> str:
        """A link that opens `kind` for the person of this turn alone, for a few days (`bot/doors.py`).

        Who writes as the group itself can't be told apart: they get the shared one."""
        potluck = self.potluck.id if of_potluck else None
        who = self.event.person
        if who.anonymous:
            return self.deep_link(*filter(None, (kind, potluck)))
        return self.deep_link(doors.own(self.services.signer, kind, potluck, who.id, self.now))

    def discard(self) -> None:
        """Forget every effect so far (a refusal must leave nothing half done)."""
        for table in (self._after, self._new_places, self._actions, self._chats, self._people, self._kept):
            table.clear()
        for items in (self._undone, self._posts, self._dialogs, self._cleared, self._places, self._forget):
            items.clear()
        self._dirty.clear()
        self._lost.clear()
        self.warned_of.clear()

    @property
    def changed_potlucks(self) -> tuple[Potluck, ...]:
        """Every potluck this turn made or changed, as it is now."""
        return tuple(after for _, after in self._after.values())

    @property
    def dirty(self) -> tuple[str, ...]:
        return tuple(sorted(self._dirty))

    def batch(self, reminders: Mapping[str, tuple[Any, ...]]) -> Batch:
        """What is to be written; `reminders` are those of each changed potluck, by its id."""
        changed = tuple((before, after) for before, after in self._after.values() if before is not None)
        new = tuple((after, self._new_places[after.id]) for before, after in self._after.values() if before is None)
        return Batch(
            now=self.now,
            update_id=self.event.update_id,
            chats=tuple(self._chats.values()),
            people=tuple(self._people.values()),
            new_potlucks=new,
            changed=changed,
            places=tuple(self._places),
            actions=tuple(
                NewAction(pid, self.me, self.now, key, facts, changes)
                for pid, (key, facts, changes) in self._actions.items()
            ),
            undone=tuple(self._undone),
            dialogs=tuple(self._dialogs),
            dialogs_cleared=tuple(self._cleared),
            recollections=tuple(one for one in self._kept.values() if one is not None),
            let_go=tuple(key for key, one in self._kept.items() if one is None),
            posts=tuple(self._posts),
            reminders=tuple(reminders.items()),
            dirty_boards=tuple((pid, self.now) for pid in self.dirty),
            lost_boards=tuple(sorted(self._lost)),
            forget_people=tuple(self._forget),
        )


def _plain(facts: Mapping[str, Any]) -> dict[str, Any]:
    """Facts as JSON, for the action log."""
    return {k: v if isinstance(v, (str, int, float, bool, type(None))) else str(v) for k, v in facts.items()}
