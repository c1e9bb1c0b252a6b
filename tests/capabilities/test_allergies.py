"""An allergy told while dishes are on the list reaches the host and the cooks, and nobody's name goes with it."""

import pytest

from tests.capabilities.conftest import board, press, say, until

SATAY = board("ravi", "I'm in, chicken satay for 12")
NOODLES = board("tom", "coming, peanut noodles for 10")
SEVERE = "I'm in, severe peanut allergy"


def private(who, text="/start"):
    return say(who, text, **{"in": "private"})


def told_of(played, chat, word):
    return [t for t in played.texts(chat) if "⚠️" in t and word in t]


async def test_the_cooks_and_the_host_hear_of_a_severe_allergy_told_after_their_dishes(play):
    played = await play(private("ravi"), private("ines"), SATAY, board("mei", SEVERE))

    assert told_of(played, "ravi", "chicken satay")
    assert told_of(played, "ines", "chicken satay")


async def test_a_need_taken_back_is_told_to_the_cook_who_was_warned(play):
    played = await play(private("ravi"), SATAY, board("mei", "coming, peanut allergy"), say("mei", "/undo"))

    assert "Taken back" in played.last("ravi")
    assert "Mei" not in played.last("ravi")


async def test_the_cook_is_told_no_name(play):
    played = await play(private("ravi"), SATAY, board("mei", SEVERE))

    assert "A guest has a severe allergy to peanuts" in played.last("ravi")
    assert "Mei" not in played.last("ravi")


async def test_the_host_hears_in_private_whose_it_is(play):
    played = await play(private("ines"), SATAY, board("mei", SEVERE))

    assert told_of(played, "ines", "Mei has a severe allergy")


async def test_who_cannot_be_written_to_is_called_in_one_message_to_the_group(play):
    played = await play(SATAY, NOODLES, board("mei", SEVERE))

    (aloud,) = [t for t in played.texts() if t.startswith("Inés")]
    assert "Ravi" in aloud
    assert "Tom" in aloud
    assert "Mei" not in aloud


async def test_told_in_private_by_button_it_reaches_the_cook_all_the_same(play):
    played = await play(
        private("ravi"), SATAY, board("mei", "I'm in"), private("mei", "/needs"), press("mei", "no peanuts")
    )

    assert told_of(played, "ravi", "peanuts")
    assert "Mei" not in "\n".join(t for t in played.texts() if "⚠️" in t)


async def test_the_host_telling_it_for_a_guest_sets_the_cooks_off_too(play):
    played = await play(
        private("ravi"),
        SATAY,
        board("mei", "I'm in"),
        board("ines", "Mei is allergic to peanuts"),
        press("ines", "Yes"),
    )

    assert told_of(played, "ravi", "chicken satay")
    assert [n["need"] for n in played.guest("mei")["needs"]] == ["peanut"]


async def test_on_the_day_it_says_what_to_do_now_and_whom_to_call(play):
    played = await play(private("ravi"), SATAY, until("2027-09-18T16:30"), board("mei", SEVERE))

    assert "Now:" in played.last("ravi")
    assert "911" in played.last("ravi")


async def test_days_before_nobody_is_sent_to_the_emergency_number(play):
    played = await play(private("ravi"), SATAY, board("mei", SEVERE))

    assert "911" not in "\n".join(told_of(played, "ravi", "peanuts"))


async def test_the_allergic_guest_hears_what_it_meets(play):
    played = await play(SATAY, board("mei", SEVERE))

    assert any("chicken satay (Ravi)" in t and "told" in t for t in played.texts())


async def test_who_listed_nothing_is_named_to_the_host_beside_a_severe_allergy(play):
    played = await play(private("ines"), board("ravi", "I'm in, green salad for 12"), board("mei", SEVERE))

    assert any("Nobody has said what is in" in t and "green salad" in t for t in told_of(played, "ines", "peanuts"))


async def test_a_cook_is_not_warned_of_the_own_allergy(play):
    played = await play(board("ravi", "I'm in, chicken satay for 12"), board("ravi", "I'm allergic to peanuts"))

    assert told_of(played, "group", "peanuts") == []


@pytest.mark.parametrize("words", ["I'm vegan", "I don't eat pork", "I'm lactose intolerant"])
async def test_a_diet_or_an_intolerance_sets_nobody_off(play, words):
    played = await play(private("ravi"), board("ravi", "I'm in, lasagna with ham for 12"), board("mei", words))

    assert told_of(played, "ravi", "lasagna") == []


async def test_a_cook_who_says_what_is_in_it_is_warned(play):
    played = await play(
        board("mei", SEVERE), board("ravi", "I'm in, green salad for 12"), say("ravi", "/contains green salad: peanuts")
    )

    assert "severe allergy to peanuts" in played.last()


async def test_a_dish_that_usually_holds_a_severe_allergy_warns_its_cook_at_once(play):
    played = await play(board("mei", "I'm in, severe walnut allergy"), board("ravi", "I'm in, carrot cake for 12"))

    assert any("usually made with tree nuts" in t for t in played.texts())


async def test_spanish_is_spoken_to_a_spanish_group(play):
    played = await play(say("ines", "/settings language es"), SATAY, board("mei", "vengo, tengo alergia grave al maní"))

    assert any("alergia grave a: maní" in t for t in played.texts())
