"""The kitchen in the chat: heat in words, what does not fit and its way out, the refrigerator, the usual times."""

import pytest

from tests.capabilities.conftest import board, press, say, until


def heat(played, number: int = 0) -> list[tuple]:
    return [(s["kind"], s["minutes"], s["temp_f"], s["at"]) for s in played.promises()[number]["heat"]]


async def test_a_level_alone_is_a_slow_cookers(play):
    played = await play(board("ravi", "bringing chili for 12, 6 hours on low"))

    assert heat(played) == [("slow-cooker-low", 360, None, "venue")]


async def test_a_reply_of_nothing_but_cooking_is_about_the_dish_just_noted(play):
    played = await play(board("mei", "bringing a lasagna for 12"), say("mei", "needs 40 minutes at 375", reply="last"))

    assert heat(played) == [("oven", 40, 375, "venue")]
    assert "lasagna: oven 40 min at 375 °F" in played.last()


async def test_the_dish_is_found_by_its_name_among_several(play):
    played = await play(
        say("mei", "/bring lasagna for 12"), say("mei", "/bring peach pie for 8"),
        board("mei", "the pie needs 50 minutes at 350, then 20 minutes rest"),
    )  # fmt: skip

    assert played.promises()[0]["heat"] is None
    assert [s[:2] for s in heat(played, 1)] == [("oven", 50), ("rest", 20)]


async def test_which_dish_is_asked_where_none_is_named(play):
    played = await play(
        say("mei", "/bring lasagna for 12"), say("mei", "/bring peach pie for 8"),
        board("mei", "needs 50 minutes at 350"),
    )  # fmt: skip

    assert "lasagna" in played.last()
    assert "peach pie" in played.last()
    assert all(p["heat"] is None for p in played.promises())


async def test_nobody_corrects_somebody_elses_dish_but_a_host(play):
    by_tom = await play(say("mei", "/bring lasagna for 12"), board("tom", "the lasagna needs 50 minutes at 350"))
    by_ines = await play(say("mei", "/bring lasagna for 12"), board("ines", "the lasagna needs 50 minutes at 350"))

    assert by_tom.promises()[0]["heat"] is None
    assert heat(by_ines) == [("oven", 50, 350, "venue")]


async def test_words_to_somebody_else_are_not_read_as_cooking(play):
    played = await play(
        say("mei", "/bring lasagna for 12"), say("mei", "needs 40 minutes at 375"), first={"bot_sees_all": True}
    )

    assert played.promises()[0]["heat"] is None


async def test_a_cook_moves_the_heating_home_by_one_press_and_takes_it_back(play):
    lines = (say("mei", "/bring lasagna for 12"), say("mei", "/heat lasagna: 40 minutes at 375"))
    moved = await play(*lines, press("mei", "heated at home", on="last"))
    back = await play(*lines, press("mei", "heated at home", on="last"), say("mei", "/undo"))

    assert heat(moved) == [("oven", 40, 375, "home")]
    assert heat(back) == [("oven", 40, 375, "venue")]


async def test_what_does_not_fit_is_said_when_it_is_noted_and_mended_by_a_press(play):
    played = await play(
        say("ines", "/kitchen 1 oven, no slow cookers"), say("ravi", "/bring chili for 12"),
        say("ravi", "/heat chili: 6 hours on low"), press("ines", "One more slow cooker", on="last"),
        say("ines", "/kitchen"), plan=True,
    )  # fmt: skip

    assert "there is none. → Borrow a slow cooker." in played.everything()
    assert len(played.state["kitchen"]["slow_cookers"]) == 1
    assert played.plan["kitchen"]["conflicts"] == []
    assert "⚠" not in played.last()


async def test_a_way_out_that_changes_the_hour_is_the_hosts_to_take(play):
    lines = (
        say("ravi", "/bring roast beef for 12"), say("ravi", "/arrive 3pm"),
        say("ravi", "/heat roast beef: 2 hours 10 minutes at 325"),
    )  # fmt: skip
    played = await play(*lines, press("ravi", "comes earlier", on="last"), plan=True)
    late = await play(*lines, say("ines", "/kitchen"), press("mei", "comes earlier", on="last"))

    assert played.plan["kitchen"]["conflicts"] == []
    assert played.promises()[0]["arrives_at"][11:16] < "15:00"
    assert late.promises()[0]["arrives_at"][11:16] == "15:00"


async def test_a_way_out_pressed_twice_is_taken_once(play):
    played = await play(
        say("ines", "/kitchen no slow cookers"), say("ravi", "/bring chili for 12"),
        say("ravi", "/heat chili: 6 hours on low"), say("ines", "/kitchen"),
        press("ines", "One more slow cooker", on="last"), press("ines", "One more slow cooker"),
    )  # fmt: skip

    assert len(played.state["kitchen"]["slow_cookers"]) == 1
    assert played.answers[-1] == "That is no longer needed."


async def test_usual_times_without_a_source_are_asked_about_and_taken_over_by_a_press(play):
    asked = await play(say("mei", "/bring lasagna for 12"), say("ines", "/kitchen"), plan=True)
    taken = await play(
        say("mei", "/bring lasagna for 12"), say("ines", "/kitchen"), press("mei", "heated here", on="last")
    )

    assert asked.plan["kitchen"]["steps"] == []
    assert "common practice, no source" in asked.last()
    assert "lasagna: oven 60 min at 375 °F" in asked.last()
    assert heat(taken)[0] == ("oven", 60, 375, "venue")


async def test_a_usual_time_with_a_source_is_planned_and_its_source_is_named(play):
    played = await play(say("ines", "/bring roast turkey for 20"), say("ines", "/kitchen"))

    assert "roast turkey: oven, oven 1, 325 °F" in played.last()
    assert "Usual time for roast turkey (" in played.last()


async def test_a_refrigerator_that_is_too_small_is_a_warning_with_a_way_out(play):
    played = await play(
        say("ines", "/kitchen fridge 15 l"), say("ines", "/bring roast turkey for 20"),
        say("ines", "/frozen roast turkey 14 lb"), say("ines", "/kitchen"), plan=True,
    )  # fmt: skip

    (conflict,) = played.plan["kitchen"]["conflicts"]
    assert conflict["rule"] == "fridge-full"
    assert played.plan["kitchen"]["status"] != "impossible"
    assert conflict["fix"]["text"] in played.last()


@pytest.mark.parametrize("words", ["/kitchen one sauna", "/heat lasagna: soon", "/heat lasagna"])
async def test_what_cannot_be_read_changes_nothing_and_says_so(play, words: str):
    played = await play(say("ines", "/bring lasagna for 12"), say("ines", words))

    assert played.promises()[0]["heat"] is None
    assert played.last() != ""
    assert "Noted" not in played.last()


async def test_at_a_metric_table_a_bare_figure_is_celsius(play):
    played = await play(
        say("ines", "/settings units metric"), say("ines", "/bring lasagna for 12"),
        say("ines", "/heat lasagna: 40 minutes at 220"),
    )  # fmt: skip

    assert heat(played) == [("oven", 40, 428, "venue")]


async def test_a_slow_cooker_is_started_at_seven_in_the_morning(play):
    played = await play(
        say("ines", "/kitchen 1 slow cooker"), board("ines", "bringing pot roast for 12, 10 hours on low"),
        until("2027-09-18T17:00"),
    )  # fmt: skip

    assert [r["at"][:16] for r in played.reminders("slow-cooker")] == ["2027-09-18T07:00"]


async def test_what_was_told_to_the_cook_is_told_again_when_the_hour_moves_and_not_for_a_few_minutes(play):
    lines = (
        say("ines", "/bring lasagna for 12"), say("ines", "/heat lasagna: 40 minutes at 375"),
        until("2027-09-18T16:10"),
    )  # fmt: skip
    far = await play(*lines, say("ines", "/when 6:30pm"), until("2027-09-18T18:30"))
    near = await play(*lines, say("ines", "/when 5:20pm"), until("2027-09-18T17:20"))

    assert [r["at"][11:13] for r in far.reminders("preheat")] == ["16", "17"]
    assert [r["at"][11:16] for r in near.reminders("preheat")] == ["16:05"]


async def test_a_bare_figure_that_can_only_be_celsius_is_told_as_read(play):
    played = await play(say("ravi", "/bring lasagna for 12"), board("ravi", "my lasagna needs 40 min at 190"))

    assert "190 as °C" in played.last()


async def test_a_slow_cooker_a_guest_offers_counts_once_the_host_says_so(play):
    offered = await play(say("ravi", "i have a spare crockpot"), first={"bot_sees_all": True})
    played = await play(
        say("ravi", "i have a spare crockpot"), press("ines", "Count on it"), first={"bot_sees_all": True}
    )

    assert len(played.state["kitchen"]["slow_cookers"]) == len(offered.state["kitchen"]["slow_cookers"]) + 1
    assert offered.promises("ravi") == []


async def test_an_oven_lent_to_the_host_is_in_the_plan_at_once(play):
    played = await play(say("ines", "we can use the neighbors oven too"), first={"bot_sees_all": True})

    assert len(played.state["kitchen"]["ovens"]) == 2


async def test_when_a_dish_goes_in_is_still_known_after_the_bot_was_down(play):
    played = await play(
        say("ravi", "/bring lasagna for 12"),
        say("ravi", "/heat lasagna: oven 50 min at 375"),
        {"down_for": "PT10M"},
        board("ravi", "so when does my lasagna go in then?"),
    )

    assert "lasagna: oven" in played.last()
