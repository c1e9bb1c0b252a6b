"""Who comes: by button, in words, for others, and taken back."""

from tests.capabilities.conftest import board, press, say


async def test_each_answer_button_is_recorded_and_acknowledged(play):
    for label, answer in (("Coming", "yes"), ("Maybe", "maybe"), ("Can't", "no")):
        played = await play(press("ravi", label, on="board"))

        assert played.guest("ravi")["answer"] == answer
        assert len(played.answers) == 1


async def test_the_same_press_twice_counts_once(play):
    played = await play(press("ravi", "Coming", on="board"), press("ravi", "Coming", on="board"))

    assert [g["id"] for g in played.state["guests"]].count("ravi") == 1
    assert "already" in played.answers[-1]


async def test_a_party_is_told_in_words(play):
    played = await play(board("ravi", "3 of us, one vegetarian, slaw for 12"))

    ravi = played.guest("ravi")
    assert (ravi["answer"], ravi["adults"]) == ("yes", 3)
    assert [(n["need"], n["count"]) for n in ravi["needs"]] == [("vegetarian", 1)]
    assert [(p["dish"], p["servings"]) for p in played.promises("ravi")] == [("slaw", 12)]


async def test_a_party_is_stepped_with_buttons_that_only_its_owner_may_press(play):
    played = await play(
        press("ravi", "My party", on="board"), press("mei", "+", on="last"), press("ravi", "+", on="last")
    )

    assert played.guest("ravi")["adults"] == 2


async def test_the_board_counts_people_not_answers(play):
    played = await play(board("ravi", "there will be 4 of us"), press("mei", "Coming", on="board"))

    # The host, Ravi's four and Mei.
    assert "Coming: 6" in played.board


async def test_a_withdrawal_frees_the_place(play):
    played = await play(press("ravi", "Coming", on="board"), board("ravi", "sorry, can't make it after all"))

    assert played.guest("ravi")["answer"] == "no"
    assert "can’t 1" in played.board


async def test_somebody_without_an_account_is_added(play):
    played = await play(say("ravi", "/add my mother"))

    added = next(g for g in played.state["guests"] if g["added_by"] == "ravi")
    assert "mother" in added["name"]
    assert added["answer"] == "yes"


async def test_an_answer_for_a_named_person_tells_them(play):
    played = await play(press("mei", "Maybe", on="board"), say("ines", "/answer Mei no"))

    assert played.guest("mei")["answer"] == "no"
    assert "answered for you" in played.everything()


async def test_a_guest_may_not_answer_for_another_with_an_account(play):
    played = await play(press("mei", "Coming", on="board"), say("ravi", "/answer Mei no"))

    assert played.guest("mei")["answer"] == "yes"


async def test_invited_names_are_the_ones_without_an_answer(play):
    played = await play(say("ines", "/invite Fern, Mei"), press("mei", "Coming", on="board"))

    assert "No answer yet: Fern" in played.board
    assert [g["name"] for g in played.state["guests"]].count("Mei") == 1


async def test_undo_takes_back_ones_own_last_action_only(play):
    played = await play(press("ravi", "Coming", on="board"), press("mei", "Coming", on="board"), say("ravi", "/undo"))

    assert [g["id"] for g in played.state["guests"] if g["answer"] == "yes"] == ["ines", "mei"]


async def test_an_edit_replaces_what_the_message_said(play):
    played = await play(
        board("ravi", "3 of us, slaw for 12"), {"from": "ravi", "edit": "last", "say": "4 of us, slaw for 12"}
    )

    assert played.guest("ravi")["adults"] == 4
    assert [p["dish"] for p in played.promises("ravi")] == ["slaw"]


async def test_chatter_changes_nothing_and_gets_no_reply(play):
    before = await play()
    played = await play(
        say("ravi", "did anyone see the match last night?"), say("mei", "lol yes, 3 of us watched it"),
        first={"bot_sees_all": True},
    )  # fmt: skip

    assert played.state["guests"] == before.state["guests"]
    assert len(played.texts()) == len(before.texts())


async def test_a_sure_sentence_in_open_chat_is_acted_on_where_the_bot_sees_everything(play):
    played = await play(say("ravi", "I'll bring slaw for 12 to the potluck"), first={"bot_sees_all": True})

    assert [p["dish"] for p in played.promises("ravi")] == ["slaw"]


async def test_a_needs_sheet_in_private_names_nobody_in_the_group(play):
    played = await play(
        press("mei", "Coming", on="board"),
        say("mei", "/start @link", **{"in": "private"}),
        press("mei", "no peanut", **{"in": "private"}),
    )

    assert [n["need"] for n in played.guest("mei")["needs"]] == ["peanut"]
    assert "Someone needs: no peanut" in played.board
    assert not [t for t in played.texts() if "peanut" in t and "Mei" in t.split("peanut")[0].splitlines()[-1]]


async def test_no_allergies_clears_what_was_noted(play):
    played = await play(board("mei", "2 of us, one vegan"), board("mei", "no allergies or diets here"))

    assert played.guest("mei")["adults"] == 2


async def test_a_guest_can_have_their_data_removed(play):
    played = await play(board("ravi", "3 of us, slaw for 12"), say("ravi", "/forget"), press("ravi", "Yes, remove it"))

    assert "ravi" not in [g["id"] for g in played.state["guests"]]
    assert played.promises() == []
    assert "Ravi" not in played.board
