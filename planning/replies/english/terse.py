"""Questions in a word or two ("parking??", "gaps?"), and those told as a complaint ("nobody has told me where")."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

from planning.replies.english.lexicon import any_of
from planning.replies.intents import Ask, Intent, ReplyContext
from planning.replies.text import Message, Sentence

_LEAD = r"^ (?:(?:ok|so|and|but|also|sorry|bot|,|the|any|some|what about|how about|quick question|question|q|:|your|is there|still|again) )*"
_END = r"(?: (?:again|pls|now|then|yet|so far|at all|there|on site|available|situation|info|details|or not|though|for (?:this|it|the (?:supper|potluck|party|dinner))))* $"
_NOUNS = tuple(
    (topic, re.compile(rf"{_LEAD}(?:{nouns}){_END}"))
    for topic, nouns in (
        ("when", r"(?:start|starting|begin|end|ending|finish|arrival|serving|eating|dinner|door|kick-?off)(?: time)?s?|times?|dates?|what day|which day|hour|when|doors|(?:start|end) and (?:start|end)"),
        ("where", r"(?:full |exact |street )?address|location|venue|place|where|directions|postcode|zip code|house number|map|whereabouts"),
        ("missing", r"gaps?|holes?|missing|(?:anything|something|what) (?:needed|missing|left|short)|needed|what is (?:needed|missing|left)|leftover slots|free slots|open slots|shortages?|shortfalls?|needs"),
        ("who-comes", r"head ?count|numbers|how many(?: people| of us)?|who|attendance|turnout|guest list"),
        ("who-brings", r"(?:full |whole |current )?(?:menu|list|line-?up|spread)|dishes|food"),
        ("what-should-i-bring", r"ideas|suggestions|requests|wishes|what to bring|bring what"),
        ("can-eat", rf"(?:{any_of('diet')}|veggie|veg|gf|df|nut-free|dairy-free|gluten-free|meat-free|halal|kosher|plant-based)(?: (?:options?|food|dishes|stuff|choices?|things?|mains?|sides?|desserts?))?"),
        ("oven", r"ovens?(?: (?:space|room|free))?|fridge(?: space)?|freezer(?: space)?|microwave|grill|stove|hob|burners?|outlets?|plugs?|sockets?|power|kitchen access"),
        ("host", r"(?:is it |are |is there |any )?(?:dogs?|pets?|kids|children|strangers|plus ones?|partners|neighbou?rs|tents?) (?:welcome|allowed|invited|permitted|ok|okay)|parking|car ?park|parking spots?|where to park|park|dress ?code|wi-?fi(?: password)?|toilets?|loos?|bathroom|restroom|dogs?|pets?|bus(?:es)?|trains?|lifts?|lift share|car ?pool|ride ?share|wheel-?chair(?: access)?|step-?free|access|stairs|playground|trampoline|pool|swimming|music|karaoke|games|smoking|byob|b\.?y\.?o\.?b|rain plan|plan b|if it rains|indoors or out(?:doors|side)|inside or out(?:side)?|shoes(?: off)?|sleep(?:ing)? over|camping|tents|high ?chair|changing table|cot|gate code|door code|key ?code|entry code|contact|phone number|allergens list"),
    )
)
_SHORT = 7
"""A question of more words says with its verb what it is after."""
_WHICH = r"(?P<what>where|when|what (?:time|day|date)|which (?:day|date|time|place|house)|how (?:long|late|to get|do (?:i|we) get)|what (?:to|i should|we should|should i|i am supposed to|i am meant to|i can) (?:bring|make|cook|contribute)|who (?:brings|is bringing|is making|makes)|who (?:is coming|comes)|what is (?:missing|needed|left|still needed|still missing)|(?:about )?the (?:address|time|date|place|parking)|where to park)"
_SENDS = re.compile(
    r"^ (?:(?:please|hey|hi|ok|so|and|bot|,|can you|could you|can someone|could someone|someone|would you) )*(?:send|drop|share|post|text|give|tell|remind)(?: (?:me|us))?(?: of)?(?: the| your)? (?:full |exact )?(?P<what>address|addy|location|pin|directions|time|date|start time|place)(?: (?:again|please|here|pls))* $"
    r"|^ (?:(?:so|and|ok) )*(?:where (?P<at>at|(?:are )?we (?:going|meeting|at|doing (?:it|this))|to)|what is the addy)(?: again| exactly)? $"
)
""" "Send address please", "where at"."""
_UNTOLD = re.compile(
    rf"\b(?:(?:no one|nobody|no-one|none of you|they|you|it) (?:has |have |did |does |had )?(?:not )?(?:yet |ever |even |actually |really )*(?:told|tell|said|say|says|mentioned|mention|informed|shared|share|explained|explain)(?: (?:me|us|anyone))?(?: yet)?|(?:i|we) (?:still |really |just )*(?:do not|have not|can not|could not|never|am not|are not)(?: (?:quite|really|even|yet|actually|been))* (?:know|told|find|found|sure|see|remember|recall|heard|hear|figure out|work out|certain|clear)(?: yet)?|(?:i|we) (?:have )?(?:forgot|forgotten|lost|missed|no idea|have no idea|am wondering|was wondering|would like to know|need to know|want to know|wonder|ask myself)|^ (?:wondering|no idea|no clue|not sure|unsure|unclear|curious|forgot)) (?:exactly |about )?{_WHICH}\b"
)
_TOLD_TOPIC = (
    ("host", re.compile(r"park")),
    ("what-should-i-bring", re.compile(r"^what (?:to|i|we|should) ")),
    ("missing", re.compile(r"^what is (?:missing|needed|left|still)")),
    ("who-brings", re.compile(r"^who (?:brings|is (?:bringing|making)|makes)")),
    ("who-comes", re.compile(r"^who ")),
    ("where", re.compile(r"where|place|house|address|get")),
    ("when", re.compile(r"when|time|day|date|long|late")),
)
_LIST = re.compile(
    r"^ (?:(?:a|the|your|me|us|give|show|send|post|need|can i have|may i see|could you send|short|quick|full|current|latest|,) )*(?:check-?list|overview|rundown|run-down|tally)(?: (?:of (?:what is|the) [a-z ]+|so far|please|pls))*(?= $| ,| :| -)"
)
_WHICH_COULD = re.compile(
    rf" (?:which|what|any|anything|something) (?:of (?:these|those|this|it|the (?:dishes|food|list)) |dish(?:es)? |food |here |there |on the (?:list|table|menu) )*(?:could|can|would|may|might|should|does|is|are|that) .*\b(?:{any_of('diet')}|vegans?|vegetarians?|celiacs?|coeliacs?|veggies?|pescatarians?)\b"
)
_ENOUGH = re.compile(
    r"^ (?:how (?:is|are) (?:the |our |we (?:doing )?(?:for|on) )?)?(?P<what>[a-z ]{3,30}?)(?: (?:looking|doing|coming along|situation|count))?(?: (?:,|-|:|–))? (?:enough|too (?:many|much|few|little)|plenty|ok|covered|sorted|short)(?: already)? or (?:not|too|more|still|do|short|need|enough|missing|should)\b"
)
_BACKWARDS = (
    ("when", re.compile(r"^ (?:(?:it|this|that|the [a-z]+|dinner|supper|food|party|potluck|everything|so|and) )*(?:starts?|begins?|ends?|finish(?:es)?|is|happens?|opens?|kicks off|we (?:start|eat|meet)) (?:when|what time|which day)(?: again| exactly)? $")),
    ("where", re.compile(r"^ (?:(?:it|this|that|the [a-z]+|dinner|supper|party|potluck|so|and) )*(?:is|happens?|held|meeting|we (?:meet|go)) where(?: again| exactly)? $")),
    ("what-should-i-bring", re.compile(r"^ (?:(?:so|and|ok) )*(?:(?:i|we) )?(?:should )?(?:bring|bringing|make|cook)(?: (?:i|we))? what $|^ (?:something|anything) (?:[a-z]+ ){0,2}(?:to|i (?:can|could|should)) (?:bring|make|contribute) $")),
    ("who-comes", re.compile(r"^ (?:and |so )*(?:is |are )?coming who $|^ (?:what is |the |current |total )*(?:total )?(?:number|count|tally) of (?:[a-z]+ )?(?:people|guests|attendees|heads|adults|us|persons)(?: coming| so far| now)? $")),
)
"""The word that asks stands last ("starts when?")."""
_CLOCKS = frozenset("⏰🕐🕑🕒🕓🕔🕕🕖🕗🕘🕙🕚🕛⌚📅🗓⏱")
_PLACES = frozenset("📍🗺🧭🏠")


def read_terse(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """What a question of few words, or a complaint of not having been told, is after."""
    if not context.addressed:
        return []
    text = sentence.text
    if sentence.question and len(sentence.tokens) <= _SHORT:
        for topic, pattern in (*_NOUNS, *_BACKWARDS):
            if pattern.match(text):
                return _asked(sentence, topic, 0.85)
    if sentence.question and _ENOUGH.match(text):
        return _asked(sentence, "missing", 0.82)
    if _LIST.match(text):
        return _asked(sentence, "missing", 0.82)
    if sentence.question and _WHICH_COULD.search(text):
        return _asked(sentence, "can-eat", 0.85)
    if (sends := _SENDS.match(text)) is not None:
        return _asked(sentence, "when" if sends["what"] in ("time", "date", "start time") else "where", 0.88)
    match = _UNTOLD.search(text)
    if match is None or " if " in text[: match.start() + 1]:
        return []
    for topic, pattern in _TOLD_TOPIC:
        if pattern.search(match["what"]):
            return _asked(sentence, topic, 0.85)
    return []


def read_signs(message: Message, context: ReplyContext) -> list[Intent]:
    """A question that is only a sign: a clock, a pin on a map."""
    if message.sentences or not context.addressed or len(message.symbols) != 1:
        return []
    for topic, signs in (("when", _CLOCKS), ("where", _PLACES)):
        if any(s in signs for s in message.symbols):
            return [Ask(topic, "", start=0, end=0, confidence=0.85)]
    return []


def _asked(sentence: Sentence, topic: str, sure: float) -> list[Intent]:
    start, end = sentence.span(0, len(sentence.tokens))
    sentence.take(0, len(sentence.tokens))
    return [Ask(topic, "", start=start, end=end, confidence=sure)]
