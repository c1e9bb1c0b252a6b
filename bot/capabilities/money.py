"""In words: who owes whom - from what was noted as paid."""

from __future__ import annotations

from bot.capabilities.buying import paid_sheet
from bot.context import Turn
from bot.registry import Registry
from bot.understood.asking import addressed, asked_in


async def read_owing(turn: Turn) -> None:
    if not turn.has_potluck or asked_in(turn, "who-owes") is None:
        return
    if turn.potluck.payments:
        turn.handled = True
        paid_sheet(turn)
    elif addressed(turn) and turn.now >= turn.potluck.starts_at:
        turn.handled = True
        turn.say("money-none")


def register(app: Registry) -> None:
    app.reader(read_owing, order=29)
