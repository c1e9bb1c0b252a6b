"""Late or here: a guest's own word, and what it does to the kitchen."""

import pytest

from tests.capabilities.conftest import board, press, say, until

COOKING = (
    say("ines", "/kitchen 1 oven, 4 burners"),
    say("ravi", "/bring lasagna for 12"),
    say("ravi", "/heat lasagna: 60 minutes at 375, covered"),
    press("ravi", "Coming", on="board"),
    until("2027-09-18T15:00"),
)


def private(who):
    return say(who, "/start", **{"in": "private"})


@pytest.mark.parametrize("words", ["running 45 minutes late", "sorry, 45 min late!"])
async def test_minutes_said_below_the_board_move_what_the_guest_brings(play, words):
    played = await play(*COOKING, board("ravi", words))

    (lasagna,) = played.promises("ravi")
    assert lasagna["arrives_at"] is not None


async def test_the_host_hears_what_a_late_dish_breaks(play):
    played = await play(private("ines"), *COOKING, say("ravi", "/late 5:30pm"))

    told = played.last("ines")
    assert "Ravi comes at 5:30 PM" in told
    assert "lasagna" in told


async def test_late_without_a_number_offers_numbers_and_one_is_pressed(play):
    played = await play(*COOKING, say("ravi", "/late"), press("ravi", "20 min"))

    assert played.promises("ravi")[0]["arrives_at"] is not None


async def test_who_is_late_without_a_dish_breaks_nothing(play):
    played = await play(private("ines"), *COOKING, press("mei", "Coming", on="board"), say("mei", "/late 30"))

    assert "Nothing in the kitchen changes" in played.last("ines")


async def test_later_than_the_end_is_refused_in_one_sentence(play):
    played = await play(*COOKING, say("ravi", "/late 11pm"))

    assert "after the potluck is over" in played.last()


async def test_here_counts_who_has_arrived_and_offers_the_table(play):
    played = await play(*COOKING, until("2027-09-18T16:50"), say("ravi", "/here"), press("ravi", "lasagna is out"))

    assert played.guest("ravi")["arrived_at"].startswith("2027-09-18T16:50")
    assert played.promises("ravi")[0]["out_since"] is not None


async def test_now_and_next_name_the_steps_of_the_moment(play):
    played = await play(
        *COOKING, until("2027-09-18T16:20"), say("ines", "/now"), say("ines", "/next"), press("ines", "Running")
    )

    said = played.texts()
    assert any(t.startswith("Now, 4:20") or "Now, 4:20" in t for t in said)
    assert "lasagna" in "\n".join(said[-3:])


async def test_an_hour_of_arrival_said_in_words_is_noted_with_the_yes_and_told_to_the_host(play):
    played = await play(
        board("ravi", "bringing slaw for 12"), say("ravi", "can't get there before 6"), first={"bot_sees_all": True}
    )

    assert played.guest("ravi")["answer"] == "yes"
    assert played.promises("ravi")[0]["arrives_at"][:16] == "2027-09-18T18:00"


async def test_who_can_be_there_hours_before_is_early_and_the_kitchen_plans_with_it(play):
    played = await play(
        say("ines", "/kitchen 1 oven, 3 slow cookers"),
        board("ravi", "2, beef chili in my own slow cooker, 5 qt, on low 6h. i can be there from 9:30"),
    )

    assert played.guest("ravi")["adults"] == 2
    assert played.promises("ravi")[0]["arrives_at"].startswith("2027-09-18T09:30")
