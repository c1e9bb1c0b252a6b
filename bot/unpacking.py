"""An update as the platform sent it becomes the library's object: each alone, whatever its shape.

The library reads all that came together in one go. One of them that it could not read would stop the others for
ever: by polling nothing is confirmed and the same ones come again at once, by webhook the same one comes back.
"""

from __future__ import annotations

from collections.abc import Callable

import telegram

from bot import log
from bot.events import slim

_log = log.get("app")

MOST_ID = 2**63
"""Ids are below this; every table keeps them in eight bytes."""


class Odd(ValueError):
    """An id that is none."""


def unpacked(data: object, bot: telegram.Bot, failed: Callable[[], None]) -> telegram.Update | None:
    """The update; a bare one with its id alone where the rest can't be read, so that it can be confirmed like any
    other. None where it has no id. `failed` hears of both; the log hears the id and the kind of the fault only."""
    number = data.get("update_id") if isinstance(data, dict) else None
    try:
        if not isinstance(data, dict) or not _is_id(number):
            raise Odd
        update = telegram.Update.de_json(slim(data), bot)
        if not all(one is None or _is_id(one.id) for one in (update.effective_chat, update.effective_user)):
            raise Odd
        return update
    except Exception as fault:
        failed()
        known = number if isinstance(number, int) and _is_id(number) else None
        _log.error("an update could not be read; it is passed over", update=known, fault=type(fault).__name__)
        return None if known is None else telegram.Update(known)


def _is_id(number: object) -> bool:
    return type(number) is int and -MOST_ID < number < MOST_ID
