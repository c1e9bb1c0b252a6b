"""What nobody brings, in packages and money; and who owes whom at the end."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal

from planning.headcount import Headcount, headcount
from planning.menu import servings_of
from planning.portions import Package, Portion, portions
from planning.portions.wanted import item_of
from planning.potluck import Money, Potluck

CENT = Decimal("0.01")


@dataclass(frozen=True)
class ShoppingRow:
    """One thing to buy: `need` of `unit`, in whole packages. `cost` is None when nobody knows a price; `estimated`
    tells that it is ours and not the host's. `running` is the total so far, `over_budget` whether it passes it."""

    item: str
    need: float
    unit: str
    packages: tuple[Package, ...]
    left_over: float
    cost: Money | None
    estimated: bool
    running: Money | None
    over_budget: bool
    why: str
    source: str


@dataclass(frozen=True)
class Transfer:
    """`from_` pays `money` to `to`."""

    from_: str
    to: str
    money: Money


def shopping(
    potluck: Potluck, count: Headcount | None = None, needed: Sequence[Portion] | None = None
) -> tuple[ShoppingRow, ...]:
    """What nobody brings. `count` and `needed` are computed when not given."""
    count = count if count is not None else headcount(potluck)
    needed = needed if needed is not None else portions(potluck, count)
    brought = {item_of(p).name for p in potluck.promises}
    found = []
    for portion in needed:
        if portion.item in brought or portion.buy <= 0:
            continue
        found.append(
            ShoppingRow(
                portion.item, portion.buy, portion.buy_unit, portion.packages, portion.left_over, None, True,
                None, False, portion.category, portion.source,
            )
        )
    return tuple(found)


def evening_out(potluck: Potluck) -> tuple[Transfer, ...]:
    """Few transfers after which everybody who comes has paid the same share."""
    paid: dict[str, Decimal] = {}
    currency = potluck.payments[0].money.currency if potluck.payments else "USD"
    for payment in potluck.payments:
        if payment.money.currency == currency:
            paid[payment.guest] = paid.get(payment.guest, Decimal(0)) + payment.money.amount
    if not paid:
        return ()
    payers = [g.id for g in potluck.guests if g.answer == "yes"]
    payers += [p for p in paid if p not in payers]
    total = sum(paid.values(), Decimal(0))
    cents = int((total / CENT).to_integral_value(ROUND_HALF_UP))
    base, extra = divmod(cents, len(payers))
    balance = {
        p: int((paid.get(p, Decimal(0)) / CENT).to_integral_value(ROUND_HALF_UP)) - base - (1 if i < extra else 0)
        for i, p in enumerate(payers)
    }
    return tuple(Transfer(a, b, Money(Decimal(c) * CENT, currency)) for a, b, c in _settle(balance))


def _settle(balance: dict[str, int]) -> list[tuple[str, str, int]]:
    found = []
    left = dict(balance)
    while True:
        debtor = min(left, key=lambda p: (left[p], p))
        creditor = max(left, key=lambda p: (left[p], p))
        amount = min(-left[debtor], left[creditor])
        if amount <= 0:
            return found
        left[debtor] += amount
        left[creditor] -= amount
        found.append((debtor, creditor, amount))


__all__ = ["ShoppingRow", "Transfer", "evening_out", "math", "servings_of", "shopping"]
