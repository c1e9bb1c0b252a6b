"""How updates reach the bot: getUpdates, and the settings of a webhook.

Left out on purpose: the platform slows down a client that asks for the same offset again within
three seconds and delays repeated 409 answers; neither changes what a bot gets, only how fast.
"""

from __future__ import annotations

import re
from datetime import timedelta
from typing import TYPE_CHECKING

from ..errors import ApiError, bad, flooded
from . import method

if TYPE_CHECKING:
    from ..call import Call
    from ..room import Room

LONGEST_POLL = 50
CONFLICT = "Conflict: terminated by other getUpdates request; make sure that only one bot instance is running"
HOOKED = "Conflict: can't use getUpdates method while webhook is active; use deleteWebhook to delete the webhook first"


@method("getUpdates", "offset limit timeout allowed_updates")
async def get_updates(room: Room, call: Call) -> list[dict[str, object]]:
    if room.hook.url:
        raise ApiError(409, HOOKED)
    queue = room.queue
    room.end_poll("conflict")
    wanted = call.sequence("allowed_updates")
    queue.allow(None if wanted is None else [str(kind) for kind in wanted])
    queue.forget_old()
    offset = call.number("offset")
    if offset > 0:
        queue.confirm_below(offset)
    elif offset < 0:
        queue.keep_last(-offset)
    limit = min(max(call.number("limit", 100), 1), 100)
    timeout = min(max(call.number("timeout"), 0), LONGEST_POLL)
    if not queue.waiting and timeout:
        why = await room.wait_for_update(timeout)
        if why == "conflict":
            raise ApiError(409, CONFLICT)
        if why == "gone":
            return []
    return [queued.body for queued in queue.waiting[:limit]]


@method("setWebhook", "url certificate ip_address max_connections allowed_updates drop_pending_updates secret_token")
def set_webhook(room: Room, call: Call) -> bool:
    """Plain http is taken for the loopback address only; the platform wants https and four ports."""
    now = room.clock.now()
    if room.hook.set_at is not None and now - room.hook.set_at < timedelta(seconds=1):
        raise flooded(1)
    url = call.text("url").strip()
    if url and not re.match(r"https://|http://(?:127\.0\.0\.1|localhost|\[::1\])[:/]", url):
        raise bad("bad webhook: An HTTPS URL must be provided for webhook")
    if call.has("certificate"):
        raise bad("bad webhook: the room checks no certificates")
    secret = call.text("secret_token")
    if secret and not re.fullmatch(r"[A-Za-z0-9_-]{1,256}", secret):
        raise bad("secret token contains unallowed characters")
    most = call.number("max_connections", 40)
    if not 1 <= most <= 100:
        raise bad("invalid max_connections specified")
    _prepare(room, call)
    room.hook.set(url, secret, most, now)
    return True


@method("deleteWebhook", "drop_pending_updates")
def delete_webhook(room: Room, call: Call) -> bool:
    _prepare(room, call)
    room.hook.set("", "", 40, None)
    return True


def _prepare(room: Room, call: Call) -> None:
    wanted = call.sequence("allowed_updates")
    room.queue.allow(None if wanted is None else [str(kind) for kind in wanted])
    if call.flag("drop_pending_updates"):
        room.queue.drop_all()


@method("getWebhookInfo")
def webhook_info(room: Room, call: Call) -> dict[str, object]:
    hook = room.hook
    info: dict[str, object] = {
        "url": hook.url, "has_custom_certificate": False, "pending_update_count": len(room.queue.waiting),
    }  # fmt: skip
    if hook.url:
        info["max_connections"] = hook.connections
    if hook.last_error:
        info |= {"last_error_date": hook.last_error_at, "last_error_message": hook.last_error}
    if room.queue.allowed is not None:
        info["allowed_updates"] = list(room.queue.allowed)
    return info
