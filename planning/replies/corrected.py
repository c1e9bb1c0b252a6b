"""What a message says in two halves that belong together, in any language: how many more and how many that makes,
what is no longer brought and what instead, more of it and for how many.
"""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import replace

from planning.potluck import AGE_GROUPS, Party
from planning.replies.intents import (
    AddPromise,
    ChangePromise,
    DropPromise,
    Intent,
    ReplyContext,
    SetParty,
)

SURE, SETTLED, AFTER_A_DROP = 0.9, 0.88, 0.6
MOST_WORDS_OF_A_CHANGE = 9
LONGEST = 400
"""So many characters of a message are looked at for a dish that is none any more."""
_TOTAL = re.compile(
    r" (?:so|that makes|makes|makes us|makes it|we are|we will be|now we are|in all|total|altogether|(?<!no )somos|seremos|en total) (?:now |us |ya |ahora )?(?P<n>[0-9]{1,2})(?= $| ,| \.| now| in all| of us| total| then| people| ahora| en total| personas| ya)"
)
_NOT_SO_MANY = re.compile(r" (?:not|no somos|no seremos|ya no somos) (?P<n>[0-9]{1,2}) ")
_PLUS = re.compile(r"\+ ?(?P<n>[0-9]{1,2}) ")
_ADULTS = re.compile(r" (?P<n>[0-9]{1,2}) (?:adults?|grown ?-?ups?|adultos?|mayores|grandes) ")
_MORE_FOR = re.compile(
    r"^ ?(?:(?:ok|so|then|well|and|bueno|pues|entonces|y) (?:, )?)*(?:(?:i|we) (?:will |am going to |can )?(?:make|bring|do|cook|making|bringing)|(?:yo )?(?:hago|llevo|preparo|pongo|cocino|traigo|hare|llevare|haremos|hacemos|llevamos)) (?:some |a bit )?(?:more|mas)(?: of it)?(?: then)? ,? ?(?:for|enough for|to feed|para|como para) (?:about |unas |unos )?(?P<n>[0-9]{1,3})(?: (?:in all|in total|total|altogether|then|now|people|en total|personas|ahora))* $"
)
_NO_FIRST = re.compile(r"^(?:[^\W\d_]+ )?no (?P<rest>.+)$")
_NO_LAST = re.compile(r"^[\s,]*(?P<dish>[^,;.!?]{3,40}?)\s+no\s*[,;.]\s*(?P<rest>[^?]{3,})$", re.IGNORECASE)
_INSTEAD = re.compile(r"\s+(?:instead|then|mejor|entonces|en su lugar)\s*[.!]*$", re.IGNORECASE)

Read = Callable[[str], Sequence[Intent]]
"""Reads words of the same message by themselves, as if they answered what is brought."""


def corrected(found: list[Intent], plain: str, text: str, context: ReplyContext, again: Read) -> list[Intent]:
    """`plain` are the message's words, `text` as typed; `again` reads a part of it."""
    padded = f" {' '.join(plain.split())} "
    found = _more_for(found, padded, context)
    found = _total(found, padded, context)
    found = _instead(found, text, context, again)
    found = _weighed(found, text)
    if not context.addressed and len(padded.split()) <= MOST_WORDS_OF_A_CHANGE:
        # "My salad is for 20 now" names what only its cook and we know of.
        found = [
            replace(i, confidence=max(i.confidence, 0.92))
            if isinstance(i, ChangePromise) and i.servings and i.confidence >= 0.85
            else i
            for i in found
        ]
    return found


_WEIGHS = re.compile(
    r"[.!;]\s*(?:it['’]?s |it is |about |around |a |an |the |es |son |de |uno de |unos )*(?P<n>[0-9]{1,3}(?:[.,][0-9])?)[ -]?(?P<unit>lbs?|pounds?|pounder|kgs?|kilos?|libras?)\b[^.!?;]*",
    re.IGNORECASE,
)
_FROZEN = re.compile(r"\b(?:frozen|congelad[oa])\b", re.IGNORECASE)
LB_PER_KG = 2.20462
"""By the international definition of the pound."""


def _weighed(found: list[Intent], text: str) -> list[Intent]:
    """ "I'll do the turkey! 16 lb frozen one": what it weighs, and that it is frozen, said in the next sentence."""
    brings = [i for i in found if isinstance(i, AddPromise) and not i.vague]
    if len(brings) != 1 or brings[0].quantity or brings[0].servings or not brings[0].end:
        return found
    said = _WEIGHS.match(text, brings[0].end)
    if said is None:
        return found
    weight = float(said["n"].replace(",", "."))
    pounds = weight * LB_PER_KG if said["unit"][:1].lower() == "k" else weight
    unit = "kg" if said["unit"][:1].lower() == "k" else "lb"
    frozen = round(pounds, 1) if _FROZEN.search(said.group()) else brings[0].frozen_lb
    weighed = replace(brings[0], quantity=f"{said['n']} {unit}", frozen_lb=frozen, end=said.end())
    return [weighed if i is brings[0] else i for i in found]


def _more_for(found: list[Intent], plain: str, context: ReplyContext) -> list[Intent]:
    """ "I'll make more, for 22 in all" from the cook of one dish."""
    said = _MORE_FOR.match(plain)
    if said is None or len(context.own_promises) != 1 or any(isinstance(i, ChangePromise) for i in found):
        return found
    return [ChangePromise(context.own_promises[0][0], float(said["n"]), confidence=SETTLED)]


def _total(found: list[Intent], plain: str, context: ReplyContext) -> list[Intent]:
    """A party told by how many more and by how many that makes: where both agree nothing is in doubt."""
    said = _TOTAL.search(plain)
    if said is None or context.asked is not None:
        return found
    whole = int(said["n"])
    mine = [i for i in found if isinstance(i, SetParty) and i.who == context.writer]
    more = next((i for i in mine if i.relative and i.party.total > 0), None)
    plus = _PLUS.search(plain)
    if plus is not None and int(plus["n"]) + 1 == whole:
        return _told(found, mine, Party(whole), context)
    known = context.party
    if known is None or whole <= known.total:
        return found
    by = more.party if more is not None else Party(0)
    left = whole - known.total - by.total
    adults = _ADULTS.search(plain)
    denied = _NOT_SO_MANY.search(plain)
    agreed = left == 0 or (left > 0 and adults is not None and int(adults["n"]) == left)
    if more is not None and agreed:
        return _told(found, mine, _sum(known, by, max(left, 0)), context)
    if more is None and denied is not None and int(denied["n"]) == known.total:
        return _told(found, mine, _sum(known, Party(0), left), context)
    return found


def _sum(known: Party, by: Party, adults: int) -> Party:
    counts = {group: getattr(known, group) + getattr(by, group) for group in AGE_GROUPS}
    return Party(**(counts | {"adults": counts["adults"] + adults}))


def _told(found: list[Intent], mine: list[SetParty], party: Party, context: ReplyContext) -> list[Intent]:
    start = min((i.start for i in mine), default=0)
    end = max((i.end for i in mine), default=0)
    rest = [i for i in found if i not in mine]
    return [*rest, SetParty(context.writer, party, start=start, end=end, confidence=SURE)]


def _instead(found: list[Intent], text: str, context: ReplyContext, again: Read) -> list[Intent]:
    """ "Flan no, tres leches": what comes in place of what is no longer brought."""
    if not context.own_promises or text.rstrip().endswith("?"):
        return found
    drops = [i for i in found if isinstance(i, DropPromise) and i.promise is not None and i.to is None]
    brings = [i for i in found if isinstance(i, AddPromise)]
    if len(drops) == 1 and brings:
        return [
            replace(i, confidence=max(i.confidence, SETTLED)) if i in brings and _likely(i) else i for i in found
        ]  # fmt: skip
    if len(drops) == 1 and len(found) == 1 and drops[0].end:
        at = drops[0].end
        dropped = dict(context.own_promises).get(drops[0].promise or "", "").casefold()
        apart = _APART.match(text[at:]) is not None
        more = [i for i in _brought(text[at:], at, again) if _dish(i) != dropped] if apart else []
        return [replace(drops[0], confidence=max(drops[0].confidence, SETTLED)), *more] if more else found
    if drops:
        return found
    said = _NO_LAST.match(text.strip()[:LONGEST])
    named = _own_named(said["dish"], context) if said is not None else None
    if said is None or named is None:
        return found
    more = _brought(said["rest"], said.start("rest"), again)
    if not more:
        return found
    drop = DropPromise(named, dict(context.own_promises)[named], start=0, end=said.end("dish"), confidence=SETTLED)
    return [drop, *more]


_APART = re.compile(r"\s*[,;.–-]")


def _dish(intent: Intent) -> str:
    return intent.dish.casefold() if isinstance(intent, AddPromise) else ""


def _brought(words: str, offset: int, again: Read) -> list[Intent]:
    bare = words.lstrip(" ,.;-")
    offset += len(words) - len(bare)
    made = [i for i in again(_INSTEAD.sub("", bare)) if isinstance(i, AddPromise) and _likely(i)]
    return [replace(i, start=i.start + offset, end=i.end + offset, confidence=SETTLED) for i in made]


def _likely(intent: Intent) -> bool:
    return isinstance(intent, AddPromise) and intent.confidence >= AFTER_A_DROP and bool(intent.category) and not intent.conditional and intent.by is None  # fmt: skip


def _own_named(words: str, context: ReplyContext) -> str | None:
    """The writer's own dish that these words are the name of, and no more."""
    said = {w for w in re.findall(r"[^\W\d_]{3,}", words.casefold()) if w not in _ARTICLES}
    for promise, dish in context.own_promises:
        if said and said <= set(re.findall(r"[^\W\d_]{3,}", dish.casefold())):
            return promise
    return None


_ARTICLES = frozenset(("the", "las", "los", "the", "mis", "our", "mejor", "wait", "bueno", "pues", "sorry"))
