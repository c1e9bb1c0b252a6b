"""What the bot decided and why, and what it will say by itself: told from the action log and the reminders."""

from __future__ import annotations

from datetime import datetime

from bot.storage.store import Store
from bot.storage.values import Action, ReminderRow
from bot.texts import Voice
from planning.potluck import Potluck

MOST_DEEDS, MOST_AHEAD = 30, 6

Told = dict[str, object]


async def decided(store: Store, potluck: Potluck, now: datetime, language: str) -> list[Told]:
    """`{"at", "what", "why"}` of each deed, oldest first; then, with `"ahead": true`, the next reminders.

    Whoever reads this sees every chat: it is for the practice room and not for a group.
    """
    voice = Voice(language, potluck.zone, potluck.units)
    deeds = (await store.actions_since(potluck.id))[-MOST_DEEDS:]
    waiting = [r for r in await store.reminders_of(potluck.id) if r.state == "pending" and r.due_at >= now]
    ahead = sorted(waiting, key=lambda r: r.due_at)[:MOST_AHEAD]
    return [_deed(a, potluck, voice) for a in deeds] + [_ahead(r, potluck, voice) for r in ahead]


def deed(action: Action, voice: Voice) -> str:
    """What was done, in a few words without who did it."""
    if voice.has(action.key):
        return voice.plain(action.key, **action.facts)
    named = {name: str(action.facts.get(name) or "") for name in ("answer", "name", "dish", "topping")}
    return voice.plain("room-deed", deed=action.key, **named)


def _deed(action: Action, potluck: Potluck, voice: Voice) -> Told:
    facts, said = action.facts, deed(action, voice)
    actor = potluck.guest(action.actor)
    what = voice.plain("room-told", name=actor.name, text=said) if actor else said
    if read := facts.get("read"):
        why = voice.plain("room-why-read", text=str(read))
    else:
        why = voice.plain("room-why-said" if facts.get("message") else "room-why-pressed")
    return {
        "at": _at(action.at, potluck),
        "what": voice.plain("room-taken-back", text=what) if action.undone else what,
        "why": why,
    }


def _ahead(row: ReminderRow, potluck: Potluck, voice: Voice) -> Told:
    guest = potluck.guest(row.to)
    if row.to in ("group", "host") or guest is None:
        whom = voice.plain("room-to-group" if row.to == "group" else "room-to-host")
    else:
        whom = voice.plain("room-to-name", name=guest.name)
    said = voice.plain(row.about.key, **row.about.facts)
    return {"at": _at(row.due_at, potluck), "what": said, "why": whom, "ahead": True}


def _at(instant: datetime, potluck: Potluck) -> str:
    return potluck.local(instant).isoformat(timespec="minutes")
