"""Questions about what is in the food, answered from the list wherever they were put.

In the open only those that can mean nothing else: a dish of the list is named, or the list itself.
"""

from __future__ import annotations

from bot.capabilities.allergies import is_today
from bot.capabilities.eating import asked, for_me
from bot.context import Turn
from bot.naming import dishes_named
from bot.registry import Registry
from bot.understood import context, place_of
from bot.understood.askedfood import remember
from planning.diets import food_question, foods_asked
from planning.diets.asked import DIET, asks_what_to_eat
from planning.potluck import Stage
from planning.replies import Ask, read

SURE = 0.5


async def read_food_question(turn: Turn) -> None:
    event = turn.event
    if not turn.has_potluck or not event.is_words:
        return
    potluck = turn.potluck
    if potluck.stage is not Stage.PLANNED or event.person.anonymous:
        return
    names = [g.name for g in potluck.guests if g.id != turn.me]
    found = food_question(turn.words, potluck.promises, names)
    place = place_of(turn)
    addressed = place is not None and place != "person"
    near = context(turn, replying_to=None).near_board or is_today(turn)
    if found is None:
        guest = turn.guest()
        if asks_what_to_eat(turn.words) and guest is not None and guest.all_needs() and (addressed or near):
            turn.handled = True
            await for_me(turn)
        return
    if not addressed and not (found.sure or (near and any(a.sense == DIET for a in found.asked))):
        return
    told = read(turn.words, context(turn, replying_to=place if addressed else "board")).intents
    if any(not isinstance(i, Ask) and i.confidence >= SURE for i in told):
        return  # it tells something, too: `words` does both
    turn.handled = True
    foods, rest = foods_asked(found.text, potluck.promises)
    remember(turn, dishes_named(turn, rest, potluck.promises), [one.words for one in foods])
    await asked(turn, found.text)


def register(app: Registry) -> None:
    app.reader(read_food_question, order=43)
