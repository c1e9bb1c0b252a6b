"""Numbers of people in the forms of lists and ledgers: "adults: 2, kids: 1", "2A 2K", "save us 4 spots", "both coming"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Iterator

from planning.potluck import AGE_GROUPS, Party
from planning.replies.english.lexicon import NUMBER, number_of
from planning.replies.intents import ReplyContext
from planning.replies.text import Sentence

Found = tuple[int, int, Party, bool, float]
"""First token, one past the last, the party, whether it is so many more, how sure (0 to 1)."""
_GROUPS = (
    ("adults", r"adults?|grown-?ups?|grown ups?|big ones|a|ad"),
    ("teens", r"teens?|teenagers?|t"),
    ("children", r"kids?|children|child|small ones|little ones|littles|k|c"),
    ("toddlers", r"toddlers?"),
    ("infants", r"bab(?:y|ies)|infants?|newborns?"),
)
_ANY = "|".join(words for _, words in _GROUPS)
_N = rf"(?:{NUMBER}|no|zero)"
_LEDGER = re.compile(
    rf"(?:^|(?<= ,)|(?<= yes)|(?<= coming)|(?<= in)|(?<= :)) (?:{_ANY}) (?:: |x |- |are |is )?{_N}(?:(?: ,| and| \+| &| /)* (?:{_ANY}) (?:: |x |- |are |is )?{_N})*(?= $| ,| total)"
)
_SHORT = re.compile(r"(?:^|(?<= ,)|(?<= yes)|(?<= coming)) [1-9] (?:a|ad) (?:, |and |\+ |& |/ )?[1-9] (?:k|c|t)(?= $| ,)")
_PAIR = re.compile(rf"(?P<who>{_ANY}) (?:: |x |- |are |is )?(?P<n>{_N})(?= |$)")
_BEHIND = re.compile(r"(?P<n>[1-9]) (?P<who>a|ad|k|c|t)(?= |$)")
_TOTALS = (
    (re.compile(rf"^ (?:(?:please|yes|ok|so|,) )*(?:count|reserve|book|put|add up to|sign up) (?P<n>{NUMBER})(?: (?:people|heads|of us|seats?|places?|spots?|from (?:me|us)|from the [a-z]+s?|for us))*(?= $| ,)"), 0.85),
    (re.compile(rf" (?:,|-|and) all (?P<n>{NUMBER})(?: of us)?(?= $| ,| and)"), 0.88),
    (re.compile(rf"^ (?:(?:all|so|that is|,) )*(?P<n>{NUMBER}) (?:yes(?:es)?|confirmed|confirming|definitely|for sure|reporting(?: for duty)?|from (?:us|the [a-z]+|our [a-z]+)|coming)(?= $| ,)"), 0.88),
    (re.compile(rf" (?:save|keep|need|reserve|hold|book|want|set aside|set)(?: out)?(?: (?:us|me))? (?P<n>{NUMBER}) (?:seats?|spots?|chairs?|places?|plates|settings|covers)(?: for us| for me| at the table)?(?= $| ,| please)"), 0.86),
    (re.compile(rf"^ (?P<n>{NUMBER}) (?:seats?|spots?|places?)(?: (?:please|for us|for me|needed|from us))+ $|^ (?P<m>{NUMBER}) (?:seats?|spots?|places?) $"), 0.8),
    (re.compile(rf" count on (?P<n>{NUMBER}) from (?:the|our) [a-z]+(?= $| ,)"), 0.85),
    (re.compile(rf"^ (?:put|mark|count|sign|note) (?:the|us) [a-z]+s? (?:down |in )?(?:for|as|at) (?P<n>{NUMBER})(?= $| ,)"), 0.85),
    (re.compile(rf"^ (?:the [a-z]+ (?:are|is) (?:coming|in) ,? ?)?(?P<n>{NUMBER}) (?:including|incl|counting|with) (?:me|us|myself|everyone|all of us|the (?:kids|children|baby|little ones?)|kids)(?= $| ,)"), 0.85),
)  # fmt: skip
_COUNTS = re.compile(
    rf"[0-9]| (?:{NUMBER}|both|pair|another|a person|adults?|kids|children|grown-ups|grown) "
)
"""Without such a word there is nothing to count."""
_BOTH = re.compile(
    r"(?:^| we| us|(?<= ,)|(?<= yes)) (?:are |will |can )?(?:both|the pair) (?:of us )?(?:are |will |can )?(?:(?:be )?(?:coming|in|attending|joining|there|free)|come|make it|be there)(?= $| ,| and| with| for| too)"
)
_DOWN = re.compile(
    rf"(?:^|(?<= ,)|(?<= now)|(?<= so)) (?:(?:we|it|there) (?:are|is|will be) )?(?:now )?(?P<way>down|short|minus|up) (?P<n>{NUMBER}|a person)(?: (?:person|people|adults?|head))?(?= $| ,| now| because| after)"
)
_LEAVES = re.compile(rf" (?:so|now|leaves|leaving|makes|,)(?: (?:just|only|now|it is|we are|that leaves|us|with))* {NUMBER}(?: (?:of us|now|people|then))* $")
_ADD = re.compile(
    rf"^ (?:(?:please|can you|could you|and|also|oh|,) )*add (?P<n>{NUMBER}|another)(?: (?:more|extra))?(?: (?:person|people|guests?|heads?|for us|to us|to our (?:party|number)))*(?= $| ,| please)"
)
_GROWN_ONLY = re.compile(
    r"^ (?:(?:it is|it will be|so|now|sorry|actually|,) )*(?:(?:just|only) (?:the |us )?(?:adults|grown-ups|grown ups|two adults)|adults only|no kids|no children|(?:the )?(?:kids|children) (?:are )?not coming)(?: (?:now|this time|after all|then|please))* $"
)
_ABOUT = re.compile(
    rf"^ (?:(?:yes|coming|so|hmm|,|it will be|we will be|there will be|it is|we are) )*(?:(?:probably|maybe|perhaps|about|around|roughly|likely|think|i think|i guess|we think|possibly|say|looks like|it looks like) )+(?P<n>{NUMBER})(?: (?:of us|people|i think|i guess|or so|ish|probably|maybe))* $"
)
_AT_LEAST = re.compile(
    rf"^ (?:(?:yes|coming|so|hmm|,) )*(?:at least {NUMBER} ,? ?(?:maybe|perhaps|possibly|probably|could be) (?P<n>{NUMBER})|(?P<m>{NUMBER}) (?:for sure|definitely|certain) ,? ?(?:maybe )?{NUMBER} if .*|(?<=[a-z] )(?P<k>{NUMBER}) ?ish)(?: of us| people)* $"
)
"""A number left open; the larger of two, unless it hangs on a condition."""
_CHANGED = re.compile(
    rf"^ (?:(?:actually|sorry|no|oh|ok|so|wait|now|make it|it is|that is|we are|us|just|only|update|correction|change|changing|to|:|,) )+(?P<n>{NUMBER})(?: (?:of us|people|now|then|please|not {NUMBER}|instead))* $"
)
"""A number alone behind a word for a change, from somebody whose party is known."""


def tallies(sentence: Sentence, context: ReplyContext) -> Iterator[Found]:
    """The counts of one sentence in these forms, likeliest first."""
    if not context.addressed or sentence.question:
        return
    left = sentence.left
    if _COUNTS.search(left) is None:
        return
    yield from _ledger(sentence)
    if context.asked in (None, "people") and not context.own_promises and (about := _ABOUT.match(left) or _AT_LEAST.match(left)) is not None:
        n = number_of(next(v for v in about.groupdict().values() if v))
        if 0 < n <= 12:
            first = sentence.token_range(about, next(k for k, v in about.groupdict().items() if v))[0]
            yield first, sentence.token_range(about)[1], Party(n), False, 0.65
    if (both := _BOTH.search(left)) is not None:
        yield (*sentence.token_range(both), Party(2), False, 0.88)
    for pattern, sure in _TOTALS:
        if (match := pattern.search(left)) is not None:
            n = number_of(match["n"] or match.groupdict().get("m") or "0")
            if 0 < n <= 30:
                yield (*sentence.token_range(match), Party(n), False, sure)
    if context.party is not None and not context.own_promises:
        yield from _changes(sentence, context, context.party)


def _ledger(sentence: Sentence) -> Iterator[Found]:
    match, pair = _LEDGER.search(sentence.left), _PAIR
    if match is None:
        match, pair = _SHORT.search(sentence.left), _BEHIND
    if match is None:
        return
    counts = dict.fromkeys(AGE_GROUPS, 0)
    for one in pair.finditer(match[0] + " "):
        group = next(g for g, words in _GROUPS if re.fullmatch(words, one["who"]))
        counts[group] += 0 if one["n"] in ("no", "zero") else number_of(one["n"])
    party = Party(**counts)
    if party.adults and 0 < party.total <= 30:
        yield (*sentence.token_range(match), party, False, 0.9)


def _changes(sentence: Sentence, context: ReplyContext, known: Party) -> Iterator[Found]:
    left = sentence.left
    if (match := _DOWN.search(left)) is not None and _LEAVES.search(left) is None:
        n = 1 if match["n"] == "a person" else number_of(match["n"])
        way = 1 if match["way"] == "up" else -1
        yield (*sentence.token_range(match), Party(way * n), True, 0.88 if n < known.total or way > 0 else 0.6)
    if (match := _ADD.search(left)) is not None:
        n = 1 if match["n"] == "another" else number_of(match["n"])
        yield (*sentence.token_range(match), Party(n), True, 0.9 if n <= 6 else 0.6)
    if known.total > known.adults and (match := _GROWN_ONLY.match(left)) is not None:
        yield (*sentence.token_range(match), Party(known.adults), False, 0.85)
    if context.asked is None and (match := _CHANGED.match(left)) is not None and 0 < number_of(match["n"]) <= 12:
        yield (*sentence.token_range(match), Party(number_of(match["n"])), False, 0.88)
