"""Whoever left the group, or never was in it, changes nothing and learns nothing from outside."""

from tests.capabilities.conftest import press, say


def private(who, text, **more):
    return say(who, text, **{"in": "private"}, **more)


async def test_whoever_left_the_group_brings_nothing_from_their_private_chat(play):
    played = await play(
        press("ravi", "Coming", on="board"),
        private("ravi", "/start"),
        {"event": "left", "who": "ravi"},
        private("ravi", "/bring slaw for 12"),
    )

    assert played.promises("ravi") == []
    assert played.guest("ravi")["answer"] == "no"


async def test_the_buttons_in_the_private_chat_of_somebody_who_left_do_nothing(play):
    played = await play(
        press("ravi", "Coming", on="board"),
        private("ravi", "/start"),
        private("ravi", "/bring"),
        {"event": "left", "who": "ravi"},
        {"from": "ravi", "in": "private", "press": "main dish"},
    )

    assert played.promises("ravi") == []
    assert "for people of that group" in played.answers[-1]


async def test_whoever_comes_back_may_bring_again(play):
    played = await play(
        press("ravi", "Coming", on="board"),
        private("ravi", "/start"),
        {"event": "left", "who": "ravi"},
        {"event": "joined", "who": "ravi"},
        private("ravi", "/bring slaw for 12"),
    )

    assert [p["dish"] for p in played.promises("ravi")] == ["slaw"]


async def test_an_edit_from_the_private_chat_of_somebody_who_left_changes_nothing(play):
    played = await play(
        private("ravi", "/start"),
        press("ravi", "Coming", on="board"),
        private("ravi", "/bring slaw for 12"),
        {"event": "left", "who": "ravi"},
        {"from": "ravi", "in": "private", "edit": "last", "say": "/bring chili for 20"},
    )

    assert played.promises("ravi") == []


async def test_a_command_in_private_of_somebody_with_no_potluck_tells_nothing_of_anybodys(play):
    played = await play(press("ravi", "Coming", on="board"), private("mei", "/start"), private("mei", "/list"))

    assert "Ravi" not in played.last("mei")
    assert "allotment" not in played.last("mei")
