"""People in a row: "me, Taro and two kids (5 and 8)", "2 adults, 3 kids (one's a toddler)"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

from planning.replies.ages import group_of_age
from planning.replies.english.ages import ages, bare_age
from planning.replies.english.lexicon import whole_number
from planning.replies.english.members import GOES_ON, item
from planning.replies.english.parts import of_them
from planning.replies.english.persons import AND, People, named_kin, noun_at
from planning.replies.text import Sentence

_PARTNER = frozenset(("girlfriend", "boyfriend", "husband", "wife", "partner", "fiance", "fiancee", "spouse"))
_SUPERLATIVE = ("youngest", "eldest", "oldest")
_NOT_A_NAME = frozenset(
    ("i", "we", "you", "he", "she", "they", "it", "not", "no", "yes", "all", "so", "but", "then", "sorry", "sadly", "maybe", "hopefully", "will", "is", "are",
     "that", "this", "there", "see", "can", "could", "bringing", "coming", "please", "thanks", "happy", "looking", "love", "what", "when", "where", "who", "how")
)  # fmt: skip
_NAME = re.compile(r"[^\W\d_][^\W\d_]+(?:['’-][^\W\d_]+)*")
_ALONG: tuple[list[str], ...] = (
    ["coming"],
    ["joining"],
    ["in"],
    ["attending"],
    ["also"],
    ["tagging"],
    ["there"],
    ["free"],
    ["up"],
    [],
)


class Members:
    """The lists of people in one sentence."""

    def __init__(self, sentence: Sentence) -> None:
        self.sentence, self.tokens = sentence, sentence.tokens

    def at(self, i: int) -> People | None:
        """A list of people from token `i`: items with commas, "and", "&", "+", "plus", "with" between."""
        tokens = self.tokens
        found = item(tokens, i)
        if found is None:
            return None
        while True:
            j = self._between(found.last)
            run_on = found.me and j < len(tokens) and tokens[j].plain in ("my", "our") and noun_at(tokens, j + 1)
            if j == found.last and whole_number(tokens, j) is None and not run_on:
                return found
            comma = "," in [t.plain for t in tokens[found.last : j]]
            if j < len(tokens) and tokens[j - 1].plain == "with" and tokens[j].plain in ("me", "us") and not found.me:
                return found  # "I'll have my nephew with me"
            more = item(tokens, j, found.me or named_kin(tokens[found.last - 1])) or (
                self.named_at(j) if found.me else None
            )
            if more is None or more.first == more.last:
                return found
            said_on = tokens[j + 1].plain if j + 1 < len(tokens) else ""
            if (
                more.me
                and tokens[j].plain == "i"
                and said_on not in ("", ",", ")", "-", *AND)
                and (comma or not found.kin)
            ):
                return found  # "one a baby, I don't do dairy"
            counted = whole_number(tokens, j)
            if counted is not None and of_them(tokens, counted[1]) > counted[1]:
                return found  # "seven, two of them small": a part of those before it
            described = tokens[more.last : more.last + 1] and tokens[more.last].plain == "who" and tokens[j - 1].plain in ("and", "&", "plus", "+")
            if comma and not described and (self.told_of(more.last) or self._does(more)):
                return found  # "me and the kids, my son has a nut allergy"
            if more.me and found.me and more.total == 1:
                found.last, found.again = more.last, True  # "me, myself and I"
                continue
            if more.kin in _SUPERLATIVE and comma and tokens[j].plain == "the":
                return found  # "two kids, the youngest is allergic": one of them
            if (
                more.kin in _PARTNER
                and tokens[more.first].plain in ("his", "her", "their")
                and found.counts.get("children")
            ):
                found.divide("children", {"adults": 1})  # "my son and his girlfriend"
            if (
                found.kin in ("son", "daughter")
                and tokens[more.first].plain in ("his", "her", "their")
                and more.kin in ("sons", "daughters", "kids", "children", "son", "daughter", "baby", "twins", "boys", "girls")
                and found.counts.get("children")
            ):
                found.divide("children", {"adults": 1})  # "my daughter and her two sons"
            found.merge(more)

    def _does(self, more: People) -> bool:
        """Whether "Grandma insists on her crumble" begins at a person named like a name."""
        following = self.tokens[more.last].plain if more.last < len(self.tokens) else ","
        return more.last - more.first == 1 and named_kin(self.tokens[more.first]) and following not in GOES_ON

    def told_of(self, i: int) -> bool:
        """Whether something else than coming is said at token `i` of the person before it."""
        plain = [t.plain for t in self.tokens[i : i + 2]]
        if not plain:
            return False
        if not self.sentence.free(i) or plain[0] in (
            "has",
            "have",
            "does",
            "can",
            "needs",
            "must",
            "who",
            "eats",
            "avoids",
        ):
            return True
        return plain[0] in ("is", "are") and plain[1:] not in _ALONG

    def _between(self, i: int) -> int:
        """Where the next item begins after "and", a comma or "from our side"."""
        tokens, j = self.tokens, self._past_aside(i)
        while j < len(tokens) and tokens[j].plain in AND:
            j += 1
        if (
            [t.plain for t in tokens[j : j + 2]] in (["from", "our"], ["from", "my"])
            and tokens[j + 2 : j + 3]
            and tokens[j + 2].plain in ("side", "house", "end", "family")
        ):
            j += 3  # "three adults from our side plus one toddler"
            while j < len(tokens) and tokens[j].plain in AND:
                j += 1
        return j

    def _past_aside(self, i: int) -> int:
        """Behind "(one vegetarian)", which was read as a need."""
        if i >= len(self.tokens) or self.tokens[i].plain != "(":
            return i
        end = next((k for k in range(i + 1, min(i + 7, len(self.tokens))) if self.tokens[k].plain == ")"), None)
        read = end is not None and not any(self.sentence.free(k) for k in range(i + 1, end))
        return end + 1 if end is not None and read else i

    def named_at(self, i: int) -> People | None:
        """Somebody called by name in a list with the writer: of the age told beside it, else an adult."""
        tokens = self.tokens
        if i >= len(tokens) or i == 0 or not self.sentence.free(i):
            return None
        if tokens[i].plain in ("little", "baby", "wee", "young", "tiny") and i + 1 < len(tokens):
            i += 1
        token = tokens[i]
        if (
            not token.raw[:1].isupper()
            or _NAME.fullmatch(token.raw) is None
            or token.plain != token.raw.lower()
            or token.plain in _NOT_A_NAME
        ):
            return None
        last = i + 1
        told = ages(tokens, last)
        if (
            told is None
            and last < len(tokens)
            and (age := bare_age(tokens, last)) is not None
            and age[0] <= 17
            and not noun_at(tokens, age[1])
        ):
            told = [age[0]], age[1]  # "Ella 5 and Max 3"
        if told is not None and len(told[0]) == 1:
            return People(i, told[1], {group_of_age(told[0][0]): 1})
        return People(i, last, {"adults": 1}, names=1)
