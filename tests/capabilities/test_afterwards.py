"""After the potluck: what is left, whose dish it was, what it teaches, and the next one."""

import pytest

from tests.capabilities.conftest import press, say, until

BROUGHT = (
    say("ravi", "/bring lasagna for 12"),
    say("mei", "/bring apple pie for 10"),
    press("ravi", "Coming", on="board"),
    press("mei", "Coming", on="board"),
)
EVENING = until("2027-09-18T21:00")
MORNING = until("2027-09-19T11:00")


async def test_leftovers_say_until_when_each_dish_keeps_and_who_takes_it(play):
    # STORE-01 and LEFT-01: three to four days in the refrigerator; the shorter of the two.
    in_time = until("2027-09-18T18:00")
    played = await play(*BROUGHT, in_time, say("mei", "/leftovers"), press("mei", "lasagna: mine"))

    sheet = played.texts(kind="edit")[-1]
    assert "until Sep 21, 2027 in the refrigerator" in sheet
    assert "Mei" in sheet
    assert played.state["promises"][0]["takers"] == ["mei"]


async def test_a_dish_that_stood_out_for_two_hours_must_go_and_cannot_be_taken(play):
    # TIME-01: two hours.
    played = await play(
        *BROUGHT,
        until("2027-09-18T17:00"),
        say("ines", "/out lasagna"),
        until("2027-09-18T19:10"),
        say("mei", "/leftovers"),
    )

    assert "lasagna: out for 130 minutes – throw it out" in played.last()
    assert "lasagna: mine" not in str(played.rows[-1].get("buttons"))


async def test_a_taken_dish_can_be_left_again_by_the_same_press(play):
    played = await play(
        *BROUGHT, EVENING, say("mei", "/leftovers"), press("mei", "lasagna: mine"), press("mei", "lasagna: mine")
    )

    assert played.state["promises"][0]["takers"] == []


async def test_two_days_later_the_group_is_asked_kindly_for_dishes_and_a_press_settles_one(play):
    played = await play(
        *BROUGHT, until("2027-09-20T12:00"), press("ravi", "Dishes to return"), press("ravi", "lasagna: back")
    )

    (asked,) = played.reminders("return")
    assert "2027-09-20T10:30" in asked["at"]
    assert [p["returned"] for p in played.state["promises"]] == [True, False]


async def test_nobody_is_asked_when_every_dish_is_back(play):
    played = await play(
        *BROUGHT,
        EVENING,
        say("ines", "/dishes"),
        press("ines", "lasagna: back"),
        press("ines", "apple pie: back"),
        until("2027-09-20T12:00"),
    )

    assert played.reminders("return") == []


async def test_what_ran_out_is_told_in_two_taps_below_the_thanks_and_the_lesson_is_shown(play):
    played = await play(*BROUGHT, MORNING, press("ines", "What ran out?"), press("ines", "lasagna ran out"))

    assert "Next time: 15 % more of main dish" in played.texts(kind="edit")[-1]


async def test_only_a_host_tells_what_ran_out(play):
    played = await play(*BROUGHT, MORNING, press("ravi", "What ran out?"))

    assert "Inés" in played.answers[-1]


async def test_the_same_again_carries_people_place_and_lessons(play):
    played = await play(
        *BROUGHT,
        say("ines", "/parking behind the hall"),
        MORNING,
        press("ines", "What ran out?"),
        press("ines", "lasagna ran out"),
        say("ines", "/again Sat 16 Oct"),
    )

    assert played.state["starts_at"].startswith("2027-10-16T17:00")
    assert played.state["parking"] == "behind the hall"
    assert played.state["corrections"] == {"main": 1.15}
    assert [g["answer"] for g in played.state["guests"]] == ["yes", "none", "none"]


async def test_usual_dishes_are_proposed_and_one_press_brings_one_again(play):
    played = await play(
        *BROUGHT,
        say("tom", "/bring green salad for 12"),
        press("tom", "Coming", on="board"),
        MORNING,
        say("ines", "/again Sat 16 Oct"),
        press("tom", "Tom: green salad"),
    )

    assert [p["dish"] for p in played.promises("tom")] == ["green salad"]
    assert played.guest("tom")["answer"] == "yes"


async def test_the_main_goes_to_somebody_who_did_not_bring_it_last_time(play):
    played = await play(*BROUGHT, MORNING, say("ines", "/again Sat 16 Oct"), press("mei", "Mei: main dish"))

    assert [p["category"] for p in played.promises("mei")] == ["main"]
    assert "Ravi: a side dish this time?" in played.everything()


async def test_nobody_takes_anothers_proposal(play):
    played = await play(*BROUGHT, MORNING, say("ines", "/again Sat 16 Oct"), press("tom", "Mei: main dish"))

    assert played.promises() == []


async def test_lessons_stand_in_what_is_missing(play):
    played = await play(
        *BROUGHT,
        MORNING,
        press("ines", "What ran out?"),
        press("ines", "lasagna ran out"),
        say("ines", "/again Sat 16 Oct"),
        say("mei", "/missing"),
    )

    assert "main dish: 15 % more than usual, learned from your own potlucks" in played.last()


async def test_a_monthly_supper_proposes_the_same_weekday_of_the_next_month(play):
    # 18 September 2027 is the third Saturday; the third Saturday of October is the 16th (calendar).
    played = await play(*BROUGHT, say("ines", "/again monthly"), MORNING, press("ines", "Same again"))

    assert played.state["starts_at"].startswith("2027-10-16T17:00")


async def test_the_same_again_is_started_once(play):
    played = await play(
        *BROUGHT, say("ines", "/again monthly"), MORNING, press("ines", "Same again"), press("ines", "Same again")
    )

    assert "started already" in played.answers[-1]


async def test_a_no_show_is_remembered_and_the_odds_of_the_next_one_fall(play):
    played = await play(
        *BROUGHT,
        until("2027-09-18T17:30"),
        say("ines", "/trouble Ravi didn't come"),
        MORNING,
        say("ines", "/potluck Sat 16 Oct 5pm, about 24 people"),
    )

    told = {(h["guest"], h["said"], h["came"]) for h in played.state["history"]}
    assert ("ravi", "yes", False) in told
    assert ("mei", "yes", True) in told


@pytest.mark.parametrize("who", ["ravi", "mei"])
async def test_the_way_in_is_told_privately_to_those_who_come(play, who):
    private = {"in": "private"}
    played = await play(
        say("ines", "/start", **private),
        say("ines", "/door side gate, code 4711", **private),
        say(who, "/start", **private),
        press("ravi", "Coming", on="board"),
        say(who, "/door"),
    )

    assert ("4711" in "\n".join(played.texts(who))) == (who == "ravi")
    assert "4711" not in "\n".join(played.texts("group"))


async def test_the_way_in_is_not_taken_where_everybody_reads_it(play):
    played = await play(say("ines", "/door code 4711"))

    assert played.state["door_code"] == ""
    assert "private" in played.last()


async def test_a_hosts_location_in_private_is_the_pin_and_everybody_gets_the_map(play):
    played = await play(
        say("ines", "/start", **{"in": "private"}),
        {"from": "ines", "send": "location", "in": "private"},
        say("ravi", "/pin"),
    )

    assert played.state["pin"] == [41.8781, -87.6298]
    assert "(location 41.8781, -87.6298)" in played.last()


async def test_the_hosts_words_about_the_weather_set_the_clock_of_food_outdoors(play):
    # TIME-02: one hour at 90 °F and above.
    played = await play(say("ines", "/where outdoors"), say("ines", "/weather scorching, 95 °F"))

    assert played.state["outdoor_temp_f"] == 95
    assert "one hour" in played.last()


async def test_the_table_says_whose_dish_it_is_what_it_contains_and_what_it_is_served_with(play):
    played = await play(*BROUGHT, say("mei", "/contains apple pie: flour, butter, apples"), say("tom", "/table"))

    said = played.last()
    assert "apple pie (Mei)" in said
    assert "milk and wheat, says the cook" in said
    assert "1 × spatula" in said
    assert "trivet" in said


@pytest.mark.parametrize(("thing", "words"), [("photo", "I can't see"), ("voice", "I can't listen"), ("sticker", None)])
async def test_what_is_no_text_gets_a_kind_sentence_in_private_and_silence_in_the_group(play, thing, words):
    private = await play({"from": "mei", "send": thing, "in": "private"})
    group = await play({"from": "mei", "send": thing})

    assert (words in private.last("mei")) if words else private.texts("mei") == []
    assert len(group.texts("group")) == len((await play()).texts("group"))
