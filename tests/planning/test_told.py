"""Rules of what is read about food that stands: whatever the words, whatever the hour."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

from hypothesis import given
from hypothesis import strategies as st

from planning.changes import Actor, put_out, take_home
from planning.potluck import Answer, Guest, HeatStep, Potluck, Promise
from planning.safety.told import over, put_out_words, said_since
from planning.theday.coldpot import meant_to_start
from planning.theday.leftovers import leftovers

CHICAGO = ZoneInfo("America/Chicago")
START = datetime(2027, 9, 18, 22, 0, tzinfo=UTC)
MOMENTS = st.integers(0, 24 * 60).map(lambda minutes: START + timedelta(minutes=minutes))
WORDS = st.lists(
    st.sampled_from(
        ["the salad", "is", "on the table", "out", "since", "noon", "5", "11.45", "now", "all day", "for", "3 hours",
         "everything", "not", "?", ".", "put", "was", "this morning"]
    ),
    max_size=10,
).map(" ".join)  # fmt: skip


def supper(*promises: Promise) -> Potluck:
    return Potluck("p", START, "America/Chicago", host="h", guests=(Guest("h", "H", Answer.YES),), promises=promises)


@given(WORDS, MOMENTS)
def test_nothing_was_put_out_or_stood_since_a_moment_still_to_come(words, now):
    found = put_out_words(words, "en", now, CHICAGO)
    since = said_since(words, "en", now, CHICAGO)

    assert found is None or found.since is None or found.since <= now
    assert since is None or now - timedelta(days=1) <= since <= now


@given(WORDS, MOMENTS)
def test_a_question_puts_nothing_on_the_table(words, now):
    assert put_out_words(words.replace(".", " ").replace("?", " ") + "?", "en", now, CHICAGO) is None


@given(st.integers(1, 900), MOMENTS)
def test_a_slow_cooker_was_meant_to_start_as_long_before_the_meal_as_it_cooks(minutes, now):
    stew = Promise("s", "h", "beef stew", "main", heat=(HeatStep("slow-cooker-low", minutes),))

    at = meant_to_start(supper(stew), stew, now)

    assert at == max(START - timedelta(minutes=minutes), START - timedelta(hours=14))


@given(MOMENTS)
def test_of_leftovers_nobody_clocked_none_keeps_longer_than_one_put_out_at_the_start(now):
    salad = Promise("s", "h", "egg salad", "salad")
    clocked = put_out(supper(salad), Actor("h", "H"), "s", START)

    (unknown,), (known,) = leftovers(supper(salad), now), leftovers(clocked, now)

    assert unknown.perhaps == known.must_go
    assert unknown.chill_by == known.chill_by or now <= START
    assert bool(over(clocked, now)) == known.must_go


@given(st.integers(0, 400), st.integers(0, 400))
def test_a_dish_taken_home_has_no_running_clock_and_keeps_the_minutes_it_stood(out, later):
    salad, at = Promise("s", "h", "egg salad", "salad"), START + timedelta(minutes=out)
    clocked = put_out(supper(salad), Actor("h", "H"), "s", START)

    (taken,) = take_home(clocked, Actor("h", "H"), "s", at).promises

    assert (taken.out_since, taken.out_min, taken.takers) == (None, out, ("h",))
    (row,) = leftovers(take_home(clocked, Actor("h", "H"), "s", at), at + timedelta(minutes=later))
    assert row.must_go == (out >= row.limit_min)


def test_a_dish_nobody_clocked_and_taken_home_in_time_keeps_its_days_the_next_morning():
    salad = Promise("s", "h", "egg salad", "salad")
    taken = take_home(supper(salad), Actor("h", "H"), "s", START + timedelta(minutes=50))

    (row,) = leftovers(taken, START + timedelta(hours=16))

    assert (row.perhaps, row.must_go) == (False, False)


def test_who_takes_a_part_leaves_the_clock_of_the_rest_running():
    clocked = put_out(supper(Promise("s", "h", "egg salad", "salad")), Actor("h", "H"), "s", START)

    after = take_home(clocked, Actor("h", "H"), "s", START + timedelta(minutes=50), all_of_it=False)

    assert after.promises[0].out_since == START
