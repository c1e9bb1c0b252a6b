"""When the clocks of a zone are changed. Source: the IANA time zone database, as the system has it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

_STEP = timedelta(hours=6)


@dataclass(frozen=True)
class Change:
    """`at` the instant (UTC) of the change, `minutes` by how much clocks go forward (less than 0: back)."""

    at: datetime
    minutes: int


def change_between(timezone: str, start: datetime, end: datetime) -> Change | None:
    """The first change of a zone's clocks between two instants (aware; the end included), to the minute.

    >>> change_between("America/New_York", datetime(2027, 11, 5, tzinfo=UTC), datetime(2027, 11, 8, tzinfo=UTC))
    Change(at=datetime.datetime(2027, 11, 7, 6, 0, tzinfo=datetime.timezone.utc), minutes=-60)
    """
    zone = ZoneInfo(timezone)

    def offset(at: datetime) -> timedelta:
        return at.astimezone(zone).utcoffset() or timedelta()

    low, end = start.astimezone(UTC).replace(second=0, microsecond=0), end.astimezone(UTC)
    while low < end:
        high = min(low + _STEP, end)
        if offset(low) != offset(high):
            by = offset(high) - offset(low)
            while high - low > timedelta(minutes=1):
                middle = low + timedelta(minutes=int((high - low).total_seconds() // 120))
                low, high = (low, middle) if offset(middle) != offset(low) else (middle, high)
            return Change(high.replace(second=0, microsecond=0), round(by.total_seconds() / 60))
        low = high
    return None
