"""Who brings what, the bar, what is missing, and one's own list."""

from tests.capabilities.conftest import board, press, say


async def test_a_dish_comes_with_at_most_three_taps(play):
    played = await play(
        press("mei", "Bring", on="board"), press("mei", "main dish", on="last"), press("mei", "a", on="last")
    )

    assert len(played.promises("mei")) == 1
    assert played.promises("mei")[0]["category"] == "main"
    assert played.promises("mei")[0]["servings"] > 0


async def test_the_offer_names_what_is_needed_first_with_an_amount(play):
    played = await play(press("mei", "Bring", on="board"))

    offer = [r for r in played.rows if r["kind"] == "message" and r.get("buttons")][-1]
    assert "main dish for about" in offer["buttons"][0][0]["label"]


async def test_somebody_elses_offer_can_not_be_pressed(play):
    played = await play(press("mei", "Bring", on="board"), press("ravi", "main dish", on="last"))

    assert "somebody else’s" in played.answers[-1]


async def test_bring_takes_dish_and_servings_in_one_line(play):
    played = await play(say("ravi", "/bring slaw for 12"))

    assert [(p["dish"], p["servings"], p["category"]) for p in played.promises("ravi")] == [("slaw", 12, "salad")]
    assert "slaw for 12" in played.board


async def test_bring_without_words_offers_what_helps_most(play):
    played = await play(say("ravi", "/bring"))

    assert played.promises("ravi") == []
    assert "would help most" in played.last()


async def test_supplies_can_be_brought(play):
    played = await play(say("ravi", "/bring folding chairs"), say("mei", "/bring paper plates and napkins"))

    assert {p["category"] for p in played.promises()} == {"supplies"}


async def test_a_dish_nobody_knows_is_asked_about_and_not_guessed(play):
    asked = await play(say("ravi", "/bring granny's secret for 10"))
    told = await play(say("ravi", "/bring granny's secret for 10"), press("ravi", "dessert", on="last"))

    assert asked.promises() == []
    assert [(p["dish"], p["category"], p["servings"]) for p in told.promises()] == [("granny's secret", "dessert", 10)]


async def test_absurd_amounts_are_refused(play):
    for words in ("/bring slaw for -3", "/bring slaw for 0", "/bring slaw for 1000000"):
        played = await play(say("ravi", words))

        assert [p for p in played.promises() if not p["servings"] or not 0 < p["servings"] <= 1000] == []


async def test_drop_takes_it_off_the_list(play):
    played = await play(say("ravi", "/bring slaw for 12"), say("ravi", "/drop slaw"))

    assert played.promises() == []
    assert "slaw" not in played.board


async def test_nobody_drops_somebody_elses_dish(play):
    played = await play(say("ravi", "/bring slaw for 12"), say("mei", "/drop slaw"))

    assert len(played.promises("ravi")) == 1


async def test_the_host_may_drop_a_dish_and_its_cook_is_told(play):
    played = await play(say("ravi", "/bring slaw for 12"), say("ines", "/drop slaw"))

    assert played.promises() == []
    assert "took your slaw off" in played.everything()


async def test_a_promise_is_handed_to_somebody_else_who_is_told(play):
    played = await play(
        press("mei", "Coming", on="board"), say("ravi", "/bring slaw for 12"), say("ravi", "/give slaw to Mei")
    )

    assert [p["dish"] for p in played.promises("mei")] == ["slaw"]
    assert "handed slaw to you" in played.everything()


async def test_a_promise_is_shared_by_two(play):
    played = await play(
        press("mei", "Coming", on="board"), say("ravi", "/bring slaw for 12"), say("ravi", "/share slaw with Mei")
    )

    assert played.promises("ravi")[0]["sharers"] == ["mei"]
    assert "Ravi and Mei" in played.board


async def test_when_one_of_two_drops_out_the_other_still_brings_it(play):
    played = await play(
        press("mei", "Coming", on="board"),
        say("ravi", "/bring slaw for 12"),
        say("ravi", "/share slaw with Mei"),
        say("ravi", "/drop slaw"),
    )

    assert [p["dish"] for p in played.promises("mei")] == ["slaw"]


async def test_a_doubled_dish_is_pointed_out_and_kept(play):
    played = await play(say("ravi", "/bring slaw for 12"), say("mei", "/bring coleslaw for 8"))

    assert len(played.promises()) == 2
    assert "Ravi brings" in played.last()


async def test_missing_goes_down_by_what_is_promised(play):
    before = await play(say("ines", "/missing"), plan=True)
    after = await play(say("ravi", "/bring lasagna for 12"), say("ines", "/missing"), plan=True)

    def short(played):
        return next(r["short_servings"] for r in played.plan["menu"] if r["category"] == "main")

    assert short(before) - short(after) == 12
    assert f"{round(short(after))} more servings" in after.last()


async def test_more_guests_make_more_missing(play):
    few = await play(say("ines", "/size 12"), plan=True)
    many = await play(say("ines", "/size 60"), plan=True)

    for a, b in zip(few.plan["menu"], many.plan["menu"], strict=True):
        assert a["target_servings"] <= b["target_servings"]


async def test_the_bar_opens_a_combo_when_its_last_topping_is_taken(play):
    played = await play(
        say("ines", "/bar baked potato"), say("ravi", "/bar"), press("ravi", "butter", on="last"),
        press("mei", "chives", on="last"), plan=True,
    )  # fmt: skip

    possible = [c["name"] for c in played.plan["bar"]["combos"] if c["possible"]]
    assert possible
    assert possible[0] in played.answers[-1]
    assert possible[0] in played.board


async def test_the_bar_says_what_the_next_combo_needs(play):
    played = await play(say("ines", "/bar baked potato"), say("ravi", "/bar"))

    assert "still needs" in played.last()


async def test_a_taken_topping_is_refused_to_another_with_the_name_of_who_has_it(play):
    played = await play(
        say("ines", "/bar baked potato"), say("ravi", "/bar"), press("ravi", "butter", on="last"),
        press("mei", "butter", on="last"),
    )  # fmt: skip

    assert "Ravi already brings butter" in played.answers[-1]


async def test_a_topping_can_be_taken_in_words(play):
    played = await play(say("ines", "/bar baked potato"), board("ravi", "I'll bring sour cream for the bar"))

    assert {"name": "sour cream", "guest": "ravi"} in played.state["bar"]["toppings"]


async def test_only_hosts_open_a_bar(play):
    played = await play(say("ravi", "/bar taco"))

    assert played.state["bar"] is None


async def test_my_list_holds_answer_dishes_and_toppings(play):
    played = await play(
        say("ines", "/bar baked potato"), board("ravi", "3 of us, slaw for 12"), say("ravi", "/bar"),
        press("ravi", "butter", on="last"), say("ravi", "/list"),
    )  # fmt: skip

    for words in ("3 adults", "slaw for 12", "butter"):
        assert words in played.last()


async def test_needs_stand_in_ones_list_only_in_private(play):
    private = {"in": "private"}
    played = await play(
        press("mei", "Coming", on="board"), say("mei", "/start @link", **private),
        press("mei", "vegan", **private), say("mei", "/list", **private), say("mei", "/list"),
    )  # fmt: skip

    assert "vegan" in played.last("mei")
    assert "vegan" not in played.last()


async def test_html_in_a_dish_is_shown_as_typed(play):
    played = await play(say("ravi", "/bring <b>bold</b> & spicy slaw for 12"))

    assert "<b>bold</b> & spicy slaw" in played.board


async def test_the_hosts_ask_is_answered_with_one_press_and_becomes_a_promise(play):
    played = await play(
        press("mei", "Coming", on="board"), say("ines", "/asks"), press("ines", "Ask Mei"), press("mei", "Yes")
    )

    assert len(played.promises("mei")) == 1


async def test_a_no_to_an_ask_is_remembered_and_the_host_told(play):
    played = await play(
        press("mei", "Coming", on="board"), say("ines", "/asks"), press("ines", "Ask Mei"), press("mei", "No, sorry")
    )

    assert [d["guest"] for d in played.state["declined"]] == ["mei"]
    assert "here is who else could" in played.everything()


async def test_an_ask_can_only_be_answered_by_who_was_asked(play):
    played = await play(
        press("mei", "Coming", on="board"), say("ines", "/asks"), press("ines", "Ask Mei"), press("tom", "Yes")
    )

    assert played.promises() == []
