"""How a dish is heated, in the cook's words: "40 minutes at 375, covered, then rest 10 minutes"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import pairwise

from planning.kitchen_words.unread import LONGEST, Unread
from planning.potluck import HeatStep

_N = (
    r"\d{1,3}(?:[.,]\d{1,2})?(?:\s*[½¼¾]|\s+\d/\d)?|\d/\d|[½¼¾]|half an?|an?|one|two|three|four|five|six|seven|eight"
    r"|nine|ten|eleven|twelve|fifteen|twenty|thirty|forty|fifty|sixty|ninety"
)
_H, _M = r"(?:hours?|hrs?|h)", r"(?:minutes?|mins?|m)"
_TIME = re.compile(
    rf"(?<![\w.])(?:(?P<low>{_N})\s*(?:-|–|to|or)\s*)?(?P<n>{_N})(?:\s+more)?\s*(?:(?P<h>{_H})(?![a-z])|(?P<m>{_M})\b)"
    rf"(?:(?:\s*(?:and\s*)?(?P<hm>\d{{1,2}})\s*{_M}?)\b(?!\s*(?:°|deg|{_H}\b))|(?P<part>\s*and a (?:half|quarter))?)?"
)
_TEMP = re.compile(r"\bgas(?:\s*mark)?\s*(?P<gas>\d{1,2})\b"
                   r"|(?<![\w.])(?P<t>\d{2,5})\s*(?:°|º|degrees?\b|deg\b)?\s*(?P<scale>[cf]\b|celsius\b|fahrenheit\b)?"
                   r"(?!\s*(?:min|h\b|hour|m\b|pan|w\b|watt|lb|kg|g\b))")  # fmt: skip
_PANS = re.compile(
    r"\b(?P<n>\d{1,2}|two|three|four|five|six) (?:pans?|trays?|sheets?|tins?|casseroles|baking dishes)\b"
)
_FIGURES = {"a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8,
            "nine": 9, "ten": 10, "eleven": 11, "twelve": 12, "fifteen": 15, "twenty": 20, "thirty": 30, "forty": 40,
            "fifty": 50, "sixty": 60, "ninety": 90, "half a": 0.5, "half an": 0.5, "½": 0.5,
            "¼": 0.25, "¾": 0.75}  # fmt: skip

_KINDS = (
    ("slow-cooker-high", r"slow cook\w*,? (?:on )?high|(?:on )?high (?:heat )?in (?:the|a|my) slow|crock\w* on high"),
    ("slow-cooker-low", r"slow[- ]?cook|crock ?pot|\bcrock\b"),
    ("microwave", r"microwav"),
    ("grill", r"\bgrill|barbecue|\bbbq"),
    ("stove", r"\bstove|\bhob\b|\bburner|simmer|\bboil|\bfr(?:y|ied)\b"),
    ("thaw", r"\bthaw|defrost"),
    ("chill", r"\bchill|\bfridge|refrigerat"),
    ("keep-warm", r"keep\w* (?:it )?(?:warm|hot)|\bon warm\b|hold\w* (?:warm|hot)"),
    ("rest", r"\brest|\bstand|\bcool"),
    ("prep", r"\bprep|\bchop|assembl|\bmix|\bpeel|\bslic"),
    ("transport", r"\bdrive|\bin the car\b|on the way"),
    ("oven", r"\boven|\bbak(?:e|ed|es|ing)\b|roast|reheat|re-heat|warm|heat\w* (?:up|through)"),
    ("slow-cooker-high", r"\bon high\b|\bhigh$"),
    ("slow-cooker-low", r"\bon low\b|\blow$"),
)
SLOW_LEAST_MIN = 60
"""Words of a level alone ("6 hours on low") mean a slow cooker from here on; common practice, no source."""


LEAST_BARE_F = 200
"""A bare oven figure below this is no °F anybody bakes at; common practice, no source."""


def read_steps(text: str, *, metric: bool = False) -> tuple[HeatStep, ...]:
    """ "40 minutes at 375, covered, then rest 10 minutes" as steps in order. Raises Unread.

    A range counts as its longer end, of "8 hours on low or 4 on high" the first is meant, and what is said to be
    at home stays there until a place is named again. `metric`: a bare oven figure is taken as °C.
    """
    steps: list[HeatStep] = []
    # "40 at 375" and "375 for 40" leave the minutes out.
    told = re.sub(r"(?<![\w.°])(\d{1,3}) at (?=\d{3})", r"\1 minutes at ", text[:LONGEST].casefold())
    told = re.sub(r"(\d{3}\s*(?:°\s*)?[cf]?) for (\d{1,3})(?=\s*(?:$|[,;.)]))", r"\1 for \2 minutes", told)
    for part in re.split(r"\bthen\b|\bfollowed by\b|;|\n", told):
        for piece in _timed(part):
            if clean := piece.strip(" ,.()"):
                steps.append(_step(clean, steps[-1] if steps else None, metric))
    if not steps:
        raise Unread(text)
    return tuple(steps)


def _timed(part: str) -> Iterator[str]:
    """The part, cut where a second stretch of time begins: "covered for 30 minutes, 10 more uncovered"."""
    times = list(_TIME.finditer(part))
    begin = 0
    for before, after in pairwise(times):
        gap = part[before.end() : after.start()]
        if re.search(r"\bor\b", gap):
            yield part[begin : before.end() + gap.rindex("or")]
            return
        cut = max(gap.rfind(","), gap.rfind(" and "), gap.rfind(" plus "))
        if cut >= 0:
            yield part[begin : before.end() + cut]
            begin = before.end() + cut + 1
    yield re.sub(r"^\s*(?:and|plus)\b", "", part[begin:])


def _step(part: str, last: HeatStep | None, metric: bool) -> HeatStep:
    time = _TIME.search(part)
    if time is None:
        raise Unread(part)
    minutes = _minutes(time)
    rest = f"{part[: time.start()]} {part[time.end() :]}".strip(" ,.")
    temp = _TEMP.search(rest)
    temp_f = _fahrenheit(temp, metric) if temp else None
    kind = next((k for k, words in _KINDS if re.search(words, rest)), None)
    if kind is None:
        # A figure alone is the oven's; words about a lid alone go on with what was before.
        kind = "oven" if temp_f is not None else last.kind if last is not None and "covered" in rest else None
    elif kind in ("keep-warm", "prep", "rest") and temp_f is not None and kind != "keep-warm":
        kind = "oven"
    if kind is None or not 0 < minutes <= 48 * 60:
        raise Unread(part)
    if kind.startswith("slow") and minutes < SLOW_LEAST_MIN and not re.search(r"slow|crock", rest):
        raise Unread(part)
    if kind == "oven" and temp_f is None and last is not None and last.kind == "oven":
        temp_f = last.temp_f
    covered = "uncovered" not in rest and re.search(r"covered|foil|lid on|\blid\b", rest) is not None
    if re.search(r"\bat (?:my |our )?home\b|\bat (?:my|our) (?:place|house)\b", rest):
        at = "home"
    elif re.search(r"\bthere\b|\bon site\b|\bat (?:the|your)\b", rest) or last is None:
        at = "venue"
    else:
        at = last.at
    pans = _PANS.search(rest)
    return HeatStep(
        kind, minutes, temp_f if kind in ("oven", "keep-warm") else None, covered=covered, at=at,
        hands_min=minutes if kind == "prep" else 0, pans=_figure(pans["n"]) if pans else 1,
        own_appliance=re.search(r"\bown\b", rest) is not None,
    )  # fmt: skip


def _figure(text: str) -> int:
    return max(1, round(_value(text)))


def _value(text: str) -> float:
    """ "1 1/2", "1.5", "1½" and "half an" as a number."""
    clean = text.strip().replace(",", ".")
    if clean in _FIGURES:
        return _FIGURES[clean]
    mark = next((m for m in "½¼¾" if clean.endswith(m)), "")
    clean = clean.removesuffix(mark).strip()
    whole, _, part = clean.partition(" ")
    if "/" in whole:
        whole, part = "0", whole
    above, _, below = part.partition("/")
    return float(whole) + (int(above) / int(below) if below and int(below) else 0) + _FIGURES.get(mark, 0)


def _minutes(time: re.Match[str]) -> int:
    value = _value(time["n"])
    if time["m"]:
        return round(value)
    extra = int(time["hm"] or 0) + {"half": 30, "quarter": 15}.get((time["part"] or "").rpartition(" ")[2], 0)
    return round(value * 60) + extra


def _fahrenheit(match: re.Match[str], metric: bool) -> float:
    """A bare figure below 200, or up to 290 at a metric table, is °C; gas mark 1 is 275 °F, each
    further one 25 °F more. Common practice, no source; what is still odd is asked about as a conflict.
    """
    if match["gas"]:
        return 250.0 + 25 * int(match["gas"])
    value = float(match["t"])
    scale = (match["scale"] or "")[:1]
    if scale == "c" or (not scale and value < (291 if metric else LEAST_BARE_F)):
        return round(value * 9 / 5 + 32)
    return value


def taken_as_celsius(text: str, *, metric: bool = False) -> int | None:
    """The first bare figure that `read_steps` takes as °C at a table which reckons in °F; None for none.

    >>> taken_as_celsius("40 min at 190"), taken_as_celsius("40 min at 190 c"), taken_as_celsius("40 min at 375")
    (190, None, None)
    """
    if metric:
        return None
    rest = _TIME.sub(" ", text[:LONGEST].casefold())
    bare = (m for m in _TEMP.finditer(rest) if not m["gas"] and not m["scale"])
    return next((int(m["t"]) for m in bare if 100 <= float(m["t"]) < LEAST_BARE_F), None)


_FILLER = re.compile(
    r"(?:the|my|our|your|its?|this|that|those|they|and|then|for|at|in|on|to|of|about|around|roughly|just|only|also|more"
    r"|needs?|needed|takes?|wants?|requires|should|must|has|have|will|goes|go|going|be|is|are|gets?|cook|cooks|cooked"
    r"|cooking|heat|heated|heats|time|degrees?|deg|f|c|fahrenheit|celsius|actually|please|sorry|first|after|before"
    r"|serving|low|high|medium|power|covered|uncovered|under|foil|lid|off|with|an?|own|home|there|site|place|warm|hot"
    r"|until|done|reheat|reheated|hi|bot|so|well|better)"
)


def cooking_words(
    text: str, dishes: Sequence[str], *, metric: bool = False
) -> tuple[str | None, tuple[HeatStep, ...]] | None:
    """(dish or None, steps) where a message says how a dish is heated and nothing else; None for any other.

    "the lasagna needs 40 minutes at 375" with "lasagna" among the dishes. The dish is None where none is named.

    >>> cooking_words("needs 40 minutes at 375", ("lasagna",))[1][0].minutes
    40
    >>> cooking_words("we need 40 minutes to get there", ("lasagna",)) is None
    True
    """
    if "?" in text:
        return None
    plain = " ".join(["", *re.sub(r"[“”\"!:]", " ", text[:LONGEST]).casefold().split(), ""])
    named: str | None = None
    for dish in sorted(dishes, key=len, reverse=True):
        words = dish.casefold().split()
        name = next((w for w in (" ".join(words), words[-1] if words else "") if w and f" {w} " in plain), None)
        if name is not None:
            named, plain = dish, plain.replace(f" {name} ", " ", 1)
            break
    try:
        steps = read_steps(plain.strip(), metric=metric)
    except Unread:
        return None
    rest = _PANS.sub(" ", _TEMP.sub(" ", _TIME.sub(" ", plain)))
    for _, words_of in _KINDS:
        rest = re.sub(rf"(?:{words_of})\w*", " ", rest)
    left = [w for w in re.findall(r"[^\W\d_]+", rest) if not _FILLER.fullmatch(w)]
    return None if left else (named, steps)
