"""Trouble on order: the next calls fail in a chosen way. And the platform's own flood limits."""

from __future__ import annotations

import math
from collections import defaultdict, deque
from dataclasses import dataclass
from datetime import datetime, timedelta

from .errors import ApiError, bad, flooded, forbidden

FAULT_KINDS = ("429", "403", "400", "500", "timeout", "migrate", "slow")


@dataclass
class Fault:
    """The next `count` calls fail.

    `method` narrows it to one method; without it every call but getUpdates may be hit, and "migrate"
    only calls to a basic group. `stored` (timeout): whether the call took effect before its answer was
    lost. `seconds`: how long a slow answer takes, or a lost one is awaited before the line drops (real time).
    """

    kind: str
    count: int = 1
    method: str | None = None
    retry_after: int = 1
    stored: bool = False
    seconds: float = 0.0
    description: str = ""

    def __post_init__(self) -> None:
        if self.kind not in FAULT_KINDS:
            raise ValueError(f"unknown fault {self.kind!r}: one of {', '.join(FAULT_KINDS)}")

    def hits(self, method: str) -> bool:
        if self.method is None:
            return method != "getupdates"
        return self.method.lower() == method

    def error(self, in_private: bool) -> ApiError:
        match self.kind:
            case "429":
                return flooded(self.retry_after)
            case "403":
                where = "was blocked by the user" if in_private else "was kicked from the group chat"
                return forbidden(self.description or f"bot {where}")
            case "400":
                return bad(self.description or "the message can't be taken (a fault made in the room)")
            case _:
                return ApiError(500, self.description or "Internal Server Error")


class Faults:
    def __init__(self) -> None:
        self.queue: list[Fault] = []

    def add(self, fault: Fault) -> None:
        self.queue.append(fault)

    def take(self, method: str, to_basic_group: bool) -> Fault | None:
        """The fault that hits this call, used up by one."""
        for fault in self.queue:
            if fault.hits(method) and (fault.kind != "migrate" or to_basic_group):
                fault.count -= 1
                if fault.count <= 0:
                    self.queue.remove(fault)
                return fault
        return None


GROUP_PER_MINUTE = 20
OVERALL_PER_SECOND = 30


class Floods:
    """20 sends and edits a minute in a group, 30 a second in all, measured on the room's clock.

    The platform publishes the figures as what a bot should keep to and says that they may vary; one
    message a second in one chat is advice there (bursts pass) and is not enforced here.
    """

    def __init__(self) -> None:
        self._group: defaultdict[int, deque[datetime]] = defaultdict(deque)
        self._all: deque[datetime] = deque()

    def count(self, chat_id: int, now: datetime, weight: int = 1) -> None:
        """Raises ApiError 429 where the call is one too many; otherwise counts it."""
        limits = [(self._all, OVERALL_PER_SECOND, 1.0)]
        if chat_id < 0:
            limits.append((self._group[chat_id], GROUP_PER_MINUTE, 60.0))
        for times, most, window in limits:
            while times and (now - times[0]).total_seconds() >= window:
                times.popleft()
            if len(times) + weight > most:
                left = (times[0] + timedelta(seconds=window) - now).total_seconds() if times else window
                raise flooded(max(1, math.ceil(left)))
        for times, _, _ in limits:
            times.extend([now] * weight)
