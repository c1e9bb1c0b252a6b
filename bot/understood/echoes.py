"""What "me too" is said after: the words of somebody else that were read a moment ago in the same chat."""

from __future__ import annotations

from bot.context import Turn

MOST_BETWEEN = 4
"""So many messages may stand between the words and their echo (common practice, no source)."""
MOST_ACTIONS = 12


async def said_before_it(turn: Turn) -> str:
    """The words; "" where nobody knows. What was told in private is nobody else's to repeat, so
    only words of this chat count."""
    event = turn.event
    upto = event.reply_to if event.reply_to_bot and turn.about != "board" else event.message_id
    if upto is None:
        return ""
    for action in await turn.store.latest_actions(turn.potluck.id, MOST_ACTIONS):
        at = str(action.facts.get("message", ""))
        here = action.facts.get("chat") == event.chat_id and action.actor != turn.me
        if here and at.isdecimal() and 0 < upto - int(at) <= MOST_BETWEEN:
            return str(action.facts.get("said", ""))
    return ""
