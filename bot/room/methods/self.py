"""The bot about itself: who it is, its menus and descriptions."""

from __future__ import annotations

from typing import TYPE_CHECKING

from .. import profile
from ..errors import bad
from . import method

if TYPE_CHECKING:
    from ..call import Call
    from ..room import Room


@method("getMe")
def get_me(room: Room, call: Call) -> dict[str, object]:
    return room.bot.to_api() | {
        "can_join_groups": True, "can_read_all_group_messages": room.sees_all, "supports_inline_queries": False,
        "can_connect_to_business": False, "has_main_web_app": False, "has_topics_enabled": False,
        "allows_users_to_create_topics": False, "can_manage_bots": False,
    }  # fmt: skip


@method("logOut")
@method("close")
def nothing_to_close(room: Room, call: Call) -> bool:
    raise bad("the room runs one bot for as long as it is open")


def _where(call: Call) -> tuple[profile.Scope, str]:
    return profile.scope(call.mapping("scope")), profile.language(call.text("language_code"))


@method("setMyCommands", "commands scope language_code")
def set_commands(room: Room, call: Call) -> bool:
    room.profile.commands[_where(call)] = profile.commands(call.json("commands"))
    return True


@method("getMyCommands", "scope language_code")
def get_commands(room: Room, call: Call) -> list[dict[str, object]]:
    return room.profile.commands.get(_where(call), [])


@method("deleteMyCommands", "scope language_code")
def delete_commands(room: Room, call: Call) -> bool:
    room.profile.commands.pop(_where(call), None)
    return True


def _worded(name: str, most: int, stored: str) -> None:
    field = {"Name": "name", "Description": "description", "ShortDescription": "short_description"}[name]

    def set_it(room: Room, call: Call) -> bool:
        text = call.text(field)
        if len(text) > most:
            raise bad(f"{field.replace('_', ' ')} is too long")
        words: dict[str, str] = getattr(room.profile, stored)
        words[profile.language(call.text("language_code"))] = text
        return True

    def get_it(room: Room, call: Call) -> dict[str, object]:
        words: dict[str, str] = getattr(room.profile, stored)
        usual = words.get("", room.profile.name if name == "Name" else "")
        return {field: words.get(profile.language(call.text("language_code"))) or usual}

    method(f"setMy{name}", f"{field} language_code")(set_it)
    method(f"getMy{name}", "language_code")(get_it)


_worded("Name", 64, "names")
_worded("Description", 512, "descriptions")
_worded("ShortDescription", 120, "short_descriptions")


@method("setChatMenuButton", "chat_id menu_button")
def set_menu_button(room: Room, call: Call) -> bool:
    button = dict(call.mapping("menu_button") or {"type": "default"})
    if button.get("type") not in ("default", "commands"):
        raise bad(f"the room does not know menu buttons of the type {button.get('type')!r}")
    if call.has("chat_id"):
        chat = room.chats.get(call.number("chat_id"))
        if chat is None or chat.kind != "private":
            raise bad("chat not found")
        chat.menu_button = button
    else:
        room.profile.menu_button = button
    return True


@method("getChatMenuButton", "chat_id")
def get_menu_button(room: Room, call: Call) -> dict[str, object]:
    chat = room.chats.get(call.number("chat_id")) if call.has("chat_id") else None
    return (chat.menu_button if chat is not None else None) or room.profile.menu_button
