"""What to do with a reading: act, ask one question, or stay silent.

A wrong silent change is the worst outcome, then a needless question, then a missed one. So:

- below the bot's own messages a change is made when it is at least 0.8 sure, asked about from 0.5 on;
- in the open chatter of the group only what is 0.9 sure is done, and only if it is plainly about this supper (a
  known dish somebody brings, a size for it); there only what becomes of a dish its writer promised is asked about,
  and an allergy;
- another person's answer, a promise on a condition and a change that clashes with what we know are always asked.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from planning.potluck import Answer, Say
from planning.replies import intents as said
from planning.replies.intents import Intent, Reading, ReplyContext

SURE, ASK, SURE_IN_CHATTER, ASK_IN_CHATTER = 0.8, 0.5, 0.9, 0.7

SURE_NEED = 0.85
"""What is said of an allergy is noted at once from here on, whatever else is asked."""
CLASH = 6
"""A party that grows by so many people or more is confirmed first (common practice, no source)."""

OWN_SURE: dict[type[Intent], float] = {said.TakeTopping: 0.6, said.ChangePromise: 0.6, said.DropPromise: 0.7}
"""What a guest does with what is their own is done at once from here on: the line says what was done and takes it back
with one press. Of the corpus's readings between these and SURE, 31 of 33 are right."""
MORE_AT_ONCE = 2
"""So many more people of the writer's own, named as such, are taken without asking (common practice, no source)."""
MORE_SURE = 0.75

HOSTS = (said.Reschedule, said.MoveTo, said.Resize, said.CallOff)
"""What only a host says of the potluck itself."""


def _clashes(intent: Intent, context: ReplyContext) -> bool:
    """Whether it differs so much from what we know that it may be a slip."""
    if isinstance(intent, said.SetNeeds):
        return intent.cleared and not intent.needs and bool(context.needs)
    if not isinstance(intent, said.SetParty) or context.party is None:
        return isinstance(intent, said.SetParty) and intent.party.total > (CLASH if intent.relative else 12)
    before = context.party.total
    after = before + intent.party.total if intent.relative else intent.party.total
    return after - before >= CLASH or after <= 0


def _about_this_supper(intents: Sequence[Intent]) -> bool:
    """Whether the open chatter is plainly for us: somebody brings a known dish or takes a topping, or
    names a dish they promised."""
    return any(
        isinstance(i, (said.TakeTopping, said.ChangePromise, said.DropPromise))
        or (isinstance(i, said.AddPromise) and bool(i.category) and not i.conditional)
        or (isinstance(i, said.SetAnswer) and not i.implied and i.confidence >= 0.9)
        or (isinstance(i, said.Ask) and i.confidence >= 0.9)
        for i in intents
    )  # fmt: skip


def decide(
    intents: Sequence[Intent], passed: Sequence[str], context: ReplyContext, original: str, *, lost: bool = False
) -> Reading:
    """The reading for these intents; `passed` names why sentences were not read at all; `lost` when words written to
    the bot would come to nothing though they are no mere chatter."""
    if all(i.confidence < ASK for i in intents) and lost and context.addressed and not passed:
        return Reading(question=Say("reply-not-understood"), why=Say("reply-why-nothing", {"reason": "none"}))
    if not intents:
        return Reading(why=Say("reply-why-nothing", {"reason": passed[0] if passed else "none"}))
    if not context.addressed:
        kept = tuple(
            i for i in intents if i.confidence >= SURE_IN_CHATTER and not isinstance(i, (said.Undo, said.Late))
        )
        hosted = tuple(i for i in intents if isinstance(i, HOSTS) and i.confidence >= ASK_IN_CHATTER)
        if hosted and len(hosted) == len(intents):  # the host tells the group: nobody need tell the bot again
            why = Say("reply-why-read", {"words": _words(hosted, original)})
            if any(isinstance(i, said.CallOff) for i in hosted):
                return Reading(hosted, True, why=why)
            if all(isinstance(i, said.Reschedule) and i.confidence >= SURE for i in hosted):
                return Reading(hosted, True, why=why)
            return Reading(hosted, question=question_for(hosted[0], hosted, context, original), why=why)
        others = [i for i in kept if isinstance(i, said.SetAnswer) and i.who != context.writer]
        feared = tuple(i for i in intents if isinstance(i, said.SetNeeds) and _allergy(i) and i.confidence >= ASK)
        doubtful = not kept or others or len(kept) < len(intents) or any(_clashes(i, context) for i in kept)
        if feared and (doubtful or not _about_this_supper(kept)):  # an allergy is asked about rather than lost
            why = Say("reply-why-read", {"words": _words(feared, original)})
            sure = tuple(i for i in feared if i.confidence >= SURE_NEED and not i.cleared)
            if len(sure) == len(intents):  # nothing else is said: there is nothing to ask
                return Reading(feared, True, why=why)
            return Reading(feared, False, question_for(feared[0], feared, context, original), sure, why)
        own = [
            i for i in intents
            if i.confidence >= ASK_IN_CHATTER
            and (isinstance(i, said.DropPromise) or (isinstance(i, said.ChangePromise) and i.dish))
        ]  # fmt: skip
        if doubtful and own and len(own) == len(intents):  # "can Pat take over my slaw?" names what only we know of
            why = Say("reply-why-read", {"words": _words(own, original)})
            return Reading(tuple(own), question=question_for(own[0], own, context, original), why=why)
        if doubtful or not _about_this_supper(kept):
            return Reading(why=Say("reply-why-chatter", {"reason": "unsure"}))
        return Reading(kept, True, why=Say("reply-why-read", {"words": _words(kept, original)}))
    kept = tuple(i for i in intents if i.confidence >= ASK)
    if not kept:
        return Reading(why=Say("reply-why-nothing", {"reason": "unsure"}))
    unsure = [i for i in kept if _unsure(i, kept, context)]
    why = Say("reply-why-read", {"words": _words(kept, original)})
    if not unsure:
        return Reading(kept, True, why=why)
    worst = min(unsure, key=lambda i: isinstance(i, said.SetAnswer) and i.implied)
    asked = question_for(worst, unsure, context, original)
    return Reading(kept, False, asked, _need_not_wait(kept, unsure, context), why)


def _unsure(intent: Intent, kept: Sequence[Intent], context: ReplyContext) -> bool:
    """Whether it must be asked about: what one press takes back, and hurts nobody till then, need be less sure."""
    if _clashes(intent, context):
        return True
    if isinstance(intent, said.SetAnswer) and intent.implied:  # as sure as what it comes from
        reasons = [i for i in kept if _comes_to_yes(i) and getattr(i, "who", context.writer) == context.writer]
        return all(_unsure(i, kept, context) for i in reasons) if reasons else intent.confidence < SURE
    sure = OWN_SURE.get(type(intent), SURE)
    if isinstance(intent, said.DropPromise) and (intent.promise is None or intent.to is not None):
        sure = SURE
    if isinstance(intent, said.SetParty) and intent.relative and 0 < intent.party.total <= MORE_AT_ONCE:
        only = sum(isinstance(i, said.SetParty) for i in kept) == 1
        coming = context.answer is Answer.YES or any(
            isinstance(i, said.SetAnswer) and i.who == context.writer and i.answer is Answer.YES and not i.implied
            for i in kept
        )
        sure = MORE_SURE if only and coming and intent.who == context.writer else SURE
    return intent.confidence < sure


def _need_not_wait(kept: Sequence[Intent], unsure: Sequence[Intent], context: ReplyContext) -> tuple[Intent, ...]:
    """What holds whatever the answer to the question is: not a party while it is in doubt whether they come at all."""
    sure = [
        i for i in kept
        if i not in unsure
        and not isinstance(i, said.Undo)
        and (not isinstance(i, said.SetNeeds) or i.confidence >= SURE_NEED)
    ]  # fmt: skip
    if any(isinstance(i, said.SetNeeds) and i.cleared for i in kept):
        sure = [i for i in sure if not isinstance(i, said.SetNeeds)]
    if any(isinstance(i, said.SetAnswer) and i.who == context.writer and not i.implied for i in unsure):
        sure = [i for i in sure if isinstance(i, (said.SetNeeds, said.Ask))]
    return tuple(sure)


def _allergy(intent: said.SetNeeds) -> bool:
    return not intent.cleared and any(n.severity != "diet" for n in intent.needs)


def question_for(intent: Intent, unsure: Sequence[Intent], context: ReplyContext, original: str) -> Say:
    """One short question about the reading we doubt most; its facts are what would be done."""
    words = original[intent.start : intent.end] or original[:60]
    facts: dict[str, object] = {"words": words}
    if isinstance(intent, said.SetAnswer):
        known = dict(context.guests)
        others = [
            known.get(i.who, i.unknown_name or "") for i in unsure
            if isinstance(i, said.SetAnswer) and i.who != context.writer and i.answer is intent.answer
        ]  # fmt: skip
        if len(others) > 1 and intent.who != context.writer:
            return Say("reply-ask-answers-of", facts | {"answer": intent.answer.value, "names": others})
        name = known.get(intent.who, intent.unknown_name or "")
        facts |= {"answer": intent.answer.value, "name": name if intent.who != context.writer else ""}
        return Say("reply-ask-answer-of" if facts["name"] else "reply-ask-answer", facts)
    if isinstance(intent, said.SetParty):
        facts |= {"people": abs(intent.party.total), "relative": "yes" if intent.relative else "no"}
        fewer = intent.relative and intent.party.total < 0
        return Say("reply-ask-fewer" if fewer else "reply-ask-more" if intent.relative else "reply-ask-party", facts)
    if isinstance(intent, said.SetNeeds):
        same = [i for i in unsure if isinstance(i, said.SetNeeds) and i.cleared is intent.cleared]
        named = dict.fromkeys(n.need for i in same for n in i.needs)
        facts |= {"needs": list(named or dict.fromkeys(context.needs))}
        if intent.who != context.writer and intent.who in dict(context.guests):
            name = dict(context.guests)[intent.who]
            return Say("reply-ask-needs-gone-of" if intent.cleared else "reply-ask-needs-of", facts | {"name": name})
        return Say("reply-ask-needs-gone" if intent.cleared else "reply-ask-needs", facts)
    if isinstance(intent, said.AddPromise):
        facts |= {"dish": intent.dish, "category": intent.category or "unknown"}
        if intent.conditional:
            return Say("reply-ask-promise-if", facts)
        if intent.by is not None:
            name = dict(context.guests).get(intent.by, intent.by_name or "")
            return Say("reply-ask-promise-of", facts | {"name": name})
        return Say("reply-ask-promise" if intent.category else "reply-ask-what-is-it", facts)
    if isinstance(intent, said.ChangePromise):
        dish = dict(context.own_promises).get(intent.promise, "")
        return Say("reply-ask-change", facts | {"dish": dish, "servings": intent.servings or 0})
    if isinstance(intent, said.DropPromise) and intent.to is not None:
        return Say("reply-ask-give", facts | {"dish": intent.dish, "name": dict(context.guests).get(intent.to, "")})
    if isinstance(intent, said.DropPromise):
        return Say("reply-ask-drop" if intent.promise else "reply-ask-drop-which", facts | {"dish": intent.dish})
    if isinstance(intent, said.AddPerson):
        names = [i.name for i in unsure if isinstance(i, said.AddPerson)]
        return Say("reply-ask-person", facts | {"name": intent.name, "names": names})
    if isinstance(intent, said.TakeTopping):
        return Say(
            "reply-ask-topping", facts | {"toppings": [i.name for i in unsure if isinstance(i, said.TakeTopping)]}
        )
    if isinstance(intent, said.Resize):
        return Say("reply-ask-size", facts | {"people": intent.people})
    if isinstance(intent, said.Reschedule):
        return Say("reply-ask-reschedule", facts | {"when": intent.words})
    if isinstance(intent, said.MoveTo):
        return Say("reply-ask-move", facts | {"place": intent.place})
    return Say(f"reply-ask-{intent.kind}", facts)


def _words(intents: Sequence[Intent], original: str) -> str:
    pieces = [original[i.start : i.end] for i in sorted(intents, key=lambda i: i.start) if i.end > i.start]
    return " … ".join(dict.fromkeys(p.strip() for p in pieces))[:200]


def _comes_to_yes(intent: Intent) -> bool:
    if isinstance(intent, said.SetParty):
        return not intent.relative or intent.party.total > 0
    if isinstance(intent, said.AddPromise):
        return not intent.conditional and intent.by is None
    return isinstance(intent, said.TakeTopping) or (isinstance(intent, said.Late) and intent.at is not None)


def with_implied(intents: list[Intent], context: ReplyContext) -> list[Intent]:
    """Adds the yes that "3 of us" or "I'll bring slaw" comes to, when the writer has not said otherwise."""
    if any(isinstance(i, said.SetAnswer) and i.who == context.writer for i in intents):
        return intents
    if context.answer is Answer.YES or any(isinstance(i, (said.Undo, said.DropPromise)) for i in intents):
        return intents
    if any(isinstance(i, said.Ask) for i in intents) and not any(
        isinstance(i, said.AddPromise) and i.confidence >= SURE for i in intents
    ):
        return intents
    mine = [i for i in intents if getattr(i, "who", context.writer) == context.writer]
    reasons = [i for i in mine if _comes_to_yes(i)]
    if not reasons or context.answer is Answer.NO:
        return intents
    first = max(reasons, key=lambda i: i.confidence)
    implied = said.SetAnswer(
        context.writer, Answer.YES, False, True, start=first.start, end=first.end, confidence=min(first.confidence, 0.9)
    )
    return [implied, *intents]


def tidy(intents: list[Intent]) -> list[Intent]:
    """One answer, one party, no promise twice; the last word counts."""
    kept: list[Intent] = []
    for intent in intents:
        if isinstance(intent, said.SetAnswer):
            same = next((i for i in kept if isinstance(i, said.SetAnswer) and i.who == intent.who), None)
            if same is not None:
                kept.remove(same)
                if same.answer is not intent.answer and Answer.MAYBE not in (same.answer, intent.answer):
                    intent = replace(intent, confidence=min(intent.confidence, 0.82))
        if isinstance(intent, said.SetParty) and not intent.relative:
            kept = [i for i in kept if not (isinstance(i, said.SetParty) and not i.relative)]
        if isinstance(intent, said.AddPromise) and any(
            isinstance(i, said.AddPromise) and i.dish.lower() == intent.dish.lower() for i in kept
        ):
            continue
        kept.append(intent)
    named = {i.category for i in kept if isinstance(i, said.AddPromise) and not i.vague}
    return [i for i in kept if not (isinstance(i, said.AddPromise) and i.vague and i.category in named)]
