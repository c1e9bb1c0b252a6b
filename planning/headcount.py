"""How many will come, and how much they will eat.

Every guest answers for a whole party, which comes together or not at all: the party's size with the
odds of its answer, nothing otherwise. The headcount is the exact convolution of these, never a sample,
so the same answers give the same figures in whatever order they came.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import groupby
from operator import attrgetter, itemgetter
from typing import TYPE_CHECKING

from planning.potluck import AGE_GROUPS, Party, Potluck, Say
from planning.tables import rows

if TYPE_CHECKING:
    import numpy

QUARTERS = 4
"""Eaters are counted in quarters: every weight in `weights.csv` is a multiple of 1/4."""

MOST_CELLS = 60_000
"""Beyond so many people the distribution is kept in larger steps (rounded up), so that absurd parties cost no time."""

MOST_PEOPLE = 10**15
"""Of a larger party or guess so many are counted: all of them would not fit on the planet a thousand times over."""

GUESS_CORE = 0.75
"""The share of the host's own guess taken as certain; the rest comes with even odds, on twice as many
people. So the guess is right on average and within about a tenth of it: common practice, no source."""


@dataclass(frozen=True)
class Odds:
    """The probability in 0..1 that a party comes, by its answer; `learned_from` is how many past answers moved it."""

    yes: float
    maybe: float
    none: float
    no: float = 0.0
    learned_from: int = 0
    source: str = "practice"

    def of(self, answer: str) -> float:
        return {"yes": self.yes, "maybe": self.maybe, "none": self.none}.get(str(answer), self.no)


@dataclass(frozen=True)
class Headcount:
    """People and eaters. An eater is one adult's appetite (`weights.csv`).

    `low` and `high` are the 10 % and 90 % quantiles of the people, `at_service_level` the people (and
    `eaters` the eaters) that are enough with the potluck's service level. `pmf` is (people, probability).
    """

    expected: float
    low: int
    high: int
    at_service_level: int
    eaters: float
    expected_eaters: float
    pmf: tuple[tuple[int, float], ...]
    by_age: Mapping[str, float]


@cache
def weights() -> dict[str, float]:
    """Eaters per person of each age group, 0..1 (`weights.csv` has the sources)."""
    return {row["age_group"]: float(row["weight"]) for row in rows("weights")}


def eaters_of(party: Party) -> float:
    """The party's appetite in adults' portions."""
    return sum(weights()[group] * n for group, n in party.counts())


def odds(potluck: Potluck) -> Odds:
    """What each answer is worth in this group.

    The default for each answer (`odds.csv`, common practice) is a beta prior worth `prior_strength` answers;
    the group's own past answers are counted on top: (prior * strength + came) / (strength + answered).
    Nobody's own record is used for themselves. What the host has set (`answer_odds`) stands as it is.
    """
    asked: dict[str, int] = {}
    came: dict[str, int] = {}
    for (_date, _guest, said), there in _past(potluck).items():
        asked[said] = asked.get(said, 0) + 1
        came[said] = came.get(said, 0) + there
    found: dict[str, float] = {}
    learned = 0
    for row in rows("odds"):
        answer, prior, strength = row["answer"], float(row["odds"]), float(row["prior_strength"])
        seen = asked.get(answer, 0) if strength else 0
        learned += seen
        found[answer] = (prior * strength + came.get(answer, 0)) / (strength + seen) if seen else prior
    for answer, own in (potluck.answer_odds or {}).items():
        if answer in found:
            found[answer] = min(1.0, max(0.0, float(own)))
    return Odds(found["yes"], found["maybe"], found["none"], found["no"], learned)


def odds_in_words(potluck: Potluck) -> Say:
    """One line which says where the odds come from."""
    now = odds(potluck)
    facts: dict[str, object] = {
        "yes": round(100 * now.yes),
        "maybe": round(100 * now.maybe),
        "none": round(100 * now.none),
        "learned": now.learned_from,
    }
    if potluck.answer_odds:
        return Say("headcount-odds-host", facts)
    return Say("headcount-odds-learned" if now.learned_from else "headcount-odds-default", facts)


def headcount(potluck: Potluck) -> Headcount:
    """The potluck's headcount, exact.

    `expected_people`, the host's guess, stands in for those who have not answered yet: from it are taken
    every party that said yes, maybe or no (whoever says no was among the guess), and those named without an
    answer as far as their odds count them already. What is left are people on the host's word (adults,
    `GUESS_CORE`). So before anybody answers the expected number is the guess, and each answer replaces
    a piece of it. More guests and larger parties never lower any figure.
    """
    import numpy as np

    now = odds(potluck)
    # Parties alike at once, in one order: sums of floats depend on their order, answers must not.
    alike = sorted(Counter(map(_ANSWER_AND_AGES, potluck.guests)).items())
    ages = np.array([[min(MOST_PEOPLE, max(0, n)) for n in key[1:]] for key, _ in alike], dtype=float)
    ages = ages.reshape(len(alike), len(AGE_GROUPS))
    people = ages.sum(1).tolist()
    quarters = (QUARTERS * (ages @ np.array([weights()[group] for group in AGE_GROUPS]))).tolist()
    chance = {answer: now.of(answer) for answer in {key[0] for key, _ in alike}}
    sure = [chance[key[0]] for key, _ in alike]
    coming = np.array([p * times for p, (_, times) in zip(sure, alike, strict=True)])
    by_age = dict(zip(AGE_GROUPS, (coming @ ages).tolist(), strict=True))
    parties = [
        (round(size), round(appetite), p, times)
        for size, appetite, p, (_, times) in zip(people, quarters, sure, alike, strict=True)
    ]
    spoken_for = math.fsum(
        size * times * (now.none if key[0] == "none" else 1.0) for size, (key, times) in zip(people, alike, strict=True)
    )
    guessed = _left_of_guess(potluck, spoken_for)
    core = math.floor(guessed * GUESS_CORE)
    if guessed:
        parties.append((core, core * QUARTERS, 1.0, 1))
        parties.append((1, QUARTERS, 0.5, 2 * (guessed - core)))
        by_age["adults"] += guessed
    people_step, people_pmf = distribution((size, p, times) for size, _, p, times in parties)
    eater_step, eater_pmf = distribution((appetite, p, times) for _, appetite, p, times in parties)
    level = min(1.0, max(0.0, potluck.service_level))
    everybody = level >= 1
    likely = np.flatnonzero(people_pmf > 1e-15)
    return Headcount(
        expected=float(coming @ people) + guessed,
        low=quantile(people_pmf, 0.1) * people_step,
        high=quantile(people_pmf, 0.9) * people_step,
        at_service_level=(len(people_pmf) - 1 if everybody else quantile(people_pmf, level)) * people_step,
        eaters=(len(eater_pmf) - 1 if everybody else quantile(eater_pmf, level)) * eater_step / QUARTERS,
        expected_eaters=float(coming @ quarters) / QUARTERS + guessed,
        pmf=tuple(zip((likely * people_step).tolist(), people_pmf[likely].tolist(), strict=True)),
        by_age=by_age,
    )


_ANSWER_AND_AGES = attrgetter("answer", *(f"party.{group}" for group in AGE_GROUPS))


def distribution(parties: Iterable[tuple[int, float, int]]) -> tuple[int, numpy.ndarray]:
    """The exact distribution of how many come of independent parties, each (size, probability, how many such).

    Returns (step, pmf): pmf[i] is the probability of i * step. The step is 1 up to `MOST_CELLS` people.
    """
    import numpy as np

    known = [(size, p, times) for size, p, times in parties if size > 0 and p > 0 and times > 0]
    step = max(1, math.ceil(sum(size * times for size, _, times in known) / MOST_CELLS))
    alike: dict[tuple[int, float], int] = {}
    for size, p, times in known:
        key = (math.ceil(size / step), p)
        alike[key] = alike.get(key, 0) + times
    total = sum(size * times for (size, _), times in alike.items())
    low, window = 0, np.ones(1)
    certain = sum(size * times for (size, p), times in alike.items() if p >= 1)
    unsure = sorted((size, p, times) for (size, p), times in alike.items() if p < 1)
    for size, same in groupby(unsure, key=itemgetter(0)):
        first, coming = 0, np.ones(1)
        for _, p, times in same:
            here, more = _binomial(times, p)
            first, coming = first + here, np.convolve(coming, more)
        window = _in_steps(window, coming, size)
        low += first * size
        # What is far less than a float's own rounding is not worth carrying along.
        kept = np.flatnonzero(window > NEGLIGIBLE)
        low, window = low + int(kept[0]), window[kept[0] : kept[-1] + 1]
    pmf = np.zeros(total + 1)
    pmf[low + certain : low + certain + len(window)] = window
    return step, pmf


def _in_steps(window: numpy.ndarray, coming: numpy.ndarray, size: int) -> numpy.ndarray:
    """The distribution of a + size * b for a from `window` and b from `coming`."""
    import numpy as np

    wider = (len(coming) - 1) * size
    if size <= _SMALL_PARTY:
        spread = np.zeros(wider + 1)
        spread[::size] = coming
        return np.convolve(window, spread)
    made = np.zeros(len(window) + wider)
    for at, chance in enumerate(coming.tolist()):
        made[at * size : at * size + len(window)] += window * chance
    return made


_SMALL_PARTY = 16
"""Up to this size one convolution, mostly of zeros, is quicker than an addition for each number of parties."""

NEGLIGIBLE = 1e-20
_MOST_AT_ONCE = 500


def _binomial(n: int, p: float) -> tuple[int, numpy.ndarray]:
    """How many of `n` equal parties come (0 < p < 1): (the first number with a chance, the chances from it on)."""
    import numpy as np

    if n > _MOST_AT_ONCE:
        # Halves, so that no power of p falls below the smallest float.
        (here, one), (there, other) = _binomial(n // 2, p), _binomial(n - n // 2, p)
        return here + there, np.convolve(one, other)
    if p > 0.5:
        staying_first, staying = _binomial(n, 1 - p)
        return n - staying_first - len(staying) + 1, staying[::-1]
    chance, ratio, chances = (1 - p) ** n, p / (1 - p), [(1 - p) ** n]
    for k in range(n):
        chance *= (n - k) / (k + 1) * ratio
        chances.append(chance)
    found = np.array(chances)
    kept = np.flatnonzero(found > NEGLIGIBLE)
    return int(kept[0]), found[kept[0] : kept[-1] + 1]


def quantile(pmf: Sequence[float] | numpy.ndarray, level: float) -> int:
    """The smallest n whose cumulative probability reaches `level` (0..1): the newsvendor's answer."""
    import numpy as np

    sums = np.cumsum(pmf)
    # 1e-12 forgives what adding floats loses: 0.9 is reached by 0.3 + 0.6.
    return min(int(np.searchsorted(sums, level * float(sums[-1]) - 1e-12)), len(sums) - 1)


def newsvendor_level(short_costs: float, left_costs: float) -> float:
    """The service level which makes the expected loss smallest: short / (short + left).

    `short_costs` is the harm of one portion too few, `left_costs` of one too many; both 0 or more, not both 0.
    """
    if short_costs < 0 or left_costs < 0 or short_costs + left_costs == 0:
        raise ValueError("costs must be 0 or more, and one of them above 0")
    return short_costs / (short_costs + left_costs)


def _left_of_guess(potluck: Potluck, spoken_for: float) -> int:
    """People of the host's guess about whom the guests' answers say nothing yet."""
    if not potluck.expected_people:
        return 0
    return max(0, math.ceil(min(MOST_PEOPLE, potluck.expected_people) - spoken_for - 1e-9))


def _past(potluck: Potluck) -> dict[tuple[str, str, str], bool]:
    """One entry per guest and date, however many dishes they had promised then."""
    found: dict[tuple[str, str, str], bool] = {}
    for past in potluck.history:
        key = (past.date, past.guest, past.said)
        found[key] = found.get(key, False) or past.came
    return found
