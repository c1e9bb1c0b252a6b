"""The room: a small world that behaves, towards a bot, like the chat platform.

Bookkeeping is in `state.py`, what people do in `people.py` and `groups.py`, what the bot may ask for in
`methods/`, and HTTP in `server.py`.
"""

from __future__ import annotations

from .people import People


class Room(People):
    """See `State` for its settings, `Groups` and `People` for what can be done in it."""
