"""Asks: who could bring what. The host sees three ways for every gap; one tap sends an ask into the chat."""

from bot.buttons import Button
from bot.context import Turn
from bot.goods import goods
from bot.outgoing import mention
from bot.registry import Registry
from bot.servings import one_ask
from bot.texts import Html
from bot.understood import add_promise
from planning.asks import Ask
from planning.changes import Refusal, decline
from planning.dishes import lookup
from planning.potluck import CATEGORIES

MOST_SHOWN = 12


async def show(turn: Turn) -> None:
    """For every gap: ask somebody, cook it yourself, or buy it - with servings, cost, time and a reason."""
    turn.hosts_only()
    made = await turn.services.planner.plan(turn.potluck, turn.now)
    chosen = [a for a in made.asks if not a.alternative]
    others = [a for a in made.asks if a.alternative]
    lines: list[str] = [turn.voice("asks-head", n=len(made.asks))]
    lines += [_line(turn, a) for a in chosen[:MOST_SHOWN]]
    if others:
        lines.append(turn.voice("asks-others"))
        lines += [_line(turn, a) for a in others[:MOST_SHOWN]]
    where = "private" if turn.person.can_dm else "here"
    turn.post(
        Html("\n".join(lines)),
        buttons=_rows(turn, made.asks),
        where=where,
        reply=False if turn.event.kind == "press" else None,
    )
    if turn.event.kind == "press":
        turn.toast("bring-see-private" if where == "private" and not turn.private else "answer-below")


def _line(turn: Turn, ask: Ask) -> str:
    guest = turn.potluck.guest(ask.guest)
    return turn.voice(
        f"asks-{ask.how}",
        name=guest.name if guest else "",
        dish=goods(turn.voice, ask.dish),
        category=turn.voice.plain(f"category-{ask.category}"),
        servings=round(ask.servings),
        why=turn.voice.say(ask.why),
        cost=ask.cost or "",
        priced=ask.cost is not None,
        minutes=ask.minutes or 0,
    )


def _rows(turn: Turn, made: tuple[Ask, ...]) -> list[list[Button]]:
    """One button for each ask that can be sent: to others, and only once for the same thing."""
    rows: dict[tuple[str, str], list[Button]] = {}
    for ask in made:
        guest = turn.potluck.guest(ask.guest)
        if ask.how != "ask" or guest is None or guest.id == turn.me:
            continue
        label = turn.voice.plain("button-ask", name=guest.name, category=turn.voice.plain(f"category-{ask.category}"))
        args = (guest.id, ask.category, str(one_ask(ask.servings)))
        rows.setdefault((guest.id, ask.category), [Button(label, "ask", args)])
    return list(rows.values())[:8]


async def send(turn: Turn) -> None:
    """The host's tap: the guest is asked in the group, with a yes and a no only they can press."""
    turn.hosts_only()
    guest_id, category, servings = turn.args
    guest = turn.potluck.guest(guest_id)
    if guest is None or category not in CATEGORIES:
        raise Refusal("refused-button-old")
    owner = guest.id if guest.id.isdecimal() else None
    buttons = [
        [
            Button(turn.voice.plain("button-ask-yes"), "askyes", (guest.id, category, servings), owner=owner),
            Button(turn.voice.plain("button-ask-no"), "askno", (guest.id, category), owner=owner),
        ]
    ]
    turn.say(
        "ask-in-group",
        where="group",
        reply=False,
        buttons=buttons,
        about="ask",
        name=mention(guest),
        one=turn.voice.plain(f"one-{category}"),
        servings=int(servings),
    )
    turn.toast("ask-sent", name=guest.name)


async def accepted(turn: Turn) -> None:
    """A yes makes the promise at once; the dish can be named below or later."""
    guest_id, category, servings = turn.args
    guest = turn.potluck.guest(guest_id)
    if guest is None or category not in CATEGORIES:
        raise Refusal("refused-button-old")
    who = guest_id if guest_id == turn.me or not guest_id.isdecimal() else None
    if who is None:
        raise Refusal("refused-button-not-yours")
    name = turn.voice.plain(f"category-{category}")
    made = add_promise(turn, guest_id, name, category, float(servings), None)
    turn.edit_pressed(
        "ask-accepted",
        name=guest.name,
        one=turn.voice.plain(f"one-{category}"),
        servings=int(servings),
        buttons=[[turn.undo_button()]],
    )
    turn.ask("askdish", "ask-which-dish", data={"promise": made.id}, name=turn.event.person.name)
    turn.toast("ask-thanks")


async def dish_told(turn: Turn) -> None:
    """The dish behind an accepted ask gets its name."""
    from planning.changes import change_promise

    promise_id = str(turn.dialog.data["promise"]) if turn.dialog else ""
    found = turn.potluck.promise(promise_id)
    if found is None:
        raise Refusal("refused-no-promise")
    known = lookup(turn.words)
    if known.category is None:
        raise Refusal("refused-not-a-dish", words=turn.words[:60])
    # What they name may be another kind of dish than was asked for: the table counts what comes.
    category = known.category if known.confidence >= SURE else None
    turn.change(
        change_promise(turn.potluck, turn.actor, found.id, dish=known.name, category=category),
        "did-promise",
        dish=known.name,
    )
    turn.answered()
    named = turn.known_promise(found.id)
    turn.say(
        "ask-dish-noted",
        dish=named.dish,
        category=turn.voice.plain(f"category-{named.category}"),
        buttons=[[turn.undo_button()]],
    )


SURE = 0.8


async def refused(turn: Turn) -> None:
    guest_id, category = turn.args
    guest = turn.potluck.guest(guest_id)
    if guest is None or category not in CATEGORIES:
        raise Refusal("refused-button-old")
    if guest_id.isdecimal() and guest_id != turn.me:
        raise Refusal("refused-button-not-yours")
    turn.change(decline(turn.potluck, turn.actor, category), "did-decline")
    turn.edit_pressed("ask-declined", name=guest.name, one=turn.voice.plain(f"one-{category}"))
    turn.toast("ask-declined-toast")
    host = turn.potluck.guest(turn.potluck.host)
    if host is not None:
        await turn.tell(
            host,
            "told-declined",
            name=guest.name,
            one=turn.voice.plain(f"one-{category}"),
            buttons=[[Button(turn.voice.plain("button-asks"), "asks")]],
        )


def register(app: Registry) -> None:
    app.command("asks", show, order=22, hosts=True)
    app.button("asks", show)
    app.button("ask", send)
    app.button("askyes", accepted)
    app.button("askno", refused)
    app.question("askdish", dish_told)
