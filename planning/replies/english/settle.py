"""Needs seen from the whole message: what is said of somebody else's, and how many "all of us" are."""

from __future__ import annotations

import re
from dataclasses import replace

from planning.potluck import Party
from planning.replies.english.foods import last_kin
from planning.replies.english.illness import read_lost
from planning.replies.english.need_rules import BECAUSE
from planning.replies.english.needs import EVERYBODY, read_needs, read_withdrawn
from planning.replies.english.whose import leave_out, of_guests
from planning.replies.intents import AddPerson, Intent, ReplyContext, SetNeeds, SetParty
from planning.replies.text import Sentence

_TOLD_OF = re.compile(r"^ (?:(?:and|but|so|oh|ps|also|because|as|,) )*(?:he|she|they|nobody|no one|none) ")


def read_told(sentence: Sentence, context: ReplyContext, earlier: str) -> list[Intent]:
    """What is said of somebody else is not for us, but for a need of one of the writer's own: "she's coeliac" after
    "with my mum", or with the person named behind it; and an illness named beside a food is asked about."""
    if not sentence.question and BECAUSE.search(sentence.left) is not None:
        return read_needs(sentence, context, earlier)  # "whoever does dessert, no kiwi, my daughter swells up"
    if not context.addressed or sentence.question:
        return []
    leave_out(sentence)
    if told := of_guests(sentence, context, read_needs):
        return told
    whole = _TOLD_OF.match(sentence.text)
    if whole is not None and (last_kin(f"{earlier} {sentence.text}") or "nobody" in whole[0] or "no one" in whole[0]):
        found = read_needs(sentence, context, earlier)
        if found:
            return found
    return read_withdrawn(sentence, context) or read_lost(sentence, context)


def settle(found: list[Intent], context: ReplyContext) -> list[Intent]:
    """Needs seen from the whole message: "we're all vegan (4 of us)" is four, "no allergies" beside a need denies
    only the others, and what a person has who is added here is that person's."""
    party = next((i.party for i in reversed(found) if isinstance(i, SetParty) and not i.relative), context.party)
    everybody = party.total if party is not None and party.total > 1 else 1
    added = {i.name.split()[-1].lower(): i.name for i in found if isinstance(i, AddPerson)}
    found = _of_the_other(found, party)
    needed = any(isinstance(i, SetNeeds) and i.needs and not i.cleared for i in found)
    settled: list[Intent] = []
    for intent in found:
        if isinstance(intent, SetNeeds):
            if intent.cleared and not intent.needs and needed:
                continue
            needs = tuple(replace(n, count=everybody) if n.count == EVERYBODY else n for n in intent.needs)
            intent = replace(intent, needs=needs)
        settled.append(intent)
    return settled if not added else [_of_added(i, added) for i in settled]


_PRONOUN = re.compile(r"(?:he|she|they)\b|(?:he|she|they)['’]", re.IGNORECASE)


def _of_the_other(found: list[Intent], party: Party | None) -> list[Intent]:
    """ "Me plus one. He's allergic to shellfish": of two people the one who is not the writer is no stranger."""
    told = next((k for k, i in enumerate(found) if isinstance(i, SetParty)), None)
    if told is None:
        return found
    said = found[told]
    one = isinstance(said, SetParty) and (said.party.total == 1 if said.relative else said.party.total == 2)
    if not one or sum(isinstance(i, SetNeeds) for i in found) != 1:
        return found
    return [
        replace(i, confidence=0.9, member=i.member or "guest")
        if k > told and isinstance(i, SetNeeds) and i.confidence == 0.6 and not i.cleared and i.who == _writer(said)
        else i
        for k, i in enumerate(found)
    ]


def _writer(said: Intent) -> str:
    return said.who if isinstance(said, SetParty) else ""


def _of_added(intent: Intent, added: dict[str, str]) -> Intent:
    if not isinstance(intent, SetNeeds) or intent.member is None:
        return intent
    names = {"mother": ("mum", "mom", "mam", "mummy", "mommy"), "father": ("dad", "daddy")}
    for word in (intent.member, *names.get(intent.member, ())):
        if word in added:
            return replace(intent, member=added[word])
    return intent
