"""Questions put in other words than the usual ones: what they hold tells what they are after.

Read only below the bot's own messages, and only in what is put as a question; the narrow patterns come first.
"""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

from planning.replies.english.lexicon import NUMBER, any_of
from planning.replies.english.nouns import known_thing
from planning.replies.english.questions import OF_NO_FOOD, OF_SOMETHING_ELSE, tells
from planning.replies.intents import Ask, Intent, ReplyContext
from planning.replies.text import Sentence

_PUT_AS_ONE = re.compile(
    r"^ (?:(?:[a-z]+(?: [a-z]+)? ,|ok|so|and|but|also|um|oh|bot|just|quick question|tell me|remind me|can you tell me|could you tell me|do you know|any idea|does anyone know|sorry|wait|,|hey|hi) )*(?:of )?"
    r"(?:what|when|where|who|whose|which|how|is|are|do|does|did|can|could|may|should|shall|will|would|has|have|am|any|anything|anyone|anybody|(?:got|need) (?:any|enough|anything|to)|the (?:place|time|address|date))(?! not\b)\b"
    r"(?<!\bcan(?= (?:do|bring|make|bake|cook|come|be)\b))(?<!\bcould(?= (?:do|bring|make|bake|cook|come|be)\b))(?<!\bwill(?= (?:do|bring|make|bake|cook|come|be)\b))"
)
_TOLD = re.compile(
    r"\b(?:who (?:made|left|wants|ate|took|likes|moved|broke|forgot|told|said|wrote)|did (?:you (?:see|hear|know|watch|like|enjoy)|the|anyone see|anybody see)|do you (?:think|like|want|remember)|why|how (?:was|come|about)|what (?:a|about you)|what if|anyone (?:seen|want|fancy|up for|know a|selling)|anybody (?:seen|want|fancy)|last (?:year|time|week)|who is this|who are you|are you (?:a|coming|ok|there|free|in))\b|\b(?:am|is|are|was) not (?:i|he|she|it|they|we)\b|\bis not (?:he|she)\b"
)
_I = r"(?:i|we|me|us)"
_THEY = r"(?:you(?: lot| all| guys| folks| two)?|everyone|everybody|people|others|the others|the rest|they|he|she|folks|each of us|who|anyone|anybody|someone|somebody|no one|nobody)"
_BRING = r"(?:bring|brings|bringing|brought|make|makes|making|cook|cooking|bake|baking|do|doing|sign up|signed up|sign(?:ing)? up|cover|covered|covering|sorted|got|has|have|take|takes|taking|taken|contribute|contributing|provide|providing|promise|promised|claim|claimed|offer|offered|handle|handling|down for|on)"
_APPLIANCE = r"(?:ovens?|stove|hob|cooker|microwaves?|fridge|freezer|grill|barbecue|bbq|hot ?plate|burners?|kettle|plugs?|sockets?|outlets?|power|electricity|extension (?:lead|cord)|slow cooker|hot water|kitchen|cool ?box|cooler)"
_FED = r"(?:food|anything|something|any|a dish|dishes|options?|eat|have|has|much|stuff|choice|suitable|okay|ok|fine|safe|for|without|contain|contains|free|in it|in the)"
_NEED = (
    rf"(?:{any_of('diet')}|{any_of('allergen')}|allerg\w+|celiacs?|coeliacs?|vegans?|vegetarians?|veggies?|intolerant)"
)
_TOPICS = tuple(
    (topic, re.compile(source))
    for topic, source in (
        ("my-list", rf"\bwhat (?:did|have|do) you (?:put|got|have|note|noted) (?:me|us|for me|for us)\b|\b(?:what|which|remind)\b.* {_I} .*\b(?:promised?|signed?(?: up)?|said|say|offer(?:ed)?|down for|down as|list|commit(?:ted)?|supposed to|meant to|volunteer(?:ed)?)\b|\b(?:what|which)(?: [a-z]+){{0,2}} (?:was|am|were|are) {_I} (?:doing|bringing|making|on|down|cooking|baking)\b|\b(?:am|are) {_I} (?:down|signed up|listed) (?:for|with) (?:something|anything)\b|\bhow (?:much|many)\b.* (?:did|do|have|was|am) {_I} (?:say|said|promise|promised|put|down|sign|bringing|doing|supposed)\b|\bwhat is (?:my|our) (?:dish|job|bit|part|list|turn|promise)\b"),
        ("what-should-i-bring", rf"\b(?:what|anything|something|which (?:dish|thing))\b.* {_I} (?:[a-z]+ ){{0,3}}(?:bring|make|cook|bake|contribute|help|prepare|get|pick up|buy|do for)\b|\b(?:what|anything) (?:[a-z]+ ){{0,2}}(?:help|useful|handy|most welcome|be (?:best|good|great|welcome))\b|\bhow can {_I} help\b|\b(?:expected|supposed|meant|need|have|required) to (?:bring|make|cook|contribute)\b|\bwhat (?:food|dish)(?: [a-z]+)? (?:do|would) you (?:want|need|like)\b"),
        ("oven", rf"\b{_APPLIANCE}\b|\b(?:heat|reheat|warm|warm up|heat up|chill|plug)\b.*\b(?:there|up|in|on|it|my|something)\b"),
        ("can-eat", rf"^ (?:does|do|has|have|is|are) (?:the|that|this|your|any of the|[a-z]+ is) (?:[a-z]+ ){{1,3}}?(?:have|got|contain|include|made with|cooked (?:with|in)|fried in|has|with) (?!me |us |my |our )(?:any |some )?[a-z]+(?: in it)? $|\b{_FED}\b.*\b{_NEED}\b|\b{_NEED}\b.*\b{_FED}\b|\bcan {_I} (?:eat|have) (?:the|any|some|your|that|[a-z]+ is)\b|\bwhat can (?:[a-z]+ ){{1,3}}eat\b|\bwhat is in (?:the|that|your|[a-z]+ is)\b"),
        ("missing", r"\b(?:do|does) (?:you|we|the (?:table|host)) (?:still )?need (?:more|any|another|extra|some)\b|\b(?:missing|lacking|lack|short of|needed|takers?|unclaimed|uncovered|gaps?|spoken for|not covered|enough|too (?:many|much|few)|running low|in short supply|over-?supplied)\b|\bwhat (?:else )?(?:do|does|is|are) (?:we|you|the (?:table|menu|list)) (?:still )?(?:need|want|short|after|lack)\b|\b(?:still|most) (?:need|wanted|required)\b|\banything left\b|\b(?:are|is) (?:we|it|that|everything) (?:all )?(?:ok|okay|good|fine|all right|set|covered|sorted|alright) (?:for|on|with)\b|\b(?:nobody|no one) (?:is|has)\b|\bleft to (?:bring|find|cover|fill)\b"),
        ("who-comes", r"\bnumber of\b.*\b(?:people|guests|us|attendees|heads|adults|persons)\b|\bhow many\b.*\b(?:we|us|people|coming|come|there|guests?|mouths|heads|turn up|turning up|folks|adults|kids|children)\b|\bis (?:everyone|everybody|anyone|anybody|the whole [a-z]+) (?:coming|in|joining)\b|\bwho\b.*\b(?:coming|come|comes|attending|turning up|joining|be there|answered|replied|said (?:yes|no|maybe)|not (?:answered|replied|coming))\b|\b(?:has|have|did) (?:everyone|everybody|all|anyone|[a-z]+(?: [a-z]+)?) (?:answered|replied|responded|confirmed|rsvped|said (?:yes|no|if|whether))\b|\bheadcount\b"),
        ("when", r"\b(?:what|which) (?:time|day|date|hour)\b|\bwhen\b.* (?:i|we|it|this|everyone|people|supper|potluck|dinner|party|doors?|food|start|eat|arrive|come|end|over)\b|\bhow (?:long|late|early)\b.* (?:it|we|i|this|supper|potluck|party|dinner|last|go)\b|\bthe (?:time|date|day)\b|\b(?:latest|earliest)\b.*\b(?:arrive|come|get there|be there|turn up)\b|\bis (?:it|this|the [a-z]+) (?:still )?(?:on )?(?:the [0-9]{1,2}(?: ?(?:st|nd|rd|th))?|[a-z]+day)\b|\b(?:until|till) when\b"),
        ("where", r"\bwhere\b(?!.*\b(?:park|parking|toilets?|loos?|keys?|my|your)\b).* (?:i|we|it|this|that|supper|potluck|party|dinner|meet|meeting|held|place|happening|everyone|come)\b|\b(?:address|venue|location|directions|postcode|zip code|the place)\b"),
    )
)  # fmt: skip
_INVERTED = re.compile(
    r"^ (?:(?:ok|so|and|but|also|hey|hi) )*(?:(?:is|are|do|does|did|has|have|will|would|can|could|should|am|may) (?:there|i|we|it|the|anyone|anybody|everyone|you|my|our|dogs?|pets?|kids|children|they|this)|who|what|which|where|when|how|remind me|tell me) "
)
_WHO_HAS_NEEDS = re.compile(
    r"\b(?:any|how many|who is|is anyone|is anybody|is someone|are there|(?:does|do) (?:anyone|anybody|someone|somebody|people|any of (?:us|you)) have) (?:[a-z]+ )?(?:vegetarians|vegans|celiacs|coeliacs|allergies|allergic|veggies)\b(?!.* (?:food|dish|option))"
)
_HOST = re.compile(
    rf"^ (?:(?:ok|so|and|but|also|sorry|hi|hey|bot|,) )*(?:(?:can|could|may|should|shall|must|do) {_I} (?!bring (?:anything|something))|(?:is|are|will) there (?:be )?(?:a |an |any |some |still )?(?:[a-z'-]+)|(?:is it|would it be) (?:ok|okay|all right|fine|possible|a problem) (?:if|to)|where (?:can|do|should|could) {_I}|what (?:about|happens|is the plan)|how (?:much|do|should|can) {_I}|(?:is it|are we|will it be) [a-z ]{2, 30} or [a-z ]{2, 30}|(?:is|are|do|does|will|has|have) (?:the|they|it|there) |(?:need|want) (?:any )?(?:help|a hand|volunteers?)|are (?:kids|children|dogs|pets|partners|plus ones) )"
)


_HOST_NOUN = re.compile(
    r" (?:park|parking|(?<!hot )dogs?|pets?|puppy|pup|dress code|inside|outside|indoors?|outdoors?|rains?|raining|kid[- ]friendly|child[- ]friendly|high ?chair|changing table|stairs|wheelchair|accessible|toilets?|bathrooms?|restrooms?|wi-?fi|smoke|smoking|byob|music|karaoke|games|pool|swim|swimming|plus ones?|early to help|help (?:set up|clean up|out)|shoes|bus|train|carpool|lift|gate code|door code|label|labels|quiet room|nurse|nap|bug spray|bonfire|fire pit|sleep over|camp) "
)
_PLACE_NOUN = re.compile(r" (?:park|parking|high ?chairs?|changing table|wheelchair|stairs|toilets?|bathrooms?|wi-?fi|quiet room|dress code) ")
_NO_HOST = re.compile(r" (?:i|we) (?:bring|make|do) (?!(?:my|our|the|a|an) (?:dogs?|pets?|puppy|pup|music|games|bike))| who | which dish ")
_OF_PEOPLE = re.compile(
    rf" (?:say|make it|add|be) (?:{NUMBER}|one|another|an extra|a plus)(?: more)?(?= $| of us| people| ,)"
)
"""A wish about the number of one's party, put as a question."""


def read_loosely(sentence: Sentence, context: ReplyContext, trap: str | None) -> list[Intent]:
    """What a question written to the bot is after; "host" for what only the host can know."""
    text = sentence.text
    if (
        not context.addressed
        or (trap not in (None, "others") and not _WHAT_I_SAID.search(text))
        or _TOLD.search(text)
        or _OF_PEOPLE.search(text)
        or _PUT_AS_ONE.match(text) is None
        or tells(sentence)
    ):
        return []
    for topic, pattern in _TOPICS:
        if topic == "can-eat" and (_WHO_HAS_NEEDS.search(text) is not None or OF_NO_FOOD.search(text) is not None):
            continue  # who eats how is theirs to tell
        if topic == "missing" and OF_SOMETHING_ELSE.search(text) is not None:
            continue
        if pattern.search(text) is not None and (
            sentence.question or _INVERTED.match(text) or topic in ("when", "where", "missing")
        ):
            return _asked(sentence, topic, 0.85 if sentence.question else 0.8)
    if _INVERTED.match(text) and _PLACE_NOUN.search(text) and not re.search(r" (?:who|bring|bringing) ", text):
        return _asked(sentence, "host", 0.82)
    if (about := _about(sentence, context)) is not None:
        return _asked(sentence, about[0], 0.85 if sentence.question else 0.8, about[1])
    if _INVERTED.match(text) and _HOST_NOUN.search(text) and not _WHO_HAS_NEEDS.search(text) and not _NO_HOST.search(text):
        return _asked(sentence, "host", 0.82)
    if (
        (sentence.question or re.match(r"^ (?:[a-z]+ )?(?:where|how) ", text))
        and _HOST.match(text) is not None
        and not _offers(sentence)
        and not _WHO_HAS_NEEDS.search(text)
    ):
        return _asked(sentence, "host", 0.82)
    return []


def _asked(sentence: Sentence, topic: str, sure: float, about: str = "") -> list[Intent]:
    start, end = sentence.span(0, len(sentence.tokens))
    sentence.take(0, len(sentence.tokens))
    return [Ask(topic, about, start=start, end=end, confidence=sure)]


_LISTED = re.compile(
    r"\b(?:on the (?:menu|list|table)|the (?:menu|list) (?:please|again)|the (?:menu|full list) so far)\b|^ list ?$"
)
_WHAT_I_SAID = re.compile(r" did (?:i|we) (?:say|tell) ")
_WHO_BRINGS = re.compile(rf"\b(?:what|who|which|is|are|has|have|does|do|did|will|any ?one|any ?body)\b.*\b{_BRING}\b")
_OWN_DOING = re.compile(rf"\b(?:can|could|may|should|shall|do|did|will|am|are|have) {_I}\b")


def _about(sentence: Sentence, context: ReplyContext) -> tuple[str, str] | None:
    """Whether it is after somebody's dish or somebody's coming, and whose."""
    text = sentence.text
    if _LISTED.search(text):
        return "who-brings", ""
    named = next(
        (n for g, n in context.guests if g != context.writer and n and f" {n.lower().split()[0]} " in text), ""
    )
    if re.search(r" what (?:do|does|would|should) [a-z ]+ (?:fancy|want|like|prefer|think|feel)\b", text):
        return None  # what people wish for is theirs to say
    if _WHO_BRINGS.search(text) and not _OWN_DOING.search(text):
        if named or re.search(rf" what .*\b{_THEY}\b", text):
            return "who-brings", named
        for token in reversed(sentence.tokens):
            if len(token.plain) > 2 and known_thing(token.plain)[1] >= 0.75:
                return "who-brings", token.plain
    if named and re.match(
        r"^ (?:is|will|are|does|do you know if|any idea if) .*\b(?:coming|come|joining|attending|there|in)\b", text
    ):
        return "who-comes", named
    return None


def _offers(sentence: Sentence) -> bool:
    """Whether it offers a dish ("can I bring a cake?") or asks to bring somebody; others read that."""
    if re.search(r" (?:change|edit|update|cancel|undo) ", sentence.text) or any(
        len(t.plain) > 3 and known_thing(t.plain)[1] >= 0.95 and known_thing(t.plain)[0] != "supplies"
        for t in sentence.tokens
    ):
        return True
    own = r" (?:i|we) (?:bring|make|bake|do|come(?! (?:early|earlier|late|later|before))|invite|add)\b"
    return re.search(own, sentence.text) is not None and not re.search(
        r"\b(?:dogs?|cats?|pets?|puppy|guitar|games?|bike|car|van|chairs?|tent)\b", sentence.text
    )
