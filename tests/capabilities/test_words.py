"""Guests' own words, and hosts': what comes of them in the chat."""

from tests.capabilities.conftest import board, press, say


async def test_how_a_dish_is_heated_is_read_with_it(play):
    played = await play(board("mei", "lasagna for 12, 50 min at 375"), plan=True)

    assert [(s["kind"], s["minutes"], s["temp_f"]) for s in played.promises("mei")[0]["heat"]] == [("oven", 50, 375)]
    assert [s["kind"] for s in played.plan["kitchen"]["steps"] if s["kind"] == "oven"] == ["oven"]
    assert "375 °F" in played.last()


async def test_a_severe_allergy_keeps_its_severity(play):
    played = await play(board("mei", "severe peanut allergy here"))

    assert [(n["need"], n["severity"]) for n in played.guest("mei")["needs"]] == [("peanut", "severe allergy")]


async def test_three_needs_in_one_sentence_are_three_needs(play):
    private = {"in": "private"}
    played = await play(
        press("mei", "Coming", on="board"),
        say("mei", "/start @link", **private),
        say("mei", "shellfish and celery, also my son can't have mustard", **private),
    )

    assert {n["need"] for n in played.guest("mei")["needs"]} == {"shellfish", "celery", "mustard"}


async def test_a_mother_comes_too(play):
    played = await play(press("ravi", "Coming", on="board"), board("ravi", "my mother comes too"))

    added = [g for g in played.state["guests"] if g["added_by"] == "ravi"]
    assert [(g["answer"], "mother" in g["name"]) for g in added] == [("yes", True)]


async def test_an_unsure_reading_is_asked_about_and_acted_on_after_yes(play):
    asked = await play(board("ravi", "Ann can't come"))
    told = await play(board("ravi", "Ann can't come"), press("ravi", "Yes", on="last"))

    assert [g["name"] for g in asked.state["guests"] if g["name"] == "Ann"] == []
    assert [g["answer"] for g in told.state["guests"] if g["name"] == "Ann"] == ["no"]


async def test_only_who_wrote_it_may_confirm_a_reading(play):
    played = await play(board("ravi", "Ann can't come"), press("mei", "Yes", on="last"))

    assert [g["name"] for g in played.state["guests"] if g["name"] == "Ann"] == []


async def test_a_guest_does_not_move_the_potluck_with_words(play):
    played = await play(board("ravi", "let's move it to Sunday 19 Sep at 4pm"))

    assert played.state["starts_at"] == "2027-09-18T17:00:00-05:00"


async def test_pregnancy_stays_out_of_what_others_read(play):
    private = {"in": "private"}
    played = await play(
        press("mei", "Coming", on="board"),
        say("mei", "/start", **private),
        say("mei", "I'm pregnant", **private),
        say("ravi", "/bring soft cheese board for 12"),
        say("ravi", "/safety"),
    )

    assert played.guest("mei")["pregnant"] is True
    assert "Mei" not in played.last()


async def test_a_question_is_answered_from_the_plan_to_whoever_asked(play):
    played = await play(board("ravi", "when is it?"), board("ravi", "where is it?"), board("ravi", "what's missing?"))

    assert "Sep 18, 5:00 PM" in played.texts()[-3]
    assert "the allotment hut" in played.texts()[-2]
    assert "more servings" in played.texts()[-1]


async def test_what_only_the_host_knows_is_passed_on(play):
    played = await play(board("ravi", "can I use the oven?"))

    assert "Ravi asks" in played.everything()


async def test_a_cook_hears_at_once_that_somebody_must_not_eat_the_dish(play):
    private = {"in": "private"}
    played = await play(
        press("mei", "Coming", on="board"),
        say("mei", "/start @link", **private),
        press("mei", "no shellfish", **private),
        board("ravi", "prawn skewers for 10"),
    )

    assert "must not eat" in played.last()
    assert "Mei" not in played.last()


async def test_a_need_nobody_could_read_is_not_lost_in_silence(play):
    played = await play(board("mei", "2 of us. The little one with the red hat can't have blue cheese or eggs"))

    assert played.guest("mei")["needs"] or "/needs" in played.last()


async def test_a_sure_need_does_not_wait_for_an_unsure_dish(play):
    played = await play(board("mei", "I'm allergic to peanuts myself, and bringing karaage for 10"))

    assert [n["need"] for n in played.guest("mei")["needs"]] == ["peanut"]


async def test_a_bare_number_from_the_host_moves_no_clock(play):
    played = await play(board("ines", "we're 18 now"))

    assert played.state["starts_at"] == "2027-09-18T17:00:00-05:00"


async def test_who_drops_out_hears_which_dishes_are_still_theirs(play):
    played = await play(board("ravi", "slaw for 12"), board("ravi", "can't come any more"))

    assert "still on the list: slaw" in played.last()


async def test_words_in_a_private_chat_without_a_potluck_are_not_met_with_silence(play):
    private = {"in": "private"}
    played = await play(say("tom", "/start", **private), say("tom", "yes, 2 of us, one vegan", **private))

    assert "board" in played.last("tom")


async def test_a_sentence_nobody_could_read_beside_one_that_was_is_said_back(play):
    played = await play(board("ravi", "im in. 3 adults 2 kids halal. chicken yassa for 15"))

    assert [p["dish"] for p in played.promises("ravi")] == ["chicken yassa"]
    assert "3 adults 2 kids halal" in played.last()


async def test_a_food_behind_what_was_noted_does_not_get_lost(play):
    played = await play(board("ravi", "in! with my girlfriend, shes pescatarian & no shellfish. bringing brownies"))

    noted = [n["need"] for n in played.guest("ravi")["needs"]]
    assert "shellfish" in noted or "I did not get it" in played.last()
