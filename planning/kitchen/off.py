"""What to set on the dial of an oven that heats to less, or more, than it says."""

from __future__ import annotations

from planning.potluck import Kitchen


def off_by(kitchen: Kitchen, appliance: str | None) -> float:
    """How much hotter than its dial says that oven is (°F; below 0: colder); 0 for any other appliance."""
    kind, _, number = (appliance or "").partition(":")
    known = kind == "oven" and number.isdecimal() and int(number) < len(kitchen.ovens)
    return kitchen.ovens[int(number)].off_f if known else 0.0


def dial_f(kitchen: Kitchen, appliance: str | None, temp_f: float | None) -> float | None:
    """The figure to set (°F) for a set-point of `temp_f` inside.

    >>> from planning.potluck import Oven
    >>> dial_f(Kitchen(ovens=(Oven(off_f=-50.0),)), "oven:0", 375.0)
    425.0
    """
    return None if temp_f is None else temp_f - off_by(kitchen, appliance)
