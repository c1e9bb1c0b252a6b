"""One call of a Bot API method: its parameters, read strictly."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass, field

from .entities import Formatted, find_automatic, given, parse_html, strip
from .errors import bad
from .files import Upload

MOST_RAW_BYTES = 32_768


@dataclass
class Call:
    """`values` come as text from forms and addresses, typed from JSON bodies; both are read alike."""

    method: str
    values: dict[str, object]
    files: Mapping[str, Upload] = field(default_factory=dict)
    by_chance: bool = False

    def has(self, name: str) -> bool:
        return name in self.values

    def text(self, name: str, default: str = "") -> str:
        value = self.values.get(name, default)
        return value if isinstance(value, str) else json.dumps(value)

    def number(self, name: str, default: int = 0) -> int:
        value = self.values.get(name)
        if value is None or value == "":
            return default
        if isinstance(value, bool):
            raise bad(f"invalid {name} specified")
        try:
            return int(str(value).strip())
        except ValueError:
            raise bad(f"invalid {name} specified: expected a whole number") from None

    def real(self, name: str) -> float:
        try:
            value = float(str(self.values[name]))
        except (KeyError, ValueError):
            raise bad(f"{name} is empty or no number") from None
        if value != value or abs(value) > 1e9:
            raise bad(f"{name} is out of range")
        return value

    def flag(self, name: str) -> bool:
        return str(self.values.get(name, "")).lower() in ("true", "1", "yes", "t", "y")

    def json(self, name: str) -> object:
        """A nested value; None when absent. JSON text in forms, the value itself in JSON bodies."""
        value = self.values.get(name)
        if not isinstance(value, str):
            return value
        if not value:
            return None
        try:
            return json.loads(value)
        except ValueError:
            raise bad(f"can't parse {name} JSON object") from None

    def mapping(self, name: str) -> Mapping[str, object] | None:
        value = self.json(name)
        if value is not None and not isinstance(value, Mapping):
            raise bad(f"object expected as {name}")
        return value

    def sequence(self, name: str) -> list[object] | None:
        value = self.json(name)
        if value is not None and not isinstance(value, list):
            raise bad(f"expected an Array as {name}")
        return value

    def formatted(self, name: str = "text", entities: str = "entities", *, most: int = 4096) -> Formatted:
        """Text with its formatting, parsed, trimmed and measured; most in code points after parsing."""
        return formatted(
            self.text(name), self.text("parse_mode"), self.sequence(entities), most,
            "message is too long" if name == "text" else "message caption is too long",
        )  # fmt: skip


def formatted(raw: str, mode: str, entities: list[object] | None, most: int, too_long: str) -> Formatted:
    if len(raw.encode("utf-8", "surrogatepass")) > MOST_RAW_BYTES:
        raise bad("text is too long" if most == 4096 else too_long)
    if "\0" in raw or any("\ud800" <= c <= "\udfff" for c in raw):
        raise bad("strings must be encoded in UTF-8")
    if entities and not mode:
        value = given(raw, [e for e in entities if isinstance(e, Mapping)])
    elif mode == "" or mode.lower() == "none":
        value = Formatted(raw)
    elif mode.lower() == "html":
        value = parse_html(raw)
    elif mode.lower() in ("markdown", "markdownv2"):
        raise bad("unsupported parse_mode (the room reads HTML and entities, not Markdown)")
    else:
        raise bad("unsupported parse_mode")
    value = strip(value)
    if len(value.text) > most:
        raise bad(too_long)
    return find_automatic(value)
