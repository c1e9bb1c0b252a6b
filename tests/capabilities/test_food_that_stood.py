"""Food that stood: a cold slow cooker, clocks in words, half-cooked dishes, the fridge, leftovers, a later meal."""

import pytest

from tests.capabilities.conftest import board, press, say, until

NOON = until("2027-09-18T14:00")
SUPPER = until("2027-09-18T17:30")
SEES_ALL = {"bot_sees_all": True}


async def stew_day(play, *lines, **more):
    return await play(
        say("ines", "/kitchen 1 oven, 4 burners, 2 slow cookers"),
        say("ravi", "/bring beef stew for 12"),
        say("ravi", "/heat beef stew: slow cooker low 6 hours"),
        say("mei", "/bring egg salad for 10"),
        press("ravi", "Coming", on="board"),
        press("mei", "Coming", on="board"),
        NOON,
        *lines,
        **more,
    )


@pytest.mark.parametrize(
    "words",
    [
        "the slow cooker was never switched on",
        "omg the crockpot was off all day",
        "nobody plugged in the slow cooker",
        "we forgot to turn on the slow cooker since 9 am",
        "the slow cooker is stone cold",
    ],
)
async def test_a_slow_cooker_that_was_never_on_means_its_dish_is_thrown_out_and_not_cooked_on(play, words):
    played = await stew_day(play, board("ines", words))

    assert "Don’t eat beef stew" in played.last()
    assert "Throw it out" in played.last()
    assert len(played.state["kitchen"]["ovens"]) == 1
    assert played.promises("ravi")[0]["out_since"] is not None


async def test_told_within_the_limit_it_is_boiled_at_once_or_thrown_out(play):
    played = await stew_day(
        play,
        say("ines", "/when 7pm"),
        board("ravi", "the slow cooker was not on"),
    )

    assert "Bring it to a full boil" in played.last()
    assert "Don’t eat" not in played.last()


async def test_cooking_it_longer_is_refused_once_its_time_is_over(play):
    played = await stew_day(
        play, board("ines", "the slow cooker was never switched on"), board("ravi", "should we just cook it longer?")
    )

    assert "does not make it good" in played.last()
    assert "beef stew" in played.last()


async def test_a_pot_that_sat_is_asked_about_before_anything_is_thrown_out(play):
    played = await stew_day(play, board("ines", "the stew sat in the cooker since 9 am"), press("ines", "It was off"))

    assert "was the slow cooker on" in played.everything()
    assert "Don’t eat beef stew" in played.last()


async def test_a_slow_cooker_that_is_off_now_is_asked_about_and_one_off_since_morning_is_not(play):
    asked = await stew_day(play, board("ines", "the slow cooker is off"))
    told = await stew_day(play, board("ines", "the slow cooker is off since 8 am"))

    assert "was the slow cooker on" in asked.last()
    assert "Don’t eat beef stew" in told.last()


async def test_a_slow_cooker_left_at_home_spoils_nothing(play):
    played = await stew_day(play, board("ravi", "I forgot the slow cooker at home"))

    assert "Don’t eat" not in played.everything()


async def test_in_spanish_a_cold_pot_is_a_cold_pot(play):
    played = await stew_day(
        play, say("ines", "/settings language es"), board("ines", "la olla lenta estaba apagada todo el día")
    )

    assert "No coman beef stew" in played.last()


@pytest.mark.parametrize(
    ("words", "start"),
    [
        ("the egg salad is on the table now", "17:30"),
        ("egg salad's out since 5", "17:00"),
        ("eggs on the table since 5.15", "17:15"),
        ("it's all out!", "17:30"),
        ("we put everything out at 5", "17:00"),
    ],
)
async def test_a_dish_said_to_be_on_the_table_has_a_running_clock(play, words, start):
    played = await stew_day(play, SUPPER, board("mei", words))

    assert start in played.promises("mei")[0]["out_since"]


async def test_in_the_open_a_promised_dish_named_on_the_day_starts_its_clock(play):
    played = await stew_day(play, SUPPER, say("mei", "the egg salad is on the table"), first=SEES_ALL)

    assert played.promises("mei")[0]["out_since"] is not None


@pytest.mark.parametrize(
    "words",
    ["the egg salad will be out at six", "is the egg salad out?", "we're out of egg salad", "egg salad isn't out yet"],
)
async def test_plans_questions_and_denials_start_no_clock(play, words):
    played = await stew_day(play, SUPPER, board("mei", words))

    assert played.promises("mei")[0]["out_since"] is None


async def test_how_long_a_dish_may_stay_out_is_answered_with_its_limit(play):
    played = await stew_day(play, SUPPER, board("tom", "how long can the egg salad stay out?"))

    assert "120 minutes" in played.last()


async def test_minutes_told_after_the_fact_are_counted_in_what_is_said(play):
    played = await stew_day(play, until("2027-09-18T19:40"), board("mei", "the egg salad is warm, out since 5"))

    assert "160 minutes" in played.last()


async def test_a_half_cooked_bird_in_a_dead_oven_is_finished_at_once_or_thrown_out(play):
    played = await play(
        say("ines", "/kitchen 1 oven, 4 burners"),
        say("ines", "/bring roast chicken for 12"),
        say("ines", "/heat roast chicken: 90 minutes at 375"),
        until("2027-09-18T16:10"),
        board("ines", "the oven just died"),
    )

    assert "half cooked" in played.last()
    assert "165 °F" in played.last()
    assert "cooked at home and brought hot" not in played.last()


@pytest.mark.parametrize("words", ["the fridge stopped working", "fridge is off too", "the refrigerator is warm"])
async def test_a_dead_refrigerator_has_its_four_hours(play, words):
    played = await stew_day(play, board("ines", words))

    assert "4 hours" in played.last()
    assert "egg salad" in played.last()


async def test_power_that_is_back_is_told_of_the_refrigerator_whether_or_not_its_going_was_told(play):
    played = await stew_day(play, board("ines", "power is back"))

    assert "more than 4 hours" in played.last()


@pytest.mark.parametrize("words", ["powers out here, whole street is dark", "no electricity here", "we lost power"])
async def test_a_power_cut_is_one_in_whatever_words(play, words):
    played = await stew_day(play, board("ines", words))

    assert "Power cut" in played.last()


async def test_one_burner_less_is_one_burner_less(play):
    played = await stew_day(play, board("ines", "one burner is broken"))

    assert played.state["kitchen"]["burners"] == 3


async def test_rain_brings_no_grill_inside_and_sun_takes_the_table_out_again(play):
    played = await stew_day(
        play,
        say("ines", "/where outdoors"),
        board("ines", "its pouring!! can we do it inside?"),
        board("ines", "rain stopped, we go back to the park"),
    )

    assert "No charcoal or gas grill comes in" in played.everything()
    assert played.state["setting"] == "outdoor"


async def test_leftovers_nobody_clocked_are_reckoned_from_the_start_with_the_limit_outdoors(play):
    played = await stew_day(
        play,
        say("ines", "/where outdoors"),
        say("ines", "/weather 95 °F"),
        until("2027-09-18T18:10"),
        say("ines", "/leftovers"),
    )

    assert "within one hour" in played.last()
    assert "Nobody told me how long these were out: beef stew and egg salad." in played.last()
    assert "and 60 are the limit" in played.last()


async def test_leftovers_in_time_say_until_when_they_must_be_cold(play):
    played = await stew_day(play, SUPPER, say("ines", "/leftovers"))

    assert "egg salad: into the refrigerator by 7:00" in played.last()


async def test_a_later_meal_names_the_clock_it_outlasts(play):
    played = await stew_day(
        play,
        until("2027-09-18T16:00"),
        board("mei", "the egg salad is on the table now"),
        say("ines", "/when 6:30pm"),
    )

    said = played.everything()
    assert "We eat at 6:30" in said
    assert "egg salad: its time out ends at 6:00" in said


async def test_what_was_taken_back_is_named_without_marks(play):
    played = await stew_day(play, board("ines", "power is out"), say("ines", "/undo"))

    assert "<b>" not in played.last()
    assert ".." not in played.last()
