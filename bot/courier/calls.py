"""One post as one Bot API call.

The payload of a post is plain JSON:
  text        HTML, ready
  caption     HTML, with photo or document
  buttons     [[{"label", "data" | "url" | "copy"}]]: rows of inline buttons; absent or empty: none
  force_reply true or {"placeholder"}: ask for a reply (instead of buttons)
  reply_to    message id
  silent      true: no sound
  message_id  for edit, delete, pin, unpin, react, markup
  latitude, longitude  degrees, for location
  photo, document   {"path"} or {"file_id"} or {"base64"}, and "name"
  emoji       for react; empty takes the reaction away
  query_id    for answer, with text and alert: a press that could not be acknowledged at once
  about       what it is about; remembered, so that a reply to it can be understood
  until       ISO instant after which it is not sent any more
  again_in_doubt  true: rather twice than not at all (see `delivery.py`); a number: again so many times at most
Methods: send, location, photo, document, edit, markup, delete, pin, unpin, react, answer.
"""

from __future__ import annotations

import base64
import html
import re
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

import telegram
from telegram import ForceReply, InlineKeyboardButton, InlineKeyboardMarkup, LinkPreviewOptions, ReplyParameters

SENDS = frozenset({"send", "location", "photo", "document"})
"""Methods that make a new message: not repeatable when in doubt."""
EDITS = frozenset({"edit", "markup"})
COUNTED = SENDS | EDITS
"""What the platform's flood limits count."""

MOST_TEXT = 4096
MOST_CAPTION = 1024
_NO_PREVIEW = LinkPreviewOptions(is_disabled=True)
_TAG = re.compile(r"</?[a-zA-Z][^<>]*>")


def reply_markup(buttons: Sequence[Sequence[Mapping[str, str]]] | None) -> InlineKeyboardMarkup | None:
    """Rows of {"label", "data" | "url" | "copy"} as the library's keyboard; None for no buttons."""
    rows = [[_button(b) for b in row] for row in buttons or () if row]
    return InlineKeyboardMarkup(rows) if rows else None


def _button(button: Mapping[str, str]) -> InlineKeyboardButton:
    label = button["label"]
    if "url" in button:
        return InlineKeyboardButton(label, url=button["url"])
    if "copy" in button:
        return InlineKeyboardButton(label, copy_text=telegram.CopyTextButton(button["copy"]))
    return InlineKeyboardButton(label, callback_data=button["data"])


def plain(text: str) -> str:
    """HTML without its marks, for when the platform could not read them."""
    return html.unescape(_TAG.sub("", text))


def cut(text: str, most: int) -> str:
    """`text` within the platform's limit, counted after parsing. Too long a text loses its marks too,
    because a cut may fall inside one."""
    words = plain(text)
    if len(words) <= most:
        return text
    return html.escape(words[: most - 2].rstrip(), quote=False) + " …"


async def call(
    bot: telegram.Bot,
    method: str,
    chat_id: int,
    payload: Mapping[str, Any],
    *,
    thread_id: int | None = None,
    as_plain: bool = False,
) -> int | None:
    """Make the call; the new message's id for sends, else None. The library's exceptions pass through."""
    mode = None if as_plain else "HTML"
    silent = bool(payload.get("silent", False))
    reply = payload.get("reply_to")
    markup = _markup(payload)
    common: dict[str, Any] = {"disable_notification": silent}
    if thread_id is not None and thread_id != 1:
        # The General topic (id 1) is addressed by leaving it out.
        common["message_thread_id"] = thread_id
    if reply:
        common["reply_parameters"] = ReplyParameters(int(reply), allow_sending_without_reply=True)

    if method == "send":
        words = _words(payload["text"], MOST_TEXT, as_plain)
        sent = await bot.send_message(
            chat_id, words, parse_mode=mode, reply_markup=markup, link_preview_options=_NO_PREVIEW, **common
        )
        return sent.message_id
    if method == "location":
        latitude, longitude = float(payload["latitude"]), float(payload["longitude"])
        sent = await bot.send_location(chat_id, latitude, longitude, reply_markup=markup, **common)
        return sent.message_id
    if method in ("photo", "document"):
        caption = _words(payload.get("caption") or payload.get("text") or "", MOST_CAPTION, as_plain) or None
        thing, name = _file(payload[method])
        if method == "photo":
            sent = await bot.send_photo(
                chat_id, thing, caption=caption, parse_mode=mode, reply_markup=markup, filename=name, **common
            )
        else:
            sent = await bot.send_document(
                chat_id, thing, caption=caption, parse_mode=mode, reply_markup=markup, filename=name, **common
            )
        return sent.message_id
    if method == "answer":
        said = payload.get("text") or None
        await bot.answer_callback_query(str(payload["query_id"]), said, show_alert=bool(payload.get("alert")))
        return None
    message_id = int(payload["message_id"])
    if method == "edit":
        words = _words(payload["text"], MOST_TEXT, as_plain)
        inline = markup if isinstance(markup, InlineKeyboardMarkup) else None
        await bot.edit_message_text(
            words, chat_id, message_id, parse_mode=mode, reply_markup=inline, link_preview_options=_NO_PREVIEW
        )
    elif method == "markup":
        inline = markup if isinstance(markup, InlineKeyboardMarkup) else None
        await bot.edit_message_reply_markup(chat_id, message_id, reply_markup=inline)
    elif method == "delete":
        await bot.delete_message(chat_id, message_id)
    elif method == "pin":
        await bot.pin_chat_message(chat_id, message_id, disable_notification=True)
    elif method == "unpin":
        await bot.unpin_chat_message(chat_id, message_id)
    elif method == "react":
        await bot.set_message_reaction(chat_id, message_id, payload.get("emoji") or None)
    else:
        raise ValueError(f"unknown method of a post: {method}")
    return None


def _markup(payload: Mapping[str, Any]) -> InlineKeyboardMarkup | ForceReply | None:
    if ask := payload.get("force_reply"):
        hint = str(ask.get("placeholder") or "")[:64] or None if isinstance(ask, Mapping) else None
        return ForceReply(selective=True, input_field_placeholder=hint)
    return reply_markup(payload.get("buttons"))


def _words(text: str, most: int, as_plain: bool) -> str:
    text = cut(text, most)
    return plain(text) if as_plain else text


def _file(thing: Any) -> tuple[Any, str | None]:
    if isinstance(thing, str):
        thing = {"path": thing}
    name = thing.get("name")
    if "file_id" in thing:
        return thing["file_id"], None
    if "base64" in thing:
        return base64.b64decode(thing["base64"]), name
    path = Path(thing["path"])
    return path.read_bytes(), name or path.name
