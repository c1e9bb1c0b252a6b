"""What was seen, written down: chat.jsonl for programs, chat.md and chat.html for people."""

from __future__ import annotations

import html
import json
from collections.abc import Callable, Iterable, Iterator, Mapping
from datetime import datetime
from pathlib import Path
from zoneinfo import ZoneInfo

from babel.dates import format_date

from .room import Room
from .world import Seen

Row = dict[str, object]


class Record:
    """Collects what the room shows. `people` maps user ids to the script's ids."""

    def __init__(self, room: Room, zone: ZoneInfo, people: Mapping[int, str], files: Path | None = None) -> None:
        self.room = room
        self.zone = zone
        self.people = people
        self.files = files
        self.rows: list[Row] = []
        self._unasked: list[tuple[int, int, Row]] = []
        room.listeners.append(self.see)

    def see(self, seen: Seen) -> None:
        chat = self.room.chats[seen.chat_id]
        row: Row = {"at": self._time(seen.at), "chat": self.people.get(seen.chat_id, "group")}
        row["from"] = "bot" if seen.sender == self.room.bot.id else self.people.get(seen.sender or 0)
        row["kind"] = seen.kind
        row["text"] = seen.text
        if seen.buttons:
            row["buttons"] = [
                [{"label": label} | ({"url": url} if url else {}) for label, url in line] for line in seen.buttons
            ]
        if seen.message is not None:
            row["message"] = seen.message
        if seen.reply_to is not None:
            row["reply_to"] = seen.reply_to
        if seen.thread is not None and seen.thread in chat.topics:
            row["topic"] = chat.topics[seen.thread].name
        if seen.to is not None:
            row["to"] = self.people.get(seen.to)
        if seen.kind == "answer" and seen.alert:
            row["alert"] = True
        if seen.url:
            row["url"] = seen.url
        if seen.file:
            row["file"] = self._keep(seen.file)
        self.rows.append(row)
        if row["from"] == "bot" and seen.message is not None and seen.kind in ("message", "photo", "document"):
            self._unasked.append((seen.chat_id, seen.message, row))

    def note(self, at: datetime, text: str) -> None:
        self.rows.append({"at": self._time(at), "chat": "group", "from": None, "kind": "note", "text": text})

    def failed_reminder(self, at: datetime, chat_id: int, kind: str, why: str) -> None:
        row: Row = {"at": self._time(at), "chat": self.people.get(chat_id, "group"), "from": "bot"}
        self.rows.append(row | {"kind": "reminder-failed", "text": why, "reminder": kind})

    def ask_kinds(self, kind_of: Callable[[int, int], str | None]) -> None:
        """Mark which of the bot's new messages are reminders."""
        for chat_id, message, row in self._unasked:
            if (kind := kind_of(chat_id, message)) is not None:
                row["reminder"] = kind
        self._unasked.clear()

    def _time(self, at: datetime) -> str:
        return at.astimezone(self.zone).isoformat(timespec="seconds")

    def _keep(self, path: str) -> str:
        """Write a file that was sent beside the record; returns its name relative to the record."""
        stored = self.room.files.by_path[path]
        name = f"{Path(path).stem}-{Path(stored.name).name}"[-120:]
        if self.files is None:
            return name
        self.files.mkdir(parents=True, exist_ok=True)
        (self.files / name).write_bytes(stored.data)
        return f"{self.files.name}/{name}"

    def write(self, out: Path, title: str, names: Mapping[str, str], language: str = "en") -> None:
        out.mkdir(parents=True, exist_ok=True)
        lines = (json.dumps(row, ensure_ascii=False) for row in self.rows)
        (out / "chat.jsonl").write_text("".join(line + "\n" for line in lines), encoding="utf-8")
        (out / "chat.md").write_text(markdown(self.rows, title, names, language), encoding="utf-8")
        (out / "chat.html").write_text(page(self.rows, title, names, language), encoding="utf-8")


def _who(row: Row, names: Mapping[str, str]) -> str:
    sender = row["from"]
    return "Tureen" if sender == "bot" else names.get(str(sender), str(sender or ""))


def _place(row: Row, names: Mapping[str, str]) -> str:
    if row["chat"] != "group":
        return f"{names.get(str(row['chat']), str(row['chat']))}, in private"
    return f"topic {row['topic']}" if "topic" in row else ""


def _buttons(row: Row) -> list[str]:
    rows = row.get("buttons", [])
    assert isinstance(rows, list)
    return [button["label"] for line in rows for button in line]


def _deed(row: Row) -> str:
    """What happened, for the lines that are not somebody speaking."""
    match row["kind"]:
        case "press":
            return f"pressed “{row['text']}”"
        case "answer":
            return f"answered: {row['text']}" if row["text"] else "took note"
        case "reaction":
            return f"reacted {row['text']}" if row["text"] else "took a reaction back"
        case "pin":
            return "pinned a message"
        case "delete":
            return "deleted a message"
        case "reminder-failed":
            return f"could not send a reminder ({row.get('reminder')}): {row['text']}"
    return str(row["text"])


def _line(row: Row, names: Mapping[str, str]) -> str:
    who, place, deed = _who(row, names), _place(row, names), _deed(row)
    place = f" ({place})" if place else ""
    if row["kind"] != "service":
        return f"{who}{place} {deed}"
    return deed + (f", by {who}" if who and who not in deed else "") + place


SPOKEN = ("message", "edit", "photo", "document")


def changed_lines(rows: Iterable[Row]) -> Iterator[tuple[Row, list[str] | None]]:
    """Each row, with the lines an edit put in place of others; None for what is no edit of something seen before.

    A board is edited dozens of times: whoever reads the record wants to know what became different.
    """
    said: dict[tuple[object, object], str] = {}
    for row in rows:
        key = (row["chat"], row.get("message"))
        text = str(row["text"])
        if row["kind"] == "edit" and key in said:
            before = set(said[key].split("\n"))
            yield row, [line for line in text.split("\n") if line.strip() and line not in before]
        else:
            yield row, None
        if row["kind"] in SPOKEN:
            said[key] = text


def day_of(at: datetime, language: str) -> str:
    """A day's heading in the group's language: "Wednesday 8 September 2027", "miércoles, 8 de septiembre de 2027"."""
    if language == "en":
        return f"{at:%A} {at.day} {at:%B %Y}"
    return format_date(at, "full", locale=language)


def markdown(rows: Iterable[Row], title: str, names: Mapping[str, str], language: str = "en") -> str:
    out = [f"# {_plain(title)}", ""]
    day = ""
    for row, news in changed_lines(rows):
        at = datetime.fromisoformat(str(row["at"]))
        if (today := day_of(at, language)) != day:
            day = today
            out += [f"## {day}", ""]
        head = f"`{at:%H:%M}`"
        if row["kind"] == "note":
            out += [f"*{_plain(str(row['text']))}*", ""]
            continue
        place = f" ({_plain(place)})" if (place := _place(row, names)) else ""
        if row["kind"] not in SPOKEN:
            out += [f"{head} *{_plain(_line(row, names))}*", ""]
            continue
        if news is not None:
            out += [f"{head} *{_plain(_who(row, names))}{place} changed it: {_plain(' / '.join(news) or 'less')}*", ""]
            continue
        out += [f"{head} **{_plain(_who(row, names))}**{place}:", ""]
        text = str(row["text"]) or ("(a picture)" if row["kind"] == "photo" else "")
        out += [f"> {_plain(line)}  " if line.strip() else ">" for line in text.split("\n")]
        if "file" in row:
            mark = "!" if row["kind"] == "photo" else ""
            out.append(f"> {mark}[{_plain(str(row['file']))}](<{row['file']}>)")
        if labels := _buttons(row):
            out.append("> " + " ".join(f"`[{label.replace('`', '')}]`" for label in labels))
        out.append("")
    return "\n".join(out)


def _plain(text: str) -> str:
    for mark in "\\`*_[]<>#|":
        text = text.replace(mark, "\\" + mark)
    return text


STYLE = """
:root{color-scheme:light dark;--ink:#22261f;--soft:#5c6355;--sheet:#fbfaf5;--line:#d8d6c8;--bot:#eef3e4;--key:#2f5d3a}
@media(prefers-color-scheme:dark){
:root{--ink:#ecebe2;--soft:#a9ad9f;--sheet:#1c1f1a;--line:#3a3f36;--bot:#262c22;--key:#a9d3ae}}
body{font:16px/1.5 system-ui,sans-serif;color:var(--ink);background:var(--sheet);
max-width:44rem;margin:0 auto;padding:1rem}
h2{font-size:1rem;border-bottom:1px solid var(--line);margin-top:2rem}
.said{border-left:3px solid var(--line);padding:.1rem .8rem;margin:.7rem 0;overflow-wrap:anywhere}
.bot{background:var(--bot);border-color:var(--key)}.head{color:var(--soft);font-size:.85rem}
.text{white-space:pre-wrap;margin:.2rem 0}.deed{color:var(--soft);font-size:.9rem;margin:.4rem 0}
.keys span{display:inline-block;border:1px solid var(--key);color:var(--key);
padding:0 .6rem;margin:.15rem .3rem .15rem 0;border-radius:3px}
img{max-width:100%;height:auto}
"""


def page(rows: Iterable[Row], title: str, names: Mapping[str, str], language: str = "en") -> str:
    esc = html.escape
    out = [
        f'<!doctype html><html lang="{esc(language, quote=True)}"><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width">',
        f"<title>{esc(title)}</title><style>{STYLE}</style><main><h1>{esc(title)}</h1>",
    ]
    day = ""
    for row, news in changed_lines(rows):
        at = datetime.fromisoformat(str(row["at"]))
        if (today := day_of(at, language)) != day:
            day = today
            out.append(f"<h2>{day}</h2>")
        who, place = esc(_who(row, names)), esc(_place(row, names))
        place = f" ({place})" if place else ""
        if row["kind"] == "note":
            out.append(f'<p class="deed"><em>{esc(str(row["text"]))}</em></p>')
            continue
        if row["kind"] not in SPOKEN:
            out.append(f'<p class="deed">{at:%H:%M} <bdi>{esc(_line(row, names))}</bdi></p>')
            continue
        if news is not None:
            summary = f"{at:%H:%M} <bdi>{who}</bdi>{place} changed it: <bdi>{esc(' / '.join(news) or 'less')}</bdi>"
            whole = f'<p class="text" dir="auto">{esc(str(row["text"]))}</p>'
            out.append(f'<details class="deed"><summary>{summary}</summary>{whole}</details>')
            continue
        side = "said bot" if row["from"] == "bot" else "said"
        out.append(f'<article class="{side}"><div class="head">{at:%H:%M} <bdi>{who}</bdi>{place}</div>')
        if row["text"]:
            out.append(f'<p class="text" dir="auto">{esc(str(row["text"]))}</p>')
        if "file" in row:
            name = esc(str(row["file"]), quote=True)
            shown = f'<img src="{name}" alt="Picture: {name}">' if row["kind"] == "photo" else name
            out.append(f'<p><a href="{name}">{shown}</a></p>')
        if labels := _buttons(row):
            out.append('<p class="keys">' + "".join(f"<span>{esc(label)}</span>" for label in labels) + "</p>")
        out.append("</article>")
    out.append("</main></html>")
    return "\n".join(out)
