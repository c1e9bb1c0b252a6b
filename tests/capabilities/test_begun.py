"""A dish that went in late or early, what may be eaten first, no more ice, what is all gone, thawing - in words."""

from tests.capabilities.conftest import press, say, until

OPEN = {"bot_sees_all": True}
TURKEY_DAY = (
    say("ines", "/potluck Thu 25 Nov 3pm, 16 people, outdoors at my house"),
    say("ravi", "we're 2. I'll do the turkey!"),
    say("mei", "coming, slaw for 20, ham 4 lb slow cooker low 4 hours"),
    say("tom", "coming, mashed potatoes for 16"),
    say("tom", "dinner rolls for 20"),
)


async def test_a_late_turkey_is_told_with_what_waits_for_it_and_what_may_go_first(play):
    played = await play(
        *TURKEY_DAY,
        until("2027-11-25T11:30"),
        say("ravi", "got it in only now at 11:30"),
        say("mei", "ham on low since 5:30, i got up wrong. is that a problem"),
        say("ines", "what time do we eat then"),
        say("ines", "out of ice"),
        say("tom", "can we eat the sides first at 3?"),
        say("ravi", "165! its done"),
        first=OPEN,
        opened=False,
    )

    turkey, ham, when, ice, sides, done = played.texts()[-6:]
    assert "about 4:05 PM" in turkey  # 4 h 15 at 325 °F (COOK-32, 14 to 18 lb), 20 minutes of rest
    assert "keep it at 140 °F" in ham
    assert "turkey is ready at about 4:05 PM" in when
    assert "slaw" in ice
    assert "turkey" not in ice
    assert "These can go first: mashed potatoes." in sides
    assert "rests 20 minutes" in done


async def test_a_dish_that_is_in_since_an_hour_somebody_told_goes_in_at_no_other_until_that_is_taken_back(play):
    played = await play(
        say("ravi", "/bring lasagna for 12"),
        say("ravi", "/heat lasagna: oven 50 min at 375"),
        until("2027-09-18T14:00"),
        say("ravi", "got the lasagna in just now"),
        say("mei", "when does the lasagna go in?"),
        press("ravi", "Undo"),
        say("mei", "when does the lasagna go in?"),
        first=OPEN,
    )

    *_, told, planned = played.texts()
    assert "in since 2:00 PM, so 50 minutes on the heat end at about 2:50 PM" in told
    assert "in since" not in planned
    assert "lasagna: oven" in planned


async def test_all_that_ran_out_is_remembered_though_the_meal_is_over(play):
    played = await play(
        *TURKEY_DAY,
        until("2027-11-25T19:30"),
        say("ines", "ran out of slaw and rolls"),
        first=OPEN,
        opened=False,
    )

    assert {p["dish"] for p in played.promises() if p.get("outcome") == "ran-out"} == {"slaw", "dinner rolls"}


async def test_when_it_leaves_the_freezer_is_told_by_its_pounds_or_asked_for(play):
    played = await play(
        *TURKEY_DAY,
        say("ravi", "when do i have to take the turkey out of the freezer"),
        first=OPEN,
        opened=False,
    )

    assert "a day for every 4 pounds" in played.last()
