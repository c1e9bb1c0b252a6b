"""Formatted text: the platform's HTML, and entities given as a list.

The rules (tags, error texts, byte offsets in errors, UTF-16 units in entities) are those of the
platform's published core library as far as they were gathered for this project.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from urllib.parse import urlsplit

from .errors import bad

TAGS = {
    "a": "text_link", "b": "bold", "strong": "bold", "i": "italic", "em": "italic", "s": "strikethrough",
    "strike": "strikethrough", "del": "strikethrough", "u": "underline", "ins": "underline",
    "tg-spoiler": "spoiler", "span": "spoiler", "tg-emoji": "custom_emoji", "tg-time": "date_time",
    "pre": "pre", "code": "code", "blockquote": "blockquote",
}  # fmt: skip

GIVEN_TYPES = frozenset(TAGS.values()) | {
    "expandable_blockquote", "text_mention", "mention", "hashtag", "cashtag", "bot_command", "url", "email",
    "phone_number",
}  # fmt: skip

MAX_ENTITIES = 100
SPACE = b" \t\r\n\0\x0b"
NAMED = {b"lt": "<", b"gt": ">", b"amp": "&", b"quot": '"'}


@dataclass(frozen=True)
class Entity:
    """`offset` and `length` in UTF-16 units; `extra` is what the type carries (url, language, ...)."""

    type: str
    offset: int
    length: int
    extra: tuple[tuple[str, object], ...] = ()

    def to_api(self) -> dict[str, object]:
        return {"type": self.type, "offset": self.offset, "length": self.length, **dict(self.extra)}


@dataclass(frozen=True)
class Formatted:
    text: str
    entities: tuple[Entity, ...] = ()


def utf16_length(text: str) -> int:
    return len(text) + sum(c > "\uffff" for c in text)


def utf16_slice(text: str, offset: int, length: int) -> str:
    """The piece an entity covers. A cut through a surrogate pair gives U+FFFD."""
    raw = text.encode("utf-16-le", "surrogatepass")
    return raw[2 * offset : 2 * (offset + length)].decode("utf-16-le", "replace")


def _failed(what: str) -> Exception:
    return bad(f"can't parse entities: {what}")


@dataclass
class _Open:
    tag: str
    argument: str
    offset: int
    start: int
    """Index into the pieces written so far."""


class _Reader:
    """Bytes, because the platform counts its error offsets in bytes."""

    def __init__(self, text: str) -> None:
        self.raw = text.encode("utf-8", "surrogatepass")
        self.at = 0

    def here(self) -> int:
        """The byte at hand, 0 at the end (the platform's strings end so)."""
        return self.raw[self.at] if self.at < len(self.raw) else 0

    def space(self) -> bool:
        return self.here() in SPACE

    def skip_spaces(self) -> None:
        while self.here() != 0 and self.space():
            self.at += 1

    def take_until(self, stops: bytes) -> bytes:
        start = self.at
        while not self.space() and self.here() not in stops:
            self.at += 1
        return self.raw[start : self.at]

    def reference(self) -> str | None:
        """A character reference at `&`, stepping over it; None (and no step) if it is not one."""
        match = re.compile(rb"&(?:#x([0-9a-fA-F]+)|#([0-9]+)|([a-zA-Z]+));?").match(self.raw, self.at)
        if match is None:
            return None
        hexadecimal, decimal, name = match.groups()
        if name is not None:
            character = NAMED.get(name)
        else:
            code = int(hexadecimal, 16) if hexadecimal else int(decimal[:8])
            character = chr(code) if 0 < code < 0x10FFFF and not 0xD800 <= code <= 0xDFFF else None
        if character is not None:
            self.at = match.end()
        return character


def parse_html(text: str) -> Formatted:
    """Raises ApiError "Bad Request: can't parse entities: ..." and nothing else."""
    reader = _Reader(text)
    out: list[str] = []
    written = 0
    entities: list[Entity] = []
    nested: list[_Open] = []
    plain = re.compile(rb"[^&<]+")
    while reader.at < len(reader.raw):
        run = plain.match(reader.raw, reader.at)
        if run is not None:
            piece = run.group().decode("utf-8", "surrogatepass")
            reader.at = run.end()
        elif reader.here() == ord("&"):
            reference = reader.reference()
            piece = "&" if reference is None else reference
            reader.at += reference is None
        else:
            begin = reader.at
            reader.at += 1
            if reader.here() == ord("/"):
                _end_tag(reader, begin, nested, entities, out, written)
            else:
                nested.append(_start_tag(reader, begin, written, len(out)))
            reader.at += 1
            continue
        out.append(piece)
        written += utf16_length(piece)
    if nested:
        raise _failed(f'Can\'t find end tag corresponding to start tag "{nested[-1].tag}"')
    return Formatted("".join(out), sort(entities))


def _start_tag(reader: _Reader, begin: int, written: int, pieces: int) -> _Open:
    tag = reader.take_until(b">").decode("utf-8", "replace").lower()
    if reader.here() == 0:
        raise _failed(f"Unclosed start tag at byte offset {begin}")
    if tag not in TAGS:
        raise _failed(f'Unsupported start tag "{tag}" at byte offset {begin}')
    argument = ""
    while reader.here() != ord(">"):
        reader.skip_spaces()
        if reader.here() == ord(">"):
            break
        name = reader.take_until(b"=>").decode("utf-8", "replace").lower()
        if not name:
            raise _failed(f'Empty attribute name in the tag "{tag}" at byte offset {begin}')
        reader.skip_spaces()
        if reader.here() == 0:
            raise _failed(f'Unclosed start tag "{tag}" at byte offset {begin}')
        value = ""
        if reader.here() == ord("="):
            value = _attribute_value(reader, tag, begin)
        argument = _argument(tag, name, value) or argument
    if tag == "span" and argument != "spoiler":
        raise _failed(f'Tag "span" must have class "tg-spoiler" at byte offset {begin}')
    return _Open(tag, argument, written, pieces)


def _attribute_value(reader: _Reader, tag: str, begin: int) -> str:
    reader.at += 1
    reader.skip_spaces()
    if reader.here() == 0:
        raise _failed(f'Unclosed start tag "{tag}" at byte offset {begin}')
    quote = reader.here()
    if quote not in b"'\"":
        start = reader.at
        token = re.compile(rb"[A-Za-z0-9.\-]*").match(reader.raw, start)
        assert token is not None
        reader.at = token.end()
        if not reader.space() and reader.here() != ord(">"):
            raise _failed(f"Unexpected end of name token at byte offset {start}")
        value = token.group().decode().lower()
    else:
        reader.at += 1
        pieces = bytearray()
        while reader.here() not in (quote, 0):
            character = reader.reference() if reader.here() == ord("&") else None
            if character is None:
                pieces.append(reader.here())
                reader.at += 1
            else:
                pieces += character.encode()
        if reader.here() == quote:
            reader.at += 1
        value = pieces.decode("utf-8", "replace")
    if reader.here() == 0:
        raise _failed(f"Unclosed start tag at byte offset {begin}")
    return value


def _argument(tag: str, name: str, value: str) -> str:
    match (tag, name):
        case ("a", "href") | ("tg-emoji", "emoji-id") | ("tg-time", "unix"):
            return value
        case ("code", "class") if value.startswith("language-"):
            return value.removeprefix("language-")
        case ("span", "class") if value.startswith("tg-"):
            return value.removeprefix("tg-")
        case ("blockquote", "expandable"):
            return "1"
    return ""


def _end_tag(
    reader: _Reader, begin: int, nested: list[_Open], entities: list[Entity], out: list[str], written: int
) -> None:
    if not nested:
        raise _failed(f"Unexpected end tag at byte offset {begin}")
    reader.at += 1
    found = reader.take_until(b">").decode("utf-8", "replace").lower()
    reader.skip_spaces()
    if reader.here() != ord(">"):
        raise _failed(f"Unclosed end tag at byte offset {begin}")
    opened = nested.pop()
    if found and found != opened.tag:
        raise _failed(f'Unmatched end tag at byte offset {begin}, expected "</{opened.tag}>", found "</{found}>"')
    if written > opened.offset:
        made = _entity(opened, written - opened.offset, "".join(out[opened.start :]))
        _join_pre_and_code(entities, made, opened)


def _entity(opened: _Open, length: int, covered: str) -> Entity | None:
    kind = TAGS[opened.tag]
    where = (opened.offset, length)
    match opened.tag:
        case "a":
            return _link(opened.argument or covered, *where)
        case "tg-emoji":
            if not re.fullmatch(r"0*[1-9][0-9]{0,18}", opened.argument):
                raise _failed("Invalid custom emoji identifier specified")
            return Entity(kind, *where, (("custom_emoji_id", opened.argument),))
        case "tg-time":
            if not re.fullmatch(r"[0-9]{1,11}", opened.argument):
                raise _failed("Invalid Unix time specified")
            return Entity(kind, *where, (("unix_time", int(opened.argument)),))
        case "blockquote" if opened.argument:
            return Entity("expandable_blockquote", *where)
        case "code" if opened.argument:
            # Kept only inside <pre>; the join takes it from here.
            return Entity(kind, *where, (("language", opened.argument),))
    return Entity(kind, *where)


def _link(address: str, offset: int, length: int) -> Entity | None:
    user = re.fullmatch(r"tg:(?://)?user/?\?id=(\d{1,18})", address)
    if user:
        return Entity("text_mention", offset, length, (("user_id", int(user.group(1))),))
    url = http_address(address)
    # A link that is no address is dropped and its text stays: the platform does not complain.
    return Entity("text_link", offset, length, (("url", url),)) if url else None


def http_address(address: str) -> str | None:
    """The address as the platform would keep it, None if it is none. tg:, http: and https: only."""
    address = address.strip()
    if re.match(r"tg:(//)?\w", address):
        return address
    if not re.match(r"[a-zA-Z][a-zA-Z0-9+.\-]*://", address):
        address = "http://" + address
    try:
        parts = urlsplit(address)
        host = parts.hostname or ""
    except ValueError:
        return None
    named = "." in host.strip(".") or host == "localhost"
    if parts.scheme.lower() not in ("http", "https", "ton") or not named or re.search(r"\s", address):
        return None
    return address if parts.path or parts.query or parts.fragment else address + "/"


def _join_pre_and_code(entities: list[Entity], made: Entity | None, opened: _Open) -> None:
    """`<pre><code class="language-x">` is one `pre` with a language; a lone code keeps none."""
    if made is None:
        return
    last = entities[-1] if entities else None
    same = last is not None and (last.offset, last.length) == (made.offset, made.length)
    if made.type == "pre" and same and last is not None and last.type == "code" and last.extra:
        entities[-1] = Entity("pre", made.offset, made.length, last.extra)
        return
    if made.type == "pre" and entities and entities[-1].type == "code" and entities[-1].extra:
        entities[-1] = Entity("code", entities[-1].offset, entities[-1].length)
    entities.append(made)


def sort(entities: Iterable[Entity]) -> tuple[Entity, ...]:
    return tuple(sorted(entities, key=lambda e: (e.offset, -e.length)))


def strip(value: Formatted) -> Formatted:
    """Cut white space at both ends and move the entities with the text."""
    text = value.text
    left = len(text) - len(text.lstrip())
    kept = text.strip()
    cut, end = utf16_length(text[:left]), utf16_length(kept)
    moved = []
    for e in value.entities:
        start, stop = max(e.offset - cut, 0), min(e.offset + e.length - cut, end)
        if stop > start:
            moved.append(Entity(e.type, start, stop - start, _clean(e)))
    return Formatted(kept, tuple(moved[:MAX_ENTITIES]))


def _clean(entity: Entity) -> tuple[tuple[str, object], ...]:
    return () if entity.type == "code" else entity.extra


def given(text: str, entities: Iterable[Mapping[str, object]]) -> Formatted:
    """Text with an entity list as a client sends it. Raises ApiError on a list the platform refuses."""
    made = []
    length = utf16_length(text)
    for raw in entities:
        kind, offset, count = raw.get("type"), raw.get("offset"), raw.get("length")
        if kind not in GIVEN_TYPES:
            raise bad("can't parse MessageEntity: Unsupported type specified")
        if not isinstance(offset, int) or not isinstance(count, int) or isinstance(offset, bool):
            raise bad('can\'t parse MessageEntity: Field "offset" and "length" must be of type Number')
        if offset < 0 or count <= 0 or offset + count > length:
            raise bad(f"entity begins or ends outside the text (offset {offset}, length {count}, text {length})")
        extra: dict[str, object] = {}
        if kind == "text_link":
            url = http_address(str(raw.get("url", "")))
            if url is None:
                continue
            extra["url"] = url
        elif kind == "text_mention":
            user = raw.get("user")
            if not isinstance(user, Mapping) or not isinstance(user.get("id"), int):
                raise bad("can't parse MessageEntity: user must be non-empty")
            extra["user_id"] = user["id"]
        elif kind == "pre" and raw.get("language"):
            extra["language"] = raw["language"]
        elif kind == "custom_emoji":
            extra["custom_emoji_id"] = str(raw.get("custom_emoji_id", ""))
        elif kind == "date_time":
            extra["unix_time"] = raw.get("unix_time", 0)
        made.append(Entity(str(kind), offset, count, tuple(extra.items())))
    return Formatted(text, sort(made))


AUTOMATIC = re.compile(
    r"(?P<bot_command>(?<![\w/@<>])/[A-Za-z0-9_]{1,64}(?:@[A-Za-z0-9_]{3,32})?(?![\w/]))"
    r"|(?P<url>\bhttps?://[^\s<>]+|\bt\.me/[^\s<>]+)"
    r"|(?P<mention>(?<![\w/])@[A-Za-z0-9_]{3,32}\b)"
)


def find_automatic(value: Formatted) -> Formatted:
    """Commands, addresses and mentions the platform marks by itself, outside what is marked already."""
    taken = [(e.offset, e.offset + e.length) for e in value.entities if e.type in ("code", "pre", "text_link")]
    found = list(value.entities)
    for match in AUTOMATIC.finditer(value.text):
        offset = utf16_length(value.text[: match.start()])
        length = utf16_length(match.group())
        if not any(start < offset + length and offset < stop for start, stop in taken):
            found.append(Entity(str(match.lastgroup), offset, length))
    return Formatted(value.text, sort(found)[:MAX_ENTITIES])
