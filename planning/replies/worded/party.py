"""Who comes along, from a table of phrases: "we are #", "with my wife and 2 children (4 and 9)"."""

from __future__ import annotations

import re

from planning.potluck import Party
from planning.replies.ages import group_of_age
from planning.replies.intents import Intent, ReplyContext, SetParty
from planning.replies.text import Sentence
from planning.replies.worded.words import Words

GROUPS = ("adults", "teens", "children", "toddlers", "infants")


def read_people(sentence: Sentence, words: Words, context: ReplyContext) -> list[Intent]:
    """The party this sentence tells of: whole, or how many more."""
    text = sentence.text
    more = words.find("more", text)
    if more is not None and (added := words.number_in(more) or 1):
        start, end = sentence.span_of(more)
        return [SetParty(context.writer, Party(added), True, start=start, end=end, confidence=0.82)]
    parts = counts_in(text, words)
    total = words.find("party", text)
    bare = re.fullmatch(r" ([0-9]{1,3}) ", text) if context.asked in ("people", "party") else None
    number = words.number_in(total) if total is not None else int(bare[1]) if bare is not None else None
    if total is not None and number is None:
        number = 1  # "alone", "just me"
    along = words.find("with", text)
    if number is not None:
        spoken = sum(parts.values())
        parts["adults"] += max(0, number - spoken)
        found = total if total is not None else bare
        start, end = sentence.span_of(found) if found is not None else (0, 0)
        return [
            SetParty(context.writer, Party(**parts), start=start, end=end, confidence=0.9 if number >= spoken else 0.6)
        ]
    if not any(parts.values()):
        return []
    if along is not None:
        parts["adults"] += 1
    elif not context.asked and words.find("yes", text) is None and not re.match(r" [0-9]", text):
        return []  # somebody's children, not those who come
    return [SetParty(context.writer, Party(**parts), confidence=0.84 if along is not None else 0.8)]


def read_party(text: str, words: Words) -> Party | None:
    """A party by itself: "2 adults and 1 child", "3"."""
    message = words.message_of(text)
    parts = dict.fromkeys(GROUPS, 0)
    for sentence in message.sentences:
        for group, count in counts_in(sentence.text, words).items():
            parts[group] += count
    if any(parts.values()):
        return Party(**parts)
    bare = re.fullmatch(r"\D*([0-9]{1,3})\D*", message.plain)
    return Party(int(bare[1])) if bare else None


def counts_in(text: str, words: Words) -> dict[str, int]:
    """How many of each age group and kin the text names; ages right behind them decide."""
    parts = dict.fromkeys(GROUPS, 0)
    article = words.any_of("article")
    named = re.compile(
        rf"(?<= )(?:([0-9]{{1,3}}) |(?:(?:{article}) )+)?({words.any_of('group')}|{words.any_of('kin')})(?= )"
    )
    for match in named.finditer(text):
        said = match[match.lastindex or 2] if match.lastindex == 2 else match[2]
        role = "group" if words.means("group", said) else "kin"
        if role == "group" and match[1] is None and not re.match(rf"(?:{article}) ", match[0]):
            continue  # "children" alone says nothing about how many
        group = words.means(role, said) or "adults"
        ages = _ages(text[match.end() :], words)
        count = int(match[1]) if match[1] else max(1, len(ages))
        if ages and group != "adults":
            for age in ages[:count]:
                parts[group_of_age(age)] += 1
            count -= min(count, len(ages))
        parts[group] += count
    return parts


def _ages(rest: str, words: Words) -> list[int]:
    several = rf"[0-9]{{1,2}}(?: ?(?:,|{words.any_of('and')}) ?[0-9]{{1,2}})*"
    age, article = words.any_of("age"), words.any_of("article")
    found = re.match(
        rf" ,? ?(?:\( ?({several})(?: (?:{age}))? ?\)|(?:(?:{age}|{article}) )?({several}) (?:{age})(?= ))", rest
    )
    return [int(n) for n in re.findall(r"[0-9]+", found[1] or found[2])] if found else []
