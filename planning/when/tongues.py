"""Dates, hours and the like in another language, written as the patterns here read them; the words are data."""

from __future__ import annotations

import re
from functools import cache

from planning.tables import rows


def as_read_here(text: str, language: str, table: str = "words_line") -> str:
    """`text` with what a table knows of the language put into the words our patterns read.

    `data/words_line.csv` has those of dates and sizes, `data/words_cooking.csv` those of steps and appliances.

    A space that must stay at an end of a cell is written "@". All else, names above all, stays as typed.
    """
    for said, means in _words(language, table):
        text = said.sub(means, text)
    return text


@cache
def _words(language: str, table: str) -> tuple[tuple[re.Pattern[str], str], ...]:
    return tuple(
        (re.compile(row["said"], re.IGNORECASE), row["means"].replace("@", " "))
        for row in rows(table)
        if row["language"] == language
    )
