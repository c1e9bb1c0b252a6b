"""The Bot API methods the room knows, one file for each sort.

A method names every parameter it understands; a call with another one is refused, because an
unknown parameter quietly left out would look like a success that did not happen.
"""

from __future__ import annotations

import importlib
import inspect
import pkgutil
from collections.abc import Awaitable, Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from ..errors import ApiError, CannotDo, bad
from ..faults import Fault

if TYPE_CHECKING:
    from ..call import Call
    from ..room import Room

Answering = Callable[["Room", "Call"], Any]


@dataclass(frozen=True)
class Method:
    name: str
    parameters: frozenset[str]
    answer: Answering


METHODS: dict[str, Method] = {}

SENDING = (
    "chat_id message_thread_id disable_notification protect_content reply_parameters reply_to_message_id "
    "allow_sending_without_reply reply_markup "
)
"""Parameters every sending method takes."""


def method(name: str, parameters: str = "") -> Callable[[Answering], Answering]:
    def keep(answer: Answering) -> Answering:
        METHODS[name.lower()] = Method(name, frozenset(parameters.split()), answer)
        return answer

    return keep


class LostAnswer(Exception):
    """The line drops before an answer: a fault on order. `seconds` of silence come first."""

    def __init__(self, seconds: float) -> None:
        super().__init__(f"answer lost after {seconds} s")
        self.seconds = seconds


async def answer(room: Room, call: Call, sleep: Callable[[float], Awaitable[None]]) -> Any:
    """The result of one call. Raises ApiError, or LostAnswer for a time-out on order."""
    known = METHODS.get(call.method)
    if known is None:
        raise ApiError(404, "Not Found: method not found")
    room.calls[known.name] = room.calls.get(known.name, 0) + 1
    fault = room.faults.take(call.method, _to_basic_group(room, call)) if room.faults.queue else None
    if fault is not None:
        await _before(room, call, fault, sleep)
    for name in call.values:
        if name not in known.parameters:
            raise bad(f'the room does not know the parameter "{name}" of {known.name}')
    for name in call.files:
        if name not in known.parameters and not call.by_chance:
            _attached(call, name)
    result = known.answer(room, call)
    if inspect.isawaitable(result):
        result = await result
    if fault is not None and fault.kind == "timeout":
        raise LostAnswer(fault.seconds)
    return result


async def _before(room: Room, call: Call, fault: Fault, sleep: Callable[[float], Awaitable[None]]) -> None:
    match fault.kind:
        case "slow":
            await sleep(fault.seconds)
        case "timeout":
            if not fault.stored:
                raise LostAnswer(fault.seconds)
        case "migrate":
            try:
                new = room.upgrade_group(call.number("chat_id"))
            except CannotDo as why:
                raise bad(str(why)) from why
            raise ApiError(400, "Bad Request: group chat was upgraded to a supergroup chat", migrate_to_chat_id=new.id)
        case _:
            raise fault.error(call.number("chat_id") > 0 if call.has("chat_id") else True)


def _to_basic_group(room: Room, call: Call) -> bool:
    try:
        chat = room.chats.get(call.number("chat_id"))
    except ApiError:
        return False
    return chat is not None and chat.kind == "group" and chat.migrated_to is None


def _attached(call: Call, name: str) -> None:
    if not any(f"attach://{name}" in value for value in call.values.values() if isinstance(value, str)):
        raise bad(f'the uploaded file "{name}" is used by no parameter')


for _found in pkgutil.iter_modules(__path__):
    importlib.import_module(f"{__name__}.{_found.name}")
