"""Evening out what was paid, in whole cents and with few transfers."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal

from planning.headcount import QUARTERS, eaters_of
from planning.potluck import Money, Potluck

# fmt: off
NO_MINOR = frozenset((
    "BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW", "PYG",
    "RWF", "UGX", "UYI", "VND", "VUV", "XAF", "XOF", "XPF",
))
THREE_DIGITS = frozenset(("BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"))
# fmt: on
"""Currencies whose smallest coin is not a hundredth (ISO 4217)."""

MOST_EXACT = 12
"""Up to so many unsettled people the number of transfers is the smallest there is; beyond, small enough."""


@dataclass(frozen=True)
class Transfer:
    """`from_` pays `money` (more than 0) to `to`; both are guest ids."""

    from_: str
    to: str
    money: Money


def evening_out(potluck: Potluck) -> tuple[Transfer, ...]:
    """The fewest transfers after which every party that comes has borne its share of what was paid.

    Who said yes shares, by eaters: a child pays as it eats, two adults twice as much as one. People whom somebody
    else named (`added_by`) owe and are owed through whoever named them, who has the account. Whoever paid without
    coming gets it back. What one already handed to another (`Payment.to`) is settled between these two. Currencies are
    settled apart. The cents that do not divide go to the largest remainders, so
    that nothing is lost.
    """
    found: list[Transfer] = []
    for currency in dict.fromkeys(p.money.currency for p in potluck.payments):
        unit = smallest(currency)
        paid: dict[str, int] = {}
        handed: dict[str, int] = {}
        for payment in potluck.payments:
            if payment.money.currency != currency:
                continue
            coins = int((payment.money.amount / unit).to_integral_value(ROUND_HALF_UP))
            who = account_of(potluck, payment.guest)
            if payment.to:
                # From one to the other: nobody else's share changes.
                to = account_of(potluck, payment.to)
                handed[who] = handed.get(who, 0) + coins
                handed[to] = handed.get(to, 0) - coins
            else:
                paid[who] = paid.get(who, 0) + coins
        owed = shares(potluck, sum(paid.values()), tuple(paid)) if paid else {}
        everybody = dict.fromkeys((*owed, *paid, *handed))
        balance = {who: paid.get(who, 0) + handed.get(who, 0) - owed.get(who, 0) for who in everybody}
        found.extend(Transfer(a, b, Money(coins * unit, currency)) for a, b, coins in settled(balance))
    return tuple(found)


def account_of(potluck: Potluck, guest_id: str) -> str:
    """Who settles for a guest: whoever named them, and so on; in a circle everybody for themselves."""
    at, seen = guest_id, {guest_id}
    while (guest := potluck.guest(at)) is not None and guest.added_by is not None:
        if guest.added_by in seen:
            return guest_id
        if potluck.guest(guest.added_by) is None:
            break
        at = guest.added_by
        seen.add(at)
    return at


def smallest(currency: str) -> Decimal:
    """The value of the currency's smallest coin."""
    if currency.upper() in NO_MINOR:
        return Decimal(1)
    return Decimal("0.001") if currency.upper() in THREE_DIGITS else Decimal("0.01")


def shares(potluck: Potluck, coins: int, payers: tuple[str, ...]) -> dict[str, int]:
    """What each account bears of `coins`, by the eaters of the parties it settles for; the parts add up to `coins`.

    When nobody has said yes, those who paid share alike.
    """
    eaters: dict[str, int] = {}
    for guest in potluck.guests:
        if guest.answer == "yes":
            who = account_of(potluck, guest.id)
            eaters[who] = eaters.get(who, 0) + round(QUARTERS * eaters_of(guest.party))
    weight = {who: quarters for who, quarters in eaters.items() if quarters} or dict.fromkeys(payers, QUARTERS)
    total = sum(weight.values())
    if total == 0:
        return {}
    found = {who: coins * w // total for who, w in weight.items()}
    # The remainder by the largest fraction lost; equal fractions in the order of the guests.
    by_loss = sorted(weight, key=lambda who: -(coins * weight[who] % total))
    for who in by_loss[: coins - sum(found.values())]:
        found[who] += 1
    return found


def settled(balance: Mapping[str, int]) -> list[tuple[str, str, int]]:
    """Transfers (from, to, coins) that bring every balance (paid minus owed, adding up to 0) to nothing.

    n people in g groups that each add up to 0 need n - g transfers, so the most groups are looked for: exactly,
    over all subsets, up to `MOST_EXACT` people; first pairs that cancel, then one group, beyond that.
    """
    left = {who: coins for who, coins in balance.items() if coins}
    if sum(left.values()):
        raise ValueError("balances must add up to 0")
    groups = _groups(left) if len(left) <= MOST_EXACT else _pairs(left)
    return [transfer for group in groups for transfer in _one_group({who: left[who] for who in group})]


def _groups(left: Mapping[str, int]) -> list[list[str]]:
    people = list(left)
    n = len(people)
    sums = [0] * (1 << n)
    for mask in range(1, 1 << n):
        low = mask & -mask
        sums[mask] = sums[mask ^ low] + left[people[low.bit_length() - 1]]
    # most[mask]: the most zero-sum groups that can be closed while people leave `mask` one by one.
    most = [0] * (1 << n)
    last = [0] * (1 << n)
    for mask in range(1, 1 << n):
        best = -1
        rest = mask
        while rest:
            low = rest & -rest
            rest ^= low
            if most[mask ^ low] > best:
                best, last[mask] = most[mask ^ low], low
        most[mask] = best + (sums[mask] == 0)
    found: list[list[str]] = []
    mask = (1 << n) - 1
    while mask:
        if sums[mask] == 0:
            found.append([])
        found[-1].append(people[last[mask].bit_length() - 1])
        mask ^= last[mask]
    return found


def _pairs(left: Mapping[str, int]) -> list[list[str]]:
    waiting: dict[int, list[str]] = {}
    found: list[list[str]] = []
    for who, coins in left.items():
        if waiting.get(-coins):
            found.append([waiting[-coins].pop(0), who])
        else:
            waiting.setdefault(coins, []).append(who)
    paired = {who for pair in found for who in pair}
    rest = [who for who in left if who not in paired]
    return [*found, rest] if rest else found


def _one_group(left: dict[str, int]) -> list[tuple[str, str, int]]:
    """The largest debt to the largest credit, until nothing is left: at most one transfer fewer than people."""
    found: list[tuple[str, str, int]] = []
    while any(left.values()):
        debtor = min(left, key=lambda who: left[who])
        creditor = max(left, key=lambda who: left[who])
        coins = min(-left[debtor], left[creditor])
        left[debtor] += coins
        left[creditor] -= coins
        found.append((debtor, creditor, coins))
    return found
