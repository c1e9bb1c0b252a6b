"""What anybody says is in some food, and what a cook leaves out."""

import pytest

from planning.diets.alarms import alarms, left_out


def foods(words: str) -> list[str]:
    return [food for told in alarms(words) for food, _, _ in told.holds]


@pytest.mark.parametrize(
    ("words", "food"),
    [
        ("the dressing i bought for the noodle salad has peanut oil in it", "peanut oil"),
        ("the focaccia has sesame on top, is that a problem?", "sesame"),
        ("my plus one is bringing a pecan pie he says. sorry noor!!", "pecan pie"),
        ("dumplings are with sesame oil, fyi", "sesame oil"),
        ("there's fish sauce in ravi's noodle salad, i saw the bottle", "fish sauce"),
        ("just read the label, the crackers may contain nuts", "nuts"),
        ("wings are tossed in butter", "butter"),
        ("someone put a bowl of cashews on the table", "cashews"),
        ("she said the granola has hazelnuts", "hazelnuts"),
        ("chicken satay (peanut sauce on the side)", "satay"),
        ("la salsa lleva cacahuate", "cacahuate"),
        ("mi novio trae una tarta de nueces", "nueces"),
        ("acabo de ver que el pan tiene sésamo", "sésamo"),
        ("las galletas están hechas con mantequilla", "mantequilla"),
    ],
)
def test_what_is_told_of_any_food_is_heard(words, food):
    assert food in foods(words)


@pytest.mark.parametrize(
    "words",
    [
        "does the caesar have anchovies?", "anyone got nuts?", "i'm allergic to peanuts", "we need milk and eggs",
        "no nuts in the cake", "my daughter swells up from kiwi", "i have eggs at home", "the cake is nut free",
        "can you leave out the nuts please", "soy alérgica al huevo", "sin cacahuate",
    ],
)  # fmt: skip
def test_questions_needs_and_denials_put_nothing_into_a_food(words):
    assert foods(words) == []


@pytest.mark.parametrize(
    ("words", "gone"),
    [
        ("oh noor. ok i leave the walnuts out", ("walnuts",)),
        ("ok no almonds, just a raisin then", ("almonds",)),
        ("i'll skip the nuts", ("nuts",)),
        ("i'm taking out the egg", ("egg",)),
        ("i'll brush it with milk not egg", ("egg",)),
        ("le quito las nueces", ("nueces",)),
        ("ah no, pili. sin cacahuate entonces", ("cacahuate",)),
        ("who left the nuts out?", ()),
        ("i'm allergic, so no nuts", ()),
    ],
)
def test_what_a_cook_leaves_out_is_heard(words, gone):
    assert left_out(words) == gone


@pytest.mark.parametrize("words", ["who's left with beer lol", "i left the beer at home", "half the nuts are left"])
def test_what_is_left_over_or_left_somewhere_is_left_out_of_nothing(words: str) -> None:
    assert left_out(words) == ()
