"""A word one slip of the pen away from another, in any language with the letters a to z."""

# ruff: noqa: E501 - a table of keys is easier to read on one line

from __future__ import annotations

from collections.abc import Iterable

from rapidfuzz.distance import OSA

KEYS = {
    "q": "wa", "w": "qeas", "e": "wrsd", "r": "etdf", "t": "ryfg", "y": "tugh", "u": "yihj", "i": "uojk", "o": "ipkl", "p": "ol", "a": "qwsz", "s": "awedxz", "d": "serfcx", "f": "drtgvc", "g": "ftyhbv", "h": "gyujnb", "j": "huikmn", "k": "jiolm", "l": "kop", "z": "asx", "x": "zsdc", "c": "xdfv", "v": "cfgb", "b": "vghn", "n": "bhjm", "m": "njk",
}  # fmt: skip
"""Keys that lie side by side."""


def is_slip(typed: str, meant: str) -> bool:
    """Whether one slip makes the one of the other: letters changed about, one left out, one too many, or the next key."""
    if len(meant) < 3 or OSA.distance(typed, meant) != 1:
        return False
    if sorted(typed) == sorted(meant):
        return True
    if typed[0] != meant[0]:
        return False
    if len(typed) != len(meant):
        return len(meant) > 3
    if len(typed) < 4:
        return False
    a, b = next((a, b) for a, b in zip(typed, meant, strict=True) if a != b)
    return len(typed) > 5 or b in KEYS.get(a, "") or {a, b} <= set("aeiou")


def without_a_letter(words: Iterable[str]) -> dict[str, tuple[str, ...]]:
    """Words by themselves and by what is left of them without one letter: where to look for what is one slip away."""
    found: dict[str, list[str]] = {}
    for word in words:
        for shape in {word, *(word[:i] + word[i + 1 :] for i in range(len(word)))}:
            found.setdefault(shape, []).append(word)
    return {shape: tuple(near) for shape, near in found.items()}


def cuts(word: str) -> set[str]:
    """The word, and it without each of its letters."""
    return {word, *(word[:i] + word[i + 1 :] for i in range(len(word)))}
