"""What a guest's words come to: intents become changes, and the bot says what it understood."""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace
from typing import Any

from bot.buttons import Button
from bot.context import Turn
from bot.servings import amount_words
from planning.bar import match_topping
from planning.changes import (
    Refusal,
    add_person,
    answer,
    change_promise,
    clear_needs,
    drop_promise,
    find_guest,
    merge_needs,
    promise,
    reschedule,
    resize,
    set_kitchen,
    set_party,
    set_place,
    set_pregnant,
    share_promise,
    take_topping,
)
from planning.changes.rules import LONGEST_NAME, MOST_SERVINGS, tidy
from planning.dishes import lookup
from planning.headcount import headcount
from planning.kitchen_words import Unread, read_kitchen, read_steps
from planning.menu import servings_of
from planning.potluck import AGE_GROUPS, CATEGORIES, Answer, HeatStep, Party, Promise, Say
from planning.replies import (
    AddPerson,
    AddPromise,
    ChangePromise,
    DropPromise,
    Intent,
    KitchenSays,
    MoveTo,
    Reading,
    ReplyContext,
    Reschedule,
    Resize,
    SetAnswer,
    SetNeeds,
    SetParty,
    SetPregnant,
    TakeTopping,
    read,
)
from planning.safety import safety


@dataclass
class Understood:
    """`lines` say what was done; `tell` are named guests to be told; `vague` offers need the offer sheet."""

    lines: list[Say] = field(default_factory=list)
    vague: bool = False
    asked: bool = False
    """Something was asked back instead of being done."""


def context(turn: Turn, *, replying_to: str | None, replied_text: str = "") -> ReplyContext:
    """What the reader of sentences may know. Without a potluck there is nothing to know."""
    potluck = turn.potluck
    guest = potluck.guest(turn.me)
    bar = potluck.bar
    from planning.bar import toppings_for

    names = tuple(dict.fromkeys((*(t.name for t in bar.toppings), *toppings_for(bar.base)))) if bar else ()
    return ReplyContext(
        writer=turn.me,
        writer_name=turn.event.person.name,
        replying_to=replying_to,
        guests=tuple((g.id, g.name) for g in potluck.guests),
        own_promises=tuple((p.id, p.dish) for p in potluck.promises_of(turn.me)),
        all_promises=tuple((p.id, p.dish) for p in potluck.promises),
        party=guest.party if guest and guest.answer is not Answer.NONE else None,
        answer=guest.answer if guest else Answer.NONE,
        toppings=names,
        now=turn.now,
        timezone=potluck.timezone,
        host=potluck.host == turn.me,
        starts_at=potluck.starts_at,
        replied_text=replied_text,
        language=turn.voice.language,
    )


def add_promise(
    turn: Turn, guest_id: str, dish: str, category: str, servings: float | None, quantity: str | None
) -> Promise:
    """Record a promise, in the category the catalogue knows the dish by when none was said."""
    if not category:
        found = lookup(dish)
        if found.category is None:
            raise Refusal("refused-not-a-dish", words=dish[:60])
        category = found.category
    after, made = promise(turn.potluck, turn.actor, guest_id, dish, category, servings, quantity)
    turn.change(after, "did-promise", dish=made.dish)
    if turn.known_guest(guest_id).answer is Answer.NONE:
        # Who offers a dish and has not said otherwise comes with it; a button or a word changes that.
        turn.change(answer(turn.potluck, turn.actor, guest_id, Answer.YES))
    return made


FOR = re.compile(
    r"\bfor\s+(?:about\s+|around\s+)?(?P<n>-?\d[\d.,]*)\s*(?:people|persons|guests|servings)?\s*$", re.IGNORECASE
)


GUESS = 0.5
"""Below this the catalogue's guess at a category is not worth acting on: the cook is asked."""


def bring_words(turn: Turn, words: str, category: str | None) -> None:
    """ "slaw for 12 and 2 dozen rolls" after /bring or below the question what to bring."""
    amount = FOR.search(words)
    if amount is not None and not 0 < float(amount["n"].replace(",", "").strip(".") or 0) <= MOST_SERVINGS:
        raise Refusal("refused-servings", most=MOST_SERVINGS)
    reading = read(f"I'll bring {words}", context(turn, replying_to="question:bring"))
    offers = [i for i in reading.intents if isinstance(i, AddPromise) and not i.vague] if reading.sure else []
    toppings = [i for i in reading.intents if isinstance(i, TakeTopping)] if reading.sure else []
    if not offers and not toppings:
        # Whoever writes /bring means a dish, however odd its name: the whole of it is the name.
        dish = words[: amount.start()].strip(" ,") if amount else words
        known = lookup(dish)
        servings = float(amount["n"].replace(",", "").strip(".")) if amount else None
        if category is None and (known.category is None or known.confidence < GUESS):
            ask_category(turn, dish, servings)
            return
        offers = [AddPromise(dish, category or known.category or "", servings)]
    understood = Understood()
    for offer in offers:
        _promise(turn, replace(offer, category=category or offer.category), understood)
    for topping in toppings:
        _topping(turn, topping, understood)
    say_understood(turn, understood)


def ask_category(turn: Turn, dish: str, servings: float | None) -> None:
    """A dish nobody knows: its cook says what it is."""
    tidy(dish, LONGEST_NAME, empty="refused-no-dish")
    kinds = [c for c in CATEGORIES if c != "topping"]
    cells = [Button(turn.voice.plain(f"category-{c}"), "bringas", (c,), owner=turn.me) for c in kinds]
    rows = [cells[i : i + 3] for i in range(0, len(cells), 3)]
    rows.append([Button(turn.voice.plain("button-nothing"), "bringas", ("none",), owner=turn.me)])
    turn.remember_question("bringas", {"dish": dish, "servings": servings})
    turn.say("bring-as-what", buttons=rows, dish=dish)


def act(turn: Turn, reading: Reading) -> Understood:
    """Carry out every intent of a reading. Raises Refusal when one of them is not allowed."""
    understood = Understood()
    for intent in sorted(reading.intents, key=lambda i: ORDER.index(type(i)) if type(i) in ORDER else len(ORDER)):
        _act(turn, intent, understood)
    return understood


ORDER = (SetAnswer, SetParty, AddPerson, SetNeeds, ChangePromise, DropPromise, AddPromise, TakeTopping)
"""Who comes is settled before what they bring, whatever the order of the words."""


def _act(turn: Turn, intent: Intent, understood: Understood) -> None:
    match intent:
        case SetAnswer():
            _answer(turn, intent, understood)
        case SetParty():
            _party(turn, intent, understood)
        case SetNeeds():
            _needs(turn, intent, understood)
        case AddPromise():
            if intent.vague:
                understood.vague = True
            else:
                _promise(turn, intent, understood)
        case ChangePromise():
            _change(turn, intent, understood)
        case DropPromise():
            _drop(turn, intent, understood)
        case TakeTopping():
            _topping(turn, intent, understood)
        case SetPregnant():
            turn.change(set_pregnant(turn.potluck, turn.actor, intent.who, intent.pregnant), "did-needs")
            understood.lines.append(Say("read-pregnant", {"pregnant": intent.pregnant}))
        case Reschedule() | MoveTo() | Resize() | KitchenSays():
            _hosting(turn, intent, understood)
        case AddPerson():
            after, guest = add_person(turn.potluck, turn.actor, intent.name, intent.party)
            turn.change(after, "did-add", name=guest.name)
            understood.lines.append(Say("read-person", {"name": guest.name}))


def _person(turn: Turn, name: str, said: Answer = Answer.YES) -> str:
    """The id of the person of this name, who is added when nobody here is called so."""
    known = find_guest(turn.potluck, name)
    if known is not None:
        return known.id
    after, guest = add_person(turn.potluck, turn.actor, name, said=said)
    turn.change(after, "did-add", name=guest.name)
    return guest.id


def _hosting(turn: Turn, intent: Intent, understood: Understood) -> None:
    """What a host says about the potluck itself."""
    match intent:
        case Reschedule():
            from bot.capabilities.hosting import new_start

            starts_at = new_start(turn, intent.words).starts_at
            turn.change(reschedule(turn.potluck, turn.actor, starts_at, turn.now), "did-when")
            understood.lines.append(Say("read-when", {"when": turn.potluck.starts_at}))
        case MoveTo():
            turn.change(set_place(turn.potluck, turn.actor, intent.place), "did-place")
            understood.lines.append(Say("read-where", {"place": turn.potluck.place}))
        case Resize():
            turn.change(resize(turn.potluck, turn.actor, intent.people), "did-resize")
            understood.lines.append(Say("read-size", {"people": intent.people}))
        case KitchenSays():
            try:
                kitchen = read_kitchen(intent.words, turn.potluck.kitchen)
            except Unread as unread:
                raise Refusal("refused-kitchen-words", words=unread.words) from None
            turn.change(set_kitchen(turn.potluck, turn.actor, kitchen), "did-kitchen")
            understood.lines.append(Say("read-kitchen", {"words": intent.words}))


def _answer(turn: Turn, intent: SetAnswer, understood: Understood) -> None:
    if not intent.who:
        name = intent.unknown_name or ""
        named = _person(turn, name, intent.answer)
        turn.change(answer(turn.potluck, turn.actor, named, intent.answer))
        understood.lines.append(Say("read-answer-for", {"answer": intent.answer.value, "name": name}))
        return
    who = turn.potluck.guest(intent.who)
    if intent.implied and who is not None and who.answer is not Answer.NONE:
        return
    turn.change(answer(turn.potluck, turn.actor, intent.who, intent.answer), "did-answer", answer=intent.answer.value)
    key = "read-answer" if intent.who == turn.me else "read-answer-for"
    name = turn.known_guest(intent.who).name
    understood.lines.append(Say(key, {"answer": intent.answer.value, "name": name}))
    still = [p.dish for p in turn.potluck.promises if p.guest == intent.who]
    if intent.answer is Answer.NO and still:
        understood.lines.append(Say("read-still-theirs", {"dishes": still}))


def _party(turn: Turn, intent: SetParty, understood: Understood) -> None:
    from bot.capabilities.answers import party_words

    party = intent.party
    guest = turn.potluck.guest(intent.who)
    if intent.relative:
        now = guest.party if guest and guest.answer is not Answer.NONE else Party()
        party = Party(**{g: max(0, getattr(now, g) + getattr(party, g)) for g in AGE_GROUPS})
    turn.change(set_party(turn.potluck, turn.actor, intent.who, party), "did-party")
    understood.lines.append(Say("read-party", {"party": party_words(turn.voice, party)}))


def _needs(turn: Turn, intent: SetNeeds, understood: Understood) -> None:
    from bot.capabilities.needs import need_name

    if intent.cleared and not intent.needs:
        turn.change(clear_needs(turn.potluck, turn.actor, intent.who), "did-needs")
        understood.lines.append(Say("read-no-needs"))
        return
    if intent.cleared:
        for need in intent.needs:
            turn.change(clear_needs(turn.potluck, turn.actor, intent.who, need.need), "did-needs")
        understood.lines.append(
            Say("read-needs-gone", {"needs": [need_name(turn.voice, n.need) for n in intent.needs]})
        )
        return
    needs = tuple(replace(n, open=not turn.private) for n in intent.needs)
    turn.change(merge_needs(turn.potluck, turn.actor, intent.who, needs), "did-needs")
    words = [need_name(turn.voice, n.need) for n in needs]
    understood.lines.append(Say("read-needs", {"needs": words, "n": sum(n.count for n in needs)}))


def _promise(turn: Turn, intent: AddPromise, understood: Understood) -> None:
    category = intent.category if intent.category in CATEGORIES else ""
    servings = intent.servings
    if intent.for_all and servings is None:
        servings = float(headcount(turn.potluck).at_service_level)
    known = lookup(intent.dish)
    if not category and (known.category is None or known.confidence < GUESS):
        understood.asked = True
        ask_category(turn, intent.dish, servings)
        return
    cook = turn.me if intent.by is None else intent.by
    if not cook:
        cook = _person(turn, intent.by_name or "")
    made = add_promise(turn, cook, intent.dish, category, servings, intent.quantity)
    if intent.with_guest and turn.potluck.guest(intent.with_guest) and intent.with_guest != cook:
        turn.change(share_promise(turn.potluck, turn.actor, made.id, intent.with_guest))
    steps = _steps(intent.heat_text)
    if steps or intent.frozen_lb is not None:
        serve = "hot" if steps else None
        turn.change(
            change_promise(turn.potluck, turn.actor, made.id, heat=steps, frozen_lb=intent.frozen_lb, serve=serve)
        )
    facts = promise_facts(turn, turn.known_promise(made.id))
    warned = [
        n.say
        for n in safety(turn.potluck, turn.now)
        if n.promise == made.id and n.rule.startswith("XCON") and n.severity == "warn"
    ]
    understood.lines.append(Say("read-promise", {**facts, "heat": _heat_words(turn, steps)}))
    if facts["doubled"]:
        understood.lines.append(Say("read-doubled", facts))
    understood.lines.extend(warned)


def _steps(heat_text: str | None) -> tuple[HeatStep, ...] | None:
    """The steps in a cook's words; words nobody can read, or an oven that can't be, are left out."""
    if not heat_text:
        return None
    try:
        steps = read_steps(heat_text)
    except Unread:
        return None
    return None if any(s.temp_f is not None and not 100 <= s.temp_f <= 600 for s in steps) else steps


def _heat_words(turn: Turn, steps: tuple[HeatStep, ...] | None) -> list[str]:
    from bot.capabilities.kitchen import step_words

    return [step_words(turn, s) for s in steps or ()]


def promise_facts(turn: Turn, made: Promise) -> dict[str, Any]:
    from bot.capabilities.bringing import promise_facts as facts

    return facts(turn, made)


def _change(turn: Turn, intent: ChangePromise, understood: Understood) -> None:
    was = turn.potluck.promise(intent.promise)
    if was is None:
        raise Refusal("refused-no-promise")
    servings = intent.servings
    if intent.factor is not None:
        servings = servings_of(was, headcount(turn.potluck)) * intent.factor
    category = intent.category
    if intent.dish and not category:
        category = lookup(intent.dish).category
    turn.change(
        change_promise(
            turn.potluck,
            turn.actor,
            was.id,
            dish=intent.dish,
            category=category,
            servings=servings,
            quantity=intent.quantity,
        ),
        "did-promise",
        dish=intent.dish or was.dish,
    )
    now = turn.known_promise(was.id)
    understood.lines.append(
        Say("read-changed", {"was": was.dish, "dish": now.dish, "amount": amount_words(turn.voice, turn.potluck, now)})
    )


def _drop(turn: Turn, intent: DropPromise, understood: Understood) -> None:
    own = turn.potluck.promises_of(turn.me)
    found = turn.potluck.promise(intent.promise) if intent.promise else (own[0] if len(own) == 1 else None)
    if found is None:
        raise Refusal("refused-which-promise" if own else "refused-no-own-promise", dishes=[p.dish for p in own])
    turn.change(drop_promise(turn.potluck, turn.actor, found.id), "did-drop", dish=found.dish)
    understood.lines.append(Say("read-dropped", {"dish": found.dish}))


def _topping(turn: Turn, intent: TakeTopping, understood: Understood) -> None:
    bar = turn.potluck.bar
    name = (match_topping(bar.base, intent.name) if bar else None) or intent.name
    turn.change(take_topping(turn.potluck, turn.actor, name), "did-topping", topping=name)
    understood.lines.append(Say("read-topping", {"topping": name}))


def say_understood(turn: Turn, understood: Understood) -> None:
    """One line for everything that was read, with undo."""
    if not understood.lines:
        return
    what = "; ".join(turn.voice.say(line).rstrip(".") for line in understood.lines)
    from bot.texts import Html

    turn.say("understood", what=Html(what), buttons=[[turn.undo_button()]])
