"""Whoever can eat only some of the mains eats a whole portion of those: what there is for them is never shared out."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from planning.diets import can_eat, meant
from planning.headcount import Headcount
from planning.portions.rules import variety
from planning.potluck import Answer, Potluck, Promise


def suited_factors(
    potluck: Potluck, headcount: Headcount, mains: Mapping[str, Iterable[Promise]]
) -> Mapping[str, float]:
    """How much more of each main is wanted for those who can't eat the others: item -> factor above 1.

    `mains` are the mains by item with the dishes that go under it. With four mains everybody takes a part of
    each; a vegetarian beside three roasts takes a whole portion of the fourth. A dish only counts as out of
    the question where something against the need is listed; what has to be asked about is still eaten.
    """
    people = headcount.eaters
    if people <= 0 or len(mains) < 2:
        return {}
    share = variety("main", len(mains))
    more: dict[str, float] = {}
    for guest in potluck.guests:
        if guest.answer is Answer.NO:
            continue
        own: dict[str, float] = {}
        most: dict[str, float] = {}
        for need in (one for said in guest.all_needs() for one in meant(said)):
            fit = [item for item, dishes in mains.items() if any(can_eat(d, need.need) != "contains" for d in dishes)]
            if not 0 < len(fit) < len(mains):
                continue
            extra = variety("main", len(fit)) - share
            for item in fit:
                own[item] = own.get(item, 0.0) + extra * need.count
                most[item] = max(most.get(item, 0.0), extra * guest.party.total)
        for item, wanted in own.items():
            more[item] = more.get(item, 0.0) + min(wanted, most[item])
    return {item: 1 + extra / (share * people) for item, extra in more.items() if extra > 0}
