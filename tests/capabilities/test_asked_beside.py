"""Amounts, storms, clocks and lost trays, said in words: one scene each."""

from tests.capabilities.conftest import say, until

OPEN = {"bot_sees_all": True}
COMING = (say("ravi", "2 of us, bringing lasagna for 12"), say("mei", "coming, rice for 15"))


async def test_questions_of_amounts_storms_and_clocks_are_answered_in_the_open(play):
    played = await play(
        say("ines", "/potluck Sat 6 Nov 5pm, about 24 people, outdoors at the hut"),
        *COMING,
        say("ines", "is there enough rice for everybody?"),
        say("mei", "do clocks change that night?"),
        say("mei", "is that 5 your time or mine? i come from New York"),
        until("2027-11-05T12:00"),
        say("ines", "forecast says thunderstorm at 3. what do we do"),
        first=OPEN,
        opened=False,
    )

    rice, change, zone, storm = played.texts()[-4:]
    assert "rice for 15 (Mei)" in rice
    assert "short" in rice
    assert "at 2:00 AM the clocks go back to 1:00 AM" in change
    assert "in New York that is 6:00 PM" in zone
    assert "30 minutes after the last thunder" in storm


async def test_who_misses_a_tray_is_named_to_whoever_has_one_that_is_not_theirs(play):
    played = await play(
        *COMING,
        until("2027-09-18T19:00"),
        say("ravi", "my slow cooker is still at the hut"),
        say("mei", "somebody took my white tray"),
        say("tom", "i have a tray that isn't mine"),
        say("ravi", "tom took mei's dish by mistake"),
        first=OPEN,
    )

    cooker, tray, found, dish = played.texts()[-4:]
    assert "Ravi misses: slow cooker, said to be at the hut" in cooker
    assert "Mei misses: white tray" in tray
    assert "Mei misses (white tray)" in found
    assert "said to be with Tom" in dish
