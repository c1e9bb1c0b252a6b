"""What could not be delivered stands on a record for hosts, without what was meant for one person alone."""

from tests.capabilities.conftest import say


async def test_a_host_reads_what_was_given_up_for_whom_and_why(play):
    played = await play(
        say("ravi", "/start", **{"in": "private"}),
        say("ravi", "/bring slaw for 12"),
        {"fault": "400", "method": "sendMessage", "count": 2},
        say("ravi", "/needs no peanut", **{"in": "private"}),
        say("ines", "/unsent"),
    )

    said = played.last()
    assert "for Ravi" in said
    assert "could not be sent like this" in said
    assert "peanut" not in said


async def test_where_nothing_was_given_up_a_host_is_told_so(play):
    played = await play(say("ines", "/unsent"))

    assert "was delivered" in played.last()


async def test_guests_are_not_shown_the_record(play):
    played = await play(say("ravi", "/unsent"))

    assert "Inés" in played.last()
    assert "delivered" not in played.last()
