"""What is bought, what it costs, and who pays whom."""

from __future__ import annotations

import itertools
from dataclasses import replace
from datetime import UTC, datetime
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planning.headcount import headcount
from planning.portions import items
from planning.portions.wanted import STAPLES
from planning.potluck import Answer, Bar, Guest, Money, Party, Payment, Potluck, Price, Promise, Topping
from planning.shopping import ShoppingRow, evening_out, settled, shares, shopping

SATURDAY = datetime(2027, 9, 18, 22, tzinfo=UTC)


def supper(people: int = 20, *wanted: str, **fields: object) -> Potluck:
    crowd = tuple(Guest(f"g{n}", "x", Answer.YES) for n in range(people))
    plain = Potluck("p1", SATURDAY, "UTC", guests=crowd, items=wanted, answer_odds={"yes": 1.0})
    return replace(plain, **fields)  # type: ignore[arg-type]


def usd(amount: str) -> Money:
    return Money(Decimal(amount), "USD")


def rows(potluck: Potluck) -> dict[str, ShoppingRow]:
    return {row.item: row for row in shopping(potluck)}


def test_nobody_brings_anything_so_the_staples_are_bought() -> None:
    assert set(rows(supper())) == set(STAPLES)


def test_what_somebody_brings_is_not_bought() -> None:
    brought = supper(10, "hot dogs", promises=(Promise("p1", "g1", "hot dogs", "main", 10),))

    assert "hot dogs" not in rows(brought)


def test_what_is_brought_in_part_is_bought_for_the_rest() -> None:
    half = supper(20, "hot dogs", promises=(Promise("p1", "g1", "hot dogs", "main", 10),))

    assert rows(half)["hot dogs"].need == pytest.approx(rows(supper(20, "hot dogs"))["hot dogs"].need / 2, abs=1)


def test_a_promised_dish_nobody_asked_for_is_nobodys_shopping() -> None:
    assert "coleslaw" not in rows(supper(20, promises=(Promise("p1", "g1", "slaw", "salad", 4),)))


def test_plates_promised_without_a_number_are_for_everybody() -> None:
    assert "plates" not in rows(supper(60, promises=(Promise("p1", "g1", "paper plates", "supplies"),)))


def test_lemonade_lessens_the_cold_drinks_to_buy() -> None:
    with_some = supper(20, promises=(Promise("p1", "g1", "lemonade", "drink", 20),))

    # 20 of 20 x 4 glasses.
    assert rows(with_some)["cold drinks"].need == pytest.approx(rows(supper(20))["cold drinks"].need * 0.75, rel=0.01)


def test_a_drink_on_the_list_by_name_is_not_bought_again_among_the_cold_drinks() -> None:
    plain, named = rows(supper(20)), rows(supper(20, "lemonade"))

    # 32 fl oz of cold drinks each; 360 mL (Q013) of it is the lemonade.
    assert named["cold drinks"].need == pytest.approx(plain["cold drinks"].need * (1 - 360 / 29.5735 / 32), rel=0.01)


def test_the_base_and_the_untaken_toppings_of_a_bar_are_bought() -> None:
    bar = Bar("baked potato", (Topping("sour cream"), Topping("chives", "g1")))

    found = rows(supper(20, bar=bar))
    assert {"baked potatoes", "sour cream"} <= set(found)
    assert "chives" not in found


def test_packages_show_what_is_left_over() -> None:
    # 10 eaters x 2 x 1.1 = 22 buns: 12 + 12 or 8 + 8 + 8 = 24 leaves 2 either way; two packs are fewer.
    row = rows(supper(10, "buns"))["buns"]

    assert [(p.size, p.count) for p in row.packages] == [("pack of 12", 2)]
    assert row.left_over == 2


def test_the_hosts_own_price_goes_before_an_estimate() -> None:
    # 20 people x 1.5 lb = 30 lb: 3 bags.
    row = rows(supper(20, prices={"Ice": Price(usd("3.50"), "bag")}))["ice"]

    assert (row.cost, row.estimated) == (usd("10.50"), False)


@pytest.mark.parametrize(("per", "cost"), [("lb", "60.00"), ("10 lb bag", "6.00"), ("kg", "132.27")])
def test_a_price_per_unit_is_paid_for_all_the_packages_hold(per: str, cost: str) -> None:
    # 30 lb = 13.6078 kg. 2.00 a lb; 2.00 a bag of which there are three; 9.72 a kg.
    amount = {"lb": "2.00", "10 lb bag": "2.00", "kg": "9.72"}[per]

    assert rows(supper(20, prices={"ice": Price(usd(amount), per)}))["ice"].cost == usd(cost)


def test_an_estimate_is_marked_as_one() -> None:
    row = rows(supper())["ice"]

    assert row.estimated
    assert row.cost is not None


def test_no_estimate_is_made_in_a_currency_we_have_no_figures_for() -> None:
    row = rows(supper(20, budget=Money(Decimal(9000), "JPY")))["ice"]

    assert (row.cost, row.estimated) == (None, True)


def test_the_running_total_ends_at_the_sum_and_warns_past_the_budget() -> None:
    found = shopping(supper(40, "hot dogs", budget=usd("20.00")))

    total = sum((row.cost.amount for row in found if row.cost), Decimal(0))
    assert found[-1].running == Money(total, "USD")
    assert found[-1].over_budget
    assert not shopping(supper(40, "hot dogs", budget=usd("20000.00")))[-1].over_budget


@settings(max_examples=40, deadline=None)
@given(st.lists(st.sampled_from(sorted(items())), max_size=6, unique=True), st.integers(0, 50))
def test_costs_are_never_negative_and_add_up_to_the_cent(wanted: list[str], people: int) -> None:
    running = Decimal(0)
    for row in shopping(supper(people, *wanted)):
        if row.cost is not None:
            running += row.cost.amount
            assert row.cost.amount >= 0
            assert row.running == Money(running, "USD")


def test_figures_given_are_used_as_they_are() -> None:
    potluck = supper(10)

    assert shopping(potluck, headcount(potluck), ()) == ()


def paid(*amounts: tuple[str, str], people: int = 3) -> Potluck:
    return supper(people, payments=tuple(Payment(who, usd(amount)) for who, amount in amounts))


def test_one_who_paid_for_three_gets_two_thirds_back() -> None:
    found = evening_out(paid(("g0", "30.00")))

    assert [(t.from_, t.to, t.money) for t in found] == [("g1", "g0", usd("10.00")), ("g2", "g0", usd("10.00"))]


def test_a_cent_that_does_not_divide_is_not_lost() -> None:
    # 1.00 by three: 34 + 33 + 33 cents.
    found = evening_out(paid(("g0", "1.00")))

    assert sum(t.money.amount for t in found) == Decimal("0.66")


def test_who_paid_alike_owes_nothing() -> None:
    assert evening_out(paid(("g0", "5.00"), ("g1", "5.00"), ("g2", "5.00"))) == ()


def test_what_one_handed_to_another_is_settled_between_these_two() -> None:
    shared = paid(("g0", "30.00"))
    handed = replace(shared, payments=(*shared.payments, Payment("g1", usd("10.00"), "", "g0")))

    assert [(t.from_, t.to, t.money) for t in evening_out(handed)] == [("g2", "g0", usd("10.00"))]


def test_who_handed_over_too_much_gets_the_rest_back() -> None:
    shared = paid(("g0", "30.00"))
    handed = replace(shared, payments=(*shared.payments, Payment("g1", usd("15.00"), "", "g0")))

    assert ("g1", usd("5.00")) in {(t.to, t.money) for t in evening_out(handed)}


def test_children_pay_as_they_eat() -> None:
    # One grown-up (1) and a party of one grown-up and four children (1 + 4 x 0.75 = 4): 50.00 is 10 and 40.
    family = replace(
        paid(("g0", "50.00"), people=1),
        guests=(Guest("g0", "x", Answer.YES), Guest("f", "x", Answer.YES, Party(1, 0, 4))),
    )

    assert [(t.from_, t.to, t.money) for t in evening_out(family)] == [("f", "g0", usd("40.00"))]


def test_one_who_paid_and_cannot_come_gets_it_all_back() -> None:
    away = replace(paid(("away", "20.00"), people=2), guests=(*supper(2).guests, Guest("away", "x", Answer.NO)))

    assert sorted(t.money.amount for t in evening_out(away)) == [Decimal("10.00"), Decimal("10.00")]


def test_yen_have_no_cents() -> None:
    found = evening_out(supper(3, payments=(Payment("g0", Money(Decimal(100), "JPY")),)))

    assert {t.money.amount for t in found} == {Decimal(33)}


def test_currencies_are_evened_out_apart() -> None:
    both = supper(2, payments=(Payment("g0", usd("10.00")), Payment("g1", Money(Decimal("4.00"), "EUR"))))

    assert [(t.from_, t.to, t.money) for t in evening_out(both)] == [
        ("g1", "g0", usd("5.00")),
        ("g0", "g1", Money(Decimal("2.00"), "EUR")),
    ]


def test_nothing_paid_is_nothing_to_even_out() -> None:
    assert evening_out(supper()) == ()


def fewest_by_brute_force(balances: list[int]) -> int:
    """n minus the most groups that each add up to 0, by trying every way to part the people."""
    people = [b for b in balances if b]

    def most(rest: tuple[int, ...]) -> int:
        if not rest:
            return 0
        best = -100
        first, others = rest[0], rest[1:]
        for size in range(len(others) + 1):
            for chosen in itertools.combinations(range(len(others)), size):
                if first + sum(others[i] for i in chosen) == 0:
                    left = tuple(o for i, o in enumerate(others) if i not in chosen)
                    best = max(best, 1 + most(left))
        return best

    return len(people) - most(tuple(people))


balances = st.lists(st.integers(-6, 6), min_size=1, max_size=6).map(lambda made: [*made, -sum(made)])


@given(balances)
def test_the_transfers_are_the_fewest_there_are(made: list[int]) -> None:
    found = settled({f"g{n}": coins for n, coins in enumerate(made)})

    assert len(found) == fewest_by_brute_force(made)


@given(st.lists(st.integers(-500, 500), min_size=1, max_size=40).map(lambda made: [*made, -sum(made)]))
def test_transfers_bring_every_balance_to_nothing(made: list[int]) -> None:
    left = {f"g{n}": coins for n, coins in enumerate(made)}

    for debtor, creditor, coins in settled(left):
        assert coins > 0
        left[debtor] += coins
        left[creditor] -= coins
    assert set(left.values()) == {0}


def test_balances_that_do_not_add_up_are_refused() -> None:
    with pytest.raises(ValueError, match="add up"):
        settled({"a": 5})


@given(
    st.lists(st.builds(Party, st.integers(0, 3), st.integers(0, 2), st.integers(0, 3), st.integers(0, 2)), min_size=1),
    st.integers(0, 100_000),
)
def test_shares_add_up_to_what_was_paid(parties: list[Party], coins: int) -> None:
    guests = tuple(Guest(f"g{n}", "x", Answer.YES, party) for n, party in enumerate(parties))
    found = shares(replace(supper(0), guests=guests), coins, ("g0",))

    assert sum(found.values()) == coins
    assert min(found.values()) >= 0


def test_people_somebody_named_pay_through_them() -> None:
    guests = (
        Guest("ines", "Ines", Answer.YES),
        Guest("ravi", "Ravi", Answer.YES),
        Guest("n1", "Ravi's mother", Answer.YES, added_by="ravi"),
    )
    potluck = replace(supper(0), guests=guests, payments=(Payment("ines", usd("30.00")),))

    assert [(t.from_, t.to, t.money) for t in evening_out(potluck)] == [("ravi", "ines", usd("20.00"))]


def test_two_who_named_each_other_still_settle() -> None:
    guests = (Guest("a", "A", Answer.YES, added_by="b"), Guest("b", "B", Answer.YES, added_by="a"))
    potluck = replace(supper(0), guests=guests, payments=(Payment("a", usd("4.00")),))

    assert [(t.from_, t.to, t.money) for t in evening_out(potluck)] == [("b", "a", usd("2.00"))]


def test_a_dearer_thing_is_no_cheaper_for_being_needed_more() -> None:
    costs = [rows(supper(people))["cups"].cost for people in range(1, 60)]

    assert all(a.amount <= b.amount for a, b in itertools.pairwise(c for c in costs if c))
    assert len([c for c in costs if c]) == 59


def test_an_estimate_is_paid_for_whole_packages() -> None:
    # One and two people need 2 and 4 plates: both open a pack of 20.
    assert rows(supper(1))["plates"].cost == rows(supper(2))["plates"].cost


def test_who_brings_plates_and_cups_spares_both() -> None:
    bought = rows(supper(20, promises=(Promise("p1", "g1", "paper plates and cups", "supplies"),)))

    assert {"plates", "cups"}.isdisjoint(bought)
    assert "napkins" in bought


@pytest.mark.parametrize("per", ["pack of 100", "100 pack", "box of 100"])
def test_a_price_for_so_many_buys_as_many_packs_as_hold_the_need(per: str) -> None:
    priced = supper(40, prices={"paper napkins": Price(usd("2.50"), per)})
    row = rows(priced)["napkins"]

    assert row.cost == Money(Decimal("2.50") * -(-int(row.need) // 100), "USD")
