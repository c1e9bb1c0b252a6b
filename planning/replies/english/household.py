"""Who a party is, told in pieces over a whole message: "4 of us. My daughter's 15", "us 4, kids 8 + 10", "2 adults,
Mia is 7". A number of people stands somewhere (the head); every piece beside it tells the age of one or more of them."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from planning.potluck import AGE_GROUPS, Answer, Party
from planning.replies.english.lexicon import NUMBER, number_of
from planning.replies.english.pieces import Piece, piece_at
from planning.replies.english.stays import Absent, absent, spoken, without
from planning.replies.intents import AddPerson, AddPromise, Intent, ReplyContext, SetAnswer, SetParty
from planning.replies.text import Message, Sentence, Token

SURE = 0.9
MOST_TOKENS = 90
"""A longer message is a story."""
_LEAD = r"(?:yes|ok|okay|sure|in|coming|count|me|in|so|and|well|oh|hi|all|the|just|only|now|actually|we|i|are|am|will|be|is|there|it|that|make|makes|from|a|family|party|group|crew|gang|total|of|put|down|for|us|about|definitely|,|:)"
_HEAD = re.compile(
    rf"^ (?:{_LEAD} )*?(?P<n>{NUMBER})(?P<who>(?: (?:of us|of our lot|people|persons|heads|in all|in total|total|altogether|all together|all told|here|coming|from us|from our (?:house|side|end)|for us|now|guests|this time))*)(?= $| ,| \(| -| :| \+| and | with | incl| of (?:which|whom|them|those)| counting| in(?:cluding)? )"
)
_GROWN = re.compile(
    rf"^ (?:{_LEAD} )*?(?P<n>{NUMBER}) (?:adults?|grown-ups?|grown ups?|grownups?|big ones|bigs)(?= $| ,| \(| -| \+| &| and | with | plus )"
)
_US = re.compile(rf"^ (?:{_LEAD} )*?(?:us|we) (?P<n>{NUMBER})(?= $| ,| \(| -)")
_TOTAL = re.compile(
    rf" (?:(?:all|the|we are|there are|party of|family of) )?(?P<n>{NUMBER}) (?:of us|people|persons|in all|in total|total|altogether|now)(?= )"
)
_ADDED = ("and", "plus", "+", "&")


@dataclass
class _Told:
    """What is known of the party so far: by age group how many, and whether their ages were told."""

    open: dict[str, int] = field(default_factory=dict)
    told: dict[str, int] = field(default_factory=dict)

    def move(self, groups: Sequence[str], *, among: Sequence[str]) -> bool:
        """Of those of `among` whose age is open so many get theirs; False when there are not so many."""
        for group in among:
            if self.open.get(group, 0) >= len(groups):
                self.open[group] -= len(groups)
                self.tell(groups)
                return True
        return False

    def tell(self, groups: Sequence[str]) -> None:
        for group in groups:
            self.told[group] = self.told.get(group, 0) + 1

    def party(self) -> Party:
        return Party(**{g: self.open.get(g, 0) + self.told.get(g, 0) for g in AGE_GROUPS})


def told(message: Message, found: Sequence[Intent], context: ReplyContext) -> list[Intent]:
    """The intents, with the party as all pieces of the message tell it."""
    if not context.addressed or message.quoted or sum(len(s.tokens) for s in message.sentences) > MOST_TOKENS:
        return list(found)
    message = replace(message, sentences=tuple(spoken(s) for s in message.sentences))
    known = [i for i in found if isinstance(i, SetParty) and i.who == context.writer]
    own = next((i for i in reversed(known) if not i.relative), None) or next(iter(known), None)
    stay = absent(message)
    found = _without_relatives(found, own, context)
    if own is not None and context.party is not None and (less := _fewer(own, stay, context.party)) is not None:
        return [less if i is own else i for i in found]
    found, own = _without_an_age(message, found, own)
    head = _head(message, own)
    if head is None:
        return list(found)
    if context.party is not None and head.total:
        left = without(context.party, stay)
        if left is not None and stay and left.total == head.party.total:
            return _put(found, own or SetParty(context.writer, left), left, head, [(a.start, a.end) for a in stay])
        if own is not None and own.party == Party(adults=own.party.total):
            found = _grown(found, own, context.party)
            own = next((i for i in found if isinstance(i, SetParty) and not i.relative), own)
    pieces = [
        p for n, s in enumerate(message.sentences) for p in _pieces(s, head.until if n == head.at else 0, head, n)
    ]
    pieces = [p for p in pieces if not any(a.start <= p.start < a.end for a in stay)]
    if not head.total:  # "my kid is 4 and coming along": told of the one counted already
        pieces = [replace(p, refines=p.refines or (p.start < head.span[1] and p.end > head.span[0])) for p in pieces]
    if not any(p.aged for p in pieces):
        return list(found)
    party = _composed(head, pieces)
    if party is None or (own is not None and own.party == party and own.confidence >= SURE and all(own.start <= p.start and p.end <= own.end for p in pieces)):
        return list(found)
    return _put(found, own or SetParty(context.writer, party), party, head, [(p.start, p.end) for p in pieces])


def _without_relatives(found: Sequence[Intent], own: SetParty | None, context: ReplyContext) -> list[Intent]:
    """The intents without "my son can't come" beside "so 2 of us": the number counts it already."""
    if own is None or own.relative:
        return list(found)
    before = context.party.total if context.party is not None else 0
    return [
        i for i in found
        if not (
            isinstance(i, SetParty) and i.relative and i.who == own.who
            and (i.party.total < 0 or (before and before + i.party.total == own.party.total))
        )
        and not (isinstance(i, SetAnswer) and not i.who and i.answer is Answer.NO and own.party.total < before)
    ]  # fmt: skip


def _without_an_age(
    message: Message, found: Sequence[Intent], own: SetParty | None
) -> tuple[list[Intent], SetParty | None]:
    """The intents without a party that is the age of one of it ("all 5, and Ella is only 2")."""
    if own is None or own.relative:
        return list(found), own
    for sentence in message.sentences:
        for i in range(len(sentence.tokens)):
            if sentence.tokens[i].start > own.start:
                break
            piece = piece_at(sentence.tokens, i)
            if piece is not None and piece.aged and sentence.tokens[i].start < own.start < own.end <= sentence.tokens[piece.last - 1].end:
                return [k for k in found if k is not own], None
    return list(found), own


def _fewer(own: SetParty, stay: Sequence[Absent], known: Party) -> SetParty | None:
    """ "The younger lad's got a match, so one less": the one who is not there is of the age told."""
    if not own.relative or own.party.total >= 0 or sum(len(a.groups) for a in stay) != -own.party.total:
        return None
    left = without(known, stay)
    if left is None:
        return None
    less = Party(**{g: getattr(left, g) - getattr(known, g) for g in AGE_GROUPS})
    return replace(
        own, party=less, also=(*own.also, *((a.start, a.end) for a in stay)), confidence=max(SURE, own.confidence)
    )


def _grown(found: Sequence[Intent], own: SetParty, known: Party) -> list[Intent]:
    """A new number for a party whose ages we know: the same number is the same people, and who is added to it by
    relation in the same breath is counted in the number."""
    n = own.party.total
    added = [i for i in found if isinstance(i, AddPerson)]
    if added and n == known.total + sum(i.party.total for i in added):
        party = known
        for i in added:
            party = Party(**{g: getattr(party, g) + getattr(i.party, g) for g in AGE_GROUPS})
        also = tuple((i.start, i.end) for i in added)
        return [
            replace(own, party=party, also=also, confidence=max(SURE, own.confidence)) if i is own else i
            for i in found
            if i not in added
        ]
    if n < known.total or known.adults == known.total:
        return list(found)
    party = replace(known, adults=known.adults + n - known.total)
    return [replace(own, party=party) if i is own else i for i in found]


@dataclass(frozen=True)
class _Head:
    """Where a number of people stands: the sentence, its characters, the first token behind it."""

    at: int
    until: int
    span: tuple[int, int]
    party: Party
    total: bool
    """Whether all are counted in it, so that who is told of beside it is one of them."""
    relative: bool = False


def _head(message: Message, own: SetParty | None) -> _Head | None:
    best: _Head | None = None
    for at, sentence in enumerate(message.sentences):
        for pattern, total in ((_GROWN, False), (_US, True), (_HEAD, True)):
            match = pattern.match(sentence.text)
            if match is None or not 0 < (n := number_of(match["n"])) <= 30:
                continue
            _first, last = sentence.token_range(match)
            number = sentence.token_range(match, "n")[0]
            over = (
                own is not None
                and own.start < sentence.tokens[last - 1].end
                and own.end > sentence.tokens[number].start
            )
            plainly = (
                total
                and own is not None
                and own.party.total < n
                and re.search(r"of us|in all|total|altogether", match[0])
            )
            if own is not None and own.party.total != n and not over and not plainly:
                continue
            if not total and own is not None and own.party != Party(adults=n):
                continue
            span = (sentence.tokens[number].start, sentence.tokens[last - 1].end)
            if best is None or (best.total and total and best.party.adults == n):  # "two. Well, two and a newborn"
                best = _Head(at, last, span, Party(adults=n), total)
            break
    if best is not None:
        return best
    if own is None or (own.party.total < 1):
        return None
    inside = _total_inside(message, own) if not own.relative else None
    if inside is not None:
        return inside
    whole = next(
        (k for k, s in enumerate(message.sentences) if s.tokens[0].start <= own.start < s.tokens[-1].end), None
    )
    if whole is None or own.end <= own.start:
        return None
    tokens = message.sentences[whole].tokens
    last = next((k for k, t in enumerate(tokens) if t.start >= own.end), len(tokens))
    return _Head(whole, last, (own.start, own.end), own.party, False, own.relative)


def _total_inside(message: Message, own: SetParty) -> _Head | None:
    """The total a party begins with, wherever it stands ("we'd love to, all five of us, the youngest is 2")."""
    for at, sentence in enumerate(message.sentences):
        for match in _TOTAL.finditer(sentence.text):
            first, last = sentence.token_range(match)
            span = (sentence.tokens[first].start, sentence.tokens[last - 1].end)
            if number_of(match["n"]) == own.party.total and own.start < span[1] and own.end > span[0]:
                return _Head(at, last, span, Party(adults=own.party.total), True)
    return None


def _pieces(sentence: Sentence, start: int, head: _Head, at: int) -> list[Piece]:
    """The pieces of a sentence from token `start` on."""
    tokens = sentence.tokens
    found: list[Piece] = []
    i = start
    while i < len(tokens):
        piece = (
            piece_at(tokens, i)
            if i == 0 or i == start or _opens(tokens, i) or (found and found[-1].last == i)
            else None
        )
        if piece is None or piece.last <= i:
            i += 1
            continue
        joined = i > 0 and tokens[i - 1].plain in _ADDED
        added = (
            joined
            and at == head.at
            and not any(t.plain in ("is", "are", "turned") and tokens[k - 1].plain != "who" for k, t in enumerate(tokens[i : piece.last], i))
            and (
                all(t.plain in (",", *_ADDED) for t in tokens[start:i])
                or bool(found and found[-1].added and found[-1].last == i - 1)
            )
        )
        found.append(replace(piece, start=tokens[i].start, end=tokens[piece.last - 1].end, added=added))
        i = piece.last
    return found


def _opens(tokens: Sequence[Token], i: int) -> bool:
    before = tokens[i - 1].plain
    return before in (
        ",",
        "(",
        "-",
        ":",
        "+",
        "&",
        "and",
        "plus",
        "with",
        "so",
        "incl",
        "including",
        "of",
        "where",
        "counting",
        "which",
        "whom",
        "them",
        "those",
        "bc",
        "because",
        "but",
        "is",
        "are",
        "as",
        "our",
        "my",
    )


def _composed(head: _Head, pieces: Sequence[Piece]) -> Party | None:
    """The party that head and pieces come to; None where they do not fit."""
    told = _Told(open={g: n for g in AGE_GROUPS if (n := getattr(head.party, g))})
    size = head.party.total
    for piece in pieces:
        if piece.refines:
            among = ("children", "teens", "adults") if not head.relative else ("children", "teens")
            groups = list(piece.groups)
            if (
                not head.total
                and piece.aged
                and all(told.open.get(g, 0) + told.told.get(g, 0) for g in groups)
                and not told.open.get("children")
            ):
                continue  # told already
            if not told.move(groups, among=among):
                return None
            continue
        if head.total and not piece.added:
            if not told.move(piece.groups, among=("adults",)):
                return None
        elif piece.named or piece.added:
            told.tell(piece.groups)
            size += len(piece.groups)
        else:
            continue
        if not piece.aged:  # its ages may still come
            for group in piece.groups:
                told.told[group] -= 1
                told.open[group] = told.open.get(group, 0) + 1
    party = told.party()
    if party.total != size or (head.total and not party.adults):
        return None
    return party


def _put(
    found: Sequence[Intent], own: SetParty, party: Party, head: _Head, told: Sequence[tuple[int, int]]
) -> list[Intent]:
    """The intents with this party in place of the one read before, and without what its words were taken for."""
    spans = [head.span, *told]
    if own.start < head.span[1] and own.end > head.span[0]:
        spans.append((own.start, own.end))
    made = replace(
        own,
        party=party,
        start=head.span[0],
        end=head.span[1],
        also=tuple(spans[1:]),
        confidence=max(SURE, own.confidence),
    )
    kept: list[Intent] = []
    for intent in found:
        over = any(intent.start < end and intent.end > start for start, end in spans)
        if isinstance(intent, (SetParty, AddPerson)) and (intent is own or over):
            continue
        if isinstance(intent, AddPromise) and over and intent.confidence < 0.9:
            continue
        kept.append(intent)
    return [*kept, made]
