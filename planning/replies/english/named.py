"""People called by name beside the writer: "me and Luis", "Agnes and myself", "coming with Jess"."""

# ruff: noqa: E501 - a table of words is easier to read on one line

from __future__ import annotations

from collections.abc import Iterator, Sequence

from planning.potluck import Party
from planning.replies.english.counts import Count
from planning.replies.english.lexicon import whole_number, words
from planning.replies.english.lists import Members
from planning.replies.english.members import item
from planning.replies.english.nouns import known_thing
from planning.replies.english.persons import People, noun_at
from planning.replies.english.spelling import is_known
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
    guests = _guests(context)
    yield from _me_first(sentence, guests)
    yield from _with_somebody(sentence, guests)
    for i in range(2, len(tokens)):
        last_i = tokens[i].plain == "i" and _ends(tokens, i + 1)
        if not (tokens[i].plain in ("me", "myself") or last_i) or not sentence.free(i):
            continue
        joins: tuple[str, ...] = ("and", "&", "+", ",") if tokens[i].plain == "myself" else ("and", "&", "+")
        j, names = i, 0
        while j >= 2 and tokens[j - 1].plain in joins and sentence.free(j - 2) and _a_name(tokens[j - 2]):
            names, j, joins = names + 1, j - 2, ("and", "&", "+", ",")
        if not names or guests & {t.plain for t in tokens[j:i]}:
            continue
        found = Members(sentence).at(i)
        if found is None or not found.me:
            continue
        found.add("adults", names)
        whole = _led(tokens, j) and _ends(tokens, found.last) and not found.unknown_number
        yield Count(j, found.last, found.party(), False, PLAIN if whole else 0.6)


PLAIN = 0.88
_LEADS = frozenset(
    ("yes", "just", "only", "it", "is", "will", "be", "coming", "in", "so", "ok", "okay", "put", "down", "for", "us", "of", "we", "are", "there", "count", "sure",
     "make", "that", "both", "and", "oh", "well", "now", "actually", ",", ":", "-", "=", "(", "am", "i", "with", "bringing", "can", "a", "from", "down", "for", "two", "three", "four", "party", "have", "got", "say", "definitely", "going", "to")
)  # fmt: skip
_GOES_ON = frozenset(
    (",", ")", "(", "-", ":", "coming", "both", "for", "this", "then", "now", "so", "please", "too", "in", "be", "but", "again", "on", "at",
     "with", "bringing", "tonight", "thanks", "if", "from", "there", "only", "yes", "no", "all", "we")
)  # fmt: skip
_JOINS = ("and", "&", "+", "plus", "with", ",", "n")


def _guests(context: ReplyContext) -> set[str]:
    return {name.lower().split()[0] for _, name in context.guests if name}


def _led(tokens: Sequence[Token], i: int) -> bool:
    """Whether only words for coming, and numbers, stand before token `i`."""
    return all(t.plain in _LEADS or whole_number([t], 0) is not None for t in tokens[:i])


def _ends(tokens: Sequence[Token], i: int) -> bool:
    """Whether a list of people ends before token `i`: only their coming is told behind it, and nothing they do."""
    if i >= len(tokens):
        return True
    if tokens[i].plain in ("will", "are", "is", "would", "can"):
        return any(t.plain in _COMES for t in tokens[i + 1 : i + 4])
    return tokens[i].plain in _GOES_ON


_COMES = frozenset(("come", "coming", "there", "in", "join", "joining", "attend", "attending", "it", "both", "free"))


def _me_first(sentence: Sentence, guests: set[str]) -> Iterator[Count]:
    """ "Me and Luis", "just me, Sam and the baby": the writer and who is called by name, and nothing else but coming."""
    tokens = sentence.tokens
    i = next((k for k, t in enumerate(tokens) if t.plain in ("me", "myself") and sentence.free(k)), None)
    if i is None or not _led(tokens, i):
        return
    found, j = People(i, i + 1, {"adults": 1}, me=True), i + 1
    while j < len(tokens) and tokens[j].plain in _JOINS:
        listed = tokens[j].plain == ","
        while j < len(tokens) and tokens[j].plain in _JOINS:
            j += 1
        more = (item(tokens, j, True) or _little(sentence, j)) if j < len(tokens) else None
        if more is not None and more.total and not more.unknown_number and more.last > j:
            found.merge(more)
        elif (
            j < len(tokens)
            and sentence.free(j)
            and _a_name(tokens[j], lower=not listed)
            and tokens[j].plain not in guests
        ):
            found.add("adults", 1)
            found.names, found.last = found.names + 1, j + 1
        else:
            break
        j = found.last
    if found.names and _ends(tokens, found.last):
        yield Count(i, found.last, found.party(), False, PLAIN)


def _little(sentence: Sentence, i: int) -> People | None:
    """ "Little Max (3)", "Ella, 5": somebody by name with an age."""
    found = Members(sentence).named_at(i)
    return found if found is not None and not found.names else None


def _with_somebody(sentence: Sentence, guests: set[str]) -> Iterator[Count]:
    """ "Coming with Jess": one more, called by name."""
    tokens = sentence.tokens
    for i in range(1, len(tokens) - 1):
        if tokens[i].plain != "with" or not sentence.free(i + 1) or not _led(tokens, i):
            continue
        if _a_name(tokens[i + 1]) and tokens[i + 1].plain not in guests:
            last, party = i + 2, Party(adults=1)
            if last + 1 < len(tokens) and tokens[last].plain in ("and", "&", "+", ","):
                more = item(tokens, last + 1, True)
                if more is not None and more.total and not more.me:
                    more.add("adults", 1)
                    last, party = more.last, more.party()
                elif _a_name(tokens[last + 1]) and tokens[last + 1].plain not in guests:
                    last, party = last + 2, Party(adults=2)
            if _ends(tokens, last):
                yield Count(i, last, party, True, PLAIN)


def _a_name(token: Token, *, lower: bool = False) -> bool:
    """Whether it is somebody's name; with `lower` a word that nothing here knows is one, too ("me and luis")."""
    plain = token.plain
    if lower and plain == token.raw and plain.isalpha() and len(plain) > 2:
        return not is_known(plain) and plain not in words("plain") and known_thing(plain)[1] < 0.5
    cased = token.raw[:1].isupper() and not token.raw.isupper() and plain == token.raw.lower() and plain.isalpha()
    return cased and plain not in _NO_NAMES and not noun_at([token], 0) and known_thing(plain)[1] < 0.5
