"""What is told of somebody's body and not of a list of foods: "milk kills me", "she can only manage soft food"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

from planning.potluck import Need
from planning.replies.english.foods import KIN, LIST, kin_of, last_kin, needs_of
from planning.replies.english.illness import hardened, is_severe, read_pregnant
from planning.replies.intents import Intent, ReplyContext, SetNeeds
from planning.replies.text import Sentence

_HARMS_ME = re.compile(
    rf" (?:do not|can not|never|no|not) (?:(?:eat|drink|have|do|touch|take) )?(?:any |the )?{LIST}(?: [^ ?]+){{0,5}}? (?:it|that|they|this|stuff|really|literally|would|will|just|always|,)* ?"
    r"(?:kills?|hurts?|wrecks?|destroys?|ruins?|floors?|makes? (?:me|us) (?:ill|sick|swell|itch|vomit|throw up)|sends? (?:me|us) to|gives? (?:me|us) (?:hives|cramps|a rash|the runs))(?<!gives)(?: (?:me|us|my (?:stomach|gut|guts|tummy|belly|insides)))?(?= |$)"
)
""" "Don't drink milk, it kills me": an order only in form."""
_WHO = rf"(?P<who>i|we|he|she|they|{KIN}|[a-z]+)"
_SOFT = r"(?:very |really |only |just |all |the )*(?:soft|softened|pureed|puréed|blended|liquid|liquidised|liquidized|minced|mushy|smooth|mashed)(?: ?-? ?(?:up|down))?(?: and (?:moist|mushy|pureed|mashed|bland))?"
_FOODS = r"(?: (?:foods?|diet|diets|meals?|things|stuff|options?|textures?))"
_SOFT_FOOD = re.compile(
    rf" {_WHO} (?:(?:can|could|must|has to|have to|needs? to|is able to|are able to|is|are|am|will|is only able to|really|still|also|now|currently) )*(?:(?:only|just) )?(?:manage|manages|eat|eats|have|take|takes|swallow|handle|do|need|needs|on|allowed|get down|keep down)(?: to (?:eat|have))? (?:(?:only|just|a|an|strictly|everything|it|all|her food|his food|food|their food|mostly|things) )*{_SOFT}(?:{_FOODS}|(?= $| ,| since| because| after| as | at | for | now| please| and ))"
)
_SWALLOWS = re.compile(
    rf" {_WHO} (?:(?:really|still|also|now) )*(?:can not (?:really )?(?:chew|swallow)(?= $| ,| since| because| after| well| properly| much| anything| solid| hard| as | any ?more)|(?:has|have|with) (?:(?:got|some|a lot of|real|big|bad) )*(?:trouble|problems?|difficulty|difficulties|issues|a hard time) (?:with )?(?:chewing|swallowing|to swallow|to chew)|(?:has|have) dysphagia|(?:has|have) no teeth(?: (?:left|in))?|is on (?:thickened|pureed|soft) [a-z]+|chokes (?:easily|on (?:everything|most things)))"
)
_JOKES = re.compile(r" (?:ice cream|toys?|play|spot|landing|launch|drinks?|voice|music|lighting|boiled) ")


def read_dangers(sentence: Sentence, context: ReplyContext, earlier: str) -> list[Intent]:
    """Needs told as what happens to somebody; what is read is taken out of the sentence."""
    if sentence.question:
        return []
    return [*_harms(sentence, context), *_soft_food(sentence, context, earlier)]


def told_apart(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """A pregnancy in a sentence that is passed over for its other words ("not announced yet")."""
    return read_pregnant(sentence, context)


def _harms(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    match = _HARMS_ME.search(sentence.left)
    if match is None or not re.search(r" (?:me|us|my [a-z]+)(?= |$)", match[0]):
        return []
    how = "intolerance" if re.search(r" (?:lactose|intoleran[a-z]+) ", sentence.text) else "allergy"
    needs = needs_of(match["list"], 1, how)
    if is_severe(sentence):
        needs = hardened(needs)
    start, end = sentence.span_of(match)
    sentence.take_match(match)
    return [SetNeeds(context.writer, needs, start=start, end=end, confidence=0.9)]


def _soft_food(sentence: Sentence, context: ReplyContext, earlier: str) -> list[Intent]:
    match = _SOFT_FOOD.search(sentence.left) or _SWALLOWS.search(sentence.left)
    if match is None or _JOKES.search(sentence.text):
        return []
    who = match["who"]
    if who in (
        "you",
        "it",
        "that",
        "this",
        "everyone",
        "who",
        "people",
        "to",
        "should",
        "will",
        "there",
        "babies",
        "cats",
        "dogs",
    ):
        return []
    member = kin_of(match)
    if member is None and who in ("he", "she", "they"):
        member = last_kin(f"{earlier} {sentence.text[: match.start() + 1]} ")
    start, end = sentence.span_of(match)
    sentence.take_match(match)
    return [SetNeeds(context.writer, (Need(SOFT_FOOD, 1, ""),), False, member, start=start, end=end, confidence=0.88)]


SOFT_FOOD = "soft-food"
"""The need's id in `data/diets.csv`."""
