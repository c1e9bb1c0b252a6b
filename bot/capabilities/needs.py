"""Diets and allergies: told in private through a link, or in the open where the guest writes them there."""

from collections.abc import Iterator

from bot.board import Facts
from bot.buttons import Button, Link
from bot.context import Turn
from bot.registry import Registry
from bot.texts import Voice
from planning.changes import Refusal, clear_needs, meet, merge_needs
from planning.diets import need_of
from planning.potluck import Answer, Guest, Need, Potluck

COMMON = (
    "vegetarian",
    "vegan",
    "gluten-free",
    "dairy-free",
    "peanut",
    "tree-nut",
    "egg",
    "milk",
    "fish",
    "shellfish",
    "soy",
    "sesame",
    "wheat",
    "halal",
    "kosher",
)


def need_name(voice: Voice, need: str) -> str:
    """A need in everyday words: "no peanut" for an allergen, "vegetarian" for a diet."""
    key = f"need-{need.replace(' ', '-')}"
    if voice.has(key):
        return voice.plain(key)
    return voice.plain("need-no", what=voice.plain("prints-need", need=need).replace("-", " "))


def need_meant(words: str) -> tuple[str, str] | None:
    """The need in words like "peanuts", "no peanuts", "allergic to peanuts" or "we're vegan"."""
    plain = words.casefold().strip(" .!")
    for lead in (
        "",
        "no ",
        "not ",
        "without ",
        "never ",
        "i'm ",
        "i am ",
        "we're ",
        "we are ",
        "can't eat ",
        "cannot eat ",
    ):
        if plain.startswith(lead) and (found := need_of(plain[len(lead) :])) is not None:
            return found
    return None


def sheet(turn: Turn, guest: Guest | None) -> list[list[Button]]:
    mine = {n.need for n in guest.all_needs()} if guest else set()
    cells = []
    for need in COMMON:
        label = need_name(turn.voice, need)
        cells.append(Button(("✓ " if need in mine else "") + label, "need", (need,), owner=turn.me))
    rows = [cells[i : i + 3] for i in range(0, len(cells), 3)]
    rows.append(
        [
            Button(turn.voice.plain("button-needs-none"), "needno", (), owner=turn.me),
            Button(turn.voice.plain("button-done"), "needok", (), owner=turn.me),
        ]
    )
    return rows


def mine_in_words(turn: Turn) -> list[str]:
    guest = turn.potluck.guest(turn.me)
    return [need_name(turn.voice, n.need) for n in (guest.all_needs() if guest else ())]


async def from_link(turn: Turn) -> None:
    """A private chat opened from the board: the sheet for this potluck, for its members only."""
    await open_sheet(turn)


async def open_sheet(turn: Turn) -> None:
    if turn.event.person.anonymous:
        raise Refusal("refused-anonymous")
    turn.change(meet(turn.potluck, turn.actor), "did-meet")
    needs = mine_in_words(turn)
    turn.say("needs-sheet", buttons=sheet(turn, turn.guest()), needs=needs, n=len(needs), when=turn.potluck.starts_at)


async def command(turn: Turn) -> None:
    """/needs alone opens the sheet (in private); /needs with words notes them, openly in a group."""
    if turn.event.person.anonymous:
        raise Refusal("refused-anonymous")
    if not turn.words:
        if turn.private:
            await open_sheet(turn)
        else:
            turn.say("needs-open-private", buttons=[[_link(turn)]])
        return
    if turn.words.casefold() in ("none", "no", "nothing", "-"):
        await none_at_all(turn)
        return
    needs, unknown = [], []
    for part in turn.words.replace(" and ", ",").replace(";", ",").split(","):
        if not part.strip():
            continue
        found = need_meant(part)
        if found is None:
            unknown.append(part.strip()[:40])
        else:
            need, kind = found
            needs.append(Need(need, 1, kind, open=not turn.private))
    if unknown:
        raise Refusal("refused-need", words=unknown)
    turn.change(merge_needs(turn.potluck, turn.actor, turn.me, tuple(needs)), "did-needs")
    said = [need_name(turn.voice, n.need) for n in needs]
    turn.say("needs-noted", needs=said, n=len(said), buttons=[[turn.undo_button()]])


def _link(turn: Turn) -> Link:
    return Link(turn.voice.plain("button-needs"), turn.own_link("needs"))


async def toggle(turn: Turn) -> None:
    need = turn.args[0]
    if need not in COMMON:
        raise Refusal("refused-button-old")
    guest = turn.guest()
    has = guest is not None and any(n.need == need for n in guest.all_needs())
    if has:
        turn.change(clear_needs(turn.potluck, turn.actor, turn.me, need), "did-needs")
    else:
        found = need_of(need)
        made = Need(need, 1, found[1] if found else "", open=False)
        turn.change(merge_needs(turn.potluck, turn.actor, turn.me, (made,)), "did-needs")
    needs = mine_in_words(turn)
    turn.edit_pressed(
        "needs-sheet", buttons=sheet(turn, turn.guest()), needs=needs, n=len(needs), when=turn.potluck.starts_at
    )
    turn.toast("needs-now", needs=needs, n=len(needs))


async def none_at_all(turn: Turn) -> None:
    turn.change(meet(turn.potluck, turn.actor), "did-meet")
    turn.change(clear_needs(turn.potluck, turn.actor, turn.me), "did-needs")
    if turn.event.kind == "press":
        turn.edit_pressed("needs-sheet", buttons=sheet(turn, turn.guest()), needs=[], n=0, when=turn.potluck.starts_at)
        turn.toast("needs-now", needs=[], n=0)
    else:
        turn.say("needs-noted", needs=[], n=0)


async def done(turn: Turn) -> None:
    needs = mine_in_words(turn)
    turn.edit_pressed("needs-done", needs=needs, n=len(needs))
    turn.toast("needs-now", needs=needs, n=len(needs))


async def words_in_private(turn: Turn) -> None:
    """In private, a bare need in words ("celiac") is a need of whoever writes."""
    if not turn.private or not turn.has_potluck or len(turn.words) > 60:
        return
    parts = [p for p in turn.words.replace(" and ", ",").split(",") if p.strip()]
    found = [need_meant(p) for p in parts]
    if not parts or any(f is None for f in found):
        return
    turn.handled = True
    await command(turn)


def on_board(potluck: Potluck, voice: Voice, facts: Facts) -> Iterator[str]:
    """Never with a name: "someone needs ..." for the whole table."""
    if needs := of_the_table(potluck, voice):
        yield voice("board-needs", needs=needs)


def of_the_table(potluck: Potluck, voice: Voice) -> list[str]:
    """What those who may come need and how many of them, without a name."""
    counts: dict[str, int] = {}
    for guest in potluck.guests:
        if guest.answer is not Answer.NO:
            for need in guest.all_needs():
                counts[need.need] = counts.get(need.need, 0) + need.count
    return [voice.plain("board-need", need=need_name(voice, n), n=c) for n, c in sorted(counts.items())]


def register(app: Registry) -> None:
    app.command("needs", command, order=40)
    app.button("need", toggle)
    app.button("needno", none_at_all)
    app.button("needok", done)
    app.link("needs", from_link)
    app.reader(words_in_private, order=20)
    app.on_board(60, lines=on_board)
