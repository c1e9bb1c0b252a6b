"""What the list says of a food or a diet, dish by dish, and who said so; nothing is ever called safe."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from bot.context import Turn
from bot.texts import Html, Voice
from planning.diets import Asked, can_eat, holds_food, listed, rule_of, say_of
from planning.diets.asked import DIET, FOOD
from planning.potluck import Promise
from planning.safety.allergens import ALLERGY, Avoided, held


def food_lines(turn: Turn, asked: Asked, dishes: Sequence[Promise], *, alone: bool = False) -> list[Html]:
    """`alone`: these dishes were asked about by name, so that each gets its line."""
    dishes = [p for p in dishes if p.category != "supplies"]
    if asked.sense == FOOD:
        return _with_food(turn, asked, dishes, alone=alone)
    if alone:
        return [of_dish(turn, found, asked.need) for found in dishes]
    return _suits(turn, asked.need, dishes) if asked.sense == DIET else _who_has(turn, asked.need, dishes)


def of_dish(turn: Turn, found: Promise, need: str) -> Html:
    """One dish and one need, and whose word it hangs on."""
    unsure = not found.ingredients and can_eat(found, need) != "listed-free"
    name = _cook(turn, found) if unsure else ""
    return turn.voice("eat-of-dish", dish=found.dish, said=told_of(turn.voice, found, need), name=name)


def told_of(voice: Voice, promise: Promise, need: str) -> Html:
    """One line on a dish and a need; what it holds goes by the words of the paper cards."""
    said = say_of(promise, need)
    marks = said.facts.get("marks")
    if not isinstance(marks, str):
        return voice.say(said)
    return voice(said.key, **{**said.facts, "marks": ", ".join(mark_name(voice, one) for one in marks.split(", "))})


def mark_name(voice: Voice, mark: str) -> str:
    """What a dish holds, by the words of the paper cards."""
    said = str(voice.plain("prints-mark", mark=mark))
    return str(voice.plain("prints-need", need=mark)) if said == mark else said


def _cook(turn: Turn, promise: Promise) -> str:
    cook = turn.potluck.guest(promise.guest)
    return cook.name if cook is not None and cook.id != turn.me else ""


def _named(turn: Turn, dishes: Iterable[Promise]) -> list[str]:
    made = []
    for promise in dishes:
        cook = turn.potluck.guest(promise.guest)
        name = cook.name if cook is not None else ""
        made.append(turn.voice.plain("eat-ask-cook", dish=promise.dish, name=name) if name else promise.dish)
    return made


def _suits(turn: Turn, need: str, dishes: Sequence[Promise]) -> list[Html]:
    """A diet: what its cook listed without anything against it, what must be asked, and what does not suit."""
    voice = turn.voice
    verdicts = [(p, can_eat(p, need)) for p in dishes]
    fits = [p.dish for p, found in verdicts if found == "listed-free"]
    ask = [p for p, found in verdicts if found == "ask"]
    lines = [voice("eat-suits", need=voice.plain("prints-need", need=need), dishes=fits, n=len(fits))]
    if ask:
        lines.append(voice("eat-suits-ask", dishes=_named(turn, ask)))
    for promise, found in verdicts:
        if found == "contains":
            said = told_of(voice, promise, need)
            lines.append(voice("eat-suits-not", dish=promise.dish, said=said))
    return lines


def _who_has(turn: Turn, need: str, dishes: Sequence[Promise]) -> list[Html]:
    """Each dish with it, by its cook's words, by its name or as usually made; and of which nobody has said anything."""
    rule = rule_of(need)
    one = Avoided(need, rule.avoids if rule else frozenset(), ALLERGY)
    lines, open_, free = [], [], []
    thing = turn.voice.plain("allergy-of", need=need)
    for promise in dishes:
        how = held(promise, one)
        if how:
            lines.append(turn.voice("allergy-dish", dish=promise.dish, how=how, needs=[thing], names=[]))
        elif can_eat(promise, need) == "listed-free":
            free.append(promise.dish)
        else:
            open_.append(promise)
    head = turn.voice("eat-who-has", what=thing, n=len(lines))
    if free:
        lines.append(turn.voice("eat-who-free", what=thing, dishes=free))
    return [head, *lines, *([turn.voice("eat-who-unknown", dishes=_named(turn, open_))] if open_ else [])]


def _with_food(turn: Turn, asked: Asked, dishes: Sequence[Promise], *, alone: bool) -> list[Html]:
    """A food that is no allergen's own name ("mayo", "onion"): in which dishes it is, says who."""
    hows = [(p, holds_food(p, asked)) for p in dishes]
    found = [pair for pair in hows if pair[1] in ("listed", "named", "usual")]
    if alone:
        found = hows
    lines = [] if alone else [turn.voice("eat-who-has", what=asked.words, n=len(found))]
    for promise, how in found:
        name = _cook(turn, promise) if how in ("usual", "open") else ""
        lines.append(turn.voice("eat-food", dish=promise.dish, what=asked.words, how=how, name=name))
    unsaid = [p for p, how in hows if how == "open"] if not alone else []
    if unsaid:
        lines.append(turn.voice("eat-who-unknown", dishes=_named(turn, unsaid)))
    return lines


def in_dish(turn: Turn, found: Promise) -> Html:
    """All that is known to be in one dish."""
    what = listed(found)
    contains = [turn.voice.plain("prints-need", need=a) for a in sorted(what.contains)]
    items, basis = list(found.ingredients or ()), what.basis.replace(" ", "-")
    return turn.voice("eat-in-dish", dish=found.dish, contains=contains, items=items, basis=basis)
