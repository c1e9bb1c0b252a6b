"""When somebody comes who says "20 minutes late"."""

from __future__ import annotations

from datetime import datetime, timedelta


def later_by(minutes: int, due: datetime, starts_at: datetime, now: datetime) -> datetime:
    """The moment meant by so many minutes late (more than 0), always after `now`.

    Late is said of the time one is waited for: `due`, when the dish is needed, as long as that many minutes after it
    are still ahead; then of the start; of a start long past nobody counts any more, and it is from now on.
    """
    late = timedelta(minutes=minutes)
    return next((at + late for at in (due, starts_at) if at + late > now), now + late)
