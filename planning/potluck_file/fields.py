"""Taking typed values out of a JSON object, collecting what is wrong instead of stopping at it."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from datetime import UTC, date, datetime, timedelta
from decimal import Decimal, InvalidOperation
from typing import Any
from zoneinfo import ZoneInfo

from planning.potluck import Say


class Faults(Exception):
    """Everything wrong with a potluck file: one `Say` for each fault, in reading order."""

    def __init__(self, faults: Iterable[Say]) -> None:
        self.faults = tuple(faults)
        super().__init__(", ".join(f"{f.key} {dict(f.facts)}" for f in self.faults))


class Notes:
    """What was found on the way: faults refuse the file, warnings only say so."""

    def __init__(self) -> None:
        self.faults: list[Say] = []
        self.warnings: list[Say] = []

    def fault(self, key: str, **facts: object) -> None:
        self.faults.append(Say(key, facts))

    def warn(self, key: str, **facts: object) -> None:
        self.warnings.append(Say(key, facts))


class Fields:
    """One JSON object with its place in the file ("guests[2]"); asks for each key by type."""

    def __init__(self, value: object, place: str, notes: Notes) -> None:
        self.place = place
        self.notes = notes
        self.asked: set[str] = set()
        if isinstance(value, Mapping):
            self.value: Mapping[str, Any] = value
        else:
            self.value = {}
            notes.fault("file-not-object", place=place or "file")

    def at(self, key: str) -> str:
        return f"{self.place}.{key}" if self.place else key

    def get(self, key: str) -> Any:
        self.asked.add(key)
        return self.value.get(key)

    def unknown_keys(self) -> None:
        for key in self.value:
            if key not in self.asked:
                self.notes.warn("file-unknown-key", place=self.at(str(key)))

    def _typed(self, key: str, kinds: type | tuple[type, ...], word: str, default: Any) -> Any:
        value = self.get(key)
        if value is None:
            return default
        if not isinstance(value, kinds) or (isinstance(value, bool) and kinds is not bool):
            self.notes.fault("file-wrong-type", place=self.at(key), wanted=word)
            return default
        return value

    def text(self, key: str, default: Any = "") -> Any:
        return self._typed(key, str, "text", default)

    def flag(self, key: str, default: bool) -> bool:
        return bool(self._typed(key, bool, "true-or-false", default))

    def number(
        self, key: str, default: Any = None, *, low: float | None = None, above: float | None = None
    ) -> float | Any:
        """A finite number; `low` is the least allowed, `above` must be exceeded."""
        value = self._typed(key, (int, float), "number", default)
        if value is None or value is default:
            return value
        if not _finite(value):
            self.notes.fault("file-wrong-type", place=self.at(key), wanted="number")
            return default
        if (low is not None and value < low) or (above is not None and value <= above):
            self.notes.fault("file-too-low", place=self.at(key), value=value, low=low if above is None else above)
            return default
        return value

    def count(self, key: str, default: Any = 0) -> Any:
        """A whole number, zero or more."""
        value = self.number(key, default, low=0)
        if value is not None and value != int(value):
            self.notes.fault("file-not-whole", place=self.at(key), value=value)
            return default
        return int(value) if value is not None else value

    def choice(self, key: str, allowed: Iterable[str], default: Any) -> Any:
        value = self.text(key, default)
        choices = tuple(allowed)
        if value is not default and value not in choices:
            self.notes.fault("file-unknown-word", place=self.at(key), value=value, allowed=", ".join(choices))
            return default
        return value

    def texts(self, key: str) -> tuple[str, ...]:
        return tuple(self.texts_or_none(key) or ())

    def texts_or_none(self, key: str) -> tuple[str, ...] | None:
        value = self._typed(key, list, "list", None)
        if value is None:
            return None
        if not all(isinstance(v, str) for v in value):
            self.notes.fault("file-wrong-type", place=self.at(key), wanted="list-of-texts")
            return ()
        return tuple(value)

    def each(self, key: str) -> list[Fields]:
        value = self._typed(key, list, "list", [])
        return [Fields(v, f"{self.at(key)}[{n}]", self.notes) for n, v in enumerate(value)]

    def part(self, key: str) -> Fields | None:
        value = self.get(key)
        return None if value is None else Fields(value, self.at(key), self.notes)

    def instant(self, key: str, zone: ZoneInfo) -> datetime | None:
        """An ISO 8601 time in UTC; without an offset it is wall time in `zone`.

        A wall time that the clocks skip is moved forward by the gap; one they show twice is the first.
        """
        value = self.text(key, None)
        if value is None:
            return None
        try:
            read = datetime.fromisoformat(value)
        except ValueError:
            self.notes.fault("file-bad-time", place=self.at(key), value=value)
            return None
        if read.tzinfo is None:
            read = read.replace(tzinfo=zone)
            # In a gap zoneinfo uses the offset before it, which lands after the gap: the shift we want.
        try:
            return read.astimezone(UTC)
        except OverflowError:
            self.notes.fault("file-bad-time", place=self.at(key), value=value)
            return None

    def day(self, key: str) -> str:
        """A date like 2027-09-18 as text; a time after it is read over."""
        value = self.text(key)
        if value:
            try:
                date.fromisoformat(value[:10])
            except ValueError:
                self.notes.fault("file-bad-date", place=self.at(key), value=value)
        return str(value)

    def decimal(self, key: str) -> Decimal | None:
        value = self.get(key)
        if value is None:
            return None
        try:
            amount = Decimal(str(value))
        except InvalidOperation:
            amount = Decimal("NaN")
        if not amount.is_finite():
            self.notes.fault("file-wrong-type", place=self.at(key), wanted="amount")
            return None
        return amount


def _finite(value: float) -> bool:
    try:
        return math.isfinite(value)
    except OverflowError:  # a whole number longer than any figure can be
        return False


WEEK = timedelta(days=7)
