"""What people write in passing is read for what it is."""

import pytest

from tests.capabilities.conftest import say

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
