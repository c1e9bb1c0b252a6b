"""A rehearsal script: read, and found fault with before anything is played.

The format is part of the outside contract (one JSON object a line). Every fault is a ScriptError
that names its line; a script that reads without one can still fail while it is played, where a
button is not there to press.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

EVENTS = ("bot-added", "bot-admin", "bot-removed", "joined", "left", "blocked", "upgraded")
SENDS = ("photo", "voice", "sticker", "location")
FAULTS = ("429", "403", "400", "500", "timeout", "migrate")
ABOUT_PEOPLE = ("joined", "left", "blocked")


class ScriptError(Exception):
    """A fault of the script; the text names the line."""

    def __init__(self, line: int, what: str) -> None:
        super().__init__(f"line {line}: {what}")


@dataclass(frozen=True)
class Cast:
    id: str
    name: str
    username: str = ""
    language: str = ""


@dataclass(frozen=True)
class Line:
    """One thing that happens. `kind`: say, press, edit, send, clock, down, up, down_for, fault, note, event."""

    number: int
    kind: str
    who: str = ""
    text: str = ""
    """What is said, the button's label, the note, the sort of fault or event."""
    where: str = "group"
    """group, private or topic:NAME."""
    reply: str | int | None = None
    on: str | int | None = None
    what: str = ""
    """The sort of thing sent."""
    at: datetime | None = None
    lasts: timedelta = timedelta(0)
    method: str | None = None
    retry_after: int = 1
    count: int = 1
    stored: bool = False


@dataclass(frozen=True)
class Script:
    start: datetime
    timezone: str
    sees_all: bool
    group: str
    people: tuple[Cast, ...]
    admins: tuple[str, ...]
    lines: tuple[Line, ...] = field(default_factory=tuple)

    @property
    def zone(self) -> ZoneInfo:
        return ZoneInfo(self.timezone)

    def topics(self) -> tuple[str, ...]:
        """Names of the topics spoken in, in order of appearance."""
        names = (line.where.removeprefix("topic:") for line in self.lines if line.where.startswith("topic:"))
        return tuple(dict.fromkeys(names))

    def first(self, events: tuple[str, ...], who: str | None = None) -> Line | None:
        """The first of these events (about this person)."""
        return next((x for x in self.lines if x.kind == "event" and x.text in events and who in (None, x.who)), None)


def read_script(path: Path) -> Script:
    """Raises ScriptError; a file that can't be read is a fault of line 0."""
    try:
        text = path.read_text(encoding="utf-8-sig")
    except OSError as error:
        raise ScriptError(0, f"can't read {path}: {error.strerror or error}") from error
    except UnicodeDecodeError as error:
        raise ScriptError(0, f"{path} is not UTF-8 text (byte {error.start})") from error
    return parse_script(text)


def parse_script(text: str) -> Script:
    objects = [(number, _object(number, line)) for number, line in enumerate(text.split("\n"), start=1) if line.strip()]
    if not objects:
        raise ScriptError(1, 'the script is empty; its first line is {"clock": …, "timezone": …}')
    start, timezone, sees_all = _first(*objects[0])
    if len(objects) < 2:
        raise ScriptError(objects[0][0] + 1, "the second line must name the people and the group")
    group, people, admins = _cast(*objects[1])
    ids = frozenset(person.id for person in people)
    zone = ZoneInfo(timezone)
    lines = []
    latest = start
    for number, raw in objects[2:]:
        line = _line(number, raw, ids, zone)
        if line.at is not None:
            if line.at < latest:
                raise ScriptError(number, f"the clock can't go back to {raw['clock']}")
            latest = line.at
        lines.append(line)
    script = Script(start, timezone, sees_all, group, people, admins, tuple(lines))
    _check_order(script)
    return script


def _object(number: int, line: str) -> dict[str, object]:
    def unique(pairs: list[tuple[str, object]]) -> dict[str, object]:
        names = [name for name, _ in pairs]
        if doubled := [name for name in names if names.count(name) > 1]:
            raise ScriptError(number, f'"{doubled[0]}" stands twice')
        return dict(pairs)

    try:
        raw = json.loads(line, object_pairs_hook=unique)
    except (ValueError, RecursionError) as error:
        why = f"{error.msg}, column {error.colno}" if isinstance(error, json.JSONDecodeError) else str(error)
        raise ScriptError(number, f"this is not JSON ({why})") from error
    if not isinstance(raw, dict):
        raise ScriptError(number, "a line must be a JSON object {…}")
    return raw


def _only(number: int, raw: Mapping[str, object], *known: str) -> None:
    for key in raw:
        if key not in known:
            raise ScriptError(number, f'unknown key "{key}" (here: {", ".join(known)})')


def _text(number: int, raw: Mapping[str, object], key: str, *, empty: bool = False) -> str:
    value = raw.get(key)
    if not isinstance(value, str) or (not value.strip() and not empty):
        raise ScriptError(number, f'"{key}" must be a text' + ("" if empty else " that is not empty"))
    if any("\ud800" <= c <= "\udfff" for c in value):
        raise ScriptError(number, f'"{key}" holds half a character (a lone surrogate)')
    return value


def _flag(number: int, raw: Mapping[str, object], key: str, default: bool) -> bool:
    value = raw.get(key, default)
    if not isinstance(value, bool):
        raise ScriptError(number, f'"{key}" must be true or false')
    return value


def _count(number: int, raw: Mapping[str, object], key: str) -> int:
    value = raw.get(key, 1)
    if not isinstance(value, int) or isinstance(value, bool) or not 1 <= value <= 100_000:
        raise ScriptError(number, f'"{key}" must be a whole number from 1 to 100000')
    return value


def _instant(number: int, value: object, zone: ZoneInfo) -> datetime:
    if not isinstance(value, str):
        raise ScriptError(number, '"clock" must be a text such as "2027-09-10T09:00"')
    try:
        when = datetime.fromisoformat(value)
        return (when if when.tzinfo else when.replace(tzinfo=zone)).astimezone(UTC)
    except (ValueError, OverflowError):
        raise ScriptError(number, f'can\'t read the time "{value}"; write it as 2027-09-10T09:00') from None


def _first(number: int, raw: dict[str, object]) -> tuple[datetime, str, bool]:
    if "clock" not in raw or "timezone" not in raw:
        raise ScriptError(number, 'the first line must have "clock" and "timezone"')
    _only(number, raw, "clock", "timezone", "bot_sees_all")
    timezone = _text(number, raw, "timezone")
    try:
        zone = ZoneInfo(timezone)
    except (ZoneInfoNotFoundError, ValueError, OSError):
        raise ScriptError(number, f'unknown timezone "{timezone}"; write one such as America/Chicago') from None
    return _instant(number, raw["clock"], zone), timezone, _flag(number, raw, "bot_sees_all", False)


def _cast(number: int, raw: dict[str, object]) -> tuple[str, tuple[Cast, ...], tuple[str, ...]]:
    _only(number, raw, "people", "group", "admins")
    listed = raw.get("people")
    if not isinstance(listed, list) or not listed:
        raise ScriptError(number, 'the second line must list the "people"')
    people = []
    for item in listed:
        if not isinstance(item, dict):
            raise ScriptError(number, 'each of "people" must be {"id": …, "name": …}')
        _only(number, item, "id", "name", "username", "language")
        extra = {key: _text(number, item, key) for key in ("username", "language") if key in item}
        people.append(Cast(_text(number, item, "id"), _text(number, item, "name"), **extra))
    ids = [person.id for person in people]
    for person_id in ids:
        if ids.count(person_id) > 1:
            raise ScriptError(number, f'the person "{person_id}" stands twice')
        if person_id in ("bot", "group"):
            raise ScriptError(number, f"\"{person_id}\" can't be a person's id")
    admins = raw.get("admins", [])
    if not isinstance(admins, list):
        raise ScriptError(number, '"admins" must be a list of people')
    for admin in admins:
        if admin not in ids:
            raise ScriptError(number, f'the admin "{admin}" is not one of the people')
    return _text(number, raw, "group"), tuple(people), tuple(dict.fromkeys(admins))


def _line(number: int, raw: dict[str, object], ids: frozenset[str], zone: ZoneInfo) -> Line:
    if "from" in raw:
        return _said(number, raw, ids)
    if "clock" in raw:
        _only(number, raw, "clock")
        return Line(number, "clock", at=_instant(number, raw["clock"], zone))
    if "down" in raw:
        _only(number, raw, "down")
        return Line(number, "down" if _flag(number, raw, "down", True) else "up")
    if "down_for" in raw:
        _only(number, raw, "down_for")
        return Line(number, "down_for", lasts=duration(number, raw["down_for"]))
    if "note" in raw:
        _only(number, raw, "note")
        return Line(number, "note", text=_text(number, raw, "note", empty=True))
    if "fault" in raw:
        return _fault(number, raw)
    if "event" in raw:
        return _event(number, raw, ids)
    if "people" in raw:
        raise ScriptError(number, "the people stand on the second line, once")
    raise ScriptError(number, 'nothing happens here: no "from", "clock", "down", "down_for", "fault", "event", "note"')


def _person(number: int, raw: Mapping[str, object], key: str, ids: frozenset[str]) -> str:
    who = _text(number, raw, key)
    if who not in ids:
        raise ScriptError(number, f'"{who}" is not one of the people')
    return who


def _said(number: int, raw: dict[str, object], ids: frozenset[str]) -> Line:
    who = _person(number, raw, "from", ids)
    where = raw.get("in", "group")
    if not isinstance(where, str) or not re.fullmatch(r"group|private|topic:.*\S.*", where):
        raise ScriptError(number, '"in" must be "group", "private" or "topic:NAME"')
    if "press" in raw:
        _only(number, raw, "from", "in", "press", "on")
        on = raw.get("on")
        _pointer(number, "on", on)
        return Line(number, "press", who, _text(number, raw, "press"), where, on=on)  # type: ignore[arg-type]
    reply = raw.get("reply")
    _pointer(number, "reply", reply)
    if "edit" in raw:
        _only(number, raw, "from", "in", "edit", "say")
        if raw["edit"] != "last":
            raise ScriptError(number, '"edit" must be "last"')
        return Line(number, "edit", who, _text(number, raw, "say"), where)
    if "send" in raw:
        _only(number, raw, "from", "in", "send", "say", "reply")
        if raw["send"] not in SENDS:
            raise ScriptError(number, f'"send" must be one of {", ".join(SENDS)}')
        caption = _text(number, raw, "say", empty=True) if "say" in raw else ""
        return Line(number, "send", who, caption, where, reply=reply, what=str(raw["send"]))  # type: ignore[arg-type]
    _only(number, raw, "from", "in", "say", "reply")
    if "say" not in raw:
        raise ScriptError(number, f'{who} does nothing: no "say", "press", "edit" or "send"')
    return Line(number, "say", who, _text(number, raw, "say", empty=True), where, reply=reply)  # type: ignore[arg-type]


def _pointer(number: int, key: str, value: object) -> None:
    """ "board", "last", or a number: 1 is the newest message of the chat, 2 the one before, …"""
    if value is None or value in ("board", "last"):
        return
    if isinstance(value, int) and not isinstance(value, bool) and 1 <= value <= 10_000:
        return
    raise ScriptError(number, f'"{key}" must be "board", "last" or a number from 1')


def _fault(number: int, raw: dict[str, object]) -> Line:
    _only(number, raw, "fault", "retry_after", "count", "method", "stored")
    sort = str(raw["fault"])
    if sort not in FAULTS or isinstance(raw["fault"], bool):
        raise ScriptError(number, f'"fault" must be one of {", ".join(FAULTS)}')
    return Line(
        number, "fault", text=sort, retry_after=_count(number, raw, "retry_after"), count=_count(number, raw, "count"),
        method=_text(number, raw, "method") if "method" in raw else None, stored=_flag(number, raw, "stored", False),
    )  # fmt: skip


def _event(number: int, raw: dict[str, object], ids: frozenset[str]) -> Line:
    _only(number, raw, "event", "who")
    event = _text(number, raw, "event")
    if event not in EVENTS:
        raise ScriptError(number, f'"event" must be one of {", ".join(EVENTS)}')
    if event in ABOUT_PEOPLE and "who" not in raw:
        raise ScriptError(number, f'"{event}" needs "who"')
    return Line(number, "event", _person(number, raw, "who", ids) if "who" in raw else "", event)


def duration(number: int, value: object) -> timedelta:
    """ISO 8601, weeks to seconds: PT6H, P1DT30M."""
    match = isinstance(value, str) and re.fullmatch(
        r"P(?=.)(?:(\d+)W)?(?:(\d+)D)?(?:T(?=.)(?:(\d+)H)?(?:(\d+)M)?(?:(\d+)S)?)?", value
    )
    if not match:
        raise ScriptError(number, f'can\'t read the duration {value!r}; write it as "PT6H" or "P1DT30M"')
    weeks, days, hours, minutes, seconds = (int(part or 0) for part in match.groups())
    try:
        return timedelta(weeks=weeks, days=days, hours=hours, minutes=minutes, seconds=seconds)
    except OverflowError:
        raise ScriptError(number, f"{value} is too long") from None


def _check_order(script: Script) -> None:
    """What can be known without playing: the bot down twice, a topic before there are topics."""
    down = False
    upgraded = script.first(("upgraded",))
    for line in script.lines:
        if line.kind in ("down", "down_for") and down:
            raise ScriptError(line.number, "the bot is down already")
        if line.kind == "up" and not down:
            raise ScriptError(line.number, "the bot is not down")
        down = line.kind == "down" or (down and line.kind != "up")
        if line.where.startswith("topic:") and upgraded is not None and line.number < upgraded.number:
            raise ScriptError(line.number, "a group has no topics before it is upgraded")
