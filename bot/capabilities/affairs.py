"""In words: who paid what, who hosts, what was thrown out, when a dish goes in, who may eat it, whose pot it is."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import timedelta

from bot.buttons import Button
from bot.capabilities.begun import in_since
from bot.capabilities.buying import paid_sheet, source_words
from bot.capabilities.eating import told_of_guest
from bot.capabilities.hosting import handed_over
from bot.capabilities.leftovers import containers
from bot.capabilities.situations import SPOKEN
from bot.capabilities.trouble import lost
from bot.context import Turn
from bot.kitchen_words import step_line
from bot.naming import dish_named
from bot.outgoing import mention
from bot.recalling import Memory
from bot.registry import Registry
from bot.texts import Html
from bot.understood import place_of
from planning.changes import Actor, Refusal, add_cohost, find_guest, may_manage, name_cohost, pay, settle_with
from planning.kitchen import PlannedStep, Timeline
from planning.potluck import Guest, Promise, Stage
from planning.safety.thaw import cold_water_min, thaw_by, thaw_days
from planning.shopping import evening_out
from planning.theday.affairs import Affair, currency_of, languages, read_affairs
from planning.theday.begun import going_on
from planning.theday.evening import of_a_table

NEAR = timedelta(days=2)
"""What was thrown out so shortly before the start was for this table (common practice, no source)."""
JUST_SPOKEN = timedelta(minutes=30)
_MEAL = re.compile(r"(?:the )?(?:dinner|lunch|breakfast|supper|brunch|tea|all|us|everyone|people|now|food)")
_SPENT = re.compile(r"\b(?:spent|paid|pagu[eé]|pag[oó]|gast[eé]|gast[oó])\b", re.IGNORECASE)
_BESIDE = re.compile(r"(?: (?:that|which|who|lol|haha\w*|que)\b.*|,.*)$")
OWN = re.compile(r"(?:mine|ours|it|them|)")
_FREEZER = re.compile(r"\b(?:freezer|thaw\w*|defrost\w*|fridge|congelador|descongel\w*)\b")
APPLIANCES = (("oven|horno", "oven"), ("slow ?cooker|crock|olla lenta", "slow-cooker"), ("grill|parrilla", "grill"))
PREHEAT_MIN = 15
"""KITCHEN: an oven's first heating, as the timeline reckons it."""
_ARTICLE = re.compile(r"^(?:the|my|our|some|el|la|los|las|mi|mis|unos|unas)\s+")
_COOKED = re.compile(r"\b(?:in|on|oven|grill|stove|plug|freezer|out|horno|fuego|olla)\b")


@dataclass(frozen=True)
class AskedToHost:
    """Whom (a guest's id) the host, or who may act for them, asked to take over, and who was the host then."""

    guest: str
    host: str


ASKED_TO_HOST = Memory("asked-to-host", AskedToHost, timedelta(days=14), of_chat=True, in_group=True)
"""Who does not answer in so long does not take over by a word any more (common practice, no source)."""


async def read_words(turn: Turn) -> None:
    event = turn.event
    if not event.is_words or event.person.anonymous:
        return
    if not turn.has_potluck or turn.potluck.stage is not Stage.PLANNED or place_of(turn) == "person":
        return
    for language in dict.fromkeys((turn.voice.language, *languages())):
        found = read_affairs(turn.words, language)
        if found and await _take(turn, found, addressed=place_of(turn) is not None):
            turn.handled = not found[0].rest
            turn.words = found[0].rest or turn.words
            return


async def _take(turn: Turn, found: tuple[Affair, ...], *, addressed: bool) -> bool:
    first = found[0]
    match first.kind:
        case "paid" | "owe":
            return _paid(turn, found, addressed=addressed)
        case "handed":
            return _handed(turn, first, addressed=addressed)
        case "paid-bare" if turn.now >= turn.potluck.starts_at and not _MEAL.fullmatch(first.thing):
            return _paid(turn, found, addressed=False)
        case "cohost" | "host" | "host-asked" if may_manage(turn.potluck, turn.actor):
            return _role(turn, first, addressed=addressed)
        case "take-over":
            return await _takes_over(turn)
        case "binned":
            return await _binned(turn, first, addressed=addressed)
        case "when-dish":
            return await _when(turn, first)
        case "ok-for":
            who = find_guest(turn.potluck, first.name)
            if who is None or not (addressed or may_manage(turn.potluck, turn.actor)):
                return False
            dish = dish_named(turn, first.thing, turn.potluck.promises) if first.thing else None
            if first.thing and dish is None:
                return False
            told_of_guest(turn, who, dish)
            return True
        case "whose" if turn.now >= turn.potluck.starts_at:
            return _whose(turn)
        case _:
            return False


def _paid(turn: Turn, found: tuple[Affair, ...], *, addressed: bool) -> bool:
    """Each sum is noted for whoever paid it; in the open chat only what is plainly for a table."""
    things = [_BESIDE.sub("", _ARTICLE.sub("", a.thing)) for a in found]
    bought = (re.split(r"\s*(?:,|\band\b|\by\b|&)\s*", thing) for thing in things)
    of_ours = [any(of_a_table(p, turn.voice.language) for p in parts) for parts in bought]
    # Several sums told together are shared costs, once one of them is plainly for a table.
    # So is what is plainly told as paid once people sit together.
    after = turn.now >= turn.potluck.starts_at and _SPENT.search(turn.words) is not None
    if not addressed and not (all(of_ours) or (len(of_ours) > 1 and any(of_ours)) or (after and any(things))):
        return False
    if not addressed and any(one.name and find_guest(turn.potluck, one.name) is None for one in found):
        return False
    for one, thing in zip(found, things, strict=True):
        who = find_guest(turn.potluck, one.name) if one.name else None
        if one.name and who is None:
            raise Refusal("refused-unknown-person", name=one.name[:60])
        by = Actor(who.id, who.name, username=who.username) if who is not None else turn.actor
        paid = turn.potluck.payments
        currency = currency_of(one.unit, turn.potluck.timezone, paid[0].money.currency if paid else None)
        if one.amount is not None:
            turn.change(pay(turn.potluck, by, one.amount, currency, thing), "did-pay")
    paid_sheet(turn, buttons=[[turn.undo_button()]])
    return True


def _handed(turn: Turn, said: Affair, *, addressed: bool) -> bool:
    """ "Gave Walt 8 in cash": between these two it is settled; whom, and how much, is what the sheet said they owe."""
    potluck = turn.potluck
    if not potluck.payments and not addressed:
        return False
    who = find_guest(potluck, said.name) if said.name else turn.guest()
    owed = [t for t in evening_out(potluck) if who is not None and t.from_ == who.id]
    to = find_guest(potluck, said.to) if said.to else None
    if not said.to and len(owed) == 1:
        to = potluck.guest(owed[0].to)
    if who is None or to is None or to.id == who.id:
        return False
    due = next((t.money for t in owed if t.to == to.id), None)
    amount = said.amount if said.amount is not None else due.amount if due is not None else None
    if amount is None:
        return False
    known = potluck.payments[0].money.currency if potluck.payments else None
    currency = currency_of(said.unit, potluck.timezone, known)
    by = turn.actor if who.id == turn.me else Actor(who.id, who.name, username=who.username)
    turn.change(settle_with(potluck, by, to.id, amount, currency), "did-pay")
    paid_sheet(turn, buttons=[[turn.undo_button()]])
    return True


def _role(turn: Turn, said: Affair, *, addressed: bool) -> bool:
    who = find_guest(turn.potluck, said.name)
    if who is None and addressed and said.kind == "cohost" and len(said.name.split()) <= 2:
        after, _ = name_cohost(turn.potluck, turn.actor, said.name.title())
        turn.change(after, "did-cohost")
        turn.say("cohost-awaited", name=said.name.title(), buttons=[[turn.undo_button()]])
        return True
    if who is None and addressed and said.kind != "host-asked":
        raise Refusal("refused-unknown-person", name=said.name[:60])
    if who is None or who.id == turn.potluck.host:
        return False
    if said.kind == "cohost":
        if who.id not in turn.potluck.cohosts:
            turn.change(add_cohost(turn.potluck, turn.actor, who.id), "did-cohost")
        turn.say("cohost-new", name=mention(who), buttons=[[turn.undo_button()]])
    elif said.kind == "host":
        handed_over(turn, who)
    else:
        turn.remember(ASKED_TO_HOST, AskedToHost(who.id, turn.potluck.host or ""), turn.potluck.id)
        turn.say("host-asked", name=mention(who), buttons=[_hand_button(turn, who)])
    return True


def _hand_button(turn: Turn, who: Guest) -> list[Button]:
    asked = ("asked",) if may_manage(turn.potluck, turn.actor) else ()
    return [Button(turn.voice.plain("button-hand-over", name=who.name), "handover", (who.id, *asked))]


async def _takes_over(turn: Turn) -> bool:
    """A co-host may; of anybody else the host is asked."""
    potluck, me = turn.potluck, turn.guest()
    if me is None or me.id == potluck.host:
        return False
    host = potluck.guest(potluck.host)
    if may_manage(potluck, turn.actor):
        handed_over(turn, me)
    elif host is not None and await turn.recall(ASKED_TO_HOST, potluck.id) == AskedToHost(me.id, host.id):
        handed_over(turn, me, by=Actor(host.id, host.name))  # as the host asked
        turn.let_go(ASKED_TO_HOST, potluck.id)
    else:
        turn.say("host-offered", name=me.name, host=host.name if host else "", buttons=[_hand_button(turn, me)])
    return True


async def hand_pressed(turn: Turn) -> None:
    """By the host, or by whoever was asked to."""
    who = turn.known_guest(turn.args[0])
    host = turn.known_guest(turn.potluck.host or "")
    asked = who.id == turn.me and turn.args[1:] == ("asked",)
    if not may_manage(turn.potluck, turn.actor) and not asked:
        raise Refusal("refused-not-host", host=host.name)
    handed_over(turn, who, by=Actor(host.id, host.name) if asked else None)
    turn.toast("answer-below")


async def _binned(turn: Turn, said: Affair, *, addressed: bool) -> bool:
    """It is off the table, with what that changes; after the meal it is only tidying up."""
    potluck = turn.potluck
    if not addressed and said.thing in ("", "it", "them") and await turn.recall(SPOKEN) is None:
        return False  # "I'll throw it out" may be of anything; of food only if they spoke of food just before
    if not potluck.starts_at - NEAR <= turn.now <= potluck.ends:
        return False
    dish = await _dish(turn, said.thing)
    mixes = re.search(r"\btoss", turn.words.casefold()) and not re.search(r"\b(?:out|away|bin|trash)\b", turn.words)
    if dish is None or (dish.category == "salad" and mixes):
        return False
    if turn.me not in (dish.guest, *dish.sharers) and not may_manage(potluck, turn.actor):
        return False
    await lost(turn, dish)
    return True


async def _dish(turn: Turn, thing: str) -> Promise | None:
    """The dish named; "mine" and "it" are one's only one."""
    thing = _ARTICLE.sub("", thing)
    if OWN.fullmatch(thing):
        own = [p for p in turn.potluck.promises_of(turn.me) if p.category not in ("drink", "supplies")]
        return (own[0] if len(own) == 1 else None) or (None if thing in ("mine", "ours") else await _spoken_of(turn))
    own_first = dish_named(turn, thing, turn.potluck.promises_of(turn.me))
    return own_first or dish_named(turn, thing, turn.potluck.promises)


async def _spoken_of(turn: Turn) -> Promise | None:
    """The dish that was found to have stood too long a moment ago in this chat: "we toss it" is of that."""
    last = next(iter(await turn.recall_all(SPOKEN, 1)), None)
    if last is None or turn.now - last.of.at > JUST_SPOKEN:
        return None
    over = [v.food.promise for v in last.of.verdicts if v.kind == "over" and v.food.promise]
    return turn.potluck.promise(over[0]) if len(over) == 1 else None


async def _when(turn: Turn, said: Affair) -> bool:
    """ "When does my lasagna go in?": its steps in the timeline; without any, how to say how it is heated."""
    if said.thing == "it" and not _COOKED.search(turn.words.casefold()):
        return False
    dish = await _dish(turn, said.thing)
    if dish is None:
        return _appliance_when(turn, said.thing)
    if _FREEZER.search(turn.words.casefold()) and _thaws(turn, dish):
        return True
    if (going := going_on(turn.potluck, dish)) is not None:
        turn.post(in_since(turn, dish, going))
        return True
    planner = turn.services.planner
    known = planner.timeline(turn.potluck) if planner is not None else None
    steps = [s for s in (known.doable if known is not None else ()) if s.promise == dish.id]
    if not steps:
        key = "when-dish-conflict" if dish.heat else "when-dish-unknown"
        turn.say(key, dish=dish.dish, frozen=dish.frozen_lb is not None)
        return True
    lines = [turn.voice("when-dish"), *(step_line(turn.voice, turn.potluck, s) for s in steps[:6])]
    turn.post(Html("\n".join(lines)))
    return True


def _thaws(turn: Turn, dish: Promise) -> bool:
    """When it leaves the freezer: by its pounds, or the rule where nobody told those."""
    if dish.frozen_lb is not None and (by := thaw_by(turn.potluck, dish, _planned(turn))) is not None:
        water = round(cold_water_min(dish.frozen_lb) / 60, 1)
        turn.say("thaw-when", dish=dish.dish, lb=dish.frozen_lb, days=thaw_days(dish.frozen_lb), when=by,
                 past=by <= turn.now, hours=water, source=source_words(turn, "THAW-03"))  # fmt: skip
    else:
        turn.say("thaw-rule", dish=dish.dish, when=turn.potluck.starts_at, source=source_words(turn, "THAW-03"))
    return True


def _planned(turn: Turn) -> tuple[PlannedStep, ...]:
    planner = turn.services.planner
    known: Timeline | None = planner.timeline(turn.potluck) if planner is not None else None
    return known.doable if known is not None else ()


def _appliance_when(turn: Turn, thing: str) -> bool:
    """ "When does the oven go on?": so long before what goes in first as it takes to get hot; the host is told then."""
    kind = next((k for word, k in APPLIANCES if re.search(word, thing)), None)
    steps = sorted((s for s in _planned(turn) if kind is not None and s.kind.startswith(kind)), key=lambda s: s.start)
    first = next((s for s in steps if s.start > turn.now and s.at != "home"), None)
    if first is None:
        return False
    dish = turn.potluck.promise(first.promise)
    on = first.start - timedelta(minutes=PREHEAT_MIN if kind == "oven" else 0)
    turn.say("appliance-when", on=turn.voice.moment(on), at=turn.voice.time(first.start),
             dish=dish.dish if dish is not None else "")  # fmt: skip
    return True


def _whose(turn: Turn) -> bool:
    """What still waits to go home, with buttons; of what is not on the list the words themselves ask everybody."""
    text, buttons = containers(turn)
    turn.post(Html("\n".join([turn.voice("whose-asked"), text])), buttons=buttons)
    return True


def register(app: Registry) -> None:
    app.reader(read_words, order=28)
    app.button("handover", hand_pressed)
