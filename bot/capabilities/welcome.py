"""The bot arrives in a group, becomes an administrator, is removed; people join and leave; the group changes."""

from dataclasses import replace

from bot.context import Turn
from bot.outgoing import mention
from bot.registry import Registry
from bot.texts import languages
from planning.changes import leave
from planning.potluck import Stage


async def added(turn: Turn) -> None:
    turn.save_chat(replace(turn.chat, bot_present=True, bot_is_admin=bool(turn.event.details.get("admin"))))
    all_ = await turn.store.potlucks_in(turn.event.chat_id)
    theirs = (turn.event.person.language or "").partition("-")[0].casefold()
    if not all_ and theirs in languages():
        # A group that never had a potluck is greeted as whoever adds the bot speaks; /settings changes it.
        turn.save_chat(replace(turn.chat, language=theirs))
    running = [s.potluck for s in all_ if s.potluck.stage is Stage.PLANNED and s.potluck.ends >= turn.now]
    turn.say("welcome-back" if running else "welcome-group", reply=False)
    for potluck in running:
        turn.refresh_board(potluck.id, anew=True)


async def promoted(turn: Turn) -> None:
    is_admin = bool(turn.event.details.get("admin"))
    if is_admin == turn.chat.bot_is_admin:
        return
    turn.save_chat(replace(turn.chat, bot_is_admin=is_admin))
    turn.say("welcome-admin" if is_admin else "welcome-no-admin", reply=False)
    if is_admin:
        for stored in await turn.store.potlucks_in(turn.event.chat_id):
            turn.refresh_board(stored.potluck.id)


async def removed(turn: Turn) -> None:
    # Nothing can be said any more; what people promised stays for when the bot is added again.
    turn.save_chat(replace(turn.chat, bot_present=False, bot_is_admin=False))


async def blocked(turn: Turn) -> None:
    turn.save_person(replace(turn.person, can_dm=turn.event.kind == "unblocked"))


async def left(turn: Turn) -> None:
    """Whoever leaves the group comes no more; a host's potlucks go to somebody else."""
    for who in turn.event.subjects:
        for stored in await turn.store.potlucks_in(turn.event.chat_id):
            guest = stored.potluck.guest(str(who.id))
            if guest is None or stored.potluck.stage is not Stage.PLANNED:
                continue
            await turn.about_potluck(stored)
            was_host = turn.potluck.host == guest.id
            freed = [p.dish for p in turn.potluck.promises_of(guest.id)]
            after, heir = leave(turn.potluck, guest.id)
            turn.change(after, "did-leave", name=guest.name)
            new_host = after.guest(heir)
            if was_host and new_host is not None:
                turn.say("left-host", reply=False, where="group", name=guest.name, host=mention(new_host))
            elif was_host:
                turn.say("left-host-nobody", reply=False, where="group", name=guest.name)
            elif freed:
                turn.say("left-dishes", reply=False, where="group", name=guest.name, dishes=freed)


async def renamed(turn: Turn) -> None:
    turn.save_chat(replace(turn.chat, title=turn.event.chat_title))


async def migrated(turn: Turn) -> None:
    """The group became a supergroup: everything moves to the new id, once, whichever notice comes first."""
    old, new = turn.event.details["old"], turn.event.details["new"]
    await turn.store.migrate_chat(old, new)
    turn.discard()
    if turn.event.chat_id == new:
        # Old messages can't be edited in the new chat: every board is posted anew.
        for stored in await turn.store.potlucks_in(new):
            turn.refresh_board(stored.potluck.id, anew=True)


def register(app: Registry) -> None:
    app.event("bot-added", added)
    app.event("bot-admin", promoted)
    app.event("bot-removed", removed)
    app.event("blocked", blocked)
    app.event("unblocked", blocked)
    app.event("left", left)
    app.event("renamed", renamed)
    app.event("migrated", migrated)
