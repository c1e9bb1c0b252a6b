"""May somebody eat it? Answered by the list for whose needs are known, and by the published lists for the smallest.

Needs are only spoken of in private. That an infant gets no honey is said wherever it is asked, and so that all read it.
"""

from __future__ import annotations

from dataclasses import replace

from bot.capabilities.buying import source_words
from bot.capabilities.eating import MOST_DISHES, for_me
from bot.capabilities.urgent import readable
from bot.capabilities.words import take
from bot.context import Turn
from bot.food import in_dish
from bot.naming import dishes_named
from bot.registry import Registry
from bot.texts import Html
from bot.understood import context, place_of
from bot.understood.askedfood import ASKED, remember
from planning.diets.mayeat import (
    asks_about,
    asks_again,
    asks_may_eat,
    asks_to_avoid,
    honey_for_an_infant,
    of_an_infant,
    tells_of_pregnancy,
)
from planning.potluck import Answer, Guest, Promise, Stage
from planning.replies import read
from planning.safety.guests import LISTERIA, food_notes
from planning.safety.words import has

INFANTS = "SPEC-09"
RAW, RAW_EGG = "RISK-08", "SPEC-04"


async def read_may_eat(turn: Turn) -> None:
    if not readable(turn) or turn.potluck.stage is not Stage.PLANNED:
        return
    if _for_an_infant(turn):
        return
    addressed = place_of(turn) not in (None, "person")
    if not addressed:
        return
    if asks_to_avoid(turn.words):
        await _avoid(turn)
    elif (said := asks_may_eat(turn.words)) is not None:
        meant = _meant(turn, said[1])
        if meant:
            await _may(turn, meant)
    elif turn.private and asks_again(turn.words):
        known = await turn.recall(ASKED)
        meant = [p for i in known.dishes if (p := turn.potluck.promise(i)) is not None] if known is not None else []
        if meant:
            await _may(turn, meant)
    elif turn.private and (what := asks_about(turn.words)):
        meant = _meant(turn, what) if await turn.recall(ASKED) is not None else []
        if meant:
            await _may(turn, meant)


def _meant(turn: Turn, what: str) -> list[Promise]:
    return dishes_named(turn, what, tuple(p for p in turn.potluck.promises if p.category != "supplies"))


def _for_an_infant(turn: Turn) -> bool:
    """No honey in the first year, whoever asks and however little; of a dish of the list only where honey is in it."""
    said = honey_for_an_infant(turn.words)
    named = _meant(turn, turn.words) if not said and of_an_infant(turn.words) else []
    honeyed = [p for p in named if has(p, "honey")]
    if not said and not honeyed:
        return False
    turn.handled = True
    dishes = [p.dish for p in honeyed]
    turn.say("may-infant-honey", dishes=dishes, n=len(dishes), source=source_words(turn, INFANTS))
    return True


async def _may(turn: Turn, meant: list[Promise]) -> None:
    """By the needs of the asker's party; where none is known, what is said to be in it."""
    turn.handled = True
    remember(turn, meant, ())
    guest = turn.guest()
    unsaid: list[str] = []
    if guest is not None and guest.pregnant and turn.private:
        unsaid = _of_pregnancy(turn, guest, meant)
    if guest is not None and guest.all_needs():
        await for_me(turn, meant)
        if unsaid:
            turn.post(Html("\n".join(unsaid)))
        return
    lines: list[str] = [*unsaid, *(in_dish(turn, found) for found in meant[:MOST_DISHES])]
    turn.post(Html("\n".join([*lines, turn.voice("eat-note")])))


async def _avoid(turn: Turn) -> None:
    """What somebody of the asker's party should leave alone, by their needs and a pregnancy; what the same message
    tells of them is noted first."""
    told = read(turn.words, context(turn, replying_to=place_of(turn)))
    if any(i.kind in ("needs", "pregnant") for i in told.intents):
        await take(turn, told, addressed=True)
    guest = turn.guest()
    pregnant = guest is not None and guest.pregnant
    if guest is None or not (pregnant or guest.all_needs()):
        if tells_of_pregnancy(turn.words):
            turn.handled = True
            turn.post(_pregnancy(turn, guest), where="here" if turn.private else "private")
        return
    turn.handled = True
    if guest.all_needs():
        await for_me(turn)
    if pregnant:
        if not turn.private and not turn.person.can_dm:
            turn.say("eat-in-private")
            return
        turn.post(_pregnancy(turn, guest), where="here" if turn.private else "private")


def _of_pregnancy(turn: Turn, guest: Guest | None, dishes: list[Promise]) -> list[str]:
    """A line for each of these dishes that the published lists name."""
    one = replace(guest or Guest("", ""), pregnant=True, answer=Answer.YES)
    potluck = replace(turn.potluck, guests=(one,))
    rules = {rule for _, rule, _ in LISTERIA} | {RAW, RAW_EGG}
    return [
        turn.voice("may-avoid-line", said=turn.voice.say(said.say))
        for dish in dishes for said in food_notes(potluck, dish) if said.rule in rules
    ]  # fmt: skip


def _pregnancy(turn: Turn, guest: Guest | None) -> Html:
    """The dishes of the list that the published lists name, those nobody has said anything of, and the lists."""
    voice = turn.voice
    dishes = [p for p in turn.potluck.promises if p.category not in ("supplies",)]
    lines = _of_pregnancy(turn, guest, dishes[:MOST_DISHES])
    unsaid = [p.dish for p in dishes if p.ingredients is None and p.category != "drink"]
    kinds = [voice.plain("risky-food", tag=tag) for tag in dict.fromkeys([tag for tag, _, _ in LISTERIA] + ["raw-egg"])]
    head = voice("may-avoid-head", n=len(lines))
    tail = voice("may-avoid-lists", what=kinds, source=source_words(turn, RAW))
    asked = [voice("may-avoid-ask", dishes=unsaid[:MOST_DISHES])] if unsaid else []
    return Html("\n".join([head, *lines, *asked, tail]))


def register(app: Registry) -> None:
    app.reader(read_may_eat, order=41)
