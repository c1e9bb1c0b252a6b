"""How much of each thing: from one eater's portion to packages in a basket.

    total = counted x portion x uptake x meal x variety x heat x hours x plate
    buy   = total / yield x (1 + margin), rounded up to packages

`counted` is eaters at the service level (people for plates and ice, adults for alcohol). The factors and where
they come from stand in `rules.py`; the portions in `data/portions.csv`.
"""

from __future__ import annotations

from planning.portions.catalogue import Item, Kind, Size, best_packages, find, items, kinds, sizes
from planning.portions.rules import Package, Portion, Table, packed, portion_of, table_of
from planning.portions.wanted import STAPLES, item_for, portions

__all__ = [
    "STAPLES",
    "Item",
    "Kind",
    "Package",
    "Portion",
    "Size",
    "Table",
    "best_packages",
    "find",
    "item_for",
    "items",
    "kinds",
    "packed",
    "portion_of",
    "portions",
    "sizes",
    "table_of",
]
