"""Rules tried only where they can begin: at a sentence's first word, where a clause begins, at "I" or "we".

Most rules of a table begin in one of a few ways. Where those stand in a sentence is looked up once for all of them,
so that a rule which cannot match is not tried at every letter.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence
from operator import itemgetter

_Rule = tuple[re.Pattern[str], float, int]
_ANYWHERE = -1


class Rules:
    """Patterns with what each is worth. `leads` are pieces of pattern that many of them begin with."""

    def __init__(self, rules: Iterable[tuple[str, float]], leads: Sequence[str]) -> None:
        leads = ("^", *sorted(leads, key=len, reverse=True))
        self._leads = [re.compile(f"(?={lead})") for lead in leads]
        made = [(re.compile(way), worth, lead_of(way, leads)) for source, worth in rules for way in ways(source)]
        self._rules: list[_Rule] = sorted(made, key=itemgetter(1), reverse=True)

    def best(
        self, text: str, counts: Callable[[re.Match[str]], bool] = lambda match: True
    ) -> tuple[float, re.Match[str]] | None:
        """The match that is worth most, of equals that of the rule named first, and its worth; of those that `counts`
        lets count."""
        begins: dict[int, list[int]] = {0: [0]}
        for pattern, worth, lead in self._rules:
            if lead == _ANYWHERE:
                if (match := pattern.search(text)) is not None and counts(match):
                    return worth, match
                continue
            if (at := begins.get(lead)) is None:
                at = begins[lead] = [m.start() for m in self._leads[lead].finditer(text)]
            for k in at:
                if (match := pattern.match(text, k)) is not None:
                    if counts(match):
                        return worth, match
                    break
        return None


def lead_of(source: str, leads: Sequence[str]) -> int:
    """Which of the leads the pattern begins with, by its number; -1 for none of them."""
    return next((k for k, lead in enumerate(leads) if source.startswith(lead)), _ANYWHERE)


def ways(source: str) -> list[str]:
    """The pattern's alternatives, each a pattern of its own.

    >>> ways("^ yes|\\\\b(?:in|on)[|]")
    ['^ yes', '\\\\b(?:in|on)[|]']
    """
    found, begin, depth, escaped, in_class = list[str](), 0, 0, False, False
    for k, letter in enumerate(source):
        if escaped or letter == "\\":
            escaped = not escaped
        elif in_class or letter == "[":
            in_class = letter != "]"
        elif letter in "()":
            depth += 1 if letter == "(" else -1
        elif letter == "|" and not depth:
            found.append(source[begin:k])
            begin = k + 1
    return [*found, source[begin:]]
