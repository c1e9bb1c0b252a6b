"""The host in the host's own words: another day, another place, called off; an open question takes only what fits."""

from tests.capabilities.conftest import board, press, say

ASKED_WHERE = say("ines", "/potluck Sat 18 Sep 5pm, 24 people")
ASKED_HOW_MANY = say("ines", "/potluck Sat 18 Sep 5pm")
SEES_ALL = {"bot_sees_all": True}


def last(who, text):
    return say(who, text, reply="last")


async def test_another_day_below_the_question_where_is_no_place(play):
    played = await play(ASKED_WHERE, last("ines", "let's move it to Sunday"), last("ines", "moved to 6"), opened=False)

    assert (played.state["starts_at"][:16], played.state["place"]) == ("2027-09-19T18:00", "")


async def test_a_place_below_another_message_is_taken_where_none_stands(play):
    played = await play(ASKED_WHERE, board("ines", "it's at the mill"), opened=False)

    assert played.state["place"] == "the mill"


async def test_a_place_may_be_left_for_later_in_words(play):
    played = await play(ASKED_WHERE, last("ines", "not sure yet"), opened=False)

    assert (played.state["place"], "later" in played.last()) == ("", True)


async def test_a_question_below_the_question_where_is_no_place(play):
    played = await play(ASKED_WHERE, last("ines", "who is bringing dessert?"), opened=False)

    assert played.state["place"] == ""


async def test_a_range_is_an_answer_to_how_many_and_its_place_is_kept(play):
    played = await play(ASKED_HOW_MANY, last("ines", "between 20 and 25 I think, at the hall"), opened=False)

    assert (played.state["expected_people"], played.state["place"]) == (25, "the hall")


async def test_its_cancelled_asks_before_anything_happens(play):
    played = await play(board("ines", "it's cancelled, sorry everyone"))

    assert "Call off" in played.last()
    assert played.state["stage"] == "planned"


async def test_yes_in_words_calls_it_off(play):
    played = await play(board("ines", "we have to call it off"), last("ines", "yes"))

    assert played.state["stage"] == "cancelled"


async def test_no_in_words_keeps_it(play):
    played = await play(board("ines", "we have to call it off"), last("ines", "no"))

    assert (played.state["stage"], played.last()) == ("planned", "It stays on.")


async def test_a_guest_who_says_it_is_cancelled_is_not_asked(play):
    played = await play(board("ravi", "it's cancelled, sorry everyone"))

    assert "Call off" not in played.everything()


async def test_the_hosts_dish_stays_when_the_host_keeps_the_supper(play):
    played = await play(
        board("ines", "bringing chili for 12"),
        board("ines", "it's cancelled, sorry everyone"),
        press("ines", "keep it"),
    )

    assert [p["dish"] for p in played.promises("ines")] == ["chili"]


async def test_in_the_open_chat_the_host_is_asked_with_the_day_it_comes_to(play):
    played = await play(say("ines", "let's move it to Sunday"), first=SEES_ALL)

    assert "Sun, Sep 19, 5:00 PM" in played.last()
    assert played.state["starts_at"].startswith("2027-09-18T17:00")


async def test_what_is_so_already_is_not_asked_about(play):
    played = await play(say("ines", "it's Saturday at 5 now"), first=SEES_ALL)
    quiet = await play(first=SEES_ALL)

    assert played.texts() == quiet.texts()


async def test_rain_in_words_days_before_moves_it_indoors(play):
    played = await play(
        say("ines", "/potluck Sat 18 Sep 5pm, about 24 people, outdoors, at the hut"),
        board("ines", "it will be indoors because of the rain"),
        opened=False,
    )

    assert (played.state["setting"], played.state["place"]) == ("indoor", "the hut")


async def test_another_hour_below_the_question_whether_it_moves_is_taken_on_the_day_asked_about(play):
    for words in ("no, 6", "lets say 6"):
        played = await play(say("ines", "let's move it to Sunday"), last("ines", words), first=SEES_ALL)

        assert played.state["starts_at"][:16] == "2027-09-19T18:00"
