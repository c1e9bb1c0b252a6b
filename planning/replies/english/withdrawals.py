"""What the writer no longer brings, or brings otherwise: withdrawals, swaps, other amounts, somebody else's turn."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from dataclasses import replace

from planning.replies.english.lexicon import NUMBER, number_of
from planning.replies.english.mine import read_mine
from planning.replies.english.nouns import known_thing
from planning.replies.english.offers import IF_NEEDED
from planning.replies.english.own import ONE_MORE, match_promise, own_promise
from planning.replies.english.things import things_at
from planning.replies.intents import AddPromise, ChangePromise, DropPromise, Intent, ReplyContext, SetAnswer
from planning.replies.text import Sentence

_DROPS: tuple[re.Pattern[str], ...] = (
    re.compile(r" (?:i|we)? ?(?:can|will|am|are|could)? ?not (?:able to |going to |be able to |be )?(?:actually |now |after all |also |longer )*(?:bring|bringing|make|making|do|doing|bake|baking|cook|cooking|manage|face(?: making| doing| baking)?|supply|provide|get|handle|have time (?:to (?:make|bake|cook|do)|for)|offer) (?P<what>[^\x00]{1,60}?)(?= $| ,| after| any ?more| now| but| sorry| because| as | so | this| \x00|$)"),
    re.compile(r" (?:no longer|not) (?:bringing|making|doing|baking|cooking|able to (?:bring|make|do|bake)|going to (?:bring|make|do|bake)) (?P<what>[^\x00]{1,60}?)(?= $| ,| after| any ?more| now| but| sorry| because| as | so | \x00|$)"),
    re.compile(r" (?:scrap|ditch|nix|axe|lose|bin|abandon|cancel|drop(?! off\b)|remove|delete|take off|forget(?: about)?|scratch|unlist|skip|withdraw|cross off|take back|take me off|take us off|remove me from|take my|unassign me from|release me from) (?P<what>(?:my |the |our |me from |me off )?[^\x00]{1,50}?)(?= $| ,| after| now| but| from| off| because| as | so | \x00|$)"),
    re.compile(r"(?<! i)(?<! we) (?:someone|somebody|anyone|anybody|(?:can|could|would|will) (?!not\b|i\b|we\b)(?P<who>[^\W\d_]+(?: [^\W\d_]+)?)|who can) (?:else )?(?:please |be able to |mind |like to |want to |possibly )*(?:take|do|bring|make|cover|have|want|taking|doing|bringing|making|covering)(?: over)? (?P<what>(?:my|the|our) [^\x00]{1,40}?)(?= $| ,| from me| instead| for me| \x00|$)"),
    re.compile(r" (?:i|we) (?:have to|need to|must|will have to|had to) (?:drop|cancel|give up|pull out of|back out of|withdraw|pass on|bail on|skip)(?: on)? (?P<what>[^\x00]{1,40}?)(?= $| ,| sorry| \x00|$)"),
    re.compile(r"(?:^|(?<= so)|(?<= and)|(?<= ,)|(?<= but)|(?<= ok)|(?<= okay)|(?<= well)|(?<= fine)|(?<= sorry)|(?<= just)|(?<= only)|(?<= actually)) no (?:more )?(?P<what>[a-z ]{1,30}?)(?: from (?:me|us))?(?: after all| then| any ?more| now)*(?= $| ,)"),
)  # fmt: skip
_DROPS += (
    re.compile(r"(?:^|(?<= ,)|(?<= so)|(?<= but)|(?<= and)) (?:my |the |our |that )?(?P<what>[a-z ]{2,30}?)(?: ,)? (?:i|we) (?:will|can|shall|am|are|do) not (?:be able to |going to )?(?:do|make|bring|manage|doing|making|bringing|be doing|be making|be bringing|get)(?= $| ,| after| this| now| any| because| sorry)"),
    re.compile(r"(?:^|(?<= ,)|(?<= so)|(?<= but)) (?:my |the |our )?(?P<what>[a-z ]{2,30}?) (?:is|are) (?:now )?(?:a )?(?:no|no go|no-go|not happening|not going to happen|out|done for|dead|kaput)(?: from (?:me|us)| (?:i am )?(?:afraid|sorry))*(?= $| ,)"),
    re.compile(r" (?:^ |(?<= ))(?:my |the |our )?(?P<what>[a-z ]{2,30}?) (?:is|are|has been|will be|got|was) (?:now )?(?:off(?= $| ,)|cancelled|canceled|off the list|not happening|ruined|burnt|burned)(?= $| ,)"),
    re.compile(r" (?:without|minus) (?:my |the |any )?(?P<what>[a-z ]{2,30}?)(?= $| ,)"),
)  # fmt: skip
_SWAP = re.compile(
    r" (?P<new>[^\x00,:]{2,60}?)(?: ,)? (?:instead of|rather than|in place of|not) (?:the |my |a |our )?(?P<old>[^\x00,]{2,40}?)(?= $| ,| if| now| for| after| please| \x00|$)"
)
_SWAP3 = re.compile(
    r" (?:instead of|rather than|not) (?:the |my |a |our )?(?P<old>[^\x00,:]{2,40}?),? (?:i|we) (?:will|can|am|are|could|might|would|may|shall) (?:now )?(?P<new>(?:bring|bringing|make|making|do|doing) [^\x00,]{2,60}?)(?= $| ,| if| now| for| please| \x00|$)"
)
_SWAP2 = re.compile(
    r" (?:swap|change|switch|replace|trade|exchange|swapping|changing|switching|replacing|trading|exchanging)(?: out)? (?:the |my |our )?(?P<old>[^\x00,]{2,40}?) (?:for|to|with|into) (?:the |a |an |some )?(?P<new>[^\x00,]{2,60}?)(?= $| ,| if| now| please| \x00|$)"
)
_ARROW = re.compile(r"^ (?:(?:my|the|our|,) )*(?P<old>[a-z ]{2,40}?) → (?:now |a |an |some |the )*(?P<new>[a-z][^\x00,]{1,50}?)(?= $| ,)")
_CUED = re.compile(
    r"(?:^|(?<= ,)|(?<= :)|(?<= so)) (?P<cue>actually|scratch that|on second thoughts?|second thoughts?|change of plans?|changed my mind|new plan|update|correction|no wait|wait|wait no|sorry|hm+|plot twist|let us (?:make it|say|do)|make (?:it|that)|(?:make|call) mine|may i (?:do|make|bring)|can i (?:do|make|bring)|could i (?:do|make|bring)|rather|it is|it will be|will be)(?: (?:,|:|-|to|now|it is|it will be|will be|make it|make that|i will (?:do|make|bring)|going with|go with))* (?P<new>(?:a |an |some |the )?[a-z][^\x00,]{2,50}?)(?: (?P<instead>instead|rather|now|then))?(?= $| ,)"
)
"""A dish behind a word for a change of mind, from somebody who promised one."""
_STILL = re.compile(rf" (?:(?:,|still|also|again|the same|same size) )*(?:for|feeds|serves) (?:about )?(?P<n>[0-9]{{1,3}}|{NUMBER})(?= $| ,| people)")
_RECORD = re.compile(
    rf" (?:record|put|note|mark|list|write|enter|amend|correct) (?:it|that|mine) (?:down )?(?:as|at|to|for|up to) (?P<n>[0-9]{{1,3}}|{NUMBER})(?: (?:servings|portions|people|instead|now|please|then))*(?= $| ,)"
)
_INSTEAD = re.compile(
    r" (?:it|that|mine) (?:is|will be|has to be|is going to be|becomes|will have to be) (?:now )?(?P<new>(?:a |an |some )?[^\x00,]{2,60}?) (?:instead|now)(?= $| ,)"
)
"""What a dish turns into; asked about, for "it" may be something else."""
_RESIZE = re.compile(
    rf" (?:make|change|set|bump|up|update|increase|reduce|raise|switch|cut|trim|lower|scale|stretch) (?:that|it|mine|(?:my |the |our )?(?P<what>[a-z ]{{2,30}}?))(?: (?:to|up to|down to|for|enough for|be))*(?: (?P<for>for|servings for))? (?P<n>[0-9]{{1,6}}|{NUMBER})(?: (?:servings|portions|people|instead|now|please|after all))*(?= $| ,| if| because| as| not| instead| \x00|$)"
)
_DOUBLE = re.compile(
    r" (?:i will |i can |we will |can |will )?(?:(?:make|do|bring) (?:it |that |a )?)?(?P<word>double|triple|halve|twice)(?: up)?(?: as (?:much|many))?(?: the| my| that| it| our| batch of| batch)?(?P<what>(?: [a-z]+){0,4}?)(?= $| ,| if| then| batch| now|$)"
)
_MY_FOR = re.compile(
    rf" (?:my|the|our) (?P<what>[a-z ]{{2,30}}?) (?:will (?:now )?|now |should |can |is now |is |to )+(?:be )?(?:for|feeds?|serves?) (?P<n>[0-9]{{1,4}}|{NUMBER})\b"
)


_GIVE = re.compile(
    r" (?:give|pass|hand)(?: over)? (?P<what>(?:my|the|our) [^\x00]{1,40}?)(?: over| on)? to (?P<who>(?!me\b|us\b)[^\W\d_]+(?: [^\W\d_]+)?)(?= $| ,| instead| please)"
)


_TAKEN_BACK = re.compile(
    r" (?:forget|ignore|scrap|disregard|scratch|cancel) (?:what i (?:said|wrote|promised|offered)|my (?:offer|promise|message)|me) (?:about|of|re|on|regarding|to (?:bring|make)|bringing|making|doing) (?:the |my )?(?P<what>[^\x00]{1,40}?)(?= $| ,| please)"
)


def read_handover(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """ "Can someone else take my slaw?": asked about, for it is a wish and not yet so."""
    match = _GIVE.search(sentence.left) or _DROPS[3].search(sentence.left)
    if not context.own_promises:
        return []
    if (back := _TAKEN_BACK.search(sentence.left)) is not None:
        promise, dish, confidence = own_promise(back["what"], context)
        start, end = sentence.span_of(back)
        return [DropPromise(promise, dish, start=start, end=end, confidence=confidence)] if promise else []
    if match is None:
        return []
    promise, dish, confidence = own_promise(re.sub(r"^(?:the|my|our) ", "", match["what"].strip()), context)
    if promise is None:
        return []
    start, end = sentence.span_of(match)
    sentence.take(0, len(sentence.tokens))
    sure = min(confidence, 0.7 if sentence.question or " the " in match[0] else 0.85)
    named = (match["who"] or "").strip().split()
    to = next(
        (g for g, n in context.guests if g != context.writer and named and n and n.lower().split()[0] == named[0]), None
    )
    return [DropPromise(promise, dish, to, start=start, end=end, confidence=min(sure, 0.7) if to else sure)]


_ONLY = re.compile(rf" not [a-z ]{{2,40}} for {NUMBER}(?: ,)?(?: but)? (?:only|just) (?:for )?{NUMBER} ")


def read_withdrawals(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """What the writer no longer brings, or brings otherwise. Read before offers."""
    found: list[Intent] = []
    swap = _SWAP2.search(sentence.left) or _SWAP3.search(sentence.left) or _SWAP.search(sentence.left)
    if swap is not None and (old := match_promise(swap["old"], context.own_promises)) is not None:
        first, last = sentence.token_range(swap, "new")
        lead = re.match(
            r" (?:.*? )??(?:bring|bringing|make|making|do|doing|bake|baking|cook|it is|have|with|to) ",
            " " + swap["new"] + " ",
        )
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
    if len(context.own_promises) == 1 and (turned := _turned_into(sentence, context)):
        return turned
    if sentence.question:
        return found
    if len(context.own_promises) == 1 and (other := _INSTEAD.search(sentence.left)) is not None:
        first, last = sentence.token_range(other, "new")
        things = [t for t in things_at(sentence, first, last) if t.known >= 0.75 and not t.other and not t.vague]
        if len(things) == 1:
            start, end = sentence.span_of(other)
            sentence.take(0, len(sentence.tokens))
            thing = things[0]
            return [
                ChangePromise(
                    context.own_promises[0][0], servings=thing.servings, quantity=thing.quantity, dish=thing.dish,
                    category=thing.category or None, start=start, end=end, confidence=0.7,
                )
            ]  # fmt: skip
    if context.own_promises and _ONLY.search(sentence.text) and (smaller := read_mine(sentence, context)):
        return smaller
    for pattern in _DROPS:
        match = pattern.search(sentence.left)
        if match is None:
            continue
        what = re.sub(r"^(?:me from|me off|the|my|our|any) ", "", match["what"].strip())
        if what in ("anything", "nothing", "a thing", "much", "it work", "it", "sense") and not (
            what == "it" and context.own_promises
        ):
            continue
        promise, dish, confidence = own_promise(what, context)
        if promise is None and (not context.own_promises or pattern in _DROPS[5:]) and pattern is not _DROPS[1]:
            continue
        if promise is None and known_thing(what)[1] < 0.75:
            continue
        start, end = sentence.span_of(match)
        sentence.take_match(match)
        found.append(DropPromise(promise, dish, start=start, end=end, confidence=confidence))
    if found:  # "can't get cabbage, so no slaw": what is named is what is meant
        return [d for d in found if isinstance(d, DropPromise) and d.promise] or found
    if context.own_promises and not ONE_MORE.search(sentence.text):
        found += _changes(sentence, context) or read_mine(sentence, context)
    return found


def _turned_into(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """ "Actually pad thai", "may I make a cucumber salad instead?": another dish from somebody who promised one. Sure
    only where it says "instead"."""
    if ONE_MORE.search(sentence.text) or re.search(r" (?:as well|also|too|not|no|more) ", sentence.text):
        return []
    arrow = _ARROW.match(sentence.left)
    if arrow is not None and match_promise(arrow["old"], context.own_promises) is None:
        arrow = None
    match = arrow or _CUED.search(sentence.left)
    if match is None:
        return []
    instead = arrow is not None or bool(match["instead"]) or match["cue"] in ("make it", "make that", "make mine", "call mine")
    if match.re is _CUED and not instead and re.match(r"(?:may|can|could|it|will) ?", match["cue"]) is not None:
        return []  # "can I bring rolls" is one more dish
    first, last = sentence.token_range(match, "new")
    things = [t for t in things_at(sentence, first, last) if not t.other and not t.vague]
    if len(things) != 1 or things[0].known < 0.9 or match_promise(things[0].dish, context.own_promises) is not None:
        return []
    thing, last = things[0], max(last, things[0].last, sentence.token_range(match)[1])
    if (size := _STILL.match(sentence.text, sentence.offset(last) - 1)) is not None and not thing.servings:
        thing, last = replace(thing, servings=float(number_of(size["n"]))), last + len(size[0].split())
    start, end = sentence.span(sentence.token_range(match)[0], last)
    sentence.take(0, last)
    sure = 0.6 if sentence.question else 0.88 if instead else 0.7
    return [
        ChangePromise(
            context.own_promises[0][0], servings=thing.servings, quantity=thing.quantity, dish=thing.dish,
            category=thing.category or None, start=start, end=end, confidence=sure,
        )
    ]  # fmt: skip


_VISITED = re.compile(
    r" (?:my|our) (?:[a-z-]+ ){1,4}?(?:visits?|visiting|comes?|coming|joins?|joining|(?:is|are) (?:in town|here|staying|over|with us|around|free)"
    r"|stays?|staying|tags? along|tagging along|(?:will|can|may|wants? to|would (?:like|love) to|decided to) (?:also |too )?(?:be (?:here|there|in town|visiting|joining|coming)|come|join|visit))\b"
)
""" "Make it 3, my mom visits" counts people, whatever the writer brings."""


def _changes(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    if (match := _DOUBLE.search(sentence.left)) is not None:
        promise, _, confidence = own_promise(match["what"] or "it", context)
        if promise is not None:
            start, end = sentence.span_of(match)
            factor = {"double": 2.0, "twice": 2.0, "triple": 3.0, "halve": 0.5}[match["word"]]
            conditional = IF_NEEDED.search(sentence.text) is not None
            sentence.take_match(match)
            return [
                ChangePromise(
                    promise, factor=factor, start=start, end=end, confidence=0.6 if conditional else confidence
                )
            ]
    if len(context.own_promises) == 1 and (match := _RECORD.search(sentence.left)) is not None:
        start, end = sentence.span_of(match)
        sentence.take_match(match)
        n = float(number_of(match["n"]))
        return [ChangePromise(context.own_promises[0][0], servings=n, start=start, end=end, confidence=0.75)]
    for pattern in (_RESIZE, _MY_FOR):
        match = pattern.search(sentence.left)
        if match is None:
            continue
        what = (match["what"] or "it").strip()
        promise, _, confidence = own_promise(what, context)
        if promise is None or (what == "it" and _VISITED.search(sentence.text) is not None):
            continue
        start, end = sentence.span_of(match)
        sentence.take_match(match)
        if (
            what == "it"
            and context.asked != "servings"
            and match.groupdict().get("for") is None
            and number_of(match["n"]) <= 6
        ):
            confidence = 0.5  # "make it 3" may mean people
        return [
            ChangePromise(promise, servings=float(number_of(match["n"])), start=start, end=end, confidence=confidence)
        ]
    return []


def swapped(intents: list[Intent], plain: str) -> list[Intent]:
    """ "Scratch the slaw, I'll do iced tea for 25 instead": one dish given up and one offered instead are a swap."""
    drops = [i for i in intents if isinstance(i, DropPromise) and i.promise is not None]
    offers = [i for i in intents if isinstance(i, AddPromise) and not i.vague and i.by is None]
    if len(drops) != 1 or len(offers) != 1 or re.search(r"\binstead\b", plain) is None:
        return intents
    drop, offer = drops[0], offers[0]
    swap = ChangePromise(
        drop.promise or "", offer.servings, offer.quantity, offer.dish, offer.category or None,
        for_all=offer.for_all, start=min(drop.start, offer.start), end=max(drop.end, offer.end),
        confidence=min(drop.confidence, max(offer.confidence, 0.9 if offer.confidence >= 0.8 else 0.0)),
    )  # fmt: skip
    kept = [i for i in intents if i not in (drop, offer) and not (isinstance(i, SetAnswer) and i.implied)]
    return [*kept, swap]
