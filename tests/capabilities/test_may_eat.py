"""A severe allergy told in private, the questions that follow it, and what its cook says in passing."""

from tests.capabilities.conftest import say


def private(who, text="/start"):
    return say(who, text, **{"in": "private"})


async def test_who_may_eat_what_is_answered_in_private_by_what_the_cook_said_last(play):
    played = await play(
        say("ravi", "/bring fried rice for 12"), say("ravi", "/bring brie tart for 8"),
        say("ravi", "/bring honey cake for 12"),
        private("mei", "/start @link"), private("mei", "Timur is severely allergic to egg, even traces. we have epi"),
        private("mei", "can he have the fried rice?"),
        say("ravi", "there's egg and soy and shrimp in the rice btw"),
        private("mei", "and now?"),
        private("tom", "/start @link"),
        private("tom", "my wife is pregnant (not told anyone yet). what should she avoid from the list?"),
        say("ravi", "could the 4 month old have a bit of cake? it's just honey"),
        first={"bot_sees_all": True},
    )  # fmt: skip
    said = [t for t in played.texts("mei") if t.startswith("fried rice")]

    assert [(n["need"], n["severity"]) for n in played.guest("mei")["needs"]] == [("egg", "severe allergy")]
    assert "Usually made with egg" in said[0]
    assert "egg" in said[-1]
    assert "Usually" not in said[-1]
    assert any("(brie): anybody who is pregnant should skip it" in t for t in played.texts("tom"))
    assert "No honey before the first birthday" in played.last()
