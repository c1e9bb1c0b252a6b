"""A guest gets a copy of their data, or has it removed."""

import base64
import json
from typing import Any

from bot.buttons import Button, Link
from bot.context import Turn
from bot.registry import Registry
from planning.potluck import Potluck
from planning.potluck_file import write


async def copy(turn: Turn) -> None:
    """/mydata: what is kept of this person, as a JSON file, to nobody else's eyes."""
    if not turn.private and not turn.person.can_dm:
        door = Link(turn.voice.plain("button-private"), turn.own_link("mydata", of_potluck=False))
        turn.say("mydata-private", buttons=[[door]])
        return
    theirs = await turn.store.potlucks_of_person(turn.person.id)
    found = {
        "person": {"id": turn.person.id, "name": turn.person.name, "username": turn.person.username},
        "potlucks": [_own(stored.potluck, turn) for stored in theirs],
    }
    text = json.dumps(found, ensure_ascii=False, indent=2)
    document = {"base64": base64.b64encode(text.encode()).decode(), "name": "mydata.json"}
    turn.post(turn.voice("mydata-here"), where="private", method="document", document=document, reply=False)


def _own(potluck: Potluck, turn: Turn) -> dict[str, Any]:
    """One potluck as far as it is about this person: their row, their dishes, those they added, what they paid."""
    whole = write(potluck, turn.now)
    mine = {turn.me, *(g.id for g in potluck.guests if g.added_by == turn.me)}
    return {
        "id": whole["id"],
        "title": whole["title"],
        "starts_at": whole["starts_at"],
        "guests": [g for g in whole["guests"] if g["id"] in mine],
        "promises": [p for p in whole["promises"] if p["guest"] in mine or mine & {*p["sharers"], *p["takers"]}],
        "toppings": [t["name"] for t in (whole["bar"] or {}).get("toppings", ()) if t["guest"] in mine],
        "payments": [p for p in whole["payments"] if p["guest"] in mine],
        "declined": [d for d in whole["declined"] if d["guest"] in mine],
        "history": [h for h in whole["history"] if h["guest"] in mine],
    }


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
    app.command("mydata", copy, order=81)
    app.own_link("mydata", copy)
    app.command("forget", ask, order=82)
    app.button("forget", pressed)
