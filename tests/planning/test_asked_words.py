"""Sentences beside the food: enough of it, how much, a storm, the clocks, whose tray."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.theday.asked import read_asked
from planning.when.clockchange import change_between


@pytest.mark.parametrize(
    ("words", "kind", "thing"),
    [
        ("is there enough rice for everybody?", "enough", "rice"),
        ("do we have enough chili for 30", "enough", "chili"),
        ("will the lasagna be enough?", "enough", "lasagna"),
        ("how many sausages should we do per person", "how-much", "sausages"),
        ("and tortillas, how many?", "how-much", "tortillas"),
        ("ravi took mei's dish by mistake", "took", "dish"),
        ("my egg tray went home w someone?", "took", "egg tray"),
        ("I have a tray that isn't mine", "not-mine", "tray"),
        ("my slow cooker is still at the cabin", "left-there", "slow cooker"),
        ("bread knife is still there, its mine", "left-there", "bread knife"),
        ("Sorcha left her cake stand, and Hugh two trays", "left-there", "cake stand"),
        ("tikka on in slow cooker 1 since 7:30, on low", "began", "tikka"),
        ("lamb's in the oven since 8 at home", "began", "lamb"),
    ],
)
def test_a_sentence_tells_its_kind_and_its_thing(words: str, kind: str, thing: str) -> None:
    found = read_asked(words)

    assert found is not None
    assert (found.kind, found["thing"]) == (kind, thing)


@pytest.mark.parametrize(
    ("words", "kind"),
    [
        ("alcanzan las carnitas para todos?", "enough"),
        ("el arroz alcanza para todos?", "enough"),
        ("cuánto arroz hace falta ahora", "how-much"),
        ("y de tortillas cuantas compro", "how-much"),
        ("dicen que hay tormenta a las 3, qué hacemos", "storm"),
        ("cambian la hora esa noche?", "clocks-change"),
        ("esa hora es tu hora o la mía?", "whose-time"),
        ("alguien se llevó mi bandeja blanca", "took"),
        ("yo tengo una bandeja que no es mía", "not-mine"),
        ("la mía la devolvieron a sara por error", "took"),
    ],
)
def test_spanish_sentences_tell_theirs(words: str, kind: str) -> None:
    found = read_asked(words, "es")

    assert found is not None
    assert found.kind == kind


@pytest.mark.parametrize(
    "words",
    [
        "forecast says thunderstorm at 3. what do we do",
        "there's a storm coming",
        "i can hear thunder",
        "lightning!",
        "what if there's a thunderstorm",
    ],
)
def test_a_storm_is_heard_in_many_words(words: str) -> None:
    assert (found := read_asked(words)) is not None
    assert found.kind == "storm"


@pytest.mark.parametrize(
    "words",
    ["that's enough chatter", "how much fun was that", "storm in a teacup lol", "the lightning talk was great",
     "is it your time of the year", "how many people come?", "qué frío hace hoy", "cuánto cuesta?"],
)  # fmt: skip
def test_talk_asks_nothing(words: str) -> None:
    assert read_asked(words) is None
    assert read_asked(words, "es") is None


def test_what_stands_beside_is_left_to_be_read() -> None:
    found = read_asked("i'm coming from Chicago, is that 11 your time or mine")

    assert found is not None
    assert (found.kind, found.rest) == ("whose-time", "i'm coming from chicago")


def test_clocks_of_new_york_go_back_in_the_night_to_the_seventh_of_november_2027() -> None:
    found = change_between("America/New_York", datetime(2027, 11, 1, tzinfo=UTC), datetime(2027, 11, 8, tzinfo=UTC))

    assert found is not None  # 2 AM Eastern daylight time, by the law of 2005
    assert (found.at, found.minutes) == (datetime(2027, 11, 7, 6, tzinfo=UTC), -60)


def test_phoenix_keeps_its_clocks() -> None:
    year = datetime(2027, 1, 1, tzinfo=UTC)

    assert change_between("America/Phoenix", year, year + timedelta(days=365)) is None


@given(days=st.integers(0, 700), zone=st.sampled_from(["Europe/Madrid", "America/Chicago", "Australia/Lord_Howe"]))
def test_a_change_is_where_the_offset_jumps_and_nowhere_before(days: int, zone: str) -> None:
    start = datetime(2027, 1, 1, tzinfo=UTC) + timedelta(days=days)

    found = change_between(zone, start, start + timedelta(days=40))

    end = found.at if found is not None else start + timedelta(days=40)
    clock = ZoneInfo(zone)
    hours = int((end - start) / timedelta(hours=1))
    offsets = {(start + timedelta(hours=h)).astimezone(clock).utcoffset() for h in range(hours)}
    assert len(offsets) <= 1
    if found is not None:
        before = (found.at - timedelta(minutes=1)).astimezone(clock).utcoffset()
        after = found.at.astimezone(clock).utcoffset()
        assert (after - before) == timedelta(minutes=found.minutes)  # type: ignore[operator]


@pytest.mark.parametrize(
    ("text", "language"),
    [
        ("split the $18.20 between all of us please", "en"),
        ("can you divide everything evenly?", "en"),
        ("reparte los 900 pesos entre todos por favor", "es"),
    ],
)
def test_who_wants_the_costs_split_asks_who_owes_whom(text, language):
    asked = read_asked(text, language)

    assert getattr(asked, "kind", None) == "who-owes"


def test_a_cake_is_split_without_money():
    asked = read_asked("split the cake between us", "en")

    assert asked is None or asked.kind != "who-owes"
