"""The day itself in the chat: clocks, cautions, who says so, a cook who is ill."""

import pytest

from tests.capabilities.conftest import board, press, say, until

SLAW = say("ravi", "/bring slaw for 12")
AT_FIVE = until("2027-09-18T17:05")


async def test_it_is_on_the_table_now_starts_a_clock_and_the_bot_warns_before_its_end(play):
    played = await play(SLAW, AT_FIVE, say("ravi", "/out"), press("ravi", "slaw", on="last"), until("2027-09-18T20:00"))

    # TIME-01: two hours; told a quarter of an hour before.
    assert "by 7:05 PM" in played.everything()
    assert [r["at"][:16] for r in played.reminders("out-limit")] == ["2027-09-18T18:50"]
    assert "throw it out" in played.reminders("out-limit")[0]["text"]


async def test_the_button_stands_on_the_board_from_shortly_before_the_start(play):
    early = await play(SLAW, until("2027-09-18T12:00"), say("mei", "/bring bread"))
    late = await play(SLAW, until("2027-09-18T16:45"), say("mei", "/bring bread"), press("ravi", "on the table now"))

    def labels(played) -> list[str]:
        newest = [r for r in played.rows if r.get("buttons") and r["kind"] in ("message", "edit")]
        return [b["label"] for r in newest for row in r["buttons"] for b in row]

    assert "It's on the table now" not in labels(early)
    assert "It's on the table now" in labels(late)
    assert "Which dish is on the table" in late.last()


async def test_everything_on_the_table_starts_every_clock_that_there_is(play):
    played = await play(
        SLAW, say("mei", "/bring potato salad for 8"), say("tom", "/bring bread rolls"), AT_FIVE,
        say("ines", "/out"), press("ines", "Everything", on="last"), say("ines", "/out"),
    )  # fmt: skip

    assert {p["dish"] for p in played.promises() if p["out_since"]} == {"slaw", "potato salad"}
    assert "Everything is on the table now" not in str(played.rows[-1].get("buttons"))


@pytest.mark.parametrize(
    ("words", "minutes"),
    [("slaw, 40 minutes in the car", 40), ("slaw 20 min on the counter", 20), ("slaw: 1 hour already", 60)],
)
async def test_minutes_in_the_car_and_on_the_counter_count(play, words: str, minutes: int):
    played = await play(SLAW, AT_FIVE, say("ravi", f"/out {words}"))

    assert played.promises()[0]["out_min"] == minutes
    hour, minute = divmod(17 * 60 + 5 + 120 - minutes, 60)
    assert f"by {hour - 12}:{minute:02} PM" in played.last()


async def test_the_planned_minutes_off_heat_count_once_it_is_on_the_table(play):
    played = await play(
        say("mei", "/bring lasagna for 12"), say("mei", "/heat lasagna: 40 minutes at 375, then rest 20 minutes"),
        until("2027-09-18T17:00"), say("mei", "/out lasagna"),
    )  # fmt: skip

    # Out of the oven at 16:40, so two hours end at 18:40.
    assert "by 6:40 PM" in played.last()


async def test_off_the_table_and_on_again_adds_up(play):
    played = await play(
        SLAW, AT_FIVE, say("ravi", "/out slaw"), until("2027-09-18T17:45"), press("ravi", "Cold or hot again"),
        until("2027-09-18T18:30"), say("ravi", "/out slaw"),
    )  # fmt: skip

    # 40 minutes are spent, so 80 are left from 18:30.
    assert "by 7:50 PM" in played.last()


async def test_a_dish_whose_time_was_over_before_is_to_be_thrown_out(play):
    played = await play(SLAW, AT_FIVE, say("ravi", "/out slaw, 3 hours in the car"))

    assert "Throw it out" in played.last()


async def test_what_comes_off_the_table_too_late_is_not_kept(play):
    played = await play(
        SLAW, AT_FIVE, say("ravi", "/out slaw"), until("2027-09-18T19:20"), press("ravi", "Cold or hot again")
    )

    assert "Throw it out" in played.last()


async def test_outdoors_in_summer_the_unknown_heat_counts_as_hot(play):
    played = await play(
        say("ines", "/potluck Sat 18 Sep 5pm, 12 people, outdoors in the garden"), SLAW, AT_FIVE,
        say("ravi", "/out slaw"), opened=False,
    )  # fmt: skip

    # TIME-02: one hour; HEAT-01 asks to assume heat where nobody knows.
    assert "by 6:05 PM" in played.last()


async def test_a_slow_sentence_shows_its_source_on_demand_by_button_by_name_and_by_reply(play):
    played = await play(
        SLAW, AT_FIVE, say("ravi", "/out slaw"), press("mei", "Who says so", on="last"), say("mei", "/why slaw"),
        until("2027-09-18T18:52"), say("mei", "/why", reply="last"),
    )  # fmt: skip

    reasons = [t for t in played.texts() if "Who says so" in t]
    assert len(reasons) == 3
    assert all("TIME-01" in t and "2 h" in t and "FDA" in t for t in reasons)


async def test_a_rule_is_explained_by_its_id_and_a_topic_by_its_word(play):
    by_id = await play(SLAW, say("mei", "/why THAW-03"))
    by_topic = await play(SLAW, say("mei", "/why leftovers"))

    assert "24 h per 4 lb" in by_id.last()
    assert "LEFT-03" in by_topic.last()


async def test_what_no_rule_is_about_is_said_with_what_to_write(play):
    played = await play(say("mei", "/why the moon"))

    assert "/why" in played.last()


async def test_every_caution_in_the_list_names_its_source(play):
    played = await play(SLAW, say("mei", "/bring lasagna for 9"), say("mei", "/safety"))

    rows = played.last().splitlines()[1:]
    assert len(rows) > 5
    assert all(row.rstrip().endswith(")") for row in rows)
    assert "safe to eat" not in played.last()


async def test_help_tells_of_the_clocks_and_of_the_sources(play):
    played = await play(say("tom", "/help"))

    assert "/out" in played.last()
    assert "/why" in played.last()


async def test_a_long_list_of_cautions_fits_into_one_message_and_says_how_many_are_left(play):
    dishes = [say("mei", f"/bring chicken casserole number {n} for 9") for n in range(12)]
    played = await play(*dishes, say("mei", "/safety"))

    assert len(played.last()) < 4096
    assert "more; /why" in played.last()


async def test_a_cook_who_is_ill_hears_of_the_two_days_and_of_their_dishes(play):
    played = await play(SLAW, board("ravi", "I was throwing up last night, sorry"))

    # ILL-01: two days after the last symptom, reckoned from now.
    assert "Sun, Sep 12" in played.last()
    assert "slaw" in played.last()
    assert len(played.promises()) == 1


async def test_talk_of_illness_that_is_nobodys_own_is_left_alone(play):
    played = await play(SLAW, board("ravi", "let's avoid food poisoning this time"))

    assert "Get well" not in played.everything()
