"""What the bot says about itself: name, descriptions, command menus, menu buttons."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field

from .errors import bad

SCOPES = (
    "default", "all_private_chats", "all_group_chats", "all_chat_administrators", "chat", "chat_administrators",
    "chat_member",
)  # fmt: skip
Scope = tuple[str, int, int]


@dataclass
class Profile:
    name: str
    names: dict[str, str] = field(default_factory=dict)
    descriptions: dict[str, str] = field(default_factory=dict)
    short_descriptions: dict[str, str] = field(default_factory=dict)
    commands: dict[tuple[Scope, str], list[dict[str, object]]] = field(default_factory=dict)
    menu_button: dict[str, object] = field(default_factory=lambda: {"type": "commands"})

    def menu(self, chat_id: int, private: bool, admin: bool, user_id: int, language: str) -> list[dict[str, object]]:
        """The commands a person is offered: the most specific scope wins, then their language."""
        scopes: list[Scope] = []
        if private:
            scopes += [("chat", chat_id, 0), ("all_private_chats", 0, 0)]
        else:
            scopes.append(("chat_member", chat_id, user_id))
            if admin:
                scopes.append(("chat_administrators", chat_id, 0))
            scopes.append(("chat", chat_id, 0))
            if admin:
                scopes.append(("all_chat_administrators", 0, 0))
            scopes.append(("all_group_chats", 0, 0))
        scopes.append(("default", 0, 0))
        for scope in scopes:
            for code in dict.fromkeys((language[:2], "")):
                if (scope, code) in self.commands:
                    return self.commands[scope, code]
        return []


def scope(raw: object) -> Scope:
    if raw is None:
        return ("default", 0, 0)
    if not isinstance(raw, Mapping) or raw.get("type") not in SCOPES:
        raise bad("can't parse BotCommandScope: unsupported type specified")
    return (str(raw["type"]), int(raw.get("chat_id", 0)), int(raw.get("user_id", 0)))


def language(code: str) -> str:
    if not re.fullmatch(r"(?:[a-z]{2})?", code):
        raise bad("invalid language code specified")
    return code


def commands(raw: object) -> list[dict[str, object]]:
    """At most 100; names 1-32 of a-z, 0-9 and _; descriptions 1-256 characters."""
    if not isinstance(raw, list):
        raise bad("can't parse commands list JSON object")
    if len(raw) > 100:
        raise bad("too many bot commands specified")
    kept: list[dict[str, object]] = []
    for item in raw:
        if not isinstance(item, Mapping) or set(item) - {"command", "description"}:
            raise bad("can't parse BotCommand: expected an Object with command and description")
        name = str(item.get("command", "")).removeprefix("/")
        text = str(item.get("description", ""))
        if not re.fullmatch(r"[a-z0-9_]{1,32}", name):
            raise bad("BOT_COMMAND_INVALID")
        if not 1 <= len(text) <= 256:
            raise bad("BOT_COMMAND_DESCRIPTION_INVALID")
        kept.append({"command": name, "description": text})
    return kept
