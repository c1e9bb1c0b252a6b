"""Coming, maybe, can't: by button; and who comes along, by age group."""

from collections.abc import Iterator
from dataclasses import replace

from bot.board import Facts
from bot.buttons import Button, Link
from bot.context import Turn
from bot.registry import Registry
from bot.texts import Voice
from bot.understood.consequences import tell_host
from planning.changes import Refusal, answer, meet, set_party
from planning.potluck import AGE_GROUPS, Answer, Guest, Party, Potluck


def party_words(voice: Voice, party: Party) -> str:
    """ "2 adults and 1 child"."""
    return voice.join([voice.plain(f"people-{group}", n=n) for group, n in party.counts()], escape=False)


async def say_answer(turn: Turn) -> None:
    """A press on Coming, Maybe or Can't; the same press twice changes nothing and says so."""
    if turn.event.person.anonymous:
        raise Refusal("refused-anonymous")
    said = Answer(turn.args[0])
    before = turn.potluck.guest(turn.me)
    after = turn.change(answer(turn.potluck, turn.actor, turn.me, said), "did-answer", answer=said.value)
    guest = turn.known_guest(turn.me)
    if before is not None and before.answer is said:
        turn.toast("answer-same", answer=said.value, party=party_words(turn.voice, guest.party))
        return
    toppings = [t.name for t in (after.bar.toppings if after.bar else ()) if t.guest == turn.me]
    dropped_out = said is Answer.NO and before is not None and before.answer is Answer.YES
    if dropped_out or (said is Answer.NO and after.promises_of(turn.me)):
        await tell_host(turn, list(after.promises_of(turn.me)), left=True)
    brought = [*(p.dish for p in after.promises_of(turn.me)), *toppings]
    if said is Answer.NO and brought:
        turn.toast("answer-no-with-dishes", alert=True, dishes=brought)
    else:
        turn.toast("answer-noted", answer=said.value, party=party_words(turn.voice, guest.party))


async def open_party(turn: Turn) -> None:
    """The party sheet: in private where there is one, else in the group, for its owner's fingers only."""
    if turn.event.person.anonymous:
        raise Refusal("refused-anonymous")
    turn.change(meet(turn.potluck, turn.actor), "did-meet")
    guest = turn.known_guest(turn.me)
    where = "private" if turn.person.can_dm else "here"
    turn.say(
        "party-sheet",
        buttons=sheet(turn, guest),
        where=where,
        reply=False,
        name=guest.name,
        party=party_words(turn.voice, guest.party),
    )
    turn.toast("party-see-private" if where == "private" and not turn.private else "party-see-here")


def sheet(turn: Turn, guest: Guest) -> list[list[Button]]:
    rows = []
    for group in AGE_GROUPS:
        n = getattr(guest.party, group)
        label = turn.voice.plain(f"people-{group}", n=n)
        rows.append(
            [
                Button("−", "party", (group, "-1"), owner=turn.me),
                Button(label, "party", (group, "0"), owner=turn.me),
                Button("+", "party", (group, "1"), owner=turn.me),
            ]
        )
    rows.append([Button(turn.voice.plain("button-done"), "partyok", (), owner=turn.me)])
    return rows


async def step_party(turn: Turn) -> None:
    group, step = turn.args
    guest = turn.potluck.guest(turn.me)
    if group not in AGE_GROUPS or guest is None:
        raise Refusal("refused-button-old")
    if step == "0":
        turn.toast("party-press-signs")
        return
    party = replace(guest.party, **{group: max(0, getattr(guest.party, group) + int(step))})
    turn.change(set_party(turn.potluck, turn.actor, turn.me, party), "did-party")
    guest = turn.known_guest(turn.me)
    turn.edit_pressed(
        "party-sheet", buttons=sheet(turn, guest), name=guest.name, party=party_words(turn.voice, guest.party)
    )
    turn.toast("party-now", party=party_words(turn.voice, guest.party))


async def close_party(turn: Turn) -> None:
    guest = turn.potluck.guest(turn.me)
    if guest is None:
        raise Refusal("refused-button-old")
    turn.edit_pressed("party-done", name=guest.name, party=party_words(turn.voice, guest.party))
    turn.toast("party-now", party=party_words(turn.voice, guest.party))


def coming(potluck: Potluck, voice: Voice, facts: Facts) -> Iterator[str]:
    yes = [g for g in potluck.guests if g.answer is Answer.YES]
    total = {group: sum(getattr(g.party, group) for g in yes) for group in AGE_GROUPS}
    people = sum(total.values())
    by_age = voice.join([voice.plain(f"people-{g}", n=n) for g, n in total.items() if n], escape=False)
    counts = {a: sum(g.party.total for g in potluck.guests if g.answer is a) for a in Answer}
    yield voice(
        "board-coming",
        people=people,
        by_age=by_age,
        maybe=counts[Answer.MAYBE],
        no=counts[Answer.NO],
        silent=sum(1 for g in potluck.guests if g.answer is Answer.NONE),
    )
    shown = yes[: facts.most * 2]
    if shown:
        names = [voice.plain("board-party", name=g.name, n=g.party.total) for g in shown]
        yield voice("board-names", names=names, more=len(yes) - len(shown))
    silent = [g.name for g in potluck.guests if g.answer is Answer.NONE]
    if silent and facts.most:
        yield voice("board-silent", names=silent[: facts.most], more=max(0, len(silent) - facts.most))
    if potluck.expected_people or counts[Answer.MAYBE] or silent:
        count = facts.headcount
        yield voice("board-plan-for", people=count.at_service_level, low=count.low, high=count.high)


def buttons(potluck: Potluck, voice: Voice, facts: Facts) -> Iterator[list[Button | Link]]:
    yield [
        Button(voice.plain("button-coming"), "ans", ("yes",)),
        Button(voice.plain("button-maybe"), "ans", ("maybe",)),
        Button(voice.plain("button-cant"), "ans", ("no",)),
    ]


def party_row(potluck: Potluck, voice: Voice, facts: Facts) -> Iterator[list[Button | Link]]:
    yield [
        Button(voice.plain("button-party"), "partyon"),
        Link(voice.plain("button-needs"), facts.deep_link("needs", potluck.id)),
    ]


def register(app: Registry) -> None:
    app.button("ans", say_answer)
    app.button("partyon", open_party)
    app.button("party", step_party)
    app.button("partyok", close_party)
    app.on_board(20, lines=coming, buttons=buttons)
    app.on_board(30, buttons=party_row)
