"""Who owes whom, who has not answered, what ran out: asked in words in the open group."""

from tests.capabilities.conftest import say, until

OPEN = {"bot_sees_all": True}


async def test_money_answers_and_what_ran_out_are_told_in_the_open(play):
    played = await play(
        say("ravi", "2 of us, bringing lasagna for 12"),
        say("mei", "coming, rice for 15"),
        say("ines", "who's still not answered"),
        say("ines", "who's actually coming now?"),
        until("2027-09-18T18:00"),
        say("ravi", "14 for bread and salad bags"),
        say("mei", "ravi's gas 32, i got drinks 27.50"),
        say("tom", "who owes who"),
        say("ines", "we ran out of rice"),
        say("mei", "what ran out?"),
        first=OPEN,
    )

    paid = [(p["guest"], p["amount"]["amount"], p["for"]) for p in played.state["payments"]]
    assert paid == [
        ("ravi", "14.00", "bread and salad bags"), ("ravi", "32.00", "gas"), ("mei", "27.50", "drinks"),
    ]  # fmt: skip
    told = played.texts()
    assert any("has answered" in text for text in told)
    assert any("Coming so far, 4 people" in text for text in told)
    assert "gives" in told[-3]
    assert "Ran out, as was told: rice" in told[-1]
