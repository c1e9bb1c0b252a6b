"""Planning's values as plain JSON and back, exactly; driven by their type hints.

A field added to a value later needs nothing here: what an old text lacks takes the field's default.
"""

from __future__ import annotations

import types
import typing
from collections.abc import Callable, Mapping
from dataclasses import MISSING, fields, is_dataclass
from datetime import UTC, datetime
from decimal import Decimal
from enum import StrEnum
from functools import cache
from typing import Any

Decoder = Callable[[Any], Any]


@cache
def _field_names(cls: Any) -> tuple[str, ...]:
    return tuple(f.name for f in fields(cls))


def encode(value: Any) -> Any:
    """A value as plain JSON: tuples as lists, decimals and instants (UTC, ISO 8601) as text."""
    if value is None or isinstance(value, bool | int | float):
        return value
    if isinstance(value, str):
        return value.value if isinstance(value, StrEnum) else value
    if isinstance(value, list | tuple):
        return [encode(v) for v in value]
    if isinstance(value, Mapping):
        return {str(k): encode(v) for k, v in value.items()}
    if isinstance(value, Decimal):
        return str(value)
    if isinstance(value, datetime):
        return value.astimezone(UTC).isoformat()
    if is_dataclass(value):
        names: tuple[str, ...] = _field_names(type(value))  # type: ignore[arg-type]
        return {name: encode(getattr(value, name)) for name in names}
    raise TypeError(f"{type(value).__name__} can't be stored as JSON")


@cache
def decoder(hint: Any) -> Decoder:
    """What turns JSON back into a value of this type."""
    origin, args = typing.get_origin(hint), typing.get_args(hint)
    if origin in (typing.Union, types.UnionType):
        inner = [decoder(a) for a in args if a is not type(None)]
        assert len(inner) == 1, f"ambiguous {hint}"
        only = inner[0]
        return lambda data: None if data is None else only(data)
    if origin is tuple:
        if len(args) == 2 and args[1] is Ellipsis:
            item = decoder(args[0])
            return lambda data: tuple([item(d) for d in data])
        items = [decoder(a) for a in args]
        return lambda data: tuple([d(x) for d, x in zip(items, data, strict=True)])
    if origin is not None and isinstance(origin, type) and issubclass(origin, Mapping):
        item = decoder(args[1])
        return lambda data: {k: item(v) for k, v in data.items()}
    if isinstance(hint, type) and is_dataclass(hint):
        return _dataclass_decoder(hint)
    if hint is datetime:
        return lambda data: datetime.fromisoformat(data)
    if hint is Decimal or (isinstance(hint, type) and issubclass(hint, StrEnum)):
        return typing.cast(Decoder, hint)
    return lambda data: data


def field_decoders(cls: type) -> dict[str, Decoder]:
    hints = typing.get_type_hints(cls)
    return {f.name: decoder(hints[f.name]) for f in fields(cls)}


def defaults(cls: type) -> dict[str, Any]:
    """The default of every field that has one."""
    found = {}
    for f in fields(cls):
        if f.default is not MISSING:
            found[f.name] = f.default
        elif f.default_factory is not MISSING:
            found[f.name] = f.default_factory()
    return found


def _dataclass_decoder(cls: type) -> Decoder:
    known: dict[str, Decoder] = {}

    def build(data: Mapping[str, Any]) -> Any:
        if not known:  # on first use: a value may hold values of its own type
            known.update(field_decoders(cls))
        return cls(**{name: known[name](v) for name, v in data.items() if name in known})

    return build


def decode(hint: Any, data: Any) -> Any:
    return decoder(hint)(data)
