"""One's own data: a copy of it and its removal."""

import json

from tests.capabilities.conftest import press, say

PRIVATE = {"in": "private"}


async def test_a_copy_of_ones_own_data_comes_in_private_and_holds_nobody_elses(play, tmp_path):
    played = await play(
        say("ravi", "/start", **PRIVATE),
        press("ravi", "Coming", on="board"),
        say("ravi", "/bring slaw for 12"),
        say("mei", "/bring apple pie for 10"),
        say("ravi", "/mydata"),
    )

    (sent,) = [r for r in played.rows if r["kind"] == "document"]
    (found,) = tmp_path.rglob(sent["file"].split("/")[-1])
    text = found.read_text("utf-8")
    assert sent["chat"] == "ravi"
    assert [p["dish"] for p in json.loads(text)["potlucks"][0]["promises"]] == ["slaw"]
    assert "Mei" not in text


async def test_who_has_no_private_chat_is_shown_the_door(play):
    played = await play(say("ravi", "/bring slaw for 12"), say("ravi", "/mydata"))

    assert "in private only" in played.last()
    assert [r for r in played.rows if r["kind"] == "document"] == []
