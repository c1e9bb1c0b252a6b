# ruff: noqa: DTZ001 - wall times without a zone are drawn on purpose; the zone is put to them afterwards
"""Reminders. The IANA database (through zoneinfo and tzdata) is the outside check for wall times."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.kitchen.result import PlannedStep, Timeline
from planning.potluck import Answer, Bar, Guest, HeatStep, Potluck, Promise, Stage, Topping
from planning.reminders import KINDS, reminders, shift_out_of_quiet, within_quiet
from planning.safety.thaw import thaw_by, thaw_days
from planning.safety.wall_clock import wall

CHICAGO = "America/Chicago"
LONG_AGO = datetime(2000, 1, 1, tzinfo=UTC)
ZONES = ("America/Chicago", "Europe/Berlin", "Australia/Lord_Howe", "America/Sao_Paulo", "Asia/Kolkata", "Africa/Cairo",
         "Pacific/Apia", "America/St_Johns", "Europe/Dublin", "UTC")  # fmt: skip


def at(text: str, zone: str = CHICAGO) -> datetime:
    return datetime.fromisoformat(text).replace(tzinfo=ZoneInfo(zone)).astimezone(UTC)


def supper(**facts: object) -> Potluck:
    base = Potluck(
        "p", at("2027-09-18T17:00"), CHICAGO, host="ines",
        guests=(Guest("ines", "Inés", Answer.YES), Guest("ravi", "Ravi", Answer.YES, travel_min=25),
                Guest("mei", "Mei")),
        promises=(Promise("a", "ravi", "slaw", "salad"),),
    )  # fmt: skip
    return replace(base, **facts)  # type: ignore[arg-type]


def kinds(potluck: Potluck, timeline: Timeline | None = None, now: datetime = LONG_AGO) -> dict[str, list]:
    found: dict[str, list] = {}
    for reminder in reminders(potluck, timeline, now):
        found.setdefault(reminder.kind, []).append(reminder)
    return found


def local(instant: datetime, zone: str = CHICAGO) -> str:
    return instant.astimezone(ZoneInfo(zone)).strftime("%Y-%m-%dT%H:%M")


def test_only_guests_who_have_not_settled_are_asked_to_answer() -> None:
    found = kinds(supper())["answer-by"]

    assert [r.to for r in found] == ["mei"]


def test_the_reminder_to_answer_comes_the_evening_before_the_date() -> None:
    found = kinds(supper(answer_by=at("2027-09-15T12:00")))["answer-by"]

    assert local(found[0].due_at) == "2027-09-14T18:00"
    assert found[0].expires_at == at("2027-09-15T12:00")


def test_what_to_bring_is_told_in_the_morning() -> None:
    found = kinds(supper())["bring"]

    assert [(r.to, local(r.due_at), r.about.key) for r in found] == [
        ("ravi", "2027-09-18T09:00", "reminder-bring-today")
    ]


def test_what_to_bring_to_a_breakfast_is_told_the_evening_before() -> None:
    found = kinds(supper(starts_at=at("2027-09-18T09:00")))["bring"]

    assert local(found[0].due_at) == "2027-09-17T18:00"
    assert local(found[0].expires_at) == "2027-09-17T23:00"


def test_a_topping_is_something_to_bring() -> None:
    found = kinds(supper(promises=(), bar=Bar("baked potato", (Topping("chives", "mei"), Topping("bacon")))))["bring"]

    assert [(r.to, r.about.facts["dishes"]) for r in found] == [("mei", ["chives"])]


@pytest.mark.parametrize(("lb", "days"), [(1, 1), (4, 1), (4.1, 2), (14, 4), (40, 10)])
def test_a_day_of_refrigerator_thawing_is_reckoned_for_every_four_pounds(lb: float, days: int) -> None:
    assert thaw_days(lb) == days  # THAW-03: 24 h per 4 lb, whole days


def test_a_fourteen_pound_turkey_starts_to_thaw_on_tuesday_for_an_oven_at_11_25_on_saturday() -> None:
    # Published rate THAW-03 (USDA FSIS, 24 h per 4 lb): ceil(14 / 4) = 4 days before Saturday 11:25.
    turkey = Promise("t", "ravi", "turkey", "main", frozen_lb=14)
    oven = PlannedStep("t", "oven", "oven:0", None, at("2027-11-27T11:25"), at("2027-11-27T15:40"), 325)

    assert local(thaw_by(supper(promises=(turkey,)), turkey, (oven,))) == "2027-11-23T11:25"


def test_the_thaw_reminder_comes_no_later_than_the_last_moment_to_start() -> None:
    dish = Promise("t", "ravi", "ham", "main", frozen_lb=5)
    early = PlannedStep("t", "prep", None, None, at("2027-09-18T07:30"), at("2027-09-18T08:00"))

    found = kinds(supper(promises=(dish,)), Timeline("optimal", 0, 0, (early,)))["thaw"][0]

    assert local(found.due_at) == "2027-09-15T18:00"
    assert local(found.expires_at) == "2027-09-16T07:30"


def test_an_oven_is_turned_on_fifteen_minutes_before_the_first_pan() -> None:
    steps = (PlannedStep("a", "oven", "oven:0", None, at("2027-09-18T16:00"), at("2027-09-18T16:40"), 350, 1),)

    found = kinds(supper(), Timeline("optimal", 0, 0, steps))["preheat"]

    assert [(local(r.due_at), r.to, r.about.facts["temp"]) for r in found] == [("2027-09-18T15:45", "host", 350)]


def test_pans_are_swapped_when_the_first_comes_out() -> None:
    steps = (
        PlannedStep("a", "oven", "oven:0", None, at("2027-09-18T15:00"), at("2027-09-18T16:00"), 350, 1),
        PlannedStep("b", "oven", "oven:0", None, at("2027-09-18T16:15"), at("2027-09-18T16:55"), 425, 1),
    )

    found = kinds(supper(), Timeline("optimal", 0, 0, steps))

    assert len(found["preheat"]) == 1
    assert [(local(r.due_at), r.about.facts["change"], r.about.facts["temp"]) for r in found["swap"]] == [
        ("2027-09-18T16:00", "yes", 425)
    ]


def test_a_slow_cooker_at_home_is_started_by_its_cook_and_at_the_venue_by_the_host() -> None:
    def step(where: str) -> Timeline:
        began, over = at("2027-09-18T08:00"), at("2027-09-18T16:00")
        cooked = PlannedStep("a", "slow-cooker-low", "slow-cooker:0", 0, began, over, at=where)
        return Timeline("optimal", 0, 0, (cooked,))

    assert [r.to for r in kinds(supper(), step("home"))["slow-cooker"]] == ["ravi"]
    assert [r.to for r in kinds(supper(), step("venue"))["slow-cooker"]] == ["host"]


def test_a_guest_leaves_so_as_to_arrive_when_the_dish_is_needed() -> None:
    promise = Promise("a", "ravi", "slaw", "salad", arrives_at=at("2027-09-18T16:10"))

    found = kinds(supper(promises=(promise,)))["leave"]

    assert [(r.to, local(r.due_at)) for r in found] == [("ravi", "2027-09-18T15:45")]  # 16:10 less 25 minutes


def test_a_dish_standing_out_is_announced_before_its_two_hours_end() -> None:
    promise = Promise("a", "ravi", "potato salad", "salad", out_since=at("2027-09-18T17:00"), out_min=30)

    found = kinds(supper(promises=(promise,)))["out-limit"]

    # TIME-01: two hours in all, 30 minutes of them spent in the car: over at 18:30.
    assert [(local(r.due_at), r.about.facts["by_time"]) for r in found] == [("2027-09-18T18:15", "18:30")]


def test_a_cancelled_potluck_reminds_nobody() -> None:
    assert reminders(supper(stage=Stage.CANCELLED), None, LONG_AGO) == ()


def test_a_finished_potluck_only_asks_to_collect_dishes() -> None:
    assert list(kinds(supper(stage=Stage.DONE))) == ["collect", "return"]


def test_dishes_are_collected_late_in_the_next_morning() -> None:
    assert [local(r.due_at) for r in kinds(supper())["collect"]] == ["2027-09-19T10:30"]


def test_what_is_past_is_not_produced() -> None:
    found = reminders(supper(), None, at("2027-09-18T12:00"))

    assert {r.kind for r in found} == {"leave", "start", "out-limit", "collect", "return"}


def test_a_skipped_wall_time_shifts_forward() -> None:
    assert local(wall(ZoneInfo(CHICAGO), date(2027, 3, 14), time(2, 30))) == "2027-03-14T03:30"


def test_a_doubled_wall_time_is_its_first() -> None:
    first = wall(ZoneInfo(CHICAGO), date(2027, 11, 7), time(1, 30))

    assert first == datetime(2027, 11, 7, 6, 30, tzinfo=UTC)  # still UTC-5


@given(
    zone=st.sampled_from(ZONES),
    day=st.dates(date(2026, 1, 1), date(2030, 12, 31)),
    at_time=st.times().map(lambda t: t.replace(second=0, microsecond=0)),
)
def test_a_wall_time_reads_as_itself_or_as_shifted_forward_by_the_skipped_gap(
    zone: str, day: date, at_time: time
) -> None:
    shown = wall(ZoneInfo(zone), day, at_time).astimezone(ZoneInfo(zone)).replace(tzinfo=None)

    meant = datetime.combine(day, at_time)
    before = datetime.combine(day, at_time, ZoneInfo(zone)).replace(fold=0).utcoffset()
    after = datetime.combine(day, at_time, ZoneInfo(zone)).replace(fold=1).utcoffset()
    gap = max(timedelta(0), after - before)  # type: ignore[operator]
    assert shown == meant + gap


@given(
    zone=st.sampled_from(ZONES),
    instant=st.datetimes(datetime(2026, 1, 1), datetime(2030, 12, 31)).map(lambda d: d.replace(tzinfo=UTC)),
    ends=st.tuples(st.times(), st.times()).map(lambda t: tuple(x.strftime("%H:%M") for x in t)),
)
def test_a_message_moved_out_of_quiet_hours_is_later_and_not_in_them(zone: str, instant: datetime, ends: tuple) -> None:
    moved = shift_out_of_quiet(instant, zone, *ends)

    assert moved >= instant
    assert moved - instant <= timedelta(hours=27)
    assert not within_quiet(moved, zone, *ends)
    assert (moved == instant) is (not within_quiet(instant, zone, *ends))


answers = st.sampled_from(list(Answer))
people = st.lists(st.tuples(answers, st.integers(0, 90)), min_size=1, max_size=5)


@st.composite
def potlucks(draw: st.DrawFn) -> Potluck:
    zone = draw(st.sampled_from(ZONES))
    start = draw(st.datetimes(datetime(2026, 1, 10), datetime(2030, 12, 1))).replace(second=0, microsecond=0)
    guests = tuple(Guest(f"g{i}", f"G{i}", a, travel_min=t) for i, (a, t) in enumerate(draw(people)))
    instant = start.replace(tzinfo=ZoneInfo(zone)).astimezone(UTC)
    promises = tuple(
        Promise(f"p{i}", draw(st.sampled_from(guests)).id, f"dish {i}", "main",
                frozen_lb=draw(st.none() | st.floats(0.1, 40)),
                out_since=draw(st.none() | st.just(instant)), out_min=draw(st.floats(0, 300)))
        for i in range(draw(st.integers(0, 5)))
    )  # fmt: skip
    return Potluck("p", instant, zone, host="g0", guests=guests, promises=promises)


@given(potlucks())
def test_keys_are_unique_kinds_known_and_every_message_has_a_time_to_be_sent(potluck: Potluck) -> None:
    found = reminders(potluck, None, LONG_AGO)

    assert len({r.key for r in found}) == len(found)
    assert {r.kind for r in found} <= set(KINDS)
    assert all(r.expires_at > r.due_at for r in found)
    assert list(found) == sorted(found, key=lambda r: (r.due_at, r.key))


@given(potlucks(), st.datetimes(datetime(2026, 1, 1), datetime(2030, 12, 31)).map(lambda d: d.replace(tzinfo=UTC)))
def test_deriving_again_later_only_drops_what_is_past(potluck: Potluck, now: datetime) -> None:
    everything = reminders(potluck, None, LONG_AGO)

    assert reminders(potluck, None, now) == tuple(r for r in everything if r.due_at > now)


@given(potlucks())
def test_a_message_for_the_day_is_never_sent_at_night(potluck: Potluck) -> None:
    for reminder in reminders(potluck, None, LONG_AGO):
        if reminder.kind in ("bring", "answer-by", "collect", "return"):
            due, last = (potluck.local(x) for x in (reminder.due_at, reminder.expires_at))
            assert due.hour in range(8, 22)
            assert last.date() == due.date() or reminder.kind == "answer-by"
            assert reminder.kind == "answer-by" or last.time() <= time(23, 0)


@given(potlucks())
def test_moving_the_potluck_by_a_day_moves_every_wall_time_by_a_day(potluck: Potluck) -> None:
    zone = ZoneInfo(potluck.timezone)
    start = potluck.local(potluck.starts_at)
    moved_start = wall(zone, start.date() + timedelta(days=1), start.time().replace(tzinfo=None))
    moved = replace(potluck, starts_at=moved_start, promises=tuple(
        replace(p, out_since=None) for p in potluck.promises))  # fmt: skip
    still = replace(potluck, promises=moved.promises)

    def walls(p: Potluck) -> dict[str, datetime]:
        kinds_on_the_wall = ("bring", "answer-by", "collect", "return")
        return {r.key: p.local(r.due_at).replace(tzinfo=None) for r in reminders(p, None, LONG_AGO)
                if r.kind in kinds_on_the_wall}  # fmt: skip

    before, after = walls(still), walls(moved)
    # A night with a clock change around the start itself can carry the start over noon or midnight.
    around = [potluck.starts_at + timedelta(hours=h) for h in range(-96, 96, 12)]
    offsets = {potluck.local(instant).utcoffset() for instant in around}
    if len(offsets) == 1:
        assert after == {key: when + timedelta(days=1) for key, when in before.items()}


def test_a_slow_cooker_that_is_only_usual_is_asked_about_and_not_ordered() -> None:
    over = at("2027-09-18T17:00")
    cooked = PlannedStep("a", "slow-cooker-low", "home", None, over - timedelta(hours=6), over, at="home")
    asked = [
        kinds(replace(supper(), promises=(Promise("a", "ravi", "beef stew", "main", heat=heat),)),
              Timeline("optimal", 0, 0, (cooked,)))["slow-cooker"][0].about.key
        for heat in (None, (HeatStep("slow-cooker-low", 360, at="home"),))
    ]  # fmt: skip

    assert asked == ["reminder-slow-cooker-usual", "reminder-slow-cooker"]
