"""Lesser trouble of the day: another oven is found, a breaker trips, somebody is not here yet, a crowd shrinks."""

from __future__ import annotations

from dataclasses import replace

from bot.buttons import Button
from bot.capabilities.buying import source_words
from bot.context import Turn
from bot.registry import Registry
from planning.changes import may_manage, set_party
from planning.changes.rules import require_manager
from planning.potluck import Guest, Oven, Party, Potluck
from planning.theday.troubles import Trouble

KINDS = ("oven-found", "breaker", "not-here", "fewer-people")
LEAVING = ("left", "leave", "went", "gone", "fueron", "van")
DEFAULT_AMPS, DEFAULT_VOLTS, SHARE = 15.0, 120.0, 0.8
"""A household circuit of the US, and how much of it is planned with (ELEC-03)."""


def takes(turn: Turn, found: Trouble) -> bool:
    """Whether this is for us, from this person and at this hour."""
    potluck = turn.potluck
    if found.kind == "oven-found":
        return may_manage(potluck, turn.actor) or potluck.kitchen_before is not None
    if found.kind == "breaker" and turn.guest() is not None:
        return True  # what to do at once changes no plan
    if not may_manage(potluck, turn.actor):
        return False
    if found.kind == "not-here":
        return turn.now >= potluck.starts_at and absent(potluck, turn.words) is not None
    return found.kind != "fewer-people" or door_guest(turn) is not None


async def take(turn: Turn, found: Trouble) -> None:
    match found.kind:
        case "oven-found":
            await _oven(turn)
        case "breaker":
            _breaker(turn)
        case "not-here":
            who = absent(turn.potluck, turn.words)
            if who is not None:
                row = [Button(turn.voice.plain("button-not-coming", name=who.name), "noshow", (who.id,))]
                turn.say("trouble-not-here", name=who.name, buttons=[row])
        case "fewer-people":
            await _fewer(turn, found)


def absent(potluck: Potluck, words: str) -> Guest | None:
    """The one guest named who is expected and has not said to be here."""
    from bot.capabilities.trouble import person_named

    found = potluck.guest(person_named(potluck, words) or "")
    waited = found is not None and found.answer.value in ("yes", "maybe") and found.arrived_at is None
    return found if waited else None


async def _oven(turn: Turn) -> None:
    """An oven elsewhere: one more, and the food has a way to it."""
    from bot.capabilities.trouble import changed

    before = turn.potluck
    if not may_manage(before, turn.actor):
        turn.say("trouble-oven-offered", buttons=[[Button(turn.voice.plain("button-use-oven"), "useoven")]])
        return
    kitchen = replace(before.kitchen, ovens=(*before.kitchen.ovens, Oven()))
    await changed(turn, before, replace(before, kitchen=kitchen), "trouble-oven-found", left=len(kitchen.ovens))


async def use_oven(turn: Turn) -> None:
    require_manager(turn.potluck, turn.actor)
    await _oven(turn)
    turn.toast("answer-below")


def _breaker(turn: Turn) -> None:
    """One circuit and what hangs on it: less at a time, and onto another one."""
    kitchen = turn.potluck.kitchen
    circuit = min(kitchen.circuits, key=lambda c: c.amps * c.volts, default=None)
    watts = round(SHARE * (circuit.amps * circuit.volts if circuit else DEFAULT_AMPS * DEFAULT_VOLTS))
    cookers = [round(c.watts) for c in kitchen.slow_cookers]
    turn.say(
        "trouble-breaker", watts=watts, known=circuit is not None, cookers=len(cookers), each=max(cookers, default=0),
        source=source_words(turn, "ELEC-03"),
        buttons=[[Button(turn.voice.plain("button-all-dark"), "trouble", ("power-out",))]],
    )  # fmt: skip


def door_guest(turn: Turn) -> Guest | None:
    """Those who stood at the door, as far as they are on the list."""
    name = turn.voice.plain("name-at-the-door")
    return next((g for g in reversed(turn.potluck.guests) if g.name == name), None)


async def _fewer(turn: Turn, found: Trouble) -> None:
    """ "Only six of the ten stay", "four of them left": of those at the door, not of the host's own party."""
    from bot.capabilities.trouble import changed

    crowd = door_guest(turn)
    if crowd is None or found.number is None:
        return
    there = crowd.party.total
    leaving = any(word in turn.words.casefold() for word in LEAVING)
    stay = max(0, min(there, there - found.number if leaving else found.number))
    before = turn.potluck
    if stay == 0:
        after = replace(before, guests=tuple(g for g in before.guests if g.id != crowd.id))
    else:
        after = set_party(before, turn.actor, crowd.id, Party(stay))
    expected = before.expected_people and max(1, before.expected_people - (there - stay))
    await changed(turn, before, replace(after, expected_people=expected), "trouble-fewer", n=stay)


def register(app: Registry) -> None:
    app.button("useoven", use_oven)
