"""What must not wait: emergencies, an ill cook, food that stood out, is raw or is frozen."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.safety.urgent import Stood, asks_if_still_good, emergency, illness, stood, undone
from tests.capabilities.conftest import board, press, say, until

SALAD = say("ravi", "/bring egg salad for 12")
SEES_ALL = {"bot_sees_all": True}
CHICAGO = ZoneInfo("America/Chicago")
SIX = datetime(2027, 9, 18, 23, 0, tzinfo=UTC)
"""Six in the evening in Chicago."""


@pytest.mark.parametrize(
    ("words", "language"),
    [
        ("Leo's lips are swelling!!", "en"),
        ("help he can't breathe", "en"),
        ("I think she is going into anaphylactic shock", "en"),
        ("we just used the EpiPen on Leo", "en"),
        ("somebody is choking", "en"),
        ("Ravi collapsed by the shed", "en"),
        ("could someone call 911, he collapsed", "en"),
        ("I don't know if it's the nuts but her tongue is swelling", "en"),
        ("mom ate something with nuts and now has hives", "en"),
        ("se le están hinchando los labios", "es"),
        ("no puede respirar", "es"),
    ],
)
def test_plain_words_of_danger_are_understood_by_whomever_they_are_said_to(words, language):
    assert emergency(words, language, told=False, names=("Ravi",))


@pytest.mark.parametrize(
    "words",
    [
        "haha I can't breathe, that picture",
        "the gazebo collapsed",
        "grapes are a choking hazard",
        "severe peanut allergy, he carries an epipen",
        "if he eats peanuts his throat is closing up",
        "I'll bring honey from the hives",
        "let the dough breathe",
        "she ate two plates of slaw",
    ],
)
def test_talk_and_needs_are_no_emergency(words):
    assert not emergency(words, "en", told=True)


def test_less_plain_words_count_only_when_said_to_the_bot():
    words = "Leo ate something with nuts and he is allergic"

    assert [emergency(words, "en", told=told) for told in (True, False)] == [True, False]


@given(st.text(max_size=300))
def test_whatever_is_open_chat_danger_is_danger_when_told_too(words):
    assert emergency(words, "en", told=True) or not emergency(words, "en", told=False)


@pytest.mark.parametrize(
    ("words", "language", "ill"),
    [
        ("my daughter has been throwing up, should I still make the egg salad?", "en", True),
        ("I was sick last night", "en", True),
        ("stomach bug", "en", True),
        ("flu, we stay home", "en", True),
        ("not sure what it is, but my son is vomiting", "en", True),
        ("mi hija está vomitando, no vamos", "es", True),
        ("está vomitando", "es", True),
        ("I'm sick of slaw", "en", False),
        ("got my flu shot", "en", False),
        ("I hope nobody gets the flu", "en", False),
    ],
)
def test_illness_of_the_writers_household_is_understood(words, language, ill):
    assert illness(words, language) is ill


@pytest.mark.parametrize(
    ("words", "asked"),
    [
        ("can we still eat the egg salad?", True),
        ("is the chili still ok?", True),
        ("is the chili still good", True),
        ("is it ok, it was in the car for three hours", True),
        ("is it safe to eat the egg salad?", True),
        ("is the place ok?", False),
        ("are you still coming?", False),
        ("can we eat at six?", False),
    ],
)
def test_a_question_about_food_that_stood_is_told_from_others(words, asked):
    assert asks_if_still_good(words, "en") is asked


@pytest.mark.parametrize(
    ("words", "language", "found"),
    [
        ("egg salad has been on the table since 1", "en", Stood(since=SIX - timedelta(hours=5))),
        ("the eggs have been in the car since 1:30pm", "en", Stood(since=SIX - timedelta(hours=4.5))),
        ("it's been sitting out since noon", "en", Stood(since=SIX - timedelta(hours=6))),
        ("the eggs were in the car since 9 am", "en", Stood(since=SIX - timedelta(hours=9))),
        ("it was in the car for three hours", "en", Stood(minutes=180)),
        ("it was on the counter for half an hour", "en", Stood(minutes=30)),
        ("la ensalada lleva en la mesa desde la una", "es", Stood(since=SIX - timedelta(hours=5))),
        ("lleva fuera dos horas", "es", Stood(minutes=120)),
        ("the eggs are in the car", "en", Stood()),
        ("I'm bringing eggs", "en", None),
    ],
)
def test_how_long_it_stood_is_read_as_the_latest_moment_that_fits(words, language, found):
    assert stood(words, language, SIX, CHICAGO) == found


@given(st.integers(1, 12), st.integers(0, 59), st.integers(0, 527_000))
def test_a_moment_since_which_it_stood_is_never_ahead_and_never_a_day_ago(hour, minute, later):
    now = datetime(2027, 1, 1, tzinfo=UTC) + timedelta(minutes=later)
    found = stood(f"it was on the table since {hour}:{minute:02}", "en", now, CHICAGO)

    assert found is not None
    assert found.since is not None
    assert timedelta() <= now - found.since < timedelta(hours=25)


@pytest.mark.parametrize(
    ("words", "kind"),
    [
        ("the turkey is raw inside", "raw"),
        ("chicken still pink in the middle", "raw"),
        ("still frozen in the middle", "frozen"),
        ("raw carrots with dip", None),
        ("frozen peas", None),
    ],
)
def test_raw_and_frozen_inside_are_told_from_raw_and_frozen_food(words, kind):
    assert undone(words, "en") == kind


async def test_in_an_emergency_the_number_to_call_comes_first_and_nothing_is_changed(play):
    played = await play(SALAD, say("mei", "Leo's lips are swelling, he had the egg salad"), first=SEES_ALL)

    assert played.last().startswith("Call 911 now.")
    assert "1-800-222-1222" in played.last()  # EMER-01
    assert played.guest("ravi")["answer"] == "yes"


async def test_the_number_says_its_source_on_demand(play):
    played = await play(say("mei", "he can't breathe"), press("mei", "Who says so?", on="last"), first=SEES_ALL)

    assert "EMER-02" in played.last()


async def test_an_emergency_is_no_answer_to_an_open_question(play):
    played = await play(
        say("mei", "/start", **{"in": "private"}),
        press("mei", "Bring something", on="board"),
        press("mei", "In my own words"),
        say("mei", "his throat is closing up", **{"in": "private"}),
    )

    assert played.last("mei").startswith("Call 911 now.")
    assert played.promises() == []


async def test_an_emergency_is_answered_without_a_potluck_too(play):
    played = await play(say("mei", "she is choking!"), opened=False, first=SEES_ALL)

    assert "emergency number" in played.last() or "911" in played.last()


async def test_an_ill_household_is_told_of_the_two_days_and_a_cancelling_is_still_read(play):
    played = await play(SALAD, board("ravi", "stomach bug here, so we can't come"))

    assert "two days after the last symptom" in played.everything()
    assert played.guest("ravi")["answer"] == "no"


async def test_whether_it_is_still_good_is_answered_from_the_running_clock(play):
    played = await play(
        SALAD, until("2027-09-18T17:00"), say("ravi", "/out egg salad"), until("2027-09-18T18:00"),
        say("mei", "can we still eat the egg salad?"), first=SEES_ALL,
    )  # fmt: skip

    # TIME-01: two hours, so until seven.
    assert "out for 60 minutes" in played.last()
    assert "by 7:00 PM" in played.last()
    assert "safe" not in played.last().casefold().replace("food safety", "")


async def test_without_a_clock_it_is_said_that_nobody_knows_and_the_clock_is_offered(play):
    played = await play(SALAD, until("2027-09-18T18:00"), say("mei", "is the egg salad still ok?"), first=SEES_ALL)

    assert "nobody told me how long" in played.last()
    assert "egg salad is out" in str(played.rows[-1].get("buttons"))


async def test_three_hours_in_the_car_are_over_the_limit(play):
    played = await play(
        SALAD, until("2027-09-18T17:00"), board("mei", "is the egg salad ok? it was in the car for three hours")
    )

    assert "Throw it out" in played.last()


async def test_a_dish_out_since_one_has_a_clock_from_one(play):
    played = await play(
        SALAD, until("2027-09-18T14:00"), board("ravi", "egg salad has been on the table since 1"),
    )  # fmt: skip

    assert played.promises("ravi")[0]["out_since"].startswith("2027-09-18T13:00")
    assert "by 3:00 PM" in played.last()


async def test_since_one_sets_a_running_clock_back(play):
    played = await play(
        SALAD, until("2027-09-18T14:00"), say("ravi", "/out egg salad"),
        board("ravi", "the egg salad has been on the counter since 1"),
    )  # fmt: skip

    assert "by 3:00 PM" in played.last()


async def test_raw_inside_gives_the_figure_and_its_source(play):
    played = await play(
        say("ravi", "/bring roast turkey for 20"),
        until("2027-09-18T16:00"),
        say("ravi", "the turkey is raw inside!"),
        first=SEES_ALL,
    )

    assert "165 °F" in played.last()  # COOK-01
    assert "(" in played.last()


async def test_still_frozen_is_never_thawed_on_the_counter(play):
    played = await play(
        say("ravi", "/bring roast turkey for 20"), until("2027-09-18T08:00"),
        board("ravi", "the turkey is still frozen in the middle"),
    )  # fmt: skip

    # THAW-04, THAW-05, THAW-12.
    assert "30 minutes a pound" in played.last()


@pytest.mark.parametrize(
    ("words", "now"),
    [
        ("mi hijo no puede comer maní, se le cierra la garganta", False),
        ("es alérgica a los camarones y se le cierra la garganta", False),
        ("es alérgica, comió maní, se le cierra la garganta", True),
        ("se le cierra la garganta!", True),
        ("es alergica y se le esta cerrando la garganta", True),
        ("se le esta hinchando la boca", True),
    ],
)
def test_an_allergy_told_in_spanish_is_no_emergency_unless_it_is_now(words: str, now: bool) -> None:
    assert emergency(words, "es", told=True) is now


async def test_who_was_ill_and_stays_home_takes_their_food_off_and_it_is_asked_for_again(play):
    played = await play(
        board("ravi", "3 of us, chicken soup for 12"),
        until("2027-09-17T08:00"),
        say("ravi", "my kid threw up all night"),
        say("ines", "oh no. please don't bring the soup then"),
        say("ravi", "ok we stay home then. sorry everyone"),
        until("2027-09-18T12:00"),
        first=SEES_ALL,
    )

    assert (played.guest("ravi")["answer"], played.guest("ines")["answer"]) == ("no", "yes")
    assert played.promises("ravi") == []
    assert not any("chicken soup" in r["text"] for r in played.reminders("bring"))


async def test_food_made_before_somebody_fell_ill_is_asked_after_and_taken_off_by_a_press(play):
    played = await play(
        board("ravi", "garlic bread for 12"),
        until("2027-09-18T08:00"),
        say("ravi", "been sick all night, both ends"),
        say("ravi", "i made the garlic bread yesterday, should tom pick it up?"),
        press("ravi", "Take garlic bread off"),
        first=SEES_ALL,
    )

    assert "not what was made just before either" in played.texts()[-1]
    assert played.promises("ravi") == []


async def test_in_spanish_who_is_ill_and_asks_who_shall_fetch_the_food_is_told_and_taken_off(play):
    played = await play(
        say("ines", "/settings language es"),
        board("ravi", "llevo tortillas para 12"),
        until("2027-09-18T08:00"),
        say("ravi", "he estado vomitando desde las 4, no voy. ya las hice anoche. ¿se las mando con Tom?"),
        first=SEES_ALL,
    )

    assert any("no sale comida para otros" in t for t in played.texts())
    assert (played.guest("ravi")["answer"], played.promises("ravi")) == ("no", [])
