"""What goes out to people: rows of signed buttons, names that ring."""

from __future__ import annotations

import html
from collections.abc import Sequence
from datetime import datetime

from bot.buttons import Button, Link, Signer, base36
from bot.texts import Html, visible
from planning.potluck import Guest

Buttons = Sequence[Sequence[Button | Link]]


def sign_rows(signer: Signer, chat_id: int, potluck_id: str, buttons: Buttons) -> list[list[dict[str, str]]]:
    """Buttons as the courier takes them: [[{"label", "data" | "url"}]]."""
    return [
        [
            {"label": b.label[:60], "url": b.url}
            if isinstance(b, Link)
            else {"label": b.label[:60], "data": signer.sign(chat_id, b, potluck_id)}
            for b in row
        ]
        for row in buttons
        if row
    ]


def moment_key(instant: datetime) -> str:
    return base36(int(instant.timestamp() * 1000))


def mention(guest: Guest) -> Html:
    """A name that rings its owner's phone, when the guest has an account."""
    shown = html.escape(visible(guest.name), quote=False)
    if guest.id.isdecimal():
        return Html(f'<a href="tg://user?id={guest.id}">{shown}</a>')
    return Html(shown)
