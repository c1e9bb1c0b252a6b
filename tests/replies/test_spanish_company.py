"""Spanish parties told person by person, and what is said of them; whom a message calls and whom it brings."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.potluck import Answer, Party
from planning.replies import AddPromise, ChangePromise, DropPromise, SetAnswer, SetNeeds, SetParty, read
from tests.replies.corpus import context_of

BOARD = replace(context_of("board"), language="es")


def parties(text: str, place: str = "board") -> list[Party]:
    return [i.party for i in read(text, replace(context_of(place), language="es")).intents if isinstance(i, SetParty)]


def answers(text: str) -> list[Answer]:
    return [i.answer for i in read(text, BOARD).intents if isinstance(i, SetAnswer)]


def dishes(text: str) -> list[str]:
    return [i.dish for i in read(text, BOARD).intents if isinstance(i, AddPromise)]


@pytest.mark.parametrize(
    ("text", "party"),
    [
        ("me apunto con mi novia", Party(2)),
        ("voy con Juli", Party(2)),
        ("contá conmigo y con Juli", Party(2)),
        ("con mi señora y los dos cabros chicos", Party(2, children=2)),
        ("nos sumamos, 2 mayores y 3 gurises", Party(2, children=3)),
        ("somos 5: mi mujer, los niños y yo", Party(2, children=3)),
        ("somos tres y un bebé", Party(3, infants=1)),
        ("voy con mis hijas 2", Party(1, children=2)),
        ("Voy + 1", Party(2)),
        ("Sí / 3 / flan", Party(3)),
    ],
)
def test_persons_told_one_by_one_are_one_party(text: str, party: Party) -> None:
    assert parties(text) == [party]


@given(st.integers(2, 9), st.integers(1, 5))
def test_a_party_counted_by_age_is_read_as_it_is_counted(adults: int, children: int) -> None:
    assert parties(f"vamos {adults} adultos y {children} niños") == [Party(adults, children=children)]


@pytest.mark.parametrize(
    "text", ["mi esposo y yo no vamos", "mi esposo y yo somos veganos", "voy con los niños pero sin mi marido"]
)
def test_who_is_told_of_otherwise_is_no_party(text: str) -> None:
    assert parties(text) == []


def test_whom_a_message_calls_does_not_come_along() -> None:
    assert parties("amigos, voy") == []
    assert parties("voy con dos amigos") == [Party(3)]


def test_friends_who_may_come_are_asked_about() -> None:
    reading = read("yo y quizá 3 amigos", BOARD)

    assert reading.question is not None
    assert answers("yo y quizá 3 amigos") == [Answer.YES]


def test_one_of_the_children_stays_at_home() -> None:
    assert parties("el mayor se queda con su abuela, uno menos", "board=2a2c") == [Party(0, children=-1)]


def test_a_list_with_numbers_counts_nobody_by_them() -> None:
    reading = read("1. sí voy 2. somos dos 3. llevo pan", BOARD)

    assert [i.party for i in reading.intents if isinstance(i, SetParty)] == [Party(2)]
    assert reading.question is None


@pytest.mark.parametrize(
    ("text", "named"),
    [
        ("yo el flan", ["flan"]),
        ("llevo 24 latas de cerveza", ["cerveza"]),
        ("llevo sándwiches de jamón y queso", ["sándwiches de jamón y queso"]),
        ("llevo un flan, ese con mucho caramelo", ["flan"]),
        ("pongo dos tortillas, una con cebolla y otra sin", ["tortillas"]),
        ("llevo croquetas de las de mi madre", ["croquetas"]),
        ("llevo arroz y mi marido el pernil", ["arroz", "pernil"]),
        ("llevoensalada de pasta", ["ensalada de pasta"]),
        ("servilletas, anotame", ["servilletas"]),
    ],
)
def test_a_dish_ends_where_its_name_does(text: str, named: list[str]) -> None:
    assert dishes(text) == named


def test_two_and_a_half_dozen_are_an_amount() -> None:
    reading = read("2.5 docenas de empanadas", BOARD)

    assert [(i.dish, i.quantity) for i in reading.intents if isinstance(i, AddPromise)] == [
        ("empanadas", "2.5 docenas")
    ]


@pytest.mark.parametrize("text", ["ese día trabajo", "no cuenten con nosotros", "novoy", "tengo una boda"])
def test_a_day_that_is_taken_is_a_no(text: str) -> None:
    assert answers(text) == [Answer.NO]


@pytest.mark.parametrize(("text", "answer"), [("sí puedo", Answer.YES), ("si cambio el turno, voy", Answer.MAYBE)])
def test_an_accent_tells_a_yes_from_a_condition(text: str, answer: Answer) -> None:
    assert answers(text) == [answer]


def test_never_missing_it_is_a_yes() -> None:
    assert answers("Sí obvio, contá conmigo, no me lo pierdo") == [Answer.YES]


@pytest.mark.parametrize("text", ["voy a llorar", "con tanta gente no vamos a caber", "el año que viene hago tamales"])
def test_what_only_sounds_like_an_answer_changes_nothing(text: str) -> None:
    assert read(text, BOARD).intents == ()


@pytest.mark.parametrize("text", ["listo", "dale, gracias", "órale"])
def test_thanks_for_what_the_bot_said_are_no_answer(text: str) -> None:
    assert read(text, replace(context_of("bot"), language="es")).intents == ()


def test_a_dish_taken_back_is_not_the_evening_taken_back() -> None:
    mine = replace(context_of("board+slaw"), language="es")
    reading = read("Les ruego que borren lo que ofrecí llevar; no me será posible.", mine)

    assert [type(i) for i in reading.intents] == [DropPromise]


def test_the_number_below_the_question_for_how_many_is_the_dishs() -> None:
    reading = read("como 15", replace(context_of("q:servings+slaw"), language="es"))

    assert [(i.promise, i.servings) for i in reading.intents if isinstance(i, ChangePromise)] == [("p1", 15)]


def test_of_one_need_told_twice_the_graver_counts() -> None:
    reading = read("sin gluten, soy celíaca", BOARD)

    assert [n.severity for i in reading.intents if isinstance(i, SetNeeds) for n in i.needs] == ["allergy"]


def test_a_neighbours_allergy_in_the_open_group_is_talk() -> None:
    assert read("la vecina es celíaca", replace(context_of("chat"), language="es")).intents == ()


def test_where_a_dish_goes_is_no_part_of_its_name() -> None:
    reading = read("llevo 3 docenas de empanadas al asado", replace(context_of("chat"), language="es"))

    assert [i.dish for i in reading.intents if isinstance(i, AddPromise)] == ["empanadas"]


def test_how_many_come_to_the_supper_is_heard_in_the_open_group() -> None:
    assert parties("seremos 5 en la barbacoa", "chat") == [Party(5)]
    assert parties("en casa somos cuatro y no cabemos", "chat") == []


def test_another_gathering_than_ours_is_talk() -> None:
    assert read("no voy a la reunión de vecinos", replace(context_of("chat"), language="es")).intents == ()


def test_a_diet_right_behind_a_dish_is_the_dishs() -> None:
    reading = read("Yo cocino unas lentejas veganas para 10", BOARD)

    assert not any(isinstance(i, SetNeeds) for i in reading.intents)
    assert [(i.dish, i.servings) for i in reading.intents if isinstance(i, AddPromise)] == [("lentejas veganas", 10)]


def test_what_was_made_before_is_brought_now() -> None:
    assert dishes("os llevo un bizcocho que hice ayer") == ["bizcocho"]
    assert dishes("ayer hice un bizcocho") == []


def test_the_next_time_is_not_this_one() -> None:
    assert answers("la próxima sin falta") == [Answer.NO]


@pytest.mark.parametrize(
    "text", ["traemos vino", "traeremos vino", "ya tengo comprado el vino", "habrá vino de mi parte"]
)
def test_wine_is_brought_in_many_words(text: str) -> None:
    assert dishes(text) == ["vino"]


def test_a_new_size_is_no_swap() -> None:
    reading = read("cambiad mi slaw a 16 raciones", replace(context_of("board+slaw"), language="es"))

    assert [(type(i), getattr(i, "servings", None)) for i in reading.intents] == [(ChangePromise, 16)]


@pytest.mark.parametrize("text", ["me encantaría pero estoy con covid", "mi jefe no me suelta"])
def test_what_keeps_somebody_away_is_a_no(text: str) -> None:
    assert answers(text) == [Answer.NO]
