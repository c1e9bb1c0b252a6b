"""Tables of what people say, as patterns: rows of one language whose `{name}` stands for a macro row before them."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from planning.tables import rows


def said_in(
    table: str, language: str, macros: Mapping[str, str] | None = None
) -> Iterator[tuple[dict[str, str], re.Pattern[str]]]:
    """(row, its pattern) for each row of that language in `data/<table>.csv`, in the table's order.

    A row of the kind "macro-x" is no pattern of its own: what it says stands for "{x}" in the rows after it. `macros`
    are those known before.
    """
    known = dict(macros or {})
    for row in rows(table):
        if row["language"] != language:
            continue
        said = row["said"]
        for name, piece in known.items():
            said = said.replace(f"{{{name}}}", piece)
        if row["kind"].startswith("macro-"):
            known[row["kind"].removeprefix("macro-")] = said
        else:
            yield row, re.compile(said)
