"""What may stand in `reply_markup`."""

from __future__ import annotations

import re
from collections.abc import Mapping

from .entities import http_address
from .errors import bad

ACTIONS = (
    "url", "callback_data", "web_app", "login_url", "switch_inline_query", "switch_inline_query_current_chat",
    "switch_inline_query_chosen_chat", "copy_text", "callback_game", "pay",
)  # fmt: skip
KNOWN_HERE = ("url", "callback_data", "copy_text", "switch_inline_query", "switch_inline_query_current_chat")
DECORATIONS = ("text", "style", "icon_custom_emoji_id")
PER_ROW = 8
"""The client library's constant; the platform's core silently cuts at 12 a row."""
IN_ALL = 100
DATA_BYTES = 64
START_PAYLOAD = re.compile(r"[A-Za-z0-9_-]{1,64}")


def inline(markup: Mapping[str, object]) -> dict[str, object] | None:
    """The inline keyboard as it will be kept; None for an empty one. Raises ApiError."""
    rows = markup.get("inline_keyboard")
    if not isinstance(rows, list):
        raise bad('can\'t parse inline keyboard markup: Field "inline_keyboard" must be of type Array')
    kept: list[list[dict[str, object]]] = []
    for row in rows:
        if not isinstance(row, list):
            raise bad("can't parse inline keyboard button: expected an Array of Arrays of InlineKeyboardButton")
        if len(row) > PER_ROW:
            raise bad(f"reply markup is too long ({len(row)} buttons in a row, {PER_ROW} at most)")
        if row:
            kept.append([_button(button) for button in row])
    if sum(map(len, kept)) > IN_ALL:
        raise bad(f"reply markup is too long (more than {IN_ALL} buttons)")
    return {"inline_keyboard": kept} if kept else None


def _button(raw: object) -> dict[str, object]:
    if isinstance(raw, str):
        raw = {"text": raw}
    if not isinstance(raw, Mapping):
        raise bad("can't parse inline keyboard button: expected an Object")
    text = raw.get("text")
    if not isinstance(text, str) or not text.strip():
        raise bad("can't parse inline keyboard button: Text must be non-empty")
    unknown = [key for key in raw if key not in ACTIONS + DECORATIONS]
    if unknown:
        raise bad(f'can\'t parse inline keyboard button: the room does not know the field "{unknown[0]}"')
    actions = [key for key in ACTIONS if key in raw]
    if not actions:
        raise bad("can't parse inline keyboard button: Text buttons are unallowed in the inline keyboard")
    if len(actions) > 1:
        raise bad("can't parse inline keyboard button: exactly one action is allowed, found " + ", ".join(actions))
    if actions[0] not in KNOWN_HERE:
        raise bad(f"can't parse inline keyboard button: the room does not know {actions[0]} buttons")
    _action(actions[0], raw)
    if raw.get("style", "primary") not in ("primary", "success", "danger"):
        raise bad("can't parse inline keyboard button: invalid button style specified")
    return {key: value for key, value in raw.items() if value is not None}


def _action(action: str, raw: Mapping[str, object]) -> None:
    value = raw[action]
    if action == "callback_data":
        if not isinstance(value, str) or not 1 <= len(value.encode()) <= DATA_BYTES:
            raise bad("BUTTON_DATA_INVALID")
    elif action == "url":
        if not isinstance(value, str) or http_address(value) is None:
            raise bad(f"inline keyboard button URL '{value}' is invalid: Wrong HTTP URL")
        link = re.search(r"t\.me/\w+\?(?:start|startgroup)=([^&#]*)", value)
        if link and not START_PAYLOAD.fullmatch(link.group(1)):
            # The platform opens the chat without the payload; here a bot's mistake should be heard.
            raise bad(f"inline keyboard button URL '{value}' is invalid: start parameter invalid")
    elif action == "copy_text":
        copied = value.get("text") if isinstance(value, Mapping) else None
        if not isinstance(copied, str) or not 1 <= len(copied) <= 256:
            raise bad("can't parse inline keyboard button: copy_text must have 1-256 characters")


def prompt(markup: Mapping[str, object], private: bool) -> dict[str, object]:
    """A custom keyboard, its removal, or a forced reply: what a person's screen shows. Raises ApiError."""
    if markup.get("force_reply") is True or markup.get("remove_keyboard") is True:
        placeholder = markup.get("input_field_placeholder")
        if placeholder is not None and not 1 <= len(str(placeholder)) <= 64:
            raise bad("can't parse reply markup: input_field_placeholder must have 1-64 characters")
        return dict(markup)
    rows = markup.get("keyboard")
    if not isinstance(rows, list):
        raise bad("object expected as reply markup")
    for row in rows:
        for button in row:
            text = button if isinstance(button, str) else button.get("text")
            if not isinstance(text, str) or not text:
                raise bad('can\'t parse keyboard button: Field "text" must be of type String')
            extra = [] if isinstance(button, str) else [k for k in button if k not in DECORATIONS]
            if extra and not private:
                raise bad(f"{extra[0]} buttons can be used in private chats only")
    return dict(markup)
