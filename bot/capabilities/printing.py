"""Pictures of the table and of the kitchen, paper for the hosts, and the calendar file.

A file is drawn in a thread before the turn commits, and its bytes travel in the post itself, so that
it is written in the same transaction as everything else: what leaves is the table as it was when it
was asked for, a restart between the asking and the sending loses nothing, a retry sends the same
bytes, and no file lies about that somebody would have to clear away. The row is gone once it is sent.
"""

import asyncio
import base64
from collections.abc import Awaitable, Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import Any

from bot import plan_json, prints
from bot.buttons import Button, Link
from bot.context import Turn
from bot.prints.render import size
from bot.registry import Registry
from bot.texts import Html
from planning.changes import Refusal
from planning.dishes.names import fold
from planning.kitchen import Timeline, timeline
from planning.plan import Plan
from planning.potluck import Potluck, Stage
from planning.reminders import reminders

MOST_PHOTO_BYTES = 10_000_000
MOST_PHOTO_SIDES = 10_000
MOST_PHOTO_RATIO = 20
"""Bot API, sendPhoto: at most 10 MB, width and height together at most 10000, their ratio at most 20."""

AGAIN_IN_DOUBT = 1
"""An upload whose answer was lost is made once more: a slow line loses uploads, and a second copy does no harm."""

LONG_ENOUGH = 4
"""Letters of a word by which a picture or a paper may be asked for; shorter ones are "of" and "the"."""

KITCHEN_WORDS = frozenset({"kitchen", "timeline", "oven", "cooking"})
EFFORT = 0.3
"""As the chat's own timelines, so that the picture tells what /kitchen tells."""


@dataclass(frozen=True)
class Drawing:
    """What a file is drawn from, as of one moment. `open_to_host`: the host looks at it alone."""

    potluck: Potluck
    plan: Plan
    document: prints.Plan
    words: prints.Words
    lang: str
    now: datetime
    link: str
    open_to_host: bool = False


def _table(d: Drawing) -> bytes:
    return prints.table_picture(d.potluck, d.document, d.words, d.lang, for_host=d.open_to_host)


def _kitchen(d: Drawing) -> bytes:
    return prints.timeline_picture(d.potluck, d.document, d.words, d.lang, now=d.now)


def _run_sheet(d: Drawing) -> bytes:
    return prints.run_sheet(d.potluck, d.document, d.words, d.lang, link=d.link)


def _cards(d: Drawing) -> bytes:
    return prints.table_cards(d.potluck, d.document, d.words, d.lang)


def _bar_menu(d: Drawing) -> bytes:
    return prints.bar_menu(d.potluck, d.document, d.words, d.lang, link=d.link)


def _shopping(d: Drawing) -> bytes:
    return prints.shopping_list(d.potluck, d.document, d.words, d.lang, link=d.link)


def _tags(d: Drawing) -> bytes:
    return prints.name_tags(d.potluck, d.document, d.words, d.lang)


PAPERS: dict[str, Callable[[Drawing], bytes]] = {
    "run": _run_sheet,
    "cards": _cards,
    "bar": _bar_menu,
    "shop": _shopping,
    "tags": _tags,
}
"""By the short names their buttons carry, in the order they are offered."""

NAMES = {"run": "run-sheet", "cards": "table-cards", "bar": "bar-menu", "shop": "shopping-list", "tags": "name-tags"}


def is_photo(png: bytes) -> bool:
    """Whether the platform takes the picture as a photo; else it goes as a document."""
    wide, high = size(png)
    return (
        len(png) <= MOST_PHOTO_BYTES
        and wide + high <= MOST_PHOTO_SIDES
        and max(wide, high) <= MOST_PHOTO_RATIO * min(wide, high)
    )


def carried(content: bytes, name: str) -> dict[str, str]:
    """A file as the courier finds it in the post."""
    return {"base64": base64.b64encode(content).decode("ascii"), "name": name}


def cooked_by(made: Timeline, known: Timeline | None, potluck: Potluck, now: datetime) -> Timeline:
    """The timeline to draw: a fresh one until cooking begins, then the one the reminders went out by.

    A solver asked in the middle of the day can't start anything in the past, and would call the day lost.
    """
    if known is not None and known.steps and now >= min(s.start for s in known.steps):
        there = {p.id for p in potluck.promises}
        return replace(known, steps=tuple(s for s in known.steps if s.promise in there))
    if now < potluck.starts_at:
        return made
    return timeline(potluck, potluck.starts_at - timedelta(days=1), EFFORT, 0, 10.0)


async def drawing(turn: Turn, *, open_to_host: bool = False) -> Drawing:
    potluck, voice = turn.potluck, turn.voice
    if turn.services.drawn is not None and not turn.services.drawn.take(potluck.id):
        raise Refusal("refused-drawn")
    planner = turn.services.planner
    made = await planner.plan(potluck, turn.now)
    known = planner.timeline(potluck)
    link = turn.deep_link("board", potluck.id)

    def written() -> Drawing:
        plan = replace(made, kitchen=cooked_by(made.kitchen, known, potluck, turn.now))
        document = plan_json.write(plan, potluck, turn.now, voice)
        return Drawing(potluck, plan, document, voice.plain, voice.language, turn.now, link, open_to_host)

    return await asyncio.to_thread(written)


# Pictures -------------------------------------------------------------------------------------------


async def picture(turn: Turn) -> None:
    """/picture shows the table, "/picture kitchen" the kitchen, to everybody in this chat."""
    words = set(fold(turn.words).split())
    labels = {kind: turn.voice.plain(f"button-picture-{kind}") for kind in ("table", "kitchen")}
    own = _telling(labels)
    kitchen, table = words & (KITCHEN_WORDS | own["kitchen"]), words & ({"table"} | own["table"])
    if words and not kitchen and not table:
        raise Refusal("refused-picture-words")
    await _picture(turn, "kitchen" if kitchen else "table")


def _telling(labels: Mapping[str, str]) -> dict[str, set[str]]:
    """By kind, the words of its button's label which no other label has: so it may be asked for in any language."""
    words = {kind: {w for w in fold(label).split() if len(w) >= LONG_ENOUGH} for kind, label in labels.items()}
    return {kind: mine.difference(*(w for other, w in words.items() if other != kind)) for kind, mine in words.items()}


async def picture_button(turn: Turn) -> None:
    await _picture(turn, turn.args[0] if turn.args else "table")
    turn.toast("answer-below")


async def _picture(turn: Turn, kind: str) -> None:
    potluck, voice = turn.potluck, turn.voice
    # Whose a need is, is told to the host alone: in the group others look on, and an administrator is not the host.
    alone = turn.private and turn.me in (potluck.host, *potluck.cohosts)
    made = await drawing(turn, open_to_host=alone)
    png = await asyncio.to_thread(_kitchen if kind == "kitchen" else _table, made)
    caption = voice(f"picture-{kind}", title=_title(turn), when=potluck.starts_at)
    if potluck.stage is Stage.CANCELLED:
        caption = Html(f"{voice('board-cancelled')}\n{caption}")
    if alone and kind == "table" and any(g.all_needs() for g in potluck.guests):
        caption = Html(f"{caption}\n{voice('picture-names-needs')}")
    other = "table" if kind == "kitchen" else "kitchen"
    row: list[Button | Link] = []
    if made.plan.kitchen.steps:
        row.append(Button(voice.plain(f"button-picture-{other}"), "picture", (other,)))
    if not turn.private:
        row.append(Link(voice.plain("button-own-list"), turn.deep_link("board", potluck.id)))
    method = "photo" if is_photo(png) else "document"
    file: dict[str, Any] = {method: carried(png, f"{kind}.png")}
    turn.post(caption, buttons=[row], method=method, again_in_doubt=AGAIN_IN_DOUBT, **file)


def _title(turn: Turn) -> str:
    return turn.potluck.title or turn.voice.plain("board-title-plain")


# Paper ----------------------------------------------------------------------------------------------


async def papers(turn: Turn) -> None:
    """/print offers the papers; "/print cards" makes one of them at once. For hosts."""
    turn.hosts_only()
    wanted = fold(turn.words).split()
    if wanted:
        await _print(turn, _wanted(turn, wanted))
        return
    labels = {kind: turn.voice.plain(f"button-print-{kind}") for kind in _offered(turn)}
    cells = [Button(label, "print", (kind,), owner=turn.me) for kind, label in labels.items()]
    rows = [cells[i : i + 2] for i in range(0, len(cells), 2)]
    rows.append([Button(turn.voice.plain("button-print-all"), "print", ("all",), owner=turn.me)])
    turn.say("print-which", buttons=rows)


async def print_button(turn: Turn) -> None:
    turn.hosts_only()
    await _print(turn, _offered(turn) if turn.args[0] == "all" else turn.args)
    turn.toast("print-private" if not turn.private and turn.person.can_dm else "answer-below")


def _offered(turn: Turn) -> tuple[str, ...]:
    return tuple(kind for kind in PAPERS if kind != "bar" or turn.potluck.bar is not None)


def _wanted(turn: Turn, words: Iterable[str]) -> tuple[str, ...]:
    """Papers by what a host calls them: any word of their names."""
    words = set(words)
    own = _telling({kind: turn.voice.plain(f"button-print-{kind}") for kind in (*PAPERS, "all")})
    if words & {"all", "everything", *own["all"]}:
        return _offered(turn)
    found = tuple(kind for kind in PAPERS if words & {kind, *NAMES[kind].split("-"), *own[kind]})
    if not found:
        raise Refusal("refused-print-words")
    return found


async def _print(turn: Turn, kinds: Iterable[str]) -> None:
    """Each paper as a file of its own, to the host alone where that is possible."""
    kinds = tuple(kind for kind in kinds if kind in PAPERS)
    if "bar" in kinds:
        turn.known_bar()
    if not kinds:
        raise Refusal("refused-button-old")
    made = await drawing(turn)
    where = "private" if turn.private or turn.person.can_dm else "here"
    for kind in kinds:
        pdf = await asyncio.to_thread(PAPERS[kind], made)
        caption = turn.voice(f"print-{kind}", title=_title(turn))
        turn.post(
            caption,
            where=where,
            method="document",
            document=carried(pdf, f"{NAMES[kind]}.pdf"),
            again_in_doubt=AGAIN_IN_DOUBT,
        )
    if where == "private" and not turn.private and turn.event.kind == "message":
        turn.say("print-private")


# The calendar ---------------------------------------------------------------------------------------


async def calendar(turn: Turn) -> None:
    """/calendar: the potluck with this person's own dishes and reminders, for the calendar of their phone.

    In the group, for lack of a private chat, the file is everybody's: it names no one's reminders.
    """
    potluck, planner = turn.potluck, turn.services.planner
    private = turn.private or turn.person.can_dm
    guest = turn.guest() if private else None
    ahead = reminders(potluck, planner.timeline(potluck) if planner is not None else None, turn.now)
    ics = await asyncio.to_thread(
        prints.calendar,
        potluck,
        ahead,
        guest,
        turn.voice.plain,
        turn.now,
        turn.voice.language,
        sequence=turn.stored.revision if turn.stored else 0,
        link=turn.deep_link("board", potluck.id),
    )
    own = [] if private else [[Link(turn.voice.plain("button-private"), turn.own_link("cal"))]]
    caption = turn.voice("calendar-own" if guest is not None else "calendar-all", title=_title(turn))
    turn.post(
        caption,
        buttons=own,
        where="private" if private else "here",
        method="document",
        document=carried(ics, "potluck.ics"),
        again_in_doubt=AGAIN_IN_DOUBT,
    )
    if private and not turn.private:
        turn.say("calendar-private")


# The door on paper ----------------------------------------------------------------------------------


async def from_paper(turn: Turn) -> None:
    """Behind the square on paper and the link below a picture: one's own list; for a newcomer what is missing."""
    from bot.capabilities import missing, mylist

    shown: Callable[[Turn], Awaitable[None]] = mylist.show if turn.guest() is not None else missing.command
    await shown(turn)


def register(app: Registry) -> None:
    app.command("picture", picture, order=24)
    app.command("calendar", calendar, order=25)
    app.command("print", papers, order=77, hosts=True)
    app.button("picture", picture_button)
    app.button("print", print_button)
    app.link("board", from_paper)
    app.link("cal", calendar)
