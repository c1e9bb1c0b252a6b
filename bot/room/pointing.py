"""Which message a line of a script means, and which of its buttons."""

from __future__ import annotations

from .errors import CannotDo
from .room import Room
from .script import Line
from .world import Chat, Message


def pointed(room: Room, chat: Chat, topic: int | None, pointer: str | int | None) -> Message | None:
    """The message a line means: a number from the end, "last" of the bot's, or the board. Raises CannotDo."""
    if pointer is None:
        return None
    here = [m for m in chat.messages.values() if m.kind != "service" and (topic is None or m.thread == topic)]
    if isinstance(pointer, int):
        if pointer > len(here):
            raise CannotDo(f"there are only {len(here)} messages here")
        return here[-pointer]
    bots = [m for m in here if m.sender == room.bot.id]
    if pointer == "last":
        if not bots:
            raise CannotDo("the bot has said nothing here")
        return bots[-1]
    return board_of(room, chat)


def board_of(room: Room, chat: Chat) -> Message:
    """The newest of the bot's messages that is pinned; where pinning was refused, its newest with buttons."""
    bots = [m for m in chat.messages.values() if m.sender == room.bot.id and m.kind != "service"]
    pinned = [m for m in bots if m.id in chat.pinned]
    pinned.sort(key=lambda m: chat.pinned.index(m.id))
    said = pinned or [m for m in bots if m.keyboard and m.edited] or [m for m in bots if m.keyboard]
    if not said:
        raise CannotDo("there is no board here")
    return said[-1]


def button_of(room: Room, line: Line, chat: Chat, topic: int | None, who: int) -> tuple[Message, int, int]:
    """The button whose label holds the line's words: its message, row and column. Raises CannotDo."""
    if line.on is not None:
        message = pointed(room, chat, topic, line.on)
        assert message is not None
        looked = [message]
    else:
        looked = bots_newest_first(room, chat)
        if line.where == "group":
            # A person who is asked to press something looks in the private chat as well.
            looked += bots_newest_first(room, room.chats[who])
    wanted = line.text.casefold()
    for message in looked:
        for row, column, button in message.buttons():
            if wanted in str(button["text"]).casefold():
                return message, row, column
    raise CannotDo(f'there is no button "{line.text}"' + (f" on {line.on}" if line.on is not None else ""))


def bots_newest_first(room: Room, chat: Chat) -> list[Message]:
    return [m for m in reversed(chat.messages.values()) if m.sender == room.bot.id and m.keyboard]
