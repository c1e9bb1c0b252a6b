"""English: the words in `data/words_en.csv`, the rules in this folder, put together in `read`."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from functools import cache, partial

from planning.potluck import Answer
from planning.replies.decide import tidy, with_implied
from planning.replies.english import (
    answers,
    arrivals,
    asking,
    bare,
    beside,
    clauses,
    company,
    dangers,
    doubt,
    elsewhere,
    heat,
    hedged,
    hosting,
    household,
    illness,
    inside,
    kin,
    kintold,
    listening,
    needs,
    offers,
    open_chat,
    others,
    people,
    questions,
    regret,
    reported,
    settle,
    short,
    spelling,
    terse,
    traps,
    turned,
    typed,
    whole,
    withdrawals,
    wrapping,
)
from planning.replies.english.lexicon import neutral, singulars, words
from planning.replies.english.lost import for_us
from planning.replies.intents import (
    AddPromise,
    Ask,
    ChangePromise,
    DropPromise,
    Intent,
    Late,
    ReplyContext,
    SetAnswer,
    SetNeeds,
    SetParty,
    TakeTopping,
    Undo,
)  # fmt: skip
from planning.replies.text import DISMAY, Message, Sentence, cut, numbered


@cache
def _expand() -> dict[str, str]:
    return words("expand")


MOST_WORDS, MOST_WORDS_IN_ALL = 70, 210
"""A longer sentence is a story and no answer, and the time for one grows with the square of its words; a message is
read up to so many words in all."""
MOST_SENTENCES = 80
"""More are never read (they would be more words)."""
_IS_BEFORE = frozenset(
    (
        "tagging", "staying", "visiting", "driving", "working", "having", "making", "doing", "going", "getting", "still", "too", "so",
        "very", "really", "probably", "definitely", "back", "home", "free", "busy", "poorly", "taking", "tied", "stuck", "snowed", "taken", "off", "done", "ready", "cancelled", "gone", "burnt", "ruined",
        "on", "vegan", "vegetarian", "allergic", "coming", "not", "gluten", "lactose", "celiac", "coeliac", "bringing",
        "ill", "sick", "mine", "expecting", "pregnant", "diabetic", "kosher", "halal", "severely", "highly", "also", "anaphylactic",
        "lactose", "dairy", "egg", "only", "got", "in", "out", "away", "a", "an", "pescatarian", "intolerant", "veggie", "covered", "from", "joining",
    )
)  # fmt: skip
_YEARS = re.compile(r"(?<=[0-9 ])y[/.]o(?!\w)", re.IGNORECASE)
_ISH = re.compile(r"(?<=[a-z0-9])-(?=ish\b)", re.IGNORECASE)
_FEWER = re.compile(
    r"(?<![^\s,(])-(?=[1-9][0-9]? (?:from us|of us|adults?|kids?|child|people|person)\b)", re.IGNORECASE
)
_HYPHENED = re.compile(r"-(?=(?:intolerant|intolerance|allergy|allergic|sensitive)\b)|(?<=\bunder)-(?=[0-9]|(?:one|two|three|four|five|six)s?\b)", re.IGNORECASE)


__all__ = ["as_to_the_board", "for_us", "message_of", "overheard", "people", "read"]


def message_of(text: str) -> Message:
    """The message in plain words. "ill bring" is "I'll bring"; "I am ill" stays."""
    text = DISMAY.sub(lambda m: " " * len(m[0]), text)
    text = _FEWER.sub("−", _YEARS.sub("yo ", _HYPHENED.sub(" ", text)))
    text = _ISH.sub(" ", text)
    fixed = typed.straight(spelling.undictated(text))  # as long as before: places must not move
    slips = spelling.slips(fixed, _expand())
    message = cut(fixed, _expand() | slips if slips else _expand(), neutral(), _IS_BEFORE, typed.written(fixed))
    some = message.sentences[:MOST_SENTENCES]
    message = replace(message, sentences=some, mended=frozenset(slips), numbered=numbered(text))
    return turned.straightened(kintold.parted(wrapping.unwrapped(message)))


def read(
    message: Message, context: ReplyContext, below: Below | None = None
) -> tuple[list[Intent], list[str]]:
    """All that the message says for us, and the reasons for what was passed over."""
    found: list[Intent] = []
    passed: list[str] = []
    message = traps.behind_joke(message)
    if traps.joking(message):
        return [], ["joke"]
    message = wrapping.unwrapped(message, context.name)
    if not message.sentences and context.addressed and any(s in _APPROVING for s in message.symbols):
        return [SetAnswer(context.writer, Answer.YES, confidence=0.6)], []
    if signs := terse.read_signs(message, context):
        return signs, []
    plain = not context.addressed and any(answers.plain_yes(s) for s in message.sentences)
    chatted, context = context, replace(context, replying_to="board") if plain else context
    hosted, unhosted = _hosted(message, chatted)
    found += hosted
    budget, earlier, sentences = MOST_WORDS_IN_ALL, "", [part for whole in unhosted for part in _parts(whole)]
    for before, sentence in zip([None, *sentences], sentences, strict=False):
        earlier = f"{earlier} . {before.text.strip()}"[-600:] if before is not None else ""
        budget -= max(5, len(sentence.tokens))  # so that not more than 42 sentences are read
        if len(sentence.tokens) > MOST_WORDS or budget < 0:
            passed.append("long")
            continue
        read_so_far = len(found)
        why = _one(sentence, context, found, earlier)
        if len(found) == read_so_far and context.addressed and why not in ("called", "hypothetical", "reported"):
            found += clauses.read_each(sentence, partial(_clause, context))
        if why is not None and len(found) == read_so_far:
            passed.append(why)
    found = settle.settle(illness.harden(message, found), context)
    if len(found) > 1:  # "scratch that, we can come": the correction itself is what counts
        found = [i for i in found if not isinstance(i, Undo)] or found[:1]
    found = withdrawals.swapped(found, message.plain)
    if any(isinstance(i, AddPromise) and i.confidence >= 0.85 for i in found):  # one list, over several lines
        found = [
            replace(i, confidence=0.85) if isinstance(i, AddPromise) and i.confidence == bare.BARE else i for i in found
        ]
    found = elsewhere.without_the_absent(message, found, context)
    found = household.told(message, beside.apart(message, found, context), context)
    found = hedged.told(message, doubt.doubt(message, found, context), context)
    found = whole.settled(message, found, context)
    found = regret.told(message, found, context)
    found = spelling.less_sure(message, found)
    if not chatted.addressed:
        below = below or as_to_the_board(message, chatted)
        addressed = below.found
        answered = [] if below.passed else open_chat.composed(message, addressed, chatted)
        if answered and not any(isinstance(i, DropPromise) for i in found):
            return answered, passed
        if not plain:
            if open_chat.SUPPER.search(message.plain) is not None:
                public = (
                    _in_the_open(message, addressed, chatted, supper=True) if open_chat.worth_a_look(message) else []
                )
                errand = open_chat.TO_DO.search(message.plain) is not None
                return [
                    *public,
                    *(i for i in found if not (public or errand) or not isinstance(i, (SetAnswer, SetParty))),
                ], passed
            public = _in_the_open(message, addressed, chatted) if open_chat.worth_a_look(message) else []
            return [
                *public,
                *(i for i in found if not isinstance(i, (SetAnswer, Ask, SetParty)) and i not in public),
            ], passed
        found = [  # "I'm in" says that all of it is for us
            replace(i, confidence=0.92) if i.confidence >= 0.85 and not isinstance(i, (Ask, SetNeeds)) else i
            for i in found
        ]
    return found, passed


_THEY_DID = re.compile(
    r"\bof us (?:(?!(?:invited|interested|excited|needed|confirmed|committed|expected|booked|tired)\b)[a-z]{2,}ed|were|went|saw|had|did|ate|sat|took|got) (?!to come)"
)
""" "3 of us watched it" tells of what was."""


def overheard(message: Message, below: Below, context: ReplyContext) -> bool:
    """Whether what was said to nobody in the open group is to be taken as written to the bot; `below` is what it says
    as to the board."""
    if context.replying_to is not None or message.quoted or traps.joking(message) or _THEY_DID.search(message.plain):
        return False
    found = below.found
    if below.passed or open_chat.asks_them(message):
        return False
    if arrivals.for_us(message, found, context):
        return True
    return open_chat.listed(message, found, context) or listening.for_us(
        message, with_implied(tidy(found), context), context
    )


def _one(sentence: Sentence, context: ReplyContext, found: list[Intent], earlier: str) -> str | None:
    """Adds to `found` what one sentence says; the reason where it was passed over."""
    ordered = _ORDER.match(sentence.text) is not None
    if ordered:
        sentence = Sentence(sentence.tokens, False)
    handed = withdrawals.read_handover(sentence, context)
    if handed:
        found += handed
        return None
    sentence = reported.spoken_for(sentence) if context.addressed else sentence
    trap = traps.blocked(sentence, context)
    if trap == "called":
        return trap
    if trap not in ("hypothetical", "past"):
        endangered = dangers.read_dangers(sentence, context, earlier)
        if trap == "reported" and context.addressed:
            endangered += dangers.told_apart(sentence, context)
        found += endangered
        if endangered and trap is not None:
            return None
    undo = questions.read_undo(sentence, context)
    found += undo
    if undo and undo[0].confidence >= 0.8:
        if meant := _behind_undo(sentence, context, earlier):
            found[:] = [*(i for i in found if i not in undo), *meant]  # "scratch that, not coming"
        return None
    if trap in (None, "others") and (offered := offers.read_plain_offer_question(sentence, context)):
        found += offered
        return None
    asked = [] if undo or ordered else terse.read_terse(sentence, context) or questions.read_question(sentence, context)
    if not undo and not asked and not ordered:
        asked = asking.read_loosely(sentence, context, trap)
    found += asked
    if asked:
        return None
    if trap in (None, "reported") and context.addressed and (told := reported.told_of(sentence, context)):
        heard = [i for part in told for i in others.read_others(part, context) or needs.read_needs(part, context)]
        found += [replace(i, confidence=min(i.confidence, 0.7)) for i in heard]
        if heard:
            return None
    if trap == "others" and context.own_promises and (given_up := _no_more(sentence, context)):
        found += given_up
        return None
    if trap in ("others", "hypothetical", "past") and (whole := short.read_short(sentence, context)) is not None:
        found.append(whole)  # "don't count on me", "would if I could"
        return None
    if trap is not None:
        if trap in ("reported", "others", "elsewhere"):
            found += settle.read_told(sentence, context, earlier)  # "the doctor said I'm allergic to nuts"
        elif trap == "past" and context.addressed:
            found += needs.read_withdrawn(sentence, context)  # "remove the egg allergy, it was a mistake"
        return trap
    found += _with_asides(sentence, context, found, earlier)
    return None


def _behind_undo(sentence: Sentence, context: ReplyContext, earlier: str) -> list[Intent]:
    """What is said in place of what is taken back."""
    rest = [t for k, t in enumerate(sentence.tokens) if sentence.free(k)]
    while rest and rest[0].plain in (",", "-", "and", "but", "so"):
        rest = rest[1:]
    meant: list[Intent] = []
    if len(rest) > 1:
        _one(Sentence(rest, sentence.question), context, meant, earlier)
    return [i for i in meant if isinstance(i, (SetAnswer, SetParty, AddPromise)) and i.confidence >= 0.8]


def _no_more(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """ "No more slaw", from whoever promised it."""
    if not sentence.text.startswith(" no more "):
        return []
    return [i for i in withdrawals.read_withdrawals(sentence, context) if isinstance(i, DropPromise) and i.promise]


def _clause(context: ReplyContext, part: Sentence, found: list[Intent]) -> None:
    """Adds what one clause says by itself."""
    if _one(part, context, clause := list(found), "") is None:
        found[:] = clause


@dataclass(frozen=True)
class Below:
    """What a message in the open group would say below the board: as `read` tells it, and the message it took from."""

    found: list[Intent]
    passed: list[str]
    message: Message


def as_to_the_board(message: Message, context: ReplyContext) -> Below:
    """What the message would say below the board, though nobody wrote to the bot; a long one says nothing."""
    fresh = open_chat.again(message)
    if sum(len(s.tokens) for s in message.sentences) > MOST_WORDS:
        return Below([], [], fresh)
    return Below(*read(fresh, replace(context, replying_to="board")), fresh)


def _in_the_open(message: Message, found: list[Intent], context: ReplyContext, *, supper: bool = False) -> list[Intent]:
    """Who comes, of what it says as to the board; `supper`: beside a word for it."""
    if supper:
        if any(doubt.unread(s, found, context).content > 0 for s in message.sentences):
            return []  # "we're coming to dig on Saturday"
        return open_chat.beside_supper(found, context)
    return open_chat.answered(message, found, context)


def _hosted(message: Message, context: ReplyContext) -> tuple[list[Intent], list[Sentence]]:
    """What the host says of the potluck itself, and the sentences left to be read."""
    found: list[Intent] = []
    left: list[Sentence] = []
    for sentence in message.sentences:
        if len(sentence.tokens) > MOST_WORDS:
            left.append(sentence)
            continue
        said, rest = hosting.read_hosting(sentence, context)
        found += said
        left += rest
    return found, left


_ORDER = re.compile(
    r"^ (?:(?:please|hey|bot|ok|so|and|,) )*(?:can|could|would|will) you (?:please )?(?:change|make|put|mark|note|update|count|take|remove|set) "
)
"""A question only in form."""
_COMES_OR_NOT = re.compile(r"\b(?:com(?:e|ing)|make it|be there|join|attend|count (?:me|us) out|(?:am|are) out)\b")
_APPROVING = frozenset("👍✅🙋🙌👌💯🫡✔☑🤝")
_ASKS_AFTER = re.compile(
    r"^(?:and |but |so |also |ok )?(?:what|when|where|who|how|which|is there|are there|do you|do we|did i|did we|am i|are we|can i|can we"
    r"|should i|shall i|is (?:that|it|this) (?:ok|okay|al+ ?right|fine|possible|allowed|cool|good)|would that be|(?:can|could|would|will) (?:you|someone|somebody|everyone|people|whoever|they|the|folks|anyone))\b"
)


_TAG = re.compile(
    r"(?:(?:is|if|would) (?:that|it|this) (?:is |be )?)?(?:ok|okay|all ?right|alright|right|yes|fine|no problem|deal|happy|good|sounds? good|what do you (?:all )?think|thoughts|works?|see|huh|eh|innit|no)(?: with you| by you)?$"
)


def _parts(sentence: Sentence) -> list[Sentence]:
    """ "We'd love to come, where is it?": the statement, and the question after it."""
    if not sentence.question:
        return [sentence]
    comma = next((k for k in reversed(range(len(sentence.tokens))) if sentence.tokens[k].plain == ","), 0)
    if comma and _TAG.match(" ".join(t.plain for t in sentence.tokens[comma + 1 :])):
        return [Sentence(sentence.tokens[:comma], False)]  # "my brother wants to come as well, ok?"
    for i, token in enumerate(sentence.tokens):
        if token.plain in (",", "-", "–", ":") and i and i + 1 < len(sentence.tokens):
            rest = sentence.tokens[i + 1 :]
            if _ASKS_AFTER.match(" ".join(t.plain for t in rest)):
                return [Sentence(sentence.tokens[:i], False), Sentence(rest, True)]
    return [sentence]


MOST_WORDS_OF_A_DISH = 6


def _with_asides(sentence: Sentence, context: ReplyContext, before: list[Intent], earlier: str) -> list[Intent]:
    """The statement read without its words about cooking and the other cook, which then go to its dishes."""
    if people.divide_last(sentence, before):
        return []
    if heat.read_weight(sentence, before) or bare.read_amount(sentence, before):
        return []
    cooler, heats = heat.split(sentence)
    if heats and not cooler.tokens:
        before[:] = heat.attach(before, heats)  # a sentence of its own, about the dish before it
        return []
    alone, other = company.split(cooler, context)
    if other is not None:
        shared = company.attach(_statement(alone, context, earlier), other)
        if shared is not None:
            return heat.frozen(heat.attach(shared, heats), sentence)
        cooler = heat.split(sentence)[0]
    if heats:
        found = _statement(cooler, context, earlier)
        if any(isinstance(i, (AddPromise, ChangePromise, TakeTopping)) for i in found):
            return heat.frozen(heat.attach(found, heats), sentence)
        if context.addressed and not found and len(cooler.tokens) <= MOST_WORDS_OF_A_DISH:
            # Nothing else is baked for 40 minutes than a dish, however odd its name.
            named = bare.read_bare(Sentence(cooler.tokens, False), replace(context, replying_to="question:bring"))
            dishes = [replace(i, confidence=min(i.confidence, 0.85)) for i in named if isinstance(i, AddPromise)]
            if not dishes:
                dishes = bare.read_heated(Sentence(cooler.tokens, False), context)
            if len(dishes) == 1 and not dishes[0].vague:
                return heat.frozen(heat.attach([*dishes], heats), sentence)
    return heat.frozen(_statement(Sentence(sentence.tokens, sentence.question), context, earlier), sentence)


_BRINGS_OWN = re.compile(
    r" (?:bring|bringing|have|having|eat|eating|take|taking) (?:along )?(?:my|our|her|his|their) own (?:[a-z-]+ )?(?:milk|food|meal|meals|plate|lunch|dinner|snacks?|drinks?|bread|bun|bottle|stuff|thing|things|something)(?= )(?! (?:for [0-9]|to share))"
)
"""What is brought for oneself is nothing for the table ("I bring my own milk")."""


def _counted_anew(sentence: Sentence, context: ReplyContext) -> bool:
    """Whether a sentence says how many come now, whoever stays away ("make it 3, our teen has a match")."""
    if context.party is None or not any(t.plain in ("not", "has", "have", "is", "are", "stays", "stay") for t in sentence.tokens):
        return False
    told = people.read_people(Sentence(sentence.tokens, sentence.question), context)
    return any(isinstance(i, SetParty) and not i.relative and i.confidence >= 0.75 for i in told)


def _statement(sentence: Sentence, context: ReplyContext, earlier: str) -> list[Intent]:
    found: list[Intent] = []
    arriving = arrivals.read_arrival(sentence, context)
    found += arriving or questions.read_late(sentence, context)
    found += needs.read_needs(sentence, context, earlier)
    found += illness.read_pregnant(sentence, context)
    if context.addressed and not any(isinstance(i, SetNeeds) for i in found):
        found += illness.read_lost(sentence, context) or illness.read_kept(sentence, context)
    if context.asked == "servings" and (many := bare.read_servings(sentence, context)):
        return [*found, *many]
    if sentence.question:
        if context.asked == "bring" and (named := bare.read_bare(sentence, context)):
            return [*found, *(replace(i, confidence=min(i.confidence, doubt.DOUBTFUL)) for i in named)]
        if context.own_promises and (swaps := withdrawals.read_withdrawals(sentence, context)):
            return [*found, *(replace(i, confidence=min(i.confidence, doubt.DOUBTFUL)) for i in swaps)]
        return [*found, *(kin.read_may_bring(sentence, context) or offers.read_offer_question(sentence, context))]
    if context.asked == "diets" and any(isinstance(i, SetNeeds) for i in found):
        return found
    found += withdrawals.read_withdrawals(sentence, context)
    if not arriving and not _counted_anew(sentence, context) and (absent := kin.read_absent(sentence, context)):
        return [*found, *absent]
    found += others.read_others(sentence, context)
    given = arrivals.without_its_no(answers.read_answer(sentence, context), arriving)
    # "gluten is a no for me": what said no to a food is no answer.
    given = [i for i in given if not any(isinstance(n, SetNeeds) and n.start <= i.start < n.end for n in found)]
    told = [o for o in found if isinstance(o, SetAnswer) and o.who != context.writer]
    given = [i for i in given if not any(o.start <= i.start and i.end <= o.end for o in told)]  # "put Mei down as a maybe" says nothing of the writer
    given = [i for i in given if not any(isinstance(n, DropPromise) and n.start <= i.start < n.end for n in found)]
    if any(isinstance(i, DropPromise) for i in found) and not _COMES_OR_NOT.search(sentence.text):
        given = [
            i for i in given if not (isinstance(i, SetAnswer) and i.answer is Answer.NO)
        ]  # "I have to bail on the slaw"
    found += given
    found += people.read_people(sentence, context)
    offered = [] if _BRINGS_OWN.search(sentence.text) else offers.read_promises(sentence, context)
    for offer in offered:  # "I'll see to the rolls" is no "we'll see"
        found = [i for i in found if not (isinstance(i, SetAnswer) and offer.start <= i.start and i.end <= offer.end)]
    found += offered
    own = _BRINGS_OWN.search(sentence.text) is not None
    if context.addressed and not own and not any(isinstance(i, (Late, AddPromise)) for i in found):
        for intent in given:  # what said yes or no is no dish
            for k, token in enumerate(sentence.tokens):
                if intent.start <= token.start < intent.end:
                    sentence.take(k, k + 1)
        found += bare.read_bare(sentence, context) or inside.read_inside(sentence, context)
    eaten = {n.need for i in found if isinstance(i, SetNeeds) for n in i.needs}
    if eaten:  # "put me on low sodium" brings nothing
        found = [i for i in found if not (isinstance(i, AddPromise) and words("diet").get(i.dish.lower()) in eaten)]
    return _without_base(found, sentence, context)


def _without_base(found: list[Intent], sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """ "Cheese for the potatoes": what a topping of the bar is for is not brought."""
    if not context.bar_base or not any(isinstance(i, TakeTopping) for i in found):
        return found
    base = {s for word in context.bar_base.lower().split() for s in singulars(word)}
    return [
        i
        for i in found
        if not (isinstance(i, AddPromise) and base.intersection(singulars(i.dish.lower().split()[-1])))
        or f" for the {i.dish.lower()} " not in sentence.text
    ]
