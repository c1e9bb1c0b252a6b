"""Slips of the pen in the words our rules live by: "cnat", "wen", "brng", "yesss", "comin".

Only a word that nothing here knows is mended, and only into the one word of `data/words_core_en.csv` that is a single
slip away, or into any word of ours by two neighbouring letters changed about or one typed twice; `data/words_real_en.csv` holds the real words that near, which are left as they are. What was mended is a
guess: readings that rest on it are a little less sure.
"""

# ruff: noqa: E501 - a table of words is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import cache, lru_cache

from planning.amounts import number_words, unit_of
from planning.dishes.index import index_of_names
from planning.replies.english.lexicon import singulars
from planning.replies.intents import Ask, Intent
from planning.replies.slips import cuts, is_slip, without_a_letter
from planning.replies.text import Message
from planning.tables import rows

LESS_SURE = 0.05
"""What a reading loses that rests on a mended word."""
_WORD = re.compile(r"(?<![\w'’@/#-])[^\W\d_]{2,20}(?:['’][^\W\d_]{1,3})?(?![\w@/-])")
_RUN = re.compile(r"(.)\1+")
_VOWELS = str.maketrans("", "", "aeiou")
_AFTER_A_NAME = frozenset(("is", "has", "will", "can", "are", "and", "was", "says", "said", "wants", "would", "could", "does", "&", ",", "isn't", "can't", "won't", "cant", "wont", "might", "may"))  # fmt: skip


@cache
def _core() -> dict[str, int]:
    """The words slips are mended into, and their rank."""
    return {w: n for n, w in enumerate(w for row in rows("words_core_en") for w in row["words"].split())}


def is_known(word: str) -> bool:
    """Whether any of our vocabularies has this word."""
    return word in _known()


@cache
def _known() -> frozenset[str]:
    """Every word that any of our vocabularies has."""
    found = {w for row in rows("words_real_en") for w in row["words"].split()}
    for row in rows("words_en"):
        found.update(re.findall(r"[^\W\d_]+", row["word"].lower()))
        found.update(re.findall(r"[^\W\d_]+", row["value"].lower()) if row["role"] == "expand" else ())
    for table in (
        "dishes",
        "dishes_more",
        "dishes_words",
        "ingredients",
        "allergens",
        "diets",
        "toppings",
        "bases",
        "kinds",
    ):
        for row in rows(table):
            found.update(re.findall(r"[^\W\d_]+", " ".join(v for k, v in row.items() if k != "source").lower()))
    return frozenset(found | set(number_words()) | index_of_names().vocabulary | _core().keys())


@cache
def _ours() -> frozenset[str]:
    """Those of them that we can make something of."""
    return _known() - {w for row in rows("words_real_en") for w in row["words"].split()}


@cache
def _one_off() -> dict[str, tuple[str, ...]]:
    """Words of the core by what is left of them without one letter."""
    return without_a_letter(_core())


@cache
def _scrambled() -> dict[tuple[str, str, str], set[str]]:
    """Words of the core by their first letter, all their letters and their last one."""
    found: dict[tuple[str, str, str], set[str]] = {}
    for word in _core():
        found.setdefault((word[0], "".join(sorted(word)), word[-1]), set()).add(word)
    return found


@cache
def _skeletons() -> dict[str, str]:
    """Consonants -> the first word of the core that has just these."""
    found: dict[str, str] = {}
    for word in _core():
        if any(c in "aeiou" for c in word):
            found.setdefault(word.translate(_VOWELS), word)
    return found


def known(word: str) -> bool:
    return any(form in _known() for form in singulars(word)) or unit_of(word) is not None


@lru_cache(maxsize=8192)
def mended(word: str) -> str | None:
    """What a lower-case word that nothing here knows was surely meant to be; None for all others."""
    if known(word):
        return None
    if (run := _RUN.search(word)) is not None:
        shapes = (_RUN.sub(r"\1\1", word), _RUN.sub(r"\1", word))
        if max(len(m[0]) for m in _RUN.finditer(word)) > 2 or len(word) > 4:
            told = [s for s in shapes if s != word and s in _ours()]
            if told and (len(run[0]) > 2 or len(word) > 5 or any(s in _core() for s in told)):
                return next((s for s in told if s in _core()), told[0])
        if len(run[0]) > 2:
            word = _RUN.sub(r"\1", word)
    if word.endswith("in") and word + "g" in _known():
        return word + "g"
    if len(word) > 1 and not any(c in "aeiouy" for c in word):
        return _skeletons().get(word)
    if len(word) < 3:
        return None
    near = {w for shape in cuts(word) for w in _one_off().get(shape, ()) if is_slip(word, w)}
    if len(near) > 1:
        near = {w for w in near if sorted(w) == sorted(word)} or {w for w in near if len(w) > len(word)} or near
    if not near and len(word) > 2:
        near = {w for w in _swapped(word) if w in _ours() and len(w) > 2}
    if not near and len(word) > 5:
        near = set(_scrambled().get((word[0], "".join(sorted(word)), word[-1]), ()))
    return next(iter(near)) if len(near) == 1 else None


def _swapped(word: str) -> set[str]:
    """The word with two neighbouring letters changed about."""
    return {word[:i] + word[i + 1] + word[i] + word[i + 2 :] for i in range(len(word) - 1)} - {word}


def slips(text: str, expand: Mapping[str, str]) -> dict[str, str]:
    """The words of the text that were mended, lower case -> what stands for them in plain words."""
    found: dict[str, str] = {}
    loud = text.isupper()
    for match in _WORD.finditer(text[:4096]):
        raw = match[0]
        word = raw.lower().replace("’", "'")
        if word in found or word in expand or word.endswith("'s") or (raw.isupper() and not loud):
            continue
        if not loud and raw[0].isupper():
            before, after = text[: match.start()].rstrip()[-1:], text[match.end() :].split(maxsplit=1)[:1]
            named = bool(after) and (after[0].lower().strip(".!?") in _AFTER_A_NAME or text[match.end()] in ",")
            if (before and before not in ".!?\n") or named:
                continue  # a name
        meant = mended(word.replace("'", ""))
        if meant is not None:
            found[word] = expand.get(meant, meant)
    return found


_SPOKEN = re.compile(r"\b(?:comma|period|full stop|question mark|exclamation (?:mark|point)|new line)\b", re.IGNORECASE)
_SIGNS = {"comma": ",", "period": ".", "full": ".", "question": "?", "exclamation": "!", "new": "\n"}
_A_WORD = re.compile(r"\b(?:a|an|the|my|this|that|her|your|oxford|each|every|same)$", re.IGNORECASE)


def undictated(text: str) -> str:
    """The text with punctuation that was spoken ("comma", "period"), as long as before."""
    if _SPOKEN.search(text) is None:
        return text

    def sign(match: re.Match[str]) -> str:
        if _A_WORD.search(text[max(0, match.start() - 12) : match.start()].rstrip()):
            return match[0]  # "the period", "a comma"
        return _SIGNS[match[0].split()[0].lower()].ljust(len(match[0]))

    return _SPOKEN.sub(sign, text)


def less_sure(message: Message, found: Sequence[Intent]) -> list[Intent]:
    """The readings, those a little less sure that rest on a mended word; an answer to a question changes nothing."""
    if not message.mended:
        return list(found)
    at = [t.start for s in message.sentences for t in s.tokens if t.raw.lower().replace("’", "'") in message.mended]
    return [
        replace(i, confidence=max(0.0, i.confidence - LESS_SURE))
        if not isinstance(i, Ask) and any(i.start <= k < i.end for k in at)
        else i
        for i in found
    ]
