""" "Vegan tho" from a cook: whether the dish is or the cook is asked, for a wrong guess would feed somebody wrongly."""

from __future__ import annotations

from bot.buttons import Button
from bot.capabilities.needs import need_name
from bot.context import Turn
from bot.registry import Registry
from bot.understood import place_of
from bot.understood.contents import with_contents
from planning.changes import Refusal, merge_needs
from planning.diets.aside import diet_aside
from planning.diets.contents import Told
from planning.diets.needs import need_of
from planning.potluck import Need, Stage

MOST_DISHES = 6


async def read_aside(turn: Turn) -> None:
    event = turn.event
    if not turn.has_potluck or not event.is_words:
        return
    if turn.potluck.stage is not Stage.PLANNED or event.person.anonymous or place_of(turn) == "question:diets":
        return
    diet = diet_aside(turn.words)
    own = [p for p in turn.potluck.promises_of(turn.me) if p.category != "supplies"]
    if diet is None or not own or need_of(diet) is None:
        return
    turn.handled = True
    rows = [[Button(p.dish, "ofdiet", (p.id,), owner=turn.me)] for p in own[-MOST_DISHES:]]
    rows.append([Button(turn.voice.plain("button-myself"), "ofdiet", ("me",), owner=turn.me)])
    turn.remember_question("whosediet", {"diet": diet})
    turn.say("whosediet-ask", diet=diet, dish=own[0].dish if len(own) == 1 else "", buttons=rows)


async def told(turn: Turn) -> None:
    """The dish or the cook."""
    if turn.dialog is None or turn.dialog.kind != "whosediet":
        raise Refusal("refused-button-old")
    diet, whose = str(turn.dialog.data["diet"]), turn.args[0]
    need = need_of(diet)
    turn.answered()
    if whose != "me":
        dish = turn.known_promise(whose)
        with_contents(turn, dish, Told(dish.dish, without=(diet,)))
        turn.edit_pressed("contents-heard", dish=dish.dish, what=[diet], whole=dish.ingredients is not None,
                          buttons=[[turn.undo_button()]])  # fmt: skip
        return
    if need is None:
        raise Refusal("refused-button-old")
    mine = Need(need[0], 1, need[1], open=not turn.private)
    turn.change(merge_needs(turn.potluck, turn.actor, turn.me, (mine,)), "did-needs")
    turn.edit_pressed("whosediet-yours", diet=need_name(turn.voice, need[0]), buttons=[[turn.undo_button()]])


def register(app: Registry) -> None:
    app.reader(read_aside, order=42)
    app.button("ofdiet", told)
