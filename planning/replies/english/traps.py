"""Sentences that say nothing for us: what others said, what might have been, what was, what others should do."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from dataclasses import replace

from planning.replies.english.lexicon import any_of
from planning.replies.intents import ReplyContext
from planning.replies.text import Message, Sentence

_REPORTED = re.compile(
    r"\b(?:he|she|they|someone|somebody|everyone|my [a-z]+|the [a-z]+|[a-z]+) "
    r"(?<! i (?=said (?:[0-9]|it |we |yes|no|maybe|two|three|four|five|six)))(?:said|says|told|asked|asks|wrote|reckons|claims|claimed|announced|mentioned|replied|was like|is like|(?<!anything )(?<!everything )goes)\b"
    r"|\baccording to\b|\bi (?:said(?! (?:[0-9]|it |we |that we |yes|no|maybe|two|three|four|five|six))|told|asked|wrote|heard|read|was told)\b|\b(?:and|so) i was like\b|\bquote\b"
    r"|\bdid (?:he|she|they|[a-z]+) (?:say|tell)\b"
)
_HYPOTHETICAL = re.compile(
    r"^ (?:(?:and|but|well|ah|oh|alas|,) )*(?:had|were) (?:i|we|it|there|the|my|our|only) (?=.*\b(?:would|could|might|will)\b)|^ should (?:i|we) (?!bring|make|come)[a-z]+ (?=.*\b(?:i|we) (?:will|would|shall)\b)"
    r"|\bif (?:i|we|it|there|my [a-z]+) (?:[a-z]+ed|knew|took|got|gave|felt|grew|stood|kept|ran|did not|were not|was not)\b(?=.*\b(?:would|could)\b)|\b(?:would|could)\b.*\bif (?:i|we) (?:owned|lived|knew|possessed|trusted)\b|"
    r"\bif (?:i|we) (?:were|was|had|could|ever|only|did|won|lived)\b|\bif only\b|\bwould have\b(?! (?:said yes|come|loved to|been there|jumped at it)\b.*\b(?:but|if it|only|were it not|had it)\b)|\bcould have\b|\bshould have\b"
    r"|\bmight have\b(?! to)|\b(?:i|we) wish\b(?! (?:i|we) could (?:come|make it|be there|join))|\bimagine\b|\bwhat if\b|(?<!\bi )(?<!\bwe )\bsuppos(?:e|ing)\b|\bin theory\b|\bone day\b|\bsome ?day\b"
    r"|\bwould be (?:nice|fun|funny|great|cool|lovely|amazing|good)\b|\bhypothetically\b|\bin another life\b"
    r"|(?<! not )(?<!ver )\bdream(?:t|ed|ing)?\b(?! up)|\bas if (?:i|we)\b|\bwhen hell\b|\bwhen pigs\b|\bnext year\b|(?<!^ )\bnext time\b(?! $)|\bany ?one would\b"
)
_PAST = re.compile(
    r"(?<!same as )(?<!like )(?<!than )(?<!since )\blast (?:year|time|month|week|summer|autumn|fall|winter|spring|sunday|saturday|night)\b|(?<!since )\byesterday\b"
    r"|\bback (?:in (?=(?:[0-9]|the (?:day|[0-9])|january|february|march|april|may|june|july|august|september|october|november|december|school|college|my|our))|when|then)|\b(?:it was|there were|there was) (?:[0-9]|only|just|so|too|a|about)|\bused to\b|\b(?:years|ages|weeks|months|days) ago\b|\bremember when\b|\bthat time\b"
    r"|\b(?:i|we|he|she|they|you) (?:brought|made|came|baked|cooked|had(?! to (?:cancel|drop|pull))|ate|went|(?:was|were)(?! (?:not )?(?:going|planning|thinking|hoping|wondering))|did|took|forgot|loved)\b|\bwas allergic\b|\bthat was\b"
    r"|\bthe other (?:day|week|night)\b"
)
_NOW = re.compile(
    r"\b(?:will|this time|this year|now|am (?:bringing|coming|making)|again|instead|are (?:coming|bringing)|so (?:it is |we are |that is |just )?(?:[0-9]|two|three|four|five|six))\b"
)
_OTHERS = re.compile(
    r"^ (?:(?:and |so |but |ok |well )?(?:you|everyone(?! in (?:my|our))|everybody(?! in (?:my|our))|someone|somebody|anyone|anybody|people|they|guys|folks|y'all|nobody|no one|who|whoever|he|she)) (?!(?:can|may|should) (?:count|mark|put|note|consider|sign|add|rely|depend|bank|expect|reckon|have)|expect|have (?:me|us)|bet|know i )"
    r"|(?<!see )(?<!whichever )(?<!whatever )(?<!what )(?<!anything )(?<!something )\byou (?:should(?! (?:count|expect))|could|can(?! (?:count|mark|put|note|consider|sign|add|rely|depend|bank|expect|reckon|turn|change|make|switch|upgrade|take))|must|need to|have to|will|guys|all|might|would|are|do)\b|(?<!\bif )(?<!unless )\b(?:someone|somebody|anyone|anybody|nobody|no one|everyone|everybody) (?:should|could|can|will|has to|needs|else|is|might|would|please|brings?)\b"
    r"|^ (?:please )?(?:do not(?! know| think)|never|no more|stop|enough(?! for)|let us(?! (?:say|do|go with|make it|put|bring)\b)|remember|make sure|be sure|tell|ask(?! me))\b"
)
_ELSEWHERE = re.compile(
    r"\b(?:come|coming|make it|go|going|be) (?:over )?(?:to|at) (?:the |my |our |your |a )?"
    r"(?:dentist|doctor|gym|work|office|meeting|school|class|game|match|cinema|movies?|concert|funeral|wedding|airport|station|pub|bank|market|shops?|church|hospital|training|practice|rehearsal|interview|court|bbq at|birthday|call)\b"
    r"|\b(?:make|making|take) (?:it|this|that) (?:work|up|happen|easy|easier|clear|better|worse|stop|look)\b"
    r"|\bbring(?:ing)? (?:it|that|this) (?:up|on|back|down)\b|\bbring (?:me|us|you|him|her|them|back)\b|\bbring(?:s|ing)? (?:about|out|joy|tears)\b"
)
_JOKE = re.compile(rf"(?<![a-z])(?:{any_of('joke')})(?![a-z])")


_CALLED = re.compile(
    r"^ [^\W\d_]+ (?:, )?(?:are|will|can|could|do|did|have|would|what|when|where|how|is) (?:.* )?(?:you|your|yours)\b"
)


def _named(word: str, context: ReplyContext) -> bool:
    return any(word == name.lower().split()[0] for _, name in context.guests if name)


def joking(message: Message) -> bool:
    """Whether the message takes itself back ("just kidding")."""
    return _JOKE.search(message.plain) is not None


def behind_joke(message: Message) -> Message:
    """What is said after "just kidding" is meant ("jk, I'm coming"); the message as it is where nothing follows."""
    said = " " + message.plain + " "
    jokes = [m.end() for m in _JOKE.finditer(said)]
    if not jokes:
        return message
    gone = jokes[-1]
    after: list[Sentence] = []
    at = 1
    for sentence in message.sentences:
        if at >= gone:
            after.append(sentence)
        elif at + len(sentence.text.strip()) > gone:
            k = sum(1 for n in range(len(sentence.tokens)) if at + sentence.offset(n) - 1 < gone)
            rest = sentence.tokens[k:]
            while rest and rest[0].plain in (",", "-", "but", "so", "and", "."):
                rest = rest[1:]
            if rest:
                after.append(Sentence(rest, sentence.question))
        at += len(sentence.text.strip()) + 3
    if sum(len(s.tokens) for s in after) < 2 or after[0].tokens[0].plain in ("not", "no"):
        return message
    return replace(message, sentences=tuple(after), plain=" . ".join(s.text.strip() for s in after))


def blocked(sentence: Sentence, context: ReplyContext) -> str | None:
    """Why nothing in this sentence is meant now by its writer, or None."""
    text = sentence.text
    if sentence.question and _CALLED.match(text) and _named(text.split()[0], context):
        return "called"  # "Pat, are you bringing your dal?"
    if _HYPOTHETICAL.search(text):
        return "hypothetical"
    reported = _REPORTED.search(text)
    if reported is not None and not re.match(r"(?:i|we) (?:will|can)", reported[0]):
        return "reported"
    if _PAST.search(text) and not _NOW.search(text):
        return "past"
    if _OTHERS.search(text) and not re.search(r"\b(?:i|we) (?:will|can|could|am|are)\b| you (?:can|will|may|could|should) (?:get|have|expect) .* (?:from (?:me|us)|$)", text):
        return "others"
    if _ELSEWHERE.search(text):
        return "elsewhere"
    return None
