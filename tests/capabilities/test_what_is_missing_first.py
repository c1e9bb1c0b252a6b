"""When something is lost or more people come: what nobody can do without is said first, in few lines."""

from tests.capabilities.conftest import board, press, say, until

NOON = until("2027-09-18T14:00")


async def test_when_the_only_main_is_lost_nobody_is_told_to_serve_a_smaller_portion_of_it(play):
    played = await play(
        say("ravi", "/bring meat lasagna for 12"), say("mei", "/bring coleslaw for 20"), NOON,
        board("ravi", "omg I dropped the lasagna"),
    )  # fmt: skip

    assert "No main dish is left" in played.last()
    assert "usual portion" not in played.last()


async def test_vegans_whose_only_main_goes_are_named_before_anything_else_is(play):
    played = await play(
        say("ravi", "/bring chickpea curry for 12"),
        say("ravi", "/contains chickpea curry: chickpeas, tomatoes, rice"),
        say("ines", "/bring meatballs for 24"),
        press("ravi", "Coming", on="board"),
        board("mei", "I'm coming, I'm vegan"),
        NOON,
        board("ines", "Ravi didn't show up"),
    )

    said = played.last()
    assert "“vegan” has no main dish listed" in said
    assert said.index("vegan") < (said + "Now short by").index("Now short by")


async def test_ten_more_at_the_door_get_the_smallest_change_first_and_few_lines(play):
    played = await play(
        say("ravi", "/bring lasagna for 24"), say("mei", "/bring coleslaw for 24"),
        say("tom", "/bring brownies for 24"), NOON,
        board("ines", "10 more people at the door"),
    )  # fmt: skip

    said = played.last()
    assert said.count("Now short by") <= 3
    assert said.index("Serve about") < said.index("Now short by")


async def test_who_has_two_allergies_is_never_offered_a_dish_with_the_other(play):
    played = await play(
        say("ravi", "/bring carrot cake for 12"),
        say("ravi", "/contains carrot cake: flour, walnuts, sugar"),
        say("mei", "/bring noodles for 12"),
        say("mei", "/contains noodles: noodles, peanuts"),
        {"from": "tom", "in": "private", "say": "/start"},
        board("tom", "2 of us, my daughter has a severe peanut and tree nut allergy"),
        {"from": "tom", "in": "private", "say": "/eat"},
    )

    said = played.last(chat="tom")
    assert "Not for you: carrot cake" in said
    assert "Not for you: noodles" in said
    assert "nothing listed in carrot cake" not in said
    assert "nothing listed in noodles" not in said
