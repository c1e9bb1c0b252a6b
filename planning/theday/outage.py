"""Power that was away and is back: since when, and for how long what hung on it had no heat and no cold."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from planning.potluck import Potluck, Promise
from planning.theday.coldpot import in_slow_cookers, meant_to_start
from planning.theday.situation.foods import folded
from planning.theday.situation.times import times

LONGEST = 300
_THING = re.compile(
    r"\b(?:power|electric(?:ity)?|lights?|mains|current|fuses?|breakers?|circuit|outage|power ?cut|blackout|luz|corriente|electricidad|fusibles?|apagon|pastilla)\b"
)
_WENT = re.compile(
    r"\b(?:went|gone|was out|were out|out from|out at|was off|were off|off from|off at|off since|out since|cut|failed|tripped|blew|died|lost|without|no power|was down|been out|been off|outage|blackout|se fue|se corto|sin luz|no hubo|no habia|salto|estuvimos)\b"
)
_BACK = re.compile(
    r"\b(?:back|came on|is on again|on again|restored|returned|works again|working again|volvio|regreso|ya hay|de vuelta|otra vez hay)\b"
)
_ENDED = re.compile(r"\b(?:was|were|had been|estuvo|estuvimos|hubo)\b")
_IF = re.compile(r"\b(?:if|when the|hope|hopefully|might|may|could|last (?:year|week|time)|yesterday|(?:i|we|he|she|they|you|ill|lets) (?:\w+ )?(?:went|go|going|came|come|run|ran) back|si se|ojala|ayer)\b")
_BETWEEN = re.compile(r"\b(?:from|between|de|desde|entre)\b.{1,20}\b(?:to|until|till|til|and|a|hasta|y)\b")

_TO = re.compile(r" (?:to|till|til|and|a|y|hasta) (?:las? )?(?=\d)")


@dataclass(frozen=True)
class Outage:
    """`since` and `until` are instants (UTC); `minutes` between them, at least 1."""

    since: datetime
    until: datetime

    @property
    def whole(self) -> timedelta:
        return self.until - self.since

    @property
    def minutes(self) -> int:
        return max(1, round(self.whole.total_seconds() / 60))


def without_heat(potluck: Potluck, outage: Outage) -> tuple[Promise, ...]:
    """The dishes that were on the heat when the power went, as far as anybody told, or whose slow cooker was to run."""

    def cooked(dish: Promise) -> bool:
        if dish.began_at is not None:
            return dish.began_at < outage.until
        at = meant_to_start(potluck, dish, outage.until) if dish in slow else None
        return at is not None and at < outage.until

    slow = in_slow_cookers(potluck)
    return tuple(p for p in potluck.promises if p.out_since is None and cooked(p))


def read_outage(words: str, now: datetime, zone: ZoneInfo) -> Outage | None:
    """A power cut that is over and whose length is told; None for any other words, and where the length is not told.

    "Power went off at 9, came back just now", "the lights were out for 40 minutes, back on", "se fue la luz a las 9 y ya
    volvió". An hour is the latest one that has passed, so that a length is never told too long by half a day.
    """
    if len(words) > LONGEST or "?" in words:
        return None
    text = folded(words)
    over = _BACK.search(text) is not None or (_ENDED.search(text) is not None and _BETWEEN.search(text) is not None)
    if not (over and _THING.search(text) and _WENT.search(text)) or _IF.search(text):
        return None
    if _BETWEEN.search(text):
        text = _TO.sub(" until ", text)
    said = times(text, now, zone)
    instants = sorted(one.at for one in said if one.at is not None and one.at <= now)
    lengths = [one.minutes for one in said if one.kind == "for" and one.minutes is not None]
    if lengths:
        return Outage(now - timedelta(minutes=max(lengths)), now)
    if not instants:
        return None
    until = instants[-1] if len(instants) > 1 else now
    return Outage(instants[0], until)
