"""Diets and allergies: whose, how many, how strict. The one part where a wrong reading can hurt somebody."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from dataclasses import replace

from planning.potluck import Need
from planning.replies.english import need_rules as form
from planning.replies.english.foods import (
    ALLERGEN,
    diets_of,
    is_dish,
    kin_of,
    last_guest,
    member_of,
    name_before,
    names_food,
    needs_of,
    pieces,
)
from planning.replies.english.gone import read_cleared, read_gone
from planning.replies.english.illness import hardened, is_severe, reacts
from planning.replies.english.lexicon import NUMBER, any_of, number_of, words
from planning.replies.english.nouns import known_thing
from planning.replies.english.whose import leave_out, of_guests
from planning.replies.intents import Intent, ReplyContext, SetNeeds
from planning.replies.text import Sentence

_ONE_OF = re.compile(
    rf" one of (?:us|(?:my|our|the) (?:{NUMBER} )?[a-z]+) (?:[a-z]+ ){{0,3}}$| one of (?:us|(?:my|our|the)) "
)
ILLNESS = ("allergy", "severe allergy", "intolerance")
NOTED = 0.86
EVERYBODY = 9999
"""Stands for the whole party until `settle` knows how many that is."""
_SEVERAL = re.compile(
    rf" (?:(?P<both>both)(?: of)?(?: my| our| the)?|(?:my|our|the) (?P<n>{NUMBER})) (?:[a-z]+ )??(?:{any_of('kins')})(?= )"
)


def _count(match: re.Match[str], before: str) -> int:
    got = match.groupdict()
    if _ONE_OF.search(f" {before[-40:]}{match[0]} ") is not None:
        return 1
    if (several := _SEVERAL.search(f" {before[-8:]}{match[0]} ")) is not None:
        return 2 if several["both"] else number_of(several["n"])
    for group in ("n", "n2", "n4", "n5", "n6", "n7"):
        word = got.get(group)
        if word == "both":
            return 2
        if word == "all":
            return EVERYBODY
        if word and word not in ("a", "an", "another"):
            return number_of(word)
    text = match[0]
    if re.search(
        r" for (?:me and (?:my|our) [a-z]+|(?:my|our) [a-z]+ and (?:me|i|myself)|both of us|us both) ", f"{text} "
    ):
        return 2
    if re.match(r" (?:(?:my|our) [a-z]+ and i|i and|me and|we are both|both of us)", text) or " both " in text[:16]:
        return 2
    if form.ALL_OF_US.search(text) or re.match(r" we are", text):
        return EVERYBODY
    if (kins := form.KINS_BEFORE.search(before)) is not None:
        return 2 if kins["n"] in (None, "both") else number_of(kins["n"])
    lead = re.search(rf" (?P<n>{NUMBER}){form.OF_THEM}?(?: is| are| with| has| have)?(?: a| an| got)*$", before)
    return number_of(lead["n"]) if lead is not None else 1


def _without_dish(pattern: re.Pattern[str], sentence: Sentence, match: re.Match[str]) -> re.Match[str]:
    """ "I can't have dairy, carrot cake from me": the last of the foods is a dish and no need."""
    listed = pieces(match["list"])
    if len(listed) < 2 or not is_dish(sentence.left[match.end() :]):
        return match
    before = sentence.left.rfind(listed[-1], 0, match.end("list"))
    cut = len(re.sub(r"(?: ,| and| or| &| \+|,| /)+ ?$", "", sentence.left[:before].rstrip()))
    return pattern.search(sentence.left, 0, cut) or match


_PERSONS = re.compile(
    r" (?:of us|of them|people|persons|adults?|kids?|children|we are|party|family|guests?|me|wife|husband|partner) "
)


class _Reader:
    """One sentence's needs; what is read is taken out of it, but for the word whose they are."""

    def __init__(self, sentence: Sentence, context: ReplyContext, earlier: str) -> None:
        self.sentence, self.context, self.earlier = sentence, context, earlier
        self.found: list[SetNeeds] = []
        self.severe = is_severe(sentence)

    def said(
        self,
        match: re.Match[str],
        needs: tuple[Need, ...],
        confidence: float,
        cleared: bool = False,
        only_diet: bool = False,
    ) -> None:
        sentence = self.sentence
        if (
            not self.context.addressed
            and not cleared
            and all(n.severity == "" and n.need in form.BY_CHOICE for n in needs)
        ):
            confidence = 0.4  # "I'm off sugar", told to friends
        if self.severe and not cleared:
            needs = hardened(needs)
        if re.search(r" (?:chew|swallow|bite) ", match[0]) and " not allergic" in sentence.text:
            confidence = min(confidence, 0.7)  # whether to note it is asked
        start, end = sentence.span_of(match)
        named = kin_of(match)
        member = named or member_of(sentence, match, self.earlier)
        who = self.context.writer
        if named is None and (other := self._other(match)) is not None:
            unsure = 0.6 if other[0] is not None or cleared else self._of_whoever(needs)
            who, member, confidence = other[0] or who, other[1], min(confidence, unsure)
        elif member is None and not cleared and self._stranger(match):
            confidence = min(confidence, self._of_whoever(needs))
        elif member in words("guestkin") and not self.context.addressed:
            confidence = 0.4  # a friend's allergy, told to friends
        self.found.append(SetNeeds(who, needs, cleared, member, start=start, end=end, confidence=confidence))
        first, last = sentence.token_range(match)
        while first > 0 and self.sentence.tokens[first - 1].plain in form.LEADS:
            first -= 1
        if only_diet:  # "1 vegetarian adult" counts one, too
            first = sentence.token_range(match, "diet" if "diet" in match.groupdict() else "diets")[0]
        if named:  # the word for whose it is stays, wherever it stands
            begin, end = sentence.token_range(match, "kin")
            sentence.take(first, begin)
            first = end
        sentence.take(first, last)

    def _of_whoever(self, needs: tuple[Need, ...]) -> float:
        """How sure a need is of somebody the group does not know. An illness told to the bot is noted at once for the
        writer's party: taken back with one press, while a question nobody answers would lose it."""
        ill = any(n.severity in ILLNESS for n in needs)
        return NOTED if ill and self.context.addressed else 0.6

    def _other(self, match: re.Match[str]) -> tuple[str | None, str | None] | None:
        """Another guest, or a person called by name, whose need it is: always asked about."""
        guests = [g for g in self.context.guests if g[0] != self.context.writer]
        name = match.groupdict().get("name")
        known = match.start() + (1 + len(name) if name else 0)
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
            form.THIRD.search(before) is not None
            or re.search(r"(?:^| )(?:he|she|they) (?:is|are|has|have|can|does|do)(?= |$)", text) is not None
        )

    def named(self, match: re.Match[str], verb: str = "can ") -> bool:
        """Whether the match begins with somebody's name, before a verb as long as that."""
        end = match.start() + 1 + len(match["name"]) + len(verb)
        return name_before(self.sentence, end, self.context.guests) is not None

    def take_all(self, rules: tuple[re.Pattern[str], ...], severity: str) -> None:
        sentence = self.sentence
        if severity == "" and reacts(sentence) and form.NO_ALLERGY.search(sentence.text) is None:
            severity = "allergy"
        for pattern in rules:
            while (match := pattern.search(sentence.left)) is not None:
                match = _without_dish(pattern, sentence, match)
                if match.groupdict().get("not"):
                    sentence.take_match(match)
                    continue
                self.said(match, needs_of(match["list"], _count(match, sentence.left[: match.start()]), severity), 0.93)

    def said_plainly(self) -> None:
        """What no list of foods and no diet names by itself: hot food, kosher style, "no kiwi, my daughter swells up"."""
        sentence = self.sentence
        if (match := form.SPICY.search(sentence.left)) is not None:
            self.said(match, (Need("chili", 1, ""),), 0.88)
        if (match := form.KOSHER_STYLE.search(sentence.left)) is not None:
            self.said(match, needs_of(match["list"], 1, ""), 0.88)
        while (match := form.BECAUSE.search(sentence.left)) is not None:
            self.said(match, needs_of(match["list"], 1, "allergy"), 0.86)
        if (match := form.TROUBLES.search(sentence.left)) is not None:
            self.said(match, needs_of(match["list"], 1, "intolerance"), 0.86)
        if (match := form.PROBLEM.search(sentence.left)) is not None:
            self.said(match, needs_of(match["list"], 1, ""), 0.86)

    def diets(self) -> None:
        sentence = self.sentence
        for pattern in form.DIET_RULES:
            while (match := pattern.search(sentence.left)) is not None:
                after = sentence.left[match.end() :]
                following = after.split()[:1]
                if pattern is form.DIET_RULES[1] and self._of_dishes(match):
                    break  # "two lasagnes, one veggie"
                people = bool(following) and any(following[0] in words(role) for role in ("kin", "kins"))
                if is_dish(after) and not people:
                    break
                if (
                    following
                    and not people
                    and following[0] not in form.AFTER_DIET
                    and re.match(r" (?:at|in) (?:home|ours|(?:our|my) (?:house|home|place|family))(?= )", after) is None
                    and "\x00" not in following[0]
                    and not re.fullmatch(NUMBER, following[0])
                ):
                    break  # "vegetarian jokes"
                before = sentence.left[: match.start()]
                count = _count(match, before)
                if (
                    told := re.search(rf" , all (?P<n>{NUMBER})(?: of us)?(?= ,| $)", after)
                ) is not None and count == 1:
                    count = number_of(told["n"])
                self.said(match, diets_of(match["diet"], count), 0.93, only_diet=people)

    def _of_dishes(self, match: re.Match[str]) -> bool:
        """Whether a number with a diet word counts dishes named before it, and nobody was."""
        before = self.sentence.left[: match.start()]
        named = any(len(word) > 3 and "\x00" not in word and known_thing(word)[1] >= 0.9 for word in before.split())
        return named and _PERSONS.search(self.sentence.text) is None

    def bare(self) -> None:
        """Needs that are only named ("gluten free too", "shellfish and celery, also my son can't have mustard"):
        written to the bot they are needs. A food alone may be a dish as well, so it is asked about unless a need
        stands beside it."""
        sentence, context, beside = self.sentence, self.context, bool(self.found)
        match = form.FREE_TOO.search(sentence.left)
        if match is not None and not words("dish").keys() & set(sentence.left[: match.start()].split()):
            self.said(match, needs_of(match["list"], 1, "allergy" if self.severe else ""), 0.88)
        if (match := form.FREE.match(sentence.left)) is not None and not is_dish(sentence.left[match.end() :]):
            self.said(match, needs_of(match["list"], 1, "allergy" if self.severe else ""), 0.88)
            return
        if (match := form.BARE.match(sentence.left)) is not None:
            if not is_dish(sentence.left[match.end() :]):
                sure = 0.9 if context.asked == "diets" else 0.7 if context.asked in ("bring", "servings") else 0.88
                self.said(match, diets_of(match["diets"], int(match["n"] or 1)), sure)
                if (nor := form.NOR.search(sentence.left)) is not None:
                    self.said(nor, needs_of(nor["list"], 1, ""), 0.88)  # "veggie, no eggs either"
            return
        if (match := form.AFTER_PEOPLE.search(sentence.left)) is not None:
            all_of_them = match[0].split()[0] in ("us", "we", "people", "persons") and " one " not in match[0]
            count = EVERYBODY if all_of_them and _count(match, "") == 1 else _count(match, "")
            self.said(match, diets_of(match["diets"], count), 0.88, only_diet=True)
        if (match := form.OF_ME.match(sentence.left)) is not None:
            self.said(match, diets_of(match["diets"] or match["diets2"]), 0.88)
        if beside and (match := form.NOR.search(sentence.left)) is not None:
            self.said(match, needs_of(match["list"], 1, ""), 0.85)
        if (
            beside
            and (match := form.BESIDE.search(sentence.left)) is not None
            and not is_dish(sentence.left[match.end() :])
        ):
            self.said(match, diets_of(match["diets"]), 0.88)
        refused = form.REFUSED.match(sentence.left)
        own = " ".join(dish for _, dish in context.own_promises).lower()
        if (
            refused is not None
            and not beside
            and context.asked not in ("bring", "servings")
            and refused["list"].split()[0] not in own
        ):
            self.said(refused, needs_of(refused["list"], 1, ""), 0.7)
            return
        match = form.ALLERGENS_ALONE.match(sentence.left)
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
    joke = form.JOKE_ALLERGY.search(sentence.left)
    if joke is not None and not re.search(rf" allergic to (?:{ALLERGEN})", sentence.left):
        sentence.take_match(joke)
        return []
    for aside in form.ASIDE.finditer(sentence.left):
        sentence.take_match(aside)
    leave_out(sentence)
    others = of_guests(sentence, context, read_needs) if context.guests and not sentence.question else []
    return [*others, *_read_own(sentence, context, earlier)]


def _read_own(sentence: Sentence, context: ReplyContext, earlier: str) -> list[Intent]:
    reader = _Reader(sentence, context, earlier)
    if context.asked == "diets" and not sentence.question:
        if (match := form.NONE.match(sentence.left)) is not None:
            reader.said(match, (), 0.93, cleared=True)
            return list(reader.found)
        while (match := form.GRADED.search(sentence.left)) is not None:
            how = "intolerance" if match["how"].startswith("intol") else "allergy"
            needs = needs_of(match["list"], 1, how)
            reader.severe = is_severe(Sentence(sentence.tokens[slice(*sentence.token_range(match))], False))
            reader.said(match, needs, 0.88)
            reader.severe = False
        if (
            match := form.ME.match(sentence.left)
            or form.OF_MINE.match(sentence.left)
            or form.NONE_FOR.match(sentence.left)
        ) is not None:
            how = "intolerance" if match["list"].strip() == "lactose" else "allergy"
            reader.said(match, needs_of(match["list"], 1, how), 0.85)
        if form.DIET_RULES[1].search(sentence.left) is not None or form.ONE_EACH.match(sentence.left) is not None:
            while (match := form.ONE_EACH.search(sentence.left)) is not None:
                how = "intolerance" if match["list"].strip() == "lactose" else "allergy"
                reader.said(match, needs_of(match["list"], _count(match, ""), how), 0.85)
        if (match := form.ALLERGENS_ALONE.match(sentence.left)) is not None:
            # Below "any diets or allergies?" a bare food is taken as an allergy, the stricter reading.
            needs = needs_of(match["list"], 1, "allergy")
            if match[0].startswith(" no "):
                needs = tuple(replace(n, severity="") if n.need in form.BY_CHOICE else n for n in needs)
            reader.said(match, needs, 0.85)
    if sentence.question and not re.search(r" (?:i am|we are|my [a-z]+ is)\b", sentence.text):
        return []
    named = names_food(sentence.text)
    if named:
        for match, gone in read_gone(sentence):
            reader.said(match, gone, 0.6, cleared=True)
    if (match := read_cleared(sentence)) is not None:
        reader.said(match, (), 0.92, cleared=True)
    if named:
        _read_named(reader)
    elif (match := form.NO_DRINK.search(sentence.left)) is not None:
        reader.said(match, (Need("alcohol", 1, ""),), 0.7)
    return list(reader.found)


def _read_named(reader: _Reader) -> None:
    """The needs in a sentence that names a food or a diet."""
    sentence, context = reader.sentence, reader.context
    if (match := form.CELIAC.search(sentence.left)) is not None:
        reader.said(match, (Need("gluten-free", 1, "allergy"),), 0.93)
    if (match := form.FISH_NO_MEAT.search(sentence.text)) is not None:
        reader.said(match, (Need("pescatarian", 1, "diet"),), 0.9)
    for pattern, severity, sure in (
        (form.ILL_FROM, "", 0.7),
        (form.MAKES_ILL, "allergy", 0.7),
        (form.EXCEPT, "", 0.7),
        (form.DISAGREES, "intolerance", 0.7),
        (form.NO_AND_ALLERGY, "allergy", 0.75),
    ):
        if (match := pattern.search(sentence.left)) is not None:
            plain = pattern is form.MAKES_ILL and form.PLAINLY_ILL.search(match[0]) is not None
            reader.said(
                match, needs_of(match["list"], 1, severity), 0.86 if plain or pattern is form.DISAGREES else sure
            )
    reader.said_plainly()
    if (match := form.NO_DRINK.search(sentence.left)) is not None:
        reader.said(match, (Need("alcohol", 1, ""),), 0.7)
    if (match := form.KILLS.search(sentence.left)) is not None:
        reader.said(match, hardened(needs_of(match["list"] or match["list2"], 1, "allergy")), 0.9)
    reader.take_all(form.ALLERGY_RULES, "allergy")
    reader.take_all(form.REACTION_RULES, "allergy")
    reader.take_all(form.INTOLERANCE_RULES, "intolerance")
    reader.take_all(form.AVOID_RULES, "")
    if (match := form.SOMEBODY_AVOIDS.search(sentence.left)) is not None and reader.named(match):
        reader.said(match, needs_of(match["list"], 1, "allergy" if reacts(sentence) else ""), 0.6)
    if (match := form.BUT_NOT.search(sentence.left)) is not None:
        reader.said(match, needs_of(match["list"], _count(match, ""), ""), 0.85)
    if any(n.severity not in ("", "diet") for i in reader.found for n in i.needs) and not form.BRINGS.search(
        sentence.text
    ):
        while (match := form.LISTED.search(sentence.left)) is not None:  # "sesame (me), kiwi (Tom)"
            reader.said(match, needs_of(match["list"], 1, "allergy"), 0.6)
    reader.diets()
    if (
        context.addressed
        and not reader.found
        and (match := form.SOMEBODY_IS.search(sentence.left)) is not None
        and reader.named(match, "is")
        and known_thing(match["name"])[1] < 0.5
    ):
        reader.said(match, diets_of(match["diet"]), 0.6)
    if context.addressed and not sentence.question:
        reader.bare()
    elif reader.found and not sentence.question and (match := form.NOR.search(sentence.left)) is not None:
        reader.said(match, needs_of(match["list"], 1, ""), 0.85)  # "a peanut allergy, please no nuts"
