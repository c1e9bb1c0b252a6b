"""Whatever people send gets a sensible answer or a sensible silence."""

from tests.capabilities.conftest import PEOPLE, board, say


async def test_a_photo_with_words_is_read_by_its_words_and_one_without_says_nothing_in_the_group(play):
    played = await play(
        {"from": "ravi", "send": "photo", "say": "my lasagna for 12, I'm in", "reply": "board"},
        {"from": "mei", "send": "photo"},
        {"from": "mei", "send": "location"},
        first={"bot_sees_all": True},
    )

    assert [p["dish"] for p in played.promises("ravi")] == ["lasagna"]
    assert "lasagna for 12" in played.last()


async def test_words_below_a_photo_in_private_without_a_potluck_are_told_where_the_door_is(play):
    played = await play({"from": "mei", "send": "photo", "say": "lemonade for 20", "in": "private"}, opened=False)

    assert "press a button on the board in your group" in played.last("mei")


async def test_a_hosts_location_below_the_board_is_the_pin_and_a_guests_is_not(play):
    played = await play(
        {"from": "mei", "send": "location", "reply": "board"}, {"from": "ines", "send": "location", "reply": "board"}
    )

    assert played.state["pin"] == [41.8781, -87.6298]
    assert len([t for t in played.texts() if "/pin shows it" in t]) == 1


async def test_whoever_blocked_left_and_came_back_is_heard_again(play):
    played = await play(
        board("ravi", "slaw for 12"),
        {"event": "blocked", "who": "ravi"},
        {"event": "left", "who": "ravi"},
        {"event": "joined", "who": "ravi"},
        board("ravi", "I'm coming after all, bringing slaw for 10"),
    )

    assert [(p["dish"], p["servings"]) for p in played.promises("ravi")] == [("slaw", 10)]
    assert played.guest("ravi")["answer"] == "yes"


async def test_a_group_is_greeted_in_the_language_of_whoever_adds_the_bot(play):
    people = [{**one, "language": "es"} if one["id"] == "ines" else one for one in PEOPLE]
    played = await play(
        {"event": "bot-added", "who": "ines"}, say("ines", "/potluck sábado 18 a las 17:00"),
        opened=False, people=people,
    )  # fmt: skip

    assert "¡Hola!" in played.texts()[0] or "Hola" in played.texts()[0]
    assert "En marcha" in played.everything()
