"""What the host tells the bot about the potluck itself: another day, another place, how many, what there is to cook with."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

from planning.replies.english.lexicon import NUMBER, number_of
from planning.replies.english.sizes import raw_words
from planning.replies.intents import Intent, KitchenSays, MoveTo, ReplyContext, Reschedule, Resize
from planning.replies.text import Sentence
from planning.when import Unclear, parse_when

_THING = r"(?:it|this|that|everything|the (?:whole )?(?:potluck|supper|dinner|party|feast|meal|event|date|day|time|thing|start|place|venue|location)(?: time)?|our (?:potluck|supper|dinner|party))"
_POLITE = r"^ (?:(?:can we|could we|bot|ok|so|right|sorry|actually|folks|all|please|update|change of plan|new plan|change|let us|can you|could you|we will be|it will be|we (?:will|have to|need to|must|are going to|had to|want to|have)|i (?:have to|need to|want to|would like to|am going to|will)|do|it is|we are|now)(?: [,:-])? )*"
_MOVE = re.compile(
    rf"{_POLITE}(?:{_THING} (?:is|has|has been|will be|was|had to be|needs to be|got) (?:now )?)?(?P<verb>moved?|shift(?:ed)?|changed?|postponed?|rescheduled?|pushed?|delay(?:ed)?|switch(?:ed)?|bring|put|set|make|start(?:ing|s)?|hold|do|relocated?)(?: {_THING})?(?: (?:back|forward|out|off|on|over|up))?(?: (?:to|until|till|for|by|at|from|on))? (?P<to>[^\x00]+?) $"
)
_NEW = re.compile(
    rf"{_POLITE}(?:(?:the|our) )?(?:new|changed|change of|different) (?P<what>date|day|time|start|place|venue|location|address)(?: and (?:date|time))?(?: is| will be| :|:|,)* (?P<to>[^\x00]+?) $"
)
_INSTEAD = re.compile(rf"{_POLITE}(?P<to>[^\x00]+?)(?: ,)? (?:instead|now|then)(?: (?:of|not) [^\x00]+)? $")
_HOUR_OR_DAY = re.compile(
    r"[0-9] ?(?:am|pm|h|o'?clock)|[0-9][:.][0-9]{2}|[a-z]{3,6}day|\b(?:noon|midday|tomorrow|tonight|at [0-9])"
)
_PLACE = re.compile(r"^(?:at|in|@|inside|outside|behind|by) (?:the |our |my )?[a-z]")
_SIZE = (
    (re.compile(rf"{_POLITE}(?:(?:expect|expecting|reckon with|plan for|planning for|count on|size|headcount|guests|people)(?: is| are| :|:)*) (?:about |around |roughly |some |up to )*(?P<n>{NUMBER})(?: (?:people|guests|persons|folks|heads|of us|in all|in total|altogether|total))* $"), 0.9),
    (re.compile(rf"{_POLITE}(?:about|around|roughly|some|probably|maybe|more like|up to|closer to) (?P<n>{NUMBER})(?: (?:people|guests|persons|folks|heads|of us|in all|in total|altogether|total|coming|now))+ $"), 0.7),
    (re.compile(rf"^ (?:now |so |then |ok )*(?:we (?:are|will be)|there (?:are|will be)|it (?:is|will be)|makes? (?:that|it)) (?:about |around |roughly |probably |now |more like |going to be |up to )*(?P<n>{NUMBER})(?: (?:people|guests|persons|folks|heads|of us|in all|in total|altogether|total|now|coming))* $"), 0.7),
    (re.compile(rf"^ (?P<n>{NUMBER}) (?:people|guests|persons|folks|heads)(?: (?:in all|in total|altogether|total|coming|now|instead))* $"), 0.7),
)  # fmt: skip
OWN_PARTY = 12
"""Up to so many a host may mean the own party (common practice, no source)."""
_APPLIANCE = r"(?:ovens?|racks?|burners?|hobs?|rings?|stoves?|grills?|barbecues?|bbqs?|slow cookers?|microwaves?|circuits?|outlets?|sockets?|fridges?|freezers?|cooks?|helpers?|pans? (?:per|on a) rack)"
_KITCHEN = re.compile(
    rf"^ (?:(?:we have|we have got|i have|i have got|there is|there are|the kitchen has|my kitchen has|our kitchen has|the kitchen|kitchen|only|just|about|in the kitchen|with|:|,) )*(?P<what>(?:{NUMBER}|an?|no) (?:[a-z-]+ )??{_APPLIANCE}(?:(?: ,)?(?: and| with| ,| \+| each)* (?:{NUMBER}|an?|no) (?:[a-z-]+ )??{_APPLIANCE})*)(?: (?:each|here|there|in the kitchen|at the (?:hut|hall|venue|house)|in all|only|that is all))* $"
)


def read_hosting(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """The host's own words about the whole potluck; nothing from anybody else, or in the open chatter."""
    if not context.host or not context.addressed or context.asked is not None:
        return []
    if sentence.question and not re.match(r"^ (?:can|could) (?:you|we|i) ", sentence.text):
        return []
    wished = 0.7 if sentence.question and not re.match(r"^ (?:can|could) you ", sentence.text) else 1.0
    text, tokens = sentence.text, sentence.tokens
    start, end = sentence.span(0, len(tokens))

    def raw(match: re.Match[str], group: str) -> str:
        return raw_words(tokens[slice(*sentence.token_range(match, group))]).strip(" ,")

    if (match := _KITCHEN.match(text)) is not None:
        return [KitchenSays(raw(match, "what"), start=start, end=end, confidence=0.9)]
    for pattern in (_NEW, _MOVE, _INSTEAD):
        if (match := pattern.match(text)) is None:
            continue
        to = raw(match, "to")
        plain = match["to"].strip()
        if pattern is _INSTEAD and "instead" not in text.split()[-4:] and not _HOUR_OR_DAY.search(plain):
            # "we're 18 now" is about people: a bare number is no hour.
            continue
        moved = pattern is not _MOVE or match["verb"].startswith(
            ("move", "shift", "change", "postpone", "resched", "push", "delay", "switch", "start", "reloc")
        )
        what = match.groupdict().get("what") or ""
        if what not in ("place", "venue", "location", "address") and _a_time(to, context):
            if moved or _THING_SAID.search(text):
                to = re.sub(
                    r"^(?:(?:we|let's|lets|let us) )?(?:make|start|do|have|hold|move)(?: it)?(?: at| to| on)? ",
                    "",
                    to,
                    flags=re.IGNORECASE,
                )
                return [Reschedule(to, start=start, end=end, confidence=min(0.9, wished))]
            continue
        named = what in ("place", "venue", "location", "address")
        if (
            named
            or _PLACE.match(plain)
            or (pattern is _MOVE and moved and re.match(r"(?:the|our|my|[a-z]+'s) ", plain))
        ):
            place = re.sub(r"^(?:at|in|to|@) ", "", to, flags=re.IGNORECASE)
            if re.search(r"\b(?:bring|bringing|come|coming|make it)\b", plain) or len(place) > 80:
                continue
            sure = 0.9 if named or (pattern is _MOVE and moved) or text.rstrip().endswith("instead") else 0.7
            return [MoveTo(place, start=start, end=end, confidence=min(sure, wished))]
    for pattern, sure in _SIZE:
        if (match := pattern.match(text)) is not None:
            n = number_of(match["n"])
            if n > OWN_PARTY and n <= 1000:
                return [Resize(n, start=start, end=end, confidence=sure)]
    return []


_THING_SAID = re.compile(rf" {_THING} ")


def _a_time(words: str, context: ReplyContext) -> bool:
    """Whether the words name a day or a clock time."""
    if context.now is None:
        return (
            re.search(
                r"\b(?:[0-9]{1,2} ?[ap]m|[0-9]{1,2}:[0-9]{2}|(?:mon|tues|wednes|thurs|fri|satur|sun)day|tomorrow)\b",
                words.lower(),
            )
            is not None
        )
    try:
        return len(parse_when(words[:100], context.now, context.timezone, foreign=False).rest.split()) <= 2
    except Unclear as wrong:
        return wrong.say.key != "when-not-understood"
    except (KeyError, ValueError, OSError):
        return False
