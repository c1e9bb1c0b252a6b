"""A host's words about what there is to cook with, in figures and in words."""

import pytest

from planning.kitchen_words import kitchen_told
from planning.potluck import Kitchen


@pytest.mark.parametrize(
    ("text", "ovens", "racks", "burners", "slow", "microwaves"),
    [
        ("i have 1 oven with 2 racks, 4 burners, 1 microwave, a slow cooker", 1, 2, 4, 1, 1),
        ("kitchen has 1 oven with 2 racks, 4 burners, no slow cookers", 1, 2, 4, 0, None),
        ("oven 1 rack, 2 burners, one slow cooker", 1, 1, 2, 1, None),
        ("just two microwaves and a fridge, no oven", 0, None, None, None, 2),
        ("i have one oven two racks, 4 burners and 2 slow cookers", 1, 2, 4, 2, None),
        ("our kitchen: one crappy oven w 2 shelves, 4 rings, no slow cooker", 1, 2, 4, 0, None),
        ("no oven in there, just the one microwave and two slow cookers, lunch is only 40 min", 0, None, None, 2, 1),
        ("The hall has two ovens, three racks each, a six-burner stove.", 2, 3, 6, None, None),
        ("tengo un horno con dos parrillas, 4 hornillas y una olla lenta", 1, 2, 4, 1, None),
    ],
)
def test_what_there_is_to_cook_with_is_read(text, ovens, racks, burners, slow, microwaves):
    kitchen = kitchen_told(text, Kitchen()).kitchen

    assert len(kitchen.ovens) == ovens
    assert racks is None or kitchen.ovens[0].racks == racks
    assert burners is None or kitchen.burners == burners
    assert slow is None or len(kitchen.slow_cookers) == slow
    assert microwaves is None or len(kitchen.microwaves) == microwaves


def test_what_no_figure_comes_from_is_named_and_the_rest_is_kept():
    told = kitchen_told("i've got a cooler and 20 lb of ice, grill with charcoal", Kitchen())

    assert told.kitchen.grills == 1
    assert told.unread == ("a cooler", "20 lb of ice")


def test_another_sentence_is_left_to_be_read():
    told = kitchen_told("It has one oven, 4 rings. We sing at 6:45, so please eat on time.", Kitchen())

    assert (told.words, told.rest) == ("1 oven, 4 burner", "We sing at 6:45, so please eat on time.")


@pytest.mark.parametrize(
    "text",
    [
        "the oven broke", "i have 2 ovens and a lasagna", "I'll bring a slow cooker of chili", "oven 50 min at 375",
        "i have 2 kids and a dog", "is there an oven?", "one oven", "two ovens, one broke",
    ],
)  # fmt: skip
def test_other_messages_tell_of_no_kitchen(text):
    assert kitchen_told(text, Kitchen()) is None
