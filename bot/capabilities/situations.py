"""Food in some state, in free words: stood in the car, read 120, pink, frozen, left over; each dish its own verdict.

Below a message of the bot, in private, and in the open chat where words name a food and a hazard.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import timedelta
from typing import Any

from bot.buttons import Button
from bot.capabilities.buying import source_words
from bot.capabilities.onthetable import gone_buttons
from bot.capabilities.urgent import LATE, readable
from bot.context import Turn
from bot.recalling import Memory
from bot.registry import Registry
from bot.texts import Html
from bot.understood import place_of
from planning.changes import hotter_outside, may_manage, put_out, set_oven_off
from planning.kitchen.units import celsius
from planning.kitchen.usual import steps_of
from planning.potluck import Stage
from planning.safety.clocks import HOT_DAY_F, clock, more_minutes
from planning.safety.told import put_out_words
from planning.safety.urgent import languages, out_since
from planning.safety.words import perishable
from planning.theday.evening import read_evening
from planning.theday.situation import MEASURES, Judged, Recent, Verdict, judge
from planning.theday.situation.figures import day_of
from planning.theday.troubles import read_trouble

EARLY, THAW_EARLY, WEATHER_EARLY = timedelta(hours=30), timedelta(days=7), timedelta(days=10)
"""How long before the start such words are about this meal; thawing and the weather are talked of earlier (common
practice, no source)."""
MOST_LINES, MOST_DISHES = 10, 8
_OVEN = re.compile(r"\b(?:oven|horno) ?(?:n[o.]* ?)?(\d)\b")


@dataclass(frozen=True)
class Spoken:
    """The food somebody lately spoke of, and in which message, so that "it" is known."""

    message: int
    of: Recent


SPOKEN = Memory("spoken", Spoken, MEASURES)


async def read_situation(turn: Turn) -> None:
    if not readable(turn) or turn.potluck.stage is Stage.CANCELLED:
        return
    potluck = turn.potluck
    if not potluck.starts_at - WEATHER_EARLY <= turn.now <= potluck.ends + LATE:
        return
    addressed = place_of(turn) not in (None, "person")
    recent, language = await _recent(turn), turn.voice.language
    found = judge(turn.words, potluck, turn.me, turn.now, language=language, addressed=addressed, recent=recent)
    if found is None or any((s := read_evening(turn.words, c)) is not None and s.kind == "forgot" for c in languages()):
        return  # what was left at home stands nowhere
    if _put_out(turn, found):
        return
    near = potluck.starts_at - EARLY <= turn.now
    if found.oven_f is not None:
        turn.handled = True
        _oven(turn, found.oven_f)
    elif found.verdicts and (near or (potluck.starts_at - THAW_EARLY <= turn.now and _early(found))):
        _remember(turn, found)
        turn.handled = True
        _answer(turn, found)
    elif found.outside is not None and not found.verdicts:
        _weather(turn, found, asked="?" in turn.words or addressed)
    elif near and (found.quiet or found.freezer):
        _remember(turn, found)
        if found.freezer and not _is_trouble(turn):
            turn.handled = True
            turn.say("sit-freezer-any", metric=_metric(turn), source=source_words(turn, "POWER-14"))


def _put_out(turn: Turn, found: Judged) -> bool:
    """ "The slaw is on the table since 5" of one dish, or of all, starts a clock and is nothing to worry about yet."""
    if len(found.verdicts) != 1 or "?" in turn.words or found.verdicts[0].state.place != "out":
        return False
    one = found.verdicts[0]
    told = any(put_out_words(turn.words, code, turn.now, turn.zone) is not None for code in languages())
    return told and one.f is None and (one.kind == "running" or not one.food.label)


def _early(found: Judged) -> bool:
    return all(v.kind in ("frozen", "freezer", "warm") or v.state.place == "freezer" for v in found.verdicts)


def _is_trouble(turn: Turn) -> bool:
    """A host's word of a refrigerator that failed is answered with the whole list."""
    said = read_trouble(turn.words, turn.voice.language)
    return said is not None and said.kind == "fridge-out" and may_manage(turn.potluck, turn.actor)


async def _recent(turn: Turn) -> Recent | None:
    known = await turn.recall(SPOKEN)
    return known.of if known is not None and known.message != turn.event.message_id else None


def _remember(turn: Turn, found: Judged) -> None:
    turn.remember(SPOKEN, Spoken(turn.event.message_id or 0, found.remembered(turn.now)))


def _answer(turn: Turn, found: Judged) -> None:
    """A line for each food that was named, none left out; who says so below."""
    changed = [v for v in found.verdicts if _stood(turn, v)]
    shown = found.verdicts[:MOST_LINES]
    lines = [_line(turn, v) for v in shown]
    named = dict.fromkeys(source_words(turn, v.source) for v in shown if v.kind != "keeps")
    if named:
        lines[-1] = turn.voice("sit-line-one", line=lines[-1], source="; ".join(named))
    gone = [p for v in shown if v.kind == "over" and (p := turn.potluck.promise(v.food.promise)) is not None]
    buttons = gone_buttons(turn, gone)
    if changed:
        buttons.append([turn.undo_button()])
    elif first := next((v.food.promise for v in shown if turn.potluck.promise(v.food.promise) is not None), ""):
        buttons.append([Button(turn.voice.plain("button-why"), "why", (first,))])
    turn.post(Html("\n".join(lines)), buttons=buttons)


def _stood(turn: Turn, one: Verdict) -> bool:
    """A dish of the list that stood since a moment that was told: its clock runs from there."""
    told = one.state.since is not None or one.state.minutes is not None
    dish = turn.potluck.promise(one.food.promise)
    if dish is None or not told or one.kind not in ("over", "running") or turn.guest() is None or not perishable(dish):
        return False
    since = turn.now - timedelta(minutes=max(one.minutes - dish.out_min, 1))
    after = turn.potluck
    if dish.out_since is None:
        after = put_out(after, turn.actor, dish.id, since)
    elif dish.out_since > since:
        after = out_since(after, dish.id, since)
    known = after.promise(dish.id)
    if one.kind == "over" and known is not None and (left := clock(after, known).left_min(turn.now)) > 0:
        # A hot car allows less than a table does: over is over wherever its clock is shown.
        after = more_minutes(after, dish.id, left)
    if after == turn.potluck:
        return False
    turn.change(after, "did-out")
    return True


def _line(turn: Turn, one: Verdict) -> Html:
    potluck, voice = turn.potluck, turn.voice
    kind = "over-store" if one.kind == "over" and one.f is not None and one.state.stage == "cold" else one.kind
    temp = round(one.f) if one.f is not None else 0
    unnamed = "sit-everything" if one.f is None else "sit-yours"
    facts: dict[str, Any] = {
        "dish": one.food.label or voice.plain(unnamed), "minutes": round(one.minutes), "limit": one.limit,
        "until": voice.time(one.by) if one.by is not None else "", "days": one.days, "metric": _metric(turn),
        "temp": temp, "temp_c": celsius(temp), "target": round(one.target_f), "target_c": celsius(one.target_f),
        "exact": "yes" if one.f is not None and round(one.f) == round(one.target_f) else "no",
        "known": "no", "hours": 0, "rest": _rest(turn, one),
    }  # fmt: skip
    if one.kind == "frozen" and one.water_min:
        facts |= {"known": "yes", "hours": round(one.water_min / 60, 1),
                  "until": voice.time(turn.now + timedelta(minutes=one.water_min))}  # fmt: skip
    if one.kind == "limit" and one.by is not None and one.by > turn.now:
        facts["known"] = "yes" if potluck.promise(one.food.promise) is not None else "no"
    return voice(f"sit-{kind}", **facts)


def _rest(turn: Turn, one: Verdict) -> int:
    """Minutes it rests before it is carved, by its cook or as is usual; 0 for none."""
    dish = turn.potluck.promise(one.food.promise)
    steps = steps_of(turn.potluck, dish)[0] if dish is not None else ()
    return sum(s.minutes for s in steps if s.kind == "rest")


def _metric(turn: Turn) -> str:
    return "yes" if turn.potluck.units == "metric" else "no"


def _weather(turn: Turn, found: Judged, *, asked: bool) -> None:
    """How hot it will be: the clocks outdoors follow it. Anybody may make them stricter, a host also milder."""
    potluck, outside = turn.potluck, found.outside
    if outside is None or potluck.setting != "outdoor" or turn.now > potluck.ends:
        return
    if day_of(outside.day, turn.now, potluck) is False:
        return
    hot = outside.f >= HOT_DAY_F
    if not (may_manage(potluck, turn.actor) or hot):
        return
    after = hotter_outside(potluck, turn.actor, outside.f)
    new = after != potluck
    if not new and not asked:
        return
    turn.handled = True
    if new:
        turn.change(after, "did-weather")
    dishes = [p.dish for p in potluck.promises if perishable(p)][:MOST_DISHES]
    temp = round(outside.f)
    turn.say(
        "sit-weather", set="yes" if new else "no", hot="yes" if hot else "no", temp=temp,
        temp_c=celsius(temp), metric=_metric(turn), dishes=dishes, n=len(dishes) if hot else 0,
        source=source_words(turn, "TIME-02" if hot else "TIME-01"), buttons=[[turn.undo_button()]] if new else (),
    )  # fmt: skip


def _oven(turn: Turn, off_f: float) -> None:
    metric = turn.potluck.units == "metric"
    n = round(abs(off_f) / 1.8) if metric else round(abs(off_f))
    off = turn.voice.plain("sit-off-by", n=n, metric=_metric(turn))
    if may_manage(turn.potluck, turn.actor) and turn.potluck.kitchen.ovens:
        said = _OVEN.search(turn.words.casefold())
        number = int(said[1]) - 1 if said and 0 < int(said[1]) <= len(turn.potluck.kitchen.ovens) else 0
        turn.change(set_oven_off(turn.potluck, turn.actor, number, off_f), "did-kitchen")
        turn.say("sit-oven-kept", off=off, oven=number + 1, cold="yes" if off_f < 0 else "no",
                 source=source_words(turn, "practice"), buttons=[[turn.undo_button()]])  # fmt: skip
        return
    turn.say("sit-oven-cold" if off_f < 0 else "sit-oven-hot", off=off, source=source_words(turn, "practice"))


def register(app: Registry) -> None:
    app.reader(read_situation, order=17)
