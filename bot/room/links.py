"""Addresses that lead into the private chat with the bot."""

from __future__ import annotations

import re
from urllib.parse import parse_qs, urlsplit


def start_payload(address: str, bot_username: str) -> str | None:
    """The payload of an address that opens the private chat with this bot ("" for none); None for others."""
    address = address if ":" in address.partition("/")[0] else "https://" + address
    try:
        parts = urlsplit(address)
        host = (parts.hostname or "").lower()
    except ValueError:
        return None
    query = parse_qs(parts.query, keep_blank_values=True)
    if parts.scheme == "tg":
        name = query.get("domain", [""])[0]
    elif host in ("t.me", "telegram.me"):
        name = parts.path.strip("/")
    else:
        return None
    if name.lower() != bot_username.lower() or "startgroup" in query:
        return None
    payload = query.get("start", [""])[0]
    return payload if re.fullmatch(r"[A-Za-z0-9_-]{0,64}", payload) else ""
