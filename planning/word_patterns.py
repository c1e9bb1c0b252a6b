"""Tables of what people say, as patterns: rows of one language whose `{name}` stands for a macro row before them."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from planning.tables import rows

_NOT = re.compile(r"\b(did|do|does|is|are|was|were|has|have|had|wo|ca|could|would|should)nt\b", re.IGNORECASE)
_AM = re.compile(r"\b(i|we|you|they|he|she|that|there|what|who)(m|ve|re)\b", re.IGNORECASE)
_ARE_ONE = frozenset(("im", "ive", "weve", "youre", "youve", "theyre", "theyve"))
_IS = re.compile(r"\b(that|there|what|who|he|she|here|let|everything|somebody|someone|nobody|power)s\b", re.IGNORECASE)


def restored(words: str) -> str:
    """English words with the apostrophes put back that hurried thumbs leave out; other words as they are.

    >>> restored("im here, val didnt come, whos next")
    "i'm here, val didn't come, who's next"
    """
    words = _NOT.sub(r"\1n't", words.replace("\u2019", "'"))
    words = _AM.sub(lambda m: f"{m[1]}'{m[2]}" if m[0].casefold() in _ARE_ONE else m[0], words)
    return _IS.sub(r"\1's", words)


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
