"""How bad an allergy is, and what of it must not be lost: the part of the needs where silence can hurt."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from dataclasses import replace

from planning.potluck import Need
from planning.replies.english.foods import ALLERGEN, KIN, diets_of, kin_of, needs_of, pieces
from planning.replies.english.lexicon import any_of, words
from planning.replies.intents import Intent, ReplyContext, SetNeeds, SetPregnant
from planning.replies.text import Message, Sentence

SEVERE = re.compile(
    r"\b(?:severe|severely|into (?:anaphylactic )?shock|deathly|deadly|serious|seriously|terrible|terribly|extreme|life-threatening|life threatening|anaphylactic|anaphylaxis|anaphylaxes|epipens?|epi-pens?"
    r"|bad(?= (?:[a-z-]+ ){0,3}allerg)|nasty(?= (?:[a-z-]+ ){0,3}allerg)|(?:bad|nasty|serious|severe) one|extremely|highly|badly|airborne|acute|(?:very|real|really|quite|pretty|so|super|rather|fairly) (?:bad|serious|nasty)|(?:could|can|will|would|might) (?:kill|die)|(?:use|used|uses|using|got|carrying|needs?|needed|carr(?:y|ies)|with|has|have) (?:a |an |the |his |her |my )?(?:epi )?(?:pen|injector)|real bad|ambulance|intensive care|\bicu|(?:the )?e r(?= )|emergency(?: room)?|nearly died|almost died|even traces|not even (?:a )?traces?|in hospital|to hospital|throat closes?|closes? up|stops? breathing|can not breathe)\b"
)
"""Words that make an allergy a severe one: taken wherever they stand in its sentence, the stricter reading."""
_NOT_SEVERE = re.compile(r" not (?:a |an |very |that |too |so )*(?:severe|serious|bad)")
REACTS = re.compile(
    r" (?:allergic|allergy|allergies|anaphyla[a-z]+|hives|rash|swells?(?: up)?|swelling|a reaction|throat|epipen|epi-pen|hospital)(?![a-z])"
)
"""Words beside a food that make "can't have" an allergy."""
_NAMED_ILLNESS = re.compile(r" (?:allerg[a-z]+|celiacs?|intoleran[a-z]+|anaphyla[a-z]+|epipens?|epi-pens?) ")
_REACTION = re.compile(
    r" (?:hives|swells?(?: up)?|swollen|reacts?|reactions?|anaphylactic|shock|rash|throat|hospital|vomits?|vomiting|throws? up|poison(?:s|ous)?|dangerous|deadly|kills?|die|dies) "
)
_NOT_OURS = re.compile(
    r" (?:no|not|never|without|any|was|were|used to|grew out|outgrew|outgrown|got over|gone|anyone|someone|everyone|who|people|jokes?) "
)


_DIRE = re.compile(r" (?:epis?|epipens?|epi-pens?|auto-?injectors?|anaphyla[a-z]+) ")


def _celiacs(intent: Intent) -> Intent:
    """ "No gluten, coeliac": beside the illness gluten is no choice."""
    if not isinstance(intent, SetNeeds) or intent.cleared:
        return intent
    made = (
        replace(n, need="gluten-free", severity="allergy")
        if n.need in ("gluten-free", "wheat") and n.severity in ("", "diet")
        else n
        for n in intent.needs
    )
    return replace(intent, needs=tuple(made))


def is_severe(sentence: Sentence) -> bool:
    """Whether the sentence says that a reaction would be bad."""
    return SEVERE.search(sentence.text) is not None and _NOT_SEVERE.search(sentence.text) is None


_NO_ILLNESS = re.compile(r" (?:no|not an?|not really an?|is not an?|never an?) (?:[a-z]+ )?allerg(?:y|ies)(?= )| not allergic(?= )")


def reacts(sentence: Sentence) -> bool:
    """Whether words for an illness stand beside a food, which are not denied ("but it's no allergy")."""
    return REACTS.search(_NO_ILLNESS.sub(" ", sentence.text)) is not None


def hardened(needs: tuple[Need, ...]) -> tuple[Need, ...]:
    return tuple(replace(n, severity="severe allergy") if n.severity == "allergy" else n for n in needs)


def harden(message: Message, found: list[Intent]) -> list[Intent]:
    """ "Peanut allergy. Severe.": a sentence of its own that says how bad it is makes the allergies beside it severe."""
    if _DIRE.search(f" {message.plain} ") and len(found) == 1:
        only = found[0]  # "no nuts please, Ellie's got an epipen"
        if isinstance(only, SetNeeds) and not only.cleared and all(n.severity == "" for n in only.needs):
            return [replace(only, needs=tuple(replace(n, severity="severe allergy") for n in only.needs))]
    if " celiac" in f" {message.plain}":
        found = [_celiacs(i) for i in found]
    allergen = re.compile(rf"(?<![a-z-])(?:{ALLERGEN})(?![a-z-])")
    if not any(is_severe(s) and not allergen.search(s.text) and " not " not in s.text for s in message.sentences):
        return found
    return [
        replace(i, needs=hardened(i.needs)) if isinstance(i, SetNeeds) and not i.cleared else i
        for i in found
    ]  # fmt: skip


HAS_INJECTOR = re.compile(
    r"(?:(?:so|and|but|yes|,) )*(?:i|we|he|she|they|[a-z]+) (?:will |does |do |always |all )*(?:have|has|had|got|carry|carries|bring|keep|keeps|own|owns)"
    r" (?:got |with (?:us|me|him|her) )?(?:an? |the |two |2 |both |his |her |our |my |their |some )*(?:epis?|epipens?|epi-pens?|auto-?injectors?|pens?|injectors?)"
    r"(?: (?:with (?:us|me|him|her)|on (?:us|me|him|her)|always|too|though|here|just in case|along|in (?:my|her|his|the) bag))*"
)
""" "We have epi": how bad the allergy beside it is, and nothing to be read by itself."""


def read_lost(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """Where an illness is named and no rule has read whose or how, the foods beside it are asked about, not lost."""
    left = sentence.left.replace("\x00", " ")
    if (
        sentence.question
        or (_NAMED_ILLNESS.search(sentence.left) or _REACTION.search(sentence.left)) is None
        or _NOT_OURS.search(left)
    ):
        return []
    needs = needs_of(" ".join(pieces(left)), 1, "intolerance" if " intoleran" in left else "allergy")
    if " celiac" in left:
        needs += (Need("gluten-free", 1, "allergy"),)
    if is_severe(sentence):
        needs = hardened(needs)
    start, end = sentence.span(0, len(sentence.tokens))
    plain = context.addressed and _CLAIMS.search(sentence.text) is not None and _BRINGS.search(sentence.text) is None
    sure = 0.86 if plain else 0.6
    return [SetNeeds(context.writer, needs, start=start, end=end, confidence=sure)] if needs else []


_CLAIMS = re.compile(
    r" (?:has|have|is|are|am|got|with|gets?|goes?|went|suffers? from) (?:[a-z'-]+ ){0,4}?(?:allergy|allergies|allergic|celiac|intoleran(?:t|ce)|anaphyla[a-z]+) "
)
""" "He has a cow's milk protein allergy": told of somebody, whoever it is."""
_BRINGS = re.compile(r" (?:bring|brings|bringing|make|making|bake|baking|cook|cooking|serves?|for [0-9]) ")


_KEEPS = re.compile(
    rf" (?P<diet>{any_of('diet')})(?= $| ,| please| sorry| only| here| at | in | for (?:me|us)| food| diet| house| home| family| so | because| as )"
)
_OWN_DIET = re.compile(r" (?:i|we|my|our|us|me|strictly|only|keeps?|here|household|family|diet|religious) ")
_OF_DISHES = re.compile(
    r" (?:bring|bringing|make|making|cook|cooking|bake|options?|dish|dishes|version|love|loves|half|some|like|enjoy|almost|nearly|practically|basically|sense|try|trying|not|never|anyone|anybody|someone|who|any|would|could|if|was|were|used|think|like|it|that|this|the) "
)


def read_kept(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """ "In my house we eat only halal": a way of eating that no rule has read, told of the writer's own; asked about."""
    match = _KEEPS.search(sentence.left)
    if match is None or sentence.question or len(sentence.tokens) > 16 or _OWN_DIET.search(sentence.left) is None:
        return []
    if _OF_DISHES.search(sentence.text) is not None:
        return []
    start, end = sentence.span_of(match)
    needs = tuple(diets_of(match["diet"]))
    return [SetNeeds(context.writer, needs, start=start, end=end, confidence=0.7)] if needs else []


_REACTS_TO = re.compile(r" (?:reacts?|reactions?) (?:very |really )?(?:badly |severely |strongly )?to ")
_OF_NO_FOOD = re.compile(
    rf" (?:no|any|not|without|who|was|were) | allergic to (?:{any_of('nonallergen')}|me|you|us|him|her|it|them|everything|anything|this|that|these|those|being|getting|going|work[a-z]*)(?![a-z])"
)


def named(sentence: Sentence) -> bool:
    """Whether an illness is told of that is to be asked about even where the food is unknown ("a lychee allergy")."""
    return (
        not sentence.question
        and (_NAMED_ILLNESS.search(sentence.text) or _REACTS_TO.search(sentence.text)) is not None
        and _OF_NO_FOOD.search(sentence.text) is None
    )


_PREGNANT = re.compile(
    rf"(?: (?:i|we) (?:am|are|will be)| {KIN}(?: ,)?(?: is| will be| who is)?| she is|^ am| also| being| and|^) (?:also |[0-9]+ (?:weeks?|months?) |heavily |very |now |currently |(?:[0-9]+|two|three|four|five|six|seven|eight|nine) (?:weeks?|months?) (?=along)|(?P<not>not|no longer|not any ?more) )*(?:along(?<=(?:eks|ths) along)|pregnant(?! with (?!twins|triplets|a (?:baby|girl|boy|little)|our|my|number|child|[0-9]))|expecting(?= $| ,| and| a (?:baby|child|little)| twins| our| in (?:[a-z]+)))(?: any ?more)?"
)


_DUE = re.compile(
    r"(?:expecting|due) (?:, |due |a baby |our (?:first|second|third) |in |this |next )*(?:january|february|march|april|may|june|july|august|september|october|november|december|spring|summer|autumn|fall|winter|month|year|baby|child)\b"
)


def read_pregnant(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """A pregnancy in the writer's party: it decides what may be eaten."""
    match = _PREGNANT.search(sentence.left)
    if match is None or sentence.question:
        return []
    start, end = sentence.span_of(match)
    sentence.take_match(match)
    negated = bool(match["not"]) or re.search(r" any ?more$", match[0]) is not None
    member = kin_of(match)
    third = match[0].startswith((" she", " being", " also")) or member in words("guestkin")
    due = "pregnant" in match[0] or _DUE.match(sentence.text, sentence.text.find(match[0].split()[-1] + " ")) is not None
    sure = 0.6 if negated or third else 0.92 if due else 0.7
    return [SetPregnant(context.writer, not negated, member, start=start, end=end, confidence=sure)]
