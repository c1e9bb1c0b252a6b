"""What is in a dish, in a cook's own words: "there is peanut oil in my soup", "no nuts but same kitchen"."""

from __future__ import annotations

import re

from bot.buttons import Button
from bot.capabilities.words import CAN_NOT_EAT
from bot.context import Turn
from bot.naming import dishes_named, names_another
from bot.registry import Registry
from bot.understood import context, place_of
from bot.understood.askedfood import ASKED, asked_of
from bot.understood.contents import with_contents
from planning.changes import Refusal, change_promise, may_manage
from planning.diets.contents import PART_OF_A_DISH, Told, answered, contents_told, short_list
from planning.diets.recipe import recipe_told
from planning.potluck import Answer, Promise, Stage
from planning.replies import AddPromise, read
from planning.safety.allergens import avoided, held

_ARTICLE = re.compile(r"^(?:the|my|our|that|this|el|la|los|las|mi|mis|nuestr[oa]s?)\s+")
_OF_WHAT = re.compile(r".*\b(?:for|in|on|of|with|to|over|para|de|del|en|sobre)\b\s+(?P<dish>.+)$")
MOST_DISHES, MOST_LISTED, LONGEST = 8, 40, 400


async def read_contents(turn: Turn) -> None:
    """From the cook of the dish, or a host. Never a new promise, and never a whole list: the rest stays unknown."""
    event = turn.event
    if not turn.has_potluck or not event.is_words:
        return
    potluck = turn.potluck
    if potluck.stage is not Stage.PLANNED or event.person.anonymous or turn.about == "question:diets":
        return
    if await _answered(turn) or await _listed(turn):
        return
    asked, _ = await asked_of(turn)
    if asked is not None and (short := short_list(turn.words)) is not None:
        _note(turn, asked, short)
        return
    for said in contents_told(turn.words):
        found = await _dishes(turn, said)
        for dish in found:
            _note(turn, dish, said)
        if found and (rest := _of_somebody(turn.words)):
            turn.words, turn.handled = rest, False
        if not found and _worth_asking(turn, said):
            turn.handled = True
            _ask_which(turn, said)


def _of_somebody(words: str) -> str:
    """The sentences beside it that tell what somebody can't eat: "I'm coeliac. Mine has no wheat"."""
    rest = [s for s in _SENTENCES.split(words) if not contents_told(s)]
    return " ".join(rest) if any(CAN_NOT_EAT.search(s) for s in rest) else ""


_SENTENCES = re.compile(r"(?<=[.!?;])\s+|\n+")


async def _answered(turn: Turn) -> bool:
    """ "Yes, in the dressing": the cook answers what was asked of the dish a moment ago."""
    guest = turn.guest()
    if guest is None or guest.answer is Answer.NONE:
        return False
    dish, foods = await asked_of(turn)
    said = answered(turn.words) if dish is not None and foods else None
    if dish is None or said is None:
        return False
    told = Told(dish.dish, holds=foods) if said else Told(dish.dish, without=tuple(f"no {f}" for f in foods))
    _note(turn, dish, told)
    turn.let_go(ASKED)
    return True


async def _listed(turn: Turn) -> bool:
    """ "Chicken, yoghurt, onions, cream, ground almonds": the cook has listed what is in it."""
    guest = turn.guest()
    if guest is None or guest.answer is Answer.NO or turn.words.strip().endswith("?"):
        return False
    told = recipe_told(turn.words, _own(turn), (await asked_of(turn))[0])
    if told is None:
        return False
    turn.handled = True
    listed = tuple(dict.fromkeys((*(told.dish.ingredients or ()), *told.holds)))[:MOST_LISTED]
    turn.change(change_promise(turn.potluck, turn.actor, told.dish.id, ingredients=listed), "did-contains")
    what = [*told.holds, *(f"no {item}" for item in told.without)]
    turn.say("contents-heard", dish=told.dish.dish, what=what, whole=True, buttons=[[turn.undo_button()]])
    return True


def _note(turn: Turn, dish: Promise, said: Told) -> None:
    turn.handled = True
    what = [*said.holds, *said.without, *said.besides]
    changed = with_contents(turn, dish, said)
    turn.say("contents-heard", dish=dish.dish, what=what, whole=dish.ingredients is not None,
             buttons=[[turn.undo_button()]] if changed else ())  # fmt: skip


def _own(turn: Turn) -> tuple[Promise, ...]:
    return tuple(p for p in turn.potluck.promises if turn.me in (p.guest, *p.sharers) and p.category != "supplies")


async def _dishes(turn: Turn, said: Told) -> list[Promise]:
    """The dish named (all of them, where the name fits several: what is in one may be in the other); "it" is the one
    named in the message replied to, the one just asked about, or the cook's only one."""
    own = _own(turn)
    if said.dish:
        return _named(turn, said.dish, own)
    replied = turn.event.reply_text.casefold() if turn.event.reply_to_bot and turn.about != "board" else ""
    named = [p for p in own if p.dish.casefold() in replied]
    if len(named) == 1:
        return named
    asked, _ = await asked_of(turn)
    if asked is not None:
        return [asked]
    return [*own] if len(own) == 1 and not said.bare and not turn.words.strip().endswith("?") else []


def _named(turn: Turn, words: str, own: tuple[Promise, ...]) -> list[Promise]:
    name = _ARTICLE.sub("", words)
    behind = _OF_WHAT.match(name)
    among = [own, turn.potluck.promises] if may_manage(turn.potluck, turn.actor) else [own]
    for dishes in among:
        for told in (name, _ARTICLE.sub("", behind["dish"]) if behind is not None else ""):
            near = dishes_named(turn, told, dishes) if told else []
            found = [p for p in near if not names_another(told, p)]
            if found and len(told.split()) <= max(len(p.dish.split()) for p in found) + 2:
                return found
    if name.split()[-1] in PART_OF_A_DISH and not _promises_another(turn, own):
        # "The dressing": of the only dish there is, or they are asked.
        return [*own] if len(own) == 1 else []
    return []


def _promises_another(turn: Turn, own: tuple[Promise, ...]) -> bool:
    """ "Apple pie for 12, pastry has egg glaze": the pastry is of the pie that is promised with it."""
    intents = read(turn.words[:400], context(turn, replying_to="board")).intents
    known = {p.dish.casefold() for p in own}
    return any(isinstance(i, AddPromise) and i.dish.casefold() not in known for i in intents)


def _worth_asking(turn: Turn, said: Told) -> bool:
    """Whether a cook of several dishes is asked which is meant: told to the bot, or of what somebody must not eat."""
    own = _own(turn)
    part = not said.dish or _ARTICLE.sub("", said.dish).split()[-1] in PART_OF_A_DISH
    if len(own) < 2 or not part or not said.holds or said.bare or turn.words.strip().endswith("?"):
        return False
    told = read(turn.words[:LONGEST], context(turn, replying_to="board")).intents
    if any(isinstance(i, AddPromise) for i in told):
        return False  # a dish of its own is told, and what is in it with it
    if place_of(turn) not in (None, "person") or said.dish:
        return True
    tried = [Promise("", turn.me, f"dish with {what}", "main") for what in said.holds]
    return any(held(one, need) in ("listed", "named") for one in tried for need in avoided(turn.potluck))


def _ask_which(turn: Turn, said: Told) -> None:
    rows = [[Button(p.dish, "holds", (p.id,), owner=turn.me)] for p in _own(turn)[:MOST_DISHES]]
    data = {"holds": list(said.holds), "without": list(said.without), "besides": list(said.besides)}
    turn.remember_question("holds", data)
    turn.say("contents-which", what=[*said.holds, *said.without], buttons=rows, about="question:holds")


async def which(turn: Turn) -> None:
    """The dish that was meant."""
    if turn.dialog is None or turn.dialog.kind != "holds":
        raise Refusal("refused-button-old")
    dish = turn.known_promise(turn.args[0])
    told = turn.dialog.data
    holds, without, besides = (tuple(str(w) for w in told.get(k) or ()) for k in ("holds", "without", "besides"))
    said = Told(dish.dish, holds, without, besides)
    changed = with_contents(turn, dish, said)
    turn.answered()
    turn.edit_pressed("contents-heard", dish=dish.dish, what=[*said.holds, *said.without, *said.besides],
                      whole=dish.ingredients is not None,
                      buttons=[[turn.undo_button()]] if changed else ())  # fmt: skip


def register(app: Registry) -> None:
    app.reader(read_contents, order=44)
    app.button("holds", which)
