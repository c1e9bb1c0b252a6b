"""Diets and allergies: whose, how many, how strict. The one part where a wrong reading can hurt somebody."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace

from planning.potluck import Need
from planning.replies.english.lexicon import NUMBER, any_of, number_of, words
from planning.replies.intents import Intent, ReplyContext, SetNeeds, SetPregnant
from planning.replies.text import Message, Sentence

_DIET = rf"(?P<diet>{any_of('diet')})"
_ALLERGEN = any_of("allergen")
_LIST = rf"(?P<list>(?:{_ALLERGEN})(?:(?: ,)?(?: and| or| &| \+|,| /)? (?:all |any |to |raw |also to )?(?:{_ALLERGEN}))*)(?![a-z-])"
_KIN = rf"(?:(?:my|our|the) (?:[a-z]+ )?|(?<=^ )|(?<=, )|(?<=and )|(?<=but ))(?P<kin>{any_of('kin')}|{any_of('kins')}|{any_of('guestkin')})(?: (?!is\b|are\b|has\b|have\b|can\b|does\b|do\b|will\b|must\b|who\b|and\b|or\b|also\b)[a-z]+)??"
_FOOD_AFTER = re.compile(
    r"^ (?:lasagna|chili|curry|option|options|dish|dishes|main|mains|food|meal|version|pie|cake|salad|burgers?|sausages?|stew|"
    r"casserole|pizza|one|side|cooking|friendly|brownies|cookies|bake|quiche|soup|pasta|stuff|recipe|choices?|menu|dip|"
    r"[a-z]+ (?:lasagna|chili|curry|pie|cake|salad|bake|soup|stew|casserole|burgers|brownies|cookies|rolls|pasta|dip))\b"
)
_IS = rf"(?:(?:my|our) [a-z]+ and i are|i and (?:my|our) [a-z]+ are|me and (?:my|our) [a-z]+ are|i am|we are|we are both|both of us are|i have been|{_KIN} (?:is|are|has been)|(?:one|two|three|(?P<n2>{NUMBER})) of (?:us|them|ours|the (?:kids|girls|boys|children|adults)) (?:is|are)|(?:he|she) is|they are|am|being|as|who is|who are)"
_DIET_RULES = (
    re.compile(rf" {_IS} (?:a |an |also |both |all |strictly |strict |a strict |now |vegetarian and |actually |still |mostly |lifelong |fully |completely )*{_DIET}(?![a-z-])"),
    re.compile(rf" (?P<n>{NUMBER}|a|an|another|both)(?: of (?:us|them|whom|which))?(?: is| are|,)?(?: a| an| strict| of whom)* {_DIET}(?![a-z-])"),
    re.compile(rf" (?:i|we) (?:only )?(?:eat|need|keep|follow|have to eat|can only eat|must eat)(?: a)?(?: strictly| strict)? {_DIET}(?: diet| food| meals)?(?![a-z-])"),
    re.compile(rf" {_DIET} (?:here|for me|diet|in our family|in the family|household|over here|family)(?![a-z-])"),
    re.compile(rf" {_KIN} ?,? (?:who is )?(?:a )?{_DIET}(?= $| ,| and)"),
)  # fmt: skip
_ALLERGY_RULES = (
    re.compile(rf" (?P<not>not )?(?:(?:severely|very|highly|deathly|seriously|mildly|slightly|also|all|both|badly|super|a bit|quite) )*allergic (?:to |against )(?:all |any |the |raw |cooked |both )*{_LIST}"),
    re.compile(rf" {_LIST} (?:allergy|allergies|allergic)\b"),
    re.compile(rf" (?:allergy|allergies|allergic reaction|anaphylaxis|anaphylactic)(?: :| to| -|,)+ (?:all |any )?{_LIST}"),
    re.compile(rf" (?P<epi>epipen|epi-pen|anaphylactic) (?:for|to|from) {_LIST}"),
)  # fmt: skip
_INTOLERANCE_RULES = (
    re.compile(rf" {_LIST} (?:intolerant|intolerance|sensitivity|sensitive|issues|problems)\b"),
    re.compile(rf" (?:intolerant|intolerance|sensitive|sensitivity) (?:to |of )(?:all )?{_LIST}"),
)
_AVOID_RULES = (
    re.compile(rf" (?:i|we|{_KIN}|he|she|they|(?P<n>{NUMBER}) of us)(?: (?:also|really|both|all))? (?:can not|do not|does not|must not|will not|am not allowed|can never)(?: to)? (?:eat|have|do|tolerate|touch|digest|take|stomach|handle|consume|drink) (?:any |all |the )?{_LIST}"),
    re.compile(rf" no {_LIST} for (?:me|us|{_KIN.replace('?P<kin>', '?:')}|one of us)"),
    re.compile(rf" (?:i|we|{_KIN}) (?:avoid|avoids|stay off|stays off|keep off)(?: all| any)? {_LIST}"),
)  # fmt: skip
_CELIAC = re.compile(rf" (?:i|{_KIN}|one of us) (?:have|has)(?: got)?(?: a)? (?P<diet>celiac)(?: disease)?(?![a-z])")
_ILL_FROM = re.compile(rf" (?:get|gets|got)(?: [a-z]+)?? (?:ill|sick|hives|a rash|migraines) from (?:eating )?{_LIST}")
_AFTER_DIET = frozenset([",", "and", "&", "+", "but", "so", "here", "now", "too", "also", "for", "since", "by", "though", "please", "or", "as", "if", "with", "who", "this", "that", "then", "-", "(", ")", "/", "myself", "ourselves", "actually", "btw", "unfortunately", "not", "only", "plus", "just", "from"])
_EXCEPT = re.compile(rf" (?:everything|anything|all) (?:except(?: for)?|but|apart from|besides|other than) (?:the )?{_LIST}")
_NO_AND_ALLERGY = re.compile(rf" no {_LIST}(?= |$)(?=.* (?:allergy|allergic|allergies)\b)")
_SEVERE = re.compile(
    r"\b(?:severe|severely|deathly|deadly|serious|seriously|terrible|terribly|extreme|life-threatening|life threatening|anaphylactic|anaphylaxis|epipen|epi-pen"
    r"|bad(?= (?:[a-z-]+ ){0,3}allerg)|nasty(?= (?:[a-z-]+ ){0,3}allerg)|extremely|highly|badly|airborne|acute|very bad|really bad|could (?:kill|die)|will (?:kill|die)|even traces|not even (?:a )?traces?)\b"
)
"""Words that make an allergy a severe one: taken wherever they stand in its sentence, the stricter reading."""
_MAKES_ILL = re.compile(rf" {_LIST} (?:makes?|gives?|causes?|sends?) (?:me|us|him|her|them|my [a-z]+) (?:[a-z]+ )??(?:swell|ill|sick|itch[a-z]*|hives|rash|throw up|vomit|bloated|migraines?|headaches?|close up|to hospital|reactions?|cramps?)")
_BESIDE = re.compile(
    rf"(?:\x00|,| and| also| plus| &) (?:(?:also|and|,|both|i am|we are|fully|strictly) )*(?P<diets>(?:{any_of('diet')})(?:(?: ,)?(?: and| &| \+|,| or)? (?:{any_of('diet')}))*)(?: (?:too|also|as well|here|for me|for us|food|diet))*(?= $| ,| and)"
)
_CLEARED = re.compile(
    r" (?:(?:have |there are |we have |i have |with )?(?:no|zero|without(?: any)?|do not have any|not any) (?:known |food |special |particular )*(?:allerg(?:y|ies)|dietary (?:restrictions?|requirements?|needs?|issues?)|diets?|restrictions?|dietaries|intolerances|food issues|special diets?|diet(?:ary)? restrictions)(?: or (?:allergies|diets|intolerances|dietary [a-z]+|anything))?"
    r"|(?:none|nobody|no one) (?:of us |in our family |in my family |here )?(?:has|have) (?:any )?(?:allergies|diets|dietary [a-z]+|restrictions)|(?:i|we)(?: will| all| both| can)* eat (?:anything|everything|it all|whatever)(?: and everything)?|(?:i|we) (?:am|are) not (?:allergic to|fussy|picky)(?: anything| about food| eaters?)?|nothing special diet ?wise|omnivores?|eats? everything|do not have (?:any )?(?:allergies|dietary [a-z]+)|not allergic to anything)(?= $| ,| here| for| and| in| so| at| on| from| with| among| that| -|\))"
)
_NO_LONGER = re.compile(rf" (?:i am|we are|{_KIN} is) (?:no longer|not|not actually|not really|not any ?more) (?:a |an )?{_DIET}(?! any)")
_GONE = re.compile(rf" {_LIST} (?:allergy|intolerance) (?:is |has |was )?(?:now )?(?:gone|cleared(?: up)?|outgrown|went away|over|no more|a mistake|a false alarm)(?![a-z])")
_NO_LONGER_BARE = re.compile(rf"^ (?:(?:i am|we are) )?(?:no longer|not) (?:a )?{_DIET}(?: any ?more| now)?(?= $)")
_NOT_ALLERGIC = re.compile(rf" (?:not|no longer) allergic to (?:any )?{_LIST}")
_OUTGREW = re.compile(rf" (?:outgrew|grew out of|got over) (?:the |his |her |my )?{_LIST}(?: allergy)?")
_JOKE_ALLERGY = re.compile(rf" allergic to (?:the |your |my |all |doing |any |having )*(?:{any_of('nonallergen')})(?![a-z])")
_UNKNOWN_ALLERGY = re.compile(r" allergic to (?P<what>[a-z-]+(?: [a-z-]+)?)")
_NONE = re.compile(r"^ (?:no|none|nothing|nope|nil|zero|all good|no needs|not really|nobody|none of us)(?:(?: ,)? (?:all good|none|nothing|special|at all|for us|for me|here|needed))*(?= $)")
_ALLERGENS_ALONE = re.compile(rf"^ (?:just |only |no |yes(?: ,)? |also |and )*{_LIST}(?= $| ,)")
_SPLIT = re.compile(r"(?: ,)?(?: (?:and|or|&|\+|/)| ,)+ |,")
_BARE = re.compile(
    rf"^ (?:(?:just|only|yes|i am|a|we are|strictly|strict|also|and|,|one|oh|all|both) )*(?P<diets>(?:{any_of('diet')})(?:(?: ,)?(?: and| &| \+|,| or)? (?:{any_of('diet')}))*)(?: (?:only|here|for me|for us|one|too|also|as well|both of us|for both of us|myself|by the way|btw|household|family))*(?= $| ,| and)"
)


def _needs_of(listed: str, count: int, severity: str) -> tuple[Need, ...]:
    """The needs a list of foods stands for; "nuts" is tree nuts and peanuts, to be on the careful side."""
    table = words("allergen")
    found: list[Need] = []
    for piece in re.findall(rf"(?<![a-z-])(?:{_ALLERGEN})(?![a-z-])", listed):
        for need in table[piece].split("+"):
            name = {"gluten": "gluten-free", "meat": "vegetarian"}.get(need, need)
            kind = severity
            if name == "vegetarian":
                kind = "diet" if severity == "" else severity
            if all(n.need != name for n in found):
                found.append(Need(name, count, kind))
    return tuple(found)


def _count(match: re.Match[str], context: ReplyContext) -> int:
    got = match.groupdict()
    for group in ("n", "n2"):
        word = got.get(group)
        if word == "both":
            return 2
        if word and word not in ("a", "an", "another"):
            return number_of(word)
    text = match[0]
    if re.match(r" (?:two) of ", text):
        return 2
    if re.match(r" (?:three) of ", text):
        return 3
    if re.match(r" (?:(?:my|our) [a-z]+ and i|i and|me and|we are both|both of us)", text) or " both " in text[:16]:
        return 2
    if re.match(r" we are", text):
        return context.party.total if context.party is not None and context.party.total > 1 else 1
    return 1


_SUBJECT = re.compile(
    rf" {_KIN}(?: [a-z]+)?(?: (?:has|have|is|with|got|who|,|a|an|also|the|real|really|very|bad|badly|severe|severely|serious|nasty|mild|terrible|strong|highly|deathly|deadly|life-threatening|anaphylactic))* ?$"
)


def _subject(sentence: Sentence, match: re.Match[str]) -> str | None:
    """Whose need it is when their name stands before it ("my kid has a peanut allergy")."""
    before = _SUBJECT.search(sentence.text[: match.start() + 1].rstrip() + " ")
    return _member(before) if before is not None else None


def _member(match: re.Match[str]) -> str | None:
    kin = match.groupdict().get("kin")
    if not kin:
        return None
    first = kin.split()[0]
    known = words("kin").keys() | words("guestkin").keys() | words("kins").keys()
    return kin if kin in known else first if first in known else kin


def read_needs(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """Needs of the writer's party; empty for jokes, dishes ("vegan chili") and other people's needs."""
    me, found = context.writer, []

    severe = _SEVERE.search(sentence.text) is not None and not re.search(r" not (?:a |an |very |that |too )*(?:severe|serious|bad)", sentence.text)

    def said(match: re.Match[str], needs: tuple[Need, ...], confidence: float, cleared: bool = False) -> None:
        if severe and not cleared:
            needs = tuple(replace(n, severity="severe allergy") if n.severity == "allergy" else n for n in needs)
        start, end = sentence.span_of(match)
        member = _member(match) or _subject(sentence, match)
        if member in words("guestkin") and not context.addressed:
            confidence = 0.4  # a friend's allergy, told to friends
        found.append(
            SetNeeds(me, needs, cleared, member, start=start, end=end, confidence=confidence)
        )
        sentence.take_match(match)

    if _JOKE_ALLERGY.search(sentence.left) and not re.search(rf" allergic to (?:{_ALLERGEN})", sentence.left):
        match = _JOKE_ALLERGY.search(sentence.left)
        assert match is not None
        sentence.take_match(match)
        return []
    if context.asked == "diets" and not sentence.question:
        if (match := _NONE.match(sentence.left)) is not None:
            said(match, (), 0.93, cleared=True)
            return list(found)
        if (match := _ALLERGENS_ALONE.match(sentence.left)) is not None:
            # Below "any diets or allergies?" a bare food is taken as an allergy, the stricter reading.
            said(match, _needs_of(match["list"], 1, "allergy"), 0.85)
    if sentence.question and not re.search(r" (?:i am|we are|my [a-z]+ is)\b", sentence.text):
        return []
    for pattern in (_NO_LONGER, _NO_LONGER_BARE, _NOT_ALLERGIC, _OUTGREW, _GONE):
        while (match := pattern.search(sentence.left)) is not None:
            got = match.groupdict()
            gone = (Need(words("diet")[got["diet"]], 1, "diet"),) if got.get("diet") else _needs_of(got["list"], 1, "")
            said(match, gone, 0.6, cleared=True)
    if (match := _CLEARED.search(sentence.left)) is not None:
        said(match, (), 0.92, cleared=True)
    if (match := _CELIAC.search(sentence.left)) is not None:
        said(match, (Need("gluten-free", 1, "allergy"),), 0.93)
    if (match := _ILL_FROM.search(sentence.left)) is not None:
        said(match, _needs_of(match["list"], 1, ""), 0.7)
    if (match := _MAKES_ILL.search(sentence.left)) is not None:
        said(match, _needs_of(match["list"], 1, "allergy"), 0.7)
    if (match := _EXCEPT.search(sentence.left)) is not None:
        said(match, _needs_of(match["list"], 1, ""), 0.7)
    if (match := _NO_AND_ALLERGY.search(sentence.left)) is not None:
        said(match, _needs_of(match["list"], 1, "allergy"), 0.75)
    for rules, severity in ((_ALLERGY_RULES, "allergy"), (_INTOLERANCE_RULES, "intolerance"), (_AVOID_RULES, "")):
        for pattern in rules:
            while (match := pattern.search(sentence.left)) is not None:
                if match.groupdict().get("not"):
                    sentence.take_match(match)
                    continue
                if severity == "" and re.search(r" (?:allergic|allergy|anaphyla[a-z]+)\b", sentence.text):
                    severity = "allergy"
                before = sentence.left[: match.start()]
                count = _count(match, context)
                lead = re.search(rf" (?P<n>{NUMBER})(?: of (?:us|them))?(?: is| are| with| has| have)?(?: a| an| got)*$", before)
                if lead is not None and count == 1:
                    count = number_of(lead["n"])
                third = re.search(r" (?:he|she|they|[a-z]+'s|someone|somebody|anyone|people) (?:is|are|has|have|was)?$", before)
                said(match, _needs_of(match["list"], count, severity), 0.6 if third else 0.93)
    for pattern in _DIET_RULES:
        while (match := pattern.search(sentence.left)) is not None:
            after = sentence.left[match.end() :]
            following = after.split()[:1]
            if _FOOD_AFTER.match(after) or _dish_follows(after):
                break
            if following and following[0] not in _AFTER_DIET and "\x00" not in following[0] and not re.fullmatch(NUMBER, following[0]):
                break  # "vegetarian jokes"
            word = match["diet"]
            severity = "allergy" if word.startswith("celiac") else "diet"
            said(match, (Need(words("diet")[word], _count(match, context), severity),), 0.93)
    if context.addressed and not sentence.question:
        _bare(sentence, context, said, bool(found))
    return list(found)


def _diets_of(listed: str) -> tuple[Need, ...]:
    table = words("diet")
    return tuple(
        Need(table[w], 1, "allergy" if w.startswith("celiac") else "diet")
        for w in re.findall(rf"(?<![a-z-])(?:{any_of('diet')})(?![a-z-])", listed)
    )


def harden(message: Message, found: list[Intent]) -> list[Intent]:
    """ "Peanut allergy. Severe.": a sentence of its own that says how bad it is makes the allergies beside it severe."""
    allergen = re.compile(rf"(?<![a-z-])(?:{_ALLERGEN})(?![a-z-])")
    if not any(_SEVERE.search(s.text) and not allergen.search(s.text) and " not " not in s.text for s in message.sentences):
        return found
    return [
        replace(i, needs=tuple(replace(n, severity="severe allergy") if n.severity == "allergy" else n for n in i.needs))
        if isinstance(i, SetNeeds) and not i.cleared else i
        for i in found
    ]  # fmt: skip


def _bare(sentence: Sentence, context: ReplyContext, said: Callable[..., None], beside: bool) -> None:
    """Needs that are only named ("gluten free too", "shellfish and celery, also my son can't have mustard"): written
    to the bot they are needs. A food alone may be a dish as well, so it is asked about unless a need stands beside it."""
    if (match := _BARE.match(sentence.left)) is not None:
        after = sentence.left[match.end() :]
        if _FOOD_AFTER.match(after) or _dish_follows(after):
            return
        needs = _diets_of(match["diets"])
        sure = 0.9 if context.asked == "diets" else 0.7 if context.asked in ("bring", "servings") else 0.88
        said(match, needs, sure)
        return
    if beside and (match := _BESIDE.search(sentence.left)) is not None:
        after = sentence.left[match.end() :]
        if not _FOOD_AFTER.match(after) and not _dish_follows(after):
            said(match, _diets_of(match["diets"]), 0.88)
    refused = _REFUSED.match(sentence.left)
    own = " ".join(dish for _, dish in context.own_promises).lower()
    if refused is not None and not beside and context.asked not in ("bring", "servings") and refused["list"].split()[0] not in own:
        said(refused, _needs_of(refused["list"], 1, ""), 0.7)
        return
    match = _ALLERGENS_ALONE.match(sentence.left)
    if match is None or context.asked in ("bring", "servings"):
        return
    dishes = words("dish")
    pieces = re.findall(rf"(?<![a-z-])(?:{_ALLERGEN})(?![a-z-])", match["list"])
    if beside:
        said(match, _needs_of(match["list"], 1, "allergy"), 0.85)
    elif all(p not in dishes for p in pieces) and not re.search(r"[a-z]", sentence.left[match.end() :]):
        said(match, _needs_of(match["list"], 1, "allergy"), 0.65)


_REFUSED = re.compile(rf"^ (?:please ,? ?)?(?:no|without|nothing with|avoid) (?:any )?{_LIST}(?: in (?:anything|it|the food|there))?(?: please)?(?= $| ,| as| because| or )")
_NAMED_ILLNESS = re.compile(r" (?:allerg[a-z]+|celiacs?|intoleran[a-z]+|anaphyla[a-z]+|epipen) ")


def read_lost(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """Where an illness is named and no rule has read whose or how, the foods beside it are asked about, not lost."""
    left = sentence.left.replace("\x00", " ")
    if sentence.question or _NAMED_ILLNESS.search(sentence.left) is None or re.search(r" (?:no|not|never|without|any|was|were|used to|grew out|outgrew|outgrown|got over|gone|anyone|someone|everyone|who|people|jokes?) ", left):
        return []
    listed = " ".join(re.findall(rf"(?<![a-z-])(?:{_ALLERGEN})(?![a-z-])", left))
    needs = _needs_of(listed, 1, "allergy") + ((Need("gluten-free", 1, "allergy"),) if " celiac" in left else ())
    start, end = sentence.span(0, len(sentence.tokens))
    return [SetNeeds(context.writer, needs, start=start, end=end, confidence=0.6)] if needs else []


_PREGNANT = re.compile(
    rf"(?: (?:i|we) (?:am|are|will be)| {_KIN}(?: ,)?(?: is| will be| who is)?| she is|^ am| also| being| and|^) (?:also |[0-9]+ (?:weeks?|months?) |heavily |very |now |currently |(?P<not>not|no longer|not any ?more) )*(?:pregnant|expecting(?= $| ,| and| a (?:baby|child|little)| twins| our| in (?:[a-z]+)))(?: any ?more)?"
)


def read_pregnant(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """A pregnancy in the writer's party: it decides what may be eaten."""
    match = _PREGNANT.search(sentence.left)
    if match is None or sentence.question:
        return []
    start, end = sentence.span_of(match)
    sentence.take_match(match)
    negated = bool(match["not"]) or re.search(r" any ?more$", match[0]) is not None
    member = _member(match)
    third = match[0].startswith((" she", " being", " also")) or member in words("guestkin")
    sure = 0.6 if negated or third else 0.92 if "pregnant" in match[0] else 0.7
    return [SetPregnant(context.writer, not negated, member, start=start, end=end, confidence=sure)]


def _dish_follows(after: str) -> bool:
    """Whether the word after a diet word is food ("vegan slaw")."""
    following = after.split()[:3]
    dishes = words("dish")
    return any(word in dishes for word in following[:2]) and bool(following) and following[0] not in (",", "and", "+", "\x00")


def unknown_allergy(sentence: Sentence) -> re.Match[str] | None:
    """ "allergic to" something we know neither as food nor as a joke."""
    return _UNKNOWN_ALLERGY.search(sentence.left)
