"""Dates and times in words, as people write them in a chat: "Sat 18 Sep 5pm", "tomorrow at six".

Our own patterns read English and figures; names in other languages are left to dateparser, on short text only.
How an open wording is taken:

- A bare hour from 1 to 8 is in the evening ("at 5" is 17:00), as people set the time of a meal; 12 is noon;
  9, 10 and 11 are asked about. "05:00", "17:00", "am", "pm", "morning" or "brunch" decide it.
- "next Friday" is the Friday of next week (weeks begin on Monday); "Friday" and "this Friday" are the nearest one.
- A date without a year is the next one to come; if it has passed in the last three months, we ask.
- In the hour skipped when clocks go forward, the time is moved on by an hour and a note says so; in the hour
  that comes twice the first one is meant.
"""

from __future__ import annotations

from planning.when.durations import parse_duration
from planning.when.line import Opening, parse_potluck_line, read_size
from planning.when.moved import moved, shift
from planning.when.reading import parse_when
from planning.when.tongues import as_read_here
from planning.when.values import Unclear, When, day_facts

__all__ = [
    "Opening",
    "Unclear",
    "When",
    "as_read_here",
    "day_facts",
    "moved",
    "parse_duration",
    "parse_potluck_line",
    "parse_when",
    "read_size",
    "shift",
]
