"""The board at arm's length: one screenful, and in plain words what a figure means."""

from bot.board import TALLEST
from tests.capabilities.conftest import board, say

DISHES = ("chili", "lasagna", "slaw", "corn bread", "apple pie", "lemonade", "guacamole", "green beans")


async def test_a_long_list_of_dishes_still_leaves_a_board_of_one_screenful(play):
    lines = [say("ravi", f"/bring {dish} number {n} for 6") for n in range(6) for dish in DISHES]

    played = await play(*lines)

    assert len(played.promises()) > 30
    assert played.board.count("\n") < TALLEST


async def test_a_short_list_is_named_in_full(play):
    played = await play(*(say("ravi", f"/bring {dish} for 6") for dish in DISHES))

    assert all(dish in played.board for dish in DISHES)


async def test_plates_alone_say_which_things_for_the_table_nobody_brings(play):
    played = await play(say("ravi", "/bring paper plates"))
    whole = await play(say("ravi", "/bring paper plates"), board("mei", "I'll bring cups, napkins and cutlery"))

    line = next(text for text in played.board.split("\n") if "nobody yet" in text)
    assert ("cups" in line, "napkins" in line, "cutlery" in line, "plates" in line) == (True, True, True, False)
    assert "nobody yet" not in whole.board
