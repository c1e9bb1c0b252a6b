"""Which promise of the writer's, or which topping of the bar, words mean."""

from __future__ import annotations

import re

from planning.bar import match_topping
from planning.replies.english.lexicon import singulars
from planning.replies.english.things import Thing
from planning.replies.intents import ReplyContext

ONE_MORE = re.compile(r" (?:another|a second|one more|an extra|a further|an additional) ")
"""What makes a dish of the same name a new one."""
_ASIDE = frozenset(("in", "with", "on", "without", "into", "from", "has", "than", "like", "recipe"))
"""Words that put the named dish beside what is spoken of ("no mayo in the slaw")."""


def match_promise(name: str, promises: tuple[tuple[str, str], ...]) -> tuple[str, str] | None:
    """The promise a name means: the same words, or one holding the other."""
    said = {s for w in name.lower().split() for s in singulars(w)[-1:]} - {
        "the",
        "my",
        "our",
        "a",
        "an",
        "some",
        "of",
        "that",
    }
    if not said:
        return None
    beside = next((i for i, w in enumerate(name.lower().split()) if w in _ASIDE), None)
    if beside is not None and beside > 0:
        name = " ".join(name.lower().split()[:beside])  # "mayo in the slaw" is about mayo
        return match_promise(name, promises)
    best: tuple[int, tuple[str, str]] | None = None
    for promise in promises:
        have = {s for w in promise[1].lower().split() for s in singulars(w)[-1:]}
        common = len(said & have)
        if common and (said <= have or have <= said) and (best is None or common > best[0]):
            best = common, promise
    return best[1] if best else None


def same_dish(one: str, other: str) -> bool:
    return {singulars(w)[-1] for w in one.lower().split()} == {singulars(w)[-1] for w in other.lower().split()}


def _pronoun(what: str) -> bool:
    return what.strip() in (
        "it",
        "that",
        "them",
        "this",
        "mine",
        "my dish",
        "the dish",
        "my thing",
        "those",
        "me",
        "my promise",
        "my bit",
        "the food",
        "my food",
        "my item",
    )


def own_promise(what: str, context: ReplyContext) -> tuple[str | None, str, float]:
    """(promise id, dish, confidence) for words meaning something the writer promised."""
    what = what.strip()
    if (match := match_promise(what, context.own_promises)) is not None:
        return match[0], match[1], 0.95
    if _pronoun(what) and len(context.own_promises) == 1:
        return context.own_promises[0][0], context.own_promises[0][1], 0.88
    return None, what, 0.5


_OWN_DISHES = ("main", "salad", "bread", "dessert", "drink", "supplies")
"""What has a place of its own on the table, so that a like-named topping does not swallow it."""


def topping_of(thing: Thing, context: ReplyContext) -> str | None:
    """The topping of the bar a thing is; a dish with servings ("chili for 12") is a dish."""
    if not context.toppings and not context.bar_base:
        return None
    plain = thing.dish.lower().strip()
    for topping in context.toppings:
        if plain == topping.lower() or set(singulars(plain)) & set(singulars(topping.lower())):
            return topping
    last = [t for t in context.toppings if set(singulars(plain)) & set(singulars(t.lower().split()[-1]))]
    if len(last) == 1 and not thing.servings:
        return last[0]  # "the cheese" is the bar's grated cheese
    if thing.servings or thing.category in _OWN_DISHES:
        return None
    matched = match_topping(context.bar_base, plain) if context.bar_base else None
    return matched or (plain if thing.category == "topping" else None)
