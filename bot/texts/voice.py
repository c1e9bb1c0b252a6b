"""Saying a text key in somebody's language, on their clock, with what people typed escaped."""

from __future__ import annotations

import functools
import html
import re
import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import UTC, date, datetime
from decimal import Decimal
from fractions import Fraction
from functools import cache
from typing import Any
from zoneinfo import ZoneInfo

import regex
from babel import localedata
from babel.dates import format_date, format_skeleton
from babel.lists import format_list
from babel.numbers import format_currency
from fluent.runtime.types import fluent_number

from bot.texts.catalogue import TextFault, catalogue
from planning.potluck import Money, Say

LONGEST_SHOWN = 300
SHORT = 100
"""Code points of a fact with which a sentence is still kept in memory."""
FIRST_STRONG_ISOLATE, POP_ISOLATE = "\u2068", "\u2069"


class Html(str):
    """Text that is already HTML and is not escaped again."""

    __slots__ = ()


class Plain(str):
    """Words of ours, already said: escaped in HTML, but not cleaned and isolated a second time."""

    __slots__ = ()


DOUBLED_STOP = re.compile(r"(?<=[ap]\.m\.)\.(?!\.)")
TIMES = ("time", "said", "shown")
"""Names of facts that hold a wall time: what people typed never does, whatever it looks like."""
WALL_TIME = re.compile(r"([01]\d|2[0-3]):[0-5]\d")


def visible(text: str, longest: int = LONGEST_SHOWN) -> str:
    """What people typed, ready to stand inside our sentence.

    One line, no direction marks of its own, cut at `longest` grapheme clusters, and isolated when it
    holds right-to-left letters so that it cannot reorder the words around it.
    """
    kept = "".join(c if c == "\u200d" or unicodedata.category(c) not in ("Cc", "Cf", "Cs") else " " for c in text)
    clusters = regex.findall(r"\X", " ".join(unicodedata.normalize("NFC", kept).split()))
    shown = "".join(clusters) if len(clusters) <= longest else "".join(clusters[: longest - 1]) + "…"
    if not shown.strip("\u200d "):
        return "?"
    if any(unicodedata.bidirectional(c) in ("R", "AL") for c in shown):
        return f"{FIRST_STRONG_ISOLATE}{shown}{POP_ISOLATE}"
    return shown


def _for_a_button(name: str) -> str:
    """A name short enough to leave room for what the button does: what is told beside it goes first."""
    if len(name) <= MOST_ON_A_BUTTON:
        return name
    head = _BESIDE.split(name, maxsplit=1)[0]
    return f"{head}…" if 4 <= len(head) < MOST_ON_A_BUTTON else visible(name, MOST_ON_A_BUTTON)


_BESIDE = re.compile(r",? (?:with|con) |, | \(")
MOST_ON_A_BUTTON = 32
"""Letters of a name; a label holds 60."""


@cache
def locale_of(language: str, units: str) -> str:
    """The locale whose times and dates are written as where such units are used ("es_US"), where CLDR has one."""
    country = "US" if units == "us" else {"en": "GB"}.get(language, "")
    named = f"{language}_{country}"
    return named if country and localedata.exists(named) else language


@dataclass(frozen=True)
class Voice:
    """`language` as in bot/texts/, `zone` the wall clock, `units` "us" or "metric"."""

    language: str = "en"
    zone: ZoneInfo = field(default_factory=lambda: ZoneInfo("UTC"))
    units: str = "us"

    @property
    def locale(self) -> str:
        return locale_of(self.language, self.units)

    def on(self, timezone: str) -> Voice:
        return replace(self, zone=ZoneInfo(timezone))

    def __call__(self, key: str, /, **facts: Any) -> Html:
        """HTML for the chat."""
        return Html(self._remembered(key, facts, escape=True))

    def plain(self, key: str, /, **facts: Any) -> Plain:
        """Plain text, for button labels, toasts and paper."""
        return Plain(self._remembered(key, facts, escape=False))

    def say(self, said: Say) -> Html:
        return self(said.key, **said.facts)

    def _remembered(self, key: str, facts: Mapping[str, Any], *, escape: bool) -> str:
        """A sentence with plain facts is said from memory: most are the same few, thousands of times."""
        told = tuple([(name, type(value), value) for name, value in facts.items()])
        if all(kind in _SHORT and (value is None or len(str(value)) <= SHORT) for _, kind, value in told):
            return _said(self, key, escape, told)
        return self._say(key, facts, escape=escape)

    def has(self, key: str) -> bool:
        return key in catalogue(self.language) or key in catalogue("en")

    def _say(self, key: str, facts: Mapping[str, Any], *, escape: bool) -> str:
        if key.startswith("button-"):
            facts = {name: _for_a_button(value) if type(value) is str else value for name, value in facts.items()}
        ready = {name.replace("_", "-"): self._fact(value, escape, name) for name, value in facts.items()}
        # Fluent can't select on an empty text, so each fact tells whether there is anything in it.
        ready |= {
            f"has-{n}": "yes" if facts[n.replace("-", "_")] else "no"
            for n in list(ready)
            if n.replace("-", "_") in facts
        } | ready
        # Both spellings of a name are offered: Fluent ids use "-", Python's use "_".
        ready |= {name.replace("-", "_"): value for name, value in ready.items()}
        # Every sentence may tell a figure in the units of whoever reads it.
        ready.setdefault("metric", "yes" if self.units == "metric" else "no")
        texts = catalogue(self.language)
        if key not in texts and self.language != "en":
            texts = catalogue("en")
        if key not in texts:
            raise TextFault(f"no text {key!r}")
        # "17:00 p.m." at the end of a sentence brings its own full stop.
        return DOUBLED_STOP.sub("", texts.format(key, ready))

    def _fact(self, value: Any, escape: bool, name: str = "") -> Any:
        if isinstance(value, Html):
            return str(value) if escape else html.unescape(value)
        if isinstance(value, Say):
            return self._say(value.key, value.facts, escape=escape)
        if isinstance(value, Plain):
            return html.escape(value, quote=False) if escape else str(value)
        if isinstance(value, str) and name.endswith(TIMES) and WALL_TIME.fullmatch(value):
            return self.wall_time(value)
        if isinstance(value, str):
            # Fluent selectors compare raw strings; keys and ids pass through unchanged.
            shown = visible(value) if value else ""
            return html.escape(shown, quote=False) if escape else shown
        if isinstance(value, bool):
            return "yes" if value else "no"
        if isinstance(value, (float, Fraction, Decimal)):
            return self.number(float(value))
        if isinstance(value, int):
            return fluent_number(value, useGrouping=False)
        if isinstance(value, Money):
            return format_currency(value.amount, value.currency, locale=self.locale)
        if isinstance(value, datetime):
            return self.moment(value)
        if isinstance(value, date):
            return format_date(value, "medium", locale=self.locale)
        if isinstance(value, (list, tuple, set, frozenset)):
            return self.join(value, escape=escape)
        if value is None:
            return ""
        raise TextFault(f"a fact of type {type(value).__name__} can't be said")

    def join(self, values: Any, *, escape: bool = True) -> Plain:
        """A list in words; with `escape` false its parts stay plain text."""
        ordered = sorted(values) if isinstance(values, (set, frozenset)) else list(values)
        return Plain(format_list([str(self._fact(v, escape)) for v in ordered], locale=self.locale))

    def number(self, value: float) -> Any:
        """Whole numbers without a point, others with at most two digits after it."""
        rounded = round(value, 2)
        return fluent_number(int(rounded), useGrouping=False) if rounded == int(rounded) else fluent_number(rounded)

    def day(self, instant: datetime) -> str:
        return format_skeleton("yMMMEd", instant.astimezone(self.zone), self.zone, locale=self.locale)

    def time(self, instant: datetime) -> str:
        """ "5:00 PM" or "17:00", without the no-break spaces that nobody can type."""
        skeleton = "hm" if self.units == "us" else "Hm"
        return _plain_spaces(format_skeleton(skeleton, instant.astimezone(self.zone), self.zone, locale=self.locale))

    def wall_time(self, text: str) -> str:
        """A wall time "17:30" as this voice writes the hour."""
        hours, minutes = text.split(":")
        skeleton = "hm" if self.units == "us" else "Hm"
        at = datetime(2000, 1, 1, int(hours), int(minutes), tzinfo=UTC)
        return _plain_spaces(format_skeleton(skeleton, at, locale=self.locale))

    def moment(self, instant: datetime) -> str:
        local = instant.astimezone(self.zone)
        day = format_skeleton("MMMEd", local, self.zone, locale=self.locale)
        return _plain_spaces(f"{day}, {self.time(instant)}")


_SHORT = frozenset({str, Plain, Html, int, bool, type(None)})


@functools.lru_cache(maxsize=2048)
def _said(voice: Voice, key: str, escape: bool, told: tuple[tuple[str, type, Any], ...]) -> str:
    # The types stand beside the values because 1 == True, and a Html text equals the same words unescaped.
    return voice._say(key, {name: value for name, _, value in told}, escape=escape)


def _plain_spaces(text: str) -> str:
    return text.replace("\u202f", " ").replace("\u00a0", " ")
