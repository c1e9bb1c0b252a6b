"""How a dish is heated, by command, by button or in the cook's own words; what is frozen; when a cook comes."""

from collections.abc import Sequence
from dataclasses import replace

from bot.buttons import Button
from bot.capabilities.kitchen import step_words, with_conflicts
from bot.context import Turn
from bot.registry import Registry
from bot.texts import Html
from planning.changes import Refusal, change_promise, may_manage
from planning.kitchen.units import KG_PER_LB
from planning.kitchen.usual import HEATING, estimates, heated_at
from planning.kitchen_words import Unread, cooking_words, read_steps, taken_as_celsius
from planning.potluck import HeatStep, Promise, Stage
from planning.safety.thaw import thaw_days
from planning.when import as_read_here

COOKING = "words_cooking"


async def heat(turn: Turn) -> None:
    """/heat lasagna: 40 minutes at 375, covered - the cook knows best."""
    from bot.capabilities.bringing import find_promise

    head, colon, rest = turn.words.partition(":")
    if not colon:
        raise Refusal("refused-heat-words")
    found = find_promise(turn, head, mine_only=not may_manage(turn.potluck, turn.actor))
    try:
        steps = read_steps(as_read_here(rest, turn.voice.language, COOKING), metric=turn.potluck.units == "metric")
    except Unread as unread:
        raise Refusal("refused-heat-words", words=unread.words) from None
    await _heated(turn, found, steps)


async def _heated(turn: Turn, found: Promise, steps: tuple[HeatStep, ...], *, reply: bool | None = None) -> None:
    serve = found.serve or ("hot" if any(s.kind in HEATING for s in steps) else None)
    turn.change(change_promise(turn.potluck, turn.actor, found.id, heat=steps, serve=serve), "did-heat")
    wrong = next((s.temp_f for s in steps if s.temp_f is not None and not 100 <= s.temp_f <= 600), None)
    if wrong is not None:
        raise Refusal("refused-oven-temperature", temp=round(wrong))
    noted = turn.voice("heat-noted", dish=found.dish, steps=[step_words(turn, s) for s in steps])
    words = as_read_here(turn.words, turn.voice.language, COOKING) if turn.event.kind == "message" else ""
    figure = taken_as_celsius(words, metric=turn.potluck.units == "metric")
    if figure is not None and any(s.kind == "oven" for s in steps):
        noted = Html(f"{noted} {turn.voice('heat-taken-celsius', n=figure)}")
    guest = turn.potluck.guest(found.guest)
    away = guest is not None and guest.id != turn.potluck.host
    rows = []
    if away and all(s.at == "venue" for s in steps):
        rows.append([Button(turn.voice.plain("button-at-home", dish=found.dish), "athome", (found.id,))])
    await with_conflicts(turn, noted, found.id, rows, reply=reply)


async def usual(turn: Turn) -> None:
    """The cook takes the estimate over: heated so, here or at home."""
    promise_id, place = turn.args
    found = next((e for e in estimates(turn.potluck) if e.promise == promise_id), None)
    if found is None:
        raise Refusal("refused-no-promise")
    turn.toast("answer-below")
    await _heated(turn, turn.known_promise(promise_id), heated_at(found.steps, place), reply=False)


async def at_home(turn: Turn) -> None:
    promise = turn.known_promise(turn.args[0])
    turn.toast("answer-below")
    await _heated(turn, promise, heated_at(promise.heat or (), "home"), reply=False)


async def read_cooking(turn: Turn) -> None:
    """Words of nothing but cooking, said to the bot: "needs 40 minutes at 375"."""
    event = turn.event
    if not turn.has_potluck or not event.is_words:
        return
    potluck = turn.potluck
    said_to_us = event.private or event.reply_to_bot
    if potluck.stage is not Stage.PLANNED or event.person.anonymous or (event.reply_to is not None and not said_to_us):
        return
    food = [p for p in potluck.promises if p.category not in ("drink", "supplies")]
    own = [p for p in food if turn.me in (p.guest, *p.sharers)]
    pool = food if may_manage(potluck, turn.actor) else own
    metric = potluck.units == "metric"
    read = cooking_words(turn.words, [p.dish for p in pool], metric=metric)
    if read is None or (read[0] is None and not said_to_us):
        return
    name, steps = read
    meant = [p for p in pool if p.dish == name] if name is not None else _meant(own or pool, event.reply_text)
    if not meant:
        return
    turn.handled = True
    if len({p.dish for p in meant}) > 1:
        raise Refusal("refused-which-promise", dishes=[p.dish for p in meant])
    await _heated(turn, next((p for p in meant if p in own), meant[0]), steps)


def _meant(pool: Sequence[Promise], replied: str) -> list[Promise]:
    """The dishes named in the message replied to, else all there are."""
    named = [p for p in pool if p.dish.casefold() in replied.casefold()]
    return named or list(pool)


async def frozen(turn: Turn) -> None:
    """/frozen turkey 14 lb: thawing takes days in the refrigerator."""
    from bot.capabilities.bringing import find_promise
    from planning.amounts import parse, to_unit

    words = turn.words.split()
    amount = None
    for split in range(len(words)):
        amount = parse(" ".join(words[split:]))
        if amount is not None and amount.kind == "mass":
            break
    else:
        raise Refusal("refused-frozen-words")
    found = find_promise(turn, " ".join(words[:split]), mine_only=not may_manage(turn.potluck, turn.actor))
    pounds = float(to_unit(amount, "lb") or 0)
    turn.change(change_promise(turn.potluck, turn.actor, found.id, frozen_lb=pounds), "did-frozen", dish=found.dish)
    noted = turn.voice(
        "frozen-noted", dish=found.dish, lb=round(pounds, 1), kg=round(pounds * KG_PER_LB, 1), days=thaw_days(pounds),
        metric="yes" if turn.potluck.units == "metric" else "no",
    )  # fmt: skip
    await with_conflicts(turn, noted, found.id)


async def arrive(turn: Turn) -> None:
    """/arrive 4pm: when this guest comes with their dishes."""
    from bot.capabilities.hosting import understand_when
    from bot.capabilities.mylist import show

    potluck = turn.potluck
    day = potluck.local(potluck.starts_at).date()
    said = understand_when(turn, f"{day.isoformat()} {turn.words}")
    if not said.has_time or said.starts_at > potluck.ends:
        raise Refusal("refused-arrive")
    mine = potluck.promises_of(turn.me)
    if not mine:
        raise Refusal("refused-no-own-promise")
    promises = tuple(replace(p, arrives_at=said.starts_at) if p in mine else p for p in potluck.promises)
    turn.change(replace(potluck, promises=promises), "did-arrive")
    await show(turn)


def register(app: Registry) -> None:
    app.command("heat", heat, order=71)
    app.command("frozen", frozen, order=72)
    app.command("arrive", arrive, order=73)
    app.button("usualhot", usual)
    app.button("athome", at_home)
    app.reader(read_cooking, order=45)
