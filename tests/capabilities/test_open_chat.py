"""Where the bot sees everything it is more reluctant; what names a promised dish is still heard."""

from tests.capabilities.conftest import board, say

SEES_ALL = {"bot_sees_all": True}


async def test_a_dish_is_swapped_in_the_open_chat(play):
    played = await play(
        board("ravi", "lemonade for 20"),
        say("ravi", "scratch the lemonade, I'll do iced tea for 25 instead"),
        first=SEES_ALL,
    )

    assert [(p["dish"], p["servings"]) for p in played.promises("ravi")] == [("iced tea", 25)]


async def test_small_talk_about_food_is_met_with_silence(play):
    talk = (
        "who ate all the pies",
        "we had lasagna for 12 at work today",
        "I'm making soup for dinner",
        "what's for tea?",
    )
    before = await play(first=SEES_ALL)
    after = await play(*(say("ravi", line) for line in talk), first=SEES_ALL)

    assert after.texts() == before.texts()
    assert after.promises() == []


async def test_a_question_about_the_supper_is_answered_and_another_is_not(play):
    played = await play(
        say("ravi", "what time is the match?"), say("mei", "what time does the supper start?"), first=SEES_ALL
    )

    assert "5:00 PM" in played.last()
    assert len([t for t in played.texts() if "It is on" in t]) == 1


async def test_toppings_in_words_beside_a_bar_stand_in_the_bar(play):
    played = await play(say("ines", "/bar taco"), board("ravi", "I'll bring cheese and salsa"))

    assert played.promises("ravi") == []
    assert {t["name"] for t in played.state["bar"]["toppings"] if t["guest"] == "ravi"} == {"grated cheddar", "salsa"}


async def test_who_comes_with_what_is_read_in_the_open_below_the_board(play):
    played = await play(say("ravi", "3 of us, one vegetarian, slaw for 12"), first=SEES_ALL)

    guest = played.guest("ravi")
    assert (guest["answer"], guest["adults"]) == ("yes", 3)
    assert [p["dish"] for p in played.state["promises"]] == ["slaw"]


async def test_a_plain_yes_right_below_the_board_counts_and_can_be_undone(play):
    played = await play(say("ravi", "I'll be there!"), first=SEES_ALL)

    assert played.guest("ravi")["answer"] == "yes"
    assert "Undo" in str(played.rows)


async def test_being_there_in_a_minute_is_no_answer(play):
    played = await play(say("ravi", "I'll be there in a minute"), first=SEES_ALL)

    assert [g for g in played.state["guests"] if g["id"] == "ravi" and g["answer"] != "none"] == []


async def test_me_too_after_what_was_read_of_somebody_else_holds_for_the_writer(play):
    played = await play(
        say("ravi", "I'm in with 2 kids, no peanuts please"),
        say("mei", "same here"),
        board("tom", "me too"),
        first=SEES_ALL,
    )

    for who in ("mei", "tom"):
        assert (played.guest(who)["answer"], played.guest(who)["children"]) == ("yes", 0)
        assert [n["need"] for n in played.guest(who)["needs"]] == ["peanut"]


async def test_me_too_to_other_talk_says_nothing_to_us(play):
    private = {"in": "private"}
    played = await play(
        say("ravi", "/start", **private),
        say("ravi", "I'm coming, allergic to peanuts", **private),
        say("tom", "I loved that film"),
        say("mei", "me too"),
        first=SEES_ALL,
    )

    assert "mei" not in {g["id"] for g in played.state["guests"]}


async def test_a_yes_written_right_after_the_question_answers_it(play):
    played = await play(
        say("ines", "can we push it by 20 min?"), say("ines", "yes"), say("ravi", "yes"), first=SEES_ALL
    )

    assert played.state["starts_at"].startswith("2027-09-18T17:20")
