"""A folded text and what it says by the tables of words; the state one stretch of it tells."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import datetime

from planning.potluck import Potluck
from planning.theday.situation.figures import Reading, readings
from planning.theday.situation.patterns import all_found, found
from planning.theday.situation.times import Said, times
from planning.theday.situation.verdicts import State

_SET_OVEN = re.compile(r"\b(?:oven|warming drawer|horno)\b.{0,20}\b(?:at|a) \d{3}\b")
_PLACES = re.compile(r"\b(?:car|trunk|table|counter|carro|coche|mesa)\b")
_LAUGH = re.compile(r"lol|lmao|rofl|ha\w*|he\w*|ja\w*|jk")
_IF = re.compile(r"(?:and |but |so )?(?:if|si)\b")


@dataclass
class Heard:
    """`text` folded, `said` the same with accents and capitals; `freezer`: one was spoken of a moment ago."""

    text: str
    said: str
    language: str
    potluck: Potluck
    now: datetime
    addressed: bool
    freezer: bool = False

    def says(self, *kinds: str, within: str | None = None) -> bool:
        return found(self.text if within is None else within, self.language, *kinds) is not None

    @property
    def metric(self) -> bool:
        return self.potluck.units == "metric"

    @property
    def asks(self) -> bool:
        """Whether it asks what may become of food."""
        return self.says("asks") and self.says("eat")

    def times(self, text: str | None = None) -> tuple[Said, ...]:
        return times(self.text if text is None else text, self.now, self.potluck.zone)

    def readings(self) -> tuple[Reading, ...]:
        return readings(self.text, self.language, metric=self.metric)

    def talk(self) -> bool:
        """Told of another time, another house, a recipe, or for a laugh."""
        match = found(self.text, self.language, "talk")
        if match is None:
            return _IF.match(self.text) is not None and not self.says("asks")
        laugh = _LAUGH.fullmatch(match.group()) is not None
        return not (laugh and (self.addressed or "?" in self.text))

    def without(self, start: int, end: int) -> None:
        """Blank what was read already; the letters keep their places."""
        self.text = self.text[:start] + " " * (end - start) + self.text[end:]

    def state(self, text: str, at: int = 0) -> State | None:
        """The state a stretch of the text, from its letter `at` on, tells; None for none."""
        if not text.strip():
            return None
        shown = [r for r in self.readings() if at <= r.start < at + len(text)]
        # What a thermometer shows is no hour.
        told = tuple(
            t for t in self.times(text) if not any(t.start < r.end - at and r.start - at < t.end for r in shown)
        )
        since, minutes = when(told, text)
        place = self._place(text)
        oven = self.says("hot", within=text) and _SET_OVEN.search(text) is not None
        if shown and not (oven and not self.says("inside", within=text)):
            kept = place if place in ("car", "off", "sun", "out") else ""
            return State(kept, since, minutes, min(r.f for r in shown))
        special = self._special(text)
        if special is not None:
            timed = special == "freezer"
            crystals = timed and self.says("crystals", within=text)
            return State(special, since if timed else None, minutes if timed else None, crystals=crystals)
        until = next((t.at for t in told if t.kind == "until"), None)
        if place == "hot" and until is not None:
            return State("off", until, until=True)
        if place in ("hot", "cold"):
            out = [m for kind in ("out", "out-car", "off") for m in all_found(text, self.language, kind)]
            return State("out", since, minutes) if out and (since is not None or minutes is not None) else State(place)
        return State(place, since, minutes) if place else None

    def _special(self, text: str) -> str | None:
        """A freezer that was open, food that is raw, frozen or to be thawed."""
        if self.says("freezer", within=text) or (self.freezer and self.says("soft", "crystals", within=text)):
            return "freezer"
        if self.says("raw", within=text) and not self.says("raw-not", within=text):
            return "raw"
        return next((kind for kind in ("frozen", "thaw") if self.says(kind, within=text)), None)

    def _place(self, text: str) -> str:
        """Where the food was, the worse of two where nobody says that it was kept."""

        def says(*kinds: str) -> bool:
            return self.says(*kinds, within=text)

        warm = says("out-warm")
        kept_cold = says("cold") and not warm
        order = (
            ("sun", says("out-sun")),
            ("car", says("out-car") and not kept_cold),
            ("off", says("off") and not says("out")),
            ("out", says("out") and (not kept_cold or says("off"))),
            ("cold", says("cold")),
            ("off", says("off")),
            ("hot", says("hot")),
            ("out", says("out-put", "out-fridge", "resting") or warm),
        )
        return next((place for place, fits in order if fits), "")


def when(told: tuple[Said, ...], text: str) -> tuple[datetime | None, float | None]:
    """(since, minutes): the earliest moment; lengths of two places add up."""
    since = min((t.at for t in told if t.kind == "since" and t.at is not None), default=None)
    if since is None:
        since = next((t.at for t in told if t.kind == "at" and t.at is not None), None)
    lengths = [t.minutes for t in told if t.kind == "for" and t.minutes is not None]
    several = len(_PLACES.findall(text)) > 1
    return since, ((sum(lengths) if several else max(lengths)) if lengths else None)


def joined(first: State, then: State) -> State:
    """What was said before a food and after it, as one."""
    weak = then.place in ("", "hot", "cold")
    return State(
        first.place if weak or first.place in ("car", "sun") else then.place,
        then.since or first.since,
        then.minutes if then.minutes is not None else first.minutes,
        then.f if then.f is not None else first.f,
        then.stage or first.stage,
        first.crystals or then.crystals,
    )
