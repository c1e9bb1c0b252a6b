"""What people ask the bot, lateness, and taking back."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

from planning.replies.english.lexicon import any_of
from planning.replies.english.nouns import known_thing
from planning.replies.intents import Ask, Intent, Late, ReplyContext, Undo
from planning.replies.text import Sentence
from planning.when import parse_duration

_EVENT = r"(?:it|this|that|the (?:supper|dinner|party|potluck|meal|thing|event|feast|food|gathering|do|bbq|barbecue|get-together)|everyone|everybody|we|things|(?:the )?(?:harvest )?supper|potluck|dinner)"
_TOPICS: tuple[tuple[str, str, float], ...] = (
    ("my-list", r" (?:am|are) (?:i|we) (?:still |also |already )?(?:down|signed up|listed|on the list) (?:for|with) (?!how\b)", 0.9),
    ("my-list", r" what (?:am|are|was|were|did|have|do) (?:i|we) (?:signed|bringing|down|supposed to|meant to|making|promised?|promise|say|sign|said|put down|put|on the list|have to bring|committed)\b|\bmy list\b| what did i (?:say|promise|sign up)| did (?:i|we) (?:already |ever )?(?:say|promise|sign up|offer|volunteer|agree|commit) (?:to (?:bring|make|do) )?(?:anything|something)| what (?:i|we) (?:promised|signed|said|am bringing|offered)", 0.93),
    ("what-should-i-bring", r" (?:what|anything|something) (?:else )?(?:should|can|could|shall|do|would|may|might) (?:i|we|one|people)(?: (?:still|all|need to|have to|like me to|want me to|best))* (?:bring|make|contribute|cook|bake|help)| (?:should|shall|can|could|do|must) (?:i|we) (?:need to |have to |still )?(?:bring|contribute|make|cook|get|buy) (?:anything|something|a dish|food)| (?:what|anything|something|which)(?: [a-z]+){0,3} (?:need|want|like) me to bring| (?:need|want|like) me to bring (?:anything|something|any|some|a dish)| can i (?:bring|help with|contribute) anything| (?:anything|something) (?:i|we) (?:can|should|could) (?:bring|make|do|contribute)| what (?:to|would be good to|would be best to|would be useful to|is best to) bring|^ (?:any )?(?:ideas|suggestions|requests)(?: for)?(?: what)?(?: to bring| for a dish)? ?$| how can (?:i|we) help| need (?:anything|something) from (?:me|us)| (?:is|are) there (?:anything|something|something else|anything else) (?:i|we) (?:can|should|could) (?:bring|make|do)", 0.93),
    ("missing", r" is there (?:still |anything |something |else )+missing| what (?:dishes|things|food|stuff|categories) (?:are|is|do we) (?:still )?(?:missing|need|needed)| what (?:is|are|do we|else do we|else is|else are|stuff is|do you)(?: we)? (?:still |most |else )*(?:missing|needed|need|short|lacking|lack|left to bring|left|outstanding|required|not covered|wanted)| what (?:is|are) (?:we|the gaps?|gaps)(?: still)? (?:missing|short of|short|lacking)?| what (?:categories|dishes) are (?:missing|short)| (?:do we|have we)(?: still)? (?:need|got enough|have enough|lack)| is (?:anything|there anything)(?: still| else)? (?:missing|needed|short|left)|anything (?:still |else )*(?:missing|needed|short)| are we (?:still )?(?:short|missing|low)|^ (?:still )?need (?:anything|something)(?: else)? ?$| do we have (?:enough|any|a)| what else (?:is|do)|\bwhat is left\b", 0.9),
    ("who-comes", r"\bwho all (?:are|is|have|has|will|came|said)\b|\bwho (?:have|has) (?:all )?said yes\b", 0.9),
    ("who-comes", r" (?:any ?one|any ?body|who|people|others|everyone|everybody) (?:else )?(?:is |are )?(?:also )?(?:bring|bringing|brings|taking) (?:along )?(?:the |their |any )?(?:kids|children|toddlers|babies|teens|teenagers|partners|spouses|plus ones)(?= |$)", 0.9),
    ("missing", r" (?:is|are) there (?:still |any )*(?:room|space|a gap|a need|demand|call) for (?:a |an |another |more |one more |some )*(?:main|side|salad|starter|bread|dessert|pudding|drink|sweet|dish|supplies)e?s? ?$", 0.88),
    ("who-brings", r"^ (?:is )?(?:some ?one|some ?body|any ?one|any ?body) (?:else )?(?:is )?(?:already )?(?:doing|bringing|making|got|on|covering) (?P<dish>[a-z]+(?: [a-z]+)?) ?$", 0.9),
    ("who-brings", r"^ (?:(?:so|and|ok) )*(?:any|do we have(?: any| a)?|have we got(?: any| a)?|got any) (?:desserts?|drinks?|salads?|sides?|mains?|starters?|bread|snacks|plates|cups|cutlery|napkins)(?: (?:yet|so far|signed up|coming|already|promised|covered|on the list))*(?: at all)? ?$", 0.88),
    ("who-brings", r"^ what is (?:there )?for (?:dessert|starters|the main|pudding|drinks|dinner|supper|lunch)\b", 0.85),
    ("who-brings", r" did (?:anyone|anybody|someone|somebody) (?:offer|sign up|say|promise|volunteer)| who (?:is|else is|else|has|will|all is|are)(?: all)? (?:does|do|bringing|making|doing|got|on|brings|cooking|baking|bring|covering)| is (?:anyone|anybody|someone|somebody)(?: else)? (?:bringing|making|doing|on|cooking|baking|covering)| has (?:anyone|anybody|someone|somebody)(?: else)? (?:got|claimed|taken|offered|signed up|said)| what (?:is|are) (?:everyone|everybody|people|others|the others|you all|everyone else|each person|folks) (?:bringing|making|doing)| what (?:has|have) (?:people|everyone|others) (?:promised|signed up|offered)| who brings| (?:will|is|are) there (?:be |going to be )?(?:any |some |enough |a )?(?P<dish>[a-z]+)(?: [a-z]+)? ?$", 0.92),
    ("who-comes", r" who (?:is|else is|all is|are)(?: all)? (?:coming|in|going|attending|there)| how many (?:people |of us |are |guests )*(?:are |is |will be )?(?:coming|there|in|going|attending|we)| how many are we| who all(?: is)? coming| who (?:has |have )?said yes| who else (?:comes|goes)| who comes\b| how many (?:have |has )?(?:said yes|answered|replied|signed up)", 0.92),
    ("when", r"^ (?:does any ?(?:one|body) know|do (?:you|we) know|any idea|any one know|remind me|tell me|who knows) (?:again )?(?:when|what time|which day) (?:the |this |your )?(?:potluck|supper|dinner|party|it|this|feast|meal|we)\b", 0.92),
    ("when", rf"^ (?:so |and |ok )?is (?:it|this|{_EVENT}) (?:on )?(?:this|next|the) (?:weekend|week|month|coming|mon|tues|wednes|thurs|fri|satur|sun)(?:day)?[a-z ]* ?$|^ when and where\b| (?:is it|are we|is {_EVENT})(?: all)? still (?:at |on |for )?(?:[0-9]{{1,2}}(?: [0-9]{{2}})?(?: ?[ap]m)?|on|happening|going ahead|(?:mon|tues|wednes|thurs|fri|satur|sun)day|the plan)(?: then| tonight| today| tomorrow)? ?$|^ at [0-9]{{1,2}}(?: ?[ap]m)? ?$| (?:what|which) (?:time|day|date|hour)(?: (?:is|does|do|should|are|shall|will)\b[a-z ]*)?| when (?:is|does|do|are|should|will|shall) (?:{_EVENT}|i|we)\b| when do (?:we|i|you) (?:eat|start|arrive|come)| until when| how late (?:does|will|is)|^ (?:start|starting|end|arrival) (?:time|date) ?$| is {_EVENT} (?:still )?(?:on|at) (?:[a-z]+day|the [0-9]|[0-9])| how long (?:does|will|is) {_EVENT}|^ when(?: is| exactly| again| was (?:it|that))* ?$| is (?:it|the (?:supper|potluck|dinner|party)|this) (?:at|on) [a-z0-9 ]+ or ", 0.9),
    ("where", rf"^ is it (?:at|in) (?:the|your|my|our|[a-z]+ is|[a-z]+\'s) (?!same|moment|end|morning|evening|afternoon|rain)| where (?:is|are|do|does|exactly|will|should)(?!.* (?:park|parking|toilets?|loos?)\b)(?: [a-z]+)* ?(?:{_EVENT}|we|i|meeting)?(?: [a-z]+)* ?$|^ where(?: exactly| again| is it)* ?$| what is the (?:address|location|venue|place|postcode|zip)| (?:the )?address ?$| how do (?:i|we) get (?:there|to)| which (?:address|place|house|hut|garden|hall)| where (?:is|are) (?:{_EVENT}|we)", 0.9),
    ("can-eat", r" (?:is|are|will) there (?:be )?(?:anything|something|any|a|enough|many|some|much|vegan|vegetarian|gluten-free|gluten)[a-z -]*? ?(?:i|we|for|me|vegan|vegetarian|gluten|dairy|halal|kosher|veggie|nut|without|vegans|vegetarians|celiacs|options?|meatless|meat-free|egg|to eat|free|s?he)\b| (?:what|which)(?: (?:dishes|things|ones|stuff|of it|food))? (?:can|could|will|may) (?:i|we|my [a-z]+|a vegan|a vegetarian|vegans|vegetarians|celiacs) (?:eat|have)| can (?:i|we|my [a-z]+|celiacs|vegans|vegetarians|a vegan|a vegetarian|a celiac) eat| (?:is|are|does|do) (?:the |that |this |there )?[a-z ]+ (?:vegan|vegetarian|gluten free|gluten-free|nut free|nut-free|dairy free|dairy-free|halal|kosher|contain|have nuts|have dairy|have gluten|have egg|have meat|safe for)| (?:what|which)(?: [a-z]+)? (?:is|are|dishes are|things are) (?:vegan|vegetarian|gluten free|gluten-free|dairy free|nut free|halal|kosher|safe)| (?:any|anything) (?:vegan|vegetarian|gluten free|gluten-free|veggie|dairy free|nut free|halal|kosher|without)", 0.9),
    ("oven", r" (?:can|could|may|would|will|do|does|is|are)(?: it be)?(?: possible)? ?(?:i|we|there|anyone|you|it|somebody|the)? ?(?:to )?(?:use|be|have|get|borrow|need|an|a|the|any|reheat|heat|warm|plug|put|room|space)[a-z ]* ?(?:oven|stove|hob|fridge|refrigerator|freezer|microwave|kitchen|outlet|socket|power|grill|plug|slow cooker|barbecue|burner|cooler|electricity|warm up|heat up|reheat)|(?:is|are) there (?:an |a |any |some )?(?:space|room|place|way)(?: [a-z]+)* (?:oven|fridge|heat|reheat|freezer|warm|keep)|\b(?:oven|fridge|freezer|kitchen|grill) (?:space|available|free|room)\b| (?:can|could) (?:i|we) (?:heat|reheat|warm|chill|cook|plug|bake|finish)\b| where can i (?:heat|reheat|warm|plug)", 0.9),
)  # fmt: skip
_COMPILED = tuple((topic, re.compile(source), sure) for topic, source, sure in _TOPICS)
_ASKING = re.compile(
    r"^ (?:ok |so |and |but |also |sorry |quick question |question |just wondering |just checking |bot |wait |, |any idea |do you know |i can not remember |can not remember |i forgot |does anyone know |anyone know |remind me |can you tell me |could you tell me |tell me |kindly tell me |please tell me |kindly |i wonder |wondering |not sure |may i ask |can you remind me |what about )*"
    r"(?:what|when|where|who|which|how|start|starting|still|address|is|are|do|does|can|could|should|shall|will|would|has|have|am|did|may|any|anything|need|want|must|my list|until)\b(?! not\b)"
    r"(?<!\bcan(?= (?:do|bring|make|bake|cook|come|be)\b))(?<!\bcould(?= (?:do|bring|make|bake|cook|come|be)\b))(?<!\bwill(?= (?:do|bring|make|bake|cook|come|be)\b))"
)
OF_NO_FOOD = re.compile(
    r" (?:owe|owes|owed|paid|pay|cost|costs|ovens?|stove|hob|microwave|fridge|freezer|urn|kettle|grill|parking|seats?|chairs?|plates?|cups?|room|space) "
)
"""A question with one of these is after money or the place, not after what is in the food."""
_WHO_EATS = re.compile(r"^ (?:is|are) (?!the |that |this |it |any|there |your |my )[a-z]+ (?:still |also |really |actually |now )(?:a )?(?:vegan|vegetarian|veggie|celiac|kosher|halal|gluten free)|(?<!for )\b(?:vegetarians|vegans|celiacs)\b(?! (?:can|could|eat|will))")
_LATE = re.compile(
    r" (?:(?:i|we) (?:am|are|will be|might be|may be|will|are going to be|am going to be)|running|be|arriving|coming|going to be|gonna be|might be|will be)(?: (?:running|a bit|about|around|probably|like|roughly|arriving|coming|be|maybe|there|just|only|up to|at least|slightly|quite|very|so|here))* (?P<much>[^,\x00]{0,40}?) ?(?:late|behind|delayed)(?= $| ,| for| to| sorry| because| as| -| but| so| start| tonight| today| got | have | had | need | stuck | the | my | i | we | traffic | work |$)| late by (?:about |around )?(?P<much3>[a-z0-9 ]{1,25})|(?:^|(?<= ,)) (?P<much2>[a-z0-9 ]{1,30}?) (?:late|later|behind)(?= $| ,)|\b(?:stuck in traffic|held up|delayed|running behind|missed (?:the|my) (?:bus|train)|late because|leaving late)\b"
)
_LATE_BY = re.compile(
    r"\b(?:late|behind|held up|stuck|delayed)\b[^\x00?]{0,60}?(?: by| me| about| around| like| maybe| roughly| approx| probably| say| ,| figure| need| another)+ (?P<much4>(?:[0-9]{1,3}|half an|a half|an|a|one|two|ten|fifteen|(?:twenty|thirty|forty|fifty)(?:[ -](?:one|two|three|four|five|six|seven|eight|nine))?) (?:minutes?|mins?|hours?|hrs?))\b"
)
_SO_LONG = re.compile(
    r" (?P<much>(?:[0-9]{1,3}|(?:twenty|thirty|forty|fifty)(?:[- ](?:one|two|three|four|five|six|seven|eight|nine))?|five|ten|fifteen|half an|an|a quarter of an|quarter of an) ?(?:minutes?|mins?|min|m|hours?|hrs?|hr)) (?:late|later|behind|delayed|after you start|after the start)(?! (?:than|in))\b"
)
_LENGTH = re.compile(r"[0-9]|\b(?:min|mins|minutes?|hours?|hrs?|half|quarter|bit|ten|twenty|thirty|fifteen|five|forty)\b")
_LATE_ARRIVAL = re.compile(
    r" (?:arrive|be there|get there|arriving|come|coming) (?:about |around )?(?P<much>[a-z0-9 ]{1,25}?) (?:late|after the start|after it starts|after you start)\b"
)
_NOT_LATE = re.compile(
    r"\b(?:not|never|hope|hopefully not|is|too|better) (?:be )?(?:running )?late\b|\blate (?:night|lunch|summer|reply|answer|response|to (?:reply|answer|the thread))\b|\b(?:too|it is|getting|stay|stayed|up|sleep) late\b|\bsorry for the late\b"
)
_NO_SUBJECT = re.compile(
    r"^ (?:(?:ok|so|and|but|also|sorry|yes|well|hi|,) )*(?:will|would|can|could|should|shall|may|might|have|am|must) (?!(?:i|we|you|he|she|they|it|there|the|this|that|these|those|any|anyone|anybody|anything|some|someone|somebody|something|every|everyone|everybody|people|my|our|your|his|her|their|all|a|an|no|who|what|guests?|kids|children|dogs?|pets?|folks|one|both|others|mum|mom|dad|us|me)\b)(?P<next>[a-z']+) "
)


def tells(sentence: Sentence) -> bool:
    """Whether it is no question though it begins like one: no mark, and nobody stands behind the verb ("will bring
    ice")."""
    if sentence.question or (match := _NO_SUBJECT.match(sentence.text)) is None:
        return False
    subject = sentence.tokens[sentence.token_range(match, "next")[0]]
    return not subject.raw[:1].isupper() or subject.raw.isupper()


_UNDO = re.compile(
    r"^ (?:(?:oops|whoops|oh no|sorry|no|wait|argh|ugh|hang on|hold on|bot|that|my mistake|actually|please|kindly|,|ok|can you|could you) )*(?:undo(?: that| this| it| my last| the last(?: one)?| last)?|(?:that is|this is|is) (?:not right|wrong|not correct|incorrect|not what i (?:said|meant|wrote))|not what i (?:meant|said|wrote)|scratch that|strike that|take (?:that|it) back|ignore (?:that|my last message|my previous message|my last|my previous|what i (?:said|just said|wrote))|disregard (?:that|my last|my last message)|(?:disregard|ignore|reverse|revert|delete|void|strike|take back|remove|cancel) (?:my|the|that|this) (?:very )?(?:last|previous|prior|latest|recent) (?:message|entry|one|change|post|note|reply|answer|thing|bit|update)|(?:my |the |this )?(?:last|previous|latest) (?:entry|one|bit|message|update|change|reply|thing) (?:is|was) (?:wrong|a mistake|not right|not correct|incorrect|an accident)|forget (?:that|what i (?:said|just said)|(?:my|that|the) (?:last |previous )?(?:message|text|post)|(?:my|that|the) (?:last|previous) one)|revert(?: that| it)?|wrong(?: chat| group| button| message| person)?|pressed the wrong (?:button|one)|i pressed the wrong (?:button|one)|(?:that was|was) (?:a mistake|an accident|wrong)|by (?:mistake|accident)|i take (?:that|it) back|cancel (?:that|my last)|you (?:misunderstood|got (?:that|it|me) wrong|misread)|got (?:that|it|me) wrong|misclick|(?:that|this) (?:was|is|were) (?:meant )?for (?:another|a different|the other|my other) (?:group|chat|thread)|meant for (?:another|a different) (?:group|chat)|mis-click|wrong button)(?:(?: ,)? (?:sorry|please|bot|that|last one))*(?= $| ,| i | it | that| -| not)"
)


_WHY = re.compile(
    r"^ (?:(?:but|and|so|hey|bot|wait|um|,) )*(?:why|how come|what (?:makes|made) you|how did you (?:get|know|read|come)|where did you get)"
    r"(?:(?= (?:did|do|have|are|would|should) you (?!text|messag|call|wak|ask|writ|bother|ping|spam)| you\b| that\b| it\b| is that\b| me\b)| (?:that|this|so|not|though)? ?$| (?:to|get|get that|it)\b)"
)


_HELP = re.compile(
    r" (?:can|could|would|will|may) (?:any ?one|any ?body|some ?one|some ?body|one of you|you guys|any of you)(?: [a-z]+)? "
    r"(?:bake|heat|reheat|warm|cook|finish|fetch|collect|pick|lend|roast|grill|store|keep|carry|put) .*\b(?:my|our|me|us)\b"
)
"""Help asked for with one's own dish: no question about who brings it."""


_TASTE = re.compile(
    r" (?:does|do|would|will) (?:any ?one|any ?body|people|folks|you(?: all)?|y'all) mind (?:if|when) "
    r"|^ (?:(?:so|and|ok|also|btw|,) )*should (?:the|my|our|mine) (?:[a-z]+ ){0,3}?(?:have|contain|include|be (?!there|ready|here)) ?"
    r"|^ (?:(?:so|and|ok|also|,) )*(?:is|will|are) (?:it|this|the (?:potluck|supper|dinner|party|do)|we|things) (?:be )?(?:fancy|formal|casual|dressy|dressing up|smart|black tie|posh)(?![a-z])"
)
"""What only the people who host and eat can say: how a dish shall be, what is worn."""
OF_SOMETHING_ELSE = re.compile(
    r" (?:missing|lacking|left|needed) (?:in|from|on|of) (?:the|this|that|these|my|your|his|her|our|a) (?!(?:[a-z]+ )?(?:list|table|menu|potluck|supper|dinner|spread|lunch|brunch|party|plan|feast|meal|board|food|kitchen|shopping|bar|buffet|way of)\b)[a-z]+"
)
""" "What is missing in this puzzle?" is after something else."""


def read_question(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """A question the plan answers."""
    asking = sentence.question or _ASKING.match(sentence.text) is not None
    if context.addressed and _WHY.match(sentence.text):
        start, end = sentence.span(0, len(sentence.tokens))
        sentence.take(0, len(sentence.tokens))
        return [Ask("why", start=start, end=end, confidence=0.9)]
    if not asking or tells(sentence):
        return []
    if context.addressed and (_HELP.search(sentence.text) or _TASTE.search(sentence.text)):
        start, end = sentence.span(0, len(sentence.tokens))
        sentence.take(0, len(sentence.tokens))
        return [Ask("host", start=start, end=end, confidence=0.85)]
    for topic, pattern, confidence in _COMPILED:
        match = pattern.search(sentence.text)
        if match is None or (
            topic == "can-eat" and (_WHO_EATS.search(sentence.text) or OF_NO_FOOD.search(sentence.text))
        ):
            continue
        if match.groupdict().get("dish") is not None and known_thing(match["dish"])[1] < 0.75:
            continue
        if topic == "missing" and OF_SOMETHING_ELSE.search(sentence.text):
            continue
        if topic in ("oven", "can-eat") and not sentence.question and not _ASKING.match(sentence.text):
            continue
        start, end = sentence.span(0, len(sentence.tokens))
        about = ""
        if topic == "can-eat":
            need = re.search(rf"\b(?:{any_of('diet')})\b", sentence.text)
            about = need[0] if need else ""
        elif match.groupdict().get("dish") is not None:
            about = match["dish"]
        sentence.take(0, len(sentence.tokens))
        if not sentence.question:
            confidence -= 0.05
        return [Ask(topic, about, start=start, end=end, confidence=confidence)]
    return []


def read_late(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """Running late, by how many minutes if said."""
    if _NOT_LATE.search(sentence.text) and not re.search(r"\bminutes?|\bmins?|\bhour", sentence.text):
        return []
    if any(
        f" {name.lower()} {be} " in sentence.text
        for guest, name in context.guests
        if guest != context.writer
        for be in ("will", "is", "might", "may")
    ):
        return []  # "Mei Lin will be late"
    found: tuple[int | None, re.Match[str]] | None = None
    for match in (
        *_SO_LONG.finditer(sentence.left),
        *_LATE.finditer(sentence.left),
        *_LATE_ARRIVAL.finditer(sentence.left),
        *_LATE_BY.finditer(sentence.left),
    ):
        got = match.groupdict()
        words = got.get("much") or got.get("much2") or got.get("much3") or got.get("much4") or ""
        length = parse_duration(words) if _LENGTH.search(words) else None
        minutes = round(length.total_seconds() / 60) if length is not None else None
        if minutes is None and (bare := re.fullmatch(r" ?([0-9]{1,3}) ?", words)) is not None:
            minutes = int(bare[1])
        if (got.get("much2") or got.get("much3")) and minutes is None:
            continue
        if minutes is not None and not 0 < minutes <= 24 * 60:
            continue
        if found is None or (found[0] is None and minutes is not None):
            found = minutes, match
    if found is None:
        return []
    minutes, match = found
    start, end = sentence.span_of(match)
    sentence.take_match(match)
    return [Late(minutes, start=start, end=end, confidence=0.9 if minutes else 0.8)]


def read_undo(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    match = _UNDO.match(sentence.left)
    if match is None or not context.addressed:
        return []
    start, end = sentence.span_of(match)
    rest = sentence.left[match.end() :].strip()
    sentence.take_match(match)
    return [Undo(start=start, end=end, confidence=0.9 if len(rest.split()) < 4 else 0.6)]
