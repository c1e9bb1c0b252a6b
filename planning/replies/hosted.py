"""What a host says of the potluck itself, in any language: another day or hour, another place, how many, called off.

The sentences stand in `data/words_hosting.csv` as patterns over plain words. A row's `macro-` kinds are pieces the
others are made of; `open` rows are plain enough for the open chatter of the group, where they are only asked about.
"""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from functools import cache
from zoneinfo import ZoneInfo

from planning.replies.intents import CallOff, Intent, MoveTo, ReplyContext, Reschedule, Resize
from planning.replies.text import Sentence, raw_words
from planning.when import Unclear, as_read_here, parse_when, shift
from planning.word_patterns import said_in

LONGEST_OPEN = 16
"""Words; what is longer in the open chatter is a story."""
OWN_PARTY = 12
"""Up to so many a host may mean the own party (common practice, no source)."""
LONGEST_PLACE = 80
MOVED = "words_moved"
_SHALL_WE = re.compile(r"^ (?:(?:ok|so|and|hey|folks|everyone|,) )*(?:(?:can|could|shall|should|may) we|(?:podemos|podriamos|y si)) ")
_HALF = re.compile(
    r" , (?:it|we|so|but|and|there|they|you|i|with|es|nos|pero|hay|tiene|tienen|tenemos|con|ahi|alla|alli) "
    r"|^(?:it is|we are|we will|es|sera) "
)
IN_THE_OPEN, TOLD_IN_THE_OPEN = 0.75, 0.85
"""What a host says in the open chatter is asked about; "moving it to 6:30" is told to everybody, and done."""
NOT_SAID = ("unless", "later")
_NO_PLACE = re.compile(
    r"\b(?:bring|bringing|come|coming|comes|make it|me|you|us|him|them|that|touch|charge|trouble|love|changed?|moved|traer|traigo|vengo)\b"
    r"|^(?:[0-9.,:]+|(?:the )?(?:next|last|first|other|end|same|plan|back|front|top|beginning) ?.*|my|your|here|there|home|work|bed|it)$"
)
_PLACE_BEGINS = re.compile(r"^(?:the|our|my|a|an|[^\W\d_]+'s|[0-9]+|el|la|los|las|casa|mi|nuestr[oa]|un|una)(?= |$)")
_PLACE_NAMED = re.compile(
    r"\b(?:place|venue|location|address|spot|lugar|sitio|direccion|(?:in|out)doors|(?:in|out)side)\b"
)
_THEN = re.compile(r" +(?:then|now|instead|entonces)$", re.IGNORECASE)
_ENDING = re.compile(r"^(?:at|in|to|on|@|en|a) +", re.IGNORECASE)
_PEOPLE = re.compile(r"\b(?:people|guests|persons|folks|heads|personas|invitados)\b")
_BARE = re.compile(r"^(?:[0-9]{1,2}|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)$", re.IGNORECASE)
_BEFORE_AN_HOUR = re.compile(r"(?:\b(?:at|to|until|till|for|by|from|las?|time|hour|start|hora|say|with)|[:,-]) $")
_BACKWARDS = re.compile(
    r"^(?:postpon|delay|push|late|behind|aplaz|posterg|atras|retras|demor|mas tarde|tarde|despues|de retraso)"
)
_FORWARDS = re.compile(r"^adelant")


@dataclass(frozen=True)
class Row:
    kind: str
    pattern: re.Pattern[str]
    sure: float
    open: bool


def read_hosted(
    sentence: Sentence, context: ReplyContext, language: str, number_of: Callable[[str], float | None], number: str
) -> tuple[list[Intent], list[Sentence]]:
    """The host's intents in this sentence, and the clauses of it that say something else.

    Nothing from anybody but hosts. `number` is the language's pattern of a number, `number_of` reads one.
    """
    in_the_open = not context.addressed
    if not context.host or context.replying_to == "person" or (context.addressed and context.asked is not None):
        return [], [sentence]
    if in_the_open and len(sentence.tokens) > LONGEST_OPEN:
        return [], [sentence]
    if in_the_open and sentence.question:
        # "Can we push dinner by 20 minutes?" is asked about, and nothing else that is put as a question.
        put = _clause(sentence, context, language, number_of, number, after=False) if _SHALL_WE.match(sentence.text) else None
        return ([put], []) if isinstance(put, Reschedule) else ([], [sentence])
    if any(row.kind == "unless" and row.pattern.search(sentence.text) for row in _rows(language, number)):
        return [], [sentence]
    whole = _clause(sentence, context, language, number_of, number, after=False)
    if whole is not None:
        return [whole], []
    clauses = list(_clauses(sentence))
    if len(clauses) < 2:
        return [], [sentence]
    found: list[Intent] = []
    left: list[Sentence] = []
    for n, clause in enumerate(clauses):
        one = _clause(clause, context, language, number_of, number, after=n > 0)
        if one is None:
            left.append(clause)
        else:
            found.append(one)
    if not found:
        return [], [sentence]
    # What stands beside is the reason, unless it tells of the writer's own part.
    told = [c for c in left if _OWN.search(c.text)]
    if not told:
        start, end = sentence.span(0, len(sentence.tokens))
        found = [replace(i, start=start, end=end) for i in found]
    return found, told


def leaves_open(plain: str, language: str) -> bool:
    """Whether plain words answer a question with "I don't know yet", "later", "skip it"."""
    return any(row.kind == "later" and row.pattern.fullmatch(plain) for row in _rows(language, "[0-9]+"))


_INSTEAD = re.compile(
    r"^(?:(?:no+|nope|nah|hm+|um+|well|sorry|actually|wait|ok|okay|rather|better|maybe|let['’]?s|let us|say|do|make|it|it['’]s|its|that|go|with|for"
    r"|i|meant|mean|mejor|perd[oó]n|bueno|m[aá]s bien|digamos|que|sea|pongamos|quise|decir|entonces|then)\b[\s,.:;!-]*)+(?=\S)",
    re.IGNORECASE,
)
_HOUR = re.compile(r"^(?:(?:at|a las?) )?[0-9]{1,2}(?:[:.h][0-9]{2})? ?(?:[ap]\.?m\.?|o['’]?clock)?$", re.IGNORECASE)


def hour_instead(words: str) -> str | None:
    """The hour that is said instead of the one asked about ("no, 6", "let's say 6:30pm"), as words with "at"."""
    said = _INSTEAD.sub("", words.strip().rstrip(".!")).strip()
    said = re.sub(r" (?:instead|then|please|mejor|por favor)$", "", said, flags=re.IGNORECASE)
    if _HOUR.match(said) is None:
        return None
    return said if said[0].lower() == "a" else f"at {said}"


_OWN = re.compile(
    r" (?:bring|bringing|make|making|bake|cook|traigo|llevo|hago|allergic|alergic[oa]"
    r"|ovens?|burners?|stoves?|grills?|microwaves?|slow cookers?|hornos?|hornillas?|fuegos|parrillas?|microondas) "
)


def _clauses(sentence: Sentence) -> Iterator[Sentence]:
    piece: list[int] = []
    for k, token in enumerate(sentence.tokens):
        if token.plain in (",", "-", "–", "—", ":") or (piece and token.plain in ("so", "asi")):
            if piece:
                yield Sentence([sentence.tokens[i] for i in piece], sentence.question)
            piece = []
        else:
            piece.append(k)
    if piece:
        yield Sentence([sentence.tokens[i] for i in piece], sentence.question)


def _clause(
    clause: Sentence,
    context: ReplyContext,
    language: str,
    number_of: Callable[[str], float | None],
    number: str,
    *,
    after: bool,
) -> Intent | None:
    text = clause.text.strip()
    start, end = clause.span(0, len(clause.tokens))
    for row in _rows(language, number):
        if (
            row.kind in NOT_SAID
            or (row.kind == "place-after" and not after)
            or (not context.addressed and not row.open)
        ):
            continue
        match = row.pattern.fullmatch(text)
        if match is None:
            continue
        sure = row.sure
        if clause.question and not re.match(r"^ (?:can|could|would|will) you ", clause.text):
            sure = min(sure, 0.7)
        if not context.addressed:
            plainly = row.kind == "time" and row.sure >= 0.9 and _told(text)
            sure = TOLD_IN_THE_OPEN if plainly else min(sure, IN_THE_OPEN)
        if row.kind == "cancel":
            return None if clause.question else CallOff(start=start, end=end, confidence=sure)
        if row.kind == "size":
            n = number_of(match["n"])
            small = n is not None and 1 < n <= OWN_PARTY and row.sure >= 0.9 and _PEOPLE.search(text) is not None
            if n is None or not (small or OWN_PARTY < n <= 1000):
                continue
            return Resize(int(n), start=start, end=end, confidence=sure)
        if row.kind == "time":
            words = _time(match, clause, context, language)
            if words is not None:
                return Reschedule(words, start=start, end=end, confidence=sure)
            continue
        place = _raw(match, clause, "place")
        if (where := _place(match["place"].strip(" ,"), place, context, language)) is not None:
            if not _PLACE_BEGINS.match(_ENDING.sub("", match["place"])) and not _PLACE_NAMED.search(text):
                sure = min(sure, 0.75)
            return MoveTo(where, _setting(text), start=start, end=end, confidence=sure)
    return None


def _setting(text: str) -> str:
    """Whether the words say that the place is under a roof, or under the sky."""
    inside, outside = _INSIDE.search(text) is not None, _OUTSIDE.search(text) is not None
    return "" if inside is outside else "indoor" if inside else "outdoor"


_INSIDE = re.compile(r"\b(?:inside|indoors|adentro|dentro|bajo techo)\b")
_OUTSIDE = re.compile(r"\b(?:outside|outdoors|afuera|al aire libre)\b")


def _raw(match: re.Match[str], clause: Sentence, group: str) -> str:
    # The pattern was matched without the space the sentence's text begins with.
    first = _token_at(clause, match.start(group) + 1)
    last = _token_at(clause, match.end(group) + 1)
    return raw_words(clause.tokens[first:last]).strip(" ,")


def _token_at(clause: Sentence, place: int) -> int:
    return next((i for i in range(len(clause.tokens)) if clause.offset(i) >= place), len(clause.tokens))


def _time(match: re.Match[str], clause: Sentence, context: ReplyContext, language: str) -> str | None:
    words, got = _raw(match, clause, "time"), match.groupdict()
    if got.get("old") is not None and not _old_hour(got["old"] or "", words, context):
        return None
    if (
        _BARE.match(words)
        and got.get("old") is None
        and not _RIGHT.search(match.string)
        and not _BEFORE_AN_HOUR.search(match.string[: match.start("time")])
    ):
        return None  # "we are 3 now"
    verb, way = got.get("verb") or "", got.get("way") or ""
    length = as_read_here(words.casefold(), language, MOVED)
    later = _way(verb, way)
    if later and shift(f"{length} {later}") is not None:
        return f"{length} {later}"
    if shift(length) is not None:
        return length
    # "Se cambia a las 6": what was read as a way to the time belongs to it.
    said = (words, f"a {words}") if language == "es" else (words,)
    return next((w for w in said if a_time(as_read_here(w, language), context)), None)


_RIGHT = re.compile(r" (?:was|is|era|es|estaba) (?:right|correct|fine|bien|correct[oa])\b")
_PROPOSED = re.compile(
    r" (?:let us|can|could|shall|should|would|want to|would like to|might|maybe|perhaps|how about|what about"
    r"|podemos|podriamos|deberiamos|quiza|tal vez|que tal|mejor|hay que|tenemos que|vamos a) "
)
"""A host who proposes is asked whether it is settled."""
_ORDERED = re.compile(
    r"^(?:(?:ok|okay|so|please|hey|and|then) )*(?:move|push|shift|postpone|reschedule|change|delay|switch|bring|make)\b"
)


def _told(text: str) -> bool:
    """Whether a host tells everybody another hour, and neither proposes it nor asks somebody for it; another day is
    always asked about."""
    said = f" {text} "
    return _DIGITS.search(said) is not None and not (
        _PROPOSED.search(said) or _ORDERED.match(text) or _DAY.search(said)
    )


_DAY = re.compile(
    r"\b(?:mon|tues|wednes|thurs|fri|satur|sun)days?\b|\b(?:lunes|martes|miercoles|jueves|viernes|sabado|domingo)\b"
    r"|\b(?:tomorrow|week|month|mañana|semana|mes)\b|\b[0-9]{1,2}(?:st|nd|rd|th)\b|\b(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\b"
)
_DIGITS = re.compile(r"[0-9]{1,2}")


def _old_hour(old: str, new: str, context: ReplyContext) -> bool:
    """Whether "4, not 3" speaks of the hour: a word says so, or the old figure is the hour it starts at."""
    if context.starts_at is None:
        return False
    local = context.starts_at.astimezone(ZoneInfo(context.timezone))
    said = _DIGITS.search(old)
    return said is not None and int(said.group()) % 12 == local.hour % 12 and _DIGITS.search(new) is not None


def _way(verb: str, way: str) -> str:
    """ "Push it back an hour" is an hour later, "bring it forward" and "move it up" earlier."""
    if way in ("forward", "up", "ahead") or _FORWARDS.match(verb):
        return "earlier"
    return "later" if way in ("back", "out", "off") or _BACKWARDS.match(verb) else ""


def _place(plain: str, raw: str, context: ReplyContext, language: str) -> str | None:
    if not plain or len(raw) > LONGEST_PLACE or _NO_PLACE.search(plain):
        return None
    if shift(as_read_here(raw.casefold(), language, MOVED)) is not None or _HALF.search(plain):
        return None
    if any(a_time(as_read_here(w, language), context) for w in (raw, f"a {raw}")):
        return None
    return _THEN.sub("", _ENDING.sub("", raw)).strip(" ,") or None


def a_time(words: str, context: ReplyContext) -> bool:
    """Whether the words name a day or a clock time and nothing else."""
    if context.now is None:
        return _TIME_SAID.search(words.lower()) is not None
    try:
        return not parse_when(words[:100], context.now, context.timezone, foreign=False).rest
    except Unclear as wrong:
        return wrong.say.key != "when-not-understood"
    except (KeyError, ValueError, OSError):
        return False


_TIME_SAID = re.compile(
    r"\b(?:[0-9]{1,2} ?[ap]m|[0-9]{1,2}:[0-9]{2}|(?:mon|tues|wednes|thurs|fri|satur|sun)day|tomorrow)\b"
)


@cache
def _rows(language: str, number: str) -> tuple[Row, ...]:
    return tuple(
        Row(row["kind"], said, float(row["sure"] or 0), row["open"] == "yes")
        for row, said in said_in("words_hosting", language, {"n": number})
    )
