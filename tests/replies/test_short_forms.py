"""Answers of a few words, ledgers of people, words behind a dish: the short forms most messages have."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.potluck import Answer, Party
from planning.replies import AddPromise, ChangePromise, DropPromise, ReplyContext, SetAnswer, SetNeeds, SetParty, read

GUESTS = (("ravi", "Ravi"), ("pat", "Pat"))
BOARD = ReplyContext("ravi", "Ravi", "board", guests=GUESTS)
OPEN = ReplyContext("ravi", "Ravi", None, guests=GUESTS)
THREE = ReplyContext("ravi", "Ravi", "board", guests=GUESTS, party=Party(3), answer=Answer.YES)
SLAW = ReplyContext("ravi", "Ravi", "board", guests=GUESTS, own_promises=(("p1", "slaw"),), answer=Answer.YES)


def answers(text: str, context: ReplyContext = BOARD) -> list[Answer]:
    return [i.answer for i in read(text, context).intents if isinstance(i, SetAnswer) and not i.implied]


def party(text: str, context: ReplyContext = BOARD) -> list[tuple[Party, bool]]:
    return [(i.party, i.relative) for i in read(text, context).intents if isinstance(i, SetParty)]


def dishes(text: str, context: ReplyContext = BOARD) -> list[tuple[str, float | None, str | None]]:
    return [(i.dish, i.servings, i.quantity) for i in read(text, context).intents if isinstance(i, AddPromise)]


@pytest.mark.parametrize(
    ("text", "answer"),
    [
        ("add us to the list", Answer.YES),
        ("that's the plan", Answer.YES),
        ("we got the day off", Answer.YES),
        ("not gonna miss it", Answer.YES),
        ("got work", Answer.NO),
        ("kids have a tournament", Answer.NO),
        ("no sitter", Answer.NO),
        ("would if I could", Answer.NO),
        ("don't count on me", Answer.NO),
        ("gotta ask my boss", Answer.MAYBE),
        ("depends if the car is fixed", Answer.MAYBE),
        ("60 percent yes", Answer.MAYBE),
    ],
)
def test_an_answer_of_a_few_words_is_one_below_the_board(text: str, answer: Answer) -> None:
    assert answers(text) == [answer]


@pytest.mark.parametrize("text", ["got work", "that's the plan", "no sitter", "too far", "kids have a tournament"])
def test_the_same_words_mean_nothing_in_the_open_group(text: str) -> None:
    assert read(text, OPEN).intents == ()


def test_a_reason_with_regret_is_a_no_without_a_question() -> None:
    reading = read("I'm afraid we are away that weekend. Have a lovely time!", BOARD)

    assert (reading.sure, answers("I'm afraid we are away that weekend.")) == (True, [Answer.NO])


def test_a_reason_without_regret_is_asked_about() -> None:
    assert read("we are away that weekend", BOARD).question is not None


@given(adults=st.integers(1, 9), kids=st.integers(0, 9), sign=st.sampled_from([": ", " ", " x ", " - "]))
def test_a_ledger_of_people_is_what_it_says(adults: int, kids: int, sign: str) -> None:
    text = f"adults{sign}{adults}, kids{sign}{kids or 'no'}"

    assert party(text) == [(Party(adults, 0, kids), False)]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("save us 4 spots", (Party(4), False)),
        ("2A 2K", (Party(2, 0, 2), False)),
        ("mom says we're coming, 5 of us", (Party(5), False)),
        ("yep + hubby + 2 kiddos", (Party(2, 0, 2), False)),
        ("me my sister and her two kids", (Party(2, 0, 2), False)),
        ("two of us can come, one can't", (Party(2), False)),
    ],
)
def test_people_are_counted_however_they_are_listed(text: str, expected: tuple[Party, bool]) -> None:
    assert party(text) == [expected]


def test_whoever_is_known_may_say_only_the_new_number() -> None:
    assert party("actually 4", THREE) == [(Party(4), False)]


def test_one_less_of_those_known_is_one_less() -> None:
    assert party("headcount down by one", THREE) == [(Party(-1), True)]


def test_a_chair_that_may_be_there_counts_nobody() -> None:
    assert party("I should be glad of a chair with arms, if there is one.") == []


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("watermelon, 2 big ones", ("watermelon", None, "2")),
        ("ham, 5 lb sliced", ("ham", None, "5 lb")),
        ("brisket, 12 lbs, smoked, done by 4", ("brisket", None, "12 lbs")),
        ("bread two loaves", ("bread", None, "two loaves")),
        ("I'll do a vegan chili, label and all", ("vegan chili", None, None)),
        ("roast veg tray, 40 min at 425", ("roast veg tray", None, None)),
        ("I shall bring scalloped potatoes, enough for ten or twelve", ("scalloped potatoes", 11, None)),
    ],
)
def test_words_behind_a_dish_that_say_how_it_is_are_no_dish(
    text: str, expected: tuple[str, float | None, str | None]
) -> None:
    assert dishes(text) == [expected]


def test_dishes_in_a_row_without_commas_are_told_apart() -> None:
    assert [d for d, _, _ in dishes("I'll take care of plates forks and cups")] == ["plates", "forks", "cups"]


def test_an_offer_put_as_a_question_is_asked_about() -> None:
    reading = read("would pasta salad be ok?", BOARD)

    assert reading.question is not None
    assert dishes("would pasta salad be ok?") == [("pasta salad", None, None)]


def test_dropping_a_dish_off_is_not_dropping_it() -> None:
    found = read("can't come but will drop off the slaw", SLAW).intents

    assert not any(isinstance(i, DropPromise) for i in found)


def test_less_of_a_dish_is_another_size_of_it() -> None:
    found = read("less slaw, just 8 servings", SLAW).intents

    assert [(i.promise, i.servings) for i in found if isinstance(i, ChangePromise)] == [("p1", 8)]


def test_gf_behind_a_dish_is_no_girlfriend() -> None:
    assert not any(isinstance(i, (SetNeeds, SetParty)) for i in read("turkey chili for 8, gf df", BOARD).intents)


def test_a_joke_in_front_takes_back_only_itself() -> None:
    assert answers("jk im coming") == [Answer.YES]


def test_no_way_turns_what_follows() -> None:
    assert answers("no way I can make it") == [Answer.NO]


@pytest.mark.parametrize("sign", ["(", "and ", "x\n", "gf, ", "1. ", "the one with "])
def test_a_long_message_of_one_thing_is_read_to_an_end(sign: str) -> None:
    assert read(sign * (4096 // len(sign)), BOARD) is not None
