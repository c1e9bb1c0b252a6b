"""What is told to be in a dish, beside its promise or later."""

from __future__ import annotations

import re

from bot.context import Turn
from planning.changes import Actor, change_promise
from planning.diets.contents import PART_OF_A_DISH, Told, contents_told
from planning.potluck import Promise

MOST = 40
LONGEST = 100


def with_contents(turn: Turn, found: Promise, said: Told, by: Actor | None = None) -> bool:
    """Added to the list there is; where there is none the name says it, for a list would say that all is told.

    What is said not to be in it stands there in the cook's own words: it takes nothing off what is listed. `by`: in
    whose right, where it is not the writer's dish (what is told to be in it is taken from anybody)."""
    actor = by or turn.actor
    name = found.dish.casefold()
    held = [w for w in said.holds if w not in (found.ingredients or ()) and w not in name]
    other = [w for w in (*said.without, *said.besides) if w not in name]
    if found.ingredients is not None:
        if not held:
            return False
        listed = (*found.ingredients, *held)[:MOST]
        turn.change(change_promise(turn.potluck, actor, found.id, ingredients=listed), "did-contains")
        return True
    joint = " con " if turn.voice.language == "es" else " with "
    made = found.dish
    if held:
        made += (", " if joint in made else joint) + ", ".join(held)
    if other:
        made += ", " + ", ".join(other)
    if made == found.dish:
        return False
    turn.change(change_promise(turn.potluck, actor, found.id, dish=made[:LONGEST]), "did-contains")
    return True


def told_beside(turn: Turn, made: Promise, words: str) -> None:
    """ "An apple pie. Egg glaze on top": what the message that promises a dish says besides is in that dish."""
    name = set(made.dish.casefold().split())
    for said in contents_told(words):
        about = said.dish.casefold().split()
        if not about or about[-1] in PART_OF_A_DISH or name & {*about, *(w.removesuffix("s") for w in about)}:
            with_contents(turn, turn.known_promise(made.id), said)


def without_contents(turn: Turn, found: Promise, foods: list[str]) -> Promise | None:
    """A cook leaves foods out: they go from the name and the list, and the name says so. None where nothing changes."""
    name, kept = found.dish, found.ingredients
    spanish = turn.voice.language == "es"
    for food in foods:
        stem = re.escape(food.removesuffix("s").removesuffix("e"))
        one = rf"(?:\w+ )?{stem}\w*"
        name = re.sub(rf",? *\b(?:with|con|and|y)\s+{one}|, *{one}", "", name, flags=re.IGNORECASE)
        if kept is not None:
            kept = tuple(item for item in kept if not re.search(rf"(?<!no )(?<!sin )\b{stem}", item.casefold()))
        if kept is None or not kept:
            name += f", sin {food}" if spanish else f", no {food}"
    if name == found.dish and kept == found.ingredients:
        return None
    after = change_promise(turn.potluck, turn.actor, found.id, dish=name[:LONGEST], ingredients=kept)
    return turn.change(after, "did-contains").promise(found.id)
