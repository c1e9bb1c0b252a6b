"""The toppings bar: its base, who takes which topping, which combos are open and what the next one needs."""

from collections.abc import Iterable, Iterator

from bot.board import Facts
from bot.buttons import Button, Link, mark
from bot.context import Turn
from bot.goods import goods, meant
from bot.registry import Registry
from bot.texts import Voice
from planning.bar import (
    amounts,
    base_named,
    bases,
    combos,
    combos_for,
    curve,
    match_topping,
    next_toppings,
    toppings_for,
)
from planning.changes import Refusal, add_combo, add_topping, close_bar, drop_topping, open_bar, take_topping
from planning.headcount import Headcount, headcount
from planning.potluck import Potluck

PAGE = 10
CURVE = 4
"""How many further toppings the line of "with one more, with two more" looks ahead."""
WORDS_OFF = ("off", "none", "close", "no bar")


async def command(turn: Turn) -> None:
    """/bar shows it; /bar baked potato chooses the base; /bar add X; /bar combo Name: a, b; /bar off."""
    words = turn.words.strip()
    if not words:
        await show(turn)
    elif words.casefold() in WORDS_OFF:
        turn.change(close_bar(turn.potluck, turn.actor), "did-bar")
        turn.say("bar-closed", buttons=[[turn.undo_button()]])
    elif words.casefold().startswith("add "):
        name = words[4:]
        turn.change(add_topping(turn.potluck, turn.actor, name), "did-bar")
        turn.say("bar-topping-added", topping=name.casefold(), buttons=[[turn.undo_button()]])
    elif words.casefold().startswith("combo "):
        await own_combo(turn, words[6:])
    elif turn.potluck.bar is not None and base_named(words) is None and (topping := _topping_meant(turn, words)):
        turn.change(take_topping(turn.potluck, turn.actor, topping), "did-topping", topping=topping)
        turn.say(
            "bar-yours",
            topping=goods(turn.voice, topping),
            opened=[],
            n=0,
            amount=_amount(turn, topping, headcount(turn.potluck)),
            buttons=[[turn.undo_button()]],
        )
    else:
        choose(turn, words)
        turn.say(
            "bar-chosen",
            base=goods(turn.voice, turn.known_bar().base),
            n=len(_names(turn.potluck)),
            buttons=[[Button(turn.voice.plain("button-bar"), "baropen")]],
        )


def _topping_meant(turn: Turn, words: str) -> str | None:
    """A topping of the bar in these words, or one of the host's own list."""
    bar = turn.known_bar()
    own = next((t.name for t in bar.toppings if t.name == words.casefold().strip()), None)
    return own or match_topping(bar.base, meant(turn.voice, words))


def choose(turn: Turn, words: str) -> None:
    base = words.casefold().removesuffix(" bar").strip()
    turn.change(open_bar(turn.potluck, turn.actor, base_named(base) or base), "did-bar")


async def own_combo(turn: Turn, words: str) -> None:
    name, colon, rest = words.partition(":")
    if not colon or turn.potluck.bar is None:
        raise Refusal("refused-combo-words" if turn.potluck.bar else "refused-no-bar")
    base = turn.potluck.bar.base
    parts = tuple(match_topping(base, t) or t.strip() for t in rest.replace(" and ", ",").split(",") if t.strip())
    turn.change(add_combo(turn.potluck, turn.actor, name.strip(), parts, combos_for(base)), "did-bar")
    turn.say("bar-combo-added", name=name.strip(), toppings=list(parts), buttons=[[turn.undo_button()]])


def _names(potluck: Potluck) -> tuple[str, ...]:
    bar = potluck.bar
    return tuple(dict.fromkeys((*(t.name for t in bar.toppings), *toppings_for(bar.base)))) if bar else ()


def describe(turn: Turn) -> str:
    """Combos that are open, what the next one needs, and the amounts of what is taken."""
    potluck, voice = turn.potluck, turn.voice
    count = headcount(potluck)
    states = combos(potluck)
    lines = [voice("bar-head", base=goods(voice, turn.known_bar().base))]
    for t in turn.known_bar().toppings:
        holder = potluck.guest(t.guest)
        if holder is not None:
            amount = _amount(turn, t.name, count)
            lines.append(voice("bar-taken", topping=goods(voice, t.name), name=holder.name, amount=amount))
    open_now = [s.name for s in states if s.possible]
    lines.append(voice("bar-open", names=open_now, n=len(open_now)))
    nearest = next((s for s in states if not s.possible), None)
    if nearest is not None:
        lines.append(
            voice("bar-nearest", name=nearest.name, missing=_said(voice, nearest.missing), n=len(nearest.missing))
        )
    best = next_toppings(potluck, count)
    opened = [name for step in best for name in step.opens]
    if best:
        toppings = _said(voice, (s.topping for s in best))
        lines.append(voice("bar-best", toppings=toppings, n=len(best), opens=opened, m=len(opened)))
    further = [(n, m) for n, m in curve(potluck, CURVE) if n and m > len(open_now)]
    if len({m for _, m in further}) > 1:
        lines.append(voice("bar-curve", steps=[voice.plain("bar-curve-step", n=n, m=m) for n, m in further]))
    return "\n".join(lines)


def _said(voice: Voice, names: Iterable[str]) -> list[str]:
    return [goods(voice, name) for name in names]


def _amount(turn: Turn, topping: str, count: Headcount) -> str:
    names = (topping, match_topping(turn.known_bar().base, topping))
    row = next((a for a in amounts(turn.potluck, count) if a.topping in names), None)
    return turn.voice.plain("bar-amount", value=row.buy, unit=goods(turn.voice, row.buy_unit)) if row else ""


def rows(turn: Turn, page: int) -> list[list[Button]]:
    bar = turn.known_bar()
    held = {t.name: t.guest for t in bar.toppings if t.guest is not None}
    wanted = [s.topping for s in next_toppings(turn.potluck, headcount(turn.potluck))]
    names = sorted(_names(turn.potluck), key=lambda n: (held.get(n) not in (None, turn.me), n not in wanted))
    shown = names[page * PAGE : (page + 1) * PAGE]
    cells = []
    for name in shown:
        sign = "✓ " if held.get(name) == turn.me else "• " if name in held else "★ " if name in wanted else ""
        cells.append(Button(sign + goods(turn.voice, name), "bart", (mark(name), str(page))))
    grid = [cells[i : i + 2] for i in range(0, len(cells), 2)]
    turns = []
    if page > 0:
        turns.append(Button(turn.voice.plain("button-back"), "barp", (str(page - 1),)))
    if len(names) > (page + 1) * PAGE:
        turns.append(Button(turn.voice.plain("button-more"), "barp", (str(page + 1),)))
    return [*grid, turns]


async def show(turn: Turn) -> None:
    if turn.potluck.bar is None:
        turn.say("bar-none", bases=_said(turn.voice, bases()), buttons=base_rows(turn))
        return
    turn.post(describe(turn), buttons=rows(turn, 0), about="bar")


def base_rows(turn: Turn) -> list[list[Button]]:
    cells = [Button(goods(turn.voice, base), "barbase", (mark(base),)) for base in bases()]
    return [cells[i : i + 2] for i in range(0, len(cells), 2)]


async def base_button(turn: Turn) -> None:
    base = next((b for b in bases() if mark(b) == turn.args[0]), None)
    if base is None:
        raise Refusal("refused-button-old")
    choose(turn, base)
    turn.edit_pressed(
        "bar-chosen",
        base=goods(turn.voice, base),
        n=len(_names(turn.potluck)),
        buttons=[[Button(turn.voice.plain("button-bar"), "baropen")]],
    )
    turn.toast("bar-chosen-toast", base=goods(turn.voice, base))


async def open_button(turn: Turn) -> None:
    await show(turn)
    turn.toast("answer-below")


async def page(turn: Turn) -> None:
    if turn.potluck.bar is None:
        raise Refusal("refused-no-bar")
    _redraw(turn, int(turn.args[0]))
    turn.toast("answer-below")


def _redraw(turn: Turn, page_number: int) -> None:
    turn.edit_pressed_html(describe(turn), buttons=rows(turn, page_number))


async def take(turn: Turn) -> None:
    """A press takes a topping nobody has, and gives back one's own."""
    if turn.event.person.anonymous:
        raise Refusal("refused-anonymous")
    wanted, page_number = turn.args
    name = next((n for n in _names(turn.potluck) if mark(n) == wanted), None)
    if name is None or turn.potluck.bar is None:
        raise Refusal("refused-button-old")
    mine = any(t.name == name and t.guest == turn.me for t in turn.potluck.bar.toppings)
    was_open = {s.name for s in combos(turn.potluck) if s.possible}
    if mine:
        turn.change(drop_topping(turn.potluck, turn.actor, name), "did-drop", dish=name)
        turn.toast("bar-given-back", topping=goods(turn.voice, name))
    else:
        turn.change(take_topping(turn.potluck, turn.actor, name), "did-topping", topping=name)
        opened = [s.name for s in combos(turn.potluck) if s.possible and s.name not in was_open]
        amount = _amount(turn, name, headcount(turn.potluck))
        turn.toast("bar-yours", topping=goods(turn.voice, name), opened=opened, n=len(opened), amount=amount)
    _redraw(turn, int(page_number))


def lines(potluck: Potluck, voice: Voice, facts: Facts) -> Iterator[str]:
    if potluck.bar is None:
        return
    states = combos(potluck)
    open_now = [s.name for s in states if s.possible]
    taken = [t.name for t in potluck.bar.toppings if t.guest is not None]
    yield voice(
        "board-bar",
        base=goods(voice, potluck.bar.base),
        taken=_said(voice, taken)[: facts.most * 2],
        n=len(taken),
        more=max(0, len(taken) - facts.most * 2),
    )
    if open_now:
        yield voice("board-bar-open", names=open_now[: facts.most], n=len(open_now))
    nearest = next((s for s in states if not s.possible), None)
    if nearest is not None and len(nearest.missing) <= 3:
        yield voice("board-bar-next", name=nearest.name, missing=_said(voice, nearest.missing))


def button(potluck: Potluck, voice: Voice, facts: Facts) -> Iterator[list[Button | Link]]:
    if potluck.bar is not None:
        yield [Button(voice.plain("button-bar"), "baropen")]


def register(app: Registry) -> None:
    app.command("bar", command, order=15)
    app.button("barbase", base_button)
    app.button("baropen", open_button)
    app.button("barp", page)
    app.button("bart", take)
    app.on_board(50, lines=lines, buttons=button)
