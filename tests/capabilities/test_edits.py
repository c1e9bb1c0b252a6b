"""Messages that are edited afterwards, and questions answered in the wrong place."""

from tests.capabilities.conftest import board, press, say


def edit(who: str, text: str, **more):
    return {"from": who, "edit": "last", "say": text, **more}


async def test_an_edited_command_replaces_what_it_said(play):
    played = await play(say("ravi", "/bring pie for 8"), edit("ravi", "/bring cake for 16"))

    assert [(p["dish"], p["servings"]) for p in played.promises("ravi")] == [("cake", 16)]


async def test_an_edit_after_something_else_is_refused_and_changes_nothing(play):
    played = await play(
        say("ravi", "/bring pie for 8"), press("ravi", "Maybe", on="board"), edit("ravi", "/bring cake for 16")
    )

    assert [p["dish"] for p in played.promises("ravi")] == ["pie"]
    assert "write it anew" in played.last()


async def test_an_edited_opening_line_makes_no_second_potluck(play):
    played = await play(edit("ines", "/potluck Sat 18 Sep 3pm, 10 people"))

    assert played.state["starts_at"] == "2027-09-18T17:00:00-05:00"
    assert "/when" in played.last()


async def test_an_answer_edited_into_something_else_is_taken_back_with_a_word(play):
    played = await play(board("ravi", "4 of us, slaw for 12"), edit("ravi", "hello"))

    assert played.promises() == []
    assert played.texts()[-1] != played.texts()[-2]


async def test_what_is_said_below_the_board_does_not_become_the_place(play):
    played = await play(
        say("ines", "/potluck Sat 18 Sep 5pm, 24 people"), board("ravi", "we will bring the children"), opened=False
    )

    assert played.state["place"] == ""


async def test_a_second_potluck_at_the_same_hour_is_refused(play):
    played = await play(say("ines", "/potluck Sat 18 Sep 5pm, 30 people"))

    assert played.state["expected_people"] == 24


async def test_a_guest_takes_a_topping_by_command(play):
    played = await play(say("ines", "/bar baked potato"), say("ravi", "/bar chives"))

    assert {"name": "chives", "guest": "ravi"} in played.state["bar"]["toppings"]


async def test_needs_are_read_as_the_refusal_suggests(play):
    played = await play(say("mei", "/needs vegetarian, no peanuts"))

    assert {n["need"] for n in played.guest("mei")["needs"]} == {"vegetarian", "peanut"}


async def test_an_impossible_oven_is_refused_with_an_example(play):
    played = await play(say("ravi", "/bring rolls for 12"), say("ravi", "/heat rolls: 15 min at 3500"))

    assert played.promises()[0]["heat"] is None
    assert "190 °C" in played.last()


async def test_a_board_can_be_pressed_right_after_an_upgrade(play):
    played = await play({"event": "upgraded"}, press("ravi", "Coming", on="board"))

    assert played.guest("ravi")["answer"] == "yes"


async def test_a_press_is_acknowledged_even_when_the_platform_was_busy(play):
    played = await play(
        {"fault": "429", "retry_after": 3, "count": 1, "method": "answerCallbackQuery"},
        press("ravi", "Coming", on="board"),
    )

    assert len(played.answers) == 1


async def test_whoever_offers_a_dish_is_counted_as_coming(play):
    played = await play(say("ravi", "/bring slaw for 12"))

    assert played.guest("ravi")["answer"] == "yes"
