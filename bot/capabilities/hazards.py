"""Danger told in plain words, whoever tells it and wherever: first the people, then what got at the food.

People are looked after before anything else is read. Of food, what is told in the open counts near the meal, or where a
dish of the list is named.
"""

from __future__ import annotations

import re
from datetime import timedelta
from typing import Any

from bot.capabilities.buying import source_words
from bot.capabilities.onthetable import gone_buttons
from bot.capabilities.trouble import lost
from bot.capabilities.urgent import answer_emergency, readable
from bot.context import Turn
from bot.naming import dish_named
from bot.registry import Registry
from bot.texts import Html
from bot.understood import place_of
from planning.changes import may_manage
from planning.potluck import Promise, Stage
from planning.safety.urgent import country
from planning.theday.hazards import PEOPLE, THINGS, hazard

SOURCES = {
    "choking": "EMER-09", "heat": "EMER-10", "ate-raw": "ILL-12", "battery": "EMER-11", "pests": "CONT-01",
    "flood": "CONT-05", "water": "CONT-06", "recall": "CONT-07", "can": "CONT-08", "mold": "CONT-09",
    "juices": "CONT-10", "marinade": "CONT-11", "gas-smell": "practice", "fire": "EMER-08", "poison": "EMER-01",
    "wound": "EMER-16", "scald": "EMER-17", "pot-frozen": "SLOW-05",
}  # fmt: skip
"""Of the others common practice and the rule for all doubt, EMER-04."""
HURT = {"co": "gas-smell"} | {k: k for k in ("fire", "gas-smell", "poison", "scald", "wound")}
OPEN_BEFORE, OPEN_AFTER, SPREADS_BEFORE = timedelta(hours=60), timedelta(days=2), timedelta(days=10)
"""So near the meal the open talk of what got at food is about it; of what holds for days, so long before (common
practice, no source)."""
SPREADS = ("water", "recall", "can", "flood")
_BATTERY = re.compile(r"\b(?:batter(?:y|ies)|pil(?:a|ita)s?|bater[ií]as?)\b", re.IGNORECASE)
_GONE = re.compile(
    r"\b(?:gone|all of it|the whole|ate (?:it |them )?all|ate the (?:whole|entire)|nothing left|enter[oa]|todo|toda|"
    r"no queda(?: nada)?)\b",
    re.IGNORECASE,
)
_MORE = re.compile(
    r"\b(?:instead|i'?ll (?:bring|make|get|buy)|bringing|i can (?:make|bring)|"
    r"(?:can['’]?t|not) (?:make it|come|coming)|en su lugar|"
    r"llevo|traigo|llevar[eé]|compro|hago otr[oa]|no (?:voy|vamos|puedo ir))\b",
    re.IGNORECASE,
)
"""The message says what follows from it, too: the other readers go on."""


async def read_people(turn: Turn) -> None:
    """Somebody is in danger: before every question of ours."""
    event = turn.event
    if not turn.words or event.forwarded or event.kind not in ("message", "edited"):
        return
    kind = hazard(turn.words, kinds=PEOPLE, language=turn.voice.language)
    if kind is None:
        return
    if kind == "reaction":
        await answer_emergency(turn)
        return
    turn.handled = True
    key = f"hurt-{HURT[kind]}" if kind in HURT else f"hazard-{kind}"
    lines: list[str] = [_said(turn, key, HURT.get(kind, kind))]
    if kind == "poison" and _BATTERY.search(turn.words):
        lines.insert(0, _said(turn, "hazard-battery", "battery"))
    turn.post(Html("\n".join(lines)))


async def read_things(turn: Turn) -> None:
    """Something got at the food, or there is no water: what is thrown out, and what is done next."""
    if not readable(turn) or turn.potluck.stage is Stage.CANCELLED or turn.about == "person":
        return
    potluck = turn.potluck
    kind = hazard(turn.words, potluck.promises, THINGS, language=turn.voice.language)
    if kind is None:
        return
    dish = dish_named(turn, turn.words, tuple(p for p in potluck.promises if p.category != "supplies"))
    if place_of(turn) in (None, "person") and not _near(turn, kind, dish):
        return
    turn.handled = _MORE.search(turn.words) is None
    said = _said(turn, f"hazard-{kind}", kind)
    if dish is None:
        turn.post(said)
        return
    turn.post(turn.voice("hazard-of", dish=dish.dish, what=said), buttons=gone_buttons(turn, [dish]))
    mine = may_manage(potluck, turn.actor) or turn.me in (dish.guest, *dish.sharers)
    if kind in ("animal", "floor") and _GONE.search(turn.words) and mine and "?" not in turn.words:
        await lost(turn, dish)


def _near(turn: Turn, kind: str, dish: Promise | None) -> bool:
    potluck = turn.potluck
    early = SPREADS_BEFORE if kind in SPREADS or dish is not None else OPEN_BEFORE
    return potluck.starts_at - early <= turn.now <= potluck.ends + OPEN_AFTER


def _said(turn: Turn, key: str, kind: str) -> Html:
    metric = "yes" if turn.has_potluck and turn.potluck.units == "metric" else "no"
    facts: dict[str, Any] = {"country": country(turn.zone.key), "metric": metric}
    return turn.voice(key, source=source_words(turn, SOURCES.get(kind, "EMER-04")), **facts)


def register(app: Registry) -> None:
    app.reader(read_people, order=14)
    app.reader(read_things, order=16)
