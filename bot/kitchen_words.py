"""The timeline in words: one line a step, one line a conflict."""

from __future__ import annotations

from bot.texts import Html, Voice
from planning.kitchen import Conflict, PlannedStep, Timeline
from planning.kitchen.off import dial_f
from planning.potluck import Potluck


def appliance_name(voice: Voice, appliance: str | None) -> str:
    kind, _, number = (appliance or "").partition(":")
    if not kind or kind == "home":
        return ""
    if kind == "own":
        return voice.plain("appliance-own", kind=voice.plain(f"step-{number}"))
    return voice.plain(f"appliance-{kind}", n=int(number) + 1 if number.isdecimal() else 1)


def degrees(voice: Voice, temp_f: float | None) -> str:
    if temp_f is None:
        return ""
    if voice.units == "metric":
        # Ovens are marked in fives.
        return voice.plain("degrees-c", n=5 * round((temp_f - 32) * 5 / 9 / 5))
    return voice.plain("degrees-f", n=round(temp_f))


def step_line(voice: Voice, potluck: Potluck, step: PlannedStep) -> Html:
    promise = potluck.promise(step.promise)
    where = appliance_name(voice, step.appliance)
    temp = degrees(voice, dial_f(potluck.kitchen, step.appliance, step.temp_f))
    return voice(
        "ovenplan-step",
        start=voice.time(step.start),
        end=voice.time(step.end),
        dish=promise.dish if promise else "",
        what=voice.plain(f"step-{step.kind}"),
        where=where,
        has_where=bool(where),
        temp=temp,
        has_temp=bool(temp),
        home=step.at == "home",
    )


def conflict_lines(voice: Voice, timeline: Timeline) -> list[Html]:
    return [voice("ovenplan-conflict", why=voice.say(c.why), fix=_ways_out(voice, c)) for c in timeline.conflicts]


def _ways_out(voice: Voice, conflict: Conflict) -> str:
    """The way out, and the others that were tried."""
    said: str = voice.say(conflict.fix.text)
    for other in conflict.others:
        # A way out of some of the dishes is said beside that of the others, not in its place.
        key = "ovenplan-too" if other.promises else "ovenplan-or"
        said = voice.plain(key, fix=said, other=voice.say(other.text))
    return said
