"""What every turn shares."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Awaitable, Callable
from dataclasses import dataclass, field
from datetime import datetime
from typing import Any

from bot.buttons import Signer
from bot.clock import Clock
from bot.floods import Spent
from bot.registry import Registry
from bot.storage.store import Store
from planning.theday.situation import Recent


async def _nobody_left(chat_id: int, person_id: int) -> bool:
    return False


@dataclass(frozen=True)
class FoodAsked:
    """The last question about food of a chat: the message, when, the dishes named (ids) and the foods asked for."""

    message_id: int
    at: datetime
    dishes: tuple[str, ...]
    foods: tuple[str, ...]


@dataclass(frozen=True)
class Services:
    """`username` is the bot's own, for deep links."""

    store: Store
    clock: Clock
    signer: Signer
    registry: Registry
    username: str
    is_member: Callable[[int, int], Awaitable[bool]]
    planner: Any = None
    has_left: Callable[[int, int], Awaitable[bool]] = _nobody_left
    """Whether the platform says that a person is not in a group any more; False when it can't be asked."""
    drawn: Spent | None = None
    """Of each potluck how many pictures and papers were asked for; None: as many as anybody likes."""
    urgent: OrderedDict[tuple[int, int], None] = field(default_factory=OrderedDict)
    """The messages lately answered as an emergency, so that an edit which stays one is not answered again. Another
    process may not know of it: then it is answered twice, which is the careful way round."""
    spoken: OrderedDict[tuple[int, str], tuple[int, Recent]] = field(default_factory=OrderedDict)
    """By chat and person: the message and the food they lately spoke of, so that "it" is known. Lost with the process:
    then they are asked, or say it again."""
    ill: OrderedDict[tuple[int, str], tuple[int, datetime]] = field(default_factory=OrderedDict)
    """By chat and person: the message and moment they lately told of illness, so that what they ask next is known."""
    missed: list[tuple[int, str, str]] = field(default_factory=list)
    """Chat, owner's name and thing of what lately was said to be missing, so that who finds it is told whose it may be.
    Lost with the process: then everybody is asked."""
    asked: OrderedDict[int, FoodAsked] = field(default_factory=OrderedDict)
    """By chat: what was last asked about the food, so that its cook's "yes" is known to be of it. Lost with the
    process: then the cook is asked which dish is meant."""
    asked_to_host: dict[str, str] = field(default_factory=dict)
    """By potluck: the guest whom its host asked to take over. Lost with the process: then the host presses."""
    begun: dict[tuple[str, str], datetime] = field(default_factory=dict)
    """By potluck and promise: when a dish is ready that went in at another hour than planned. Lost with the process:
    then the planned hour is told."""
