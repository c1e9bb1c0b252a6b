"""Somebody else's answer: "Pat can't come" - only for people the group knows."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

from planning.potluck import Answer
from planning.replies.intents import Intent, ReplyContext, SetAnswer
from planning.replies.text import Sentence

_AFTER = (
    (Answer.NO, re.compile(r" (?:(?:is|are) not (?:coming|able to (?:come|make it)|joining|going to (?:make it|come))|(?:can|will|could) not (?:come|make it|be (?:there|coming|able to (?:come|make it))|join(?: us)?|attend)|(?:has|have) to (?:cancel|skip|pass|miss|bail)|(?:is|are) out|has (?:cancelled|dropped out|canceled)|will (?:miss|skip) it)\b")),
    (Answer.MAYBE, re.compile(r" (?:might|may) (?:not )?(?:come|make it|join|be (?:there|coming))\b| (?:is|are) (?:a maybe|not sure)(?= $| ,| if| whether)")),
    (Answer.YES, re.compile(r" (?:(?:is|are) (?:also )?(?:coming|joining|in|attending)|will (?:also )?(?:come|be (?:there|coming|joining)|join(?: us)?|make it)|can (?:come|make it)(?: after all| too)?)\b(?= (?:too|as well|after all|with|also|and|for)| $| ,)")),
)  # fmt: skip


def read_others(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """Answers of named guests; never surer than 0.75, so that they are asked about."""
    found: list[Intent] = []
    for guest, name in context.guests:
        first = name.lower().split()[0] if name.split() else ""
        if guest == context.writer or len(first) < 2:
            continue
        for shape in dict.fromkeys((name.lower(), first)):
            at = sentence.left.find(f" {shape} ")
            if at < 0:
                continue
            rest = sentence.left[at + len(shape) + 1 :]
            for answer, pattern in _AFTER:
                if (match := pattern.match(rest)) is None:
                    continue
                begin = at + 1
                whole = re.compile(re.escape(sentence.left[begin : at + len(shape) + 1 + match.end()]))
                hit = whole.search(sentence.left)
                assert hit is not None
                start, end = sentence.span_of(hit)
                sentence.take_match(hit)
                found.append(SetAnswer(guest, answer, start=start, end=end, confidence=0.75))
                break
            else:
                continue
            break
    return found
