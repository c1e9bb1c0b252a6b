"""The day itself and after it: troubles in words, what is left, the table, the next one."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.again import came, carried, next_month, proposals, repeat
from planning.changes import Actor, lose_oven, lose_power, no_show, restore_kitchen
from planning.potluck import Answer, Guest, PastAnswer, Potluck, Promise
from planning.theday.difference import difference
from planning.theday.leftovers import LEAST, MOST, learned, leftovers
from planning.theday.now import moment
from planning.theday.table import table, tools
from planning.theday.troubles import read_trouble

START = datetime(2027, 9, 18, 22, 0, tzinfo=UTC)
AFTER = START + timedelta(hours=20)
HOST = Actor("h", "Inés")


def supper(*promises: Promise, **more: object) -> Potluck:
    guests = (
        Guest("h", "Inés", Answer.YES),
        Guest("1", "Ravi", Answer.YES),
        Guest("2", "Mei", Answer.YES),
        Guest("3", "Tom", Answer.MAYBE),
    )
    return Potluck("p", START, "America/Chicago", host="h", guests=guests, promises=promises, **more)


def dish(id_: str, name: str, category: str = "main", guest: str = "1", **more: object) -> Promise:
    return Promise(id_, guest, name, category, 10.0, **more)


@pytest.mark.parametrize(
    ("words", "kind"),
    [
        ("the oven just died", "oven-out"),
        ("Our stove won't heat :(", "oven-out"),
        ("power's out... no wait: the power is out", "power-out"),
        ("total blackout here", "power-out"),
        ("the power is back on!", "power-back"),
        ("oven is fixed", "oven-back"),
        ("I've burnt the lasagna", "burnt"),
        ("somebody dropped the trifle on the floor", "burnt"),
        ("Ravi never showed up", "no-show"),
        ("it's raining, everybody inside", "rain"),
        ("12 more people at the door", "more-people"),
        ("ten more guests turned up", "more-people"),
    ],
)
def test_trouble_is_read_in_plain_words(words: str, kind: str) -> None:
    found = read_trouble(words)

    assert found is not None
    assert found.kind == kind


@pytest.mark.parametrize(
    "words",
    [
        "what if the oven breaks?",
        "hope it won't rain",
        "last year the oven broke",
        "if it rains we go inside",
        "is the oven broken?",
        "see you at five",
        "the power of cheese",
        "bring more people!",
        "",
    ],
)
def test_fears_questions_and_chatter_are_no_trouble(words: str) -> None:
    assert read_trouble(words) is None


@given(st.text(max_size=4096))
def test_no_text_breaks_the_reader(text: str) -> None:
    found = read_trouble(text, told=True)

    assert found is None or found.kind


def test_a_number_in_words_or_digits_is_how_many() -> None:
    assert [read_trouble(w).number for w in ("ten more people", "10 more people")] == [10, 10]  # type: ignore[union-attr]


def test_an_oven_that_works_again_gives_the_whole_kitchen_back() -> None:
    potluck = supper()
    dark = lose_power(lose_oven(potluck, HOST), HOST)

    assert restore_kitchen(dark, HOST) == potluck


def test_leftovers_keep_for_the_shorter_of_two_published_times() -> None:
    # LEFT-01 (NDSU Extension): four days; STORE-01 (FoodKeeper): three to four days. The shorter is three.
    (row,) = leftovers(supper(dish("p1", "beef stew")), AFTER)

    assert (row.keep_until, row.rule, row.must_go) == (date(2027, 9, 21), "STORE-01", False)


def test_what_stood_out_for_two_hours_must_go() -> None:
    # TIME-01: two hours between 40 and 140 °F.
    out = dish("p1", "beef stew", out_since=START)

    assert [leftovers(supper(out), START + timedelta(minutes=m))[0].must_go for m in (119, 120)] == [False, True]


OUTCOMES = st.lists(st.sampled_from(["", "ran-out", "came-back"]), max_size=6)


@given(OUTCOMES, OUTCOMES)
def test_lessons_stay_within_bounds_and_nothing_said_teaches_nothing(first: list[str], second: list[str]) -> None:
    known: dict[str, float] = {}
    for outcomes in (first, second, first, second):
        dishes = tuple(dish(f"p{n}", "stew", outcome=o) for n, o in enumerate(outcomes))
        known = dict(learned(supper(*dishes, corrections=known)))

    assert all(LEAST <= f <= MOST for f in known.values())
    if not any(first) and not any(second):
        assert known == {}


@given(OUTCOMES)
def test_one_more_dish_that_ran_out_never_teaches_less(outcomes: list[str]) -> None:
    def factor(said: list[str]) -> float:
        return learned(supper(*(dish(f"p{n}", "stew", outcome=o) for n, o in enumerate(said)))).get("main", 1.0)

    for n, before in enumerate(outcomes):
        if before == "":
            assert factor([*outcomes[:n], "ran-out", *outcomes[n + 1 :]]) >= factor(outcomes)


def test_each_dish_has_a_tool_of_its_own() -> None:
    # XCON-01: one serving utensil for each dish.
    standing = table(supper(dish("1", "beef stew"), dish("2", "lentil soup"), dish("3", "cookies", "dessert")))

    assert tools(standing) == (("ladle", 2),)


def test_a_no_show_is_remembered_against_their_yes() -> None:
    missed = no_show(supper(dish("p1", "stew")), HOST, "1")

    assert came(missed)[0] == PastAnswer("2027-09-18", "1", None, "yes", False)
    assert missed.promises == ()


def test_a_shared_dish_stays_when_one_of_its_cooks_does_not_come() -> None:
    (left,) = no_show(supper(dish("p1", "stew", sharers=("2",))), HOST, "1").promises

    assert (left.guest, left.sharers) == ("2", ())


def test_an_evening_long_ago_counts_without_names() -> None:
    old = supper(dish("p1", "stew"))
    rows = carried([old], START + timedelta(days=100))

    assert {r.guest for r in rows}.isdisjoint({"1", "2", "3"})
    assert sum(r.came for r in rows) == 2


def test_an_evening_is_counted_once_however_often_it_is_carried_on() -> None:
    first = supper(dish("p1", "stew"))
    rows = carried([first], AFTER)
    second = replace(first, id="q", starts_at=START + timedelta(days=28), history=rows)

    again = carried([first, second], START + timedelta(days=29))
    assert len([r for r in again if r.date == "2027-09-18"]) == len(rows)


def test_the_same_again_keeps_needs_and_kitchen_and_asks_everybody_anew() -> None:
    last = supper(dish("p1", "stew"))
    fresh = repeat(last, HOST, "q", START + timedelta(days=28), AFTER, ())

    assert [g.answer for g in fresh.guests] == ["yes", "none", "none", "none"]
    assert fresh.kitchen == last.kitchen
    assert fresh.promises == ()


def monthly(potluck: Potluck, times: int, *, answers: int = 0) -> Potluck:
    """So many evenings further, 28 days apart; in the first `answers` of them guest 3 says no."""
    past = [potluck]
    for n in range(times):
        last = past[-1]
        if n < answers:
            saying = replace(last.guest("3"), answer=Answer.NO)
            last = past[-1] = replace(last, guests=tuple(saying if g.id == "3" else g for g in last.guests))
        now = last.starts_at + timedelta(days=1)
        kept = [p for p in past if p.starts_at > now - timedelta(days=60)]
        past.append(repeat(last, HOST, f"q{n}", last.starts_at + timedelta(days=28), now, carried(kept, now)))
    return past[-1]


@pytest.mark.parametrize("answers", [0, 1, 2])
def test_needs_are_carried_on_while_their_guest_answers_and_not_for_ever(answers: int) -> None:
    first = supper()
    first = replace(first, guests=tuple(replace(g, allergies=("peanut",)) for g in first.guests))
    known = [monthly(first, times, answers=answers).guest("3") for times in range(1, 7)]

    # 28 days apart: three more evenings within sixty days of the last one answered.
    assert [g is not None for g in known] == [times <= max(answers, 1) + 2 for times in range(1, 7)]
    assert {g.allergies for g in known if g is not None} == {("peanut",)}


def test_whoever_was_new_at_the_last_evening_is_carried_on_without_an_answer() -> None:
    first = supper()
    last = replace(monthly(first, 4), guests=(*monthly(first, 4).guests, Guest("9", "Noor", needs=("vegan",))))

    fresh = repeat(last, HOST, "z", last.starts_at + timedelta(days=28), last.starts_at + timedelta(days=1), ())
    assert fresh.guest("9") == Guest("9", "Noor", needs=("vegan",))
    assert fresh.guest("3") is None


@given(st.permutations(["1", "2", "3"]), st.integers(0, 3))
def test_mains_go_to_those_who_brought_fewest(order: list[str], mains: int) -> None:
    dishes = [dish(f"p{n}", "stew" if n < mains else "slaw", "main" if n < mains else "salad", g)
              for n, g in enumerate(order)]  # fmt: skip
    history = [PastAnswer("2027-08-01", order[0], "main", "yes", True)]
    made = proposals(supper(*dishes), history)

    asked = [p.guest for p in made if p.category == "main"]
    assert len(asked) == mains
    if mains < 3:
        assert order[0] not in asked


@pytest.mark.parametrize(
    ("first", "then"),
    # Third Saturday, fifth Saturday (becomes the last), and an hour kept over the end of summer time: by calendar.
    [("2027-09-18T17:00", "2027-10-16T17:00"), ("2027-07-31T17:00", "2027-08-28T17:00"),
     ("2027-10-16T17:00", "2027-11-20T17:00")],
)  # fmt: skip
def test_next_month_is_the_same_weekday_at_the_same_wall_hour(first: str, then: str) -> None:
    potluck = supper()
    local = datetime.fromisoformat(first).replace(tzinfo=potluck.zone)

    found = next_month(replace(potluck, starts_at=local.astimezone(UTC)))
    assert potluck.local(found).strftime("%Y-%m-%dT%H:%M") == then


def test_without_a_timeline_nothing_runs() -> None:
    assert moment(None, START) == moment(None, AFTER)


def test_a_change_of_nothing_makes_no_difference() -> None:
    potluck = supper(dish("p1", "stew"))
    said = difference(potluck, potluck, None, None, START)

    assert (said.says, said.moved, said.gone) == ((), (), ())


@pytest.mark.parametrize(
    ("words", "kind"),
    [
        ("we got a second oven next door", "oven-found"),
        ("ok we use the neighbors oven", "oven-found"),
        ("the second oven broke", "oven-out"),
        ("the breaker tripped again", "breaker"),
        ("Rosa is not here yet", "not-here"),
        ("only six of the ten stay", "fewer-people"),
        ("four of them left again", "fewer-people"),
        ("its back on, was off maybe 20 minutes", "back-on"),
        ("val didnt come", "no-show"),
        ("the slow cooker tripped", "cooker-off"),
        ("hut's oven is only getting lukewarm", "oven-out"),
        ("the grill ran out of propane", "gas-out"),
        ("the cake slid off the seat in the car", "burnt"),
        ("fuse is back", "back-on"),
    ],
)
def test_lesser_trouble_is_told_apart_from_greater(words, kind):
    assert read_trouble(words).kind == kind
