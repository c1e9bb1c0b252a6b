"""Whether words of which nothing was understood were meant for the bot."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

from planning.replies.english import illness, traps
from planning.replies.text import Message

_CHATTY = re.compile(
    r"\b(?:lol|lmao|rofl|ha+h?a*|he+h?e+|wow|omg|yum+y?|mm+|nice|great|lovely|cool|awesome|amazing|fantastic|brilliant|perfect|super|wonderful|excellent|sweet|fun|funny|good|best|better|love[sd]?|like[sd]?|delicious|tasty|yay|woo+|hooray|hurrah|congrats|congratulations|cheers|bye|ciao|goodnight|night|morning|welcome|sorry|well done|well|true|right|exactly|indeed|agreed|agree|fair|sounds|looks?|hate[sd]?|recipe|tired|nap|dying|kill|thing is|days|years?|hilarious|classic|legend|joking|jokes?|ill (?:be )?late|someday|whatever|who knows|please do|idea|rush|worry|appetite|thank(?:s|ful)?|thx|ty|grateful|appreciate[sd]?|organi[sz]ing|hosting|vibes|noise|peace|meat eater|not bad|nothing|later|soon|looking forward|can not wait|excited|hungry|happy|glad|wonder|hope|hopefully|miss you|remember|oops|ugh|hmm+|um+|er+|oh|ah+|aw+|eh|see|same|ok|okay|k|kk|got it|noted|understood|will do|no problem|no worries|np|anyway|weather|rain|sun|sunny|photo|picture|bot|joke|smell|jealous|famous|said|told|already)\b"
)
_FOR_US = re.compile(
    r"[0-9]|\b(?:bring|bringing|brings|coming|come|comes|eat|eats|eating|allerg\w*|vegan|vegetarian|veggie|gluten|dairy|nuts?|halal|kosher|guests?|people|adults?|kids?|children|wife|husband|partner|plus|serves?|servings|feeds|dish|cancel|instead|can not make|attend|join)\b"
)


def for_us(message: Message) -> bool:
    """Whether words of which nothing was understood may be meant to be: no thanks, no cheering, no small talk."""
    if not message.sentences or traps.joking(message):
        return False
    text = f" {message.plain} "
    if any(not s.free(i) for s in message.sentences for i in range(len(s.tokens))):
        return False  # what was taken out was understood, and put aside: an allergy to Mondays
    if any(illness.HAS_INJECTOR.fullmatch(s.text.strip()) for s in message.sentences):
        return False
    if any(illness.named(s) for s in message.sentences):
        return True
    if _CHATTY.search(text) or _TOLD.match(text):
        return False
    words = [t for s in message.sentences for t in s.tokens if t.plain[0].isalnum()]
    if _FOR_US.search(text):
        return True
    return 1 < len(words) <= 4 and not message.sentences[0].tokens[0].plain.endswith("ing")


_TOLD = re.compile(
    r"^ (?:(?:and|but|so|well|yes|no|not|oh|maybe|perhaps) (?:, )?)*(?:the|this|that|those|these|it|its|there|he|she|they|you|your|his|her|who|what a|page|more|too|if|unless|life|any|is|are|was|do|does|did|could|should|would|please|bring|add|spill|piece|let|my (?!(?:[a-z]+ )?(?:can not|is allergic|does not|is vegan|is vegetarian|needs))|[a-z]+ is |[a-z]+ (?:will|has|had|was|can) )"
)
"""How sentences begin that tell about something else than what their writer does."""
