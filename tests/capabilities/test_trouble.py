"""The platform's faults, odd media and odd places."""

from tests.capabilities.conftest import board, press, say


async def test_a_flood_answer_delays_but_loses_nothing(play):
    played = await play(
        {"fault": "429", "retry_after": 3, "count": 2}, press("ravi", "Coming", on="board"), say("ravi", "/list")
    )

    assert played.guest("ravi")["answer"] == "yes"
    assert "Ravi" in played.last()


async def test_server_errors_are_waited_out(play):
    played = await play({"fault": "500", "count": 2, "method": "sendMessage"}, say("ravi", "/bring slaw for 12"))

    assert "slaw" in played.board
    assert len([t for t in played.texts() if t.startswith("Noted: slaw")]) == 1


async def test_a_lost_answer_does_not_double_a_dish(play):
    played = await play(
        {"fault": "timeout", "stored": True, "method": "sendMessage"}, say("ravi", "/bring slaw for 12")
    )

    assert len(played.promises("ravi")) == 1


async def test_what_was_said_while_the_bot_was_down_is_read_afterwards(play):
    played = await play({"down": True}, press("ravi", "Coming", on="board"), board("mei", "2 of us"), {"down": False})

    assert played.guest("ravi")["answer"] == "yes"
    assert played.guest("mei")["adults"] == 2


async def test_pictures_stickers_voices_and_places_are_met_with_silence(play):
    before = await play()
    played = await play(
        *({"from": "ravi", "send": kind} for kind in ("photo", "sticker", "voice", "location")),
        *({"from": "ravi", "send": kind, "reply": "board"} for kind in ("sticker", "location")),
    )

    assert len(played.texts()) == len(before.texts())


async def test_a_removed_bot_keeps_what_was_promised_for_when_it_returns(play):
    played = await play(
        say("ravi", "/bring slaw for 12"),
        {"event": "bot-removed", "who": "ines"},
        {"event": "bot-added", "who": "ines"},
        say("ravi", "/list"),
    )

    assert "slaw" in played.last()


async def test_commands_for_other_bots_are_left_alone(play):
    before = await play()
    played = await play(say("ravi", "/dice 6"), say("ravi", "/list@somebody_else_bot"))

    assert len(played.texts()) == len(before.texts())


async def test_an_unknown_command_in_private_is_refused_kindly(play):
    played = await play(say("ravi", "/dance", **{"in": "private"}))

    assert "/help" in played.last("ravi")


async def test_a_topic_keeps_its_own_potluck(play):
    played = await play(
        say("ines", "/potluck Sat 18 Sep 5pm, 12 people, at the hut", **{"in": "topic:Food"}),
        say("ravi", "/bring slaw for 12", **{"in": "topic:Food"}),
        opened=False,
    )

    assert [p["dish"] for p in played.promises("ravi")] == ["slaw"]


async def test_right_to_left_names_do_not_turn_the_board_around(play):
    people = [{"id": "ines", "name": "Inés"}, {"id": "noa", "name": "נועה"}]
    played = await play(press("noa", "Coming", on="board"), people=people)

    assert "\u2068נועה\u2069" in played.board


async def test_without_a_potluck_every_command_says_how_to_start_one(play):
    for command in ("/bring slaw", "/missing", "/list", "/bar", "/undo", "/drop slaw"):
        played = await play(say("ravi", command), opened=False)

        assert "/potluck" in played.last()


async def test_help_differs_between_group_and_private(play):
    played = await play(say("ravi", "/help"), say("ravi", "/help", **{"in": "private"}))

    assert played.last() != played.last("ravi")
