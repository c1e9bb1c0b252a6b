"""What a host says of the potluck itself; and what only sounds like it."""

from dataclasses import replace
from datetime import UTC, datetime

import pytest

from planning.potluck import Answer
from planning.replies import CallOff, MoveTo, ReplyContext, Reschedule, Resize, read, says_later

HOST = ReplyContext(
    writer="1",
    writer_name="Ines",
    replying_to="board",
    guests=(("1", "Ines"), ("2", "Ravi")),
    own_promises=(("p1", "chili"),),
    answer=Answer.YES,
    now=datetime(2027, 9, 10, 14, tzinfo=UTC),
    timezone="America/Chicago",
    host=True,
)
ESPAÑOL = replace(HOST, language="es")
OPEN = replace(HOST, replying_to=None)
AT_FIVE = replace(HOST, starts_at=datetime(2027, 9, 18, 22, tzinfo=UTC))
HOSTS = (Reschedule, MoveTo, Resize, CallOff)

TIMES = (
    ("we're moving it to Sunday at 4", "Sunday at 4"),
    ("it's at 6 not 5", "6"),
    ("The burial is put back, so tea will be at 2 not 1.", "2"),
    ("dinner is at 6 now", "6"),
    ("let's start an hour later", "an hour later"),
    ("push it back half an hour", "half an hour later"),
    ("bring it forward an hour", "an hour earlier"),
    ("postponed by a week", "a week later"),
    ("the supper moves to the 25th", "the 25th"),
    ("sorry all, the date has changed to 25 September", "25 September"),
    ("let's do Friday instead of Saturday", "Friday"),
)
HORAS = (
    ("lo pasamos al domingo", "domingo"),
    ("cambiamos la cena al domingo 19", "domingo 19"),
    ("la cena es a las 6, no a las 5", "a las 6"),
    ("lo adelantamos una hora", "1 hours earlier"),
    ("la cena se retrasa media hora", "30 minutes later"),
)
PLACES = (
    ("let's have it at Ravi's house instead", "Ravi's house"),
    ("change the place to 14 Mill Lane", "14 Mill Lane"),
    ("the place changed, it's the barn behind the school now", "the barn behind the school"),
    ("moved to the scout hut", "the scout hut"),
)
LUGARES = (("nuevo lugar: el granero", "el granero"), ("mejor en casa de Ravi", "casa de Ravi"))
OFF = (
    "it's cancelled, sorry everyone",
    "we have to call it off",
    "the potluck is off, sorry",
    "no supper tonight, sorry",
    "let's cancel the supper",
)
CANCELADO = ("la cena se cancela, lo siento", "hay que cancelarla", "al final no hay cena")
NOT_SAID = (
    "let's move on",
    "I moved to Austin last year",
    "we meet the kids at 5",
    "we're at the airport now",
    "the game is moved to Sunday",
    "if it rains, let's move it to Sunday",
    "I'll do it on Sunday",
    "we're 3 now",
    "let's call it a night",
    "no dessert tonight",
    "the party is off to a good start",
    "push the table back",
    "si llueve lo pasamos al domingo",
)


@pytest.mark.parametrize(("text", "words", "context"), [(*t, HOST) for t in TIMES] + [(*t, ESPAÑOL) for t in HORAS])
def test_another_time_is_heard(text, words, context):
    assert [i.words for i in read(text, context).intents if isinstance(i, Reschedule)] == [words]


@pytest.mark.parametrize(("text", "place", "context"), [(*t, HOST) for t in PLACES] + [(*t, ESPAÑOL) for t in LUGARES])
def test_another_place_is_heard(text, place, context):
    assert [i.place for i in read(text, context).intents if isinstance(i, MoveTo)] == [place]


@pytest.mark.parametrize(("text", "context"), [(t, HOST) for t in OFF] + [(t, ESPAÑOL) for t in CANCELADO])
def test_calling_off_is_heard_and_nothing_else(text, context):
    assert [type(i) for i in read(text, context).intents] == [CallOff]


@pytest.mark.parametrize("text", [t for t, _ in TIMES] + list(OFF))
def test_a_guest_changes_nothing_by_it(text):
    for place in ("board", None):
        found = read(text, replace(HOST, host=False, own_promises=(), replying_to=place)).intents

        assert not [i for i in found if isinstance(i, HOSTS)]


@pytest.mark.parametrize("text", NOT_SAID)
def test_what_only_sounds_like_it_is_not_heard(text):
    for context in (HOST, ESPAÑOL, OPEN):
        assert not [i for i in read(text, context).intents if isinstance(i, HOSTS)]


@pytest.mark.parametrize("text", ["let's move it to Sunday", "moved to the scout hut"])
def test_in_the_open_chatter_the_host_is_asked(text):
    reading = read(text, OPEN)

    assert (reading.sure, reading.question is not None) == (False, True)


def test_how_many_in_all_is_no_party():
    assert [type(i) for i in read("only 12 people in all", HOST).intents] == [Resize]


def test_what_a_host_brings_is_heard_beside_the_new_hour():
    found = read("it's at 6 now, I'm bringing slaw for 12", HOST).intents

    assert {i.kind for i in found} >= {"reschedule", "promise"}


@pytest.mark.parametrize(
    ("text", "language"), [("not sure yet", "en"), ("don't know", "en"), ("later", "en"), ("todavía no sé", "es")]
)
def test_an_answer_may_leave_the_question_open(text, language):
    assert says_later(text, language)


@pytest.mark.parametrize("text", ["the hall", "at the mill", "30", "behind the later church"])
def test_a_place_does_not_leave_it_open(text):
    assert not says_later(text)


@pytest.mark.parametrize("text", ["dinner is at 6 now", "ok moving it to 6:30", "it's at 6, not 5"])
def test_an_hour_the_host_tells_the_open_group_is_taken(text):
    reading = read(text, OPEN)

    assert reading.sure
    assert [i.kind for i in reading.intents] == ["reschedule"]


@pytest.mark.parametrize(("text", "hour"), [("yes but at 4 not 5", "4"), ("sorry no, 4 was right", "4")])
def test_an_hour_is_set_right_against_the_old_one(text, hour):
    reading = read(text, AT_FIVE)

    assert [(i.kind, i.words) for i in reading.intents] == [("reschedule", hour)]


def test_another_place_under_a_roof_comes_with_its_kitchen():
    move, kitchen = read("moving inside to the clubhouse, there's one oven and 2 burners", AT_FIVE).intents

    assert (move.place, move.setting) == ("the clubhouse", "indoor")
    assert kitchen.words == "one oven and 2 burners"
