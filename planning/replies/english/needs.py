"""Diets and allergies: whose, how many, how strict. The one part where a wrong reading can hurt somebody."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

from planning.potluck import Need
from planning.replies.english.foods import (
    ALLERGEN,
    DIET,
    DIETS,
    KIN,
    LIST,
    diets_of,
    is_dish,
    kin_of,
    last_guest,
    member_of,
    name_before,
    needs_of,
    pieces,
)
from planning.replies.english.gone import read_cleared, read_gone
from planning.replies.english.illness import REACTS, hardened, is_severe
from planning.replies.english.lexicon import NUMBER, any_of, number_of, words
from planning.replies.intents import Intent, ReplyContext, SetNeeds
from planning.replies.text import Sentence

EVERYBODY = 9999
"""Stands for the whole party until `settle` knows how many that is."""
_OF_THEM = r"(?: of (?:us|them|ours|whom|which|those|(?:the|our|my|us) (?:[0-9]{1,2}|two|three|four|five|six|seven|eight|kids|girls|boys|children|adults|family|lot)))"
_IS = rf"(?:(?:my|our) [a-z]+ and i are|i and (?:my|our) [a-z]+ are|me and (?:my|our) [a-z]+ are|i am|we are|we are both|both of us are|all(?: [a-z]+)? of us are|i have been|{KIN} (?:is|are|has been)|(?P<n2>{NUMBER}){_OF_THEM} (?:is|are)|(?:he|she) is|they are|am|being|as|who is|who are)"
_DIET_RULES = (
    re.compile(rf" {_IS} (?:a |an |also |both |all |strictly |strict |a strict |now |vegetarian and |actually |still |mostly |lifelong |fully |completely )*{DIET}(?![a-z-])"),
    re.compile(rf" (?P<n>{NUMBER}|a|an|another|both|all){_OF_THEM}?(?: is| are|,)?(?: a| an| strict| of whom)* {DIET}(?![a-z-])"),
    re.compile(rf" (?:i|we) (?:only )?(?:eat|need|keep|follow|have to eat|can only eat|must eat)(?: a)?(?: strictly| strict)? {DIET}(?: diet| food| meals)?(?![a-z-])"),
    re.compile(rf" {DIET} (?:here|for me|diet|in our family|in the family|household|over here|family)(?![a-z-])"),
    re.compile(rf" {KIN} ?,? (?:who is )?(?:a )?{DIET}(?= $| ,| and)"),
)  # fmt: skip
_ALLERGY_RULES = (
    re.compile(rf" (?P<not>not )?(?:(?:severely|very|highly|deathly|seriously|mildly|slightly|also|all|both|badly|super|a bit|quite) )*allergic (?:to |against )(?:all |any |the |raw |cooked |both )*{LIST}"),
    re.compile(rf" {LIST} (?:allergy|allergies|allergic)\b"),
    re.compile(rf" (?:allergy|allergies|allergic reaction|anaphylaxis|anaphylactic)(?: :| to| -|,)+ (?:all |any )?{LIST}"),
    re.compile(rf" (?P<epi>epipen|epi-pen|anaphylactic) (?:for|to|from) {LIST}"),
)  # fmt: skip
_INTOLERANCE_RULES = (
    re.compile(rf" {LIST} (?:intolerant|intolerance|sensitivity|sensitive|issues|problems)\b"),
    re.compile(rf" (?:intolerant|intolerance|sensitive|sensitivity) (?:to |of )(?:all )?{LIST}"),
)
_WHO = rf"(?:i|we|{KIN}|he|she|they|(?P<n>{NUMBER}){_OF_THEM})(?: ,)?"
_AVOID_RULES = (
    re.compile(rf" {_WHO}(?: (?:also|really|both|all|just|still))? (?:can not|do not|does not|must not|will not|am not allowed|is not allowed|are not allowed|can never|should not|never)(?: to)? (?:eat|eats|have|do|tolerate|touch|touches|digest|take|stomach|handle|consume|drink|go near) (?:any |all |the )?{LIST}"),
    re.compile(rf" no {LIST} (?:for|near|around|anywhere near) (?:me|us|{KIN.replace('?P<kin>', '?:')}|one of us|(?:my|our) [a-z]+)"),
    re.compile(rf" {_WHO} (?:(?:also|have to|has to|need to|needs to|must) )*(?:avoid|avoids|stay off|stays off|keep off|stay away from|steer clear of|steers clear of|cut out|have cut out|has cut out|gave up|have given up|has given up)(?: all| any)? {LIST}"),
    re.compile(rf" (?:none|neither) of us (?:(?:can|will|may|is allowed to|are allowed to) )?(?:eat|eats|touch|touches|have|has|drink|drinks) (?:any )?{LIST}"),
    re.compile(rf" {_WHO} (?:am|is|are) (?:completely |totally |currently |now |still )?off {LIST}"),
)  # fmt: skip
_KILLS = re.compile(
    rf" {LIST} (?:could|can|will|would|might|makes?|has)? ?(?:kills?|hospitali[sz]es?|puts?|lands?|sends?) (?:me|us|him|her|them|{KIN}|(?:my|our) [a-z]+)"
)
_SOMEBODY_AVOIDS = re.compile(
    rf" (?P<name>[^\W\d_][\w'-]*) (?:can not|does not|must not|will not|is not allowed to|can never|should not|avoids)(?: (?:eat|have|do|tolerate|touch|digest|take|drink))?(?: any| all)? {LIST}"
)
_BUT_NOT = re.compile(rf" {_WHO} (?:(?:can|do|will|am fine with|is fine with|are fine with) )?(?:eat |eats |do |have |has )?[^,\x00]{{1,40}} but (?:not|no|never) (?:eat |any )?{LIST}(?= $| ,| so| as| though)")
_FREE = re.compile(rf"^ (?:(?:just|only|all|everything|it|keep|make) )*(?P<list>{ALLERGEN})(?: |-)free(?: (?:please|for me|for us|for {KIN.replace('?P<kin>', '?:')}|here|only|food|diet|if possible))*(?= $| ,| -| as| because)")
_CELIAC = re.compile(
    rf" (?:i|{KIN}|he|she|one of us) (?:have|has)(?: got)?(?: a)? (?P<diet>celiac)(?: disease)?(?![a-z])"
)
_FISH_NO_MEAT = re.compile(
    r" (?:(?:i|we) )?(?:(?:do |can |will )?eat |only eat )?(?:fish(?: is (?:ok|okay|fine|good))? ,? ?(?:but|and) (?:no|not|never|do not eat|not eat) (?:eat )?(?:any )?(?:other )?meat|no meat ,? ?(?:but|though) (?:(?:i|we) (?:do )?eat )?fish(?: is (?:ok|okay|fine|good))?)(?= $| ,| for| here| thanks| please)"
)
_ILL_FROM = re.compile(rf" (?:get|gets|got)(?: [a-z]+)?? (?:ill|sick|hives|a rash|migraines) from (?:eating )?{LIST}")
_MAKES_ILL = re.compile(
    rf" {LIST} (?:makes?|gives?|causes?|sends?|upsets?) (?:me|us|him|her|them|my [a-z]+) (?:[a-z]+ )??(?:swell|ill|sick|itch[a-z]*|hives|rash|throw up|vomit|bloated|migraines?|headaches?|close up|to hospital|reactions?|cramps?)"
)
_AFTER_DIET = frozenset([",", "and", "&", "+", "but", "so", "here", "now", "too", "also", "for", "since", "by", "though", "please", "or", "as", "if", "with", "who", "this", "that", "then", "-", "(", ")", "/", "myself", "ourselves", "actually", "btw", "unfortunately", "not", "only", "plus", "just", "from", "in", "is", "are", "comes", "coming", "sorry"])  # fmt: skip
_EXCEPT = re.compile(
    rf" (?:everything|anything|all|fine) (?:(?:is|are) (?:fine|good|ok|okay) )?(?:except(?: for)?|but(?: not)?|apart from|besides|other than|bar) (?:the )?{LIST}"
)
_NO_AND_ALLERGY = re.compile(rf" no {LIST}(?= |$)(?=.* (?:allergy|allergic|allergies)\b)")
_BESIDE = re.compile(
    rf"(?:\x00|,| and| also| plus| &) (?:(?:also|and|,|both|i am|we are|fully|strictly) )*{DIETS}(?: (?:too|also|as well|here|for me|for us|food|diet))*(?= $| ,| and)"
)
_JOKE_ALLERGY = re.compile(
    rf" allergic to (?:the |your |my |all |doing |any |having )*(?:{any_of('nonallergen')})(?![a-z])"
)
_LISTED = re.compile(rf"(?:,|and|&|\x00|\)) (?:and )?(?P<list>{ALLERGEN})(?: \( (?P<whose>[^()]{{1,20}}) \))?(?= $| ,)")
_NONE = re.compile(
    r"^ (?:no|none|nothing|nope|nil|zero|all good|no needs|not really|nobody|none of us|(?:i am|we are) (?:easy|fine|all good|good))(?:(?: ,)? (?:all good|none|nothing|special|at all|for us|for me|here|needed|(?:i am|we are) (?:easy|fine|good)))*(?= $)"
)
_ALLERGENS_ALONE = re.compile(rf"^ (?:just |only |no |yes(?: ,)? |also |and )*{LIST}(?: (?:for|-) {KIN})?(?= $| ,)")
_BARE = re.compile(
    rf"^ (?:(?:just|only|yes|i am|a|we are|strictly|strict|also|and|,|one|oh|all|both) )*{DIETS}(?: (?:only|here|for me|for us|one|too|also|as well|both of us|for both of us|myself|by the way|btw|household|family))*(?= $| ,| and)"
)
_REFUSED = re.compile(
    rf"^ (?:please ,? ?)?(?:no|without|nothing with|avoid) (?:any )?{LIST}(?: in (?:anything|it|the food|there))?(?: please)?(?= $| ,| as| because| or )"
)
_BRINGS = re.compile(r" (?:bring|bringing|make|making|bake|baking|cook|cooking|serves?|for [0-9]) ")
_THIRD = re.compile(r" (?:[a-z]+'s|someone|somebody|anyone|people) (?:is|are|has|have|was)?$")
_EVERYBODY = re.compile(
    r"^ (?:none of us|neither of us|we are all|all of us are|we all|the whole [a-z]+ (?:is|are))(?![a-z])| all (?:[a-z]+ )?of us are "
)


_SEVERAL = re.compile(
    rf" (?:(?P<both>both)(?: of)?(?: my| our| the)?|(?:my|our|the) (?P<n>{NUMBER})) (?:[a-z]+ )??(?:{any_of('kins')})(?= )"
)


def _count(match: re.Match[str], before: str) -> int:
    got = match.groupdict()
    if (several := _SEVERAL.search(f" {before[-8:]}{match[0]} ")) is not None:
        return 2 if several["both"] else number_of(several["n"])
    for group in ("n", "n2"):
        word = got.get(group)
        if word == "both":
            return 2
        if word == "all":
            return EVERYBODY
        if word and word not in ("a", "an", "another"):
            return number_of(word)
    text = match[0]
    if re.match(r" (?:(?:my|our) [a-z]+ and i|i and|me and|we are both|both of us)", text) or " both " in text[:16]:
        return 2
    if _EVERYBODY.search(text) or re.match(r" we are", text):
        return EVERYBODY
    lead = re.search(rf" (?P<n>{NUMBER}){_OF_THEM}?(?: is| are| with| has| have)?(?: a| an| got)*$", before)
    return number_of(lead["n"]) if lead is not None else 1


class _Reader:
    """One sentence's needs; what is read is taken out of it, but for the word whose they are."""

    def __init__(self, sentence: Sentence, context: ReplyContext, earlier: str) -> None:
        self.sentence, self.context, self.earlier = sentence, context, earlier
        self.found: list[SetNeeds] = []
        self.severe = is_severe(sentence)

    def said(self, match: re.Match[str], needs: tuple[Need, ...], confidence: float, cleared: bool = False, only_diet: bool = False) -> None:
        sentence = self.sentence
        if self.severe and not cleared:
            needs = hardened(needs)
        start, end = sentence.span_of(match)
        named = kin_of(match)
        member = named or member_of(sentence, match, self.earlier)
        who = self.context.writer
        if named is None and (other := self._other(match)) is not None:
            who, member, confidence = other[0] or who, other[1], min(confidence, 0.6)
        elif member is None and not cleared and self._stranger(match):
            confidence = min(confidence, 0.6)
        elif member in words("guestkin") and not self.context.addressed:
            confidence = 0.4  # a friend's allergy, told to friends
        self.found.append(SetNeeds(who, needs, cleared, member, start=start, end=end, confidence=confidence))
        first, last = sentence.token_range(match)
        if only_diet:  # "1 vegetarian adult" counts one, too
            first = sentence.token_range(match, "diet")[0]
        sentence.take(sentence.token_range(match, "kin")[1] if named else first, last)

    def _other(self, match: re.Match[str]) -> tuple[str | None, str | None] | None:
        """Another guest, or a person called by name, whose need it is: always asked about."""
        guests = [g for g in self.context.guests if g[0] != self.context.writer]
        known = match.start() + 1 + len(match.groupdict().get("name") or "")
        if (named := name_before(self.sentence, known, guests)) is not None:
            return named
        spoken = f"{self.sentence.left[: match.start()][-12:]}{match[0]} "
        if re.search(r" (?:he|she|they) (?:is|has|can|does|are|have|do) ", spoken) is None:
            return None
        guest = last_guest(f"{self.earlier} {self.sentence.text[: match.start() + 1]} ", guests)
        return (guest, None) if guest is not None else None

    def _stranger(self, match: re.Match[str]) -> bool:
        """Whether somebody we cannot tell is spoken of: a pronoun for nobody named, or a name."""
        before = self.sentence.left[: match.start()]
        text = f"{before[-12:]}{match[0]}"
        return (
            _THIRD.search(before) is not None
            or re.search(r"(?:^| )(?:he|she|they) (?:is|are|has|have|can|does|do)(?= |$)", text) is not None
        )

    def named(self, match: re.Match[str]) -> bool:
        """Whether the match begins with somebody's name."""
        return name_before(self.sentence, match.start() + 1 + len(match["name"]) + 4, self.context.guests) is not None

    def take_all(self, rules: tuple[re.Pattern[str], ...], severity: str) -> None:
        sentence = self.sentence
        if severity == "" and REACTS.search(sentence.text):
            severity = "allergy"
        for pattern in rules:
            while (match := pattern.search(sentence.left)) is not None:
                if match.groupdict().get("not"):
                    sentence.take_match(match)
                    continue
                self.said(match, needs_of(match["list"], _count(match, sentence.left[: match.start()]), severity), 0.93)

    def diets(self) -> None:
        sentence = self.sentence
        for pattern in _DIET_RULES:
            while (match := pattern.search(sentence.left)) is not None:
                after = sentence.left[match.end() :]
                following = after.split()[:1]
                people = bool(following) and any(following[0] in words(role) for role in ("kin", "kins"))
                if is_dish(after) and not people:
                    break
                if (
                    following
                    and not people
                    and following[0] not in _AFTER_DIET
                    and "\x00" not in following[0]
                    and not re.fullmatch(NUMBER, following[0])
                ):
                    break  # "vegetarian jokes"
                before = sentence.left[: match.start()]
                self.said(match, diets_of(match["diet"], _count(match, before)), 0.93, only_diet=people)

    def bare(self) -> None:
        """Needs that are only named ("gluten free too", "shellfish and celery, also my son can't have mustard"):
        written to the bot they are needs. A food alone may be a dish as well, so it is asked about unless a need
        stands beside it."""
        sentence, context, beside = self.sentence, self.context, bool(self.found)
        if (match := _FREE.match(sentence.left)) is not None and not is_dish(sentence.left[match.end() :]):
            self.said(match, needs_of(match["list"], 1, "allergy" if self.severe else ""), 0.88)
            return
        if (match := _BARE.match(sentence.left)) is not None:
            if not is_dish(sentence.left[match.end() :]):
                sure = 0.9 if context.asked == "diets" else 0.7 if context.asked in ("bring", "servings") else 0.88
                self.said(match, diets_of(match["diets"]), sure)
            return
        if (
            beside
            and (match := _BESIDE.search(sentence.left)) is not None
            and not is_dish(sentence.left[match.end() :])
        ):
            self.said(match, diets_of(match["diets"]), 0.88)
        refused = _REFUSED.match(sentence.left)
        own = " ".join(dish for _, dish in context.own_promises).lower()
        if (
            refused is not None
            and not beside
            and context.asked not in ("bring", "servings")
            and refused["list"].split()[0] not in own
        ):
            self.said(refused, needs_of(refused["list"], 1, ""), 0.7)
            return
        match = _ALLERGENS_ALONE.match(sentence.left)
        if match is None or context.asked in ("bring", "servings"):
            return
        dishes = words("dish")
        if beside:
            self.said(match, needs_of(match["list"], 1, "allergy"), 0.85)
        elif all(p not in dishes for p in pieces(match["list"])) and not re.search(
            r"[a-z]", sentence.left[match.end() :]
        ):
            self.said(match, needs_of(match["list"], 1, "allergy"), 0.65)


def read_withdrawn(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """Needs taken back in an order to the bot ("don't worry about the gluten thing")."""
    reader = _Reader(sentence, context, "")
    for match, gone in read_gone(sentence):
        reader.said(match, gone, 0.6, cleared=True)
    return list(reader.found)


def read_needs(sentence: Sentence, context: ReplyContext, earlier: str = "") -> list[Intent]:
    """Needs of the writer's party; empty for jokes, dishes ("vegan chili") and other people's needs. `earlier` are
    the sentences before, for whom "she" means."""
    joke = _JOKE_ALLERGY.search(sentence.left)
    if joke is not None and not re.search(rf" allergic to (?:{ALLERGEN})", sentence.left):
        sentence.take_match(joke)
        return []
    reader = _Reader(sentence, context, earlier)
    if context.asked == "diets" and not sentence.question:
        if (match := _NONE.match(sentence.left)) is not None:
            reader.said(match, (), 0.93, cleared=True)
            return list(reader.found)
        if (match := _ALLERGENS_ALONE.match(sentence.left)) is not None:
            # Below "any diets or allergies?" a bare food is taken as an allergy, the stricter reading.
            reader.said(match, needs_of(match["list"], 1, "allergy"), 0.85)
    if sentence.question and not re.search(r" (?:i am|we are|my [a-z]+ is)\b", sentence.text):
        return []
    for match, gone in read_gone(sentence):
        reader.said(match, gone, 0.6, cleared=True)
    if (match := read_cleared(sentence)) is not None:
        reader.said(match, (), 0.92, cleared=True)
    if (match := _CELIAC.search(sentence.left)) is not None:
        reader.said(match, (Need("gluten-free", 1, "allergy"),), 0.93)
    if (match := _FISH_NO_MEAT.search(sentence.left)) is not None:
        reader.said(match, (Need("pescatarian", 1, "diet"),), 0.9)
    for pattern, severity, sure in (
        (_ILL_FROM, "", 0.7),
        (_MAKES_ILL, "allergy", 0.7),
        (_EXCEPT, "", 0.7),
        (_NO_AND_ALLERGY, "allergy", 0.75),
    ):
        if (match := pattern.search(sentence.left)) is not None:
            reader.said(match, needs_of(match["list"], 1, severity), sure)
    if (match := _KILLS.search(sentence.left)) is not None:
        reader.said(match, hardened(needs_of(match["list"], 1, "allergy")), 0.9)
    reader.take_all(_ALLERGY_RULES, "allergy")
    reader.take_all(_INTOLERANCE_RULES, "intolerance")
    reader.take_all(_AVOID_RULES, "")
    if (match := _SOMEBODY_AVOIDS.search(sentence.left)) is not None and reader.named(match):
        reader.said(match, needs_of(match["list"], 1, "allergy" if REACTS.search(sentence.text) else ""), 0.6)
    if (match := _BUT_NOT.search(sentence.left)) is not None:
        reader.said(match, needs_of(match["list"], _count(match, ""), ""), 0.85)
    if any(n.severity not in ("", "diet") for i in reader.found for n in i.needs) and not _BRINGS.search(sentence.text):
        while (match := _LISTED.search(sentence.left)) is not None:  # "sesame (me), kiwi (Tom)"
            reader.said(match, needs_of(match["list"], 1, "allergy"), 0.6)
    reader.diets()
    if context.addressed and not sentence.question:
        reader.bare()
    return list(reader.found)
