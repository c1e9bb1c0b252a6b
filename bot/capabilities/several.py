"""Several potlucks in one group, one of them current; and choosing which one a private chat is about."""

from dataclasses import replace

from bot.buttons import Button
from bot.context import Turn
from bot.registry import Registry
from planning.changes import Refusal
from planning.potluck import Stage


async def command(turn: Turn) -> None:
    if turn.private:
        all_ = await turn.store.potlucks_of_person(turn.person.id)
    else:
        all_ = await turn.store.potlucks_in(turn.event.chat_id)
    ahead = sorted(
        (s for s in all_ if s.potluck.stage is Stage.PLANNED and s.potluck.ends >= turn.now),
        key=lambda s: s.potluck.starts_at,
    )
    if not ahead:
        raise Refusal("refused-no-potluck-private" if turn.private else "refused-no-potluck")
    now_id = turn.stored.potluck.id if turn.stored else None
    rows = []
    for stored in ahead[:10]:
        p = stored.potluck
        label = turn.voice.on(p.timezone).plain(
            "several-row", title=p.title, has_title=bool(p.title), when=p.starts_at, current=p.id == now_id
        )
        rows.append([Button(label, "choose", (), potluck=p.id)])
    turn.say("several-head", n=len(ahead), buttons=rows)


async def choose(turn: Turn) -> None:
    potluck = turn.potluck
    if turn.private:
        turn.save_person(replace(turn.person, private_potluck=potluck.id))
    else:
        turn.move(replace(turn.place, current=True))
        turn.refresh_board(anew=True)
    turn.toast("several-chosen", when=potluck.starts_at)
    turn.edit_pressed("several-chosen", when=potluck.starts_at)


def register(app: Registry) -> None:
    app.command("potlucks", command, order=2)
    app.button("choose", choose)
