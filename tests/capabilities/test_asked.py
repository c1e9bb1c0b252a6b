"""Questions in people's own words, and who answers them."""

import pytest

from tests.capabilities.conftest import board


@pytest.mark.parametrize(
    ("asked", "answer"),
    [
        ("what did Mei sign up for?", "rolls"),
        ("who has the rolls?", "Mei"),
        ("is Mei coming?", "Mei is coming"),
        ("are there enough mains?", "more servings"),
        ("what would help most?", "more servings"),
        ("what time's kick-off?", "5:00 PM"),
        ("remind me of the place?", "the allotment hut"),
        ("how many will we be on the day?", "2 people"),
    ],
)
async def test_what_the_plan_knows_is_answered(play, asked, answer):
    played = await play(board("mei", "I'm in, rolls for 12"), board("ravi", asked))

    assert answer in played.last()


@pytest.mark.parametrize("asked", ["is there parking for a van?", "can I bring my dog?", "do I need to pay anything?"])
async def test_what_only_the_host_can_know_goes_to_the_host(play, asked):
    played = await play(board("ravi", asked))

    assert any("Ravi asks" in text for text in played.texts())


async def test_the_host_is_not_sent_the_own_question(play):
    played = await play(board("ines", "is there parking for a van?"))

    assert "asks" not in played.everything()
