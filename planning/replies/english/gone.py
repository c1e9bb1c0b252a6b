"""Needs there are not, or no longer: "no allergies here", "I'm no longer vegetarian", "remove the egg allergy"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Iterator

from planning.potluck import Need
from planning.replies.english.foods import DIET, FOODS, KIN, LIST, diets_of, needs_of
from planning.replies.text import Sentence

_CLEARED = re.compile(
    r" (?:(?:have |there are |we have |i have |with )?(?:no|zero|without(?: any)?|do not have any|not any) (?:known |food |special |particular )*(?:allerg(?:y|ies)|dietary (?:restrictions?|requirements?|needs?|issues?)|diets?|restrictions?|dietaries|intolerances|food issues|special diets?|diet(?:ary)? restrictions)(?: or (?:allergies|diets|intolerances|dietary [a-z]+|anything))?"
    r"|(?:none|nobody|no one) (?:of us |in our family |in my family |in the family |here )?(?:has|have) (?:any )?(?:food )?(?:allergies|diets|dietary [a-z]+|restrictions)|(?:i|we)(?: will| all| both| can)* eat (?:anything|everything|it all|whatever)(?: and everything)?|(?:i|we|they|all|kids) (?:am|are) (?:all )?(?:fine|good|ok|okay|happy) with (?:anything|everything|whatever)|(?:i|we) (?:am|are) not (?:allergic to|fussy|picky)(?: anything| about food| eaters?)?|(?:there is )?nothing (?:that )?(?:i|we|any of us|either of us) (?:can not|do not|will not|would not) eat|nothing (?:special |much |to (?:worry about|declare|report|note|flag|mention) )?(?:on the )?(?:diet|dietary|allergy|allergies|food)(?: ?- ?wise| ?wise| front| related)(?![a-z])|omnivores?(?: all)?|eats? everything|do not have (?:any )?(?:allergies|dietary [a-z]+)|not allergic to anything)(?= $| ,| here| for| and| in| so| at| on| from| with| among| that| all| (?:one|two|three|four|five|six|[0-9]+)| -|\))"
)
_LABELLED_NONE = re.compile(
    r"(?:^|(?<= ,)) (?:food |special )?(?:allerg(?:y|ies)|diets?|dietary(?: [a-z]+)?|intolerances?|restrictions)(?: [/&] ?[a-z]+| and [a-z]+)? (?::|-) (?:none|no|nil|nothing|zero|nope|n/a|nobody)(?= $| ,)"
)
"""A form filled in: "allergies: none"."""
_NO_LONGER = re.compile(
    rf" (?:i am|we are|{KIN} is|he is|she is|they are) (?:no longer|not|not actually|not really|not any ?more) (?:a |an )?{DIET}(?: any ?more)?"
)
_NO_LONGER_BARE = re.compile(rf"^ (?:(?:i am|we are) )?(?:no longer|not) (?:a )?{DIET}(?: any ?more| now)?(?= $)")
_NOT_ALLERGIC = re.compile(rf" (?:not|no longer) allergic to (?:any )?{LIST}")
_OUTGREW = re.compile(
    rf" (?:outgrew|grew out of|grown out of|outgrown|got over|over) (?:the |his |her |my |their |a )?{LIST}(?: allergy)?(?: thing| stuff| phase)?(?= $| ,| now| -| so)"
)
_GONE = re.compile(
    rf" {LIST} (?:allergy|intolerance)(?: (?:is|has|was))?(?: now)? (?:gone|cleared(?: up)?|outgrown|went away|over|no more|a mistake|a false alarm|wrong|not right)(?![a-z])"
)
_REMOVED = re.compile(
    rf" (?:remove|do not worry about|never mind|no need to worry about|delete|scrap|drop|cancel|forget|ignore|cross out|take (?:off|out|away)|scratch|undo|lose|clear) (?:(?:the|my|our|his|her|that|about) )*(?:(?:son|daughter|kid|wife|husband|partner)'s )?(?:{LIST}|{DIET})(?: (?:allergy|allergies|intolerance|diet|need|note|thing|one|entry|stuff))+(?![a-z])"
    rf"|^ (?:please )?(?:remove|delete) (?:(?:the|my|our) )*(?:(?:allergy|intolerance|diet) (?:to|for|of) )(?P<list2>{FOODS})(?![a-z-])"
)
_TAKEN_OFF = re.compile(
    rf" take (?:(?:the|my|our|his|her|that) )*{LIST} (?:allergy|intolerance|thing|note) (?:off|out|away)(?![a-z])"
)
_CAN_AGAIN = re.compile(
    rf" (?:i|we|{KIN}|he|she|they) (?:can|could|am allowed to|is allowed to|may)(?: now| actually)?(?: eat| have| tolerate| do) (?:the |any )?{LIST}(?: (?:now|again|after all|these days|any ?more))+(?![a-z])"
)


def read_cleared(sentence: Sentence) -> re.Match[str] | None:
    """ "No allergies here": that there are none at all."""
    return _CLEARED.search(sentence.left) or _LABELLED_NONE.search(sentence.left)


def read_gone(sentence: Sentence) -> Iterator[tuple[re.Match[str], tuple[Need, ...]]]:
    """Needs that no longer hold, one match after the other; the caller takes each out of the sentence. They are
    always asked about: an allergy taken back by mistake hurts."""
    for pattern in (_NO_LONGER, _NO_LONGER_BARE, _NOT_ALLERGIC, _OUTGREW, _GONE, _REMOVED, _TAKEN_OFF, _CAN_AGAIN):
        while (match := pattern.search(sentence.left)) is not None:
            got = match.groupdict()
            listed = got.get("list") or got.get("list2") or ""
            yield match, needs_of(listed, 1, "") if listed else tuple(diets_of(got["diet"]))
