"""A message cut into sentences of plain words, each word knowing where it stood.

The plain form is lower case with every short form written out ("can't" -> "can not", "I'll" -> "i will"),
so that one pattern covers what people write in ten ways. Language by language, the writing-out is data.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache

LONGEST = 4096
"""Characters looked at."""
MOST_TOKENS, TAIL = 1000, 300
"""Words and signs looked at: more than any prose of that length has. Of more the beginning is read and the end, where
"just kidding" stands."""

_V = "½⅓⅔¼¾⅛⅜⅝⅞"
_TOKEN = re.compile(
    rf"[0-9]{{1,2}}(?:[xX×][0-9]{{1,2}})(?![0-9])"
    rf"|[0-9]{{1,2}}:[0-9]{{2}}(?:-[0-9]{{1,2}}:[0-9]{{2}})?"
    rf"|[0-9]{{1,9}}(?:[.,/][0-9]{{1,6}})*[{_V}]?(?:[-–][0-9]{{1,9}}(?:[./][0-9]{{1,6}})?)?|[{_V}]"
    r"|(?:[Nn]o|[Nn]r)\.(?= ?[0-9])"
    r"|[^\W\d_]+(?:['’ʼ`´-][^\W\d_]+)*['’]?"
    r"|[\n]|[^\s]"
)
_QUOTES = re.compile(r"[\"“”«»„][^\"“”«»„\n]{1,600}[\"“”«»„]|(?<!\w)['‘][^'‘’\n]{3,300}['’](?!\w)")
_FACES = re.compile(r"(?<![\w:])(?:(?:[:;=]|8(?=-))[-'^]?[)(\]\[DPpoO*3|/\\]+|<3+|\^_?\^|[xX]D+)(?!\w)")
_CAPITAL = re.compile(r"\s+(?:[^\W\d_a-z][a-z']|I\b)")
_SHORTENED = frozenset(("lb", "lbs", "oz", "approx", "fl", "qt", "pt", "gal", "pkg", "st", "ca", "incl", "inc"))
DISMAY = re.compile(
    r"(?:(?<=^)|(?<=[.!?\n] ))(?:oh|ah|aww?|argh|omg|ooh|ay|uy|ostras)[, ]+no+(?:[, ]+no+)*(?=[.,!\u2026]+\s+[^\s.!?])",
    re.IGNORECASE,
)
""" "Oh no." before other sentences: no answer to anything."""
_END = frozenset(".!?;\n…")


@dataclass(frozen=True)
class Token:
    """`plain` is the written-out word, `raw` the word as typed, `start`/`end` its characters."""

    plain: str
    raw: str
    start: int
    end: int


class Sentence:
    """Words of one sentence. What a rule has understood is taken out, so that no other rule reads it again."""

    def __init__(self, tokens: list[Token], question: bool) -> None:
        self.tokens = tokens
        self.question = question
        self.text = " " + " ".join(t.plain for t in tokens) + " "
        self.left = self.text
        self._starts: list[int] = []
        at = 1
        for token in tokens:
            self._starts.append(at)
            at += len(token.plain) + 1

    def token_range(self, match: re.Match[str], group: int | str = 0) -> tuple[int, int]:
        """First token and one past the last token of a match in `left`."""
        start, end = match.span(group)
        first = next((i for i, s in enumerate(self._starts) if s + len(self.tokens[i].plain) > start), len(self.tokens))
        last = next((i for i, s in enumerate(self._starts) if s >= end), len(self.tokens))
        return first, max(first, last)

    def offset(self, index: int) -> int:
        """Where token `index` begins in `text` and `left` (one past the end: where the next one would)."""
        return self._starts[index] if index < len(self.tokens) else len(self.text)

    def span(self, first: int, last: int) -> tuple[int, int]:
        """The characters of the message from token `first` up to, not including, `last`."""
        if first >= last or first >= len(self.tokens):
            return (0, 0)
        return self.tokens[first].start, self.tokens[last - 1].end

    def span_of(self, match: re.Match[str], group: int | str = 0) -> tuple[int, int]:
        return self.span(*self.token_range(match, group))

    def take(self, first: int, last: int) -> None:
        """Mark tokens as understood."""
        for i in range(first, min(last, len(self.tokens))):
            start, length = self._starts[i], len(self.tokens[i].plain)
            self.left = self.left[:start] + "\x00" * length + self.left[start + length :]

    def take_match(self, match: re.Match[str], group: int | str = 0) -> None:
        self.take(*self.token_range(match, group))

    def free(self, index: int) -> bool:
        """Whether nothing has read this token yet."""
        return 0 <= index < len(self.tokens) and self.left[self._starts[index]] != "\x00"


@dataclass(frozen=True)
class Message:
    sentences: tuple[Sentence, ...]
    plain: str
    """All sentences' plain text."""
    quoted: bool
    """Whether somebody's words stood in quotation marks; they were left out."""
    symbols: tuple[str, ...]
    """Emoji and other signs, in order."""
    mended: frozenset[str] = field(default=frozenset(), kw_only=True)
    """Words as typed (lower case) that were read as others: slips of the pen, by a guess."""
    numbered: bool = field(default=False, kw_only=True)
    """Whether it was typed as a list with numbers ("1. ... 2. ...")."""


def cut(
    text: str,
    expand: Mapping[str, str],
    neutral: frozenset[str],
    is_before: frozenset[str] = frozenset(),
    here: Mapping[int, str] | None = None,
) -> Message:
    """The message's sentences. `expand` writes words out, `here` those that begin at a place; `neutral` words are left
    out; before the words `is_before` an ending "'s" is short for "is"."""
    text = text[:LONGEST]
    lines = []
    quoted = False
    for line in text.split("\n"):
        if line.lstrip().startswith((">", "|")):
            quoted = True
            line = " " * len(line)
        lines.append(line)
    text = "\n".join(lines)

    text = _FACES.sub(lambda m: ("." if _CAPITAL.match(text, m.end()) else " ") + " " * (len(m[0]) - 1), text)

    def blank(match: re.Match[str]) -> str:
        nonlocal quoted
        if len(match[0].split()) < 2:
            return match[0]  # one word in quotes is emphasis or a name
        quoted = True
        return " " * len(match[0])

    text = _QUOTES.sub(blank, text)
    sentences: list[Sentence] = []
    symbols: list[str] = []
    current: list[Token] = []

    def close(question: bool) -> None:
        nonlocal current
        while current and current[-1].plain in (",", "-", "–", "—", ":"):
            current.pop()
        while current and current[0].plain in (",", "-", "–", "—", "*", "•", "·"):
            current.pop(0)
        if current:
            sentences.append(Sentence(current, question))
        current = []

    found = list(_TOKEN.finditer(text))
    if len(found) > MOST_TOKENS:
        found = [*found[: MOST_TOKENS - TAIL], *found[-TAIL:]]
    for number, match in enumerate(found):
        raw = match[0]
        if raw in _END:
            if raw == "." and _abbreviation(current, found, number):
                continue
            close(raw == "?")
            continue
        if not raw[0].isalnum() and raw not in "+&(),-–—−:/#$€£%@*→½⅓⅔¼¾⅛⅜⅝⅞" and raw[0] not in _V:
            if unicodedata.category(raw[0]) in ("So", "Sk", "Cn"):
                symbols.append(raw)
                if current and _begins(found, number + 1):
                    close(False)  # "still coming 😊 My phone is dead"
            continue
        if raw in "*":
            continue
        word = raw[:40].lower().replace("’", "'").replace("ʼ", "'").replace("`", "'").replace("´", "'").rstrip("'")
        after = found[number + 1][0].lower() if number + 1 < len(found) else ""
        written = (here or {}).get(match.start()) or expand.get(word, word)
        if word.endswith("'s") and written == word and after in is_before:
            written = expand.get(word[:-2], word[:-2]) + (" has" if after == "got" else " is")  # "my partner's vegan"
        if after == "got" and written.endswith(" is"):
            written = written[:-2] + "has"  # "he's got"
        if raw in "-–—" and text[match.start() - 1 : match.end() + 1] == f" {raw} " and not after.isdecimal():
            written = ","  # a pause between words, and no range of numbers
        for plain in written.split(" "):
            current.append(Token(plain, raw, match.start(), match.end()))
    close(False)
    for i, sentence in enumerate(sentences):
        kept = _without_neutral(sentence.tokens, neutral)
        if len(kept) != len(sentence.tokens):
            sentences[i] = Sentence(kept, sentence.question)
    sentences = [s for s in sentences if s.tokens]
    return Message(tuple(sentences), " . ".join(s.text.strip() for s in sentences), quoted, tuple(symbols))


def _begins(found: list[re.Match[str]], number: int) -> bool:
    """Whether a word with a capital letter and small ones comes next, or "I"."""
    word = found[number][0] if number < len(found) else ""
    return word[:1].isupper() and (word[1:2].islower() or word[:2] in ("I", "I'"))


def _abbreviation(current: list[Token], found: list[re.Match[str]], number: int) -> bool:
    """ "3 lb. of potatoes": the full stop does not end the sentence."""
    if not current or current[-1].plain not in _SHORTENED:
        return False
    following = found[number + 1][0][0] if number + 1 < len(found) else ""
    return following.islower() or (following.isdecimal() and current[-1].plain in ("incl", "inc", "approx", "ca"))


@cache
def _begins_of(phrases: frozenset[str]) -> frozenset[str]:
    """The first words of the phrases."""
    return frozenset(phrase.partition(" ")[0] for phrase in phrases)


def _without_neutral(tokens: list[Token], neutral: frozenset[str]) -> list[Token]:
    """Leaves out thanks, please and greetings; a phrase of two words stands in `neutral` with a space."""
    kept: list[Token] = []
    begins = _begins_of(neutral)
    i = 0
    while i < len(tokens):
        if tokens[i].plain not in begins:
            kept.append(tokens[i])
            i += 1
            continue
        for n in (4, 3, 2, 1):
            if " ".join(t.plain for t in tokens[i : i + n]) in neutral and i + n <= len(tokens):
                i += n
                if i < len(tokens) and tokens[i].plain == "," and not kept:
                    i += 1
                elif kept and kept[-1].plain == "," and i >= len(tokens):
                    kept.pop()
                break
        else:
            kept.append(tokens[i])
            i += 1
    return kept


def raw_words(tokens: Sequence[Token]) -> str:
    """The words as typed; what stood together stays together, and a word written out appears once."""
    text = ""
    for k, token in enumerate(tokens):
        before = tokens[k - 1] if k else None
        if before is not None and token.start == before.start:
            continue
        text += (" " if before is not None and token.start > before.end else "") + token.raw
    return text


_NUMBERED = re.compile(r"(?:^|(?<=\s))(?P<n>[0-9]{1,2})[.)](?=\s+\S)")


def numbered(text: str) -> bool:
    """Whether the text is a list whose items have numbers, from one on."""
    found = [int(m["n"]) for m in _NUMBERED.finditer(text)]
    return len(found) > 1 and found == list(range(1, len(found) + 1))


def without_numbers(text: str) -> str:
    """Without the numbers of a list's items, which count nothing ("1. hummus", "1) yes 2) four people")."""
    if not numbered(text):
        return text
    for match in _NUMBERED.finditer(text):
        whole = len(match["n"]) + 1
        at = match.start("n")
        inside = at > 0 and text[:at].rstrip(" ")[-1:] not in ("", "\n", ":")
        text = text[:at] + ("." if inside else " ") + " " * (whole - 1) + text[at + whole :]
    return text
