"""Links of one person's own into the private chat: they name whose they are, until when, and carry our signature.

A shared link (the board's, the paper's) says only which potluck; whoever follows it is asked for by the group's
members. A link in an answer to one person is theirs alone: followed by anybody else, or late, it opens nothing.

`my-<kind>-<potluck>-<person>-<hour>-<signature>` - at most 64 letters, digits, `-` and `_`, which is what the
platform lets a deep link carry (Bot API, "Deep linking"). Person and hour (since 1970) are in base 36.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import datetime, timedelta

from bot.buttons import Forged, Signer, base36

PREFIX = "my"
LASTS = timedelta(days=3)
"""How long a link of one's own opens anything (our choice: over a weekend). A new one is an answer away."""
ANY_POTLUCK = "0"
_FORM = re.compile(r"my-([a-z0-9]{1,8})-([A-Za-z0-9_]{1,16})-([0-9a-z]{1,12})-([0-9a-z]{1,6})-([A-Za-z0-9_-]{8})")


class NotTheirs(Exception):
    """The link is ours, but made for another person."""


class Expired(Exception):
    """The link is ours and theirs, but its time is over."""


@dataclass(frozen=True)
class Door:
    kind: str
    potluck: str | None


def own(signer: Signer, kind: str, potluck: str | None, person: int, now: datetime) -> str:
    """The payload of a link that opens `kind` for this person only, for `LASTS` from now."""
    until = int((now + LASTS).timestamp() // 3600) + 1
    body = f"{PREFIX}-{kind}-{potluck or ANY_POTLUCK}-{base36(person)}-{base36(until)}"
    payload = f"{body}-{signer.seal(body)}"
    if not _FORM.fullmatch(payload) or len(payload) > 64:
        raise ValueError(f"a link can't carry {kind!r} of {potluck!r}")
    return payload


def owner(payload: str) -> int | None:
    """Whom a link says it is for, its signature unread; None for a shared one."""
    found = _FORM.fullmatch(payload)
    return int(found.group(3), 36) if found else None


def opened(signer: Signer, payload: str, person: int, now: datetime) -> Door:
    """What a link of one's own opens; raises `Forged`, `NotTheirs` or `Expired`."""
    found = _FORM.fullmatch(payload)
    body = payload[: -len("-12345678")]
    if found is None or not signer.sealed(body, found.group(5)):
        raise Forged
    kind, potluck, whose, until = found.group(1, 2, 3, 4)
    if int(whose, 36) != person:
        raise NotTheirs
    if now.timestamp() >= int(until, 36) * 3600:
        raise Expired
    return Door(kind, None if potluck == ANY_POTLUCK else potluck)
