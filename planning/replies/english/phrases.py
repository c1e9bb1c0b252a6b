"""Words that hold together in a list of dishes: names of several words, manners, and vague offers."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

from planning.replies.english.lexicon import words
from planning.replies.english.nouns import is_ingredient, known_thing
from planning.replies.text import Token


def inside_name(tokens: list[Token], i: int, last: int) -> bool:
    """Whether "on", "in" belongs to the dish's name ("corn on the cob", "chicken in wine sauce")."""
    following = [t.plain for t in tokens[i + 1 : min(i + 3, last)]]
    if tokens[i].plain not in ("on", "in") or not following:
        return tokens[i].plain == "down" and following[:1] == ["cake"]
    if " ".join(following) in words("inside") or following[0] in words("inside"):
        return True
    return (tokens[i].plain == "in" and following[0] in words("sauce")) or following[-1] in words("sauce")


def joined(tokens: list[Token], i: int, j: int, last: int) -> bool:
    """Whether the "and" at `j` is inside one dish ("mac and cheese")."""
    if tokens[j].plain not in ("and", "&") or j + 1 >= last or j == i:
        return False
    x, y = tokens[j - 1].plain, tokens[j + 1].plain
    head = tokens[j + 2].plain if j + 2 < last else ""
    if (
        j - i == 1
        and not x.endswith("s")
        and is_ingredient(x)
        and is_ingredient(y)
        and head
        and known_thing(f"{y} {head}")[1] >= 0.9
        and known_thing(head)[1] >= 0.9
    ):
        return True  # "cheese and onion quiche"
    pairs = words("pair")
    for before in (3, 2, 1):
        for after in (3, 2, 1):
            a, b = j - before, j + 1 + after
            if a >= i and b <= last:
                phrase = " ".join([*(t.plain for t in tokens[a:j]), "and", *(t.plain for t in tokens[j + 1 : b])])
                if phrase in pairs:
                    return True
    return False


_WHATEVER = re.compile(
    r"^ (?:whatever|anything|something|what|whichever dish)(?: else)? (?:is|you|we|they|the (?:table|menu|list))(?: (?:are|is|still|all|most|would|do|have|you))* "
    r"(?:short of|short|missing|needed|need|left|lacking|lack|wanted|want|like|prefer|useful|required|running low on)(?: the)?(?: most)?(?= $| ,|$)"
)


def vague_at(tokens: list[Token], i: int, last: int) -> tuple[str, int] | None:
    """ "something", "a main", "whatever is missing": the category it names, and where it ends."""
    table = words("vague")
    if (match := _WHATEVER.match(" " + " ".join(t.plain for t in tokens[i:last]))) is not None:
        return "", i + len(match[0].split())
    for n in (5, 4, 3, 2, 1):
        if i + n <= last and (phrase := " ".join(t.plain for t in tokens[i : i + n])) in table:
            nxt = tokens[i + n].plain if i + n < last else ""
            if nxt and nxt not in words("aftervague"):
                continue
            if nxt == "of" and known_thing(" ".join(t.plain for t in tokens[i + n + 1 : min(i + n + 3, last)]))[1] >= 0.5:
                continue  # "a salad of potatoes"
            return table[phrase], i + n
    if tokens[i].plain == "whatever" and i + 1 < last and tokens[i + 1].plain not in (",", "and"):  # "whatever's ripe"
        return "", next((k for k in range(i, last) if tokens[k].plain in (",", "for", "and", "but")), last)
    return None
