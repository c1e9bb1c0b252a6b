"""Starting a potluck: in one line, or by being asked one thing at a time."""

import re
import secrets
from collections.abc import Iterator
from dataclasses import replace

from bot.board import Facts
from bot.capabilities.kitchen import COOKING, note_kitchen
from bot.context import Turn
from bot.registry import Registry
from bot.storage.values import PotluckPlace
from bot.texts import Voice
from bot.zones import find_zone
from planning.again import carried, corrections
from planning.bar import base_named
from planning.changes import Refusal, open_bar, open_potluck, resize, set_budget, set_place
from planning.kitchen_words import kitchen_within, read_kitchen
from planning.potluck import Potluck, Stage
from planning.replies import says_later
from planning.safety.standing import units_usual_in
from planning.when import Unclear, as_read_here, parse_potluck_line, parse_when, read_size

ID_LETTERS = "abcdefghjkmnpqrstuvwxyz23456789"


_AT = re.compile(
    r"^(?:(?:it is|it['\u2019]s|it['\u2019]ll be|it will be|we meet|we are|we['\u2019]re) )?"
    r"(?:at|in|@|en|es en)\s+(?=\S)"
    r"|^(?:it is|it['\u2019]s|it['\u2019]ll be|it will be|es)\s+(?=\S)",
    re.IGNORECASE,
)


def new_id() -> str:
    """Six letters nobody confuses when reading them aloud."""
    return "".join(secrets.choice(ID_LETTERS) for _ in range(6))


async def potluck(turn: Turn) -> None:
    """/potluck with a line starts one; alone it asks, or shows the board of the one there is."""
    if turn.event.person.anonymous:
        raise Refusal("refused-anonymous")
    if turn.private:
        raise Refusal("refused-potluck-in-private")
    if turn.chat.timezone is None:
        turn.ask("zone", "ask-zone", data={"line": turn.words})
        return
    if not turn.words:
        if turn.has_potluck and turn.potluck.stage is Stage.PLANNED:
            turn.refresh_board(anew=True)
            return
        turn.ask("when", "ask-when")
        return
    await start(turn, turn.words)


async def zone_told(turn: Turn) -> None:
    zone = find_zone(turn.words)
    if zone is None:
        raise Refusal("refused-zone", value=turn.words[:40])
    line = str(turn.dialog.data.get("line", "")) if turn.dialog else ""
    turn.answered()
    units = units_usual_in(zone)
    turn.save_chat(replace(turn.chat, timezone=zone, units=units))
    if line:
        await start(turn, line)
    else:
        turn.ask("when", "ask-when")


async def start(turn: Turn, line: str) -> None:
    """Open a potluck with what `line` says; ask for the date or the hour when they are missing."""
    line = _as_read(line, turn.voice.language)
    opening = parse_potluck_line(line, turn.now, turn.chat.timezone or "UTC")
    if opening.unclear:
        raise Refusal(opening.unclear[0].key, **opening.unclear[0].facts)
    if opening.when is None:
        turn.ask("when", "ask-when", data={"line": line})
        return
    if not opening.when.has_time:
        turn.ask("hour", "ask-hour", data={"line": line}, day=turn.voice.day(opening.when.starts_at))
        return
    for other in await turn.store.potlucks_in(turn.event.chat_id):
        same_place = other.place.thread_id == turn.event.thread_id and other.potluck.stage is Stage.PLANNED
        if same_place and other.potluck.starts_at == opening.when.starts_at:
            raise Refusal("refused-same-hour")
    opened = open_potluck(
        new_id(),
        turn.actor,
        starts_at=opening.when.starts_at,
        ends_at=opening.when.ends_at,
        timezone=turn.chat.timezone or "UTC",
        now=turn.now,
        title=opening.title or "",
        place=_whose(turn, opening.place or ""),
        people=opening.people,
        setting=opening.setting or "indoor",
        mealtime=opening.mealtime or "meal",
        units=turn.chat.units,
    )
    past = [s.potluck for s in await turn.store.potlucks_in(turn.event.chat_id)]
    opened = replace(opened, history=carried(past, turn.now), corrections=corrections(past, turn.now))
    place = PotluckPlace(opened.id, turn.event.chat_id, turn.event.thread_id)
    turn.start_potluck(opened, place)
    for note in opening.when.notes:
        turn.post(turn.voice.say(note))
    if opening.budget is not None:
        turn.change(set_budget(turn.potluck, turn.actor, opening.budget.amount, opening.budget.currency))
    if opening.bar_base:
        turn.change(open_bar(turn.potluck, turn.actor, base_named(opening.bar_base) or opening.bar_base))
    if opening.kitchen:
        note_kitchen(turn, read_kitchen(opening.kitchen, turn.potluck.kitchen))
    if opened.expected_people is None:
        turn.ask("people", "opened-ask-people", when=opened.starts_at)
    elif not opened.place:
        turn.ask("place", "opened-ask-place", when=opened.starts_at)
    else:
        turn.say("opened", when=opened.starts_at)


def _as_read(line: str, language: str) -> str:
    """The line in the words our patterns read; a piece about appliances in those for appliances."""
    pieces = re.split(r"([,;\n])", line)
    cooking = [as_read_here(piece, language, COOKING) for piece in pieces]
    of_kitchen = [kitchen_within(piece)[1] != "" for piece in cooking]
    told = "".join(c if k else p for p, c, k in zip(pieces, cooking, of_kitchen, strict=True))
    return as_read_here(told, language)


async def when_told(turn: Turn) -> None:
    rest = str(turn.dialog.data.get("line", "")) if turn.dialog else ""
    turn.answered()
    await start(turn, f"{turn.words}, {rest}" if rest else turn.words)


async def hour_told(turn: Turn) -> None:
    line = str(turn.dialog.data.get("line", "")) if turn.dialog else ""
    day = parse_potluck_line(_as_read(line, turn.voice.language), turn.now, turn.chat.timezone or "UTC").when
    if day is None:
        raise Refusal("refused-hour", value=turn.words[:40])
    date = day.starts_at.astimezone(turn.zone).date()
    try:
        parse_when(
            f"{date.isoformat()} {as_read_here(turn.words, turn.voice.language)}", turn.now, turn.chat.timezone or "UTC"
        )
    except Unclear as unclear:
        raise Refusal(unclear.say.key, **unclear.say.facts) from None
    turn.answered()
    rest = ", ".join(part for part in (day.rest,) if part)
    await start(turn, f"{date.isoformat()} {turn.words}, {rest}" if rest else f"{date.isoformat()} {turn.words}")


async def people_told(turn: Turn) -> None:
    if says_later(turn.words, turn.voice.language):
        turn.answered()
        if turn.potluck.place:
            turn.say("noted-later")
        else:
            turn.ask("place", "opened-ask-place", when=turn.potluck.starts_at)
        return
    told = as_read_here(turn.words, turn.voice.language)
    people = read_size(told)
    if people is None:
        raise Refusal("refused-size", low=1, high=1000)
    turn.change(resize(turn.potluck, turn.actor, people), "did-resize")
    turn.answered()
    place = parse_potluck_line(told, turn.now, turn.potluck.timezone).place
    if place and not turn.potluck.place:
        turn.change(set_place(turn.potluck, turn.actor, place), "did-place")
    if turn.potluck.place:
        turn.say("noted-people", people=people)
    else:
        turn.ask("place", "noted-people-ask-place", people=people)


async def place_told(turn: Turn) -> None:
    turn.answered()
    if says_later(turn.words, turn.voice.language):
        turn.say("noted-later")
        return
    turn.change(set_place(turn.potluck, turn.actor, _whose(turn, _named(turn.words))), "did-place")
    turn.say("noted-place", place=turn.potluck.place)


_MINE = re.compile(
    r"(?:(?:at|en) )?(?:(?:my|our|mi|nuestr[oa]) (?P<what>[\w -]{2,40})|(?:mine|ours))", re.IGNORECASE
)
_HOME = re.compile(r"house|home|place|flat|apartment|casa|piso|departamento|apartamento", re.IGNORECASE)


def _whose(turn: Turn, place: str) -> str:
    """ "My house" in the words of everybody else."""
    match = _MINE.fullmatch(place.strip())
    if match is None:
        return place
    what = (match["what"] or "home").strip()
    if _HOME.fullmatch(what):
        return turn.voice.plain("place-of", name=turn.event.person.name)
    return turn.voice.plain("place-of-what", name=turn.event.person.name, what=what)


def _named(words: str) -> str:
    """ "It's at the hut" names the hut."""
    return _AT.sub("", words.strip(), count=1).rstrip(" .!") or words


def head(potluck: Potluck, voice: Voice, facts: Facts) -> Iterator[str]:
    title = voice("board-title", title=potluck.title) if potluck.title else voice("board-title-none")
    yield title
    if potluck.stage is Stage.CANCELLED:
        yield voice("board-cancelled")
    where = potluck.place or ""
    yield voice("board-when", when=potluck.starts_at, place=where, has_place=bool(where), setting=potluck.setting)
    host = potluck.guest(potluck.host)
    cohosts = [g.name for c in potluck.cohosts if (g := potluck.guest(c))]
    names = [host.name, *cohosts] if host else cohosts
    if names:
        yield voice("board-host", names=names)
    if potluck.answer_by and facts.now < potluck.answer_by:
        yield voice("board-answer-by", when=potluck.answer_by)


def register(app: Registry) -> None:
    app.command("potluck", potluck, order=1)
    app.question("zone", zone_told)
    app.question("when", when_told)
    app.question("hour", hour_told)
    app.question("people", people_told)
    app.question("place", place_told)
    app.on_board(10, lines=head)
