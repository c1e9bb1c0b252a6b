"""In words: who has not answered yet, who comes, what ran out."""

from __future__ import annotations

from bot.context import Turn
from bot.registry import Registry
from bot.understood.asking import asked_in
from planning.potluck import Answer

MOST = 20


async def read_standing(turn: Turn) -> None:
    if not turn.has_potluck:
        return
    found = asked_in(turn, "who-pending", "who-comes", "ran-out-what")
    if found is None:
        return
    potluck = turn.potluck
    match found.kind:
        case "who-pending":
            waiting = [g.name for g in potluck.guests if g.answer is Answer.NONE]
            maybe = [g.name for g in potluck.guests if g.answer is Answer.MAYBE]
            turn.say("standing-pending", waiting=waiting[:MOST], maybe=maybe[:MOST])
        case "who-comes":
            yes = [g for g in potluck.guests if g.answer is Answer.YES]
            people = sum(g.party.total for g in yes)
            turn.say("answer-who-comes", names=[g.name for g in yes], n=len(yes), people=people)
        case _:
            gone = [p.dish for p in potluck.promises if p.outcome == "ran-out"]
            if not gone and turn.now < potluck.starts_at:
                return
            turn.say("standing-ran-out", dishes=gone[:MOST])
    turn.handled = True


def register(app: Registry) -> None:
    app.reader(read_standing, order=29)
