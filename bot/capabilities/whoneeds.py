"""Who has which needs, asked in words: what is known of the table, never with a name in the group; a host gets the
names in private."""

from __future__ import annotations

from bot.capabilities.allergies import is_today
from bot.capabilities.needs import need_name
from bot.context import Turn
from bot.registry import Registry
from bot.texts import Html
from bot.understood import context, place_of
from planning.changes import may_manage
from planning.diets.whohas import asks_who_has_needs
from planning.potluck import Answer, Stage


async def read_who(turn: Turn) -> None:
    event = turn.event
    if not turn.has_potluck or event.kind != "message" or event.media is not None or event.forwarded:
        return
    if turn.potluck.stage is not Stage.PLANNED or event.person.anonymous or not asks_who_has_needs(turn.words):
        return
    host = may_manage(turn.potluck, turn.actor)
    place = place_of(turn)
    near = context(turn, replying_to=None).near_board or is_today(turn)
    if (place is None and not (near or host)) or place == "person":
        return
    turn.handled = True
    counts: dict[str, int] = {}
    people: list[str] = []
    for guest in turn.potluck.guests:
        needs = [] if guest.answer is Answer.NO else guest.all_needs()
        for need in needs:
            counts[need.need] = counts.get(need.need, 0) + need.count
        if needs:
            named = [need_name(turn.voice, n.need) for n in needs]
            people.append(turn.voice("whoneeds-of", name=guest.name, needs=named))
    if not counts:
        turn.say("whoneeds-none")
        return
    table = [turn.voice.plain("board-need", need=need_name(turn.voice, n), n=c) for n, c in sorted(counts.items())]
    if host and turn.private:
        turn.post(Html("\n".join([*people, turn.voice("whoneeds-ask")])))
        return
    turn.say("whoneeds-table", needs=table)
    if host and turn.person.can_dm:
        turn.post(Html("\n".join(people)), where="private")


def register(app: Registry) -> None:
    app.reader(read_who, order=42)
