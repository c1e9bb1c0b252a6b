"""Starting a potluck and changing it."""

from tests.capabilities.conftest import board, press, say, until


async def test_one_line_starts_a_potluck_with_its_date_size_and_setting(play):
    played = await play(say("ines", "/potluck Sat 18 Sep 5pm, about 24 people, outdoors"), opened=False)

    assert played.state["starts_at"] == "2027-09-18T17:00:00-05:00"
    assert (played.state["expected_people"], played.state["setting"]) == (24, "outdoor")
    assert played.state["host"] == "ines"


async def test_without_words_it_asks_one_thing_at_a_time(play):
    played = await play(
        say("ines", "/potluck"),
        say("ines", "Sat 18 Sep", reply="last"),
        say("ines", "5pm", reply="last"),
        say("ines", "about 30", reply="last"),
        say("ines", "the allotment hut", reply="last"),
        opened=False,
    )

    assert played.state["starts_at"] == "2027-09-18T17:00:00-05:00"
    assert (played.state["expected_people"], played.state["place"]) == (30, "the allotment hut")


async def test_a_past_date_is_refused_with_what_to_do(play):
    played = await play(say("ines", "/potluck 1 Sep 2027 5pm, 24 people"), opened=False)

    assert played.state is None
    assert "has passed" in played.last()


async def test_a_weekday_that_does_not_fit_its_date_is_asked_about(play):
    played = await play(say("ines", "/potluck Sun 18 Sep 2027 5pm"), opened=False)

    assert played.state is None
    assert "Saturday" in played.last()


async def test_29_february_of_a_common_year_is_refused(play):
    played = await play(say("ines", "/potluck 29 Feb 2027 5pm"), opened=False)

    assert played.state is None


async def test_absurd_sizes_are_refused(play):
    for size in ("0", "-4", "1000000"):
        played = await play(say("ines", f"/size {size}"))

        assert played.state["expected_people"] == 24
        assert "1 to 1000" in played.last()


async def test_the_board_is_pinned_and_holds_date_and_place(play):
    played = await play()

    assert "Sat, Sep 18, 5:00 PM" in played.board
    assert "the allotment hut" in played.board


async def test_a_new_date_moves_the_board_and_the_reminders(play):
    played = await play(say("ines", "/when Sun 19 Sep 4pm"), until("2027-09-19T17:00"))

    assert "Sun, Sep 19, 4:00 PM" in played.board
    assert [r["at"][:16] for r in played.reminders("start")] == ["2027-09-19T16:00"]


async def test_a_new_hour_alone_keeps_the_day(play):
    played = await play(say("ines", "/when 6:30pm"))

    assert played.state["starts_at"] == "2027-09-18T18:30:00-05:00"


async def test_a_guest_may_not_change_the_date(play):
    played = await play(say("ravi", "/when Sun 19 Sep 4pm"))

    assert played.state["starts_at"] == "2027-09-18T17:00:00-05:00"
    assert "Inés" in played.last()


async def test_a_group_administrator_may_step_in(play):
    played = await play(say("ravi", "/when Sun 19 Sep 4pm"), admins=("ravi",))

    assert played.state["starts_at"] == "2027-09-19T16:00:00-05:00"


async def test_cancelling_asks_first_and_then_stops_everything(play):
    played = await play(
        say("ines", "/cancel"), press("ines", "Yes, call it off"), until("2027-09-19T12:00"), press("ravi", "Undo")
    )

    assert played.state["stage"] == "cancelled"
    assert "Cancelled" in played.board
    assert not [r for r in played.rows if r.get("reminder")]


async def test_a_cancel_question_answered_with_no_changes_nothing(play):
    played = await play(say("ines", "/cancel"), press("ines", "No, keep it"))

    assert played.state["stage"] == "planned"


async def test_only_who_was_asked_may_confirm_the_cancelling(play):
    played = await play(say("ines", "/cancel"), press("ravi", "Yes, call it off"))

    assert played.state["stage"] == "planned"


async def test_a_cohost_may_change_what_a_host_may(play):
    played = await play(press("ravi", "Coming"), say("ines", "/cohost Ravi"), say("ravi", "/where the barn"))

    assert played.state["cohosts"] == ["ravi"]
    assert played.state["place"] == "the barn"


async def test_a_host_who_leaves_hands_over(play):
    played = await play(press("ravi", "Coming"), {"event": "left", "who": "ines"})

    assert played.state["host"] == "ravi"
    assert "Ravi is the host now" in played.last()


async def test_a_second_potluck_becomes_the_current_one_and_the_first_can_be_chosen_again(play):
    played = await play(
        say("ines", "/potluck Sat 2 Oct 1pm, 10 people, at the pond"),
        say("ines", "/potlucks"),
        press("ines", "Sep 18", on="last"),
        say("ravi", "/bring slaw for 12"),
    )

    assert played.state["starts_at"].startswith("2027-09-18")
    assert [p["dish"] for p in played.promises("ravi")] == ["slaw"]


async def test_every_refusal_is_one_sentence(play):
    played = await play(
        say("ravi", "/when yesterday 5pm"),
        say("ravi", "/size lots"),
        say("ravi", "/drop"),
        say("ravi", "/give slaw to Nobody"),
    )

    for text in played.texts()[-4:]:
        assert "\n" not in text
        assert len(text) < 220


async def test_very_long_and_odd_texts_change_nothing(play):
    played = await play(
        say("ines", "/where " + "x" * 3000), board("ravi", "🎉" * 900), say("ines", "/title <b>Bold</b> & co")
    )

    assert played.state["place"] == "the allotment hut"
    assert played.state["title"] == "<b>Bold</b> & co"
    assert "<b>Bold</b> & co" in played.board


async def test_a_group_that_becomes_a_supergroup_keeps_its_potluck(play):
    played = await play(press("ravi", "Coming"), {"event": "upgraded"}, say("ravi", "/bring slaw for 12"))

    assert [p["dish"] for p in played.promises("ravi")] == ["slaw"]
    assert "slaw" in played.board


async def test_the_opening_line_says_what_there_is_to_cook_with(play):
    played = await play(
        say("ines", "/potluck Sat 18 Sep 6pm, 30 people, one oven, two slow cookers, at the mill"), opened=False
    )

    kitchen = played.state["kitchen"]
    assert (len(kitchen["ovens"]), len(kitchen["slow_cookers"]), played.state["place"]) == (1, 2, "the mill")


async def test_the_kitchen_is_read_in_the_opening_line_in_spanish(play):
    played = await play(
        say("ines", "/settings language es"),
        say("ines", "/potluck sábado 18 sep a las 18, 30 personas, un horno y dos ollas lentas, en la sala"),
        opened=False,
    )

    assert (len(played.state["kitchen"]["ovens"]), len(played.state["kitchen"]["slow_cookers"])) == (1, 2)


async def test_whoever_wrote_may_be_made_cohost_by_a_reply_without_having_answered(play):
    played = await play(say("mei", "hello all"), say("ines", "/cohost", reply=1))

    assert "mei" in played.state["cohosts"]
