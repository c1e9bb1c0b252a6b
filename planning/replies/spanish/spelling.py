"""Spanish as it is typed: no accents, "b" for "v", "voyyy", "ensalda", "treinta y cinco".

Only a word that nothing here knows is mended: into the one word of ours that sounds the same, or that is a single slip
away; `data/words_real_es.csv` holds the real words that near. Readings that rest on a mended word are a little less sure.
"""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from functools import cache, lru_cache

from planning.dishes.index import index_of_names
from planning.replies.intents import Ask, Intent
from planning.replies.slips import cuts, is_slip, without_a_letter
from planning.replies.spanish.lexicon import PLAIN, expand, words
from planning.replies.spanish.verbs import finite, forms, verbs
from planning.replies.text import Message, Token, without_numbers
from planning.tables import rows

LESS_SURE = 0.04
"""What a reading loses that rests on a mended word."""
_WORD = re.compile(r"(?<![\w'’@/#-])[^\W\d_]{3,20}(?![\w@/-])")
_RUN = re.compile(r"(.)\1+")
_ROLES = (
    "need",
    "allergen",
    "avoid",
    "kin",
    "group",
    "unit",
    "vague",
    "tail",
    "lead",
    "stop",
    "size",
    "eaters",
    "plain",
    "neutral",
    "head",
    "core",
)
_ENDED = re.compile(r"[^\W\d_]+ó(?!\w)", re.IGNORECASE)


@cache
def _ours() -> frozenset[str]:
    """The words our rules live by: words that slips are mended into."""
    found = {
        w
        for role in ("need", "allergen", "avoid", "kin", "group", "unit", "core", "lead", "tail")
        for phrase in words(role)
        for w in phrase.split()
    }
    for role in ("bring", "come", "be", "can"):
        found |= forms(role, "1s", "1p", "f1", "inf")
    for row in rows("dishes_es"):
        found.update(row["name"].translate(PLAIN).split())
    return frozenset(w for w in found if len(w) > 3)


@cache
def _known() -> frozenset[str]:
    """Every word that any of our vocabularies has."""
    found = {w for role in _ROLES for phrase in words(role) for w in phrase.split()}
    found |= {w for row in rows("words_real_es") for w in row["words"].split()}
    found |= set(words("expand")) | {w for v in words("expand").values() for w in v.split()}
    found |= {f for v in verbs() for said in v.forms.values() for f in said} | finite()
    for table, column in (("dishes_es", "name"), ("ingredients_es", "name"), ("goods_es", "said")):
        for row in rows(table):
            found.update(re.findall(r"[^\W\d_]+", row[column].lower().translate(PLAIN)))
    found |= index_of_names().vocabulary
    for row in rows("words_real_en"):  # what is a word in English, people say in Spanish, too
        found.update(row["words"].split())
    return frozenset(found | _ours())


@cache
def _near() -> dict[str, tuple[str, ...]]:
    return without_a_letter(_ours())


@cache
def _sounds() -> dict[str, str | None]:
    """How words of ours sound -> the word; None where two sound the same."""
    found: dict[str, str | None] = {}
    for word in _ours():
        key = sound(word)
        found[key] = None if key in found and found[key] != word else word
    return found


_LIKE = str.maketrans("vzcxw", "bsksg", "h")


@lru_cache(maxsize=8192)
def sound(word: str) -> str:
    """A word by its sounds: "b" and "v", "s", "z" and soft "c", "ll" and "y" are one; "h" is silent."""
    word = word.replace("ch", "C").replace("qu", "k").replace("ll", "y")
    word = re.sub(r"g(?=[ei])", "j", re.sub(r"c(?=[ei])", "s", word)).replace("gu", "g")
    word = word.translate(_LIKE)
    word = re.sub(r"y$|y(?=[^aeiou])", "i", word)
    return _RUN.sub(r"\1", word)


_CLITICS = ("melo", "mela", "melos", "melas", "noslo", "nosla", "selo", "sela", "telo", "tela", "me", "nos", "te", "os", "les", "le", "los", "las", "lo", "la", "se")


@cache
def _orders() -> frozenset[str]:
    """Forms that a pronoun is hung on: "manda", "manden", "mandar", "mandando"."""
    return frozenset(f for v in verbs() for slot in ("imp", "3s", "s1", "s3p", "inf", "ger") for f in v.forms.get(slot, ()))


def _with_pronoun(word: str) -> bool:
    return any(word.endswith(c) and word.removesuffix(c) in _orders() for c in _CLITICS)


def known(word: str) -> bool:
    """Whether anything here has that word, or a plural, a diminutive or an order with a pronoun made of it."""
    found = _known()
    return (
        word in found
        or _with_pronoun(word)
        or (word[-1:] in "ao" and word[:-1] + "ao".replace(word[-1], "") in found)
        or (word[-2:] in ("as", "os") and word[:-2] + {"as": "os", "os": "as"}[word[-2:]] in found)
        or any(word.endswith(e) and word.removesuffix(e) in found for e in ("s", "es"))
        or any(
            word.endswith(e) and word.removesuffix(e) + o in found
            for e in ("ito", "ita", "itos", "itas", "ote", "ota")
            for o in ("o", "a", "os", "as", "")
        )
    )


@lru_cache(maxsize=8192)
def mended(word: str) -> str | None:
    """What a plain lower-case word that nothing here knows was surely meant to be; None for all others."""
    if known(word):
        return None
    if max((len(m[0]) for m in _RUN.finditer(word)), default=0) > 2 or re.search(r"([aeiou])\1$", word):
        shorter = _RUN.sub(r"\1", word)
        if known(shorter) or shorter in expand():
            return shorter
        word = shorter
    if len(word) < 3 or re.fullmatch(r"(?:[jha]+|[jhe]+|[ji]+)", word):
        return None
    same = _sounds().get(sound(word))
    if same is not None:
        return same
    if len(word) < 5:
        return _apart(word)
    near = {w for shape in cuts(word) for w in _near().get(shape, ()) if is_slip(word, w)}
    if len(near) > 1:
        near = {w for w in near if sorted(w) == sorted(word)} or {w for w in near if len(w) > len(word)} or near
    return next(iter(near)) if len(near) == 1 else _apart(word)


_FIRST = ("si", "no", "yo", "voy", "llevo", "traigo", "vamos", "somos", "llevamos", "para", "con", "una", "unas", "unos", "los", "las", "mis", "ahi", "nos", "hago", "pongo")  # fmt: skip
"""What a word is typed together with that ought to follow it."""


def _apart(word: str) -> str | None:
    """ "novoy" -> "no voy", "llevoensalada" -> "llevo ensalada": two words that ran together."""
    ours = _ours() | forms("come", "1s", "1p") | forms("can", "1s", "1p") | {"conmigo", "estare", "estoy"}
    found = [
        f"{first} {word.removeprefix(first)}"
        for first in _FIRST
        if word.startswith(first)
        and (word.removeprefix(first) in ours or word.removeprefix(first) in ("voy", "va", "se"))
    ]
    return found[0] if len(found) == 1 else None


_LINE = re.compile(
    r"(?<=[\w)])[^\S\n]*\n[^\S\n]*(?=[^\W\d_][^\n]{0,50}(?:\n|$)|[0-9]{1,3}(?:[^\W\d_ .)]| [^\n]{0,40})?(?:\n|$))"
)


_BULLET = re.compile(r"\n[^\S\n]*[-*•·–▪✅☑✔➡→] ?(?=\S)")
_SLASH = re.compile(r"(?<=[^\W_]) / (?=[^\W_])")
"""What separates items as a comma does."""


def _one_line(match: re.Match[str]) -> str:
    """Short lines are pieces of one sentence: a comma instead, and as long as before."""
    return ",".ljust(len(match[0]))


_AY = re.compile(r"\bay\b(?=\s+(?:que|q|k|ke|algo|alguien|lugar|donde|estacionamiento|hora|mas|opcion(?:es)?|sitio|comida|wifi)\b)", re.IGNORECASE)


def there_is(text: str) -> dict[int, str]:
    """Where "ay" stands for "hay": place -> the word."""
    return {m.start(): "hay" for m in _AY.finditer(text)}


_NAMED = re.compile(r"\s+(?:y|e|lleva|trae|va|viene|vendra|no|dice|dijo|tambien|ya|hace|pone|puede|cae|esta)\b", re.IGNORECASE)
"""Behind a capital letter at the start this makes a name of the word."""


def prepared(text: str) -> tuple[str, dict[str, str]]:
    """The text without accents, letter for letter, and its slips: word as typed (lower case) -> what stands for it. A
    past like "llevó" keeps its accent: without it it would be "llevo"."""
    now = (
        forms("bring", "1s")
        | forms("come", "1s")
        | {"apunto", "sumo", "anoto", "confirmo", "cancelo", "encargo", "quedo"}
    )
    text = _SLASH.sub(" , ", _BULLET.sub(lambda m: "\n".ljust(len(m[0])), text.replace("➕", "+")))
    flat = _LINE.sub(_one_line, without_numbers(text)).translate(PLAIN)
    for match in _ENDED.finditer(text):
        if match[0].lower().translate(PLAIN) in now:
            flat = f"{flat[: match.start()]}{match[0].lower()[:-1].translate(PLAIN)}ó{flat[match.end() :]}"
    found: dict[str, str] = {}
    for match in _WORD.finditer(flat[:4096]):
        word = match[0].lower()
        if word in found or word in expand() or word.endswith("ó"):
            continue
        if (
            match[0][:1].isupper()
            and flat[: match.start()].rstrip()[-1:] not in ("", ".", "!", "?", "\n", "¡", "¿")
            and not text.isupper()
        ):
            continue  # a name
        if match[0][:1].isupper() and _NAMED.match(flat, match.end()) and not text.isupper():
            continue
        meant = mended(word)
        if meant is not None and meant != word:
            found[word] = expand().get(meant, meant)
    return flat, found


def joined(tokens: Sequence[Token]) -> list[Token]:
    """Numbers of several words as one: "treinta y cinco" is 35, "dos mil" 2000, "cien quince" 115."""
    made: list[Token] = []
    for token in tokens:
        if token.plain.isdecimal() and token.plain.isascii() and not token.raw.isdecimal():
            n = int(token.plain)
            if (
                len(made) > 1
                and made[-1].plain == "y"
                and made[-2].plain in ("30", "40", "50", "60", "70", "80", "90")
                and not made[-2].raw.isdecimal()
                and n < 10
            ):
                before = made[-2]
                made[-2:] = [Token(str(int(before.plain) + n), f"{before.raw} y {token.raw}", before.start, token.end)]
                continue
            if made and made[-1].plain in ("100", "200", "300") and not made[-1].raw.isdecimal() and n < 100:
                before = made[-1]
                made[-1:] = [Token(str(int(before.plain) + n), f"{before.raw} {token.raw}", before.start, token.end)]
                continue
        made.append(token)
    return made


def less_sure(message: Message, found: Sequence[Intent]) -> list[Intent]:
    """The readings, those a little less sure that rest on a mended word; a question changes nothing."""
    text = getattr(message, "original", "")
    at = [
        t.start
        for s in message.sentences
        for t in s.tokens
        if text[t.start : t.end].lower().translate(PLAIN) in message.mended
    ]
    return [
        replace(i, confidence=max(0.0, i.confidence - LESS_SURE))
        if not isinstance(i, Ask) and any(i.start <= k < i.end for k in at)
        else i
        for i in found
    ]
