"""Who has which needs, asked in words: what is known of the table, never with a name in the group; a host gets the
names in private."""

from __future__ import annotations

from bot.capabilities.allergies import is_today
from bot.capabilities.needs import need_name, of_the_table
from bot.context import Turn
from bot.registry import Registry
from bot.texts import Html
from bot.understood import context, place_of
from planning.changes import may_manage
from planning.diets.whohas import asks_who_has_needs
from planning.potluck import Answer, Stage


async def read_who(turn: Turn) -> None:
    event = turn.event
    if not turn.has_potluck or not event.is_words:
        return
    if turn.potluck.stage is not Stage.PLANNED or event.person.anonymous or not asks_who_has_needs(turn.words):
        return
    host = may_manage(turn.potluck, turn.actor)
    place = place_of(turn)
    near = context(turn, replying_to=None).near_board or is_today(turn)
    if (place is None and not (near or host)) or place == "person":
        return
    turn.handled = True
    table = of_the_table(turn.potluck, turn.voice)
    if not table:
        turn.say("whoneeds-none")
        return
    people = [
        turn.voice("whoneeds-of", name=guest.name, needs=[need_name(turn.voice, n.need) for n in guest.all_needs()])
        for guest in turn.potluck.guests if guest.answer is not Answer.NO and guest.all_needs()
    ]  # fmt: skip
    if host and turn.private:
        turn.post(Html("\n".join([*people, turn.voice("whoneeds-ask")])))
        return
    turn.say("whoneeds-table", needs=table)
    if host and turn.person.can_dm:
        turn.post(Html("\n".join(people)), where="private")


def register(app: Registry) -> None:
    app.reader(read_who, order=42)
