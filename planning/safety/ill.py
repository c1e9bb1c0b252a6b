"""A cook who is, or was, ill with what food passes on (ILL-01: vomiting or diarrhea, two days after the last of it)."""

from __future__ import annotations

from datetime import datetime, timedelta

ILL_WAIT = timedelta(hours=48)
"""ILL-01: two days after the last symptom."""


def may_cook_from(last_symptom: datetime) -> datetime:
    """The first moment at which somebody who was ill may prepare food for others."""
    return last_symptom + ILL_WAIT
