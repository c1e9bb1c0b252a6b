"""Settings: of the group (clock, units, language, quiet hours, reminders) and of a person (mute, units)."""

from dataclasses import replace
from typing import Any

from babel import Locale

from bot.buttons import Button
from bot.context import Turn
from bot.registry import Registry
from bot.texts import languages
from bot.zones import find_zone
from planning.changes import Refusal

REMINDER_KINDS = ("answer-by", "bring", "thaw", "slow-cooker", "preheat", "swap", "leave", "start", "collect", "return")


async def command(turn: Turn) -> None:
    """/settings shows them with buttons; "/settings timezone Chicago" and the like set one."""
    if turn.private:
        name, _, value = turn.words.partition(" ")
        if name.casefold() == "language":
            own_language(turn, value.strip().casefold())
        await personal(turn)
        return
    if not turn.words:
        turn.say("settings-group", buttons=group_rows(turn), **group_facts(turn))
        return
    await _require_rights(turn)
    name, _, value = turn.words.partition(" ")
    setters = {
        "timezone": set_zone,
        "clock": set_zone,
        "units": set_units,
        "language": set_language,
        "quiet": set_quiet,
    }
    setter = setters.get(name.casefold())
    if setter is None:
        raise Refusal("refused-setting-name", names=["timezone", "units", "language", "quiet"])
    setter(turn, value.strip())
    turn.say("settings-group", buttons=group_rows(turn), **group_facts(turn))


async def _require_rights(turn: Turn) -> None:
    """Before there is a potluck any member may set things up; then hosts and administrators."""
    if turn.has_potluck:
        turn.hosts_only()


def group_facts(turn: Turn) -> dict[str, Any]:
    chat = turn.chat
    off = [turn.voice.plain(f"reminder-kind-{k}") for k in chat.reminder_kinds_off]
    return {
        "zone": chat.timezone or "UTC",
        "units": chat.units,
        "language": language_name(chat.language),
        "from": chat.quiet_from,
        "to": chat.quiet_to,
        "off": off,
        "n": len(off),
    }


def group_rows(turn: Turn) -> list[list[Button]]:
    voice, chat = turn.voice, turn.chat
    other = "metric" if chat.units == "us" else "us"
    rows = [[Button(voice.plain("button-units", units=other), "set", ("units", other))]]
    langs = languages()
    if len(langs) > 1:
        rows.append(
            [
                Button(voice.plain("button-language", language=language_name(lang)), "set", ("language", lang))
                for lang in langs
            ]
        )
    kinds = [
        Button(
            ("✗ " if k in chat.reminder_kinds_off else "✓ ") + voice.plain(f"reminder-kind-{k}"), "set", ("remind", k)
        )
        for k in REMINDER_KINDS
    ]
    rows += [kinds[i : i + 2] for i in range(0, len(kinds), 2)]
    return rows


async def press(turn: Turn) -> None:
    await _require_rights(turn)
    name, value = turn.args
    if name == "units":
        set_units(turn, value)
    elif name == "language":
        set_language(turn, value)
    elif name == "remind" and value in REMINDER_KINDS:
        off = turn.chat.reminder_kinds_off
        off = tuple(k for k in off if k != value) if value in off else (*off, value)
        turn.save_chat(replace(turn.chat, reminder_kinds_off=off))
    else:
        raise Refusal("refused-button-old")
    turn.edit_pressed("settings-group", buttons=group_rows(turn), **group_facts(turn))
    turn.toast("settings-saved")


def set_zone(turn: Turn, value: str) -> None:
    """The potlucks ahead keep their hour on the new clock."""
    zone = find_zone(value)
    if zone is None:
        raise Refusal("refused-zone", value=value[:40])
    turn.save_chat(replace(turn.chat, timezone=zone))
    if turn.has_potluck:
        from planning.changes import move_clock

        turn.change(move_clock(turn.potluck, turn.actor, zone), "did-zone")
        turn.say("zone-moved", when=turn.potluck.starts_at, zone=zone)


def set_units(turn: Turn, value: str) -> None:
    if value not in ("us", "metric"):
        raise Refusal("refused-units")
    turn.save_chat(replace(turn.chat, units=value))
    if turn.has_potluck:
        turn.change(replace(turn.potluck, units=value), "did-units")


def set_language(turn: Turn, value: str) -> None:
    found = _language(value)
    if found is None:
        raise Refusal("refused-language", languages=[language_name(code) for code in languages()])
    turn.save_chat(replace(turn.chat, language=found))
    turn.refresh_board()


def set_quiet(turn: Turn, value: str) -> None:
    """ "22:00-07:00" or "off"."""
    if value.casefold() == "off":
        turn.save_chat(replace(turn.chat, quiet_from="00:00", quiet_to="00:00"))
        return
    start, dash, end = value.replace("–", "-").replace(" to ", "-").partition("-")
    quiet_from, quiet_to = _hour(start), _hour(end)
    if not dash or quiet_from is None or quiet_to is None:
        raise Refusal("refused-quiet")
    turn.save_chat(replace(turn.chat, quiet_from=quiet_from, quiet_to=quiet_to))


def _hour(text: str) -> str | None:
    hours, _, minutes = text.strip().partition(":")
    if not hours.isdecimal() or (minutes and not minutes.isdecimal()):
        return None
    h, m = int(hours), int(minutes or 0)
    return f"{h:02d}:{m:02d}" if h < 24 and m < 60 else None


async def personal(turn: Turn) -> None:
    turn.say("settings-personal", muted=turn.person.muted, buttons=personal_rows(turn))


def personal_rows(turn: Turn) -> list[list[Button]]:
    key = "button-unmute" if turn.person.muted else "button-mute"
    rows = [[Button(turn.voice.plain(key), "mute", (), owner=turn.me)]]
    if turn.private and len(languages()) > 1:
        rows.append([Button(language_name(lang), "mylang", (lang,), owner=turn.me) for lang in languages()])
    return rows


def language_name(code: str) -> str:
    """A language in its own words, which whoever needs it can read."""
    return str(Locale.parse(code).get_display_name(code)).capitalize()


def own_language(turn: Turn, value: str) -> None:
    """What this person reads in private, whatever their groups speak."""
    found = _language(value)
    if found is None:
        raise Refusal("refused-language", languages=[language_name(code) for code in languages()])
    turn.save_person(replace(turn.person, language=found))


def _language(value: str) -> str | None:
    """A code, or the language's name in itself or in English."""
    wanted = value.strip().casefold()
    for code in languages():
        names = {code, language_name(code).casefold(), str(Locale.parse(code).get_display_name("en")).casefold()}
        if wanted in names:
            return code
    return None


async def own_language_pressed(turn: Turn) -> None:
    own_language(turn, turn.args[0])
    turn.edit_pressed("settings-personal", muted=turn.person.muted, buttons=personal_rows(turn))
    turn.toast("settings-saved")


async def mute(turn: Turn) -> None:
    turn.save_person(replace(turn.person, muted=not turn.person.muted))
    turn.edit_pressed("settings-personal", muted=turn.person.muted, buttons=personal_rows(turn))
    turn.toast("settings-saved")


async def mute_command(turn: Turn) -> None:
    """/mute works anywhere, since some never open a private chat."""
    turn.save_person(replace(turn.person, muted=not turn.person.muted))
    turn.say("mute-now", muted=turn.person.muted)


def register(app: Registry) -> None:
    app.command("settings", command, order=80)
    app.command("mute", mute_command, order=81)
    app.button("set", press)
    app.button("mute", mute)
    app.button("mylang", own_language_pressed)
