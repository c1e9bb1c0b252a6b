"""What is no answer to an open question is read as if nothing had been asked."""

from __future__ import annotations

from bot.context import Turn


async def read_on(turn: Turn) -> None:
    """Let the readers of free words have it."""
    for reader in turn.services.registry.readers:
        turn.handled = False
        await reader.handler(turn)
        if turn.handled:
            return
