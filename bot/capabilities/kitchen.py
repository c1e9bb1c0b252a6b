"""The kitchen: what the host has, how a dish is heated, and the timeline that comes of it."""

from dataclasses import replace

from bot.context import Turn
from bot.kitchen_words import conflict_lines, degrees, step_line
from bot.registry import Registry
from bot.texts import Html
from planning.changes import Refusal, change_promise, set_kitchen
from planning.kitchen_words import Unread, read_kitchen, read_steps
from planning.potluck import HeatStep, Potluck


async def kitchen(turn: Turn) -> None:
    """/kitchen shows the timeline; "/kitchen 1 oven, 2 slow cookers, 4 burners" says what there is."""
    if turn.words:
        try:
            now = read_kitchen(turn.words, turn.potluck.kitchen)
        except Unread as unread:
            raise Refusal("refused-kitchen-words", words=unread.words) from None
        turn.change(set_kitchen(turn.potluck, turn.actor, now), "did-kitchen")
        turn.say(
            "ovenplan-noted",
            ovens=len(now.ovens),
            burners=now.burners,
            slow=len(now.slow_cookers),
            microwaves=len(now.microwaves),
            cooks=now.cooks,
            buttons=[[turn.undo_button()]],
        )
        return
    turn.post(await picture_in_words(turn, turn.potluck))


async def picture_in_words(turn: Turn, potluck: Potluck) -> Html:
    import asyncio

    from planning.kitchen import timeline

    voice = turn.voice
    made = await asyncio.to_thread(timeline, potluck, turn.now, 0.3, 0, 10.0)
    lines = [voice("ovenplan-head", serve=potluck.starts_at, status=made.status, n=len(made.steps))]
    lines += conflict_lines(voice, made)
    lines += [step_line(voice, potluck, s) for s in sorted(made.steps, key=lambda s: (s.start, s.promise, s.step))][:40]
    late = [d for d in made.dishes if d.late_min or d.unsafe_min]
    for d in late:
        promise = potluck.promise(d.promise)
        lines.append(voice("ovenplan-late", dish=promise.dish if promise else "", late=d.late_min, wait=d.unsafe_min))
    return Html("\n".join(lines))


async def heat(turn: Turn) -> None:
    """/heat lasagna: 40 minutes at 375, covered - the cook knows best."""
    from bot.capabilities.bringing import find_promise

    head, colon, rest = turn.words.partition(":")
    if not colon:
        raise Refusal("refused-heat-words")
    found = find_promise(turn, head)
    try:
        steps = read_steps(rest)
    except Unread as unread:
        raise Refusal("refused-heat-words", words=unread.words) from None
    serve = found.serve or ("hot" if any(s.kind in HOT for s in steps) else None)
    turn.change(change_promise(turn.potluck, turn.actor, found.id, heat=steps, serve=serve), "did-heat")
    wrong = next((s.temp_f for s in steps if s.temp_f is not None and not 100 <= s.temp_f <= 600), None)
    if wrong is not None:
        raise Refusal("refused-oven-temperature", temp=round(wrong))
    words = [step_words(turn, s) for s in steps]
    turn.say("heat-noted", dish=found.dish, steps=words, buttons=[[turn.undo_button()]])


def step_words(turn: Turn, step: HeatStep) -> str:
    temp = degrees(turn.voice, step.temp_f)
    return turn.voice.plain("heat-step", what=turn.voice.plain(f"step-{step.kind}"), minutes=step.minutes, temp=temp)


HOT = ("oven", "stove", "slow-cooker-low", "slow-cooker-high", "microwave", "grill")


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
    found = find_promise(turn, " ".join(words[:split]))
    pounds = float(to_unit(amount, "lb") or 0)
    turn.change(change_promise(turn.potluck, turn.actor, found.id, frozen_lb=pounds), "did-frozen", dish=found.dish)
    turn.say(
        "frozen-noted", dish=found.dish, lb=pounds, days=-(-int(pounds * 100) // 400), buttons=[[turn.undo_button()]]
    )


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
    app.command("kitchen", kitchen, order=70, hosts=True)
    app.command("heat", heat, order=71)
    app.command("frozen", frozen, order=72)
    app.command("arrive", arrive, order=73)
