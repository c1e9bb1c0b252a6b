"""What anybody says is in some food, where somebody at the table must not eat it; and what a cook leaves out for them.

Whoever tells it, in the open too, and whether or not the food is on the list. Nobody with an allergy is named.
"""

from __future__ import annotations

import re
from dataclasses import replace

from bot.context import Turn
from bot.naming import dishes_named, names_another
from bot.registry import Registry
from bot.understood import context, place_of
from bot.understood.contents import with_contents, without_contents
from bot.understood.spokenof import remember_spoken
from planning.changes import may_manage
from planning.diets.alarms import Alarm, alarms, left_out
from planning.diets.contents import Told
from planning.dishes import lookup
from planning.potluck import Promise, Stage
from planning.replies import AddPromise, SetNeeds, read
from planning.safety.allergens import ALLERGY, DEGREES, Avoided, avoided, held

MOST = 4
_LITTLE = re.compile(r"\b(?:with|and|for|the|has|from|con|las|los|del|para)\b")


async def read_left_out(turn: Turn) -> None:
    """ "Ok, I leave the walnuts out": the cook's own word, and it is told as that."""
    if not _heard(turn):
        return
    foods = left_out(turn.words)
    if not foods:
        return
    among = tuple(p for p in turn.potluck.promises if p.category != "supplies" and _may(turn, p))
    holding = [p for p in among if any(_in(p, food) for food in foods)]
    named = dishes_named(turn, turn.words, among)
    found = [p for p in holding if p in named] or holding
    if len(found) != 1:
        return
    gone = [food for food in foods if _in(found[0], food) and food.casefold() != found[0].dish.casefold()]
    if not gone:
        return
    after = without_contents(turn, found[0], gone)
    if after is None:
        return
    turn.handled = True
    turn.say("alarm-left-out", dish=after.dish, what=gone, buttons=[[turn.undo_button()]])


async def read_alarm(turn: Turn) -> None:
    """A food somebody says is in something, held against every allergy at the table."""
    if not _heard(turn):
        return
    potluck = turn.potluck
    feared = tuple(one for one in avoided(potluck) if one.degree >= ALLERGY)
    heard = tuple(alarms(turn.words))
    found = next(((a, met) for a in heard if feared and (met := _met(a, feared))), None)
    if found is None:
        for one in heard[:MOST]:
            if _dish(turn, one, [food for food, _, _ in one.holds]) is None:
                remember_spoken(turn, one)
        return
    told, met = found
    reading = read(turn.words[:600], context(turn, replying_to="board"))
    if any(isinstance(i, SetNeeds) for i in reading.intents):
        return
    promised = [i.dish for i in reading.intents if isinstance(i, AddPromise)]
    foods = list(dict.fromkeys(food for food, _ in met))
    dish = _dish(turn, told, foods)
    new = [Promise("", turn.me, name, "main") for name in promised]
    if dish is None and reading.sure and any(held(one, need) for one in new for _, need in met):
        return  # it is noted in a moment, and its name says enough for the watchers
    turn.handled = dish is not None or not promised
    if dish is not None:
        _note(turn, dish, foods)
        return
    remember_spoken(turn, told)
    needs = list(dict.fromkeys(turn.voice.plain("allergy-of", need=one.need) for _, one in met))
    degree = DEGREES[max(one.degree for _, one in met)]
    turn.say("alarm-unlisted", what=foods, needs=needs, degree=degree)
    host = potluck.guest(potluck.host)
    if turn.private and host is not None and host.id != turn.me:
        await turn.tell(host, "alarm-passed-on", words=turn.words[:200])


def _note(turn: Turn, dish: Promise, foods: list[str]) -> None:
    """It is in the dish from now on, whoever said so; the watchers tell whom it concerns."""
    cook = turn.potluck.guest(dish.guest)
    mine = _may(turn, dish)
    actor = turn.actor if mine else replace(turn.actor, id=dish.guest)
    changed = with_contents(turn, dish, Told(dish.dish, holds=tuple(foods)), actor)
    buttons = [[turn.undo_button()]] if changed else ()
    if turn.me in (dish.guest, *dish.sharers):
        turn.say("contents-heard", dish=dish.dish, what=foods, whole=dish.ingredients is not None, buttons=buttons)
        return
    by = turn.event.person.name
    turn.say("alarm-heard", dish=dish.dish, what=foods, by=by, cook=cook.name if cook else "", buttons=buttons)


def _heard(turn: Turn) -> bool:
    event = turn.event
    if not turn.has_potluck or not event.is_words:
        return False
    if event.reply_to is not None and not event.reply_to_bot and place_of(turn) not in (None, "person"):
        return False
    return turn.potluck.stage is Stage.PLANNED and not event.person.anonymous and turn.guest() is not None


def _may(turn: Turn, dish: Promise) -> bool:
    return turn.me in (dish.guest, *dish.sharers) or may_manage(turn.potluck, turn.actor)


def _met(told: Alarm, feared: tuple[Avoided, ...]) -> list[tuple[str, Avoided]]:
    """(food, what it meets). Of a whole dish ("cake") only what its name says counts, not what is usual in it."""
    out = []
    for food, need, marks in told.holds:
        whole = Promise("", "", food, "main") if lookup(food).dish is not None else None
        for one in feared:
            named = whole is None or held(whole, one) == "named"
            if (marks & one.marks or need == one.need) and named:
                out.append((food, one))
    return out[:MOST]


def _dish(turn: Turn, told: Alarm, foods: list[str]) -> Promise | None:
    """The dish of the list these words are about; one's own goes first. All words of a name stand for themselves:
    of "potato salad" the noodle salad is no part."""
    text = told.text
    for food in foods:
        text = text.replace(food, " ")
    among = tuple(p for p in turn.potluck.promises if p.category != "supplies")
    near = [p for p in dishes_named(turn, _LITTLE.sub(" ", text), among) if not names_another(text, p)]
    near = [p for p in near if p.guest == turn.me] or near
    return near[0] if len(near) == 1 and not told.brought else None


def _in(dish: Promise, food: str) -> bool:
    stem = food.casefold().removesuffix("s")
    texts = (dish.dish, *(dish.ingredients or ()))
    return any(re.search(rf"(?<!no )(?<!sin )\b{re.escape(stem)}", text.casefold()) for text in texts)


def register(app: Registry) -> None:
    app.reader(read_left_out, order=44)
    app.reader(read_alarm, order=46)
