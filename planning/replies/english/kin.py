"""Who comes along or stays away, told one by one: "my mother comes too", "the kids can't come", "bringing my wife"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from dataclasses import replace

from planning.potluck import AGE_GROUPS, Party
from planning.replies.english.counts import MORE, only, only_group
from planning.replies.english.lexicon import number_of, whole_number
from planning.replies.english.lists import Members
from planning.replies.english.members import item
from planning.replies.english.persons import DETERMINERS, People, named_kin
from planning.replies.english.stays import AWAY
from planning.replies.intents import AddPerson, Intent, ReplyContext, SetParty
from planning.replies.text import Sentence

_COMES_TOO = re.compile(
    r"^ (?:(?: ,)? ?(?:(?:who )?(?:is|are|will be|would like to|would love to|wants to|want to|wants|would like|asks to|decided to|has decided to|shall|will|can|might|may)))? ?(?:also |now )?(?:comes?|coming|joins?|joining|be coming|come along|tagging|tag|attend|attending|be there|make it|in(?= $| ,| too| as| and| for (?:it|this)| also))\b(?: (?:along|too|as well|with (?:me|us)))*"
)
_COMES_WITH = re.compile(
    r"(?:^|, |\bcom(?:e|ing)(?: [a-z]+){1,4} |\b(?:come|coming|be there|make it|yes|in|join|there|attend|attending|joining|us|too|all|up|over|by|round|along|present|(?:at|around|about) [a-z0-9]+) (?:together |along )?)with$"
)
_LEAD = re.compile(
    r" (?:(?:put|write|sign|note|mark|include|list)(?: down)?|accompanied by|joined by|in (?:the )?company (?:of|with)|escorted by|bringing|bring|with|along with|plus|\+|taking|and|add|adding|including|forgot(?: to (?:count|mention|include|add|say))?|have|having)(?: along| also)?$"
)
_MISSING = re.compile(rf"^ (?:(?:can|will|is|are|am|could) not (?:be )?(?:come|coming|make|join|joining|able|attend|attending|be)(?: it| there| to (?:come|make it|join))?|{AWAY})(?: (?:after all|now|this time|sadly))*(?= )")
_PREDICATE = re.compile(
    r"^ , (?:who )?[^,]{1,40} ,(?= )|^ (?:\x00+ )+(?:and|but|so) |^ (?:is|are) (?:a |an |also |strictly |both )*[a-z\x00-]+(?: [a-z\x00-]+)?(?: ,)? (?:and|but) (?=(?:is |are |will |would |wants |also )*(?:com|join|there))"
)
"""Words between the person and the coming ("my sister is vegetarian and comes too")."""
_TOLD = re.compile(r" (?:(?:is|are|has|have|can|does|not|also|who|,) )*\x00")
"""After a person: something else was told of them."""
_TOO = re.compile(r"^ (?:too|as well|also|along with (?:me|us))(?= $| ,| and )")
_BEGINS = re.compile(
    r"(?:^|,|:|-)(?: (?:and|also|plus|oh|yes))*$|\b(?:yes|coming|in|there|me|myself|us|come|join) (?:, )?(?:and|plus|&|\+)$"
)
"""Where "my sister too" says that she comes: at the beginning, or joined to a coming."""
_SO_MANY_LEFT = re.compile(r" (?:so|now|,)(?: (?:it is|it will be|that leaves|now|that is|there are|we are|only|just))* (?:(?:me|i|us) (?:and|\+|&) (?:the|my|our)|(?:just|only) (?:me|us|the)|[2-9] of us|(?:two|three|four|five|six) of us)\b")
"""Who is left is said, too."""
_BARE_KIN = ("husband", "wife", "partner", "kids")


def read_absent(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """ "The kids can't come": fewer with the writer; asked about, for it may not be the writer's kids."""
    tokens, members = sentence.tokens, Members(sentence)
    if _SO_MANY_LEFT.search(sentence.text):
        return []
    for i in range(len(tokens)):
        bare = named_kin(tokens[i]) or tokens[i].plain in _BARE_KIN
        if (
            not (bare or tokens[i].plain in ("my", "our", "the", "both"))
            or not sentence.free(i)
            or (bare and i and tokens[i - 1].plain in DETERMINERS)
        ):
            continue
        found = members.at(i) if not bare else item(tokens, i, True)
        if found is None or found.me or not found.total or not found.household:
            continue
        before = tokens[i - 1].plain if i else ""
        left_out = before in ("without", "minus", "sans") or (
            before in ("leave", "leaving") and bool(_LEFT & {t.plain for t in tokens[found.last : found.last + 2]})
        )
        missing = _MISSING.match(sentence.left[sentence.offset(found.last) - 1 :])
        told_away = missing is not None and " not " not in missing[0]
        if told_away and (context.party is None or context.party.total < 2 or _NO_ANSWER.search(sentence.text)):
            missing = None
        if not left_out and missing is None:
            continue
        last = found.last + (len(missing[0].split()) if missing is not None else 0)
        if context.party is None and left_out:
            sentence.take(i - 1, found.last)
            return []  # "coming without the kids": nobody has counted them
        if context.party is None and _OWN_COMING.search(sentence.text):
            return []  # "hubby can't make it but I'm coming": nobody has counted him yet
        start, end = sentence.span(i - left_out, last)
        sentence.take(i, max(last, found.last + 3))
        counts = dict(found.counts)
        if found.unknown_number and context.party is not None:
            group = next(iter(found.counts))
            counts = {group: max(1, getattr(context.party, group))}
        less = Party(**{g: -counts.get(g, 0) for g in AGE_GROUPS})
        with_them = context.party is not None and all(
            getattr(context.party, g) - n >= (g == "adults") for g, n in counts.items()
        )
        theirs = tokens[i].plain != "the" or found.counts.keys() <= {"children", "toddlers", "teens", "infants"}
        sure = 0.88 if with_them and theirs else 0.75
        return [SetParty(context.writer, less, True, start=start, end=end, confidence=sure)]
    return []


_NOBODY_YET = frozenset(("date", "guest", "plus one", "plus-one", "someone", "somebody"))
_NO_ANSWER = re.compile(r" (?:i|we) (?:have|need|will have|must|had)(?: to)? (?:to )?(?:cancel|miss|skip|pass)| (?:can|will) not | (?:cancel|miss) ")
_LEFT = frozenset(("out", "with", "home", "behind", "at"))
_OWN_COMING = re.compile(r"(?:^| but| though| so| ,| yes) (?:i|we) (?:am|are|will|can|would) (?!not)")


def read_kin(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """ "Bringing my wife", "with the two kids", "my mother comes too"."""
    tokens, members = sentence.tokens, Members(sentence)
    for i in range(len(tokens)):
        if not sentence.free(i) or (i and tokens[i - 1].plain in DETERMINERS):
            continue
        found = members.at(i)
        if found is None or not found.total or found.me:
            continue
        if tokens[i].plain not in DETERMINERS and whole_number(tokens, i) is None and not named_kin(tokens[i]):
            continue  # "how many people are coming"
        joined = _joined(sentence, i, found, context)
        if joined is not None:
            return joined
    return []


def _joined(sentence: Sentence, i: int, found: People, context: ReplyContext) -> list[Intent] | None:
    """The people at token `i` as more of the party or as a person of their own; None when they don't come."""
    tokens = sentence.tokens
    after = sentence.left[sentence.offset(found.last) - 1 :]
    before = sentence.text[: sentence.offset(i) - 1]
    lead = _LEAD.search(before)
    comes = _COMES_TOO.match(after)
    if comes is None and context.addressed and _BEGINS.search(before) is not None:
        comes = _TOO.match(after)
    told = _PREDICATE.match(after) if comes is None else None
    if told is not None:
        comes = _COMES_TOO.match(after[told.end() - 1 :])
    if (
        named_kin(tokens[found.last - 1])
        and found.last < len(tokens)
        and tokens[found.last].raw[:1].isupper()
        and comes is None
    ):
        return None
    start, end = sentence.span(i, found.last)
    if comes is None and lead is not None and lead[0].strip() == "and" and _TOLD.match(after):
        return None  # "I'm veggie and my husband is allergic to nuts"
    if comes is None and lead is not None and lead[0].strip() in ("have", "having") and not after.startswith((" with me ", " with us ", " along ")):
        return None
    if comes is None and (lead is None or (lead[0].strip() in ("have", "and") and not found.household and not after.startswith((" with me ", " with us ")))):
        return None
    if lead is not None and lead[0].strip() == "with" and i > 1 and not _COMES_WITH.search(before):
        return None
    maybe = re.match(r" (?:might|may|wants|would)", after) is not None or sentence.question
    last = found.last + (len(comes[0].split()) if comes is not None and told is None else 0)
    sentence.take(i - 1 if lead is not None and i else i, last)
    unnamed = found.kin in _NOBODY_YET or (context.party is not None and tokens[i].plain in ("a", "an", "another"))
    if not found.household and found.total == 1 and not unnamed:
        owner = context.name
        name = f"{owner}'s {found.kin_raw}" if owner else found.kin_raw
        return [AddPerson(name, found.party(), start=start, end=end, confidence=0.6 if maybe else 0.9)]
    loose = lead is not None and lead[0].strip() == "and" and comes is None
    named = (
        i > 2
        and tokens[i - 1].plain in (",", "and", "&", "+")
        and tokens[i - 2].raw[:1].isupper()
        and sentence.free(i - 2)
    )
    if context.asked == "people" and i == 0 and found.last == len(tokens) and not found.unknown_number:
        sentence.take(0, len(tokens))
        return [SetParty(context.writer, found.party(), True, start=start, end=end, confidence=0.6)]
    sure = 0.55 if maybe or found.unknown_number or loose or named else 0.9
    return [SetParty(context.writer, found.party(), True, start=start, end=end, confidence=sure)]


def read_may_bring(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """ "Can I bring my sister?": asked about before anybody is added."""
    if not context.addressed or not re.search(
        r" (?:room|space|seats?|spots?|places?) for |(?:i|we) (?:bring|brought|add|come with)\b| (?:bring|add) |^ (?:can|could|may|is it ok if) (?:my|our) ",
        sentence.left,
    ):
        return []
    match = MORE.search(sentence.left)
    if match is not None and (match["extra"] or match["extra2"]) and "more" in match[0]:
        start, end = sentence.span_of(match)
        n = 1 if match["n"] in ("a", "an", "another") else 2 if match["n"] == "a couple" else number_of(match["n"])
        return [SetParty(context.writer, only(only_group(match["who"]), n), True, start=start, end=end, confidence=0.6)]
    return [replace(i, confidence=min(i.confidence, 0.6)) for i in read_kin(sentence, context)]
