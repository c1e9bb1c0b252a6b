"""What is left: what keeps how long, what must go, who takes what home; and whose container is still where."""

from collections.abc import Sequence

from bot.buttons import Button
from bot.capabilities.buying import source_words
from bot.context import Turn
from bot.registry import Registry
from bot.texts import Html
from planning.changes import Refusal, give_back, take_home
from planning.potluck import Promise
from planning.safety.clocks import clock
from planning.theday.leftovers import Leftover, leftovers

MOST_ROWS, MOST_RULES = 16, 3


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
    shown = rows[:MOST_ROWS]
    lines += told(turn, shown)
    lines.append(turn.voice("left-how", source=source_words(turn, "LEFT-03")))
    keep = [r.promise for r in rows if not r.must_go][:MOST_ROWS]
    buttons = [Button(turn.voice.plain("button-take", dish=p.dish), "take", (p.id,)) for p in keep]
    rules = tuple(dict.fromkeys(row.rule for row in shown if row.rule != "practice"))[:MOST_RULES]
    table = [buttons[n : n + 2] for n in range(0, len(buttons), 2)]
    if rules:
        table.append([Button(turn.voice.plain("button-why"), "whys", rules)])
    return Html("\n".join(lines)), table


def told(turn: Turn, rows: Sequence[Leftover]) -> list[Html]:
    """A line of each dish; of those nobody clocked one for all."""
    known = [row for row in rows if not row.perhaps]
    return [*(line(turn, row) for row in known), *_untold(turn, [row for row in rows if row.perhaps])]


def _untold(turn: Turn, rows: list[Leftover]) -> list[Html]:
    """Of dishes nobody told when they came out it is said once what that means."""
    if len(rows) < 2:
        return [line(turn, row) for row in rows]
    dishes = []
    for row in rows:
        takers = ", ".join(_takers(turn, row))
        dishes.append(
            turn.voice.plain("left-taken-by", dish=row.promise.dish, names=takers) if takers else row.promise.dish
        )
    first = rows[0]
    since = turn.voice.time(turn.potluck.starts_at)
    return [turn.voice("left-perhaps-all", dishes=dishes, since=since, minutes=first.out_min, limit=first.limit_min)]


def line(turn: Turn, row: Leftover) -> Html:
    """One dish of the sheet."""
    takers = _takers(turn, row)
    if row.perhaps:
        return turn.voice("left-perhaps", dish=row.promise.dish, since=turn.voice.time(turn.potluck.starts_at),
                          minutes=row.out_min, limit=row.limit_min, names=takers)  # fmt: skip
    if row.must_go:
        return turn.voice("left-must-go", dish=row.promise.dish, minutes=row.out_min)
    return turn.voice("left-keeps", dish=row.promise.dish, until=row.keep_until, names=takers,
                      by=turn.voice.time(row.chill_by) if row.chill_by is not None else "",
                      timed=row.chill_by is not None)  # fmt: skip


def _takers(turn: Turn, row: Leftover) -> list[str]:
    return [g.name for t in row.promise.takers if (g := turn.potluck.guest(t))]


async def take(turn: Turn) -> None:
    found = turn.known_promise(turn.args[0])
    after = turn.change(take_home(turn.potluck, turn.actor, found.id, turn.now), "did-take", dish=found.dish)
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
