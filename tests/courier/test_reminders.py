"""Reminders: at their minute, once, to the right place, and with sense after a long silence."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.courier.verdict import GROUP, quiet_until, verdict
from bot.room.faults import Fault
from bot.storage import Batch, ChatRecord, PersonRecord, PotluckPlace, ReminderRow, Stored
from planning.potluck import Potluck, Say
from planning.reminders import within_quiet
from tests.courier.rig import START, ZONE, Due, Rig

HOUR = timedelta(hours=1)


def said(rig: Rig, chat_id: int) -> list[str]:
    return [t for t in rig.texts(chat_id) if " for " in t]


async def test_a_reminder_goes_out_at_its_minute_and_once(rig: Rig) -> None:
    await rig.add_potluck(Due("a", START + HOUR))
    await rig.go_to(START + HOUR - timedelta(seconds=1))
    before = said(rig, rig.group)
    await rig.go_to(START + 5 * HOUR)

    assert not before
    assert said(rig, rig.group) == ["bring for group: a"]
    assert [s.at for s in rig.shown(rig.group, "message")][-1] == START + HOUR


async def test_its_kind_is_known_by_its_message(rig: Rig) -> None:
    await rig.add_potluck(Due("a", START + HOUR, "start"))
    await rig.go_to(START + HOUR)

    message = rig.shown(rig.group, "message")[-1].message
    assert message is not None
    assert rig.bot.reminder_kind(rig.group, message) == "start"
    about = await rig.store.message_about(rig.group, message)
    assert about is not None
    assert (about.kind, about.reminder_key) == ("reminder:start", "a")


async def test_whoever_opened_a_private_chat_is_reminded_there(rig: Rig) -> None:
    rig.room.start(rig.ravi)
    await rig.add_potluck(Due("a", START + HOUR, to=str(rig.ravi)), can_dm=(rig.ravi,))
    await rig.go_to(START + HOUR)

    assert said(rig, rig.ravi) == ["bring for you: a"]
    assert not said(rig, rig.group)


async def test_people_without_a_private_chat_are_mentioned_together_in_the_group(rig: Rig) -> None:
    await rig.add_potluck(Due("a", START + HOUR, to=str(rig.ravi)), Due("b", START + HOUR, to=str(rig.ines)))
    await rig.go_to(START + HOUR)

    assert said(rig, rig.group) == ["bring for group: a, b"]


async def test_a_closed_private_chat_sends_the_reminder_to_the_group(rig: Rig) -> None:
    await rig.add_potluck(Due("a", START + HOUR, to=str(rig.ravi)), can_dm=(rig.ravi,))
    await rig.go_to(START + HOUR)

    assert said(rig, rig.group) == ["bring for group: a"]


async def test_whoever_is_muted_is_left_alone(rig: Rig) -> None:
    await rig.add_potluck(Due("a", START + HOUR, to=str(rig.ravi)))
    muted = PersonRecord(rig.ravi, "Ravi", muted=True)
    await rig.store.commit(Batch(now=START, people=(muted,)))
    await rig.go_to(START + 2 * HOUR)

    assert not said(rig, rig.group)
    assert [r.state for r in await rig.store.reminders_of("p1")] == ["skipped"]


async def test_a_kind_that_is_switched_off_is_not_sent(rig: Rig) -> None:
    await rig.add_potluck(Due("a", START + HOUR), Due("b", START + HOUR, "start"))
    off = ChatRecord(rig.group, "group", "Plot 9", timezone=ZONE, reminder_kinds_off=("bring",))
    await rig.store.commit(Batch(now=START, chats=(off,)))
    await rig.go_to(START + 2 * HOUR)

    assert said(rig, rig.group) == ["start for group: b"]


async def test_quiet_hours_hold_back_what_can_wait(rig: Rig) -> None:
    night = START + 13 * HOUR  # 22:00 in Chicago
    await rig.add_potluck(Due("a", night))
    await rig.go_to(night + 12 * HOUR)

    assert [s.at for s in rig.shown(rig.group, "message") if " for " in s.text] == [START + 23 * HOUR]  # 08:00


async def test_a_kitchen_clock_does_not_wait_for_morning(rig: Rig) -> None:
    night = START + 13 * HOUR
    await rig.add_potluck(Due("a", night, "slow-cooker"))
    await rig.go_to(night)

    assert said(rig, rig.group) == ["slow-cooker for group: a"]


async def test_after_downtime_what_makes_no_sense_any_more_is_skipped(rig: Rig) -> None:
    await rig.add_potluck(Due("late", START + HOUR, expires_at=START + 3 * HOUR), Due("still", START + HOUR, "start"))
    await rig.settle()
    await rig.bot.kill()
    rig.clock.set(START + 6 * HOUR)
    await rig.make().start()
    await rig.settle()

    assert said(rig, rig.group) == ["start for group: still"]
    assert {r.key: r.state for r in await rig.store.reminders_of("p1")} == {"late": "skipped", "still": "sent"}


async def test_a_moved_reminder_goes_out_at_its_new_time_only(rig: Rig) -> None:
    await rig.add_potluck(Due("a", START + HOUR))
    await rig.settle()
    moved = Batch(now=START, reminders=(("p1", (Due("a", START + 2 * HOUR),)),))
    rig.bot.courier.wake(await rig.store.commit(moved))
    await rig.go_to(START + 5 * HOUR)

    assert [s.at for s in rig.shown(rig.group, "message") if " for " in s.text] == [START + 2 * HOUR]


async def test_a_withdrawn_reminder_is_not_sent(rig: Rig) -> None:
    await rig.add_potluck(Due("a", START + HOUR))
    await rig.settle()
    rig.bot.courier.wake(await rig.store.commit(Batch(now=START, reminders=(("p1", ()),))))
    await rig.go_to(START + 5 * HOUR)

    assert not said(rig, rig.group)


@pytest.mark.parametrize(("kind", "most"), [("bring", 3), ("out-limit", 5)])
async def test_a_reminder_in_doubt_is_said_again_and_more_often_where_it_guards_health(
    rig: Rig, kind: str, most: int
) -> None:
    await rig.add_potluck(Due("a", START + HOUR, kind))
    await rig.settle()
    rig.room.faults.add(Fault("timeout", method="sendMessage", count=10, stored=True))
    await rig.go_to(START + 2 * HOUR)

    assert said(rig, rig.group) == [f"{kind} for group: a"] * most
    assert await rig.given_up(rig.group) == ["courier-why-doubt"]


async def test_a_process_that_slept_past_its_lease_sends_nothing(rig: Rig) -> None:
    await rig.add_potluck(Due("a", START + HOUR))
    await rig.settle()
    ticker = rig.bot.courier._ticker
    await rig.bot.stop()
    rig.clock.set(START + HOUR)
    mine = await ticker._desk.claim_reminders(10)
    rig.clock.set(START + 2 * HOUR)
    theirs = await rig.store.claim_reminders(rig.clock.now(), "other", rig.clock.now() + HOUR)
    await ticker._deal("p1", list(mine))

    assert [r.key for r in theirs] == ["a"]
    assert not await rig.store.pending_posts()


async def test_a_cancelled_potluck_reminds_nobody(rig: Rig) -> None:
    from dataclasses import replace

    from planning.potluck import Stage

    await rig.add_potluck(Due("a", START + HOUR))
    stored = await rig.store.potluck("p1")
    assert stored is not None
    gone = replace(stored.potluck, stage=Stage.CANCELLED)
    await rig.store.commit(Batch(now=START, changed=((stored, gone),)))
    await rig.go_to(START + 2 * HOUR)

    assert not said(rig, rig.group)


# IANA database: Berlin's clocks skipped 02:00-03:00 on 2026-03-29, doubled it on 2026-10-25.
@given(
    st.integers(0, 365 * 24 * 60).map(lambda m: datetime(2026, 1, 1, tzinfo=UTC) + timedelta(minutes=m)),
    st.sampled_from(["21:00", "23:30", "00:30", "02:30"]),
    st.sampled_from(["08:00", "02:30", "00:00", "21:00"]),
)
def test_quiet_hours_end_on_the_wall_clock_whatever_the_clocks_do(now: datetime, start: str, end: str) -> None:
    zone = ZoneInfo("Europe/Berlin")

    until = quiet_until(now, zone, start, end)

    assert (until is not None) == within_quiet(now, "Europe/Berlin", start, end)
    if until is not None:
        assert now <= until <= now + timedelta(hours=25)
        assert until.astimezone(zone).strftime("%H:%M") in (end, "03:30")


# IANA database: on 2028-03-12 Chicago's clocks skipped 02:00-03:00, so that half past two was 08:30 UTC.
@pytest.mark.parametrize(
    ("due", "left"),
    [("07:00", "08:30"), ("07:59", "08:30"), ("08:00", "08:00"), ("08:31", "08:31")],
)
def test_a_reminder_held_back_till_a_skipped_hour_leaves_when_it_would_have_been(due: str, left: str) -> None:
    night = datetime(2028, 3, 12, tzinfo=UTC)
    at, end = (night.replace(hour=int(t[:2]), minute=int(t[3:])) for t in (due, left))
    chat = ChatRecord(-1, quiet_from="22:00", quiet_to="02:30", timezone=ZONE)
    stored = Stored(Potluck("p1", night + timedelta(days=1), ZONE), 1, PotluckPlace("p1", -1))
    row = ReminderRow("p1", "a", "bring", GROUP, at, None, Say("about", {}))

    assert verdict(row, stored, chat, None, at) == (None, end if end > at else None)
    assert verdict(row, stored, chat, None, end) == (None, None)


async def test_a_reminder_the_platform_refused_again_and_again_is_not_given_up_at_the_first_doubt(rig: Rig) -> None:
    await rig.add_potluck(Due("a", START + HOUR))
    await rig.settle()
    rig.room.faults.add(Fault("500", method="sendMessage", count=6))
    rig.room.faults.add(Fault("timeout", method="sendMessage", stored=False))
    await rig.go_to(START + 2 * HOUR)

    assert said(rig, rig.group) == ["bring for group: a"]
    assert not await rig.given_up(rig.group)
