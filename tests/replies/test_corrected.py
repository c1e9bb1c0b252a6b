"""Two halves of a message that belong together: how many more and how many that makes, what instead of what."""

from dataclasses import replace

import pytest

from planning.potluck import Answer, Party
from planning.replies import AddPromise, ChangePromise, DropPromise, ReplyContext, SetParty, read

COOK = ReplyContext(
    "w", "Wes", "board", guests=(("w", "Wes"),), own_promises=(("p1", "flan"),), party=Party(4), answer=Answer.YES
)
ES = replace(COOK, language="es", party=Party(5, 2, 1, 1))


@pytest.mark.parametrize("text", ["+2, so 3", "ok wes +2, so 3"])
def test_two_more_than_oneself_make_three(text: str) -> None:
    reading = read(text, COOK)

    assert reading.sure
    assert [i.party for i in reading.intents if isinstance(i, SetParty)] == [Party(3)]


def test_more_of_several_ages_add_up_to_the_total_that_is_told() -> None:
    reading = read("oigan siempre no somos 9, somos 14, llegaron los de Puebla. 3 niños más y 2 adultos", ES)

    assert reading.sure
    assert [i.party for i in reading.intents if isinstance(i, SetParty)] == [Party(7, 2, 4, 1)]


@pytest.mark.parametrize(
    ("context", "text", "dish"),
    [
        (ES, "el flan mejor no, llevo pastel de tres leches, 1 charola", "pastel de tres leches"),
        (ES, "flan no, tres leches", "tres leches"),
        (COOK, "flan no, potato salad instead", "potato salad"),
    ],
)
def test_what_is_dropped_makes_room_for_what_comes_instead(context: ReplyContext, text: str, dish: str) -> None:
    reading = read(text, context)

    assert reading.sure
    assert [i.promise for i in reading.intents if isinstance(i, DropPromise)] == ["p1"]
    assert [i.dish for i in reading.intents if isinstance(i, AddPromise)] == [dish]


@pytest.mark.parametrize(
    ("context", "text"), [(ES, "hago más, para 22 en total"), (COOK, "i'll make more, for 22 in all")]
)
def test_more_of_ones_only_dish_changes_how_many_it_is_for(context: ReplyContext, text: str) -> None:
    reading = read(text, context)

    assert [(i.promise, i.servings) for i in reading.intents if isinstance(i, ChangePromise)] == [("p1", 22)]
    assert not any(isinstance(i, SetParty) for i in reading.intents)


@pytest.mark.parametrize("text", ["so 3 of us watched it", "no no, the flan is fine", "that makes 6 of you crazy lol"])
def test_talk_with_a_total_changes_no_party(text: str) -> None:
    assert not any(isinstance(i, SetParty) for i in read(text, replace(COOK, replying_to=None)).intents)


@pytest.mark.parametrize(
    ("text", "quantity", "frozen"),
    [
        ("we're 2. I'll do the turkey! 16 lb frozen one, roasting at ours", "16 lb", 16.0),
        ("I'm bringing the ham. it's about 8 pounds", "8 pounds", None),
    ],
)
def test_what_a_dish_weighs_may_stand_in_the_next_sentence(text: str, quantity: str, frozen: float | None) -> None:
    reading = read(text, replace(COOK, own_promises=(), party=None, answer=Answer.NONE))

    made = next(i for i in reading.intents if isinstance(i, AddPromise))
    assert (made.quantity, made.frozen_lb) == (quantity, frozen)
    assert reading.unread == ()
