"""How it was typed: apostrophes left out, "w/", "2" and "4" for words, a list over several lines, a smile for a full stop.

All of it keeps every character in its place, so that what is read can be shown where it stood.
"""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping
from functools import cache
from itertools import pairwise

from planning.replies.english.lexicon import NUMBER, words
from planning.replies.text import without_numbers

_DO = r"(?:bring|make|be|come|do|take|cook|bake|get|grab|try|let|send|pick|buy|contribute|provide|pass|sort|join|need|miss|skip|attend|serve|drop|throw|add|put|have|help|stay|leave|go|cancel|work|say|see to|prepare|cover|handle|supply|pop|turn up|show up|tell|ask|check|call|give|want|love|stick|bow|pull|bail|sit|share|split|host|arrive|eat|stop|swap|change|fix|whip)"
_ADVERB = r"(?:(?:all|both|also|probably|definitely|just|still|gladly|happily|certainly|then|even|only|sadly|def|prob|defo|not|never) )*"
_START = r"(?:^|[^\w\s'’]\s*|\b(?:and|but|yes|yep|yeah|ok|so|if|as|cos|perfect|great|think|hope|sorry|sadly|that|says|said|now|actually|lovely|cool|no|thanks|all|because|since|unless|when|where|not|maybe)\s)\s*"
_PREDICATE = r"(?:allergic|diabetic|vegan|vegetarian|veggie|coeliac|celiac|pescatarian|gluten|lactose|dairy|halal|kosher|intolerant|pregnant|expecting|tagging|coming|joining|visiting|staying|bringing|making|severely|highly|badly|also|not|ill|sick|poorly|away|working|got|in|out|a|an|the)"
_ONE = r"mum|mom|dad|nan|nana|gran|grandma|grandpa|granny|wife|husband|hubby|partner|boyfriend|girlfriend|bf|gf|sister|brother|daughter|son|cousin|aunt|auntie|uncle|niece|nephew|flatmate|housemate|roommate|mate|friend|neighbou?r|boss|fianc[eé]e?|eldest|youngest|baby|toddler|lad|mother|father"
_ONES = " ".join(f"{one}s" for one in _ONE.split("|") if one.isalpha()) + " neighbours neighbors fianc fiances fiancees"
_PREDICATES = _PREDICATE[3:-1].replace("|", " ")
_WITHOUT = tuple(
    (frozenset(cues.split()), re.compile(source, re.IGNORECASE), written)
    for cues, source, written in (
        ("were", rf"{_START}(?P<w>were)(?= (?:in|coming|free|a|an|all|both|going|gonna|not|[0-9]|{NUMBER}|bringing|making|out|away|busy|vegan|vegetarian|veggie|moving|still|down|good|fine|ok|on|able|happy|just|only|up|off|having|definitely|also|there|easy|so|thinking|planning|doing|cooking|joining|allergic)\b(?! (?:you|they|there)\b))", "we are"),
        ("your", rf"\b(?P<w>your)(?= (?:[a-z]+ )?(?:{_ONE}|grandmother|grandfather|aunt|uncle|cousins?|better half) (?:and|&) (?:i|me|myself)\b)", "my"),
        ("hubs hubby hubster husband", rf"{_START}(?P<w>hubs|hubby|hubster|husband)(?= ?(?:and|&|\+|,|plus|n) ?(?:me|i|myself|kids?|baby|our|my|the|[0-9])\b)", "my husband"),
        ("wife wifey missus", rf"{_START}(?P<w>wife|wifey|missus)(?= ?(?:and|&|\+|,|plus|n) ?(?:me|i|myself|kids?|baby|our|my|the|[0-9])\b)", "my wife"),
        ("partner", rf"{_START}(?P<w>partner)(?= ?(?:and|&|\+|,|plus|n) ?(?:me|i|myself|kids?|baby|our|my|the|[0-9])\b)", "my partner"),
        ("b", r"\b(?:i'?ll|will|wont|won't|to|gonna|can|could|might|should|cant) (?P<w>b)(?= (?:there|late|coming|bringing|making|here|in|with|able|on|a)\b)", "be"),
        ("well", rf"\b(?P<w>well)(?= {_ADVERB}{_DO}\b)", "we will"),
        ("wed", rf"\b(?P<w>wed)(?= {_ADVERB}(?:love|like|be|rather|prefer|have|bring|come|make)\b)", "we would"),
        ("id", rf"\b(?P<w>id)(?= {_ADVERB}(?:love|like|be|rather|prefer|have|bring|come|make|do|say|need)\b)", "i would"),
        ("ill", rf"(?<!\bam )(?<!\bm )(?<!\bis )(?<!\bare )(?<!\bbe )(?<!\bwas )\b(?P<w>ill)(?= {_ADVERB}{_DO}\b)", "i will"),
        ("shell", rf"\b(?P<w>shell)(?= {_ADVERB}(?:bring|be|make|come|do|join|need|have)\b)", "she will"),
        ("hell", rf"{_START}(?P<w>hell)(?= {_ADVERB}(?:bring|be|make|come|do|join|need|have)\b)", "he will"),
        ("ones", r"[(,] ?(?P<w>ones)(?= (?:an?|[0-9]|two|three|four|five|six|seven|eight|nine|ten|under|only|vegan|vegetarian|veggie|allergic|coeliac|celiac)\b)", "one is"),
        (_ONES, rf"\b(?P<w>(?:{_ONE})s)(?= {_PREDICATE}\b)", ""),
        (_PREDICATES, r"\b(?P<w>(?-i:[A-Z][a-z]{2,})s)(?= (?:allergic|diabetic|vegan|vegetarian|coeliac|celiac|lactose|gluten free|intolerant|severely|not coming|also coming)\b)", ""),
    )
)  # fmt: skip
"""A short form whose apostrophe was left out and that is a word of its own, where what follows shows what it is; with
"" it is the word before its last letter, and "is". Before each: words of which the text has one wherever it matches."""
_WORDS = re.compile(r"[a-z]+")
_TO = re.compile(
    rf"\b(?:have|want|need|like|love|going|able|unable|happy|hoping|hope|glad|volunteer|willing|plan|planning|supposed|meant|used|trying|try|has|wants|needs|got|gonna|me|us|how|what|where|coming|come) (?P<w>2)(?= (?:{_DO}|attend|drop out|bow out|the (?:supper|potluck|party|dinner)|home)\b)"
    r"|\b(?:allergic|unable|anaphylactic|intolerant|close) (?P<x>2)(?= [a-z])",
    re.IGNORECASE,
)
_FOR = re.compile(
    rf"\b(?!(?:are|be|is|of|us|in|yes|only|just|all|we|m|re|make|make it|us)\b)[a-z]+ (?P<w>4)(?= (?:me|sure|everyone|everybody|my|our|the|a dozen|two dozen|about|abt|like|around|(?!one\b){NUMBER}\b(?! of)|us (?:this|pls|please|thx)|dessert|pudding|starters?|drinks?)\b)",
    re.IGNORECASE,
)
_LETTER = re.compile(r"\s*(?P<w>[yYnN])[.!\s]*")
_GLUTEN = re.compile(
    r"(?:^|[,(:;.!\n/-]\s*|\b(?:is|are|it's|its|be|all|both|only|also|not|need|needs|eat|eats|or|any|anything|something|everything|strictly|df and|vegan and|some|a|no)\s+)(?P<w>gf)(?=\s*(?:$|[,.!?;)\n/-]|and df|df|vegan|veg|options?|food|friendly|diet|please|pls|plz|bread|pasta|cake|brownies|cookies|rolls|buns|flour|crackers|dessert|main|side|version|stuff|one\b|ones\b|too\b|here\b|for me\b|for us\b))",
    re.IGNORECASE,
)
"""Behind a pause or a verb "gf" is gluten-free; behind "my" it is somebody."""
_WITH = re.compile(r"(?<![\w/])[wW]/(?!o\b)")
_NOT_WITH = re.compile(r"(?<![\w/])[wW]/(?=[oO]\b)")
_NOW_FOR = re.compile(r"→(?= *(?:(?:now|only|just) )?(?:for |feeds? |[0-9]))", re.IGNORECASE)
"""An arrow to a new size ("slaw → now for 16"); before another dish it stays, as a swap."""
_SIGNS = str.maketrans({"➕": "+", "➖": "-", "✖": "x", "✕": "x", "=": ":", "➡": "→", "⇒": "→", "⟶": "→"})
_BREAK = re.compile(r"(?<=[^\s.!?:;,…>])[ \t]*\n[ \t]*(?=[\w+])")
_AFTER_BRACKET = re.compile(r"(?<=\)) (?=(?P<word>[A-Z][a-z']*)\b)")
MOST_LINES, MOST_IN_A_LINE = 8, 9
"""So many short lines may be one list (common practice, no source)."""
_ASKS = re.compile(r"\s*(?:what|when|where|who|how|which|is|are|do|does|can|could|should|shall|any|undo|>)\b", re.IGNORECASE)


def straight(text: str) -> str:
    """The text with its list on one line and its signs written so that words and sentences are told apart."""
    text = _unbulleted(text.translate(_SIGNS)).replace("->", "→ ").replace("=>", "→ ")
    if "→" in text:
        text = _NOW_FOR.sub(",", text)
    text = without_numbers(text)
    if "/" in text:
        text = _NOT_WITH.sub("w-", _WITH.sub("w ", text))
    if "\n" in text:
        text = _on_one_line(text)
    if ")" in text:
        small = _starters()
        text = _AFTER_BRACKET.sub(lambda m: "." if m["word"].lower() in small else m[0], text)
    return text


_BULLET = re.compile(r"(?:^|(?<=\s))(?P<sign>[^\w\s,.;:!?'\"()&+%#$@*/<>=~–—-])\ufe0f?(?=\s+\w)")


def _unbulleted(text: str) -> str:
    """A sign that stands before several items of one line is what parts them ("✅ 3 people ✅ rice")."""
    if text.isascii():
        return text
    signs = Counter(m["sign"] for m in _BULLET.finditer(text))
    if not any(n > 1 for n in signs.values()):
        return text
    return _BULLET.sub(
        lambda m: m[0] if signs[m["sign"]] < 2 else (" " if not text[: m.start()].strip() else ",").ljust(len(m[0])), text
    )


@cache
def _starters() -> frozenset[str]:
    return frozenset(words("plain")) | frozenset(words("filler")) | {"how", "what", "great", "big", "work", "hope", "feels", "can't", "it's", "i'm", "we'll", "i'll", "won't"}  # fmt: skip


def _on_one_line(text: str) -> str:
    """Short lines without an end of their own are pieces of one sentence."""
    lines = text.split("\n")
    if sum(bool(line.strip()) for line in lines) > MOST_LINES:
        return text
    made = lines[0]
    for before, line in pairwise(lines):
        if not before.strip() or not line.strip():
            made += "\n" + line
            continue
        short = max(len(before.split()), len(line.split())) <= MOST_IN_A_LINE
        opens = re.match(r"\s*[\w+]", line) is not None and not re.match(r"\s*[0-9]+[.)]", line)
        closed = re.search(r"[^\w)'’%]\s*$", before) is not None or before.lstrip().startswith(">")
        joins = short and opens and not closed and not line.rstrip().endswith("?") and not _ASKS.match(line)
        made += ("," if joins else "\n") + line
    return made


def written(text: str) -> Mapping[int, str]:
    """What words stand for that are short for others here, by the place they begin at."""
    found: dict[int, str] = {}
    words_in = set(_WORDS.findall(text.lower()))
    for cues, pattern, long in _WITHOUT:
        if cues.isdisjoint(words_in):
            continue
        for match in pattern.finditer(text):
            found[match.start("w")] = long or match["w"][:-1].lower() + " is"
    if "2" in text:
        found.update({m.start("w") if m["w"] else m.start("x"): "to" for m in _TO.finditer(text)})
    if "4" in text:
        found.update({m.start("w"): "for" for m in _FOR.finditer(text)})
    if (letter := _LETTER.fullmatch(text)) is not None:
        found[letter.start("w")] = "yes" if letter["w"] in "yY" else "no"
    if "gf" in text.lower():
        found.update({m.start("w"): "gluten-free" for m in _GLUTEN.finditer(text)})
    return found
