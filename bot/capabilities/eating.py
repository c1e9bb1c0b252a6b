"""What somebody with a need can eat: what is listed, and who said so. Nothing is ever called safe."""

import re
from collections.abc import Iterable, Sequence
from dataclasses import replace

from bot.buttons import Link
from bot.capabilities.needs import need_name
from bot.context import Turn
from bot.food import food_lines, in_dish, of_dish, told_of
from bot.naming import dishes_named
from bot.registry import Registry
from bot.texts import Html
from bot.understood.spokenof import spoken_lines
from planning.changes import Refusal, may_manage
from planning.diets import DietRow, diets, foods_asked, questions_in
from planning.diets.asked import BESIDE, BUY_FOR, SUITS_WHOM
from planning.diets.table import needs_of
from planning.potluck import CATEGORIES, Answer, Guest, Promise
from planning.safety.allergens import ALLERGY, avoided, held

_OWN = re.compile(
    r"\b(?:can|could|may|should|what(?:'s| is)? (?:there )?for|anything for) "
    r"(?:i|we|he|she|they|me|us|him|her|(?:my|our) \w+)\b"
    r"|\bfor (?:me|us|him|her|my|our)\b|\b(?:puedo|podemos|podré)\b"
    r"|\bpuede(?: comer)? mi\b|\bpara (?:mí|mi|nosotros)\b",
    re.IGNORECASE,
)
"""Asked for oneself or one's own party."""
MOST_NAMED, MOST_DISHES = 3, 20


async def for_me(turn: Turn, meant: Sequence[Promise] = ()) -> None:
    """Privately where that is possible, since it names needs; where no private chat is open, what was told in the open
    is answered in the open, without a name."""
    guest = turn.guest()
    if guest is None or not guest.all_needs():
        turn.say("eat-no-needs")
        return
    if not turn.private and not turn.person.can_dm:
        said = tuple(n for n in guest.needs if n.open)
        buttons = [] if len(said) == len(guest.all_needs()) else [[_door(turn)]]
        if not said:
            turn.say("eat-in-private", buttons=buttons)
            return
        turn.post(_for(turn, replace(guest, diets=(), allergies=(), needs=said), meant), buttons=buttons)
        return
    turn.post(_for(turn, guest, meant), where="here" if turn.private else "private")


def _for(turn: Turn, guest: Guest, meant: Sequence[Promise] = ()) -> Html:
    """What the list says for one party, or of the dishes `meant` alone."""
    if meant:
        lines: list[str] = [of_dish(turn, found, need) for found in meant for need in needs_of(guest)]
    else:
        rows = diets(replace(turn.potluck, guests=(replace(guest, answer=Answer.YES),)))
        lines = [turn.voice("eat-head"), *_never(turn, guest), *_lines(turn, rows)]
    return Html("\n".join([*lines, turn.voice("eat-note")]))


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


async def asked(turn: Turn, words: str | None = None) -> None:
    """ "What has peanuts?", "is the soup vegan?", "what's in the brownies?"; else what the asker can eat.

    Of a message that also tells something only the questions count, so that "my son is allergic to peanuts, what can
    he eat?" is after him."""
    told = turn.words if words is None else words
    told = BESIDE.sub(" ", " ".join(questions_in(told)) or told)
    dishes = (*turn.potluck.promises, *_being_asked(turn))
    if (who := _guest_asked_for(turn, told)) is not None:
        meant = dishes_named(turn, foods_asked(told, dishes)[1], dishes)
        told_of_guest(turn, who, meant[0] if len(meant) == 1 else None)
        return
    if BUY_FOR.search(told.casefold()) and may_manage(turn.potluck, turn.actor):
        aloud = not turn.private and not turn.person.can_dm
        _whole_table(turn, aloud=aloud, where="here" if aloud or turn.private else "private")
        return
    foods, rest = foods_asked(told, dishes)
    meant = dishes_named(turn, rest, dishes)
    guest = turn.guest()
    if _OWN.search(told) and ((guest is not None and guest.all_needs()) or not foods):
        await for_me(turn, meant)
        return
    if meant:
        lines = [line for one in foods for line in food_lines(turn, one, meant, alone=True)]
        lines = lines or [in_dish(turn, found) for found in meant]
    else:
        lines = [line for one in foods for line in food_lines(turn, one, dishes)]
        lines += await spoken_lines(turn, tuple(foods))
    if not lines:
        await for_me(turn)
        return
    turn.post(Html("\n".join([*lines, turn.voice("eat-note")])))


def _guest_asked_for(turn: Turn, words: str) -> Guest | None:
    """Somebody else of this table the question is about: "is the lasagna ok for Yuki?"."""
    asked_for = SUITS_WHOM.search(words.casefold())
    name = next((w for w in (asked_for.groupdict().values() if asked_for else ()) if w), "")
    found = [g for g in turn.potluck.guests if g.id != turn.me and g.name.casefold().split()[:1] == [name]]
    return found[0] if len(found) == 1 else None


def told_of_guest(turn: Turn, guest: Guest, dish: Promise | None) -> None:
    """ "Is the lasagna ok for Yuki?": to the host and to Yuki by Yuki's needs; to others what is in it, and to ask her.

    What somebody cannot eat is not said in the group."""
    mine = guest.id == turn.me or may_manage(turn.potluck, turn.actor)
    if not mine:
        if dish is not None:
            turn.say("eat-ask-them", name=guest.name, held=in_dish(turn, dish), known=True)
        else:
            turn.say("eat-ask-them", name=guest.name, held="", known=False)
        return
    needs = [one.need for one in guest.all_needs()]
    dishes = [dish] if dish is not None else [p for p in turn.potluck.promises if p.category != "supplies"]
    if not needs:
        turn.say("eat-none-told", name=guest.name)
        return
    lines: list[str] = [turn.voice("eat-for-guest", name=guest.name)]
    for one in dishes[:MOST_DISHES]:
        said = "; ".join(str(told_of(turn.voice, one, need)).rstrip(".") for need in needs[:MOST_NAMED])
        lines.append(turn.voice("eat-of-dish", dish=one.dish, said=Html(said), name=""))
    text = Html("\n".join([*lines, turn.voice("eat-note")]))
    if turn.private:
        turn.post(text)
    elif turn.person.can_dm:
        turn.post(text, where="private")
        turn.say("eat-told-private")
    else:
        turn.say("eat-in-private", buttons=[[_door(turn)]])


def _being_asked(turn: Turn) -> tuple[Promise, ...]:
    """The dish whose kind its cook is being asked for: it is not on the list yet, but known of."""
    if turn.dialog is None or turn.dialog.kind != "bringas":
        return ()
    return (Promise("", turn.me, str(turn.dialog.data["dish"]), "main"),)


def _door(turn: Turn) -> Link:
    return Link(turn.voice.plain("button-private"), turn.own_link("eat"))


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
    _whole_table(turn)


def _whole_table(turn: Turn, *, aloud: bool = False, where: str = "here") -> None:
    """`aloud`: only what was told in the open."""
    potluck = turn.potluck
    if aloud:
        told = tuple(
            replace(g, diets=(), allergies=(), needs=tuple(n for n in g.needs if n.open)) for g in potluck.guests
        )
        potluck = replace(potluck, guests=told)
    rows = diets(potluck)
    if not rows:
        turn.say("eat-nobody-needs")
        return
    merged = {(r.need, r.category): r for r in rows}
    text = Html("\n".join([turn.voice("eat-head-all"), *_lines(turn, merged.values()), turn.voice("eat-note")]))
    turn.post(text, where=where)


def register(app: Registry) -> None:
    app.command("eat", command, order=23)
    app.link("eat", for_me)
