"""A guest has their data removed."""

from bot.buttons import Button
from bot.context import Turn
from bot.registry import Registry


async def ask(turn: Turn) -> None:
    turn.say(
        "forget-sure",
        buttons=[
            [
                Button(turn.voice.plain("button-forget-yes"), "forget", ("yes",), owner=turn.me),
                Button(turn.voice.plain("button-forget-no"), "forget", ("no",), owner=turn.me),
            ]
        ],
    )


async def pressed(turn: Turn) -> None:
    if turn.args[0] != "yes":
        turn.edit_pressed("forget-not")
        turn.toast("forget-not")
        return
    for stored in await turn.store.potlucks_of_person(turn.person.id):
        turn.refresh_board(stored.potluck.id)
    turn.edit_pressed("forgotten")
    turn.toast("forgotten")
    turn.forget_me()


def register(app: Registry) -> None:
    app.command("forget", ask, order=82)
    app.button("forget", pressed)
