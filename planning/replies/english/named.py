"""People called by name before the writer: "Agnes and myself", "Ines, myself and the baby"."""

from __future__ import annotations

from collections.abc import Iterator

from planning.replies.english.counts import Count
from planning.replies.english.lists import Members
from planning.replies.english.nouns import known_thing
from planning.replies.english.persons import noun_at
from planning.replies.intents import ReplyContext
from planning.replies.text import Sentence, Token

_NO_NAMES = frozenset(
    ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday", "sorry", "yes", "no", "thanks")
)


def names_first(sentence: Sentence, context: ReplyContext) -> Iterator[Count]:
    """ "Agnes and myself", "Ines, myself and the baby": asked about, for all that tells of them is a name."""
    tokens = sentence.tokens
    if not context.addressed:
        return
    guests = {name.lower().split()[0] for _, name in context.guests if name}
    for i in range(2, len(tokens)):
        if tokens[i].plain not in ("me", "myself") or not sentence.free(i):
            continue
        joins: tuple[str, ...] = ("and", "&", "+", ",") if tokens[i].plain == "myself" else ("and", "&", "+")
        j, names = i, 0
        while j >= 2 and tokens[j - 1].plain in joins and _a_name(tokens[j - 2]):
            names, j, joins = names + 1, j - 2, ("and", "&", "+", ",")
        if not names or guests & {t.plain for t in tokens[j:i]}:
            continue
        found = Members(sentence).at(i)
        if found is None or not found.me:
            continue
        found.add("adults", names)
        yield Count(j, found.last, found.party(), False, 0.6)


def _a_name(token: Token) -> bool:
    plain = token.plain
    cased = token.raw[:1].isupper() and not token.raw.isupper() and plain == token.raw.lower() and plain.isalpha()
    return cased and plain not in _NO_NAMES and not noun_at([token], 0) and known_thing(plain)[1] < 0.5
