"""Changes of what things cost, who paid, and what else a total is wanted for."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from planning.changes.guests import meet
from planning.changes.rules import LONGEST_NAME, Actor, Refusal, require_manager, tidy
from planning.potluck import Money, Payment, Potluck, Price

MOST_ITEMS = 100
MOST_MONEY = Decimal(1_000_000)


def _amount(amount: Decimal) -> Decimal:
    if not amount.is_finite() or not 0 < amount <= MOST_MONEY:
        raise Refusal("refused-money", words=str(amount)[:20])
    return amount.quantize(Decimal("0.01"))


def want_item(potluck: Potluck, by: Actor, name: str, *, anybody: bool = False) -> Potluck:
    """A total is wanted for this item too. `anybody` is for a question that is not kept."""
    if not anybody:
        require_manager(potluck, by)
    clean = tidy(name, LONGEST_NAME, empty="refused-empty")
    if clean in potluck.items:
        return potluck
    if len(potluck.items) >= MOST_ITEMS:
        raise Refusal("refused-too-many-items", most=MOST_ITEMS)
    return replace(potluck, items=(*potluck.items, clean))


def set_price(potluck: Potluck, by: Actor, item: str, amount: Decimal, per: str, currency: str = "USD") -> Potluck:
    """The host's own price of one `per` of an item."""
    require_manager(potluck, by)
    per = tidy(per, 40, empty="refused-empty")
    return replace(potluck, prices={**potluck.prices, item: Price(Money(_amount(amount), currency), per)})


def settle_with(potluck: Potluck, by: Actor, to: str, amount: Decimal, currency: str) -> Potluck:
    """Somebody gave another guest money, to settle what they owe."""
    potluck = meet(potluck, by)
    if to == by.id or potluck.guest(to) is None:
        raise Refusal("refused-unknown-person", name="")
    if len(potluck.payments) >= MOST_ITEMS:
        raise Refusal("refused-too-many-items", most=MOST_ITEMS)
    given = Payment(by.id, Money(_amount(amount), currency), "", to)
    return replace(potluck, payments=(*potluck.payments, given))


def pay(potluck: Potluck, by: Actor, amount: Decimal, currency: str, what: str) -> Potluck:
    """Somebody paid for something all share."""
    potluck = meet(potluck, by)
    if len(potluck.payments) >= MOST_ITEMS:
        raise Refusal("refused-too-many-items", most=MOST_ITEMS)
    if any(p.money.currency != currency for p in potluck.payments):
        raise Refusal("refused-currency", currency=potluck.payments[0].money.currency)
    clean = tidy(what, LONGEST_NAME, empty="refused-empty") if what else ""
    return replace(potluck, payments=(*potluck.payments, Payment(by.id, Money(_amount(amount), currency), clean)))
