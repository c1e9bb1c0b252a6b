"""How a dish is cooked, said beside it: "lasagna for 12, 50 min at 375". The words are set aside before anything
else is read, so that no hour becomes a dish and no degree a serving; what they mean is for `kitchen_words`."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from planning import amounts
from planning.replies.intents import AddPromise, ChangePromise, Intent
from planning.replies.text import Sentence, Token, raw_words

_N = r"(?:[0-9]{1,3}(?:[.,/][0-9]{1,2})?(?:-[0-9]{1,3})?[½¼¾]?|[½¾]|half an?|an?|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fifteen|twenty|thirty|forty|forty-five|fifty|sixty|ninety)"
_UNIT = r"(?:hours?|hrs?|h|minutes?|minute|mins?)"
_TIME = rf"(?:(?:for|about|around|approx|roughly|another|like|only|just) )*{_N} (?:to {_N} |or {_N} )?{_UNIT}(?: (?:and )?(?:a half|a quarter|[0-9]{{1,2}}(?: (?:minutes?|mins?))?(?= )))?"
_SCALE = r"(?:f|c|ºc|ºf|fahrenheit|celsius|centigrade)"
_TEMP = rf"(?:(?:at|to|on) (?:about |around )?[1-5][0-9]{{2}}(?: (?:degrees?|deg))?(?: {_SCALE})?|[1-5][0-9]{{2}} (?:(?:degrees?|deg)(?: {_SCALE})?|{_SCALE})|gas mark [0-9]|gas [0-9])(?: fan)?(?= )"
_COOKER = (
    r"(?:own slow cooker|slow cooker|slow-cooker|slowcooker|oven|microwave|stove ?top|stove|hob|grill|barbecue|bbq|burner|air fryer)"
)
_IN = rf"(?:in|on|with|using|under|inside)(?: (?:a|an|the|my|your|our))?(?: (?:hot|low|medium|moderate|preheated|[1-5][0-9]{{2}}(?: (?:degrees?|deg))?(?: [fc])?))? {_COOKER}"
_LEVEL = (
    r"(?:(?:on|at) (?:low|high|medium|full)(?: (?:heat|power))?|(?:low|high)(?= $| ,| \)| in | then | and | for | -))"
)
_WORK = rf"(?:bakes?|baking|baked|roasts?|roasting|roasted|simmered|boiled|reheated|grilled|warmed|rested|chilled|reheats?|reheating|heats?(?: up)?|heating|warms?(?: up| through)?|warming|simmers?|simmering|boils?|boiling|cooks?|cooking|cooked|rests?|resting|stands?|cools?|chills?|grills?|grilling|prep|covered|uncovered|under foil|lid on|lid off|keep warm|(?:the |your |my |a |some )*(?:time|space)?(?: in)?(?:the |your |my |a )?(?:{_COOKER})(?: (?:time|on low|on high|low|high))?)"
_NEED = r"(?:(?:it|that|which|they|this|i|we|will|would|just|only|also|then) )*(?:needs?|wants?|takes?|requires?|has to|have to|goes|go|must)(?: (?:to|be|go|get|about|around|in|into))*"
_AT = r"(?:(?:at|in) (?:the|your|our|my) (?:hall|venue|church|centre|center|club ?house|clubhouse|kitchen|oven)|at home|at [a-z]+'?s(?: (?:place|house))?(?= $| ,)|from home)"
_BARE_TEMP = r"(?:(?<=min )|(?<=mins )|(?<=minutes )|(?<=hour )|(?<=hours )|(?<=hr )|(?<=hrs )|(?<=h ))(?:@ )?[2-5][0-9][05](?= )"
_WATTS = r"[1-9][0-9]{2,3} (?:watts?|w)"
_KEEP = rf"(?:(?:i|we) will |will )?(?:keep|hold|kept|keeping|held) (?:it |them )?(?:warm|hot)(?: {_IN})?"
_PIECE = rf"(?:{_TIME}|{_TEMP}|{_BARE_TEMP}|{_WATTS}|{_KEEP}|{_AT}|{_IN}|{_LEVEL}|{_WORK}|{_NEED}|(?:then|after that|first|followed by|beforehand|before serving|at home|there|on site))"
_GAP = r"(?:(?: ,| and| then| -| –| \(| :| or| so| but| for)*)"
_RUN = re.compile(rf"(?<= ){_PIECE}(?:{_GAP} {_PIECE})*(?: \))?(?= )")
_NEEDS_ON = re.compile(rf"{_GAP} {_NEED} $")
""" "In the slow cooker, will need a plug": what it needs is not told by these words any more."""
_KEPT = re.compile(rf" {_KEEP}(?= )")
_HAS_TIME = re.compile(rf"(?<![a-z]){_TIME}(?![a-z])")
_HAS_TEMP = re.compile(rf" (?:{_TEMP})")
_HAS_WORK = re.compile(rf" (?:{_IN}|{_LEVEL}|bak|roast|reheat|heat|warm|simmer|boil|cook|grill|oven|{_COOKER})")
_OWN = re.compile(
    r" (?:(?:in|on|from) (?:(?:my|our|a|the) )?(?:own )?(?:slow cooker|slow-cooker|slowcooker|crockpot|crock pot)|from home|on (?:the|my|our) (?:stove|stovetop|stove top|hob))(?: on (?:low|high|warm))?(?= (?:,|\)|-|and|$))"
)
"""Where it is cooked or kept, without a word on how long."""
_SLOW = re.compile(r" (?:(?:in|using|with) )?(?:(?:a|an|the|my|our|your) )?(?:slow cooker|slow-cooker|slowcooker)(?= )")
_MAYBE = re.compile(rf"[0-9½]|{_UNIT}|gas mark")


@dataclass(frozen=True)
class Heat:
    """`text` as typed, `start` where it stood in the message."""

    text: str
    start: int


def split(sentence: Sentence) -> tuple[Sentence, tuple[Heat, ...]]:
    """The sentence without the words about cooking, and these words; questions stay whole."""
    if sentence.question or (_MAYBE.search(sentence.text) is None and not _KEPT.search(sentence.text) and not _OWN.search(sentence.text)):
        return sentence, ()
    runs: list[tuple[int, int]] = []
    for match in _RUN.finditer(sentence.text):
        text = f" {match[0]} "
        timed, hot = _HAS_TIME.search(text), _HAS_TEMP.search(text)
        if not (
            (timed and (hot or re.search(r" [1-5][0-9]{2} ", text) or _HAS_WORK.search(text)))
            or (hot and re.search(rf"degree|deg |{_SCALE} |gas", text))
            or _KEPT.search(text)
            or _OWN.search(text)
            or re.search(rf" {_WATTS} ", text)
        ):
            continue
        first, last = sentence.token_range(match)
        idle = _NEEDS_ON.search(f"{match[0]} ")
        runs.append((first, last - (len(idle[0].split()) if idle is not None else 0)))
    if not runs:
        return sentence, ()
    gone = {i for first, last in runs for i in range(first, last)}
    found = [
        Heat(raw_words(sentence.tokens[first:last]).strip(" (),:-"), sentence.tokens[first].start)
        for first, last in runs
    ]
    slow = _SLOW.search(sentence.text)
    if slow is not None:
        first, last = sentence.token_range(slow)
        if (
            not gone & set(range(first, last))
            and sentence.tokens[last : last + 1]
            and sentence.tokens[last].plain not in ("of", "full")
        ):
            gone |= set(range(first, last))
            found[0] = replace(found[0], text=f"{found[0].text}, {raw_words(sentence.tokens[first:last])}")
    found = [replace(h, text=_levelled(h.text)) for h in found]
    return Sentence(_tidy([t for i, t in enumerate(sentence.tokens) if i not in gone]), False), tuple(found)


def _levelled(text: str) -> str:
    """A slow cooker's level stands beside it, whatever it is called and however far apart the words stood."""
    plain = text.lower()
    level = re.search(r"\b(?:low|high)\b", plain)
    if level is None or not re.search(r"slow[- ]?cooker", plain) or f"slow cooker on {level[0]}" in plain:
        return text
    return f"{text}, slow cooker on {level[0]}"


def _tidy(tokens: list[Token]) -> list[Token]:
    """Without the marks that held the words taken out."""
    kept: list[Token] = []
    for token in tokens:
        if token.plain == ")" and kept and kept[-1].plain == "(":
            kept.pop()
        elif not (token.plain == "," and (not kept or kept[-1].plain == ",")):
            kept.append(token)
    while kept and kept[-1].plain in (",", "-", "–", ":", "(", "and", "then", "but"):
        kept.pop()
    return kept


def attach(intents: list[Intent], heats: tuple[Heat, ...]) -> list[Intent]:
    """Each piece goes to the dish named before it, else to the first one."""
    dishes = [i for i, intent in enumerate(intents) if isinstance(intent, AddPromise) and not intent.vague]
    if not dishes:
        return intents
    made = list(intents)
    for heat in heats:
        at = max((i for i in dishes if made[i].start <= heat.start), key=lambda i: made[i].start, default=dishes[0])
        promise = made[at]
        assert isinstance(promise, AddPromise)
        made[at] = replace(promise, heat_text=_joined(promise.heat_text, heat.text))
    return made


def _joined(before: str | None, text: str) -> str:
    """ "In a slow cooker" and, further on, "6 hours on low" are one step; two pieces with minutes are two."""
    if not before:
        return text
    timed = re.search(r"[0-9]", before) and re.search(r"[0-9]", text)
    return f"{before}; {text}" if timed else _levelled(f"{before} {text}")


_WEIGHS = re.compile(
    r"^ (?:(?:it is|that is|its|it|a|an|the|about|around|roughly|,|weighs|is) )*(?:(?P<cold>frozen) )?(?P<weight>[0-9]{1,3}(?:\.[0-9]{1,2})? ?(?:lbs?|pounds?|kg|kilos?))(?: (?:of it|one|ones|bird|turkey|ham|roast|goose|joint|piece|whole|raw|frozen|solid|still|,|and))*(?= $| ,| roast| bak| cook| so| but| and)"
)


def read_weight(sentence: Sentence, before: list[Intent]) -> bool:
    """ "I'll do the turkey! 16 lb frozen one": what the dish just named weighs, and whether it comes frozen."""
    last = before[-1] if before else None
    match = _WEIGHS.match(sentence.text)
    if not isinstance(last, AddPromise) or last.quantity or match is None:
        return False
    sentence.take(0, len(sentence.tokens))
    made = replace(last, quantity=match["weight"], end=sentence.tokens[-1].end)
    before[-1] = frozen([made], sentence)[0]
    return True


def frozen(intents: list[Intent], sentence: Sentence) -> list[Intent]:
    """What comes frozen by weight: "a 16 lb frozen turkey"."""
    if " frozen " not in sentence.text:
        return intents
    only = sum(isinstance(i, (AddPromise, ChangePromise)) for i in intents) == 1
    made: list[Intent] = []
    for intent in intents:
        if isinstance(intent, AddPromise) and intent.quantity and (only or "frozen" in intent.dish.lower()):
            amount = amounts.parse(intent.quantity)
            pounds = amounts.to_unit(amount, "pound") if amount is not None and amount.kind == "mass" else None
            intent = replace(intent, frozen_lb=round(float(pounds), 2)) if pounds else intent
        made.append(intent)
    return made
