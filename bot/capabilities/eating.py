"""What somebody with a need can eat: what is listed, and who said so. Nothing is ever called safe."""

import re
from collections.abc import Iterable
from dataclasses import replace

from bot.buttons import Link
from bot.capabilities.needs import need_name
from bot.context import Turn
from bot.naming import dish_named
from bot.registry import Registry
from bot.texts import Html
from planning.changes import Refusal, may_manage
from planning.diets import DietRow, diets, listed, need_of, need_words, rule_of, say_of
from planning.potluck import CATEGORIES, Answer, Guest, Promise
from planning.safety.allergens import ALLERGY, Avoided, avoided, held


async def for_me(turn: Turn) -> None:
    """Privately where that is possible, since it names needs."""
    guest = turn.guest()
    if guest is None or not guest.all_needs():
        turn.say("eat-no-needs")
        return
    rows = [r for r in diets(turn.potluck) if r.guest == guest.id]
    lines = [turn.voice("eat-head"), *_never(turn, guest), *_lines(turn, rows), turn.voice("eat-note")]
    text = Html("\n".join(lines))
    if turn.private or not turn.person.can_dm:
        if turn.private:
            turn.post(text)
        else:
            turn.say("eat-in-private", buttons=[[_door(turn)]])
        return
    turn.post(text, where="private")


def _never(turn: Turn, guest: Guest) -> list[str]:
    """The dishes that hold what somebody of this party is allergic to, or usually do: named first."""
    potluck = replace(turn.potluck, guests=(replace(guest, answer=Answer.YES),))
    needs = [one for one in avoided(potluck) if one.degree >= ALLERGY]
    lines: list[str] = []
    for promise in turn.potluck.promises:
        if promise.category == "supplies":
            continue
        hows = {one.need: how for one in needs if (how := held(promise, one))}
        hit = [n for n, how in hows.items() if how != "perhaps"]
        if hit:
            sure = any(hows[n] in ("listed", "named") for n in hit)
            names = list(dict.fromkeys(need_name(turn.voice, n) for n in hit))
            lines.append(turn.voice("eat-never", dish=promise.dish, needs=names, sure=sure))
    return lines


async def asked(turn: Turn) -> None:
    """ "What has peanuts?", "is there egg in the slaw?", "what's in the brownies?"; else what the asker can eat."""
    dishes = (*turn.potluck.promises, *_being_asked(turn))
    needs, rest = needs_named(turn.words, dishes)
    if _OWN.search(turn.words):
        needs = []
    found = dish_named(turn, rest, dishes)
    if found is not None and needs:
        lines = [turn.voice("eat-of-dish", dish=found.dish, said=turn.voice.say(say_of(found, n))) for n in needs]
    elif found is not None and not _OWN.search(turn.words):
        lines = [_in_dish(turn, found)]
    elif needs:
        lines = [line for need in needs for line in _who_has(turn, need, dishes)]
    else:
        await for_me(turn)
        return
    turn.post(Html("\n".join([*lines, turn.voice("eat-note")])))


_OWN = re.compile(r"\b(?:i|we|me|us|my|our|yo|mi|mis|nosotros|puedo|podemos)\b", re.IGNORECASE)
MOST_NAMED, MOST_DISHES = 3, 20


def needs_named(words: str, dishes: Iterable[Promise] = ()) -> tuple[list[str], str]:
    """The allergens and diets these words name, each once, and the words without them.

    A word of a dish's name is no need by what such a dish usually holds ("slaw" is not egg)."""
    spoken = re.findall(r"[^\W\d_]+(?:['’-][^\W\d_]+)*", words.casefold())
    named = {word for promise in dishes for word in promise.dish.casefold().split()}
    known = frozenset(need_words())
    found: dict[str, None] = {}
    rest: list[str] = []
    at = 0
    while at < len(spoken):
        for length in (3, 2, 1):
            phrase = " ".join(spoken[at : at + length])
            forms = {phrase, phrase.removesuffix("s")}
            foreign = length == 1 and len(phrase) > 2 and phrase not in named
            need = need_of(phrase) if at + length <= len(spoken) and (forms & known or foreign) else None
            if need is not None:
                found.setdefault(need[0])
                break
        else:
            rest.append(spoken[at])
            length = 1
        at += length
    return list(found)[:MOST_NAMED], " ".join(rest)


def _being_asked(turn: Turn) -> tuple[Promise, ...]:
    """The dish whose kind its cook is being asked for: it is not on the list yet, but known of."""
    if turn.dialog is None or turn.dialog.kind != "bringas":
        return ()
    return (Promise("", turn.me, str(turn.dialog.data["dish"]), "main"),)


def _who_has(turn: Turn, need: str, dishes: Iterable[Promise]) -> list[Html]:
    """Each dish with it, by its cook's words, by its name or as usually made; and of which nobody has said anything."""
    name = turn.voice.plain("prints-need", need=need)
    rule = rule_of(need)
    one = Avoided(need, rule.avoids if rule else frozenset(), ALLERGY)
    lines, open_ = [], []
    if rule is not None and rule.kind == "diet":
        # "What is vegan?" asks what suits, not what holds it: the one line of each dish says both.
        said = [(p.dish, turn.voice.say(say_of(p, need))) for p in dishes if p.category != "supplies"]
        return [turn.voice("eat-of-dish", dish=dish, said=what) for dish, what in said[:MOST_DISHES]]
    for promise in dishes:
        if promise.category == "supplies":
            continue
        how = held(promise, one)
        if how:
            needs = [turn.voice.plain("allergy-of", need=need)]
            lines.append(turn.voice("allergy-dish", dish=promise.dish, how=how, needs=needs, names=[]))
        elif not promise.ingredients:
            open_.append(promise.dish)
    head = turn.voice("eat-who-has", what=name, n=len(lines))
    return [head, *lines, *([turn.voice("eat-who-unknown", dishes=open_)] if open_ else [])]


def told_of_guest(turn: Turn, guest: Guest, dish: Promise | None) -> None:
    """ "Is the lasagna ok for Yuki?": to the host and to Yuki by Yuki's needs; to others what is in it, and to ask her.

    What somebody cannot eat is not said in the group."""
    mine = guest.id == turn.me or may_manage(turn.potluck, turn.actor)
    if not mine:
        if dish is not None:
            turn.say("eat-ask-them", name=guest.name, about=_in_dish(turn, dish), known=True)
        else:
            turn.say("eat-ask-them", name=guest.name, about="", known=False)
        return
    needs = [one.need for one in guest.all_needs()]
    dishes = [dish] if dish is not None else [p for p in turn.potluck.promises if p.category != "supplies"]
    if not needs:
        turn.say("eat-none-told", name=guest.name)
        return
    lines = [turn.voice("eat-for-guest", name=guest.name)]
    for one in dishes[:MOST_DISHES]:
        said = "; ".join(str(turn.voice.say(say_of(one, need))).rstrip(".") for need in needs[:MOST_NAMED])
        lines.append(turn.voice("eat-of-dish", dish=one.dish, said=Html(said)))
    text = Html("\n".join([*lines, turn.voice("eat-note")]))
    if turn.private:
        turn.post(text)
    elif turn.person.can_dm:
        turn.post(text, where="private")
        turn.say("eat-told-private")
    else:
        turn.say("eat-in-private", buttons=[[_door(turn)]])


def _in_dish(turn: Turn, found: Promise) -> Html:
    """What is in it, by its cook's words or as usually made."""
    what = listed(found)
    contains = [turn.voice.plain("prints-need", need=a) for a in sorted(what.contains)]
    items, basis = list(found.ingredients or ()), what.basis.replace(" ", "-")
    return turn.voice("eat-in-dish", dish=found.dish, contains=contains, items=items, basis=basis)


def _door(turn: Turn) -> Link:
    return Link(turn.voice.plain("button-private"), turn.deep_link("eat", turn.potluck.id))


def _lines(turn: Turn, rows: Iterable[DietRow]) -> list[str]:
    lines: list[str] = []
    for row in sorted(rows, key=lambda r: (r.need, CATEGORIES.index(r.category))):
        dishes = [p.dish for i in row.safe_promises if (p := turn.potluck.promise(i))]
        ask = []
        for i in row.ask_first:
            promise = turn.potluck.promise(i)
            cook = promise and turn.potluck.guest(promise.guest)
            if promise and cook:
                ask.append(turn.voice.plain("eat-ask-cook", dish=promise.dish, name=cook.name))
        lines.append(
            turn.voice(
                "eat-row",
                need=need_name(turn.voice, row.need),
                category=turn.voice.plain(f"category-{row.category}"),
                dishes=dishes,
                n=len(dishes),
                ask=ask,
                m=len(ask),
                short=row.short,
            )
        )
    return lines


async def command(turn: Turn) -> None:
    """/eat for oneself; for hosts in private "/eat all" shows the whole table, without names."""
    if turn.words.casefold() != "all":
        await for_me(turn)
        return
    if not may_manage(turn.potluck, turn.actor):
        raise Refusal("refused-not-host", host="")
    rows = diets(turn.potluck)
    if not rows:
        turn.say("eat-nobody-needs")
        return
    merged = {(r.need, r.category): r for r in rows}
    turn.post(Html("\n".join([turn.voice("eat-head-all"), *_lines(turn, merged.values()), turn.voice("eat-note")])))


def register(app: Registry) -> None:
    app.command("eat", command, order=23)
    app.link("eat", for_me)
