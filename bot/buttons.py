"""What stands behind a button: a short signed word that only works in the chat it was sent to.

`1.<name>.<potluck>.<args>.<owner>.<signature>` - at most 64 bytes. The signature covers the chat,
so a press that was forged, or replayed into another chat or potluck, is told apart from a real one.
"""

from __future__ import annotations

import base64
import hashlib
import hmac
from dataclasses import dataclass

MOST_BYTES = 64
_DIGITS = "0123456789abcdefghijklmnopqrstuvwxyz"


@dataclass(frozen=True)
class Button:
    """`label` is plain text; `owner` is the only person who may press, None for everybody."""

    label: str
    name: str
    args: tuple[str, ...] = ()
    owner: str | None = None
    potluck: str | None = None


@dataclass(frozen=True)
class Link:
    label: str
    url: str


@dataclass(frozen=True)
class Pressed:
    name: str
    potluck: str
    args: tuple[str, ...]
    owner: str | None


class Forged(Exception):
    """The data does not come from us, or not from this chat."""


def base36(number: int) -> str:
    digits = ""
    sign, number = ("-", -number) if number < 0 else ("", number)
    while number:
        number, rest = divmod(number, 36)
        digits = _DIGITS[rest] + digits
    return sign + (digits or "0")


def mark(name: str) -> str:
    """A short stand-in for a name that may be longer than a button can carry."""
    return hashlib.blake2b(name.encode(), digest_size=3).hexdigest()


class Signer:
    """Signs button data with a key derived from the bot's token, so that restarts keep buttons alive."""

    def __init__(self, token: str) -> None:
        self._key = hashlib.blake2b(token.encode(), digest_size=32, person=b"tureen-buttons").digest()

    def _signature(self, chat_id: int, body: str) -> str:
        return self._mac(f"{chat_id}|{body}")

    def _mac(self, text: str) -> str:
        return base64.urlsafe_b64encode(hmac.digest(self._key, text.encode(), "sha256")[:6]).decode()

    def seal(self, body: str) -> str:
        """Eight letters that prove a link to be ours. Buttons are signed otherwise: neither passes for the other."""
        return self._mac(f"link|{body}")

    def sealed(self, body: str, seal: str) -> bool:
        return hmac.compare_digest(seal.encode(), self.seal(body).encode())

    def sign(self, chat_id: int, button: Button, potluck: str) -> str:
        """The callback data; raises ValueError when an argument can't be carried."""
        args = ",".join(button.args)
        owner = base36(int(button.owner)) if button.owner else ""
        body = f"1.{button.name}.{button.potluck or potluck}.{args}.{owner}"
        data = f"{body}.{self._signature(chat_id, body)}"
        if body.count(".") != 4 or any("," in a for a in button.args) or len(data.encode()) > MOST_BYTES:
            raise ValueError(f"a button can't carry {button!r}")
        return data

    def read(self, chat_id: int, data: str) -> Pressed:
        body, _, signature = data.rpartition(".")
        parts = body.split(".")
        if len(parts) != 5 or not hmac.compare_digest(signature.encode(), self._signature(chat_id, body).encode()):
            raise Forged
        _, name, potluck, args, owner = parts
        return Pressed(name, potluck, tuple(args.split(",")) if args else (), str(int(owner, 36)) if owner else None)
