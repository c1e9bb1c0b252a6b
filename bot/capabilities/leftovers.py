"""What is left: what keeps how long, what must go, who takes what home; and whose container is still where."""

from bot.buttons import Button
from bot.capabilities.buying import source_words
from bot.context import Turn
from bot.registry import Registry
from bot.texts import Html
from planning.changes import Refusal, give_back, take_home
from planning.potluck import Promise
from planning.safety.clocks import clock
from planning.theday.leftovers import Leftover, leftovers

MOST_ROWS = 16


async def show(turn: Turn) -> None:
    """/leftovers: one line a dish, and a button for whoever takes it home."""
    text, buttons = sheet(turn)
    turn.post(text, buttons=buttons, reply=None if turn.event.kind == "message" else False)
    if turn.event.kind == "press":
        turn.toast("answer-below")


def sheet(turn: Turn) -> tuple[Html, list[list[Button]]]:
    rows = leftovers(turn.potluck, turn.now)
    if not rows:
        raise Refusal("refused-no-promises")
    hours = clock(turn.potluck, Promise("", "", "", "main")).limit_min // 60
    lines = [turn.voice("left-head", hours=hours)]
    lines += [line(turn, row) for row in rows[:MOST_ROWS]]
    lines.append(turn.voice("left-how", source=source_words(turn, "LEFT-03")))
    keep = [r.promise for r in rows if not r.must_go][:MOST_ROWS]
    buttons = [Button(turn.voice.plain("button-take", dish=p.dish), "take", (p.id,)) for p in keep]
    return Html("\n".join(lines)), [buttons[n : n + 2] for n in range(0, len(buttons), 2)]


def line(turn: Turn, row: Leftover) -> Html:
    """One dish of the sheet."""
    takers = [g.name for t in row.promise.takers if (g := turn.potluck.guest(t))]
    if row.perhaps:
        return turn.voice("left-perhaps", dish=row.promise.dish, since=turn.voice.time(turn.potluck.starts_at),
                          minutes=row.out_min, limit=row.limit_min, source=row.rule, names=takers)  # fmt: skip
    if row.must_go:
        return turn.voice("left-must-go", dish=row.promise.dish, minutes=row.out_min, source=row.rule)
    return turn.voice("left-keeps", dish=row.promise.dish, until=row.keep_until, source=row.rule, names=takers,
                      by=turn.voice.time(row.chill_by) if row.chill_by is not None else "",
                      timed=row.chill_by is not None)  # fmt: skip


async def take(turn: Turn) -> None:
    found = turn.known_promise(turn.args[0])
    after = turn.change(take_home(turn.potluck, turn.actor, found.id), "did-take", dish=found.dish)
    now = after.promise(found.id)
    text, buttons = sheet(turn)
    turn.edit_pressed_html(text, buttons=buttons)
    turn.toast("left-taken" if now is not None and turn.me in now.takers else "left-not-taken", dish=found.dish)


async def dishes(turn: Turn) -> None:
    """/dishes: containers not yet back with their owners; a press says one is."""
    text, buttons = containers(turn)
    turn.post(text, buttons=buttons, reply=None if turn.event.kind == "message" else False)
    if turn.event.kind == "press":
        turn.toast("answer-below")


def containers(turn: Turn) -> tuple[Html, list[list[Button]]]:
    waiting = [p for p in turn.potluck.promises if p.category not in ("drink", "supplies") and not p.returned]
    lines = [turn.voice("back-head", n=len(waiting))]
    lines += [turn.voice("back-row", dish=p.dish, name=_owner(turn, p)) for p in waiting[:MOST_ROWS]]
    buttons = [Button(turn.voice.plain("button-back-home", dish=p.dish), "back", (p.id,)) for p in waiting[:MOST_ROWS]]
    return Html("\n".join(lines)), [buttons[n : n + 2] for n in range(0, len(buttons), 2)]


def _owner(turn: Turn, promise: Promise) -> str:
    owner = turn.potluck.guest(promise.guest)
    return owner.name if owner else ""


async def back(turn: Turn) -> None:
    found = turn.known_promise(turn.args[0])
    turn.change(give_back(turn.potluck, turn.actor, found.id), "did-back", dish=found.dish)
    text, buttons = containers(turn)
    turn.edit_pressed_html(text, buttons=buttons)
    turn.toast("back-noted", dish=found.dish)


def register(app: Registry) -> None:
    app.command("leftovers", show, order=64)
    app.command("dishes", dishes, order=65)
    app.button("left", show)
    app.button("take", take)
    app.button("backs", dishes)
    app.button("back", back)
