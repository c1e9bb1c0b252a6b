"""Answers in the open chatter of the group, where nobody wrote to the bot: only what can hardly mean anything else."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from planning.potluck import Answer
from planning.replies.intents import (
    AddPerson,
    AddPromise,
    Ask,
    ChangePromise,
    DropPromise,
    Intent,
    Late,
    ReplyContext,
    SetAnswer,
    SetNeeds,
    SetParty,
    SetPregnant,
    TakeTopping,
    Undo,
)
from planning.replies.spanish.doubt import unread
from planning.replies.text import Message

SUPPER = re.compile(
    r" (?:convite|fiesta|cena|comida|almuerzo|asado|parrillada|reunion|junte|juntada|merienda|convivio|potluck|barbacoa|pachanga|carne asada|festejo|comilona|quedada|cotorreo|guateque|celebracion|posada|encuentro)(?= )"
)
_ANOTHER = re.compile(r" (?:reunion|junta|asamblea|encuentro) (?:de(?:l)?|con) (?!nosotros|amigos|familia|el sabado|sabado|domingo)")
"""Another gathering than ours: "la reunión de vecinos"."""
_OURS = re.compile(
    r" (?:soy|somos|tengo|tenemos|mi|mis|nuestr[oa]s?|me|nos|yo|nosotr[oa]s|en casa|no (?:como|puedo|podemos|comemos|tolero|tolera|puede)|[a-z]+ (?:mi[oa]))(?= )"
)
"""What makes an allergy one of the writer's party: the neighbour's is talk."""
LONGEST = 24
"""Words; what says more is talk."""
_ELSEWHERE = re.compile(
    r" (?:hoy|ayer|mañana|esta (?:noche|tarde|mañana)|ahora|oficina|trabajo|cole|escuela|colegio|taller|tienda|super|ya (?:llegue|llego|casi)|gym|doctor|medico|abuela|suegra|niños a|nenes a) "
)


def kept(message: Message, found: Sequence[Intent], context: ReplyContext) -> list[Intent]:
    """What of `found` is plainly for this supper though it hangs below nothing."""
    size = sum(len(s.tokens) for s in message.sentences)
    text = f" {message.plain} "
    feared = [i for i in found if isinstance(i, SetNeeds) and _OURS.search(text)]
    talk = size > LONGEST or message.quoted or any(s.question for s in message.sentences)
    supper = SUPPER.search(text) is not None and _ANOTHER.search(text) is None
    bring = [i for i in found if isinstance(i, (AddPromise, TakeTopping)) and i.confidence >= 0.86]
    others = [
        i
        for i in found
        if not isinstance(
            i, (AddPromise, TakeTopping, SetAnswer, SetParty, SetNeeds, Ask, Late, Undo, AddPerson, SetPregnant)
        )
    ]
    asks = [i for i in found if isinstance(i, Ask) and (i.confidence >= 0.9)]
    if talk or (_ELSEWHERE.search(text) is not None and not supper):
        return [*feared, *(i for i in others if isinstance(i, (ChangePromise, DropPromise)) and not talk), *asks]
    who = [
        i
        for i in found
        if isinstance(i, (SetAnswer, SetParty)) and (not isinstance(i, SetAnswer) or i.who == context.writer)
    ]
    sized = any(isinstance(i, AddPromise) and (i.servings or i.quantity or i.for_all) for i in bring)
    said = [*who, *(i for i in found if isinstance(i, (AddPromise, TakeTopping))), *feared]
    kinds = {
        "answer" if isinstance(i, (SetAnswer, SetParty)) else type(i).__name__ for i in said if i.confidence >= 0.85
    }
    unsure = any(i.confidence < 0.85 for i in said)
    strange = any(unread(s, found, context).content > 1 for s in message.sentences)
    plain = not unsure and not strange
    given = next((i for i in who if isinstance(i, SetAnswer)), None)
    if supper and given is not None and given.answer is not Answer.YES and len(kinds) == 1 and not unsure:
        return [replace(given, confidence=max(given.confidence, 0.92))]  # a reason may follow
    counted = any(isinstance(i, SetParty) and not i.relative for i in who)
    if counted and given is None and context.answer is Answer.NONE and (supper or context.near_board):
        first = next(i for i in who if isinstance(i, SetParty))
        said = [SetAnswer(context.writer, Answer.YES, start=first.start, end=first.end, confidence=0.92), *said]
    if plain and (len(kinds) >= 2 or (context.near_board and kinds) or (supper and kinds)):
        return [replace(i, confidence=max(i.confidence, 0.92)) for i in said] + others
    if bring and plain and (sized or all(i.confidence >= 0.9 for i in bring)):
        return [*(replace(i, confidence=max(i.confidence, 0.9)) for i in bring), *feared, *others]
    return [*feared, *others, *asks]
