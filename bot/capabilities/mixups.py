"""In words, afterwards: whose pot is still where, who went home with whose dish, and who has one that is not theirs."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import timedelta

from bot.buttons import Button
from bot.capabilities.leftovers import containers
from bot.context import Turn
from bot.naming import dish_named
from bot.outgoing import mention
from bot.recalling import Memory
from bot.registry import Registry
from bot.texts import Html
from bot.understood.asking import asked_in
from planning.changes import find_guest
from planning.potluck import Guest, Promise
from planning.theday.asked import Asked
from planning.theday.evening import of_a_table

MINE = re.compile(
    r"my|our|mine|ours|mi|mis|nuestr[oa]s?|m[ií][oa]s?|la m[ií]a|el m[ií]o|mi .+|mis .+|la|el|las|los", re.IGNORECASE
)
_POSSESSIVE = re.compile(r"['’]s$")
_PRONOUN = re.compile(r"he|she|they|you|it|who|that|this|él|ella|ellos|ellas|usted|ustedes|no|ya|se")
SOMEBODY = ("somebody", "someone", "alguien", "")
MOST_MISSED, LONGEST_THING = 40, 80
_VESSEL = re.compile(
    r"\b(?:pots?|pans?|bowls?|dish(?:es)?|trays?|plates?|platters?|lids?|spoons?|kn(?:ife|ives)|cookers?|coolers?|box(?:es)?"
    r"|containers?|tupperwares?|stands?|tins?|jugs?|baskets?|bags?|chairs?|bandejas?|ollas?|cazuelas?|fuentes?|platos?"
    r"|charolas?|recipientes?|t[aáuó]pp?ers?|moldes?|ensaladeras?|refractarios?|jarras?|termos?)\b"
)


@dataclass(frozen=True)
class Missed:
    """What was said to be missing, and whose it is."""

    owner: str
    name: str
    thing: str

    @property
    def about(self) -> str:
        return f"{self.owner} {self.thing}"


MISSED = Memory("missed", Missed, timedelta(days=14), of_chat=True, in_group=True)
"""So long pots are on their way home (common practice, no source)."""


async def read_mixups(turn: Turn) -> None:
    if not turn.has_potluck or turn.now < turn.potluck.starts_at:
        return
    found = asked_in(turn, "left-there", "took", "not-mine")
    if found is None:
        return
    match found.kind:
        case "not-mine":
            turn.handled = await _found(turn, found)
        case "took":
            turn.handled = await _took(turn, found)
        case _:
            turn.handled = await _left(turn, found)


def _owner(turn: Turn, said: str) -> Guest | None:
    """Whose it is: the writer's, or that of the guest who is named."""
    if MINE.fullmatch(said):
        return turn.guest()
    return find_guest(turn.potluck, _POSSESSIVE.sub("", said))


async def _thing(turn: Turn, found: Asked) -> str:
    thing = found["thing"]
    if not thing and (named := re.fullmatch(r"mis? (.+)", found["name"])) is not None:
        thing = named[1]
    if thing:
        return thing
    missed = await turn.recall_all(MISSED, 1)  # "mine was given back to Sara": what they speak of
    return _sort(turn, missed[0].thing) if missed else turn.voice.plain("mixup-something")


def _sort(turn: Turn, thing: str) -> str:
    """The word of a thing's name that says what it is: "tray" of "white tray", "bandeja" of "bandeja blanca"."""
    return thing.split()[-1] if turn.voice.language == "en" else thing.split()[0]


def _dish(turn: Turn, owner: Guest, thing: str) -> Promise | None:
    own = turn.potluck.promises_of(owner.id)
    named = dish_named(turn, thing, own)
    food = [p for p in own if p.category not in ("drink", "supplies")]
    return named or (food[0] if len(food) == 1 and _VESSEL.search(thing) is not None else None)


def _back(turn: Turn, dish: Promise | None) -> list[list[Button]]:
    if dish is None or dish.returned:
        return []
    return [[Button(turn.voice.plain("button-back-home", dish=dish.dish), "back", (dish.id,))]]


async def _took(turn: Turn, found: Asked) -> bool:
    who, owner, thing = found["who"], _owner(turn, found["name"]), await _thing(turn, found)
    if owner is None:
        return False
    dish = _dish(turn, owner, thing)
    if dish is None and not (_VESSEL.search(thing) or of_a_table(thing, turn.voice.language)):
        return False
    buttons = _back(turn, dish)
    if who in ("i", "we"):
        if owner.id == turn.me:
            return False
        turn.say("mixup-took-own", whose=mention(owner), who=turn.event.person.name, thing=thing, buttons=buttons)
        return True
    taker = find_guest(turn.potluck, who) if who not in SOMEBODY else None
    if taker is not None and taker.id == owner.id:
        return False
    if taker is None and who in SOMEBODY:
        await _miss(turn, owner, thing)
        turn.say("mixup-took-somebody", whose=owner.name, thing=thing, buttons=buttons)
        return True
    if taker is None and _PRONOUN.fullmatch(who):
        return False
    name = mention(taker) if taker is not None else who.title()
    turn.say("mixup-took", whose=mention(owner), who=name, thing=thing, buttons=buttons)
    return True


async def _left(turn: Turn, found: Asked) -> bool:
    owner, thing = _owner(turn, found["name"]), await _thing(turn, found)
    if owner is None:
        return False
    where = found["where"]
    buttons = _back(turn, _dish(turn, owner, thing))
    if not where:
        turn.say("mixup-hers", whose=owner.name, thing=thing, buttons=buttons)
        return True
    await _miss(turn, owner, thing)
    turn.say("mixup-left", whose=owner.name, thing=thing, spot=where, buttons=buttons)
    return True


async def _found(turn: Turn, found: Asked) -> bool:
    me = turn.event.person.name
    thing = found["thing"]
    sort = _sort(turn, thing).rstrip("s")
    known = await turn.recall_all(MISSED, MOST_MISSED)
    missed = [one for one in reversed(known) if one.name != me and sort in one.thing]
    lines = [turn.voice.plain("mixup-missed", whose=one.name, thing=one.thing) for one in missed]
    joined = Html(turn.voice.join(lines)) if lines else ""
    head = turn.voice("mixup-found", who=me, thing=thing, n=len(missed), missing=joined)
    if missed:
        turn.post(head)
    else:
        waiting, buttons = containers(turn)
        turn.post(Html("\n".join([head, waiting])), buttons=buttons)
    return True


async def _miss(turn: Turn, owner: Guest, thing: str) -> None:
    """What somebody misses is remembered, so that who finds it is told."""
    missed = Missed(owner.id, owner.name, thing[:LONGEST_THING])
    turn.remember(MISSED, missed, missed.about)
    for old in (await turn.recall_all(MISSED, 2 * MOST_MISSED))[MOST_MISSED:]:
        turn.let_go(MISSED, old.about)


def register(app: Registry) -> None:
    app.reader(read_mixups, order=27)
