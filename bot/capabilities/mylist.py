"""My list: what I said, what I bring, what I take to the bar, when I should be there."""

from bot.buttons import Button
from bot.capabilities.answers import party_words
from bot.capabilities.needs import need_name
from bot.context import Turn
from bot.registry import Registry
from bot.servings import amount_words
from bot.texts import Html
from planning.potluck import Answer, Stage


async def show(turn: Turn) -> None:
    potluck, voice = turn.potluck, turn.voice
    guest = turn.guest()
    if guest is None:
        turn.say("list-stranger")
        return
    lines = [
        voice("list-head", name=guest.name, when=potluck.starts_at, place=potluck.place, has_place=bool(potluck.place))
    ]
    if potluck.stage is Stage.CANCELLED:
        lines.append(voice("board-cancelled"))
    party = party_words(voice, guest.party) if guest.answer in (Answer.YES, Answer.MAYBE) else ""
    lines.append(voice("list-answer", answer=guest.answer.value, party=party))
    mine = potluck.promises_of(guest.id)
    for p in mine:
        with_ = [g.name for who in (p.guest, *p.sharers) if who != guest.id and (g := potluck.guest(who))]
        lines.append(
            voice("list-promise", dish=p.dish, amount=amount_words(voice, potluck, p), names=with_, n=len(with_))
        )
        if p.arrives_at is not None:
            lines.append(voice("list-arrive", when=p.arrives_at))
    toppings = [t.name for t in (potluck.bar.toppings if potluck.bar else ()) if t.guest == guest.id]
    if toppings:
        lines.append(voice("list-toppings", toppings=toppings))
    for added in (g for g in potluck.guests if g.added_by == guest.id):
        lines.append(voice("list-added", name=added.name, answer=added.answer.value))
    if not mine and not toppings:
        lines.append(voice("list-nothing"))
    # Needs are private: they stand in the list only where nobody else reads it.
    needs = [need_name(voice, n.need) for n in guest.all_needs()]
    if needs and turn.private:
        lines.append(voice("list-needs", needs=needs))
    kitchen = kitchen_lines(turn, guest.id)
    buttons = [[Button(voice.plain("button-drop", dish=p.dish), "drop", (p.id,), owner=turn.me)] for p in mine[:6]]
    buttons.append([Button(voice.plain("button-bring"), "bring")])
    turn.post(Html("\n".join([*lines, *kitchen])), buttons=buttons)


def kitchen_lines(turn: Turn, guest_id: str) -> list[str]:
    """The guest's own part of the kitchen timeline, when one has been computed."""
    planner = turn.services.planner
    timeline = planner.timeline(turn.potluck) if planner is not None else None
    if timeline is None:
        return []
    from bot.kitchen_words import step_line

    own = {p.id for p in turn.potluck.promises_of(guest_id)}
    return [step_line(turn.voice, turn.potluck, s) for s in timeline.doable if s.promise in own]


async def command(turn: Turn) -> None:
    await show(turn)


def register(app: Registry) -> None:
    app.command("list", command, order=21)
