"""Who brings what: by button (most needed first), by /bring, and what the board shows of it."""

from collections.abc import Iterator

from bot.board import Facts
from bot.buttons import Button, Link, mark
from bot.context import Turn
from bot.registry import Registry
from bot.servings import amount_words, one_ask
from bot.texts import Voice
from bot.understood import add_promise, bring_words
from planning.changes import (
    Refusal,
    change_promise,
    drop_promise,
    find_guest,
    give_promise,
    give_topping,
    meet,
    share_promise,
)
from planning.dishes import lookup, suggest
from planning.headcount import headcount
from planning.menu import doubles, kinds_missing, most_needed
from planning.potluck import CATEGORIES, Potluck, Promise

SEASONS = ("winter", "spring", "summer", "autumn")


async def offer(turn: Turn) -> None:
    """What would help most, with an amount: three taps to a promise."""
    if turn.event.person.anonymous:
        raise Refusal("refused-anonymous")
    turn.change(meet(turn.potluck, turn.actor), "did-meet")
    rows = offer_rows(turn)
    where = "private" if turn.person.can_dm and turn.event.kind == "press" else "here"
    turn.say(
        "bring-offer",
        buttons=rows,
        where=where,
        reply=False if turn.event.kind == "press" else None,
        name=turn.event.person.name,
    )
    if turn.event.kind == "press":
        turn.toast("bring-see-private" if where == "private" and not turn.private else "bring-see-here")


def offer_rows(turn: Turn) -> list[list[Button]]:
    # Toppings are chosen at the bar, which has a button of its own.
    needed = [n for n in most_needed(turn.potluck, headcount(turn.potluck)) if n.category != "topping"][:5]
    rows = [
        [
            Button(
                turn.voice.plain(
                    "bring-category", category=turn.voice.plain(f"category-{n.category}"), servings=one_ask(n.servings)
                ),
                "bringc",
                (n.category,),
                owner=turn.me,
            )
        ]
        for n in needed
    ]
    rest = [c for c in CATEGORIES if c not in {n.category for n in needed} and c != "topping"]
    rows += [
        [Button(turn.voice.plain(f"category-{c}"), "bringc", (c,), owner=turn.me) for c in rest[i : i + 3]]
        for i in range(0, len(rest), 3)
    ]
    if turn.potluck.bar is not None:
        rows.append([Button(turn.voice.plain("button-bar"), "baropen", (), owner=turn.me)])
    rows.append([Button(turn.voice.plain("button-own-words"), "bringown", (), owner=turn.me)])
    return rows


def _suggestions(turn: Turn, category: str, n: int) -> list[str]:
    taken = frozenset(d.name for p in turn.potluck.promises if (d := lookup(p.dish).dish) is not None)
    season = SEASONS[turn.potluck.local(turn.potluck.starts_at).month % 12 // 3]
    return [d.name for d in suggest(category, n, season, taken)]


async def category(turn: Turn) -> None:
    wanted = turn.args[0]
    if wanted not in CATEGORIES:
        raise Refusal("refused-button-old")
    buttons = [[Button(name, "bringd", (wanted, mark(name)), owner=turn.me)] for name in _suggestions(turn, wanted, 5)]
    buttons.append([Button(turn.voice.plain("button-something-else"), "bringown", (wanted,), owner=turn.me)])
    turn.edit_pressed(
        "bring-which",
        buttons=buttons,
        name=turn.event.person.name,
        category=turn.voice.plain(f"category-{wanted}"),
        servings=_asked(turn, wanted),
    )


def _asked(turn: Turn, wanted: str) -> int:
    needed = most_needed(turn.potluck, headcount(turn.potluck))
    return next((one_ask(n.servings) for n in needed if n.category == wanted), 8)


async def dish(turn: Turn) -> None:
    wanted, marked = turn.args
    name = next((d for d in _suggestions(turn, wanted, 60) if mark(d) == marked), None)
    if name is None:
        raise Refusal("refused-button-old")
    made = add_promise(turn, turn.me, name, wanted, float(_asked(turn, wanted)), None)
    turn.edit_pressed("bring-noted", buttons=[[turn.undo_button()]], **promise_facts(turn, made))
    turn.toast("bring-toast", dish=made.dish)


async def own_words(turn: Turn) -> None:
    data = {"category": turn.args[0] if turn.args else ""}
    turn.ask("bring", "ask-bring", data=data, name=turn.event.person.name)
    turn.toast("answer-below")


async def own_words_told(turn: Turn) -> None:
    category = str(turn.dialog.data.get("category", "")) if turn.dialog else ""
    bring_words(turn, turn.words, category or None)
    turn.answered()


async def as_what(turn: Turn) -> None:
    """What an unknown dish is."""
    if turn.dialog is None or turn.dialog.kind != "bringas":
        raise Refusal("refused-button-old")
    turn.answered()
    if turn.args[0] not in CATEGORIES:
        turn.edit_pressed("read-left")
        turn.toast("read-left")
        return
    data = turn.dialog.data
    made = add_promise(turn, turn.me, str(data["dish"]), turn.args[0], data["servings"], None)
    turn.edit_pressed("bring-noted", buttons=[[turn.undo_button()]], **promise_facts(turn, made))
    turn.toast("bring-toast", dish=made.dish)


async def bring(turn: Turn) -> None:
    """/bring slaw for 12, or /bring alone for what is needed most."""
    if not turn.words:
        await offer(turn)
        return
    if turn.event.person.anonymous:
        raise Refusal("refused-anonymous")
    bring_words(turn, turn.words, None)


def promise_facts(turn: Turn, made: Promise) -> dict[str, object]:
    others = [
        turn.known_guest(p.guest).name
        for _, ids in doubles(turn.potluck)
        if made.id in ids
        for i in ids
        if (p := turn.potluck.promise(i)) is not None and p.guest != made.guest
    ]
    return {
        "dish": made.dish,
        "amount": amount_words(turn.voice, turn.potluck, made),
        "category": turn.voice.plain(f"category-{made.category}"),
        "others": others,
        "doubled": len(others),
    }


def find_promise(turn: Turn, words: str, mine_only: bool = True) -> Promise:
    """The promise these words mean: among one's own first. Refuses when none or several fit."""
    own = turn.potluck.promises_of(turn.me)
    pool = own if mine_only else (*own, *(p for p in turn.potluck.promises if p not in own))
    if not pool:
        raise Refusal("refused-no-own-promise")
    wanted = words.casefold().strip()
    if not wanted:
        if len(own) == 1:
            return own[0]
        raise Refusal("refused-which-promise", dishes=[p.dish for p in own])
    exact = [p for p in pool if p.dish.casefold() == wanted]
    near = exact or [p for p in pool if wanted in p.dish.casefold() or p.dish.casefold() in wanted]
    if not near:
        from rapidfuzz import fuzz

        near = [p for p in pool if fuzz.token_set_ratio(p.dish.casefold(), wanted) >= 85]
    if not near:
        raise Refusal("refused-no-such-promise", words=words[:60], dishes=[p.dish for p in pool[:8]])
    mine = [p for p in near if p in own]
    if len(near) > 1 and len(mine) != 1 and len({p.dish for p in near}) > 1:
        raise Refusal("refused-which-promise", dishes=[p.dish for p in near])
    return (mine or near)[0]


async def drop(turn: Turn) -> None:
    """/drop slaw; a topping of the bar is dropped the same way."""
    from planning.changes import drop_topping

    bar = turn.potluck.bar
    topping = bar and next(
        (t for t in bar.toppings if t.guest == turn.me and t.name == turn.words.casefold().strip()), None
    )
    if topping:
        turn.change(drop_topping(turn.potluck, turn.actor, topping.name), "did-drop", dish=topping.name)
        turn.say("dropped", dish=topping.name, buttons=[[turn.undo_button()]])
        return
    wanted = turn.words.casefold().strip()
    meant = [p for p in turn.potluck.promises_of(turn.me) if wanted in ("", p.dish.casefold())]
    if len(meant) > 1:
        from bot.capabilities.confirming import which

        which(turn, turn.voice("reply-ask-drop-which"), meant)
        return
    found = find_promise(turn, turn.words, mine_only=False) if turn.words else find_promise(turn, "")
    turn.change(drop_promise(turn.potluck, turn.actor, found.id), "did-drop", dish=found.dish)
    turn.say("dropped", dish=found.dish, buttons=[[turn.undo_button()]])
    cook = turn.potluck.guest(found.guest)
    if cook is not None and cook.id != turn.me:
        await turn.tell(cook, "told-dropped", by=turn.event.person.name, dish=found.dish)


async def drop_button(turn: Turn) -> None:
    found = turn.potluck.promise(turn.args[0])
    if found is None:
        raise Refusal("refused-no-promise")
    turn.change(drop_promise(turn.potluck, turn.actor, found.id), "did-drop", dish=found.dish)
    turn.edit_pressed("dropped", dish=found.dish, buttons=[[turn.undo_button()]])
    turn.toast("dropped", dish=found.dish)


def _dish_and_person(turn: Turn, joint: str) -> tuple[Promise, str]:
    """ "slaw to Mei" -> her guest id; a reply to Mei's message needs no name."""
    words, _, name = turn.words.rpartition(f" {joint} ")
    if not words and turn.words.startswith(f"{joint} "):
        name = turn.words[len(joint) + 1 :]
    if not name and not words:
        words = turn.words
    replied = turn.event.reply_to_person
    if not name and replied is None:
        raise Refusal("refused-whom", joint=joint)
    guest = find_guest(turn.potluck, name) if name else turn.potluck.guest(str(replied.id) if replied else "")
    if guest is None:
        raise Refusal("refused-unknown-person", name=name or (replied.name if replied else ""))
    return find_promise(turn, words), guest.id


async def give(turn: Turn) -> None:
    words, joint, name = turn.words.rpartition(" to ")
    bar = turn.potluck.bar
    if joint and bar and any(t.name == words.casefold().strip() and t.guest for t in bar.toppings):
        await _give_topping(turn, words.casefold().strip(), name)
        return
    found, to = _dish_and_person(turn, "to")
    turn.change(give_promise(turn.potluck, turn.actor, found.id, to), "did-give", dish=found.dish)
    taker = turn.known_guest(to)
    turn.say("given", dish=found.dish, name=taker.name, buttons=[[turn.undo_button()]])
    await turn.tell(taker, "told-given", by=turn.event.person.name, dish=found.dish)


async def _give_topping(turn: Turn, topping: str, name: str) -> None:
    taker = find_guest(turn.potluck, name)
    if taker is None:
        raise Refusal("refused-unknown-person", name=name[:60])
    turn.change(give_topping(turn.potluck, turn.actor, topping, taker.id), "did-give", dish=topping)
    turn.say("given", dish=topping, name=taker.name, buttons=[[turn.undo_button()]])
    await turn.tell(taker, "told-given", by=turn.event.person.name, dish=topping)


async def share(turn: Turn) -> None:
    found, with_ = _dish_and_person(turn, "with")
    turn.change(share_promise(turn.potluck, turn.actor, found.id, with_), "did-share", dish=found.dish)
    other = turn.known_guest(with_)
    turn.say("shared", dish=found.dish, name=other.name, buttons=[[turn.undo_button()]])
    await turn.tell(other, "told-shared", by=turn.event.person.name, dish=found.dish)


async def contains(turn: Turn) -> None:
    """/contains slaw: cabbage, mayonnaise - what the cook says is in it."""
    head, colon, rest = turn.words.partition(":")
    if not colon:
        raise Refusal("refused-contains")
    found = find_promise(turn, head)
    listed = tuple(part.strip() for part in rest.replace(" and ", ",").split(",") if part.strip())
    if not listed or len(listed) > 40:
        raise Refusal("refused-contains")
    turn.change(change_promise(turn.potluck, turn.actor, found.id, ingredients=listed), "did-contains")
    turn.say("contains-noted", dish=found.dish, ingredients=list(listed), buttons=[[turn.undo_button()]])


def table(potluck: Potluck, voice: Voice, facts: Facts) -> Iterator[str]:
    yield voice("board-table")
    for row in facts.menu:
        here = [p for p in potluck.promises if p.category == row.category]
        if row.category == "topping" and not here:
            continue
        yield voice(
            "board-row",
            category=voice.plain(f"category-{row.category}"),
            promised=round(row.covered_servings),
            target=round(row.target_servings),
            short=max(0, round(row.lacking_servings)),
            dishes=row.short_dishes,
        )
        for p in here[: facts.most]:
            cooks = [g.name for who in (p.guest, *p.sharers) if (g := potluck.guest(who))]
            yield voice("board-dish", dish=p.dish, amount=amount_words(voice, potluck, p), cooks=cooks)
        if len(here) > facts.most:
            yield voice("board-more-dishes", n=len(here) - facts.most)
        if row.category == "supplies" and here and row.lacking_servings and (kinds := kinds_missing(here)):
            yield voice("board-kinds", kinds=[voice.plain("prints-kind", kind=kind) for kind in kinds])


def buttons(potluck: Potluck, voice: Voice, facts: Facts) -> Iterator[list[Button | Link]]:
    yield [Button(voice.plain("button-bring"), "bring"), Button(voice.plain("button-missing"), "missing")]


def register(app: Registry) -> None:
    app.command("bring", bring, order=10)
    app.command("drop", drop, order=11)
    app.command("give", give, order=12)
    app.command("share", share, order=13)
    app.command("contains", contains, order=14)
    app.button("bring", offer)
    app.button("bringc", category)
    app.button("bringd", dish)
    app.button("bringown", own_words)
    app.button("bringas", as_what)
    app.button("drop", drop_button)
    app.question("bring", own_words_told)
    app.on_board(40, lines=table, buttons=buttons)
