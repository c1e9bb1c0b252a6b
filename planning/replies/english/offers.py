"""Offers to bring something, whole lists of them."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from dataclasses import replace

from planning.replies.english.lexicon import NUMBER, any_of
from planning.replies.english.own import ONE_MORE, match_promise, same_dish, topping_of
from planning.replies.english.things import Thing, things_at
from planning.replies.intents import AddPromise, ChangePromise, Intent, ReplyContext, TakeTopping
from planning.replies.text import Sentence

_ADV = r"(?:(?:also|just|probably|definitely|gladly|happily|both|still|then|now|certainly|totally|maybe|perhaps|actually|always|again|all|as usual|in that case|of course|instead|so|either) )*"
_VERB = r"(?:signed up for|bring|bringing|make|making|cook|cooking|bake|baking|do|doing|contribute|contributing|supply|supplying|provide|providing|prepare|preparing|take care of|handle|handling|cover|covering|get|getting|buy|buying|pick up|picking up|grab|grabbing|send|sending|send along|drop off|drop|throw together|whip up|knock up|throw in|chuck in|add|adding|throwing in|see to|look after|deal with|produce|prep|rustle together|chuck together|sling together|cobble together|volunteer|rustle up|fix|fixing|share|sharing|split|sign up for|volunteer for|volunteer|take|taking|be bringing|be making|be doing|be baking|be cooking|knock up|put together|organise|organize|sort out|sort|serve|whip together|come with|be on|fry up|smoke|grill|roast|offer|donate|chip in|chip in with|pitch in with|carry|carrying|fetch|fetching|haul|haul in|hauling|hauling in|lug|lugging|furnish|source|tote|cart|chuck|toss in|toss|lend|lending|loan|splitting|sharing|cook up|bake up|put in|pop in|dish up|conjure up|dream up|dreaming up|cooking up|plan|planning|planning on|arrange|see about|be in charge of|be responsible for|be good for|bring with (?:me|us)|bringing with (?:me|us)|take with (?:me|us)|come bearing|turn out|run up|mix up|mix|brew|pickle|assemble|present)"
_AUX = r"(?:will|can|am|are|could|would|am going to|are going to|shall|might|may|would like to|would like|would rather|want to|want|will to|can to|wanna|am happy to|are happy to|plan to|am planning to|are planning to|plan on|am planning on|would be happy to|would love to|am able to|will be able to|have decided to|am gonna|intend to|am up for|are up for|would be up for|would not mind|do not mind|fancy|am keen to|could also|was going to|was planning to|was thinking of|am thinking of|am thinking|thought i would|have|do|promise to|was thinking i would|was thinking i could|should like to|shall gladly|would be glad to|would be delighted to|would be pleased to|undertake to|propose to|mean to|aim to|hope to|should be able to|ought to be able to|am willing to|am prepared to|am set to|am allowed to|can certainly|will certainly|will surely|gladly|will gladly|am determined to|insist on)"
_UP_WITH = re.compile(
    rf"(?:^|(?<= ,)|(?<= and)|(?<= so)|(?<= yes)| (?:i|we) (?:{_AUX} )?) {_ADV}(?:be )?(?:pull|roll|rock|show|turn|swing|stop|pop|arriv|com|head|haul|stroll|drop|walk|breez|wander)(?:e|l|p)?(?:ing)? (?:(?:up|in|by|over|round|along|down|there|on|home) )*(?:with|bearing|carrying|laden with|armed with) "
)
"""Coming, told by what is in one's hands."""
_OFFERS = (
    (re.compile(rf" (?P<who>i|we|(?:me|myself) (?:and|&) [a-z]+|[a-z]+ (?:and|&) me) (?P<aux>{_AUX} )?{_ADV}(?:volunteer to |offer to |try to |manage to )?(?P<verb>{_VERB})(?: along| over| with (?:me|us))?(?: :)? "), 0.93),
    (re.compile(r" (?:i|we) have (?:also |already |just |even )*(?:made|baked|cooked|bought|prepared) (?!(?:it|this|that|up|a mess|sure|plans)\b)"), 0.75),
    (re.compile(r" (?:let|allow|permit) (?:me|us) (?:to )?(?P<verb>bring|make|bake|do|contribute|provide|supply|cook|offer|prepare|add|handle|take care of|furnish|get) "), 0.9),
    (_UP_WITH, 0.88),
    (re.compile(rf"^ {_ADV}(?:(?:yes|ok|coming|in|so) ,? ?)*(?P<aux>(?:will|shall|can|could|might|may|going to|happy to|planning to|glad to|able to) ){_ADV}(?P<verb>{_VERB})(?: along| over)?(?: :)? "), 0.88),
    (re.compile(rf"^ {_ADV}(?:yes(?: ,)? )?(?P<aux>(?:will|can|could|going to|happy to|planning to|might|am) )?{_ADV}(?P<verb>bringing|bring|making|make|baking|bake|cooking|cook|doing|do|be bringing|contribute|provide|supply|grab|get|take|pick up|buy)(?: along)?(?: :)? "), 0.88),
    (re.compile(rf"(?: ,| and| but| \+| also| \x00| sorry|^ yes) {_ADV}(?P<aux>(?:will|shall|can|could|going to|happy to|am|are) )?{_ADV}(?P<verb>bringing|will bring|bring|make|making|doing|baking|bake|cooking|cook|send|sending)(?: along)? "), 0.88),
    (re.compile(r" (?:i|we) (?:have(?: got)?|got) (?=(?:dessert|drinks?|snacks|the|a|an|some|bread|salad|[0-9]+|two|three|half|loads|lots|plenty)\b)"), 0.75),
    (re.compile(r"^ (?:(?:i|we) )?got (?:the |some )?(?=(?:desserts?|drinks?|snacks|bread|rolls|salads?|plates|cups|napkins|ice|cutlery|chips|buns)(?: (?:covered|sorted|handled|for [0-9a-z ]+|this time))* $)"), 0.84),
    (re.compile(r"^ (?:(?:yes|ok|also|and|,) )*got (?:the |some )?(?=[a-z ,&-]+ (?:covered|sorted|handled) $)"), 0.86),
    (re.compile(r" (?:put|sign|write|mark|pencil|note|jot|add) (?:me|us) (?:down |up |in |on )?(?:as )?(?:for|with|bringing|to bring|to make|on) "), 0.95),
    (re.compile(r" (?:count (?:me|us)(?: in| down)?|sign (?:me|us) up|(?:count|rely|depend|bank|reckon) on (?:me|us)(?: to bring)?|down|i am down|dibs|i call dibs|i have dibs|leave it to me) (?:for|on|with) (?!me\b|us\b)"), 0.9),
    (re.compile(r" (?:i|we) (?:have got|have|got|will have|have already got) (?=[a-z0-9 ,-]+ (?:covered|handled|sorted|under control|taken care of)\b)"), 0.92),
    (re.compile(r"^ (?:i am|we are|i will be|am|on|i will go) (?:on|for|with) (?=(?:the )?[a-z ]+ (?:duty|detail)?)"), 0.85),
    (re.compile(r"^ (?:my|our) (?:contribution|offering|share|part|dish|bit|plan|choice|pick)(?: (?:is|are|will be|would be|to it|to the (?:supper|potluck|table|party|meal)|this time|:|-))+ "), 0.9),
    (re.compile(r"^ (?:happy|glad|delighted|keen|willing) to (?P<verb>contribute|bring|make|bake|do|provide|supply|cook|offer) "), 0.9),
    (re.compile(r"^ (?:me|us) (?:for|on) "), 0.75),
    (re.compile(r"(?: ,| and| but| also|^|^ please)(?: (?:please|also|you can|can you|could you|you could))* add(?:ing)? (?!me\b|us\b|my\b|our\b|[a-z0-9]+ (?:more|kids?|adults?|people|children)\b)"), 0.85),
    (re.compile(rf"(?: ,| and| but| \+| also) {_ADV}(?P<aux>(?:will|shall|can|could|going to|happy to) ){_ADV}(?P<verb>{_VERB})(?: along| over)? "), 0.86),
    (re.compile(rf"(?:^|(?<= ,)|(?<= and)|(?<= but)|(?<= so)) (?:(?:my|our|the) )?(?:{any_of('kin')}|{any_of('guestkin')}) {_ADV}(?:is|will be|has been) {_ADV}(?P<verb>bringing|making|baking|cooking|grilling|smoking|frying|roasting|whipping up|picking up|buying|doing|on) "), 0.7),
    (re.compile(rf" (?:my|our) (?:{any_of('kin')}|{any_of('kins')}) {_ADV}(?:wants to|would like to|will|is going to|is|can|offered to|has offered to|would love to) {_ADV}(?P<verb>bring|bringing|make|making|bake|baking|cook|cooking|contribute)(?: along)? "), 0.7),
    (re.compile(r" (?:i|we) (?:am|are|was|were|have been) (?:thinking|considering|contemplating|toying)(?: with| of| about)?(?: doing| making| bringing)? (?!you\b|that\b|if\b)"), 0.65),
    (re.compile(rf" (?:i|we) {_ADV}(?:can|could|will) {_ADV}(?:stretch|run|go) to "), 0.85),
    (re.compile(r"(?:^| (?:i|we)(?: have)?) got (?:you|ya|us|everyone|y'all) (?:all )?(?:on|for|covered on|covered for|sorted for|with) "), 0.88),
    (re.compile(r"(?:^|(?<= ,)|(?<= and)) (?:(?:you|y'all) (?:can|may|could|will|should) )?(?:(?:all )?expect|(?<=can )(?:get|have)|(?<=will )(?:get|have|be getting)|look forward to|look out for) (?=(?:a|an|some|my|our|the|[0-9]+) .*(?:from (?:me|us)| $))(?!.* (?:you|it) )"), 0.86),
    (re.compile(r" (?:i|we) (?:am|are) (?:also )?good for (?=(?:a|an|the|some|[0-9]+|two|three) )(?!a (?:laugh|while|minute|bit))"), 0.85),
)  # fmt: skip
_ON_ME = re.compile(
    r"^ (?P<what>(?:the |some |a )?[a-z ,'0-9-]+?) (?:(?:(?:is |are |has been |have been )?(?:sorted|covered|taken care of|handled|done|provided|brought|made|claimed|taken|reserved) by (?:me|us))|(?:is|are|will be) (?:on (?:me|us)|mine|ours|from (?:me|us)|my job|covered by me|coming from (?:me|us)|coming (?:along )?with (?:me|us)))(?= $| ,| then| this)"
)
_GOT_IT = re.compile(
    r"^ (?P<what>(?!(?:where|when|who|how|what|if|so|ok|yes|no|that|it) )(?:the |some |a )?[a-z0-9 ,'&+-]+?)(?: ,)? (?:(?:i|we) (?:have |will |can |am )?(?:got|get|have|bring|bringing|handle|cover|take|supply|sort|do|provide|on)(?: (?:it|them|those|these|that|this|em|all))+(?: (?:covered|sorted|handled|too|for sure|already))*|(?:i|we) got (?:you|ya|us)(?: all)?|all (?:from |on |by )?(?:me|us)|all mine|my treat|on the house)(?= $| ,)"
)
_LEFT_TO_ME = re.compile(
    r"^ (?:(?:you can|just|please|ok|and|so) )*leave (?P<what>(?:the |all the |some )?[a-z ,'0-9-]+?) (?:to|with|up to) (?:me|us)(?= $| ,| then| this)"
)
_PUT_DOWN = re.compile(
    r" (?:put|note|mark|write|add|sign)(?: down)? (?P<what>(?:the |some |an? )?[a-z0-9 ]{3,40}?) (?:down |up )?(?:for|from|by|as) (?:me|us|mine|ours)(?= $| ,)"
)
_IT_IS = re.compile(
    r"(?:^|(?<= so)|(?<= then)|(?<= ,)|(?<= ok)|(?<= right)) (?P<what>(?!so |then |ok |right |well )(?:the |some |an? )?[a-z ]{3,30}?) it is(?= $| then| for)"
)
_TO_NAME = re.compile(r" (?:put|note|mark|write|add|sign)(?: down)? (?P<what>(?:the |some |an? )?[a-z0-9 ]{3,40}?) (?:to|against|under|next to|beside|by|on) (?:my|our) (?:name|list|line|tab|row|side|account)(?= $| ,| )")
_NEGATED = re.compile(r" (?:not|never|no longer|no need to|do not|hardly) (?:(?!but|and|so|still|though)\w+ ){0,2}$")
IF_NEEDED = re.compile(
    r"\bif (?:it is |they are |more is |that is )?(?:needed|wanted|necessary|required|helpful|useful|short)|\bif (?:no ?one|nobody|no-one) else\b|\bif (?:you|we) (?:need|are short|run short|want|still need)\b|\bunless (?:someone|somebody|anyone|you|we)\b|\bin case\b"
)
_CONDITION = re.compile(
    r"^ if (?!it is (?:ok|okay|fine|all right|alright)|that|it helps|it is needed|it is of use|you |any|no ?one|nobody|needed|wanted|possible|so |not )[a-z]|\bif (?:i|we|my|the|there is time|time) |\bunless (?:i|we|it|the)\b|\bdepending on\b|\bassuming (?:i|we|my)\b|\bprovided\b"
)
_NOTHING = re.compile(
    r"\b(?:not bring(?:ing)?|bring(?:ing)?|with) (?:anything|nothing)\b|\bempty[- ]handed\b|\bnothing (?:from|to bring)\b"
)
_TO_OTHERS = re.compile(
    r"\bto (?:my|the|your|her|his|a|our|work|school|grandma|mum|church)\b(?! (?:potluck|supper|harvest|dinner|feast|party|get-together|gathering|barbecue|bbq|table))"
)
_SUPPERS = r"(?:potluck|supper|harvest|feast|get-together|gathering|table|group|crowd|bar|meal|party|dinner|barbecue|bbq|kids|children|veggies|vegans|vegetarians|starters?|main|dessert)"
_ANOTHER_MEAL = re.compile(
    rf"\b(?:tonight|today|this (?:morning|afternoon|evening|week)|at home|round here|for (?:tea|lunch|breakfast|brunch|dinner|work|school|church|mum|mom|dad|gran|nana|us (?:all )?here))\b"
    rf"|(?<!down )(?<!up )(?<!me )(?<!us )\bfor (?:the|my|our|a|an|his|her|their) (?!(?:[a-z]+ )?{_SUPPERS}\b)[a-z]+|\bto (?:{any_of('kin')}|{any_of('guestkin')}|mum|mom|dad|gran|a|the (?!(?:[a-z]+ )?{_SUPPERS}\b))\b"
)
"""In the open chat: food that is for somebody else, or for another day."""
_OCCASION = re.compile(
    r"\b(?:potluck|supper|harvest|feast|get-together|gathering|(?:the|our|your) (?:dinner|party|barbecue|bbq|picnic|meal)|saturday|sunday|friday|for [0-9]{1,3})\b"
)
_BASE = frozenset(
    ("bring", "make", "bake", "cook", "do", "contribute", "provide", "supply", "grab", "get", "take", "pick up", "buy")
)
_SURELY = ("bringing", "will bring", "making", "baking")
_GOT = re.compile(r" (?:i|we) (?:have )?got $")
_COMMAND = next(i for i, (pattern, _) in enumerate(_OFFERS) if "(?P<verb>bringing|bring|making|make|" in pattern.pattern)
_HAS = next(i for i, (pattern, _) in enumerate(_OFFERS) if pattern.pattern.startswith(" (?:i|we) (?:have(?: got)?|got)"))
_ADDS = next(i for i, (pattern, _) in enumerate(_OFFERS) if "add(?:ing)? " in pattern.pattern)
_MADE = next(i for i, (pattern, _) in enumerate(_OFFERS) if "(?:made|baked|" in pattern.pattern)
_MINE = re.compile(r" (?:i|we|me|us|my|our|mine|ours|yes|coming|in) ")
_NAMES_ITSELF = re.compile(
    r"(?:a |some )?(?:salads?|breads?|desserts?|puddings?|drinks?|soups?|snacks?|sides?|nibbles)"
)
"""What names a kind of dish and, with an amount, the dish as well ("a salad for 10")."""


_WEAK = frozenset(
    ("do", "doing", "get", "getting", "take", "taking", "cover", "covering", "handle", "handling", "have", "fix", "send",
     "sending", "serve", "roast", "smoke", "grill", "fixing", "on", "be on", "make", "making", "offer", "come with", "cook",
     "cooking", "carry", "carrying", "fetch", "haul", "hauling", "lug", "lend", "loan", "chuck", "toss", "arrange", "mix",
     "present", "pop in", "put in", "see about", "turn out", "split", "splitting", "share", "sharing", "cart", "source")
)  # fmt: skip
"""Verbs that say little of food: what stands behind them must be known."""


def _past_with(sentence: Sentence, i: int) -> int:
    """Where the dishes begin behind "I take with me", "we bring along"."""
    plain = [t.plain for t in sentence.tokens[i : i + 3]]
    if plain[:2] in (["with", "me"], ["with", "us"], ["for", "you"], ["to", "you"]) and len(plain) > 2:
        return i + 2
    return i + (plain[:1] in (["along"], ["you"], ["y'all"]) and len(plain) > 1)


def read_promises(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """Offers to bring something, whole lists of them."""
    tokens = sentence.tokens
    for pattern, confidence in _OFFERS:
        match = pattern.search(sentence.left)
        if match is None:
            continue
        if _NEGATED.search(sentence.left[: match.start() + 1]) or " not " in match[0]:
            continue
        first, last = sentence.token_range(match)
        things = things_at(sentence, _past_with(sentence, last), len(tokens))
        if not things:
            continue
        if pattern is _OFFERS[_HAS][0] and re.search(r" (?:do|does|did|should|if|what|that) $", sentence.left[: match.start() + 1]):
            continue  # "do we have dessert"
        if pattern in (_OFFERS[_HAS][0], _UP_WITH) and not any(t.known >= 0.5 or t.vague for t in things):
            continue  # "I have a prior commitment"
        if pattern in (_OFFERS[_ADDS][0], _OFFERS[_MADE][0]) and not all(t.known >= 0.9 or t.vague for t in things):
            continue  # "add 2 cups of flour"
        aux = (match.groupdict().get("aux") or "").strip()
        if aux.startswith(("was", "would")) and re.search(r"\bbut\b", sentence.text):
            continue  # "I was going to bring salad but someone has it"
        verb = (match.groupdict().get("verb") or "").strip()
        ordered = pattern is _OFFERS[_COMMAND][0] or (match[0].startswith(" ,") and not _MINE.search(sentence.text))
        if ordered and not aux and verb in _BASE and context.asked != "bring":
            continue  # "bring a chair each" tells others
        if not context.addressed and verb in _SURELY and not aux and all(t.servings and t.known >= 0.9 for t in things):
            confidence = 0.92  # "bringing garlic bread for 15!" is about a meal, wherever it is said
        if match.groupdict().get("who") and not aux and verb in _BASE:
            confidence = 0.82 if context.addressed else 0.6  # "I bring cake" may be a habit
        if pattern is _OFFERS[_HAS][0] and context.addressed and _GOT.match(match[0]) and sentence.tokens[last].plain == "the" and all(t.known >= 0.9 for t in things):
            confidence = 0.86  # "I got the burgers"
        if pattern is _UP_WITH:
            first = things[0].first  # the coming before it is an answer of its own
        return added(sentence, context, things, first, aux, verb, confidence)
    for pattern in (_ON_ME, _LEFT_TO_ME, _IT_IS, _PUT_DOWN, _TO_NAME, _GOT_IT):
        match = pattern.search(sentence.left)
        if match is None:
            continue
        first, last = sentence.token_range(match, "what")
        things = things_at(sentence, first, last, bare=True)
        if things:
            return added(sentence, context, things, first, "", "", 0.9)
    return []


_SO_MANY_OR = re.compile(rf" or (?:so|more|less|thereabouts|(?:maybe |perhaps |even )?{NUMBER}(?:ish)?)(?= |$)")
""" "For ten or twelve" leaves open how many, not which."""


def added(
    sentence: Sentence, context: ReplyContext, things: list[Thing], first: int, aux: str, verb: str, confidence: float
) -> list[Intent]:
    found: list[Intent] = []
    told = _SO_MANY_OR.sub(" ", sentence.text[sentence.text.find(things[0].dish.lower()) :])
    choice = re.search(r" (?:or|either) ", told) is not None
    wished = aux in ("would like to", "would love to", "would be happy to", "am happy to", "want to")
    offered = not wished and aux.startswith(("could", "might", "may", "would", "was", "am thinking", "want", "plan"))
    buys = verb in ("buy", "buying", "pick up", "picking up", "grab", "grabbing")
    weak = verb in _WEAK
    needed = IF_NEEDED.search(sentence.text) is not None
    condition = _CONDITION.search(sentence.text) is not None
    for thing in things:
        if (
            thing.vague
            and thing.category
            and (thing.servings or thing.quantity)
            and _NAMES_ITSELF.fullmatch(thing.dish)
        ):
            thing = replace(thing, vague=False, dish=thing.dish.removeprefix("a ").removeprefix("some "))
        if thing.other or (not thing.vague and thing.known < 0.3 and (weak or not context.addressed)):
            continue
        if not context.addressed and (_TO_OTHERS.search(sentence.text) or _ANOTHER_MEAL.search(sentence.text)):
            continue
        if not context.addressed and weak and not _OCCASION.search(sentence.text):
            continue  # "I'll get milk" in the open chatter is not about the table
        sure = confidence
        if not thing.vague and thing.known < 0.75:
            sure = min(sure, 0.55)
        if choice:
            sure = min(sure, 0.6)
        if offered:
            sure = min(sure, 0.7)
        start, end = sentence.span(thing.first if thing is not things[0] else first, thing.last)
        if (topping := topping_of(thing, context)) is not None:
            found.append(TakeTopping(topping, start=start, end=end, confidence=sure))
            sentence.take(first, thing.last)
            continue
        own = match_promise(thing.dish, context.own_promises) if not thing.vague else None
        if own is not None and thing.category and same_dish(own[1], thing.dish) and not ONE_MORE.search(sentence.text):
            if thing.servings or thing.quantity or thing.factor:
                found.append(
                    ChangePromise(
                        own[0], servings=thing.servings, quantity=thing.quantity, factor=thing.factor,
                        start=start, end=end, confidence=sure,
                    )
                )  # fmt: skip
            sentence.take(first, thing.last)
            continue
        conditional = needed or condition or thing.conditional or aux in ("might", "may")
        found.append(
            AddPromise(
                thing.dish, thing.category, thing.servings, thing.quantity, conditional,
                thing.store_bought or buys, thing.vague, thing.for_all,
                start=start, end=end, confidence=min(sure, 0.7) if conditional else sure,
            )
        )  # fmt: skip
        sentence.take(first, thing.last)
    return found


def brings_nothing(sentence: Sentence) -> bool:
    return _NOTHING.search(sentence.text) is not None


def read_offer_question(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """ "Shall I bring slaw?", "would rolls help?": an offer to be confirmed."""
    match = re.match(
        r"^ (?:ok |so |and |yes |maybe |perhaps |, )*(?:i|we) (?:can|could|will|would|might|may) (?:also |just |maybe |perhaps |always |easily |probably |happily |then |still )*(?:bring|make|bake|do|cook|take|get|grab|contribute|supply|provide|fetch|pick up|throw together|whip up|sort) ",
        sentence.left,
    )
    if match is not None and context.addressed:
        first, last = sentence.token_range(match)
        things = [
            t for t in things_at(sentence, last, len(sentence.tokens)) if (t.known >= 0.75 or t.vague) and not t.other
        ]
        return added(sentence, context, things, first, "could", "bring", 0.6) if things else []
    match = re.match(
        r"^ (?:ok |so |and |, )*(?:should|shall|can|could|may|what if|how about|(?:would it|does it|will it) help if|(?:would it be|is it) (?:ok|okay|all right|fine|useful|helpful) if|(?:(?:does|would|do) )?(?:any ?one|anybody|you) mind if|any objections? if|what about) (?:i|we|me|us) (?:do |just |also )?(?:bring|make|bake|do|brought|made|doing|bringing|making|did|bag|claim|take|grab|have)(?: along)? ",
        sentence.left,
    )
    if match is None:
        match = re.match(
            r"^ (?:how about|what about) (?:if i (?:bring|make|brought|made) |me (?:doing|bringing|making) )?",
            sentence.left,
        )
    if match is None or not context.addressed:
        return []
    first, last = sentence.token_range(match)
    things = [t for t in things_at(sentence, last, len(sentence.tokens)) if t.known >= 0.75 and not t.other]
    return added(sentence, context, things, first, "could", "bring", 0.6) if things else []


_IS_OK = (
    re.compile(r"^ (?:(?:so|ok|and|hmm|hi|hey|,) )*(?:would|will|is|are|does|do) (?P<what>(?:a |an |some |my )?[a-z][a-z ,'&-]{2,40}?) (?:be |sound |work |do )*(?:ok|okay|good|fine|alright|all right|useful|helpful|help|welcome|nice|work|acceptable|appreciated|go down well|a good idea|too much|cool)(?: (?:for (?:this|the [a-z]+|everyone|you|all)|with (?:you|everyone)|then|instead|too|as well))* $"),
    re.compile(r"^ (?P<what>(?:a |an |some |my )?[a-z][a-z ,'&-]{2,40}?) (?:is |be )?(?:ok|okay|fine|alright|all right|useful|helpful|welcome|cool|any good|a good idea)(?: (?:for (?:this|the [a-z]+|everyone)|with (?:you|everyone)|then|or))* $"),
    re.compile(r"^ (?:(?:so|ok|and|hmm|or|,) )*(?:maybe|perhaps|thinking(?: of| about)?|possibly|say|what about|how about|i was thinking(?: of)?|i am thinking(?: of)?) (?P<what>(?:a |an |some |my )?[a-z][a-z ,'&-]{2,40}?)(?: (?:then|instead|or something))* $"),
    re.compile(r"^ (?:does|do|would) (?:anyone|anybody|people|everyone|you(?: all| guys)?|y'all|folks) (?:want|like|fancy|need|eat) (?P<what>(?:a |an |some |my )?[a-z][a-z ,'&-]{2,40}?) $"),
)  # fmt: skip
""" "Is pasta salad ok?": an offer, put as a question."""
_CAN_I = re.compile(
    r"^ (?:ok |so |and |, )*(?:can|could|may|shall|should) (?:i|we) (?:bag|claim|nab|snag|grab|book|reserve|take|cover|contribute|offer|donate|add|supply|provide) (?=(?:the|a|an|my|our|some) )"
)
"""A wish for a dish of one's own ("can I claim the cheesecake?")."""


def read_plain_offer_question(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """One that names a dish and cannot be a question after anything else ("anyone mind if I bring a tiramisu?")."""
    asks = sentence.question or re.match(r"^ (?:what|how) about ", sentence.text)
    if not asks or re.search(r" (?:instead of|rather than) ", sentence.text):
        return []
    found = read_offer_question(sentence, context)
    if not found and context.addressed and (wish := _CAN_I.match(sentence.left)) is not None:
        last = sentence.token_range(wish)[1]
        things = [
            t for t in things_at(sentence, last, min(last + 4, len(sentence.tokens))) if t.known >= 0.9 and not t.other
        ]
        found = added(sentence, context, things, 0, "could", "bring", 0.6) if things else []
    if not found and context.addressed and sentence.question:
        found = _asked_whether_ok(sentence, context)
    return found if found and not any(isinstance(i, AddPromise) and i.vague for i in found) else []


def _asked_whether_ok(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    for pattern in _IS_OK:
        match = pattern.match(sentence.left)
        if match is None:
            continue
        first, last = sentence.token_range(match, "what")
        if sentence.tokens[first].plain in ("it", "that", "this", "there", "the", "i", "we"):
            return []
        things = [t for t in things_at(sentence, first, last) if t.known >= 0.9 and not t.other and not t.vague]
        if len(things) == 1 and things[0].last >= last and not things[0].heads_a_list:
            return added(sentence, context, things, first, "could", "bring", 0.6)
    return []
