"""Coming, bringing, counting and asking in the manners of people who write to the bot."""

from __future__ import annotations

import pytest

from planning.potluck import Answer, Party
from planning.replies import AddPromise, Ask, SetAnswer, SetNeeds, SetParty, read
from tests.replies.corpus import context_of

BOARD, CHAT = context_of("board"), context_of("chat")


def answers(text: str) -> list[Answer]:
    return [i.answer for i in read(text, BOARD).intents if isinstance(i, SetAnswer)]


def dishes(text: str) -> list[str]:
    return [i.dish.lower() for i in read(text, BOARD).intents if isinstance(i, AddPromise)]


def parties(text: str, known: str = "board") -> list[Party]:
    return [i.party for i in read(text, context_of(known)).intents if isinstance(i, SetParty)]


def topics(text: str) -> list[str]:
    return [i.topic for i in read(text, BOARD).intents if isinstance(i, Ask)]


@pytest.mark.parametrize(
    "text",
    [
        "we'll certainly be present", "showing up for sure", "it would be a pleasure to join you", "pleased to accept",
        "we are going to attend the supper", "I go with pleasure", "count me present", "nothing could keep me away",
        "wouldn't dream of missing it", "you may expect us", "gladly accept, thank you",
    ],
)  # fmt: skip
def test_a_yes_in_any_manner_is_a_yes(text: str) -> None:
    assert answers(text) == [Answer.YES]


@pytest.mark.parametrize(
    "text",
    [
        "we can't be present that evening", "I am prevented from attending", "I regret I shall be unable to attend",
        "not gonna make it", "it is not possible for me to come", "I must excuse myself this time",
        "I won't be able to show up",
    ],
)  # fmt: skip
def test_a_no_in_any_manner_is_a_no(text: str) -> None:
    assert answers(text) == [Answer.NO]


@pytest.mark.parametrize(
    "text",
    ["may or may not turn up", "I can't promise yet", "it hangs on my mother's health", "will know thursday"],
)
def test_a_maybe_in_any_manner_is_a_maybe(text: str) -> None:
    assert answers(text) == [Answer.MAYBE]


@pytest.mark.parametrize(
    ("text", "dish"),
    [
        ("rocking up with nachos", "nachos"), ("I should like to bring a trifle for ten", "trifle"),
        ("you may count on me for the lemonade", "lemonade"), ("I undertake to supply the coffee", "coffee"),
        ("allow me to contribute a quiche", "quiche"), ("imma bring cornbread", "cornbread"),
        ("add lasagna to my name", "lasagna"), ("hauling in a keg of root beer", "root beer"),
    ],
)  # fmt: skip
def test_a_dish_is_brought_by_any_verb_of_bringing(text: str, dish: str) -> None:
    assert dishes(text) == [dish]


@pytest.mark.parametrize("text", ["pulling up weeds all day", "I turned up the heating", "rolling up my sleeves now"])
def test_a_verb_of_coming_with_another_sense_says_nothing(text: str) -> None:
    assert read(text, BOARD).intents == ()


def test_nobody_in_the_open_chat_is_answered_for_by_a_manner() -> None:
    assert read("with pleasure, see you at the dentist", CHAT).intents == ()


def test_what_one_always_has_is_no_dish() -> None:
    assert dishes("bringing my charm and my bad knee") == []


@pytest.mark.parametrize(
    ("text", "party"),
    [
        ("me and two from the choir", Party(3)), ("me plus four of the lads", Party(5)),
        ("we're seven persons, two of them small children", Party(5, 0, 2)),
        ("We are four, from these one is a baby", Party(3, 0, 0, 0, 1)),
        ("2 adults and a 7mo", Party(2, 0, 0, 0, 1)),
    ],
)  # fmt: skip
def test_people_are_counted_by_what_they_are_part_of(text: str, party: Party) -> None:
    assert parties(text) == [party]


def test_a_seat_less_is_one_fewer() -> None:
    assert parties("one seat less please", "board=3a") == [Party(-1)]


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("parking?", "host"), ("dress code?", "host"), ("start time??", "when"), ("location?", "where"),
        ("gaps?", "missing"), ("veggie options?", "can-eat"), ("no one told me what time", "when"),
        ("nobody has said where it is", "where"), ("I still don't know what to bring", "what-should-i-bring"),
        ("⏰?", "when"), ("overview please", "missing"),
    ],
)  # fmt: skip
def test_a_question_of_few_words_is_one(text: str, topic: str) -> None:
    assert topics(text) == [topic]


@pytest.mark.parametrize(
    "text", ["my cousin is gluten free but she lives in Lima", "my uncle has a nut allergy but he isn't coming"]
)
def test_the_needs_of_who_does_not_come_are_not_noted(text: str) -> None:
    assert not any(isinstance(i, SetNeeds) for i in read(text, BOARD).intents)


def test_an_allergy_is_noted_though_somebody_else_stays_away() -> None:
    found = read("I'm allergic to peanuts but my brother isn't coming", BOARD).intents

    assert [n.need for i in found if isinstance(i, SetNeeds) for n in i.needs] == ["peanut"]


@pytest.mark.parametrize(
    "text",
    ["had I a smoker I would do ribs for 12", "were I younger I'd bring lasagna", "if I owned a grill I'd do ribs"],
)
def test_what_might_be_is_no_promise(text: str) -> None:
    assert dishes(text) == []


@pytest.mark.parametrize(
    "text",
    [
        "my son is allergic to peanuts and my husband isn't coming",
        "my son is allergic to peanuts and he is in the car with us",
        "my sister is allergic to peanuts but she lives in the same house",
    ],
)
def test_an_allergy_is_never_lost_to_somebody_elses_absence(text: str) -> None:
    needs = [n.need for i in read(text, BOARD).intents if isinstance(i, SetNeeds) for n in i.needs]

    assert needs == ["peanut"]
