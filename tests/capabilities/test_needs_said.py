"""Needs in people's own words: whose they are, how many have them, and what else the message said."""

from tests.capabilities.conftest import board, press, say


def needs(played, guest_id):
    return [(n["need"], n["count"]) for n in played.guest(guest_id)["needs"]]

PRIVATE = {"in": "private"}


async def test_a_need_of_somebody_added_in_the_same_message_is_theirs(play):
    played = await play(board("ravi", "my mother comes too, she's celiac"))

    mother = next(g for g in played.state["guests"] if g["name"] == "Ravi's mother")
    assert [n["need"] for n in mother["needs"]] == ["gluten-free"]
    assert needs(played, "ravi") == []


async def test_two_needs_of_one_person_are_not_called_two_people(play):
    played = await play(board("ravi", "I'm vegan and gluten free"))

    assert "people" not in played.last()


async def test_one_need_of_two_is_said_with_its_number(play):
    played = await play(board("ravi", "3 of us, no gluten for two of us"))

    assert needs(played, "ravi") == [("gluten-free", 2)]
    assert "no gluten for 2" in played.last()


async def test_how_bad_an_allergy_is_survives_a_milder_word(play):
    played = await play(board("ravi", "severe peanut allergy here"), board("ravi", "no peanuts for me please"))

    assert [n["severity"] for n in played.guest("ravi")["needs"]] == ["severe allergy"]


async def test_after_yes_all_parts_of_the_message_stand_and_none_twice(play):
    played = await play(
        board("ravi", "Pat and Joe are coming too, I bring slaw for 12, and my son is vegan"), press("ravi", "Yes")
    )

    assert {"Pat", "Joe"} <= {g["name"] for g in played.state["guests"]}
    assert [p["dish"] for p in played.promises("ravi")] == ["slaw"]
    assert "slaw for 12 now" not in played.everything()


async def test_who_would_love_to_come_but_does_not_know_yet_is_a_maybe(play):
    played = await play(board("ravi", "would love to come but don't know yet, and I'm allergic to nuts"))

    assert played.guest("ravi")["answer"] == "maybe"


async def test_the_need_another_told_is_never_counted_as_told_in_the_open(play):
    played = await play(board("mei", "I'm in"), board("ines", "Mei is allergic to peanuts"), press("ines", "Yes"))

    assert [n["open"] for n in played.guest("mei")["needs"]] == [False]


async def test_which_dishes_have_an_allergen_is_answered_from_the_list(play):
    played = await play(
        board("ravi", "chicken satay for 12"), board("tom", "green salad for 8"), board("mei", "what has peanuts?")
    )

    assert "chicken satay" in played.last()
    assert "Nobody has said what is in green salad" in played.last()


async def test_a_dish_whose_kind_is_still_being_asked_is_known_of(play):
    played = await play(say("ravi", "/bring peanut grumbleflorp"), board("ravi", "what has peanuts?"))

    assert "peanut grumbleflorp" in played.last()


async def test_what_is_in_a_dish_is_what_its_cook_listed(play):
    played = await play(
        board("ravi", "slaw for 12"),
        say("ravi", "/contains slaw: cabbage, mustard"),
        board("mei", "what's in the slaw?"),
    )

    assert "cabbage and mustard, says the cook" in played.last()


async def test_an_emergency_edited_into_the_same_emergency_is_answered_once(play):
    words = "Leo can't breathe, he ate peanuts"
    played = await play(board("mei", words), {"from": "mei", "edit": "last", "say": f"{words}!!"})

    assert sum("Call 911 now" in text for text in played.texts()) == 1


async def test_a_message_edited_into_an_emergency_is_answered(play):
    played = await play(
        board("mei", "we're 2"), {"from": "mei", "edit": "last", "say": "Leo can't breathe, he ate peanuts"}
    )

    assert any("Call 911 now" in text for text in played.texts())


async def test_what_is_vegan_is_told_of_each_dish_and_vegan_is_no_ingredient(play):
    played = await play(say("ravi", "/bring vegan curry for 10"), board("mei", "can someone mark whats vegan?"))

    assert "with vegan" not in played.everything()
    assert "Ask the cook first: vegan curry (Ravi)" in played.last()


async def test_a_need_asked_back_about_says_which_are_noted_already(play):
    again = "to be really clear: my daughter Zosia can die from peanuts, also she gets hives from sesame but thats mild"
    played = await play(
        board("mei", "we're 2, one severe peanut allergy"),
        say("mei", "/start", **PRIVATE),
        say("mei", again, **PRIVATE),
    )

    assert played.texts("mei")[-1] == "Noted already: no peanuts. Shall I note for your party: no sesame?"
