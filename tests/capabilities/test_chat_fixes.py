"""What people write in passing is read for what it is."""

import pytest

from tests.capabilities.conftest import board, press, say, until

SPANISH = (
    say("ines", "/settings language es"),
    say("ines", "/potluck sábado 18 de septiembre 17:00, unas 24 personas, en la caseta del huerto"),
)


@pytest.mark.parametrize("words", ["flan para 20", "flan para unas 20 personas"])
async def test_bring_is_read_in_the_groups_language(play, words):
    played = await play(*SPANISH, say("ravi", f"/bring {words}"), opened=False)

    assert [(p["dish"], p["servings"]) for p in played.promises()] == [("flan", 20)]


async def test_bring_is_still_read_in_english(play):
    played = await play(say("ravi", "/bring slaw for 12 and 2 dozen rolls"))

    assert [p["dish"] for p in played.promises()] == ["slaw", "rolls"]


async def test_undo_says_what_was_taken_back(play):
    played = await play(say("ravi", "/bring lasagna for 12"), say("ravi", "/undo"))

    assert played.promises() == []
    assert played.last() == "Taken back: lasagna was promised."


async def test_a_dish_dropped_in_the_same_breath_is_not_still_on_the_list(play):
    played = await play(
        board("ravi", "we are coming, I'll bring lasagna for 12"),
        board("ravi", "sorry, I can't come after all, so no lasagna from me"),
    )

    assert (played.guest("ravi")["answer"], played.promises()) == ("no", [])
    assert "still on the list" not in played.last()


async def test_who_keeps_a_dish_on_the_list_and_says_no_is_told_so(play):
    played = await play(board("ravi", "I'll bring lasagna for 12"), board("ravi", "sorry, can't come after all"))

    assert "still on the list: lasagna" in played.everything()


async def test_who_said_no_is_neither_thanked_for_a_dish_nor_asked_to_collect_it(play):
    played = await play(
        say("ravi", "/bring lasagna for 12"),
        say("mei", "/bring slaw for 12"),
        press("ravi", "Can't"),
        until("2027-09-20T12:00"),
    )

    (thanks,), (back,) = played.reminders("collect"), played.reminders("return")
    assert "Mei" in thanks["text"]
    assert "slaw" in back["text"]
    assert not any(word in text["text"] for text in (thanks, back) for word in ("Ravi", "lasagna"))


async def test_the_board_offers_the_table_from_the_start_on_though_nobody_touched_it(play):
    played = await play(say("ravi", "/bring lasagna for 12"), until("2027-09-18T17:02"))

    shown = [r for r in played.rows if r["kind"] == "edit" and r["chat"] == "group"]
    assert "on the table now" in str(shown[-1].get("buttons"))


async def test_a_bot_added_again_beside_its_running_board_says_it_is_back(play):
    played = await play({"event": "bot-removed", "who": "ines"}, {"event": "bot-added", "who": "ines"})

    assert "I am back" in played.everything()
    assert not any(text.startswith("Hello!") for text in played.texts()[1:])
