"""What anybody says is in some food, where it is something that somebody at the table must not eat.

Told of a dish of the list or of one nobody knows ("my plus one brings a pecan pie"), as a statement or behind one
("it has sesame on top, is that a problem?"). What is asked, wished or said of a person is none of it.
"""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from planning.diets.asked import foods_asked, questions_in

LONGEST = 40
"""Words of a message that is looked at."""
_HAS = re.compile(
    r"\b(?:has|(?<!\bi )(?<!\bwe )(?<!'ll )(?<!, )have|(?<!\bi )(?<!\bwe )had|contains?|contained|with|made (?:with|from|of|in)|uses?|used|puts?|added|there'?s|there is|there are|theres|is full of|are full of|(?:fried|cooked|baked|roasted|tossed|mixed) in|topped|thickened|glazed?|brushed|sprinkled|on top|on the (?:side|table|buffet)|over it|al lado|aparte|in it|in them|inside|in the (?:\w+ )?(?:dressing|sauce|crust|dough|batter|marinade|topping|filling|broth|stock|glaze|mix|base|icing|frosting|pastry|breading|dip|gravy)|may contain|traces?|ate from|is actually|turns? out|turned out"
    r"|lleva[n]?|tiene[n]?|contiene[n]?|con|le (?:puse|eche|eché|pongo|echo|puso)|hay|hech[oa]s? (?:con|de)|encima|por encima|trazas|fritas? en|frit[oa]s? en|de base|es de|son de|trae[n]?)\b"
)
_BRINGS = re.compile(
    r"\b(?:bringing|brings|brought|bring|picked up|bought|got|making|makes|made|buying|on the table|trae|trajo|traen|compr[oóeé]|lleva|hizo|hace)\b"
)
_OTHERS = re.compile(
    r"\b(?:he|she|they|he's|she's|they're|my (?:plus one|\+1|date|husband|wife|partner|mom|mum|mother|dad|father|sister|brother|son|daughter|friend|roommate|neighbou?r|aunt|uncle|cousin|boyfriend|girlfriend|boss|kids?)|someone|somebody|our guest|él|ella|mi (?:novi[oa]|marido|mujer|esposa|esposo|pareja|madre|padre|mamá|papá|herman[oa]|hij[oa]|amig[oa]|vecin[oa]|prim[oa]|tía|tío|suegra|acompañante)|alguien)\b"
)
_WITHOUT = re.compile(
    r"\b(?:leav(?:e|ing) (?:out )?|left |skip(?:ping)?|omit\w*|take out|taking out|took out|without|no(?! problem| worries)|not|minus|instead of|drop(?:ping)? the|hold the|won't (?:use|put|add)|don't (?:use|put|add)|free of|le quito|quito|sin|no le (?:pongo|echo)|dejo fuera|no lleva|no tiene|en vez de|en lugar de|mejor sin)\b"
)
_OUT_OF = re.compile(
    r"\b(?:leav(?:e|ing)|left|take|taking|took|skip(?:ping)?|omit\w*|drop(?:ping)?|swap(?:ping)? out|pull(?:ing)?) (?:out )?(?:the |all |any )?(?P<what>[^,.;!?]{3,40}?)(?: out| off| away)?(?=$|[,.;!?]| of | from | and | then| for )|\b(?:(?:ok|okay|so|then|fine|alright|right|sure)[, ]+)(?:no|without|minus) (?P<w2>[^,.;!?]{3,40}?)(?=$|[,.;!?]| then| just)|\b(?:not|instead of|rather than|en vez de|en lugar de) (?P<w4>[^,.;!?]{3,30}?)(?=$|[,.;!?])|\b(?:le quito|quito|dejo fuera|saco|no le pongo|no le echo|mejor sin|entonces sin|(?:vale|bueno|ok)[, ]+sin|sin) (?:el |la |los |las )?(?P<w3>[^,.;!?]{3,30}?)(?=$|[,.;!?]| entonces| y )"
)
_PERSON = re.compile(
    r"\b(?:allerg\w*|alergi\w*|alérgi\w*|intoleran\w*|celiac\w*|coeliac\w*|celíac\w*|epi-?pen|anaphyla\w*|can'?t (?:eat|have)|cannot (?:eat|have)|doesn'?t eat|don'?t eat|won'?t eat|not (?:eating|allowed)|no puede comer|no puedo comer|no com[eo]|hates?|avoids?|pregnant|please no|no \w+ please|swells?)\b"
)
_TALK = re.compile(
    r"\b(?:used to|would(?:'ve| have)|said (?:she|he|they)'?d|she'd|he'd|remember|imagine|last (?:year|time|week)|always|my ex|years ago|until|in my dreams|once made|dijo que iba|el año pasado|siempre)\b"
)
_ASKS_FOR = re.compile(
    r"\b(?:anyone|anybody|(?:can|could|should|would) (?:someone|somebody)|who|can you|could you|please|need|needs|should i|shall i|want|would like|alguien|quién|necesito|falta|faltan|puedes)\b"
)


@dataclass(frozen=True)
class Alarm:
    """`holds`: the foods said to be in it (as the words name them), with the marks of the tables; `text` the clause;
    `brought`: only told of as brought, by somebody other than the writer."""

    text: str
    holds: tuple[tuple[str, str, frozenset[str]], ...]
    brought: bool = False


def alarms(words: str) -> Iterator[Alarm]:
    """Each statement that a food is in something; at most a few."""
    if len(words.split()) > LONGEST:
        return
    plain = " ".join(words.replace("’", "'").casefold().split())
    for asked in questions_in(plain):
        plain = plain.replace(asked, " ")
    for text in re.split(r"(?<=[.!?;])\s+|\n|\s+(?:but|pero)\s+", plain):
        if _PERSON.search(text) or _ASKS_FOR.search(text) or _TALK.search(text):
            continue
        has, brings = _HAS.search(text), _BRINGS.search(text)
        if has is None and not (brings and _OTHERS.search(text)):
            continue
        kept = "".join(part for n, part in enumerate(re.split(r"([,.;!?])", text)) if n % 2 or not _denied(part))
        foods, _ = foods_asked(kept)
        held = tuple((a.words, a.need, a.marks) for a in foods if a.marks or a.need)
        if held:
            yield Alarm(text, held, brought=has is None)


_STAYS = re.compile(
    r"^(?:who|what|where|when|why|how|which|qui[eé]n|qu[eé]|d[oó]nde|cu[aá]nt)|\bleft (?:with|over|at|in|on|behind|from|home)\b"
    r"|\b(?:is|are|was|were|some|lots|plenty|half) left\b|\bleft\b.{1,40}\b(?:at (?:home|work|my|the|your)|behind|in (?:the|my))\b"
)
"""A question, or what is left over or lies somewhere, leaves nothing out of a dish."""


def left_out(words: str) -> tuple[str, ...]:
    """The foods a cook says will not be in it: "ok i leave the walnuts out", "le quito las nueces".

    >>> left_out("oh noor. ok i leave the walnuts out")
    ('walnuts',)
    """
    plain = " ".join(words.replace("’", "'").casefold().split())
    if len(plain.split()) > LONGEST or "?" in plain or _PERSON.search(plain) or _STAYS.search(plain):
        return ()
    found: list[str] = []
    for said in _OUT_OF.finditer(plain):
        what = next((w for w in said.groupdict().values() if w), "")
        found += [a.words for a in foods_asked(what)[0] if a.marks or a.need]
    return tuple(dict.fromkeys(found))


def _denied(part: str) -> bool:
    return _WITHOUT.search(part) is not None
