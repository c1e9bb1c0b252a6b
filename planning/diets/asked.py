"""What a question about food is after: a diet, an allergen or an ingredient, and in which words it was put.

A diet is not looked up like an allergen: "anything vegetarian?" is after what suits, "anything with egg?" after what
holds it.
"""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache

from planning import tables
from planning.diets.ingredients import find, ingredient_named, key_of
from planning.diets.listed import MEATS
from planning.diets.needs import need_of, need_words, rule_of
from planning.dishes import lookup
from planning.dishes.names import fold
from planning.potluck import Promise

DIET, ALLERGEN, FOOD = "diet", "allergen", "food"
MOST = 3
LONGEST = 400

_FOODS_OF_DIETS = {
    "meat": MEATS, "carne": MEATS, "sugar": frozenset[str](), "salt": frozenset[str](), "azúcar": frozenset[str](),
    "sal": frozenset[str](), "carbs": frozenset[str](),
}  # fmt: skip
"""Foods which the tables of needs read as a diet ("no meat"): asked after, they are foods."""


@dataclass(frozen=True)
class Asked:
    """`sense` is DIET, ALLERGEN or FOOD; `need` the tables' name of it ("" for a food no need is about); `marks` what
    to look for."""

    words: str
    sense: str
    need: str = ""
    marks: frozenset[str] = frozenset()


def foods_asked(words: str, dishes: Iterable[Promise] = ()) -> tuple[tuple[Asked, ...], str]:
    """The diets, allergens and foods these words name, each once, and the words without them.

    A word of a dish's name is no food by what such a dish usually holds ("slaw" is not egg).
    """
    spoken = re.findall(r"[^\W\d_]+(?:['’-][^\W\d_]+)*", words[:LONGEST].casefold())
    named = {word for promise in dishes for word in promise.dish.casefold().split()}
    named |= {word + "s" for word in named} | {word.removesuffix("s") for word in named}
    known = frozenset(need_words())
    found: dict[tuple[str, str], Asked] = {}
    rest: list[str] = []
    at = 0
    while at < len(spoken):
        length, asked = next(
            ((n, one) for n in (3, 2, 1) if at + n <= len(spoken)
             and (one := _one(" ".join(spoken[at : at + n]), spoken[at - 1] if at else "", named, known)) is not None),
            (1, None),
        )  # fmt: skip
        if asked is None:
            rest.append(spoken[at])
        else:
            found.setdefault((asked.sense, asked.need or asked.words), asked)
        at += length
    return tuple(found.values())[:MOST], " ".join(rest)


def _one(phrase: str, after: str, named: set[str], known: frozenset[str]) -> Asked | None:
    if phrase in _FOODS_OF_DIETS:
        return Asked(phrase, FOOD, "", _FOODS_OF_DIETS[phrase])
    words = phrase.split()
    length = len(words)
    if words[0] in _NO_FOOD or (words[-1] in _NO_FOOD and words[-1] != "free") or words[0] == "free":
        return None
    if named.issuperset(words) and (length > 1 or after in _ARTICLES or after in named):
        return None  # "the chicken" is the dish
    if length == 1 and words[0] in named and after.endswith(("'s", "’s")):
        return None  # "Tariq's chicken", too
    foreign = _foreign().get(fold(phrase))
    singular = phrase.removesuffix("s")
    if foreign is None and not {phrase, singular} & known:
        if phrase in named or (length > 1 and ingredient_named(phrase) is None):
            return None
        return _food(phrase)
    need = need_of(foreign or phrase)
    rule = rule_of(need[0]) if need is not None else None
    if need is None or rule is None:
        return None
    if rule.kind == "diet" and not rule.need.endswith("-free"):
        return Asked(phrase, DIET, rule.need, rule.avoids)
    return Asked(phrase, ALLERGEN, need[0], rule.avoids)


@cache
def _foreign() -> dict[str, str]:
    """Other languages' words for diets and allergens -> the tables' names."""
    found: dict[str, str] = {}
    for language in tables.in_languages("ingredients"):
        for row in tables.rows(f"words_{language}"):
            if row["role"] not in ("need", "allergen"):
                continue
            needs = row["value"].partition("|")[0].split("+")
            found[fold(row["word"])] = "nut-free" if {*needs} == {"tree-nut", "peanut"} else needs[0]
    return found


_ARTICLES = frozenset(
    (
        "the", "that", "this", "those", "these", "my", "your", "our", "his", "her", "el", "la", "los", "las", "mi", "tu",
        "su",
    )
)  # fmt: skip
_NO_FOOD = frozenset(
    (
        "it", "its", "the", "and", "any", "are", "can", "does", "has", "have", "for", "with", "table", "list", "menu",
        "what", "which", "who", "there", "here", "now", "still", "left", "food", "foods", "dish", "dishes", "main",
        "mains", "side", "sides", "dessert", "option", "options", "stuff", "thing", "things", "free", "something",
        "anything", "everything", "people", "kids", "hot", "cold", "warm", "bar", "topping", "toppings", "snack",
        "snacks", "meal", "lunch", "dinner", "supper", "enough", "good", "okay", "fine", "safe", "eat", "eats", "some",
        "in", "on", "at", "of", "to", "with", "a", "an", "que", "hay", "algo", "del", "con", "los", "las", "una", "para",
        "por", "son", "comida", "plato", "platos", "mesa", "lista",
    )
)  # fmt: skip


def _food(phrase: str) -> Asked | None:
    """An ingredient by its own name ("mayo", "butter", "onion"), with the need that is about it, if one is."""
    found = ingredient_named(phrase)
    if found is None:
        rows = find(phrase).rows
        if len(phrase) < 4 or len(rows) != 1 or find(phrase).unmatched or find(phrase).claims:
            return None
        found = rows[0]
    need = need_of(phrase)
    return Asked(phrase, FOOD, need[0] if need is not None else "", found.holds)


def holds_food(promise: Promise, asked: Asked) -> str:
    """How a dish comes to hold a food: "listed" by its cook, "named" by its name, "usual" in such a dish; "without"
    where the cook's list has it not; "open" where nobody has said."""
    if _mentions(promise.dish, asked):
        return "named"
    if promise.ingredients:
        return "listed" if any(_mentions(text, asked) for text in promise.ingredients) else "without"
    dish = lookup(promise.dish).dish
    if dish is not None and any(_mentions(text, asked) for text in dish.ingredients):
        return "usual"
    return "open"


def _mentions(text: str, asked: Asked) -> bool:
    wanted = set(key_of(asked.words))
    if wanted and wanted <= set(key_of(text)):
        return True
    rows = find(text).rows
    if asked.words in ("meat", "carne"):
        return any(row.holds & MEATS for row in rows)
    names = {row.name for row in find(asked.words).rows}
    return any(row.name in names for row in rows)


_EN_ASKS = r"(?:is|are|does|do|did|will|would|has|have|what|what's|whats|which|who|any|anything|something|can|could|may|how about|got)"
_ES_ASKS = r"(?:hay|habrá|lleva|llevan|tiene|tienen|contiene|contienen|es|son|qué|que|cuál|cuáles|alguien|puede|puedo|podemos|pueden|algo)"
_BEGINS = re.compile(
    rf"^(?:(?:and|so|but|ok|okay|hey|hi|also|oh|um|wait|sorry|btw|quick question|question|y|oye|pero|entonces|a ver|hola),? )*(?:{_EN_ASKS}|{_ES_ASKS})\b"
)
_CUT = re.compile(
    r"(?<=[.!?;])\s+|\n|[,:–-]+ (?=(?:so |and |but |y |pero )?(?:is|are|does|do|what|what's|whats|which|can|hay|lleva|llevan|tiene|tienen|contiene|qué|puede|puedo)\b)"
)


def questions_in(words: str) -> tuple[str, ...]:
    """The parts of a message that are put as questions.

    >>> questions_in("my son carries an epipen for peanuts, is the table nut free?")
    ('is the table nut free?',)
    """
    plain = " ".join(words[:LONGEST].replace("’", "'").replace("¿", " ").casefold().split())
    parts = [part.strip() for part in _CUT.split(plain) if part and part.strip()]
    return tuple(part for part in parts if part.endswith("?") or _BEGINS.match(part))


_LINK = re.compile(
    r"\b(?:in|inside|have|has|having|contain\w*|with|without|made (?:of|with|from)|is|are|got|use|used|ok|okay|fine|safe|good|suitable|lleva|llevan|tiene|tienen|contiene|contienen|con|sin|es|son|en)\b"
)
_HOLDS = re.compile(
    r"(?<!\bwe )(?<!\bi )(?<!\byou )\b(?:with|without|contain\w*|has|have|in (?:it|them|anything|everything|something|any)|free|con|sin|lleva|llevan|tiene|tienen|contiene|contienen|in (?:the|any) (?:food|dish(?:es)?))\b"
)
_ANY = re.compile(
    r"\b(?:any|anything|something|everything|what|what's|whats|which|enough|stuff|food|dish|dishes|option|options|table|list|menu|algo|alguna?|qué|opciones|opción|mesa|lista|comida|platos?|suficiente|bastante)\b"
)
_OTHER = re.compile(
    r"\b(?:bring\w*|buy|buying|get|grab|pick up|make|making|cook|cooking|bake|baking|need|missing|short of|allergic|allerg(?:y|ies)|who (?:is|are|has)|anyone|anybody|someone|vegans|vegetarians|celiacs|coeliacs|owe[sd]?|owing|paid|pay|cost|costs|price|receipt|split|debo|debemos|debe|cuesta|cost[oó]|pag(?:o|ué|amos|ar)|left|leave|leaving|oven|fridge|freezer|microwave|grill|cooler|hours?|minutes?|degrees|long|how much|how many|traigo|traer|llevo|llevar|llevamos|comprar|compro|hacer|falta|faltan|quién|quien|alguien|alérgic\w+|alergia|horno|nevera|cuánt\w+|horas?|minutos?|done|pink|raw|temperature|still|cold|hot|warm|out since|car)\b"
)
_IN_WHAT = re.compile(
    r"^(?:(?:and|so|but|ok|y) )?(?:what(?:'s| is|s| are)(?: all)? in|what (?:did|do) you put in|what are the ingredients|ingredients (?:of|in)|qué (?:lleva|llevan|tiene|tienen|contiene)|de qué (?:es|son))\b"
)
SUITS_WHOM = re.compile(
    r"\b(?:(?:ok|okay|fine|safe|good|suitable|all right|alright|edible|something|anything|food|works?|apto|apta|bueno|buena|bien|algo)(?: to eat)? (?:for|para) (?P<who>[^\W\d_]+)|can (?P<who2>[^\W\d_]+) (?:eat|have)|(?:qué )?puede (?:comer )?(?P<who3>[^\W\d_]+)(?: comer)?)\b"
)
"""Whom a question is about: "is the lasagna ok for Yuki?"."""
BUY_FOR = re.compile(
    r"\bwhat (?:should|can|could|shall|do|must) (?:i|we) (?:buy|get|make|cook|pick up|grab)\b.* for (?:them|him|her|those|the (?:vegans?|vegetarians?|celiacs?|allerg\w+))\b|\bqué (?:compro|compramos|puedo comprar|hago|cocino)\b.* para (?:ellos|ellas|él|ella|los|las)\b"
)


_WHO_BRINGS = re.compile(
    r"^(?:(?:and|so|but|ok|okay|hey|hi|also|oh|um|wait|sorry|btw|y|oye|pero|entonces|hola)[ ,]+)*"
    r"(?:(?:who(?:'s|s|'ll| is| are| will| all| has| else)*|what(?:'s| is| are)? (?:people|everyone|everybody|others)|(?:is|are|does|do|did|has|have|will) (?:any|some|every)(?:one|body)|(?:is|are|do|did|have) (?:people|they)|any(?:one|body)|people)(?: else| here| all| is| are)* "
    r"(?:bring(?:s|ing)?|brought|mak(?:e|es|ing)|made|cook(?:s|ing|ed)?|bak(?:e|es|ing|ed)|doing|prepar(?:e|es|ing|ed))"
    r"|(?:quién(?:es)?|quien(?:es)?|alguien|hay alguien que|qué gente|la gente) (?:más )?(?:va a |van a |está[n]? )?(?:tra(?:e|en|er|erá|erán|jo|jeron|yendo|iga)|llev(?:a|an|ar|ará|arán|ó|aron|ando|e)|hac(?:e|en|er|iendo)|hará[n]?|cocin(?:a|an|ar|ando|ará)|prepar(?:a|an|ar|ando|ará)))\b"
)
"""Asked what people bring, from the list: never "can somebody bring", which is a wish."""


_OWN_FOOD = re.compile(
    r"^(?:(?:and|so|but|ok|okay|hey|um|oh|then|y|entonces|pues|oye|bueno)[ ,]+)*(?:(?:what|which (?:dishes|ones|of (?:it|these|those|them))) (?:can|could|may|should) (?:i|we|he|she|they|(?:my|our) [a-z]+) (?:still |actually |safely )?(?:eat|have)(?: (?:here|now|then|tonight|today|of (?:it|this|that|these)|from the table|on the table))*"
    r"|(?:what(?:'s| is)?|is there anything|anything|is there something)(?: (?:here|there|on the table))? (?:safe |ok |okay |fine |suitable )?for (?:me|us|my [a-z]+|our [a-z]+)(?: to eat)?(?: here| now)?"
    r"|qué (?:puedo|podemos|puede|pueden|podemos) comer(?: (?:yo|nosotr[oa]s|mi [a-zñáéíóú]+|mis [a-zñáéíóú]+|él|ella|aquí|ahora|de (?:esto|todo esto)))*|para (?:mí|nosotr[oa]s) qué hay|qué hay para (?:mí|nosotr[oa]s)|(?:hay|habrá) algo para (?:mí|nosotr[oa]s|mi [a-zñáéíóú]+|mis [a-zñáéíóú]+))\s*\?*$"
)


_BESIDE = r"(?:besides|beside|other than|apart from|aside from|except(?: for)?|aparte de|además de|que no sea)"
_ICAN = r"(?:(?:that |which )?(?:i|we) can (?:still )?(?:eat|have)|for me|for us|que (?:yo )?pueda comer|que pueda comer|para mí)"
_ELSE = re.compile(
    rf"^(?:(?:and|so|but|ok|okay|hey|um|oh|y|entonces|pues|oye)[ ,]+)*(?!.*\b(?:bring|need|buy|get|missing|traer|llevar|falta|comprar)\b)(?:(?:is|are|was) there |hay )?(?:anything|something|what|algo|qué)(?: else| is there| more| left| más)*(?: {_ICAN})?(?: {_BESIDE} (?:my|our|the|mi|mis|el|la|los|las) [^?.!,]{{2,30}}?(?: {_ICAN})?| (?:here|on the table|now))?\s*\?*$"
)
"""Whatever there is beside one's own dish; a bare "anything?" is no such question."""
_TELLS = re.compile(rf"\b(?:{_BESIDE}|{_ICAN})\b")
BESIDE = re.compile(
    rf"\b{_BESIDE} (?:my|our|the|mi|mis|el|la|los|las) [^?.!,]{{2,30}}?(?=$|[?.!,]| (?:that |which )?(?:i|we) can)",
    re.IGNORECASE,
)


def asks_what_to_eat(words: str) -> bool:
    """ "What can we eat now?", "¿qué puede comer mi hijo?": by somebody whose needs are known it is after the table.

    >>> asks_what_to_eat("ok so what can my son eat?"), asks_what_to_eat("what can I make?")
    (True, False)
    """
    plain = " ".join(words[:LONGEST].replace("\u2019", "'").replace("¿", " ").casefold().split())
    parts = [part.strip() for part in re.split(r"(?<=[.!?])\s+", plain)]
    return any(_OWN_FOOD.match(part) or (_ELSE.match(part) and _TELLS.search(part)) for part in parts)


@dataclass(frozen=True)
class FoodQuestion:
    """`text` the question alone; `dish` whether a dish of the list is named; `sure` whether it can be nothing else, so
    that it may be answered though it was not put to the bot."""

    text: str
    asked: tuple[Asked, ...]
    dish: bool
    who: str
    sure: bool


def food_question(words: str, dishes: tuple[Promise, ...], guests: Iterable[str] = ()) -> FoodQuestion | None:
    """The question after food in a message, or None: "does the slaw have mayo in it?", "anything with eggs on the
    list?", "what's vegetarian?", "is the lasagna ok for Yuki?" (with Yuki among the `guests`' names)."""
    names = {name.casefold().split()[0] for name in guests if name.strip()}
    dish_words = {w for p in dishes for w in p.dish.casefold().split() if len(w) > 2}
    dish_words |= {w.removesuffix("s") for w in dish_words} | {w + "s" for w in dish_words}
    for text in questions_in(words):
        whom = SUITS_WHOM.search(text)
        who = next((w for w in (whom.groupdict().values() if whom else ()) if w in names), "")
        if BUY_FOR.search(text):
            return FoodQuestion(text, (), False, "", True)
        asked, rest = foods_asked(text, dishes)
        dish = any(word in dish_words for word in re.findall(r"[^\W\d_]+", rest))
        brings = _WHO_BRINGS.match(text)
        other = None if brings else _OTHER.search(text)
        if who and (dish or not other):
            return FoodQuestion(text, asked, dish, who, True)
        if _IN_WHAT.match(text) and dish:
            return FoodQuestion(text, (), dish, "", True)
        if not asked or other:
            continue
        if dish and _LINK.search(text):
            return FoodQuestion(text, asked, dish, "", True)
        if brings and _ANY.search(text) and (_LINK.search(text, brings.end()) or any(a.sense == DIET for a in asked)):
            return FoodQuestion(text, asked, dish, "", True)
        diets = any(a.sense == DIET for a in asked)
        free = any("free" in a.words or a.words.startswith("no ") for a in asked)
        if _ANY.search(text) and (diets or free or _HOLDS.search(text)):
            at_table = re.search(r"\b(?:list|table|menu|lista|mesa|anything|algo)\b", text) is not None
            return FoodQuestion(text, asked, dish, "", at_table)
    return None
