"""The age groups of a party, the same in every language."""

from __future__ import annotations


def group_of_age(years: int) -> str:
    """Infants under 1, toddlers 1-3, children 4-12, teens 13-17, else adults (the groups of `planning.potluck`)."""
    if years < 1:
        return "infants"
    if years < 4:
        return "toddlers"
    if years < 13:
        return "children"
    return "teens" if years < 18 else "adults"
