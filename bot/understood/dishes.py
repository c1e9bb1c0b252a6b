"""Promises and toppings in a guest's own words become changes."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any

from bot.buttons import Button
from bot.context import Turn
from bot.servings import amount_words
from bot.understood.consequences import gaps
from bot.understood.contents import with_contents
from bot.understood.context import context
from bot.understood.outcome import Understood
from bot.understood.people import person
from planning.amounts import parse
from planning.bar import match_topping
from planning.changes import (
    Refusal,
    answer,
    change_promise,
    drop_promise,
    give_promise,
    promise,
    share_promise,
    take_topping,
)
from planning.changes.rules import LONGEST_NAME, MOST_SERVINGS, tidy
from planning.diets.contents import Told
from planning.dishes import lookup
from planning.headcount import headcount
from planning.kitchen_words import Unread, read_steps
from planning.menu import servings_of
from planning.potluck import CATEGORIES, Answer, HeatStep, Promise, Say
from planning.replies import AddPromise, ChangePromise, DropPromise, TakeTopping, read
from planning.safety import safety
from planning.when import as_read_here

GUESS = 0.5
"""Below this the catalogue's guess at a category is not worth acting on: the cook is asked."""


FOR = re.compile(
    r"\bfor\s+(?:about\s+|around\s+)?(?P<n>-?\d[\d.,]*)\s*(?:people|persons|guests|servings)?\s*$", re.IGNORECASE
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


def bring_words(turn: Turn, words: str, category: str | None) -> None:
    """ "slaw for 12 and 2 dozen rolls" after /bring or below the question what to bring."""
    # "para 20" stands at the end as "for 20" does; the name itself stays as typed.
    told = as_read_here(words, turn.voice.language)
    amount = FOR.search(told)
    if amount is not None and not 0 < float(amount["n"].replace(",", "").strip(".") or 0) <= MOST_SERVINGS:
        raise Refusal("refused-servings", most=MOST_SERVINGS)
    reading = read(f"{turn.voice.plain('bring-told')} {words}", context(turn, replying_to="question:bring"))
    offers = [i for i in reading.intents if isinstance(i, AddPromise) and not i.vague] if reading.sure else []
    toppings = [i for i in reading.intents if isinstance(i, TakeTopping)] if reading.sure else []
    if not offers and not toppings:
        # Whoever writes /bring means a dish, however odd its name: the whole of it is the name.
        dish = told[: amount.start()].strip(" ,") if amount else words
        known = lookup(dish)
        servings = float(amount["n"].replace(",", "").strip(".")) if amount else None
        if category is None and (known.category is None or known.confidence < GUESS):
            ask_category(turn, dish, servings)
            return
        offers = [AddPromise(dish, category or known.category or "", servings)]
    understood = Understood()
    for offer in offers:
        add_dish(turn, replace(offer, category=category or offer.category), understood)
    for topping in toppings:
        take(turn, topping, understood)
    from bot.understood.acting import say_understood

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


def add_dish(turn: Turn, intent: AddPromise, understood: Understood) -> None:
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
        cook = person(turn, intent.by_name or "")
    made = add_promise(turn, cook, intent.dish, category, servings, intent.quantity)
    if intent.with_guest and turn.potluck.guest(intent.with_guest) and intent.with_guest != cook:
        turn.change(share_promise(turn.potluck, turn.actor, made.id, intent.with_guest))
    if intent.contents:
        denied = tuple(c for c in intent.contents if c.startswith("no "))
        held = tuple(c for c in intent.contents if c not in denied)
        with_contents(turn, made, Told(made.dish, held, denied))
    steps = _in_pans(_steps(intent.heat_text), intent.quantity)
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
    understood.warned = understood.warned or bool(warned)
    if warned:
        turn.warned_of.add(made.id)
    if intent.heat_text and steps is None:
        understood.lines.append(Say("read-heat-unclear", {"dish": made.dish, "words": intent.heat_text}))
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


def _in_pans(steps: tuple[HeatStep, ...] | None, quantity: str | None) -> tuple[HeatStep, ...] | None:
    """ "Two 9x13 pans, 50 min at 375": both pans take their place in the oven."""
    amount = parse(quantity) if quantity else None
    if not steps or amount is None or amount.kind != "pan":
        return steps
    pans = max(1, round(float(amount.value)))
    return tuple(replace(s, pans=pans) if s.kind == "oven" and s.pans == 1 else s for s in steps)


def _heat_words(turn: Turn, steps: tuple[HeatStep, ...] | None) -> list[str]:
    from bot.capabilities.kitchen import step_words

    return [step_words(turn, s) for s in steps or ()]


def promise_facts(turn: Turn, made: Promise) -> dict[str, Any]:
    from bot.capabilities.bringing import promise_facts as facts

    return facts(turn, made)


def change_dish(turn: Turn, intent: ChangePromise, understood: Understood) -> None:
    was = turn.potluck.promise(intent.promise)
    if was is None:
        raise Refusal("refused-no-promise")
    servings = intent.servings
    if intent.factor is not None:
        servings = servings_of(was, headcount(turn.potluck)) * intent.factor
    if intent.for_all and servings is None:
        servings = float(headcount(turn.potluck).at_service_level)
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
    key = "read-changed" if intent.dish else "read-resized"
    amount = amount_words(turn.voice, turn.potluck, now)
    understood.lines.append(Say(key, {"was": was.dish, "dish": now.dish, "amount": amount}))


def drop_dish(turn: Turn, intent: DropPromise, understood: Understood) -> None:
    own = turn.potluck.promises_of(turn.me)
    found = turn.potluck.promise(intent.promise) if intent.promise else (own[0] if len(own) == 1 else None)
    if found is None:
        raise Refusal("refused-which-promise" if own else "refused-no-own-promise", dishes=[p.dish for p in own])
    if intent.to is not None and (taker := turn.potluck.guest(intent.to)) is not None:
        turn.change(give_promise(turn.potluck, turn.actor, found.id, taker.id), "did-give", dish=found.dish)
        understood.lines.append(Say("read-given", {"dish": found.dish, "name": taker.name}))
        understood.given.append((taker, found.dish))
        return
    turn.change(drop_promise(turn.potluck, turn.actor, found.id), "did-drop", dish=found.dish)
    understood.lines.append(Say("read-dropped", {"dish": found.dish}))
    understood.lines += gaps(turn, [found.category])


def take(turn: Turn, intent: TakeTopping, understood: Understood) -> None:
    bar = turn.potluck.bar
    name = (match_topping(bar.base, intent.name) if bar else None) or intent.name
    turn.change(take_topping(turn.potluck, turn.actor, name), "did-topping", topping=name)
    understood.lines.append(Say("read-topping", {"topping": name}))
