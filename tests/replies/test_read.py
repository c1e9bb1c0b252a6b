"""What guests' sentences mean, one claim each."""

from __future__ import annotations

from planning.potluck import Answer, Party
from planning.replies import AddPromise, ReplyContext, SetAnswer, SetNeeds, SetParty, read

RAVI = ReplyContext("ravi", "Ravi", "board", guests=(("ravi", "Ravi"), ("pat", "Pat")))


def test_one_sentence_may_hold_answer_party_need_and_promise() -> None:
    reading = read("3 of us, one vegetarian, slaw for 12", RAVI)

    assert reading.sure
    answer = next(i for i in reading.intents if isinstance(i, SetAnswer))
    party = next(i for i in reading.intents if isinstance(i, SetParty))
    needs = next(i for i in reading.intents if isinstance(i, SetNeeds))
    promise = next(i for i in reading.intents if isinstance(i, AddPromise))
    assert (answer.answer, party.party, needs.needs[0].need) == (Answer.YES, Party(3), "vegetarian")
    assert (promise.dish, promise.servings) == ("slaw", 12)


def test_ages_put_children_into_their_age_group() -> None:
    reading = read("me, my wife and the three girls (4, 7 and 9)", RAVI)

    assert [i.party for i in reading.intents if isinstance(i, SetParty)] == [Party(adults=2, children=3)]


def test_a_joke_changes_nothing() -> None:
    assert read("just kidding, not coming", RAVI).intents == ()
