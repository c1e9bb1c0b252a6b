"""Who comes along: numbers, kin and ages into a party."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from functools import cache

from planning.potluck import Party
from planning.replies.ages import group_of_age
from planning.replies.intents import AddPerson, Intent, ReplyContext, SetParty
from planning.replies.spanish.lexicon import any_of, value_of
from planning.replies.text import Sentence

LETTER = {"a": "adults", "t": "teens", "c": "children", "d": "toddlers", "i": "infants"}
_AGES = re.compile(
    r"\( ?((?:[0-9]{1,2} ?(?:,|y|e) ?)*[0-9]{1,2})(?: años| anos)? ?\)|(?:, ?)?de ((?:[0-9]{1,2} ?(?:,|y|e) )*[0-9]{1,2})(?: años| anos)?(?= |$)"
)
_COMES = re.compile(
    r" (?:somos|seremos|vamos|vamos a ser|iremos|venimos|vendremos|estaremos|nos apuntamos|voy|ire|vengo|en total|cuenten con|cuenta con|confirmados|confirmadas)"
    r"(?: (?:en total|solo|solamente|nada mas|los|las|unos|unas|a ser|ya))* ([0-9]{1,4})(?= (?!kilos?|litros?|docenas?|horas?|min|a las))"
)
_ALONE = re.compile(
    r" (?:voy|ire|vengo|estare) (?:yo )?(?:sol[oa]|solit[oa]|por mi cuenta)(?= |$)|^ (?:solo|nada mas) yo(?= |$)"
)
_MORE = re.compile(
    r"^ \+ ?([0-9]{1,2})(?= |$)| (?:(un[oa]?|[0-9]{1,2}) (?:personas? )?mas)(?= |$|,)|(?: y)? mas (un[oa]|[0-9]{1,2})(?= |$)"
)
_TOTAL_ONLY = re.compile(r"^ (?:,? ?)?(?:los|las)? ?([0-9]{1,3})(?: personas| en total)? $")


@cache
def _groups() -> re.Pattern[str]:
    return re.compile(rf"(?<![a-zñ])([0-9]{{1,3}}|un|una|mis|los|las) ({any_of('group')}|{any_of('kin')})(?= |$)")


@cache
def _kin() -> re.Pattern[str]:
    return re.compile(
        rf" (?:mi|mis|su|la|el|un|una|los|las|tu)(?: ([0-9]{{1,2}}))? (?:(?:querid[oa]|nuev[oa]) )?({any_of('kin')})s?(?= |$)"
    )


def read_people(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """The party this sentence tells of: whole, or how many more."""
    text = sentence.text
    if sentence.question or re.search(r"^ (?:no|ya no) ", text):
        return []
    if (alone := _ALONE.search(text)) is not None:
        start, end = sentence.span_of(alone)
        return [SetParty(context.writer, Party(1), start=start, end=end, confidence=0.9)]
    if (added := _added_person(sentence, context)) is not None:
        return [added]
    joining = re.search(
        rf" (?:se (?:suman|suma)|tambien (?:vienen|van)|vienen (?:tambien)?) mis? ({any_of('kin')}|padres|suegros|abuelos|papas|tios)s?(?= |$)",
        text,
    )
    if joining is not None and (also := _parts(text)):
        start, end = sentence.span_of(joining)
        counts = dict.fromkeys(LETTER.values(), 0)
        for letter, n in also:
            counts[LETTER[letter]] += n
        return [SetParty(context.writer, Party(**counts), True, start=start, end=end, confidence=0.86)]
    more = _MORE.search(text)
    if more is not None and not re.search(r" (?:llevo|llevamos|traigo|porciones|kilos?) ", text):
        said = next(g for g in more.groups() if g)
        count = 1 if said.startswith("un") else int(said)
        start, end = sentence.span_of(more)
        party = Party(**({"adults": 0} | _age_of(text, count)))
        return [SetParty(context.writer, party, True, start=start, end=end, confidence=0.86)]
    parts = _parts(text)
    total = _COMES.search(text) or (_TOTAL_ONLY.search(text) if context.asked in ("people", "party") else None)
    with_me = re.search(
        r" (?:voy|vamos|ire|iremos|vengo|venimos|venir|estaremos) (?:(?:yo )?con|mi|yo y|y )| (?:mi [a-z]+ y yo)(?= |$)",
        text,
    )
    own = re.match(
        r"^ (?:(?:vamos|voy|iremos|confirmad[oa]s|confirmo) )?(?:toda la familia|[0-9]+ |yo y |mi [a-zñ]+ y yo)", text
    )
    if re.search(r" en pareja(?= |$)", text):
        with_me = with_me or re.search(r" en pareja", text)
        parts = [("a", 1), *parts]
    if parts and (total is not None or with_me is not None or own is not None):
        counts = dict.fromkeys(LETTER.values(), 0)
        for letter, n in parts:
            counts[LETTER[letter]] += n
        spoken = sum(counts.values())
        if total is not None:
            whole = int(total[1])
            counts["adults"] += max(0, whole - spoken)
            sure = 0.9 if whole >= spoken else 0.6
        else:
            counts["adults"] += 1 if with_me is not None else 0
            sure = 0.88
        return [SetParty(context.writer, Party(**counts), confidence=sure)]
    if total is not None:
        start, end = sentence.span_of(total)
        return [SetParty(context.writer, Party(int(total[1])), start=start, end=end, confidence=0.9)]
    return []


def read_party(text: str) -> Party | None:
    """A party by itself: "2 adultos y 1 niño", "3"."""
    from planning.replies.spanish import message_of

    message = message_of(text)
    counts = dict.fromkeys(LETTER.values(), 0)
    for sentence in message.sentences:
        for letter, n in _parts(sentence.text):
            counts[LETTER[letter]] += n
    if not any(counts.values()):
        bare = re.fullmatch(r"\D*([0-9]{1,3})\D*", message.plain)
        return Party(int(bare[1])) if bare else None
    return Party(**counts)


def _parts(text: str) -> list[tuple[str, int]]:
    """(age letter, how many) for each group or relative in the text, their ages counted where they stand."""
    found: list[tuple[str, int]] = []
    for match in _groups().finditer(text):
        role = "group" if re.fullmatch(any_of("group"), match[2]) else "kin"
        letter = value_of(role, match[2])
        count = int(match[1]) if match[1].isdigit() else 1
        ages = _ages(text[match.end() :])
        if ages and letter != "a":
            count = max(count, len(ages)) if not match[1].isdigit() else count
            found += [(letter_of(age), 1) for age in ages[:count]]
            count -= min(count, len(ages))
        if count and (match[1].isdigit() or match[1] in ("un", "una")):
            found.append((letter, count))
    for match in _kin().finditer(text):
        if any(match.start(2) == other.start(2) for other in _groups().finditer(text)):
            continue
        letter = value_of("kin", match[2])
        pair = re.match(r" mis (?:padres|suegros|abuelos|papas|tios)", text[match.start() :])
        ages = _ages(text[match.end() :])
        if letter != "a" and ages:
            found += [(letter_of(age), 1) for age in ages]
        else:
            found.append((letter, int(match[1]) if match[1] else 2 if pair else 1))
    return found


def _ages(rest: str) -> list[int]:
    match = _AGES.match(rest.lstrip(" s"))
    if match is None:
        # "my two sons, 10 and 14": numbers alone behind a comma, and nothing after them.
        bare = re.match(r" ?, ?((?:[0-9]{1,2} ?(?:,|y|e) ?)*[0-9]{1,2})(?: años| anos)? ?$", rest)
        return [int(n) for n in re.findall(r"[0-9]+", bare[1])] if bare else []
    return [int(n) for n in re.findall(r"[0-9]+", match[1] or match[2])]


def letter_of(age: int) -> str:
    return next(letter for letter, group in LETTER.items() if group == group_of_age(age))


def _age_of(text: str, count: int) -> dict[str, int]:
    parts = _parts(text)
    if parts and sum(n for _, n in parts) == count:
        counts: dict[str, int] = {}
        for letter, n in parts:
            counts[LETTER[letter]] = counts.get(LETTER[letter], 0) + n
        return counts
    return {"adults": count}


_ALSO = re.compile(
    r"^ (?:tambien )?(?:viene|va|vienen|van)(?: tambien)? mi ([a-zñ]+)|^ mi ([a-zñ]+) (?:tambien )?(?:viene|va|vendra|ira)(?= |$)"
)


def _added_person(sentence: Sentence, context: ReplyContext) -> AddPerson | None:
    match = _ALSO.search(sentence.text)
    if match is None:
        return None
    who = match[1] or match[2]
    if not re.fullmatch(any_of("kin"), who) or value_of("kin", who) != "a":
        return None
    start, end = sentence.span_of(match)
    return AddPerson(f"{who} de {context.name}" if context.name else who, start=start, end=end, confidence=0.86)
