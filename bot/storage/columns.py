"""Column types that keep values exactly, the same on every database."""

from __future__ import annotations

import json
import re
from datetime import UTC, datetime, timedelta
from typing import Any

from sqlalchemy import BigInteger, Integer, Text
from sqlalchemy.engine import Dialect
from sqlalchemy.types import TypeDecorator

_EPOCH = datetime(1970, 1, 1, tzinfo=UTC)
_MICROSECOND = timedelta(microseconds=1)
# PostgreSQL's text can't hold NUL, UTF-8 can't hold half a surrogate pair; no reader sees either.
_UNSTORABLE = re.compile("[\x00\ud800-\udfff]")

BigId = BigInteger().with_variant(Integer, "sqlite")
"""An id the database counts up itself."""


def to_micros(value: datetime) -> int:
    if value.tzinfo is None:
        raise ValueError("a time without a zone can't be stored")
    return (value - _EPOCH) // _MICROSECOND


def from_micros(value: int) -> datetime:
    return _EPOCH + timedelta(microseconds=value)


class Instant(TypeDecorator[datetime]):
    """Microseconds since 1970 UTC: exact, ordered and the same on every database."""

    impl = BigInteger
    cache_ok = True

    def process_bind_param(self, value: datetime | int | None, dialect: Dialect) -> int | None:
        return to_micros(value) if isinstance(value, datetime) else value

    def process_result_value(self, value: int | None, dialect: Dialect) -> datetime | None:
        return None if value is None else _EPOCH + timedelta(microseconds=value)


def storable(value: str) -> str:
    return value if value.isascii() and "\x00" not in value else _UNSTORABLE.sub("", value)


class Words(TypeDecorator[str]):
    """Text as people write it, without the two sorts of character no database holds."""

    impl = Text
    cache_ok = True

    def process_bind_param(self, value: str | None, dialect: Dialect) -> str | None:
        return None if value is None else storable(value)


_dump = json.JSONEncoder(ensure_ascii=True, separators=(",", ":"), allow_nan=False).encode


_load = json.JSONDecoder().decode
_EMPTY: dict[type, str] = {list: "[]", dict: "{}"}


def dump(value: Any) -> str:
    """Compact JSON; ASCII only, so that any string survives any database."""
    return _dump(value)


class JsonText(TypeDecorator[Any]):
    """JSON kept as text: read and written whole, never searched in by the database."""

    impl = Text
    cache_ok = True

    def coerce_compared_value(self, op: Any, value: Any) -> Any:
        return self

    def process_bind_param(self, value: Any, dialect: Dialect) -> str | None:
        return None if value is None else _dump(value) if value else _EMPTY.get(type(value)) or _dump(value)

    def process_result_value(self, value: str | None, dialect: Dialect) -> Any:
        # Most lists and notes are empty; parsing those took a fifth of reading a potluck.
        if value == "[]":
            return []
        if value == "{}":
            return {}
        return None if value is None else _load(value)
