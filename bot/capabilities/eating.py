"""What somebody with a need can eat: what is listed, and who said so. Nothing is ever called safe."""

from collections.abc import Iterable
from dataclasses import replace

from bot.buttons import Link
from bot.capabilities.needs import need_name
from bot.context import Turn
from bot.registry import Registry
from bot.texts import Html
from planning.changes import Refusal, may_manage
from planning.diets import DietRow, diets
from planning.potluck import CATEGORIES, Answer, Guest
from planning.safety.allergens import ALLERGY, avoided, held


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
