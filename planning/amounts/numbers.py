"""Numbers as people write them: figures, fractions, words; and how a cook writes one back."""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction
from functools import cache

from planning.tables import rows


@cache
def number_words() -> dict[str, tuple[Fraction, str]]:
    """Number word -> (its value, its role: unit, ten, scale or fraction)."""
    return {row["word"]: (Fraction(row["value"]), row["role"]) for row in rows("words_numbers")}


VULGAR = {
    "½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5", "⅘": "4/5",
    "⅙": "1/6", "⅚": "5/6", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
}  # fmt: skip
_V = "".join(VULGAR)
NUMBER = (
    rf"[0-9]{{1,9}} ?[{_V}]|[{_V}]"
    r"|[0-9]{1,9}[ -][0-9]{1,3}[/⁄][0-9]{1,3}|[0-9]{1,9} and [0-9]{1,3}[/⁄][0-9]{1,3}|[0-9]{1,3}[/⁄][0-9]{1,3}"
    r"|[0-9]{1,3}(?:,[0-9]{3}){1,3}(?:\.[0-9]{1,6})?(?![0-9])|[0-9]{1,12}(?:[.,][0-9]{1,6})?|\.[0-9]{1,6}"
)
"""The pattern of a number."""

_THOUSANDS = re.compile(r"[0-9]{1,3}(?:,[0-9]{3})+(?:\.[0-9]+)?")


def fraction(text: str) -> Fraction | None:
    """The value of a text that fits `NUMBER`; None for a fraction over nothing."""
    if text.isdecimal() and text.isascii():
        return Fraction(int(text))
    if text[-1] in VULGAR:
        text = f"{text[:-1].strip()} {VULGAR[text[-1]]}"
    if "/" in text or "⁄" in text:
        head, _, tail = text.replace("⁄", "/").replace(" and ", " ").replace("-", " ").rpartition(" ")
        top, _, bottom = tail.partition("/")
        below = int(bottom)
        return Fraction(int(head or 0) * below + int(top), below) if below else None
    if "," in text:
        text = text.replace(",", "" if _THOUSANDS.fullmatch(text) else ".")
    whole, _, part = text.partition(".")
    return Fraction(int(whole + part), 10 ** len(part))


def read_number(words: Sequence[str], start: int = 0) -> tuple[Fraction, int] | None:
    """A number in words from `words[start]` on, and the position after it.

    "twelve", "twenty-four", "two hundred", "a dozen", "half a dozen", "one and a half", "a couple", "half".
    Words are lower case; a bare "a" counts as one only before dozen, hundred, half, couple.
    """
    table, i, end = number_words(), start, len(words)
    total, found = Fraction(0), False
    if i < end and words[i] in ("a", "an") and i + 1 < end:
        if words[i + 1] == "couple":
            return Fraction(2), i + 2 + (i + 2 < end and words[i + 2] == "of")
        if words[i + 1] in ("dozen", "hundred", "thousand", "half", "quarter"):
            total, found, i = Fraction(1), words[i + 1] not in ("half", "quarter"), i + 1
            total = total if found else Fraction(0)
        else:
            return None
    while i < end:
        word = words[i]
        if word in table:
            value, role = table[word]
            if role == "fraction":
                if found and word in ("half", "quarter", "third"):
                    break
                total, found, i = value * (total or 1), True, i + 1
                if i < end and words[i] in ("a", "an", "of"):
                    i += 1 + (i + 1 < end and words[i : i + 2] == ["of", "a"])
                if i < end and words[i] in ("dozen", "doz"):
                    total, i = total * 12, i + 1
                break
            if role == "scale":
                if not found:
                    break
                total, i = total * value, i + 1
                continue
            if found and not (role == "unit" and value < 10 and total % 100 >= 20 and total % 10 == 0):
                break
            total, found, i = total + value, True, i + 1
        elif "-" in word and all(part in table for part in word.split("-")) and not found:
            tens, *units = word.split("-")
            if table[tens][1] != "ten" or len(units) != 1 or not 0 < table[units[0]][0] < 10:
                break
            total, found, i = table[tens][0] + table[units[0]][0], True, i + 1
        elif word in ("dozen", "dozens", "doz") and found:
            return total * 12, i + 1
        elif word == "and" and found and list(words[i + 1 : i + 3]) in (["a", "half"], ["a", "quarter"]):
            return total + table[words[i + 2]][0], i + 3
        else:
            break
    return (total, i) if found else None


_SIGN = {Fraction(v): k for k, v in VULGAR.items()}


def number(value: float | Fraction) -> str:
    """A number as cooks write it: "3", "1½", "0.7"."""
    exact = Fraction(value).limit_denominator(1000)
    whole, part = divmod(exact, 1)
    if not part:
        return str(whole)
    if part in _SIGN and part.denominator <= 4:
        return f"{whole if whole else ''}{_SIGN[part]}"
    return f"{float(exact):.2f}".rstrip("0").rstrip(".")
