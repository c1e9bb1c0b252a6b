"""What goes out by itself: once, in local time, to the right person, caught up with sense."""

from tests.capabilities.conftest import board, press, say, until


def times(played, kind: str) -> list[str]:
    return [r["at"][:16] for r in played.reminders(kind)]


async def test_who_has_not_answered_is_asked_once_before_the_date(play):
    played = await play(say("ines", "/invite Fern"), say("ines", "/answerby Thu 16 Sep"), until("2027-09-17T12:00"))

    assert len(played.reminders("answer-by")) == 1
    assert "Fern" in played.reminders("answer-by")[0]["text"]


async def test_who_has_answered_is_not_asked(play):
    played = await play(press("ravi", "Coming", on="board"), until("2027-09-17T12:00"))

    assert not [r for r in played.reminders("answer-by") if "Ravi" in r["text"]]


async def test_everybody_who_brings_something_hears_of_it_on_the_morning(play):
    played = await play(say("ravi", "/bring slaw for 12"), until("2027-09-18T12:00"))

    assert times(played, "bring") == ["2027-09-18T09:00"]
    assert "slaw" in played.reminders("bring")[0]["text"]


async def test_a_private_chat_gets_the_reminder_instead_of_the_group(play):
    played = await play(
        say("ravi", "/bring slaw for 12"), say("ravi", "/start", **{"in": "private"}), until("2027-09-18T12:00")
    )

    assert [r["chat"] for r in played.reminders("bring")] == ["ravi"]


async def test_a_blocked_private_chat_falls_back_to_the_group(play):
    played = await play(
        say("ravi", "/bring slaw for 12"), say("ravi", "/start", **{"in": "private"}),
        {"event": "blocked", "who": "ravi"}, until("2027-09-18T12:00"),
    )  # fmt: skip

    assert [r["chat"] for r in played.reminders("bring")] == ["group"]


async def test_start_and_thanks_come_at_their_times(play):
    played = await play(say("ravi", "/bring slaw for 12"), until("2027-09-20T12:00"))

    assert times(played, "start") == ["2027-09-18T17:00"]
    assert times(played, "collect") == ["2027-09-19T10:30"]
    assert "slaw" in played.reminders("collect")[0]["text"]


async def test_a_kind_that_is_switched_off_is_not_sent(play):
    played = await play(
        say("ravi", "/bring slaw for 12"), say("ines", "/settings"), press("ines", "what to bring", on="last"),
        until("2027-09-18T12:00"),
    )  # fmt: skip

    assert played.reminders("bring") == []


async def test_who_muted_the_bot_hears_nothing(play):
    played = await play(say("ravi", "/bring slaw for 12"), say("ravi", "/mute"), until("2027-09-18T12:00"))

    assert played.reminders("bring") == []


async def test_a_short_downtime_is_caught_up(play):
    played = await play(
        say("ravi", "/bring slaw for 12"), until("2027-09-18T08:00"), {"down_for": "PT2H"}, until("2027-09-18T12:00")
    )

    assert times(played, "bring") == ["2027-09-18T10:00"]


async def test_a_long_downtime_sends_no_morning_message_at_night(play):
    played = await play(
        say("ravi", "/bring slaw for 12"), until("2027-09-18T08:00"), {"down_for": "PT14H"},
        until("2027-09-19T12:00"),
    )  # fmt: skip

    assert played.reminders("bring") == []


async def test_what_is_promised_after_the_preview_moves_the_reminders(play):
    played = await play(say("ravi", "/bring slaw for 12"), say("ravi", "/drop slaw"), until("2027-09-18T12:00"))

    assert played.reminders("bring") == []


async def test_the_host_sees_what_will_go_out(play):
    played = await play(say("ravi", "/bring slaw for 12"), say("ines", "/reminders"))

    assert "Ravi: what to bring" in played.last()


async def test_no_reminder_goes_out_twice_over_a_restart(play):
    played = await play(
        say("ravi", "/bring slaw for 12"), until("2027-09-18T09:00"), {"down_for": "PT30M"}, until("2027-09-18T12:00")
    )

    assert len(played.reminders("bring")) == 1


async def test_a_slow_cooker_dish_is_started_in_time(play):
    played = await play(
        say("ravi", "/bring chili for 12"), say("ines", "/kitchen 1 oven, 1 slow cooker"),
        say("ravi", "/heat chili: 8 hours in the slow cooker"), until("2027-09-18T17:30"),
    )  # fmt: skip

    assert times(played, "slow-cooker") == ["2027-09-18T09:00"]


async def test_a_frozen_turkey_is_thawed_days_before(play):
    played = await play(
        say("ravi", "/bring roast turkey for 20"), say("ravi", "/frozen turkey 14 lb"), until("2027-09-18T12:00")
    )

    # 14 lb at one day for 4 lb, rounded up: four days.
    assert [t[:10] for t in times(played, "thaw")] == ["2027-09-14"]


async def test_a_dish_left_out_is_called_in_before_its_time_is_over(play):
    played = await play(
        say("ravi", "/bring slaw for 12"), until("2027-09-18T17:30"), say("ravi", "/out slaw"),
        until("2027-09-18T19:45"),
    )  # fmt: skip

    assert len(played.reminders("out-limit")) == 1


async def test_a_guest_who_is_late_is_told_to_the_host(play):
    played = await play(press("ravi", "Coming", on="board"), board("ravi", "running 20 minutes late"))

    assert "Ravi comes at 5:20 PM" in played.everything()


async def test_on_the_night_clocks_change_the_hour_is_kept(play):
    played = await play(
        say("ines", "/potluck Sun 7 Nov 5pm, 12 people, at the hut"), say("ravi", "/bring slaw for 12"),
        until("2027-11-07T17:30"), first={"clock": "2027-11-01T09:00"}, opened=False,
    )  # fmt: skip

    # Clocks go back on 7 November 2027 in Chicago (IANA: America/Chicago): standard time at nine.
    assert [r["at"] for r in played.reminders("bring")] == ["2027-11-07T09:00:00-06:00"]


async def test_the_host_asks_who_has_no_account_and_hears_of_all_of_them_in_one_line(play):
    played = await play(
        say("ines", "/invite Fern, Aunt Rose"), say("ines", "/answerby Thu 16 Sep"), until("2027-09-17T12:00")
    )

    (asked,) = played.reminders("answer-by")
    assert ("Fern" in asked["text"], "Aunt Rose" in asked["text"], asked.get("buttons")) == (True, True, None)
