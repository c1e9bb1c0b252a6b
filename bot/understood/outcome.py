"""What became of a reading."""

from __future__ import annotations

from dataclasses import dataclass, field

from planning.potluck import Say


@dataclass
class Understood:
    """`lines` say what was done; `tell` are named guests to be told; `vague` offers need the offer sheet."""

    lines: list[Say] = field(default_factory=list)
    vague: bool = False
    asked: bool = False
    """Something was asked back instead of being done."""
