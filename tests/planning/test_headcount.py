"""Who comes: the exact distribution, beside SciPy's and published figures."""

from __future__ import annotations

import itertools
import math
from dataclasses import replace
from datetime import UTC, datetime

import numpy as np
import pytest
import scipy.stats
from hypothesis import given, settings
from hypothesis import strategies as st

from planning.headcount import (
    Headcount,
    distribution,
    eaters_of,
    headcount,
    newsvendor_level,
    odds,
    odds_in_words,
    quantile,
    weights,
)
from planning.potluck import AGE_GROUPS, Answer, Guest, Party, PastAnswer, Potluck
from planning.tables import rows, sources

SATURDAY = datetime(2027, 9, 18, 22, tzinfo=UTC)


def potluck(*guests: Guest, **fields: object) -> Potluck:
    return Potluck("p1", SATURDAY, "America/Chicago", guests=guests, **fields)  # type: ignore[arg-type]


def guest(number: int, answer: str = "yes", **party: int) -> Guest:
    return Guest(f"g{number}", f"Guest {number}", Answer(answer), Party(**party))


parties = st.builds(
    Party,
    adults=st.integers(0, 4),
    teens=st.integers(0, 2),
    children=st.integers(0, 4),
    toddlers=st.integers(0, 2),
    infants=st.integers(0, 2),
)
guests = st.lists(st.tuples(st.sampled_from(list(Answer)), parties), max_size=12).map(
    lambda made: tuple(Guest(f"g{i}", "x", answer, party) for i, (answer, party) in enumerate(made))
)


def test_single_guests_follow_scipys_poisson_binomial() -> None:
    chances = [0.95, 0.5, 0.25, 0.95, 0.95, 0.5, 0.25, 0.25, 0.95, 0.5]

    _, pmf = distribution((1, p, 1) for p in chances)

    expected = scipy.stats.poisson_binom(chances).pmf(np.arange(len(chances) + 1))
    assert np.abs(pmf - expected).max() < 1e-14


def test_equal_odds_give_scipys_binomial() -> None:
    _, pmf = distribution([(1, 0.3, 1200)])

    assert np.abs(pmf - scipy.stats.binom(1200, 0.3).pmf(np.arange(1201))).max() < 1e-13


def test_the_published_three_coin_example() -> None:
    # p = 0.1, 0.2, 0.2: 0.9*0.8*0.8 = .576 ... 0.1*0.2*0.2 = .004 (Poisson-binomial, textbook example).
    _, pmf = distribution([(1, 0.1, 1), (1, 0.2, 1), (1, 0.2, 1)])

    assert pmf.tolist() == pytest.approx([0.576, 0.352, 0.068, 0.004])


def test_parties_agree_with_trying_every_case() -> None:
    sized = [(3, 0.95), (2, 0.5), (4, 0.25), (1, 0.5), (2, 0.95)]
    by_hand = [0.0] * 13
    for coming in itertools.product((0, 1), repeat=len(sized)):
        people = sum(size for (size, _), there in zip(sized, coming, strict=True) if there)
        by_hand[people] += math.prod(p if there else 1 - p for (_, p), there in zip(sized, coming, strict=True))

    _, pmf = distribution((size, p, 1) for size, p in sized)

    assert pmf.tolist() == pytest.approx(by_hand, abs=1e-15)


def test_the_service_level_is_the_newsvendors_quantile() -> None:
    # Poisson demand 6, holding 1, penalty 4: order 8 (Snyder & Shen's newsvendor, as computed by stockpyl 1.0.2).
    demand = scipy.stats.poisson(6).pmf(np.arange(60))

    assert newsvendor_level(short_costs=4, left_costs=1) == 0.8
    assert quantile(demand, newsvendor_level(4, 1)) == 8


def test_the_newsvendors_normal_example() -> None:
    # Snyder & Shen, example: h = 2, p = 18, demand N(120, 10): 132.8155; on a grid of one unit that is 133.
    demand = np.diff(scipy.stats.norm(120, 10).cdf(np.arange(0, 242) - 0.0))

    assert quantile(demand, newsvendor_level(18, 2)) + 1 == 133


@pytest.mark.parametrize("costs", [(0.0, 0.0), (-1.0, 2.0), (1.0, -0.5)])
def test_a_newsvendor_without_sensible_costs_is_refused(costs: tuple[float, float]) -> None:
    with pytest.raises(ValueError, match="costs"):
        newsvendor_level(*costs)


def test_a_party_comes_whole_or_not_at_all() -> None:
    found = headcount(potluck(guest(1, "maybe", adults=3, infants=1)))

    assert dict(found.pmf) == {0: 0.5, 4: 0.5}


def test_a_no_counts_for_nobody() -> None:
    found = headcount(potluck(guest(1, "no", adults=5)))

    assert (found.expected, found.high, found.eaters) == (0, 0, 0)


def test_everybody_is_enough_at_a_service_level_of_one() -> None:
    crowd = potluck(*(guest(n, "none", adults=2) for n in range(80)), service_level=1.0)

    assert headcount(crowd).at_service_level == 160


def test_eaters_follow_the_age_groups_weights() -> None:
    # 2 x 1 + 1 x 1 + 2 x 0.75 + 1 x 0.5 + 1 x 0
    assert eaters_of(Party(2, 1, 2, 1, 1)) == 5.0


def test_the_weights_agree_with_the_published_ratios() -> None:
    # HHFKA lunch energy midpoints: grades K-5 600 kcal, 9-12 800 kcal (Q337, Q339); Missouri afternoon
    # snack meat 0.5 oz at 1-5 years, 1 oz at 6-18 (Q345).
    assert weights()["children"] == pytest.approx(600 / 800)
    assert weights()["teens"] == 800 / 800
    assert weights()["toddlers"] == 0.5 / 1.0
    assert all(row["source"] in sources() for row in rows("weights"))


def test_the_hosts_guess_stands_while_nobody_has_answered() -> None:
    found = headcount(potluck(expected_people=24))

    assert found.expected == pytest.approx(24)
    assert found.low < 24 < found.high
    assert found.by_age["adults"] == pytest.approx(24)


def test_people_named_without_an_answer_leave_the_guess_as_it_is() -> None:
    found = headcount(potluck(guest(1, "none", adults=2), guest(2, "none", adults=2), expected_people=24))

    assert found.expected == pytest.approx(24)


def test_a_no_takes_its_party_out_of_the_guess() -> None:
    found = headcount(potluck(guest(1, "no", adults=3), expected_people=24))

    assert found.expected == pytest.approx(21)


def test_a_guess_that_is_answered_in_full_is_used_up() -> None:
    answers = [guest(n, "yes", adults=4) for n in range(6)]

    assert headcount(potluck(*answers, expected_people=24)) == headcount(potluck(*answers))


def test_the_hosts_own_odds_stand() -> None:
    found = headcount(potluck(guest(1, "yes", adults=10), answer_odds={"yes": 0.8}))

    assert found.expected == pytest.approx(8)


def test_odds_learn_from_the_groups_past_by_a_beta_prior() -> None:
    past = tuple(PastAnswer("2026-09-12", f"g{n}", None, "yes", n < 14) for n in range(20))

    # (0.95 x 20 + 14) / (20 + 20)
    assert odds(potluck(history=past)).yes == pytest.approx(33 / 40)
    assert odds_in_words(potluck(history=past)).key == "headcount-odds-learned"


def test_two_dishes_of_one_guest_are_one_answer_to_learn_from() -> None:
    once = (PastAnswer("2026-09-12", "g1", "salad", "yes", False),)
    twice = (*once, PastAnswer("2026-09-12", "g1", "bread", "yes", False))

    assert odds(potluck(history=twice)) == odds(potluck(history=once))


def test_an_absurd_party_still_gets_an_answer_that_is_not_too_small() -> None:
    found = headcount(potluck(guest(1, "yes", adults=10**9), answer_odds={"yes": 1.0}))

    assert found.at_service_level >= 10**9


def test_five_hundred_parties_sum_to_one() -> None:
    answers = ("yes", "maybe", "none")
    crowd = potluck(*(guest(n, answers[n % 3], adults=1 + n % 3, children=n % 4) for n in range(500)))

    found = headcount(crowd)

    assert math.fsum(p for _, p in found.pmf) == pytest.approx(1, abs=1e-11)
    assert math.fsum(n * p for n, p in found.pmf) == pytest.approx(found.expected, rel=1e-9)


@given(guests)
def test_the_order_of_guests_never_matters(made: tuple[Guest, ...]) -> None:
    assert headcount(potluck(*made)) == headcount(potluck(*reversed(made)))


@given(guests, st.sampled_from(["yes", "maybe", "none", "no"]), parties)
def test_another_guest_never_lowers_a_figure(made: tuple[Guest, ...], answer: str, party: Party) -> None:
    before = headcount(potluck(*made))

    after = headcount(potluck(*made, Guest("new", "New", Answer(answer), party)))

    assert all(a >= b - 1e-9 for a, b in zip(_figures(after), _figures(before), strict=True))


@given(guests, st.integers(0, 40), st.integers(0, 40))
def test_a_larger_guess_never_lowers_a_figure(made: tuple[Guest, ...], one: int, other: int) -> None:
    smaller, larger = sorted((one, other))

    before = headcount(potluck(*made, expected_people=smaller))
    after = headcount(potluck(*made, expected_people=larger))

    assert all(a >= b - 1e-9 for a, b in zip(_figures(after), _figures(before), strict=True))


@given(guests, st.floats(0, 1), st.floats(0, 1))
def test_a_higher_service_level_never_needs_fewer(made: tuple[Guest, ...], one: float, other: float) -> None:
    lower, higher = sorted((one, other))

    assert (
        headcount(potluck(*made, service_level=lower)).eaters <= headcount(potluck(*made, service_level=higher)).eaters
    )


@settings(max_examples=50)
@given(guests)
def test_the_range_is_the_distributions_own(made: tuple[Guest, ...]) -> None:
    found = headcount(potluck(*made))
    below = math.fsum(p for n, p in found.pmf if n < found.high)
    up_to = math.fsum(p for n, p in found.pmf if n <= found.high)

    assert below < 0.9 + 1e-9
    assert up_to >= 0.9 - 1e-9
    assert found.low <= found.high
    assert set(found.by_age) == set(AGE_GROUPS)


def test_a_party_replaced_by_a_larger_one_never_lowers_a_figure() -> None:
    small = potluck(guest(1, "maybe", adults=2), guest(2, "yes", adults=1))
    large = replace(small, guests=(guest(1, "maybe", adults=3), guest(2, "yes", adults=1)))

    assert _figures(headcount(large)) > _figures(headcount(small))


def _figures(found: Headcount) -> tuple[float, ...]:
    return (found.expected, found.low, found.high, found.at_service_level, found.eaters, found.expected_eaters)


@pytest.mark.parametrize("adults", [10**12, 10**30, 10**300])
def test_an_absurd_party_is_counted_and_costs_no_time(adults: int) -> None:
    crowd = tuple(Guest(f"g{n}", "x", answer, Party(adults)) for n, answer in enumerate((Answer.YES, Answer.MAYBE)))
    count = headcount(Potluck("p", SATURDAY, "UTC", guests=crowd, expected_people=adults))

    assert count.at_service_level >= 10**12
    assert len(count.pmf) < 10**5
