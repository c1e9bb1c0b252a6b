"""The evening in free words: arrivals, what was left at home, what ran out, who takes the rest."""

import pytest

from tests.capabilities.conftest import board, press, say, until

SEES_ALL = {"bot_sees_all": True}
BROUGHT = (board("ravi", "2 of us, bringing lasagna for 12"), board("mei", "coming, plates for 24"))
DAY = until("2027-09-18T16:45")
LATER = until("2027-09-18T18:30")


@pytest.mark.parametrize("words", ["we're here", "just parked!", "ya llegamos"])
async def test_having_arrived_in_words_is_the_button(play, words):
    played = await play(*BROUGHT, DAY, board("ravi", words))

    assert played.guest("ravi")["arrived_at"].startswith("2027-09-18T16:45")


async def test_days_before_nobody_has_arrived(play):
    played = await play(*BROUGHT, board("ravi", "we're here"))

    assert played.guest("ravi")["arrived_at"] is None


async def test_what_is_left_is_told_of_and_makes_no_new_dish(play):
    played = await play(*BROUGHT, LATER, board("ines", "left over: lasagna and some cake"))

    assert [p["dish"] for p in played.promises()] == ["lasagna", "plates"]
    assert "• lasagna: into the refrigerator by 7:00 PM" in played.everything()
    assert "Not on my list: cake." in played.last()


async def test_food_that_is_not_on_the_list_has_the_limit_all_the_same(play):
    played = await play(*BROUGHT, LATER, board("mei", "we're taking the melon home"))

    assert "more than 120 minutes" in played.last()
    assert played.promises("mei")[0]["dish"] == "plates"


async def test_back_in_the_cold_in_words_stops_the_clock_and_keeps_its_minutes(play):
    out = (until("2027-09-18T16:45"), say("ravi", "/out lasagna"), until("2027-09-18T17:15"))

    played = await play(*BROUGHT, *out, board("ravi", "I put the lasagna back in the fridge"))

    (lasagna,) = played.promises("ravi")
    assert (lasagna["out_since"], round(lasagna["out_min"])) == (None, 30)


async def test_who_was_given_up_and_comes_brings_the_dish_back(play):
    given_up = board("ines", "Ravi didnt come")

    played = await play(*BROUGHT, LATER, given_up, board("ravi", "so sorry, here now with the lasagna"))

    assert (played.guest("ravi")["answer"], played.promises("ravi")[0]["dish"]) == ("yes", "lasagna")


async def test_an_hour_of_coming_told_beside_a_forgotten_dish_is_being_late(play):
    played = await play(*BROUGHT, DAY, board("ravi", "lasagna forgot at home, going back, there 17:45"))

    assert played.promises("ravi")[0]["arrives_at"].startswith("2027-09-18T17:45")
    assert "Without it" in played.everything()


async def test_in_the_open_chat_only_who_comes_arrives(play):
    played = await play(
        *BROUGHT, press("tom", "Can't"), DAY, say("ravi", "just parked"), say("tom", "we're here"), first=SEES_ALL
    )

    assert (played.guest("ravi")["arrived_at"] is None, played.guest("tom")["answer"]) == (False, "no")


async def test_a_question_beside_the_arrival_is_answered_too(play):
    played = await play(*BROUGHT, DAY, board("ravi", "We're here! Who brings dessert?"))

    assert played.guest("ravi")["arrived_at"] is not None
    assert "dessert" in played.last()


async def test_a_dish_left_at_home_stays_until_its_cook_says_which_way(play):
    played = await play(*BROUGHT, DAY, board("ravi", "I forgot the lasagna at home"))

    assert [p["dish"] for p in played.promises("ravi")] == ["lasagna"]
    assert "Without it" in played.last()


async def test_a_dish_left_at_home_is_taken_off_by_its_button(play):
    played = await play(*BROUGHT, DAY, board("ravi", "I forgot the lasagna at home"), press("ravi", "Drop lasagna"))

    assert played.promises("ravi") == []


async def test_what_ran_out_names_who_could_bring_some_on_the_way(play):
    played = await play(*BROUGHT, DAY, board("mei", "we ran out of plates"))

    assert "Out of plates" in played.last()
    assert "Ravi" in played.last()


async def test_what_ran_out_by_the_hosts_word_is_remembered_for_the_next_time(play):
    played = await play(*BROUGHT, LATER, board("ines", "the lasagna is all gone"))

    assert played.promises("ravi")[0]["outcome"] == "ran-out"


async def test_out_of_time_is_nothing_to_us(play):
    quiet = await play(*BROUGHT, DAY, first=SEES_ALL)
    played = await play(*BROUGHT, DAY, say("ravi", "we ran out of time"), first=SEES_ALL)

    assert played.texts() == quiet.texts()


async def test_taking_leftovers_home_in_words_is_the_button(play):
    played = await play(*BROUGHT, LATER, board("mei", "I'll take the lasagna home"))

    assert played.promises("ravi")[0]["takers"] == ["mei"]


async def test_who_wants_the_rest_offers_it_with_how_long_it_keeps(play):
    played = await play(*BROUGHT, LATER, board("ravi", "who wants the rest of the lasagna?"), press("tom", "lasagna"))

    assert "refrigerator" in "\n".join(played.texts())
    assert played.promises("ravi")[0]["takers"] == ["tom"]


async def test_what_stood_out_too_long_is_nobodys(play):
    played = await play(
        *BROUGHT,
        until("2027-09-18T17:00"),
        say("ines", "/out lasagna"),
        until("2027-09-18T20:30"),
        board("mei", "I'll take the lasagna home"),
    )

    assert played.promises("ravi")[0]["takers"] == []
    assert "throw it out" in played.last()


async def test_a_dish_still_hard_gets_the_time_that_is_left(play):
    played = await play(board("tom", "roast potatoes for 12"), DAY, board("tom", "the potatoes are still hard"))

    assert "15 minutes are left" in played.last()


async def test_what_ran_out_late_in_the_evening_is_remembered_and_nobody_is_called_to_the_road(play):
    played = await play(*BROUGHT, until("2027-09-18T20:30"), say("ines", "we ran out of lasagna"), first=SEES_ALL)

    assert played.promises("ravi")[0]["outcome"] == "ran-out"
    assert "on the way" not in played.last()
    assert "more of it next time" in played.last()
