"""Food in some state, in free words in the chat: answered, each dish its own verdict, and taken for nothing else."""

from tests.capabilities.conftest import board, say, until

OPEN = {"bot_sees_all": True}


async def test_each_dish_of_one_sentence_gets_its_own_verdict_in_the_open_chat(play):
    played = await play(
        say("mei", "/bring dumplings for 12"),
        until("2027-09-18T19:45"),
        say("ines", "leftovers: mac and cheese on warm all the time, dumplings on the table since 5:30, beans too"),
        first=OPEN,
    )

    assert "mac and cheese: being kept hot counts" in played.last()
    assert "dumplings: out for 135 minutes" in played.last()
    assert "beans: out for 135 minutes" in played.last()
    assert len(played.promises()) == 1


async def test_a_thermometer_s_figure_is_no_number_of_servings(play):
    played = await play(
        say("ravi", "/bring chowder for 12"),
        until("2027-09-18T16:45"),
        board("ravi", "chowder is 150 in the pot, gas stove works"),
    )

    assert "150 °F is above 140 °F" in played.last()
    assert played.promises("ravi")[0]["servings"] == 12


async def test_what_is_asked_after_illness_is_answered_by_the_same_rule(play):
    played = await play(
        until("2027-09-17T20:00"),
        say("mei", "my little one has a stomach bug since this afternoon, threw up twice"),
        say("mei", "i already made the soup yesterday. should i still bring it?"),
        first=OPEN,
    )

    assert "Please don’t" in played.last()


async def test_a_severe_allergy_told_by_who_is_down_as_away_reaches_the_host(play):
    played = await play(
        say("ravi", "/bring dumplings for 12"),
        board("mei", "can't make it"),
        board("mei", "i should have said: severe sesame allergy, i carry an epipen"),
    )

    assert any(n["need"] == "sesame" for n in played.guest("mei")["needs"])
    assert "severe allergy to sesame" in played.everything()


async def test_an_oven_that_runs_cold_is_remembered_and_every_line_names_the_dial_figure(play):
    played = await play(
        board("ravi", "lasagna for 12, needs 50 min at 375 at the hall"),
        until("2027-09-18T14:00"),
        say("ines", "heads up, oven here runs 50 degrees cold. set 375 shows 325"),
        say("ravi", "when does my lasagna go in?"),
        until("2027-09-18T16:30"),
        first={"bot_sees_all": True},
        plan=True,
    )

    assert "lasagna: oven, oven 1, 425 °F" in played.everything()
    (preheat,) = played.reminders("preheat")
    assert "set its dial to 425 °F" in preheat["text"]
    assert {s["temp_f"] for s in played.plan["kitchen"]["steps"] if s["kind"] == "oven"} == {375.0}
    assert played.state["kitchen"]["ovens"][0]["off_f"] == -50
