"""Questions about what was not sure, and what was sure beside it."""

from tests.capabilities.conftest import board, press, say

SEES_ALL = {"bot_sees_all": True}


def last_buttons(played) -> list[str]:
    rows = [r for r in played.rows if r["from"] == "bot" and r["kind"] == "message" and r.get("buttons")]
    return [b["label"] for row in rows[-1]["buttons"] for b in row]


async def test_a_sure_yes_does_not_wait_for_an_unsure_dish(play):
    played = await play(board("ravi", "yes! alone. We might produce some baklava"))

    assert played.guest("ravi")["answer"] == "yes"
    assert played.promises("ravi") == []
    assert "baklava" in played.last()


async def test_yes_below_the_question_acts_only_on_what_is_left(play):
    played = await play(board("ravi", "yes! alone. We might produce some baklava"), press("ravi", "Yes", on="last"))

    assert [p["dish"] for p in played.promises("ravi")] == ["baklava"]


async def test_yes_in_words_below_the_question_is_the_answer_to_it(play):
    played = await play(board("ravi", "Ann can't come"), say("ravi", "yes", reply="last"))

    assert [(g["name"], g["answer"]) for g in played.state["guests"] if g["name"] == "Ann"] == [("Ann", "no")]
    assert played.guest("ravi")["answer"] == "none"


async def test_no_in_words_below_the_question_leaves_all_as_it_was(play):
    played = await play(board("ravi", "Ann can't come"), say("ravi", "no", reply="last"))

    assert {g["name"] for g in played.state["guests"]}.isdisjoint({"Ann", "Ravi"})


async def test_something_else_below_the_question_is_read_for_what_it_is(play):
    played = await play(board("ravi", "Ann can't come"), say("ravi", "slaw for 12", reply="last"))

    assert [(p["dish"], p["servings"]) for p in played.promises("ravi")] == [("slaw", 12)]


async def test_which_dish_to_take_off_is_asked_with_the_dishes_as_buttons(play):
    lines = (
        board("ravi", "slaw for 12"),
        board("ravi", "rolls for 10"),
        board("ravi", "I can't bring the cake after all"),
    )
    asked = await play(*lines)
    told = await play(*lines, press("ravi", "rolls", on="last"))

    assert [b for b in last_buttons(asked) if b.startswith(("slaw", "rolls"))] == ["slaw for 12", "rolls for 10"]
    assert [p["dish"] for p in told.promises("ravi")] == ["slaw"]


async def test_why_is_answered_with_the_words_it_was_read_from(play):
    played = await play(board("ravi", "3 of us, slaw for 12"), say("ravi", "why did you do that?", reply="last"))

    assert "slaw for 12" in played.last()
    assert [p["dish"] for p in played.promises("ravi")] == ["slaw"]


async def test_why_a_question_was_asked_is_explained(play):
    played = await play(board("ravi", "Ann can't come"), board("ravi", "why?"))

    assert "not sure" in played.last()


async def test_a_dish_is_handed_over_after_a_yes(play):
    played = await play(
        board("mei", "I'm in"),
        board("ravi", "quiche for 8"),
        board("ravi", "can Mei take over my quiche?"),
        press("ravi", "Yes", on="last"),
    )

    assert [p["dish"] for p in played.promises("mei")] == ["quiche"]
    assert played.promises("ravi") == []


async def test_the_host_hears_in_private_what_a_drop_out_leaves_short(play):
    played = await play(
        say("ines", "/start", **{"in": "private"}),
        board("ravi", "slaw for 12"),
        board("ravi", "can't come any more"),
    )

    assert "Ravi" in played.last("ines")
    assert "slaw" in played.last("ines")


async def test_who_gives_up_a_dish_reads_what_is_short_now(play):
    played = await play(board("ravi", "slaw for 12"), board("ravi", "I can't bring the slaw after all"))

    assert "servings short" in played.last()


async def test_a_taken_topping_does_not_take_the_rest_of_the_sentence_with_it(play):
    played = await play(
        say("ines", "/bar baked potato"),
        board("mei", "I'll bring the chives"),
        board("ravi", "3 of us, and I'll bring the chives"),
    )

    assert played.guest("ravi")["answer"] == "yes"
    assert "Mei" in played.last()


async def test_in_the_open_chat_the_next_plain_message_of_who_was_asked_is_the_answer(play):
    played = await play(
        say("ines", "/potluck Sat 18 Sep"), say("ines", "5pm"), say("ines", "24"), opened=False, first=SEES_ALL
    )

    assert played.state["starts_at"] == "2027-09-18T17:00:00-05:00"


async def test_in_the_open_chat_talk_is_no_place(play):
    played = await play(
        say("ines", "/potluck Sat 18 Sep 5pm, 24 people"), say("ines", "haha lovely"), opened=False, first=SEES_ALL
    )

    assert not played.state["place"]


async def test_the_host_hears_of_a_drop_out_by_button_too(play):
    played = await play(
        say("ines", "/start", **{"in": "private"}),
        board("ravi", "slaw for 12"),
        press("ravi", "Can't", on="board"),
    )

    assert "Ravi can’t come after all" in played.last("ines")


async def test_a_first_no_is_no_drop_out(play):
    played = await play(say("ines", "/start", **{"in": "private"}), board("ravi", "can't come, sorry"))

    assert "after all" not in played.everything()


async def test_two_dishes_of_one_name_are_told_apart_by_their_amounts(play):
    lines = (
        board("mei", "potato salad for 10"),
        board("mei", "and another potato salad for 6"),
        say("mei", "/drop potato salad"),
    )
    asked = await play(*lines)
    told = await play(*lines, press("mei", "for 6", on="last"))

    assert [b for b in last_buttons(asked) if "for" in b] == ["potato salad for 10", "potato salad for 6"]
    assert [p["servings"] for p in told.promises("mei")] == [10]


async def test_toppings_are_taken_at_once_with_a_way_back(play):
    played = await play(say("ines", "/bar taco"), board("mei", "cheese and salsa"))

    assert "grated cheddar for the bar; salsa for the bar" in played.last()
    assert played.guest("mei")["answer"] == "yes"


async def test_no_allergies_after_some_were_noted_is_asked_about_and_not_done_in_silence(play):
    played = await play(
        board("mei", "coming, I'm allergic to peanuts"), board("mei", "no allergies"), press("mei", "No", on="last")
    )

    assert [n["need"] for n in played.guest("mei")["needs"]] == ["peanut"]
    assert any("take this off your needs" in t for t in played.texts())


async def test_what_nobody_read_is_named_beside_an_allergy_that_is_noted_at_once(play):
    played = await play(board("ravi", "me + 2, one has celiac. ham, the usual amount"))

    assert any("no gluten" in t for t in played.texts())
    assert "ham, the usual amount" in played.last()
