"""What ran out and what came back: two taps of the host, which correct the group's portions next time."""

from bot.buttons import Button
from bot.context import Turn
from bot.registry import Registry
from bot.texts import Html
from planning.changes import Refusal, say_outcome
from planning.theday.leftovers import learned

MOST_ROWS = 20


async def show(turn: Turn) -> None:
    """/lessons: tap what ran out, tap what came back."""
    turn.hosts_only()
    if turn.now < turn.potluck.starts_at:
        raise Refusal("refused-lessons-early")
    text, buttons = _sheet(turn)
    turn.post(text, buttons=buttons, reply=None if turn.event.kind == "message" else False)
    if turn.event.kind == "press":
        turn.toast("answer-below")


def _sheet(turn: Turn) -> tuple[Html, list[list[Button]]]:
    voice, potluck = turn.voice, turn.potluck
    dishes = [p for p in potluck.promises if p.category != "supplies"][:MOST_ROWS]
    if not dishes:
        raise Refusal("refused-no-promises")
    lines: list[str] = [voice("lessons-head")]
    for kind in ("ran-out", "came-back"):
        names = [p.dish for p in dishes if p.outcome == kind]
        if names:
            lines.append(voice(f"lessons-{kind}", dishes=names))
    lines += lesson_lines(turn)
    rows = [
        [
            Button(voice.plain("button-ran-out", dish=p.dish, on=p.outcome == "ran-out"), "lesson", (p.id, "ran-out")),
            Button(
                voice.plain("button-came-back", dish=p.dish, on=p.outcome == "came-back"), "lesson", (p.id, "came-back")
            ),
        ]
        for p in dishes
    ]
    return Html("\n".join(lines)), rows


def lesson_lines(turn: Turn) -> list[str]:
    """What is learned for the next time, shown as it is."""
    return [
        turn.voice(
            "lessons-next",
            category=turn.voice.plain(f"category-{category}"),
            percent=round(abs(factor - 1) * 100),
            more=factor > 1,
        )
        for category, factor in learned(turn.potluck).items()
    ]


async def pressed(turn: Turn) -> None:
    promise_id, outcome = turn.args
    found = turn.known_promise(promise_id)
    turn.change(say_outcome(turn.potluck, turn.actor, found.id, outcome), "did-lesson", dish=found.dish)
    text, buttons = _sheet(turn)
    turn.edit_pressed_html(text, buttons=buttons)
    turn.toast("lessons-noted")


def register(app: Registry) -> None:
    app.command("lessons", show, order=66, hosts=True)
    app.button("lessons", show)
    app.button("lesson", pressed)
