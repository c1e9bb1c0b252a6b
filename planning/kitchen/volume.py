"""How much room a dish takes."""

from __future__ import annotations

from planning.amounts import parse, to_unit


def quarts(text: str | None) -> float | None:
    """An amount that is a volume, in US quarts; None for anything else.

    >>> quarts("1 gallon"), quarts("3 lb")
    (4.0, None)
    """
    amount = parse(text) if text else None
    if amount is None or amount.kind != "volume":
        return None
    volume = to_unit(amount, "quart")
    return None if volume is None else float(volume)
