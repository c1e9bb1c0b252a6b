"""What could not be delivered stands on a record for hosts, without what was meant for one person alone."""

from tests.capabilities.conftest import say
from tests.faults.chat import Chat


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


async def test_all_that_is_sent_about_a_potluck_is_kept_with_it():
    chat = await Chat.open(-1001)
    await chat.take(chat.words(-1001, 101, "/potluck in 8 days 5pm, about 24 people, at the hut"))
    await chat.take(chat.words(-1001, 102, "I'm coming, we are 3"))
    await chat.take(chat.words(-1001, 101, "/bar"))
    base = next(d for d in await chat.buttons(-1001) if d.split(".")[1] == "barbase")
    await chat.take(chat.press(-1001, 101, base))
    posts = await chat.store.pending_posts(100)
    stored = await chat.current(-1001)
    await chat.close()

    assert {"send", "edit"} <= {p.method for p in posts}
    assert {p.potluck_id for p in posts} == {stored.potluck.id}


async def test_where_nothing_was_given_up_a_host_is_told_so(play):
    played = await play(say("ines", "/unsent"))

    assert "was delivered" in played.last()


async def test_guests_are_not_shown_the_record(play):
    played = await play(say("ravi", "/unsent"))

    assert "Inés" in played.last()
    assert "delivered" not in played.last()
