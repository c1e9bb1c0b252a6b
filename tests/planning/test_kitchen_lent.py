"""One appliance more, lent or brought along, and what only sounds like it."""

import pytest

from planning.kitchen_words import kitchen_told, one_more, with_one_more
from planning.potluck import Kitchen


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("my neighbour lends us a second oven", "oven"),
        ("we can use the neighbors oven too", "oven"),
        ("I can bring a second slow cooker", "slow-cooker"),
        ("i have a spare crockpot", "slow-cooker"),
        ("I've got an extra microwave if needed", "microwave"),
        ("puedo llevar otra olla lenta", "slow-cooker"),
        ("la vecina nos presta su horno", "oven"),
    ],
)
def test_one_more_of_an_appliance_is_read(text, kind):
    assert one_more(text) == kind


@pytest.mark.parametrize(
    "text", ["I'll bring another slow cooker of chili", "I have an oven", "we can use the oven", "i can bring slaw"]
)
def test_other_words_are_no_appliance_more(text):
    assert one_more(text) is None


def test_one_more_is_one_more_and_the_rest_stays():
    before = Kitchen()
    after = with_one_more(before, "oven")

    assert (len(after.ovens), after.burners) == (len(before.ovens) + 1, before.burners)


@pytest.mark.parametrize("text", ["the kitchen outlets are one 15 amp circuit", "one 15 amp circuit, 4 outlets"])
def test_the_one_circuit_of_a_kitchen_is_read(text):
    circuits = kitchen_told(text, Kitchen()).kitchen.circuits

    assert [c.amps for c in circuits] == [15]
