"""Chance that is no chance: the same seed draws the same numbers."""

from __future__ import annotations


class Draw:
    """Whole numbers below n by a linear congruence (Knuth's MMIX constants, from memory)."""

    def __init__(self, seed: int) -> None:
        self.state = (seed * 2654435761 + 12345) & 0xFFFFFFFFFFFFFFFF

    def __call__(self, n: int) -> int:
        if n <= 1:
            return 0
        self.state = (self.state * 6364136223846793005 + 1442695040888963407) & 0xFFFFFFFFFFFFFFFF
        return ((self.state >> 32) * n) >> 32
