"""The day itself: a dish on the table and its clock, the cautions, and what reminders are ahead."""

from bot.buttons import Button
from bot.context import Turn
from bot.registry import Registry
from bot.renderer import preview_lines
from bot.texts import Html
from planning.changes import Refusal, may_manage, put_away, put_out
from planning.reminders import reminders
from planning.safety import safety

MOST_NOTES = 25


async def out(turn: Turn) -> None:
    """/out slaw, or buttons to choose: "it's on the table now" starts the clock."""
    from bot.capabilities.bringing import find_promise

    if turn.words:
        _start(turn, find_promise(turn, turn.words, mine_only=False).id)
        return
    rows = [[Button(p.dish, "out", (p.id,))] for p in turn.potluck.promises if p.category not in ("drink", "supplies")]
    if not rows:
        raise Refusal("refused-no-promises")
    turn.say("out-which", buttons=rows[:12])


async def out_button(turn: Turn) -> None:
    found = turn.potluck.promise(turn.args[0])
    if found is None:
        raise Refusal("refused-no-promise")
    if found.out_since is None:
        _start(turn, found.id)
    else:
        turn.change(put_away(turn.potluck, turn.actor, found.id, turn.now), "did-away", dish=found.dish)
        turn.say("out-stopped", reply=False, dish=found.dish, minutes=round(turn.known_promise(found.id).out_min))
    turn.toast("answer-below")


def _start(turn: Turn, promise_id: str) -> None:
    after = turn.change(put_out(turn.potluck, turn.actor, promise_id, turn.now), "did-out")
    found = turn.known_promise(promise_id)
    ends = [n.deadline for n in safety(after, turn.now) if n.promise == promise_id and n.deadline is not None]
    deadline = min((end for end in ends if end >= turn.now), default=None)
    buttons = [[Button(turn.voice.plain("button-put-away"), "out", (promise_id,))]]
    if deadline is None:
        turn.say("out-started", reply=False, buttons=buttons, dish=found.dish)
    else:
        turn.say("out-started-until", reply=False, buttons=buttons, dish=found.dish, until=turn.voice.time(deadline))


async def cautions(turn: Turn) -> None:
    """/safety: clocks, blocks and warnings, each with who says so."""
    from bot.capabilities.buying import source_words

    notes = sorted(safety(turn.potluck, turn.now), key=lambda n: ("block", "warn", "note").index(n.severity))
    lines = [turn.voice("safety-head")]
    for note in notes[:MOST_NOTES]:
        lines.append(
            turn.voice(
                "safety-row",
                severity=note.severity,
                what=turn.voice.say(note.say),
                source=source_words(turn, note.source),
            )
        )
    turn.post(Html("\n".join(lines)))


async def ahead(turn: Turn) -> None:
    """/reminders: what will go out by itself, when and to whom - for hosts."""
    if not may_manage(turn.potluck, turn.actor):
        raise Refusal("refused-not-host", host="")
    planner = turn.services.planner
    timeline = planner.timeline(turn.potluck) if planner is not None else None
    off = turn.chat.reminder_kinds_off
    rows = sorted((r for r in reminders(turn.potluck, timeline, turn.now) if r.kind not in off), key=lambda r: r.due_at)
    if not rows:
        turn.say("reminders-none")
        return
    turn.post(
        Html("\n".join([turn.voice("reminders-head", n=len(rows)), preview_lines(turn.voice, turn.potluck, rows[:25])]))
    )


def register(app: Registry) -> None:
    app.command("out", out, order=74)
    app.command("safety", cautions, order=75)
    app.command("reminders", ahead, order=76, hosts=True)
    app.button("out", out_button)
