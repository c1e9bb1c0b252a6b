"""Who brings what: offers, changes, withdrawals, toppings."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from dataclasses import replace

from planning.replies.english.lexicon import NUMBER, number_of, singulars
from planning.replies.english.things import Thing, things_at
from planning.replies.intents import AddPromise, ChangePromise, DropPromise, Intent, ReplyContext, TakeTopping
from planning.replies.text import Sentence

_ADV = r"(?:(?:also|just|probably|definitely|gladly|happily|both|still|then|now|certainly|totally|maybe|perhaps|actually|always|again|all|as usual|in that case|of course|instead|so|either) )*"
_VERB = r"(?:bring|bringing|make|making|cook|cooking|bake|baking|do|doing|contribute|contributing|supply|supplying|provide|providing|prepare|preparing|take care of|handle|handling|cover|covering|get|getting|buy|buying|pick up|picking up|grab|grabbing|send|sending|send along|drop off|drop|throw together|whip up|rustle up|fix|fixing|sign up for|volunteer for|volunteer|take|taking|be bringing|be making|be doing|be baking|be cooking|knock up|put together|organise|organize|sort out|sort|serve|whip together|come with|be on|fry up|smoke|grill|roast|offer|donate|chip in|chip in with|pitch in with)"
_AUX = r"(?:will|can|am|are|could|would|am going to|are going to|shall|might|may|would like to|would rather|want to|am happy to|are happy to|plan to|am planning to|are planning to|plan on|am planning on|would be happy to|would love to|am able to|will be able to|have decided to|am gonna|intend to|was going to|was planning to|was thinking of|am thinking of|am thinking|thought i would|have|do|promise to|was thinking i would|was thinking i could)"
_OFFERS = (
    (re.compile(rf" (?P<who>i|we) (?P<aux>{_AUX} )?{_ADV}(?:volunteer to |offer to |try to |manage to )?(?P<verb>{_VERB})(?: along| over)?(?: :)? "), 0.93),
    (re.compile(r" let (?:me|us) (?P<verb>bring|make|bake|do|contribute) "), 0.9),
    (re.compile(rf"^ {_ADV}(?:yes(?: ,)? )?(?P<aux>(?:will|can|could|going to|happy to|planning to|might|am) )?{_ADV}(?P<verb>bringing|bring|making|make|baking|bake|cooking|cook|doing|do|be bringing|contribute|provide|supply|grab|get|take|pick up|buy)(?: along)?(?: :)? "), 0.88),
    (re.compile(rf"(?: ,| and| but| \+| also| \x00| sorry|^ yes) {_ADV}(?P<aux>(?:will|can|could|going to|happy to|am|are) )?{_ADV}(?P<verb>bringing|will bring|bring|make|making|baking|bake|cooking|cook|send|sending)(?: along)? "), 0.88),
    (re.compile(r" (?:i|we) have(?: got)? (?=(?:dessert|drinks?|snacks|the|a|some|bread|salad)\b)"), 0.75),
    (re.compile(r"^ (?:(?:i|we) )?got (?:the |some )?(?=(?:desserts?|drinks?|snacks|bread|rolls|salads?|plates|cups|napkins|ice|cutlery|chips|buns)(?: (?:covered|sorted|handled|for [0-9a-z ]+|this time))* $)"), 0.84),
    (re.compile(r" (?:put|sign|write|mark|pencil|note|jot|add) (?:me|us) (?:down |up |in |on )?(?:as )?(?:for|with|bringing|to bring|to make|on) "), 0.95),
    (re.compile(r" (?:count (?:me|us) in|sign (?:me|us) up|count on (?:me|us)|down|i am down|dibs|i call dibs|i have dibs|leave it to me|rely on (?:me|us)|^ me|^ us) (?:for|on|with) "), 0.9),
    (re.compile(r" (?:i|we) (?:have got|have|got|will have|have already got) (?=[a-z0-9 ,-]+ (?:covered|handled|sorted|under control|taken care of)\b)"), 0.92),
    (re.compile(r"^ (?:i am|we are|i will be|am|on|i will go) (?:on|for|with) (?=(?:the )?[a-z ]+ (?:duty|detail)?)"), 0.85),
)  # fmt: skip
_ON_ME = re.compile(r"^ (?P<what>(?:the |some |a )?[a-z ,'0-9-]+?) (?:is|are|will be) (?:on (?:me|us)|mine|ours|from (?:me|us)|my job|covered by me|coming from (?:me|us))(?= $| ,| then| this)")
_NEGATED = re.compile(r" (?:not|never|no longer|no need to|do not|hardly) (?:(?!but|and|so|still|though)\w+ ){0,2}$")
_DROPS: tuple[re.Pattern[str], ...] = (
    re.compile(r" (?:i|we)? ?(?:can|will|am|are|could)? ?not (?:able to |going to |be able to |be )?(?:actually |now |after all |also |longer )*(?:bring|bringing|make|making|do|doing|bake|baking|cook|cooking|manage|supply|provide|get|handle|have time (?:to (?:make|bake|cook|do)|for)|offer) (?P<what>[^\x00]{1,60}?)(?= $| ,| after| any ?more| now| but| sorry| because| as | so | this| \x00|$)"),
    re.compile(r" (?:no longer|not) (?:bringing|making|doing|baking|cooking|able to (?:bring|make|do|bake)|going to (?:bring|make|do|bake)) (?P<what>[^\x00]{1,60}?)(?= $| ,| after| any ?more| now| but| sorry| because| as | so | \x00|$)"),
    re.compile(r" (?:scrap|cancel|drop|remove|delete|take off|forget(?: about)?|scratch|unlist|skip|withdraw|cross off|take back|take me off|take us off|remove me from|take my|unassign me from|release me from) (?P<what>(?:my |the |our |me from |me off )?[^\x00]{1,50}?)(?= $| ,| after| now| but| from| off| because| as | so | \x00|$)"),
    re.compile(r" (?:someone|somebody|anyone|anybody|(?:can|could|would|will) (?!not\b|i\b|we\b)[a-z]+(?: [a-z]+)??|who can) (?:else )?(?:please )?(?:take|do|bring|make|cover|have|want)(?: over)? (?P<what>(?:my|the|our) [^\x00]{1,40}?)(?= $| ,| from me| instead| for me| \x00|$)"),
    re.compile(r" (?:i|we) (?:have to|need to|must|will have to|had to) (?:drop|cancel|give up|pull out of|back out of|withdraw|pass on|bail on|skip)(?: on)? (?P<what>[^\x00]{1,40}?)(?= $| ,| sorry| \x00|$)"),
    re.compile(r"(?:^|(?<= so)|(?<= and)|(?<= ,)|(?<= but)) no (?:more )?(?P<what>[a-z ]{1,30}?)(?: from (?:me|us))?(?: after all| then| any ?more| now)*(?= $| ,)"),
)  # fmt: skip
_DROPS += (
    re.compile(r" (?:^ |(?<= ))(?:my |the |our )?(?P<what>[a-z ]{2,30}?) (?:is|are|has been|will be|got|was) (?:now )?(?:off(?= $| ,)|cancelled|canceled|off the list|not happening|ruined|burnt|burned)(?= $| ,)"),
    re.compile(r" (?:without|minus) (?:my |the |any )?(?P<what>[a-z ]{2,30}?)(?= $| ,)"),
)  # fmt: skip
_SWAP = re.compile(
    r" (?P<new>[^\x00,:]{2,60}?) (?:instead of|rather than|in place of|not) (?:the |my |a |our )?(?P<old>[^\x00,]{2,40}?)(?= $| ,| if| now| for| after| please| \x00|$)"
)
_SWAP3 = re.compile(
    r" (?:instead of|rather than|not) (?:the |my |a |our )?(?P<old>[^\x00,:]{2,40}?),? (?:i|we) (?:will|can|am|are) (?:now )?(?P<new>(?:bring|bringing|make|making|do|doing) [^\x00,]{2,60}?)(?= $| ,| if| now| for| please| \x00|$)"
)
_SWAP2 = re.compile(
    r" (?:swap|change|switch|replace|trade|exchange) (?:the |my |our )?(?P<old>[^\x00,]{2,40}?) (?:for|to|with|into) (?:the |a |an |some )?(?P<new>[^\x00,]{2,60}?)(?= $| ,| if| now| please| \x00|$)"
)
_RESIZE = re.compile(
    rf" (?:make|change|set|bump|up|update|increase|reduce|raise|switch) (?:that|it|mine|(?:my |the |our )?(?P<what>[a-z ]{{2,30}}?))(?: (?:to|up to|down to|for|enough for|be))*(?: (?P<for>for|servings for))? (?P<n>[0-9]{{1,6}}|{NUMBER})(?: (?:servings|portions|people|instead|now|please|after all))*(?= $| ,| if| because| as| not| instead| \x00|$)"
)
_DOUBLE = re.compile(r" (?:i will |i can |we will |can |will )?(?:(?:make|do|bring) (?:it |that |a )?)?(?P<word>double|triple|halve)(?: up)?(?: the| my| that| it| our| batch of| batch)?(?P<what>(?: [a-z]+){0,4}?)(?= $| ,| if| then| batch| now|$)")
_MY_FOR = re.compile(rf" (?:my|the|our) (?P<what>[a-z ]{{2,30}}?) (?:will (?:now )?|now |should |can |is now |is |to )+(?:be )?(?:for|feeds?|serves?) (?P<n>[0-9]{{1,4}}|{NUMBER})\b")
_IF_NEEDED = re.compile(r"\bif (?:it is |they are |more is |that is )?(?:needed|wanted|necessary|required|helpful|useful|short)|\bif (?:no ?one|nobody|no-one) else\b|\bif (?:you|we) (?:need|are short|run short|want|still need)\b|\bunless (?:someone|somebody|anyone|you|we)\b|\bin case\b")
_CONDITION = re.compile(r"\bif (?:i|we|my|the|there is time|time) |\bunless (?:i|we|it|the)\b|\bdepending on\b|\bassuming (?:i|we|my)\b|\bprovided\b")
_NOTHING = re.compile(r"\b(?:not bring(?:ing)?|bring(?:ing)?|with) (?:anything|nothing)\b|\bempty[- ]handed\b|\bnothing (?:from|to bring)\b")


_TO_OTHERS = re.compile(r"\bto (?:my|the|your|her|his|a|our|work|school|grandma|mum|church)\b(?! (?:potluck|supper|harvest|dinner|feast|party|get-together|gathering|barbecue|bbq|table))")
_OCCASION = re.compile(r"\b(?:potluck|supper|harvest|dinner|feast|party|get-together|gathering|barbecue|bbq|saturday|sunday|friday|for [0-9]{1,3})\b")


def _match_promise(name: str, promises: tuple[tuple[str, str], ...]) -> tuple[str, str] | None:
    """The promise a name means: the same words, or one holding the other."""
    said = {s for w in name.lower().split() for s in singulars(w)[-1:]} - {"the", "my", "our", "a", "an", "some", "of", "that"}
    if not said:
        return None
    best: tuple[int, tuple[str, str]] | None = None
    for promise in promises:
        have = {s for w in promise[1].lower().split() for s in singulars(w)[-1:]}
        common = len(said & have)
        if common and (said <= have or have <= said) and (best is None or common > best[0]):
            best = common, promise
    return best[1] if best else None


_BASE = frozenset(("bring", "make", "bake", "cook", "do", "contribute", "provide", "supply", "grab", "get", "take", "pick up", "buy"))
_COMMAND = next(i for i, (pattern, _) in enumerate(_OFFERS) if pattern.pattern.startswith("^"))


def _same_dish(one: str, other: str) -> bool:
    return {singulars(w)[-1] for w in one.lower().split()} == {singulars(w)[-1] for w in other.lower().split()}


def _pronoun(what: str) -> bool:
    return what.strip() in ("it", "that", "them", "this", "mine", "my dish", "the dish", "my thing", "those", "me", "my promise", "my bit", "the food", "my food", "my item")


def _own(what: str, context: ReplyContext) -> tuple[str | None, str, float]:
    """(promise id, dish, confidence) for words meaning something the writer promised."""
    what = what.strip()
    if (match := _match_promise(what, context.own_promises)) is not None:
        return match[0], match[1], 0.95
    if _pronoun(what) and len(context.own_promises) == 1:
        return context.own_promises[0][0], context.own_promises[0][1], 0.88
    return None, what, 0.5


def _topping(name: str, context: ReplyContext) -> str | None:
    plain = name.lower().strip()
    for topping in context.toppings:
        if plain == topping.lower() or set(singulars(plain)) & set(singulars(topping.lower())):
            return topping
    return None


def read_handover(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """ "Can someone else take my slaw?": asked about, for it is a wish and not yet so."""
    match = _DROPS[3].search(sentence.left)
    if match is None or not context.own_promises:
        return []
    promise, dish, confidence = _own(re.sub(r"^(?:the|my|our) ", "", match["what"].strip()), context)
    if promise is None:
        return []
    start, end = sentence.span_of(match)
    sentence.take(0, len(sentence.tokens))
    sure = min(confidence, 0.7 if sentence.question or " the " in match[0] else 0.85)
    return [DropPromise(promise, dish, start=start, end=end, confidence=sure)]


def read_withdrawals(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """What the writer no longer brings, or brings otherwise. Read before offers."""
    found: list[Intent] = []
    swap = _SWAP2.search(sentence.left) or _SWAP3.search(sentence.left) or _SWAP.search(sentence.left)
    if swap is not None and (old := _match_promise(swap["old"], context.own_promises)) is not None:
        first, last = sentence.token_range(swap, "new")
        lead = re.match(r" .*?(?:bring|bringing|make|making|do|doing|bake|baking|cook|it is|have|with|to) ", " " + swap["new"] + " ")
        first += len(lead[0].split()) if lead is not None else 0
        things = things_at(sentence, first, last)
        if things and things[0].known >= 0.5:
            thing = things[0]
            start, end = sentence.span_of(swap)
            sentence.take_match(swap)
            return [
                ChangePromise(
                    old[0], servings=thing.servings, quantity=thing.quantity, dish=thing.dish,
                    category=thing.category or None, start=start, end=end, confidence=0.92,
                )
            ]  # fmt: skip
    if sentence.question:
        return found
    for pattern in _DROPS:
        match = pattern.search(sentence.left)
        if match is None:
            continue
        what = re.sub(r"^(?:me from|me off|the|my|our|any) ", "", match["what"].strip())
        if what in ("anything", "nothing", "a thing", "much", "it work", "it", "sense") and not (what == "it" and context.own_promises):
            continue
        promise, dish, confidence = _own(what, context)
        if promise is None and (not context.own_promises or pattern in _DROPS[5:]) and pattern is not _DROPS[1]:
            continue
        if promise is None and _known(what) < 0.75:
            continue
        start, end = sentence.span_of(match)
        sentence.take_match(match)
        found.append(DropPromise(promise, dish, start=start, end=end, confidence=confidence))
    if found:
        return found
    if context.own_promises:
        found += _changes(sentence, context)
    return found


def _known(name: str) -> float:
    from planning.replies.english.things import known_thing

    return known_thing(name)[1]


def _changes(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    if (match := _DOUBLE.search(sentence.left)) is not None:
        promise, _, confidence = _own(match["what"] or "it", context)
        if promise is not None:
            start, end = sentence.span_of(match)
            factor = {"double": 2.0, "triple": 3.0, "halve": 0.5}[match["word"]]
            conditional = _IF_NEEDED.search(sentence.text) is not None
            sentence.take_match(match)
            return [ChangePromise(promise, factor=factor, start=start, end=end, confidence=0.6 if conditional else confidence)]
    for pattern in (_RESIZE, _MY_FOR):
        match = pattern.search(sentence.left)
        if match is None:
            continue
        what = (match["what"] or "it").strip()
        promise, _, confidence = _own(what, context)
        if promise is None:
            continue
        start, end = sentence.span_of(match)
        sentence.take_match(match)
        if what == "it" and context.asked != "servings" and match.groupdict().get("for") is None and number_of(match["n"]) <= 6:
            confidence = 0.5  # "make it 3" may mean people
        return [ChangePromise(promise, servings=float(number_of(match["n"])), start=start, end=end, confidence=confidence)]
    return []


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
        things = things_at(sentence, last, len(tokens))
        if not things:
            continue
        aux = (match.groupdict().get("aux") or "").strip()
        if aux.startswith(("was", "would")) and re.search(r"\bbut\b", sentence.text):
            continue  # "I was going to bring salad but someone has it"
        verb = (match.groupdict().get("verb") or "").strip()
        if pattern is _OFFERS[_COMMAND][0] and not aux and verb in _BASE and context.asked != "bring":
            continue  # "bring a chair each" tells others
        if match.groupdict().get("who") and not aux and verb in _BASE:
            confidence = 0.82 if context.addressed else 0.6  # "I bring cake" may be a habit
        return _added(sentence, context, things, first, aux, verb, confidence)
    match = _ON_ME.match(sentence.left)
    if match is not None:
        first, last = sentence.token_range(match, "what")
        things = things_at(sentence, first, last, bare=True)
        if things:
            return _added(sentence, context, things, first, "", "", 0.9)
    return []


BARE = 0.72
"""How sure a dish is that was only named, without an amount."""


def read_bare(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """ "slaw for 12": things without "I'll bring", in what is left of a reply to the bot."""
    found: list[Intent] = []
    i = 0
    edges = (",", "and", "+", "&", "-", "–", "plus", "with", "also", ":", "but")
    while i < len(sentence.tokens):
        plain = sentence.tokens[i].plain
        start_here = i == 0 or not sentence.free(i - 1) or sentence.tokens[i - 1].plain in edges
        if not sentence.free(i) or plain in edges or not start_here:
            i += 1
            continue
        things = things_at(sentence, i, len(sentence.tokens), bare=True)
        things = [t for t in things if not t.other]
        if not things:
            i += 1
            continue
        whole = things[-1].last >= len(sentence.tokens) or not sentence.free(things[-1].last) or sentence.tokens[things[-1].last].plain in (",", "and", "-", "+", "(", ":")
        if not whole:
            i += 1
            continue
        sized = all(t.servings or t.quantity or t.for_all for t in things)
        first, last = things[0].first, things[-1].last
        own_words = " ".join(t.plain for t in sentence.tokens[first:last])
        mine = re.search(r" (?:from|on) (?:me|us)\b", " " + own_words) is not None
        confidence = 0.9 if sized or mine or context.asked == "bring" else BARE
        found += _added(sentence, context, things, i, "", "", confidence)
        i = things[-1].last
    left = {t.plain for i, t in enumerate(sentence.tokens) if sentence.free(i) and t.plain[0].isalpha()}
    if left - _FILLER and context.asked != "bring":
        return []  # the dish is part of a sentence that says something else
    return found


_NAMES_ITSELF = re.compile(r"(?:a |some )?(?:salads?|breads?|desserts?|puddings?|drinks?|soups?|snacks?|sides?|nibbles)")
"""What names a kind of dish and, with an amount, the dish as well ("a salad for 10")."""
_FILLER = frozenset(
    ["and", "we", "will", "also", "so", "then", "for", "us", "too", "ok", "okay", "with", "from", "me", "all", "the", "of", "i", "be", "there", "sorry", "it", "is", "as", "usual", "again", "this", "time", "in", "are", "am", "can", "a", "an", "plus", "my", "our", "yes", "no", "coming", "now", "just", "that", "to", "you", "but", "here", "would", "love", "come", "happy", "well", "both", "good", "great", "sounds", "perfect", "fine", "count", "super", "nice", "sure", "definitely", "not", "make"]
)


def _added(
    sentence: Sentence, context: ReplyContext, things: list[Thing], first: int, aux: str, verb: str, confidence: float
) -> list[Intent]:
    found: list[Intent] = []
    choice = re.search(r" (?:or|either) ", sentence.text[sentence.text.find(things[0].dish.lower()) :]) is not None
    offered = aux.startswith(("could", "might", "may", "would", "was", "am thinking", "want", "plan"))
    buys = verb in ("buy", "buying", "pick up", "picking up", "grab", "grabbing")
    weak = verb in ("do", "doing", "get", "getting", "take", "taking", "cover", "covering", "handle", "handling", "have", "fix", "send", "sending", "serve", "roast", "smoke", "grill", "fixing", "on", "be on", "make", "making", "offer", "come with", "cook", "cooking")
    needed = _IF_NEEDED.search(sentence.text) is not None
    condition = _CONDITION.search(sentence.text) is not None
    for thing in things:
        if thing.vague and thing.category and (thing.servings or thing.quantity) and _NAMES_ITSELF.fullmatch(thing.dish):
            thing = replace(thing, vague=False, dish=thing.dish.removeprefix("a ").removeprefix("some "))
        if thing.other or (not thing.vague and thing.known < 0.3 and (weak or not context.addressed)):
            continue
        if not context.addressed and _TO_OTHERS.search(sentence.text):
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
        if (topping := _topping(thing.dish, context)) is not None:
            found.append(TakeTopping(topping, start=start, end=end, confidence=sure))
            sentence.take(first, thing.last)
            continue
        own = _match_promise(thing.dish, context.own_promises) if not thing.vague else None
        if own is not None and thing.category and _same_dish(own[1], thing.dish):
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
    match = re.match(r"^ (?:ok |so |and |maybe |perhaps |, )*(?:i|we) (?:can|could|will|would) (?:also |just )?(?:bring|make|bake|do) ", sentence.left)
    if match is not None and context.addressed:
        first, last = sentence.token_range(match)
        things = [t for t in things_at(sentence, last, len(sentence.tokens)) if (t.known >= 0.75 or t.vague) and not t.other]
        return _added(sentence, context, things, first, "could", "bring", 0.6) if things else []
    match = re.match(r"^ (?:ok |so |and )?(?:should|shall|can|could|may|what if|how about|would it help if|would it be ok if) (?:i|we) (?:do |just )?(?:bring|make|bake|do|brought|made)(?: along)? ", sentence.left)
    if match is None:
        match = re.match(r"^ (?:how about|what about) (?:if i (?:bring|make|brought|made) )?", sentence.left)
    if match is None or not context.addressed:
        return []
    first, last = sentence.token_range(match)
    things = [t for t in things_at(sentence, last, len(sentence.tokens)) if t.known >= 0.75 and not t.other]
    return _added(sentence, context, things, first, "could", "bring", 0.6) if things else []


_HOW_MANY = re.compile(
    rf"^ (?:(?:about|around|enough|for|roughly|maybe|say|like|probably|it|will|feed|feeds|serves|is|up|to|make) )*(?P<n>[0-9]{{1,6}}|{NUMBER})(?: (?:people|servings|portions|or so|i think|eaters|guests|ish|of us))*(?= $)"
)


def read_servings(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """Below "how many will it feed?": the number alone, for the newest promise."""
    match = _HOW_MANY.match(sentence.left)
    if match is None or not context.own_promises:
        return []
    start, end = sentence.span_of(match)
    n = float(number_of(match["n"]))
    return [ChangePromise(context.own_promises[-1][0], servings=n, start=start, end=end, confidence=0.92)]
