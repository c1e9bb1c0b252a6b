"""What nobody could read."""

from __future__ import annotations

LONGEST = 200
"""Characters read of a message; nobody describes a kitchen in more."""


class Unread(Exception):
    """`words` is the part nobody could read."""

    def __init__(self, words: str) -> None:
        super().__init__(words)
        self.words = words[:60]
