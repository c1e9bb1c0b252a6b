"""How numbers, times, money and people are written on pictures and paper."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from datetime import datetime, timedelta
from decimal import Decimal, InvalidOperation
from typing import Any, Protocol
from unicodedata import bidirectional

from babel import Locale, UnknownLocaleError, dates, lists, numbers

from bot.goods import goods
from bot.texts import Voice, languages
from bot.texts.voice import locale_of
from planning.amounts import say
from planning.potluck import Potluck, Promise, Say

SELECTORS = frozenset({"category", "need", "kind", "serve", "section", "mark"})
"""Facts the texts choose their words by."""
DIRECTION_MARKS = dict.fromkeys((*range(0x202A, 0x202F), *range(0x2066, 0x206A)))
COUNTED = ("", "each", "piece", "pieces")
OPEN, CLOSE = "\ue000", "\ue001"
STAND_IN = re.compile(f"{OPEN}(\\d+){CLOSE}")
"""Private-use characters of Unicode: no font and no language gives them a meaning."""


class Words(Protocol):
    """A text key and its facts in, plain text out (see `bot/texts/<language>/prints.ftl`)."""

    def __call__(self, key: str, /, **facts: Any) -> str: ...


class Writer:
    """Writes for one potluck in one language; everything people read on paper passes through here."""

    def __init__(self, potluck: Potluck, words: Words, lang: str = "en") -> None:
        self.potluck = potluck
        self.words = words
        self.lang = lang
        self.locale = _locale(lang, potluck.units)

    def __call__(self, key: str, **facts: Any) -> str:
        """A text of `prints.ftl`.

        What people typed is put in after the words are said: whoever says them may shorten a fact that is long
        in a chat, and nothing may be cut on a list of what not to eat.
        """
        kept: list[str] = []

        def stand_in(name: str, value: Any) -> Any:
            if key == name == "need" and isinstance(value, str):
                return value.replace(" ", "-")
            if name in SELECTORS or not isinstance(value, str) or not value:
                return value
            kept.append(value)
            return f"{OPEN}{len(kept) - 1}{CLOSE}"

        text = self.words(f"prints-{key}", **{name: stand_in(name, value) for name, value in facts.items()})
        return STAND_IN.sub(lambda found: kept[int(found[1])], text)

    def number(self, value: float) -> str:
        """At most one decimal; huge or non-finite values stay short."""
        if value != value or abs(value) >= 1e15:
            return "?"
        return str(numbers.format_decimal(round(value, 1), format="#,##0.#", locale=self.locale))

    def listed(self, items: Iterable[str]) -> str:
        """ "a, b, c" as the language writes it; a language without a pattern for plain rows gets one with "and"."""
        patterns = self.locale.list_patterns
        if {"2", "start", "middle", "end"} <= set(patterns.get("unit", ())):
            return lists.format_list(list(items), style="unit", locale=self.locale)
        return lists.format_list(list(items), style="standard", locale=self.locale)

    def local(self, instant: datetime | str) -> datetime:
        """An instant, or its text in the plan (local wall time unless it carries an offset), on the wall clock."""
        if isinstance(instant, str):
            instant = datetime.fromisoformat(instant)
        return instant.replace(tzinfo=self.potluck.zone) if instant.tzinfo is None else self.potluck.local(instant)

    def time(self, instant: datetime | str) -> str:
        return dates.format_time(self.local(instant).time(), format="short", locale=self.locale).replace(
            "\u202f", "\u00a0"
        )

    def day(self, instant: datetime | str) -> str:
        pattern = "EEEEdMMMM"
        return dates.format_skeleton(pattern, self.local(instant), locale=self.locale)

    def moment(self, instant: datetime | str, near: datetime | None = None) -> str:
        """The time, with the day in front when it is not the day of `near` (the potluck's own when not given)."""
        at, day = self.local(instant), self.local(near or self.potluck.starts_at)
        if at.date() == day.date():
            return self.time(at)
        # Within a week a weekday says enough.
        pattern = "EEE" if abs(at - self.local(self.potluck.starts_at)) < timedelta(days=6) else "MMMd"
        return f"{dates.format_skeleton(pattern, at, locale=self.locale)} {self.time(at)}"

    def temp(self, temp_f: float | None, *, setting: bool = False) -> str:
        """A temperature in the potluck's units; an oven's dial is turned to the nearest 5 °C."""
        if temp_f is None:
            return ""
        if self.potluck.units == "us":
            return f"{self.number(round(temp_f))}\u00a0°F"
        celsius = (temp_f - 32) * 5 / 9
        return f"{self.number(round(celsius / 5) * 5 if setting else round(celsius))}\u00a0°C"

    def money(self, value: Mapping[str, Any] | None) -> str:
        if not value or value.get("amount") is None:
            return ""
        try:
            return numbers.format_currency(
                Decimal(str(value["amount"])), str(value.get("currency", "USD")), locale=self.locale
            )
        except (InvalidOperation, ValueError):
            return f"{value['amount']} {value.get('currency', '')}".strip()

    def quantity(self, value: Any) -> str:
        """`{"value", "unit"}`, `{"size", "count"}`, a list of them, a number or a text, as the plan has them."""
        if value is None or value == "":
            return ""
        if isinstance(value, str):
            return self.goods(value)
        if isinstance(value, int | float):
            return self.number(value)
        if isinstance(value, Mapping):
            if "count" in value:
                return self("package", count=value["count"], size=self.quantity(value.get("size")))
            if "key" in value:
                return self.sentence(value)
            return self._measure(value.get("value"), str(value.get("unit") or ""))
        return self.listed(filter(None, (self.quantity(v) for v in value)))

    def _measure(self, value: Any, unit: str) -> str:
        """In the potluck's units; things that are counted need none."""
        if unit in COUNTED or not isinstance(value, int | float):
            return self.quantity(value)
        try:
            return self.sentence(say(value, unit, self.potluck.units)).replace(" ", "\u00a0")
        except (ValueError, KeyError, ArithmeticError):
            return f"{self.quantity(value)}\u00a0{unit}"

    def sentence(self, value: Any) -> str:
        """A sentence of the plan: already words, or still a key and facts."""
        if isinstance(value, Say):
            return self.words(value.key, **value.facts)
        if isinstance(value, Mapping):
            if text := value.get("text"):
                return str(text)
            return self.words(str(value["key"]), **dict(value.get("facts") or {})) if value.get("key") else ""
        return str(value or "")

    def goods(self, text: str) -> str:
        """A name or size of our tables in the reader's language; what people typed stays as it is."""
        return goods(Voice(self.lang), text) if self.lang in languages() else text

    def name(self, guest_id: str | None) -> str:
        guest = self.potluck.guest(guest_id)
        return apart(guest.name.strip() if guest else "") or self("somebody")

    def cooks(self, promise: Promise) -> str:
        return self.listed(self.name(g) for g in (promise.guest, *promise.sharers))

    def dish(self, promise_id: str | None) -> str:
        promise = self.potluck.promise(promise_id)
        return self.called(promise) if promise else (promise_id or "")

    def called(self, promise: Promise) -> str:
        dish = promise.dish.strip()
        return apart(self.goods(dish) if promise.category == "topping" else dish) or self("a-dish")

    def amount(self, promise: Promise) -> str:
        """What the guest said they bring: servings, else their own words, else nothing."""
        if promise.servings:
            return self("servings", count=_plain(promise.servings))
        return promise.quantity or ""

    @property
    def title(self) -> str:
        return apart(self.potluck.title.strip()) or self("untitled")

    @property
    def when(self) -> str:
        return f"{self.day(self.potluck.starts_at)}, {self.time(self.potluck.starts_at)}"

    @property
    def page(self) -> str:
        return "us-letter" if self.potluck.units == "us" else "a4"


def _plain(value: float) -> float | int:
    return int(value) if value == int(value) else round(value, 1)


def apart(text: str) -> str:
    """What people typed, with its neighbours kept in place: without direction marks of its own, and between
    isolation marks when it is written right to left (Unicode UAX #9)."""
    text = text.translate(DIRECTION_MARKS)
    return f"\u2068{text}\u2069" if any(bidirectional(c) in ("R", "AL") for c in text) else text


def _locale(lang: str, units: str) -> Locale:
    """Hours are counted and days named as the potluck's units suggest; an unknown language does it as English."""
    try:
        return Locale.parse(locale_of(lang.replace("-", "_"), units))
    except (UnknownLocaleError, ValueError):
        return Locale.parse("en_US" if units == "us" else "en_GB")
