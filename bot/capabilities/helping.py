"""Help that fits the chat it is asked in, and the door of the private chat."""

from dataclasses import replace

from bot import doors
from bot.buttons import Forged
from bot.context import Turn
from bot.membership import is_outside
from bot.registry import Command, Registry
from bot.texts import Html
from planning.changes import Refusal, may_manage


async def help_(turn: Turn) -> None:
    where = "private" if turn.private else "group"
    commands = sorted(turn.services.registry.commands.values(), key=lambda c: (c.order, c.name))
    shown = [c for c in commands if c.menu and c.where in ("both", where)]
    manages = turn.has_potluck and may_manage(turn.potluck, turn.actor)
    lines: list[str] = [turn.voice("help-head-private" if turn.private else "help-head-group")]
    lines += [_line(turn, c) for c in shown if not c.hosts]
    lines.append(turn.voice("help-words-private" if turn.private else "help-words-group"))
    lines.append(turn.voice("help-rights"))
    if manages:
        lines.append(turn.voice("help-hosts-too"))
        lines += [_line(turn, c) for c in shown if c.hosts]
    turn.post(Html("\n".join(lines)))


def _line(turn: Turn, command: Command) -> str:
    return turn.voice("help-line", command=command.name, what=turn.voice.plain(f"help-{command.name}"))


async def start(turn: Turn) -> None:
    """/start opens the private chat; with a payload it goes where the link leads."""
    if not turn.private:
        await help_(turn)
        return
    turn.save_person(replace(turn.person, can_dm=True))
    payload = turn.words.split()[0] if turn.words else ""
    if not payload:
        theirs = await turn.store.potlucks_of_person(turn.person.id)
        turn.say("start-private", n=len([s for s in theirs if s.potluck.ends >= turn.now]))
        return
    kind, parts = _behind(turn, payload)
    if (handler := turn.services.registry.own_links.get(kind)) is not None and not parts:
        await handler(turn)
        return
    handler = turn.services.registry.links.get(kind)
    if handler is None or not parts:
        raise Refusal("refused-link")
    stored = await turn.store.potluck(parts[0])
    if stored is None:
        raise Refusal("refused-link")
    await turn.about_potluck(stored)
    turn.save_person(replace(turn.person, can_dm=True, private_potluck=parts[0]))
    turn.link = parts
    await require_member(turn)
    await handler(turn)


def _behind(turn: Turn, payload: str) -> tuple[str, tuple[str, ...]]:
    """What a link opens, and of which potluck. One of somebody's own opens nothing for others, and nothing late."""
    prefix, _, rest = payload.partition("-")
    if prefix != doors.PREFIX:
        return prefix, tuple(rest.split("-")) if rest else ()
    try:
        door = doors.opened(turn.services.signer, payload, turn.event.person.id, turn.now)
    except doors.NotTheirs:
        raise Refusal("refused-link-of-another") from None
    except doors.Expired:
        raise Refusal("refused-link-late") from None
    except Forged:
        raise Refusal("refused-link") from None
    return door.kind, (door.potluck,) if door.potluck else ()


async def require_member(turn: Turn) -> None:
    """A link only opens the door: whoever comes through must be a guest who has not left, or a member of the group."""
    if turn.stored is not None and turn.potluck.guest(turn.me) is not None:
        if await is_outside(turn.services, turn.stored, turn.event.person.id):
            raise Refusal("refused-not-member")
        return
    if not await turn.services.is_member(turn.place.chat_id, turn.event.person.id):
        raise Refusal("refused-not-member")


def register(app: Registry) -> None:
    app.command("help", help_, order=90)
    app.command("start", start, order=91, menu=False)
