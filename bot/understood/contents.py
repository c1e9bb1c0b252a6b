"""What is told to be in a dish, beside its promise or later."""

from __future__ import annotations

from bot.context import Turn
from planning.changes import change_promise
from planning.diets.contents import Told
from planning.potluck import Promise

MOST = 40
LONGEST = 100


def with_contents(turn: Turn, found: Promise, said: Told) -> bool:
    """Added to the list there is; where there is none the name says it, for a list would say that all is told.

    What is said not to be in it stands there in the cook's own words: it takes nothing off what is listed."""
    name = found.dish.casefold()
    held = [w for w in said.holds if w not in (found.ingredients or ()) and w not in name]
    other = [w for w in (*said.without, *said.besides) if w not in name]
    if found.ingredients is not None:
        if not held:
            return False
        listed = (*found.ingredients, *held)[:MOST]
        turn.change(change_promise(turn.potluck, turn.actor, found.id, ingredients=listed), "did-contains")
        return True
    joint = " con " if turn.voice.language == "es" else " with "
    made = found.dish
    if held:
        made += (", " if joint in made else joint) + ", ".join(held)
    if other:
        made += ", " + ", ".join(other)
    if made == found.dish:
        return False
    turn.change(change_promise(turn.potluck, turn.actor, found.id, dish=made[:LONGEST]), "did-contains")
    return True
