"""Taking back one's own last action, unless somebody has changed the same thing since."""

from datetime import timedelta

from bot.context import Turn
from bot.decided import deed
from bot.outgoing import moment_key
from bot.registry import Registry
from bot.storage.diffs import apply_diff
from bot.storage.errors import Conflict
from planning.changes import Refusal

OLDEST = timedelta(days=2)


async def command(turn: Turn) -> None:
    await _undo(turn, None)


async def button(turn: Turn) -> None:
    await _undo(turn, turn.args[0])


async def _undo(turn: Turn, moment: str | None) -> None:
    action = await turn.store.last_action(turn.potluck.id, turn.me)
    if action is None or turn.now - action.at > OLDEST:
        raise Refusal("refused-nothing-to-undo")
    if moment is not None and moment_key(action.at) != moment:
        raise Refusal("refused-undo-not-last")
    try:
        back = apply_diff(turn.potluck, action.changes, reverse=True)
    except Conflict:
        raise Refusal("refused-undo-changed") from None
    turn.change(back)
    turn.record_undo(action.id)
    what = deed(action, turn.voice)
    if turn.event.kind == "press":
        turn.toast("undone", what=what)
        turn.edit_pressed("undone-line", name=turn.event.person.name, what=what)
    else:
        turn.say("undone", what=what)


def register(app: Registry) -> None:
    app.command("undo", command, order=60)
    app.button("undo", button)
