"""The kitchen list of the moment: what runs now, and what comes next."""

from bot.buttons import Button
from bot.context import Turn
from bot.kitchen_words import step_line
from bot.registry import Registry
from bot.texts import Html
from planning.kitchen import Timeline
from planning.theday.now import moment

MOST_STEPS = 12


async def now(turn: Turn) -> None:
    """/now: what is in the oven, on the stove and in people's hands at this minute."""
    running = moment(_timeline(turn), turn.now).running
    lines: list[str] = [turn.voice("now-head", n=len(running), at=turn.voice.time(turn.now))]
    lines += [step_line(turn.voice, turn.potluck, s) for s in running[:MOST_STEPS]]
    _post(turn, lines, "next")


async def next_(turn: Turn) -> None:
    """/next: what starts within two hours, at least the next thing."""
    coming = moment(_timeline(turn), turn.now).coming
    lines: list[str] = [turn.voice("next-head", n=len(coming))]
    lines += [step_line(turn.voice, turn.potluck, s) for s in coming[:MOST_STEPS]]
    _post(turn, lines, "now")


def _timeline(turn: Turn) -> Timeline | None:
    planner = turn.services.planner
    found: Timeline | None = planner.timeline(turn.potluck) if planner is not None else None
    return found


def _post(turn: Turn, lines: list[str], other: str) -> None:
    buttons = [[Button(turn.voice.plain(f"button-{other}"), other)]]
    turn.post(Html("\n".join(lines)), buttons=buttons, reply=None if turn.event.kind == "message" else False)
    if turn.event.kind == "press":
        turn.toast("answer-below")


def register(app: Registry) -> None:
    app.command("now", now, order=62)
    app.command("next", next_, order=63)
    app.button("now", now)
    app.button("next", next_)
