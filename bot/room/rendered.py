"""Formatted text as HTML for the page: only tags made here, everything else escaped."""

from __future__ import annotations

import html
import itertools

from .entities import Entity, Formatted
from .links import start_payload

SIMPLE = {
    "bold": "strong", "italic": "em", "underline": "u", "strikethrough": "s",
    "code": "code", "pre": "pre", "blockquote": "blockquote", "expandable_blockquote": "blockquote",
    "bot_command": "kbd", "mention": "span", "hashtag": "span", "cashtag": "span", "text_mention": "b",
}  # fmt: skip


def to_html(value: Formatted, bot_username: str) -> str:
    """Entities that cross each other are cut, so that the tags always nest."""
    units = value.text.encode("utf-16-le", "surrogatepass")
    end = len(units) // 2
    marks = [e for e in value.entities if e.offset < end]
    bounds = sorted({0, end, *(e.offset for e in marks), *(min(e.offset + e.length, end) for e in marks)})
    out: list[str] = []
    for start, stop in itertools.pairwise(bounds):
        piece = units[2 * start : 2 * stop].decode("utf-16-le", "replace")
        inside = [e for e in marks if e.offset <= start and stop <= e.offset + e.length]
        tags = [_tags(e, piece, bot_username) for e in inside]
        out += [opening for opening, _ in tags]
        out.append(html.escape(piece))
        out += [closing for _, closing in reversed(tags)]
    return "".join(out)


def _tags(entity: Entity, piece: str, bot_username: str) -> tuple[str, str]:
    if entity.type in ("text_link", "url"):
        address = str(dict(entity.extra).get("url", piece))
        payload = start_payload(address, bot_username)
        if payload is not None:
            return f'<a href="#" data-start="{html.escape(payload)}">', "</a>"
        if address.startswith(("http://", "https://")):
            return f'<a href="{html.escape(address)}" target="_blank" rel="noopener noreferrer">', "</a>"
        return "<span>", "</span>"
    tag = SIMPLE.get(entity.type, "span")
    if entity.type == "spoiler":
        return '<span class="hidden-text" tabindex="0">', "</span>"
    if entity.type == "expandable_blockquote":
        return '<blockquote class="long">', "</blockquote>"
    return f"<{tag}>", f"</{tag}>"
