"""A sentence in its clauses: what the whole of it hides, one of them may say plainly.

"I've acquired a girlfriend since last week, so there are two of us" is about last week, and yet says how many come.
"""

# ruff: noqa: E501 - a table of words is easier to read on one line

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from planning.replies.intents import AddPromise, Ask, ChangePromise, Intent, SetNeeds, SetParty, Undo
from planning.replies.text import Sentence, Token

SURE = 0.78
"""What only one clause of a sentence says is asked about."""
_PAUSES = frozenset((",", ":", "-", "–", "—"))
_JOINTS = frozenset(("but", "so", "because", "since", "though", "although", "while", "however", "therefore"))
_BEGINS = frozenset(("i", "we", "it", "there", "my", "please", "kindly", "can", "could", "is", "are", "will", "count", "put", "make", "set", "what", "where", "when", "who", "how", "undo", "just", "sorry", "she", "he", "am", "had", "nothing"))  # fmt: skip
_RUNS_ON = frozenset((("i", "am"), ("i", "will"), ("i", "can"), ("we", "are"), ("we", "will"), ("we", "can"), ("i", "have"), ("we", "have"), ("count", "me"), ("count", "us"), ("count", "on"), ("put", "me"), ("put", "us"), ("set", "it"), ("make", "it"), ("make", "that"), ("give", "me"), ("can", "you"), ("could", "you"), ("my", "wife"), ("my", "husband"), ("my", "son"), ("my", "daughter")))  # fmt: skip
_LEADS_ON = frozenset(("if", "that", "when", "think", "hope", "because", "and", "or", "but", "so", "as", "unless", "say", "said", "know", "sure", "guess", "suppose", "what", "where", "how", "who", "which", "since", "until", "not", "see", "if", "whether", "afraid", "then", "for", "with", "to", "of", "is", "bring", "bringing", "make", "mean", "meant", "wish", "while", "though", "believe", "reckon", "told", "tell", "can", "could", "will", "would", "should", "please", "just", "and", "allergic", "the", "a", "do", "does", "did", "are", "am", "why", "only", "than"))  # fmt: skip
"""Behind these the same clause goes on."""


_COUNTERED = frozenset(("but", "though", "although", "however"))
_MARVELS = frozenset(("wow", "omg", "mmmm", "mmm", "mm", "yum", "ooh", "gosh", "whoa"))
_SHORTEST = 2
"""A clause of fewer words says nothing by itself ("yes, that was funny")."""


def clauses(sentence: Sentence) -> list[Sentence]:
    """The clauses that may say something, if there are at least two; those that a "but" takes back are left out."""
    parts: list[list[Token]] = [[]]
    tokens, countered = sentence.tokens, set[int]()
    for k, token in enumerate(tokens):
        after = tokens[k + 1].plain if k + 1 < len(tokens) else ""
        before = tokens[k - 1].plain if k else ""
        counted = after in _BEGINS or after[:1].isdecimal()
        if token.plain in _PAUSES or (token.plain in _JOINTS and k and (token.plain != "so" or counted)):
            if token.plain in _COUNTERED:
                countered.add(len(parts) - 1)
            parts.append([])
            continue
        if token.plain == "and" and after in _BEGINS and len(parts[-1]) > 1:
            parts.append([])
            continue
        if (token.plain, after) in _RUNS_ON and len(parts[-1]) > 1 and before not in _LEADS_ON:
            parts.append([])
        parts[-1].append(token)
    if sum(bool(p) for p in parts) < 2 or tokens[0].plain in _MARVELS:
        return []
    return [
        Sentence(p, sentence.question and p[-1] is tokens[-1])
        for k, p in enumerate(parts)
        if len(p) >= _SHORTEST and k not in countered
    ]


def read_each(sentence: Sentence, read: Callable[[Sentence, list[Intent]], None]) -> list[Intent]:
    """What single clauses say of a sentence that says nothing as a whole, to be asked about; an answer to a question
    changes nothing and may be given. `read` adds to what was read of the clauses before."""
    found: list[Intent] = []
    for clause in clauses(sentence):
        before = list(found)
        read(clause, found)
        if len(clause.tokens) < _TELLS_A_DIET:  # "two lasagnas, one veggie"
            found = [i for i in found if i in before or not (isinstance(i, SetNeeds) and _by_choice(i))]
    return [
        i if isinstance(i, (Ask, Undo)) else replace(i, confidence=min(i.confidence, SURE))
        for i in found if _stands(i, sentence.question)
    ]  # fmt: skip


_TELLS_A_DIET = 3


def _by_choice(intent: SetNeeds) -> bool:
    return all(n.severity in ("", "diet") for n in intent.needs)


def _stands(intent: Intent, question: bool) -> bool:
    """Whether it may be taken out of its sentence: a dish only named, or a need that is gone, may not."""
    if isinstance(intent, ChangePromise):
        return not question  # "slaw for 12, is that still right?"
    if isinstance(intent, AddPromise):
        return intent.confidence >= SURE or bool(intent.servings or intent.quantity)
    if isinstance(intent, SetParty):
        return intent.confidence >= SURE
    return not (isinstance(intent, SetNeeds) and intent.cleared and bool(intent.needs))
