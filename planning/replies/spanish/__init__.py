"""Spanish: the words in `data/words_es.csv`, `verbs_es.csv` and `dishes_es.csv`, the rules here, put together in `read`."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from planning.potluck import Answer
from planning.replies.hosted import read_hosted
from planning.replies.intents import (
    AddPerson,
    AddPromise,
    Ask,
    DropPromise,
    Intent,
    Late,
    ReplyContext,
    SetAnswer,
    SetNeeds,
    SetParty,
    Undo,
)
from planning.replies.spanish import (
    answers,
    doubt,
    kitchens,
    needs,
    offers,
    open_chat,
    others,
    people,
    questions,
    spelling,
    traps,
    withdrawals,
)
from planning.replies.spanish.fewer import changed_by
from planning.replies.spanish.messages import message_of
from planning.replies.text import Message, Sentence

__all__ = ["message_of", "people", "read"]

MOST_WORDS = 70
_ORDER = re.compile(
    r"^ (?:(?:porfa|por favor|bot|oye|che|ok|,) )*(?:(?:me|nos) )?(?:puedes|podes|podeis|podrias|puede|pueden|podrian) (?:por favor )?(?:apunt|anot|pon|cambi|quit|borr|sum|agreg|actualiz|marc)[a-z]* "
)
"""A question only in form."""
_TAG = re.compile(
    r"^ ?(?:(?:te|os|les|le) (?:parece|va|viene|late)(?: bien)?|vale|ok|okey|no|si|verdad|eh|sale|de acuerdo|esta bien|va|cierto|puede ser|que (?:os|te|les|tal|dicen|opinan)(?: parece)?|se puede|algun problema|hay problema|alguna objecion)(?: (?:entonces|o no|por fa|bien))* ?$"
)
_TURN = re.compile(
    r" (?:pero|aunque|lastima que|solo que|que pena pero)(?= (?:lamentablemente |desgraciadamente |esta vez |al final |me temo que |ese dia )*(?:no|me es imposible|imposible|tengo|trabajo|estoy|me toca) )"
)


def read(message: Message, context: ReplyContext) -> tuple[list[Intent], list[str]]:
    """All that the message says for us, and the reasons for what was passed over."""
    found: list[Intent] = []
    passed: list[str] = []
    if traps.joking(message):
        return [], ["joke"]
    if not message.sentences and context.addressed and any(s in "👍✅🙋🙌💯👌" for s in message.symbols):
        return [SetAnswer(context.writer, Answer.YES, confidence=0.6)], []
    if context.asked == "servings" and context.own_promises and (feeds := withdrawals.read_servings(message, context)):
        return feeds, []
    earlier = ""
    for whole in _unhosted(message, context, found):
        for sentence in _parts(whole):
            if len(sentence.tokens) > MOST_WORDS:
                passed.append("long")
                continue
            said, why = _said(sentence, context, earlier)
            earlier = sentence.text[:400]
            found += said
            passed += why
    found = _settled(needs.harden(message, found), message, context)
    found = doubt.doubt(message, found, context)
    if message.mended:
        found = spelling.less_sure(message, found)
    if not context.addressed:
        found = open_chat.kept(message, found, context)
    return found, passed


_WOULD_LOVE = re.compile(r"^ (?:(?:ay|uy|a mi|que pena|,) )*(?:(?:me|nos) (?:encantaria|gustaria)|quisiera|quisieramos|ojala pudiera|yo iria|iriamos)")
""" "I'd love to, but I'm down with something"."""
_TO_BRING = re.compile(r" (?:llevar|traer|hacer|preparar|poner|aportar|cocinar)(?:les|te|os|lo|la)? ")


def _said(sentence: Sentence, context: ReplyContext, earlier: str = "") -> tuple[list[Intent], list[str]]:
    """What one sentence says, and why it was passed over."""
    if (undo := questions.read_undo(sentence)) and not sentence.question:
        rest = (
            answers.read_answer(sentence, context)
            if re.search(r" (?:si|no) (?:voy|vamos|puedo|podemos) ", sentence.text)
            else []
        )
        return rest or list(undo), []
    sentence = questions.straight(sentence)
    if _ORDER.match(sentence.text):
        sentence = Sentence(sentence.tokens, False)
    swaps = (
        withdrawals.read_withdrawals(sentence, context, earlier)
        if context.own_promises and not sentence.question
        else None
    )
    if swaps:
        return withdrawals.not_answered([*swaps, *_answer_beside(sentence, context, swaps)], context), []
    asked = questions.read_question(sentence, context)
    if asked:
        return list(asked), []
    told = others.read_others(sentence, context)
    if told:
        return told, []
    brought = others.read_kin_brings(sentence, context) if context.addressed else []
    trap = traps.blocked(sentence, context)
    if brought and trap in (None, "reported"):
        return brought, []
    longing = trap is None and _WOULD_LOVE.match(sentence.text) and not _TO_BRING.search(sentence.text)
    if (longing or trap in ("hypothetical", "others", "past")) and (turn := _TURN.search(sentence.text)) is not None:
        # "I'd love to come but I can't": what follows is what holds.
        first = sentence.token_range(turn)[1]
        turned = answers.read_answer(Sentence(sentence.tokens[first:], False), context)
        if not turned and _WOULD_LOVE.match(sentence.text):
            start, end = sentence.span(0, len(sentence.tokens))
            turned = [SetAnswer(context.writer, Answer.NO, start=start, end=end, confidence=0.82)]
        return turned, []
    if trap == "reported" and context.addressed:  # what the doctor said of an allergy is asked about
        heard = [i for i in needs.read_needs(sentence, context) if isinstance(i, SetNeeds) and not i.cleared]
        return [replace(i, confidence=min(i.confidence, 0.7)) for i in heard], [] if heard else [trap]
    late = questions.read_late(sentence, context)
    if trap in ("past", "elsewhere"):  # "can't, I'm at work that day"
        feared = [
            i
            for i in needs.read_needs(sentence, context)
            if isinstance(i, SetNeeds) and not i.cleared and i.needs[0].severity != "diet"
        ]
        if (
            feared
            and trap == "past"
            and re.search(r" (?:no puede|es|son|soy|somos|tiene|tengo|esta|puede|la|lo) ", sentence.text)
        ):
            return list(feared), []  # "can't eat shellfish, last time his throat closed"
        given = [
            i for i in answers.read_answer(sentence, context) if isinstance(i, SetAnswer) and i.answer is not Answer.YES
        ]
        return [*late, *given], [] if late or given else [trap]
    if trap is not None:
        return list(late), [trap]
    return _statement(sentence, context), []


def _statement(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    found: list[Intent] = []
    found += questions.read_late(sentence, context)
    found += needs.read_needs(sentence, context)
    if sentence.question:
        return found
    needed = any(isinstance(i, SetNeeds) for i in found)
    given = answers.read_answer(sentence, context)
    found += [
        i for i in given if not any(isinstance(n, (SetNeeds, Late)) and n.start <= i.start < n.end for n in found)
    ]
    if context.asked == "diets" and needed:
        return [i for i in found if not isinstance(i, SetAnswer)]
    hours = [i for i in found if isinstance(i, Late) and i.at is not None]
    added = people.read_people(sentence, context) if not hours else []
    if context.asked in ("diets", "bring", "answer") and needed:
        added = []
    found += added
    if needed and not re.search(r" (?:llev|trai|tra[eo]|pon[gd]|hag|hac|hare|prepar|aport|encarg)", sentence.text):
        return found
    if not any(isinstance(i, AddPerson) for i in added):
        alone, other = others.with_another(sentence, context)
        made = offers.read_promises(alone, context)
        if other is not None and any(isinstance(i, AddPromise) for i in made):
            made = [replace(i, with_guest=other) if isinstance(i, AddPromise) else i for i in made]
        elif other is not None:
            made = offers.read_promises(sentence, context)
        found += _coming_anyhow(made, sentence, context)
    return found


_MINE_IF = re.compile(
    r" (?:si (?:puedo|podemos|voy|vamos|me|nos|consigo|encuentro|alcanzo|llego|salgo|logro)|quizas?|tal vez|talvez|a lo mejor|puede que|capaz|no se|depende|igual) "
)
"""Conditions that are the writer's own: they may not come at all."""


def _coming_anyhow(made: list[Intent], sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """ "If you like I'll bring flan": whether the dish is wanted is open, that its cook comes is not."""
    held = [i for i in made if isinstance(i, AddPromise) and i.conditional and i.by is None]
    if not held or context.answer is not Answer.NONE or not context.addressed or _MINE_IF.search(sentence.text):
        return made
    return [
        SetAnswer(context.writer, Answer.YES, implied=True, start=held[0].start, end=held[0].end, confidence=0.84),
        *made,
    ]


def _answer_beside(sentence: Sentence, context: ReplyContext, swaps: list[Intent]) -> list[Intent]:
    """A yes or no that stands beside what became of a dish, and not inside it."""
    given = answers.read_answer(sentence, context)
    first = min(i.start for i in swaps)
    return (
        [i for i in given if isinstance(i, SetAnswer) and i.end <= first]
        if any(isinstance(i, DropPromise) for i in swaps)
        else []
    )


_STAYS_AWAY = re.compile(
    r" (?:no (?:voy|vamos|ire|iremos|asistire|asistiremos|llego|llegamos|puedo ir|podemos ir|podre ir|podremos ir|podre asistir|estare|estaremos|vengo|vendre)(?! a (?:poder(?! ir)|llevar|hacer|traer|tener|preparar))|poder (?:ir|asistir)|tampoco voy|ni voy|cancelo todo|me bajo de todo) "
)


def _settled(found: list[Intent], message: Message, context: ReplyContext) -> list[Intent]:
    """Several sentences' worth of intents together: a correction counts as what it corrects to; a party told twice."""
    if len(found) > 1:
        found = [i for i in found if not isinstance(i, Undo)] or found[:1]
    parties = [i for i in found if isinstance(i, SetParty) and not i.relative]
    if (
        len(parties) > 1
        and parties[-1].party.total < parties[0].party.total
        and parties[-1].party.total != parties[-1].party.adults
    ):
        whole, parts = parties[0], parties[-1]
        more = whole.party.total - parts.party.total
        merged = replace(
            parts,
            party=replace(parts.party, adults=parts.party.adults + more),
            confidence=min(parts.confidence, whole.confidence),
        )
        found = [merged if i is parts else i for i in found if i is not whole]
    fewer = next((i for i in found if isinstance(i, SetParty) and i.relative), None)
    whole_now = next((i for i in found if isinstance(i, SetParty) and not i.relative), None)
    if fewer is not None and whole_now is not None:
        found = [i for i in found if i is not fewer]
        left = changed_by(context, fewer)
        if left is not None and left.total == whole_now.party.total:  # "my mother isn't coming. That leaves 4"
            found = [replace(i, party=left) if i is whole_now else i for i in found]
    if context.answer is Answer.YES and any(isinstance(i, SetParty) for i in found):  # a yes again changes nothing
        found = [
            i for i in found if not (isinstance(i, SetAnswer) and i.who == context.writer and i.answer is Answer.YES)
        ]
    if any(isinstance(i, DropPromise) for i in found) and not _STAYS_AWAY.search(f" {message.plain} "):
        # "Quita lo mío, no voy a poder": no to the dish
        found = [i for i in found if not (isinstance(i, SetAnswer) and i.answer is Answer.NO)]
    if any(isinstance(i, Ask) for i in found) and any(isinstance(i, AddPromise) and i.vague for i in found):
        found = [i for i in found if not (isinstance(i, AddPromise) and i.vague and not i.category)]
    return found


def _parts(sentence: Sentence) -> list[Sentence]:
    """ "Nos encantaría ir, ¿dónde es?": the statement, and the question after it."""
    if not sentence.question:
        return [sentence]
    for k in range(len(sentence.tokens) - 1, 0, -1):
        if sentence.tokens[k].plain != ",":
            continue
        rest = Sentence(sentence.tokens[k + 1 :], True)
        if _TAG.match(rest.text):
            return [Sentence(sentence.tokens[:k], False)]  # "llevo tarta, ¿vale?"
        if questions.read_question(rest, ReplyContext("", replying_to="bot")) and not questions.read_question(
            Sentence(sentence.tokens[:k], True), ReplyContext("", replying_to="bot")
        ):
            return [Sentence(sentence.tokens[:k], False), rest]
    return [sentence]


def _unhosted(message: Message, context: ReplyContext, found: list[Intent]) -> Iterator[Sentence]:
    """The sentences that are not a host's about the potluck itself; what those say is added to `found`."""
    for sentence in message.sentences:
        if len(sentence.tokens) > MOST_WORDS:
            yield sentence
            continue
        if (kitchen := kitchens.read_kitchen(sentence, context)) is not None:
            found.append(kitchen)
            continue
        said, rest = read_hosted(sentence, context, "es", float, "[0-9]{1,4}")
        found += said
        yield from rest
