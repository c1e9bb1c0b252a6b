"""Danger told in plain words, in the open group and below a message of the bot."""

from tests.capabilities.conftest import board, say, until
from tests.planning.hazards.test_told import HERE, lines

OPEN = {"bot_sees_all": True}
DAY = until("2027-09-18T16:00")


def answers(played, since: str) -> list[str]:
    """What the bot said in the group after those words."""
    at = next(n for n, r in enumerate(played.rows) if r.get("text") == since)
    return [r["text"] for r in played.rows[at:] if r["from"] == "bot" and r["kind"] == "message"]


async def test_in_the_open_each_danger_is_answered_and_a_dish_named_can_be_taken_off(play):
    told = [
        ("tom", "someone's toddler has a grape stuck i think, coughing", "Let them cough"),
        ("tom", "my +1 is dizzy, red face, not sweating", "heat stroke"),
        ("mei", "theres a gas smell in the kitchen", "Everybody out"),
        ("mei", "Kirsten ate from the wrong tray, her lips are tingling", "auto-injector"),
        ("ines", "my girl put a button battery in her mouth", "battery hotline"),
        ("ravi", "dropped a glass next to the slaw. splinters maybe in it", "everything open within reach"),
        ("ines", "no water!! main burst, taps dry", "No tap water"),
        ("tom", "news says bagged spinach is recalled, E coli. check your bags", "Compare brand"),
    ]
    played = await play(say("ravi", "/bring slaw for 12"), DAY, *(say(who, text) for who, text, _ in told), first=OPEN)

    for _, text, answer in told:
        assert answer in answers(played, text)[0], text
    assert any("Thrown out: slaw" in str(r.get("buttons")) for r in played.rows)


async def test_a_dish_its_cook_says_an_animal_ate_is_off_the_table(play):
    played = await play(
        say("ravi", "/bring brisket for 12"), DAY, board("ravi", "my dog pulled the brisket off the counter. all gone.")
    )

    assert played.promises("ravi") == []


async def test_talk_on_the_day_itself_gets_no_answer(play):
    talk = [words for want, code, words in lines(HERE / "told.tsv") if want == "-" and code == "en"][:40]
    played = await play(say("ravi", "/bring ham for 12"), DAY, *(say("tom", words) for words in talk), first=OPEN)

    assert not [text for text in answers(played, talk[0]) if "✋" in text or "911" in text]


async def test_what_anybody_says_is_in_a_food_meets_the_allergies_at_the_table(play):
    played = await play(
        say("ravi", "/bring noodle salad for 12"),
        say("tom", "/bring carrot cake with walnuts for 12"),
        board("mei", "I am allergic to sesame, fish and tree nuts"),
        say("ravi", "the noodle salad has sesame on top, is that a problem?"),
        say("tom", "there's fish sauce in ravi's noodle salad, i saw the bottle"),
        say("tom", "ok i leave the walnuts out"),
        say("ines", "my sister is bringing a pecan pie she says"),
        first=OPEN,
    )
    said = played.everything()

    assert played.promises("ravi")[0]["dish"] == "noodle salad with sesame, fish sauce"
    assert "says Tom: fish sauce" in said
    assert played.promises("tom")[0]["dish"] == "carrot cake, no walnuts"
    assert "pecan pie: somebody at this table has an allergy to tree nuts" in said
