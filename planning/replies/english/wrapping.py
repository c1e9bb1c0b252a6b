"""What people wrap their news in: "Right then, ...", "just to let you know, ...", "..., hope that's ok", a name below it.

None of it says anything for us, and left in it hides what does; here it is taken off. A message that is nothing but
wrapping stays as it is.
"""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from dataclasses import replace

from planning.replies.english.lexicon import words
from planning.replies.english.nouns import known_thing
from planning.replies.text import Message, Sentence

_WHO = r"(?: (?:you|you all|everyone|everybody|all|people|folks|the group|me))?"
_OK = r"(?:ok|okay|fine|alright|all ?right|cool|good|possible|acceptable|no (?:problem|trouble|bother)|not a problem|useful|any (?:good|use|help))"
_OPENER = re.compile(
    r" (?:"
    r"(?:right|ok|okay|alright|all right|well|hey|hiya|oh|ah|hm+|yo|anyway|anyhow|so|look|listen|now) (?:then|so|and|well|also|right|now|anyway)(?: ,)?"
    r"|(?:ugh+|argh+|a+w+|oof|damn|dang|darn|crap|shoot|bummer|whoops|oops|welp|yikes|boo|sigh|alas|man|aha|ahh+|gosh|phew|blimey|yay|yippee|hooray|hurray|woohoo)(?: ,| -)?"
    r"|(?:actually|wait)(?: ,)?(?= (?:yes|i can|we can|i can not|we can not|i am|we are|count) )|(?:wait|on second thoughts?|scratch that|hang on|hold on|correction|change of plans?)(?: (?:,|:|-|wait|actually))*(?= (?:yes|i can|we can|i am|we are|i can not|we can not|make (?:it|that|us)|just|only|[0-9]|me|both|all|count|put)\b)|(?:actually|on second thoughts?)(?: ,| -)?(?= (?:no|maybe)(?: |$))"
    r"|(?:to )?(?:bring|bringing|food|dish|potluck|my|our|what (?:i|we) (?:am|are|will be|will)? ?bring(?:ing)?)(?: list)? :(?= [a-z0-9])(?<! to bring :)(?<!food :)(?<!dish :)|(?:never ?mind|nvm)(?: ,)?(?= (?:i|we) (?:can|will|am|are) )"
    r"|so yes ,|(?:right|anyway|anyhow|honestly|look|listen|ps|p s|update|edit|news|news flash|psa|note|reminder|reply|answer|my answer|our answer|my reply) (?:,|:|-)"
    r"|(?:a )?(?:quick|small|short|little) (?:one|note|update|reply|answer|word|message|heads up|line)(?: from (?:me|us)| here)?(?: ,| :| -)?"
    r"|heads up(?: ,| :| -)?|(?:just )?(?:for|from) (?:the (?:record|list|board|books|bot|avoidance of doubt)|(?:your )?info(?:rmation)?)(?: ,| :| -)"
    rf"|just (?:to )?(?:let|letting){_WHO} know(?: that)?(?: ,| :| -)?|letting{_WHO} know(?: that)?(?: ,| :| -)?|(?:(?:i|we) )?(?:just )?(?:want(?:ed)?|would like) to (?:say|let{_WHO} know|tell{_WHO}|(?:add|mention) that)(?: that)?(?: ,| :| -)?"
    r"|just (?:confirming|to confirm|checking in|to say|saying|a note|popping in to say|dropping in to say|writing to say)(?! for)(?: that)?(?: ,| :| -)?"
    r"|(?:this is (?:just )?to (?:say|let you know|confirm)|writing to (?:say|let you know|confirm))(?: that)?(?: ,| :| -)?"
    r"|(?:as|so) (?:far|much) as (?:i|we) (?:can (?:see|tell|say)|know)(?: ,| :| -)?|as (?:i|we)? ?(?:said|mentioned|discussed|told you|explained)(?: (?:before|earlier|above|already))?(?: ,| :| -)"
    r"|(?:to answer|answering|in (?:answer|reply|response) to) (?:your|the|this|that|all your) (?:[a-z]+ )?(?:questions?|message|first|poll)?(?: ,| :| -)?|to answer(?: ,| :| -)"
    r"|sorry (?:for|about) (?:the|my|our|being) (?:(?:so|very|really) )?(?:late|slow|delayed|tardy|belated|long|delay|silence|radio silence|wait)(?: (?:in )?(?:reply|replying|answer|answering|response|responding|message|silence|wait))?(?: ,| :| -)?"
    r"|sorry (?:i am |we are |to be )?(?:only )?(?:so )?(?:late|slow) (?:to (?:this|reply|answer|respond|the party|the thread|the chat)|replying|answering|responding|with this)(?: ,| :| -| but)?"
    r"|(?:i |we )?(?:only |have )?(?:just|only|finally) (?:now )?(?:saw|seen|noticed|read|spotted|got|getting|found|finding)(?: round| around| back)?(?: to)? (?:this|it|that|your (?:message|note)|the (?:message|board|invite|invitation)|answering|replying)(?: now| here)?(?: ,| :| -| so| and)?"
    r"|answering (?:at last|late|now|here|finally)(?: ,| :| -)?|better late than never(?: ,| :| -)?|in case (?:it|this|that) (?:matters|helps|is useful)(?: ,| :| -)|long story short(?: ,| :| -)?|to (?:cut a long story short|be (?:clear|honest|fair|precise|exact|brief)|sum up|recap)(?: ,| :| -)?"
    r"|(?:tbh|honestly|frankly|basically|obviously|apparently|luckily|happily|good news|bad news|great news)(?: ,| :| -)"
    r")(?= )"
)
"""How a message begins before it says anything; only where something follows."""
_CLOSER = re.compile(
    r" (?:(?:,|-|–|\(|and|i|we|so) )*(?:"
    rf"(?:i |we |and )?hope (?:that|this|it|so) (?:is |works|helps|suits|will be )?(?:{_OK})?(?: (?:for|with|by){_WHO})?|hope (?:that|this) (?:works|helps|suits)"
    rf"|(?:if|as long as|assuming|provided) (?:that|this|it) (?:is|works|suits|helps|is still)(?: {_OK})?(?: (?:for|with|by){_WHO})?|if (?:that|this) (?:works|suits|helps)(?: for{_WHO})?|if (?:you|nobody|no one|everyone) (?:do not mind|minds?|agrees?|is happy|are happy|is (?:ok|fine) with (?:that|it))"
    rf"|(?:just )?(?:let|tell) (?:me|us) know if (?:that|this|it) (?:is|works|suits|does not)(?: (?:a |an |any )?(?:{_OK}|problem|issue|trouble|too much))?(?: (?:for|with){_WHO})?|shout if (?:that|this|it) (?:is|works) ?(?:a |an )?(?:{_OK}|problem|issue|not [a-z]+)?"
    r"|just so (?:you|everyone|people|we) (?:all )?knows?|for what it is worth|for (?:the record|your information|your info)|(?:best|kind|warm) (?:wishes|regards)|regards|all the best|over and out|that is (?:all|it)(?: (?:from|for) (?:me|us)| (?:for )?now| folks)?|no rush|thanking you|in advance|as (?:i|we) (?:said|mentioned)(?: before| earlier)?|hope you (?:do not|will not) mind"
    r"|though|btw|fyi|just (?:an? )?(?:fyi|saying|heads up)|by the way|heads up|as it happens|if (?:that|it) matters|in case (?:that|it) matters|believe it or not|ha|i am afraid to say|(?:i|we) (?:must|should) (?:say|add|warn you)|for your (?:info|information)"
    r")(?: \))? $"
)
"""How it ends when all is said."""
_AND = re.compile(
    r"^ (?:(?:and|so|but|also|oh|hey) (?=(?:is|are|do|does|did|can|could|what|when|where|who|how|which|why|will) )|(?:and|also) (?=(?:i|we|it is|it will|only|that|please) ))"
)
"""A small word that joins a message to what was said before it."""
_LEAD = re.compile(r"^ (?P<lead>(?:[a-z']+ ){2,8}): ")
"""Words before a colon."""
LONGEST = 70
"""A sentence of more words is a story, wrapped in nothing (common practice, no source)."""
_KEPT = frozenset(("not", "no", "yes", "maybe", "perhaps", "none", "never", "me", "us", "coming", "out", "can", "am", "are", "both", "all", "my", "our", "contribution", "bring", "bringing", "making", "make", "cancel", "late", "vegan", "vegetarian"))  # fmt: skip


def unwrapped(message: Message, name: str = "") -> Message:
    """The message without what it is wrapped in; `name` is the writer's, who may have put it below or before."""
    first_name = name.split()[0].lower() if name.split() else ""
    made = [own for s in message.sentences if (own := _bare(s, first_name)) is not None]
    if not made or [id(s) for s in made] == [id(s) for s in message.sentences]:
        return message
    return replace(message, sentences=tuple(made), plain=" . ".join(s.text.strip() for s in made))


def _bare(sentence: Sentence, name: str) -> Sentence | None:
    """The sentence's own words; None where it was only the writer's name."""
    first, last = 0, len(sentence.tokens)
    if last > LONGEST:
        return sentence
    while (match := _OPENER.match(sentence.text, _at(sentence, first))) is not None:
        first = _count(sentence, match.end())
        if first >= last:
            return sentence
        while first < last and sentence.tokens[first].plain in (",", ":", "-", "–", "."):
            first += 1
    if not first and (joint := _AND.match(sentence.text)) is not None:
        first = _count(sentence, joint.end() - 1)
    lead = _LEAD.match(sentence.text) if not first else None
    if lead is not None and _says_nothing(lead["lead"]):
        first = _count(sentence, lead.end())
    if (end := _CLOSER.search(sentence.text)) is not None and _count(sentence, end.start()) > first:
        last = _count(sentence, end.start())
    if name:
        first, last = _unsigned(sentence, name, first, last)
    if first >= last:
        return None if first > 0 and last <= 0 else sentence
    if first == 0 and last == len(sentence.tokens):
        return sentence
    question = sentence.question and (last == len(sentence.tokens) or _asks(sentence, first))
    return Sentence(sentence.tokens[first:last], question)


def _at(sentence: Sentence, first: int) -> int:
    return sentence.offset(first) - 1


def _count(sentence: Sentence, end: int) -> int:
    """How many tokens end before that place in the sentence's text."""
    return sentence.text.count(" ", 1, end + 1) if end > 0 else 0


def _asks(sentence: Sentence, first: int) -> bool:
    return sentence.tokens[first].plain in ("can", "could", "shall", "should", "is", "are", "do", "does", "what", "when", "where", "who", "how", "which", "may", "any", "anyone", "will", "would")  # fmt: skip


def _says_nothing(lead: str) -> bool:
    """Whether the words before a colon are small ones, none for food, people or an answer."""
    said = lead.split()
    small = words("plain").keys() | words("filler").keys() | {"list", "question", "answer", "finally", "round", "see", "far", "plan", "idea", "status", "update"}
    return not _KEPT & set(said) and all(w in small and known_thing(w)[1] < 0.5 and not w[0].isdecimal() for w in said)


def _unsigned(sentence: Sentence, name: str, first: int, last: int) -> tuple[int, int]:
    """Without the writer's own name: "/Ravi", "- Ravi", "love, Ravi x", "Ravi here, ...", "this is Ravi"."""
    plain = [t.plain for t in sentence.tokens[first:last]]
    if name not in plain:
        return first, last
    text = " " + " ".join(plain) + " "
    front = re.match(rf" (?:(?:hi|hello|hey|it is|this is|me|,) )*{re.escape(name)} (?:here )?(?:again )?(?:(?:,|:|-|–|/|\.) )*", text)
    if front is not None and (" here " in front[0] or front[0].startswith((" it is", " this is")) or len(front[0]) == len(text)):
        first += len(front[0].split())
        return first, max(first, last) if first < last else 0
    back = re.search(rf"(?: (?:/|-|–|—|,|love|from|yours|x|cheers|best|~))+ {re.escape(name)}(?: x| and family| \))? $", text)
    if back is not None and back.start() > 0 and sentence.tokens[first + text.count(" ", 1, back.start() + 1)].plain in ("/", "-", "–", "—", "love", "yours", "cheers", "best", "x", "~"):
        last = first + text.count(" ", 1, back.start() + 1)
    return first, last
