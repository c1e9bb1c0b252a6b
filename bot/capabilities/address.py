"""How to get there: a map pin, where to park, the way in, the weather. The door is told only to those who come."""

import re

from bot.buttons import Link
from bot.context import Turn
from bot.registry import Registry
from planning.changes import Refusal, may_manage, set_door, set_parking, set_pin, set_weather
from planning.potluck import Answer, Guest, Stage

TEMPERATURE = re.compile(r"(?<![\d.])(-?\d{1,3})\s*(?:°|degrees|deg)?\s*([cf])?\b", re.IGNORECASE)


async def door(turn: Turn) -> None:
    """/door side gate, code 4711 (hosts, in private); for guests who come it tells them the way in."""
    potluck = turn.potluck
    if turn.words:
        if not turn.private:
            raise Refusal("refused-door-in-group")
        turn.change(set_door(potluck, turn.actor, turn.words), "did-door")
        turn.say("door-noted", buttons=[[turn.undo_button()]])
        return
    if not _may_know(turn, potluck.guest(turn.me)):
        raise Refusal("refused-door-not-coming")
    where = "here" if turn.private or not turn.person.can_dm else "private"
    if where == "here" and not turn.private:
        turn.say("door-in-private", buttons=[[_private(turn)]])
        return
    turn.say("door-is", where=where, words=potluck.door_code, parking=potluck.parking)
    if where == "private":
        turn.toast("bring-see-private")


def _private(turn: Turn) -> Link:
    return Link(turn.voice.plain("button-private"), turn.own_link("door"))


def _may_know(turn: Turn, guest: Guest | None) -> bool:
    return may_manage(turn.potluck, turn.actor) or (guest is not None and guest.answer is Answer.YES)


async def parking(turn: Turn) -> None:
    if turn.words:
        turn.change(set_parking(turn.potluck, turn.actor, turn.words), "did-parking")
        turn.say("parking-noted", words=turn.potluck.parking, buttons=[[turn.undo_button()]])
        return
    turn.say("parking-is", words=turn.potluck.parking)


async def weather(turn: Turn) -> None:
    """/weather hot, about 95 °F: the host's own words; a temperature in them sets the clocks of food outdoors."""
    if not turn.words:
        turn.say("weather-is", words=turn.potluck.weather)
        return
    turn.change(
        set_weather(turn.potluck, turn.actor, turn.words, fahrenheit(turn.words, turn.voice.units)), "did-weather"
    )
    turn.say(
        "weather-noted",
        words=turn.potluck.weather,
        outdoors=turn.potluck.setting == "outdoor",
        hot=(turn.potluck.outdoor_temp_f or 0) >= 90,
        known=turn.potluck.outdoor_temp_f is not None,
        buttons=[[turn.undo_button()]],
    )


def fahrenheit(words: str, units: str) -> float | None:
    """The temperature said in these words, in °F; without a letter it is read in the group's units."""
    found = TEMPERATURE.search(words)
    if found is None or not (found.group(2) or "°" in words or "deg" in words.casefold()):
        return None
    value = float(found.group(1))
    unit = (found.group(2) or ("f" if units == "us" else "c")).casefold()
    return value if unit == "f" else round(value * 9 / 5 + 32, 1)


async def pin(turn: Turn) -> None:
    """/pin shows the place on the map; a host's location message sets it."""
    where = turn.potluck.pin
    if where is None:
        raise Refusal("refused-no-pin")
    turn.post(
        turn.voice("pin-is", place=turn.potluck.place),
        method="location",
        latitude=where[0],
        longitude=where[1],
    )


async def location(turn: Turn) -> None:
    """A location of a host, in reply to the bot or in private, is where it is; anybody else's stays theirs."""
    event = turn.event
    if event.media != "location" or event.kind != "message" or not turn.has_potluck or event.forwarded:
        return
    if turn.potluck.stage is not Stage.PLANNED or not may_manage(turn.potluck, turn.actor):
        return
    if turn.about is None and not event.private:
        return
    turn.handled = True
    turn.change(set_pin(turn.potluck, turn.actor, event.details["lat"], event.details["lon"]), "did-pin")
    turn.say("pin-noted", buttons=[[turn.undo_button()]])


def register(app: Registry) -> None:
    app.command("door", door, order=39)
    app.command("parking", parking, order=39)
    app.command("weather", weather, order=39)
    app.command("pin", pin, order=39)
    app.link("door", door)
    app.reader(location, order=30)
