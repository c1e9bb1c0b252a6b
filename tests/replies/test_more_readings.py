"""More of what guests and hosts mean: needs, cooking, other people, the host's own words. Sentences of our own."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime

import pytest

from planning.potluck import Answer, Party
from planning.replies import (
    AddPerson,
    AddPromise,
    Intent,
    KitchenSays,
    MoveTo,
    Reading,
    ReplyContext,
    Reschedule,
    Resize,
    SetAnswer,
    SetNeeds,
    SetParty,
    SetPregnant,
    read,
)

GUESTS = (("ravi", "Ravi"), ("pat", "Pat"), ("mei", "Mei Lin"))
BOARD = ReplyContext(
    "ravi", "Ravi", "board", guests=GUESTS, timezone="America/Chicago",
    now=datetime(2027, 9, 10, 14, tzinfo=UTC), starts_at=datetime(2027, 9, 18, 22, tzinfo=UTC),
)  # fmt: skip
PRIVATE = replace(BOARD, replying_to="bot")
CHATTER = replace(BOARD, replying_to=None)
HOST = replace(BOARD, host=True)


def one(reading: Reading, kind: type[Intent]) -> Intent:
    return next(i for i in reading.intents if isinstance(i, kind))


def test_no_need_of_a_list_is_lost_and_a_son_keeps_his_own() -> None:
    reading = read("shellfish and celery, also my son can't have mustard", PRIVATE)

    needs = {(n.need, i.member) for i in reading.intents if isinstance(i, SetNeeds) for n in i.needs}
    assert needs == {("shellfish", None), ("celery", None), ("mustard", "son")}


@pytest.mark.parametrize("text", ["gluten free too", "halal please", "vegan and gluten free", "no gluten for me"])
def test_a_bare_need_written_to_the_bot_is_a_need(text: str) -> None:
    reading = read(text, PRIVATE)

    assert reading.sure
    assert one(reading, SetNeeds)


def test_a_severe_allergy_stays_severe_and_a_pregnancy_is_heard() -> None:
    reading = read("severe peanut allergy, and I'm pregnant", BOARD)

    assert [n.severity for n in one(reading, SetNeeds).needs] == ["severe allergy"]  # type: ignore[attr-defined]
    assert one(reading, SetPregnant).pregnant  # type: ignore[attr-defined]


def test_an_allergy_told_alone_in_the_open_chatter_is_noted_with_all_that_is_named() -> None:
    reading = read("my kid has a peanut allergy, please no nuts", CHATTER)

    assert reading.sure
    assert {n.need for i in reading.intents for n in getattr(i, "needs", ())} == {"peanut", "tree-nut"}


@pytest.mark.parametrize("text", ["I'm in", "count us in!", "I'd love to come! bringing a green salad, serves 8"])
def test_a_plain_yes_in_the_open_chatter_is_taken(text: str) -> None:
    reading = read(text, CHATTER)

    assert reading.sure
    assert one(reading, SetAnswer).answer is Answer.YES  # type: ignore[attr-defined]


@pytest.mark.parametrize(
    ("text", "dish", "heat"),
    [
        ("lasagna for 12, 50 min at 375", "lasagna", "50 min at 375"),
        (
            "chili in a slow cooker for 12, 6 hours on low",
            "chili",
            "in a slow cooker 6 hours on low, slow cooker on low",
        ),
        ("rolls for 12, 15 min at 190 °C", "rolls", "15 min at 190 C"),
    ],
)
def test_words_about_cooking_stay_with_the_dish_and_never_become_one(text: str, dish: str, heat: str) -> None:
    reading = read(text, BOARD)

    promises = [i for i in reading.intents if isinstance(i, AddPromise)]
    assert [(p.dish, p.servings, p.heat_text) for p in promises] == [(dish, 12.0, heat)]


def test_what_comes_frozen_comes_with_its_pounds() -> None:
    # 1 lb = 0.45359237 kg (NIST SP 811)
    promise = one(read("a 7.5 kg frozen turkey for 16, 4 hours at 325F", BOARD), AddPromise)

    assert promise.frozen_lb == pytest.approx(16.53, abs=0.01)  # type: ignore[attr-defined]


def test_each_heat_goes_to_the_dish_before_it() -> None:
    reading = read("lasagna for 12, 50 min at 375 and rolls for 12, 15 min at 400", BOARD)

    promises = [i for i in reading.intents if isinstance(i, AddPromise)]
    assert [(p.dish, p.heat_text) for p in promises] == [("lasagna", "50 min at 375"), ("rolls", "15 min at 400")]


def test_a_known_guest_beside_a_dish_brings_it_too() -> None:
    promise = one(read("potato salad with Pat", BOARD), AddPromise)

    assert (promise.dish, promise.with_guest) == ("potato salad", "pat")  # type: ignore[attr-defined]


def test_what_another_brings_is_asked_about_and_is_not_the_writers() -> None:
    reading = read("Pat is coming and brings rolls for 12", BOARD)

    assert not reading.sure
    assert one(reading, AddPromise).by == "pat"  # type: ignore[attr-defined]
    assert [i.who for i in reading.intents if isinstance(i, SetAnswer)] == ["pat"]


def test_two_named_guests_are_both_asked_about() -> None:
    reading = read("Pat and Mei are coming", BOARD)

    assert reading.question is not None
    assert reading.question.facts["names"] == ["Pat", "Mei Lin"]


def test_kin_with_names_are_two_people_more() -> None:
    reading = read("Grandma Jo and uncle Pete are coming too", BOARD)

    assert [i.name for i in reading.intents if isinstance(i, AddPerson)] == ["Grandma Jo", "uncle Pete"]


def test_an_unknown_name_is_asked_about() -> None:
    reading = read("Ann can't come", BOARD)

    answer = one(reading, SetAnswer)
    assert (answer.who, answer.unknown_name, reading.sure) == ("", "Ann", False)  # type: ignore[attr-defined]


@pytest.mark.parametrize(
    ("text", "party"),
    [
        ("me + hubby + 2 kids (4 and 9)", Party(2, 0, 2)),
        ("me n the kids (2)", Party(1, 0, 2)),
        ("me and the kids (age 2)", Party(1, 0, 0, 1)),
        ("5 adults 2 kids 1 baby", Party(5, 0, 2, 0, 1)),
        ("2 of us", Party(2)),
    ],
)
def test_a_party_is_counted_as_people_count(text: str, party: Party) -> None:
    reading = read(text, BOARD)

    assert reading.sure
    assert one(reading, SetParty).party == party  # type: ignore[attr-defined]


def test_a_husband_who_cannot_come_is_one_adult_fewer() -> None:
    change = one(read("hubby can't come after all", replace(BOARD, party=Party(2), answer=Answer.YES)), SetParty)

    assert (change.party.adults, change.relative) == (-1, True)  # type: ignore[attr-defined]


@pytest.mark.parametrize(
    ("text", "intent"),
    [
        ("move it to Sunday 19 Sep at 4pm", Reschedule("Sunday 19 Sep at 4pm")),
        ("at the park instead", MoveTo("the park")),
        ("expecting 35 people", Resize(35)),
        ("one oven, two racks", KitchenSays("one oven, two racks")),
    ],
)
def test_the_host_changes_the_potluck_in_plain_words(text: str, intent: Intent) -> None:
    reading = read(text, HOST)

    assert reading.sure
    assert [replace(i, start=0, end=0, confidence=0.9) for i in reading.intents] == [intent]


@pytest.mark.parametrize("text", ["about 40 people", "we'll be 40"])
def test_the_size_of_it_all_is_asked_of_the_host(text: str) -> None:
    reading = read(text, HOST)

    assert (reading.sure, [i.people for i in reading.intents if isinstance(i, Resize)]) == (False, [40])


HOSTS_WORDS = ("move it to Sunday", "at the park instead", "expecting 35 people", "one oven, two racks")


@pytest.mark.parametrize("text", HOSTS_WORDS)
def test_only_the_host_changes_the_potluck(text: str) -> None:
    kinds = (Reschedule, MoveTo, Resize, KitchenSays)
    found = [i for c in (BOARD, replace(BOARD, replying_to=None)) for i in read(text, c).intents]

    assert not any(isinstance(i, kinds) for i in found)


@pytest.mark.parametrize("text", HOSTS_WORDS)
def test_in_the_open_chatter_the_hosts_words_are_at_most_asked_about(text: str) -> None:
    assert not read(text, replace(HOST, replying_to=None)).sure


def test_another_day_is_no_answer_about_this_potluck() -> None:
    assert not read("can't on Friday", BOARD).intents
    assert one(read("can't on Saturday", BOARD), SetAnswer).answer is Answer.NO  # type: ignore[attr-defined]


def test_same_here_repeats_what_the_one_before_said_of_themselves() -> None:
    below = replace(BOARD, replying_to="person", replied_text="I'm vegetarian")

    assert [n.need for n in one(read("same here", below), SetNeeds).needs] == ["vegetarian"]  # type: ignore[attr-defined]
    assert not read("same here", replace(below, replied_text="my son is vegetarian")).intents
    assert not read("same here", replace(below, replied_text="slaw is great")).intents


@pytest.mark.parametrize(
    ("text", "language"),
    [
        ("wir kommen zu zweit", "de"),
        ("je viens avec mon mari", "fr"),
        ("мы придем втроем", "other"),
    ],
)
def test_a_language_nobody_reads_is_told_and_nothing_is_changed(text: str, language: str) -> None:
    reading = read(text, BOARD)

    assert reading.intents == ()
    assert reading.question is not None
    assert (reading.question.key, reading.question.facts) == ("reply-other-language", {"language": language})


@pytest.mark.parametrize("text", ["crème brûlée for 8", "pasta e fagioli for 12", "I'll bring gazpacho for 10"])
def test_a_foreign_dish_is_not_a_foreign_language(text: str) -> None:
    assert read(text, BOARD).sure


@pytest.mark.parametrize("text", ["gazonkle for us", "gazonkle from me then"])
def test_words_to_the_bot_are_not_lost_in_silence(text: str) -> None:
    question = read(text, BOARD).question

    assert question is not None
    assert question.key == "reply-not-understood"


SMALL_TALK = ("thanks!", "lol", "👍🏽", "looks good", "wow, 24 people!", "the slaw is ready", "just kidding")


@pytest.mark.parametrize("text", SMALL_TALK)
def test_small_talk_gets_no_such_line(text: str) -> None:
    question = read(text, BOARD).question

    assert question is None or question.key != "reply-not-understood"


@pytest.mark.parametrize(
    "text",
    [
        "my husband Joe is celiac, slaw for 8",
        "the doctor told me I'm allergic to nuts",
        "no nuts in anything please",
        "kiwi makes my mouth swell",
        "peanut allergy runs in this house",
    ],
)
def test_an_allergy_written_to_the_bot_is_noted_or_asked_about_however_it_is_put(text: str) -> None:
    reading = read(text, PRIVATE)

    assert one(reading, SetNeeds)
    assert reading.sure or reading.question is not None


@pytest.mark.parametrize("text", ["nut allergy is gone", "no longer vegan", "he grew out of his milk allergy"])
def test_a_need_that_is_gone_is_taken_off_only_after_a_question(text: str) -> None:
    reading = read(text, PRIVATE)

    assert not reading.sure
    assert not any(isinstance(i, SetNeeds) and not i.cleared for i in reading.intents)
