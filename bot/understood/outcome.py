"""What became of a reading."""

from __future__ import annotations

from dataclasses import dataclass, field

from planning.potluck import Guest, Say


@dataclass
class Understood:
    """`lines` say what was done; `vague` offers need the offer sheet."""

    lines: list[Say] = field(default_factory=list)
    vague: bool = False
    asked: bool = False
    """Something was asked back instead of being done."""
    warned: bool = False
    """Among the lines is one that must not get lost."""
    given: list[tuple[Guest, str]] = field(default_factory=list)
    """Who was handed which dish, and is to be told."""
    out: list[str] = field(default_factory=list)
    """The ids of those who said they can't come."""
