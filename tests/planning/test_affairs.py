"""Money, hosting, what was thrown out and whose pot it is: whole sentences of a kind, and what only sounds like one."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.theday.affairs import currency_of, read_affairs


@pytest.mark.parametrize(
    ("words", "sums"),
    [
        ("i paid $42 for plates and drinks, split it?", [("", "42", "plates and drinks")]),
        ("bought drinks 36 dollars and tomas paid 12 for cheese", [("", "36", "drinks"), ("tomas", "12", "cheese")]),
        ("omar paid 9 for lemons, tess 22 for cheese", [("omar", "9", "lemons"), ("tess", "22", "cheese")]),
        ("turkey was 38 bucks. ling paid 15 for wine", [("", "38", "turkey"), ("ling", "15", "wine")]),
        ("beer was 36, rolls 22.80. rob got 14.60 cheese and crisps",
         [("", "36", "beer"), ("", "22.80", "rolls"), ("rob", "14.60", "cheese and crisps")]),
        ("plates and cups were 19.40", [("", "19.40", "plates and cups")]),
        ("31 for ice and charcoal from me", [("", "31", "ice and charcoal")]),
        ("gasté 640 pesos en tortillas y platos, cómo quedamos", [("", "640", "tortillas y platos")]),
        ("Beto pagó 200 por el pastel", [("beto", "200", "el pastel")]),
        ("pagué 45.000 en hielo", [("", "45000", "hielo")]),
    ],
)
def test_each_sum_is_read_with_who_paid_it_and_what_for(words, sums):
    found = read_affairs(words) or read_affairs(words, "es")

    assert [(a.name, str(a.amount), a.thing) for a in found] == sums


@pytest.mark.parametrize(
    ("words", "kind", "name", "thing"),
    [
        ("hope is my cohost", "cohost", "hope", ""),
        ("lia is host now", "host", "lia", ""),
        ("I have a fever. Hope can you take over?", "host-asked", "hope", ""),
        ("ok i'm taking over", "take-over", "", ""),
        ("tossed mine. bringing 3 pizzas instead", "binned", "", "mine"),
        ("I threw the chili out", "binned", "", "the chili"),
        ("so when does my lasagna go in then?", "when-dish", "", "lasagna"),
        ("when do i have to take the turkey out of the freezer", "when-dish", "", "turkey"),
        ("is the lasagna ok for yuki?", "ok-for", "yuki", "lasagna"),
        ("whats safe for june", "ok-for", "june", ""),
        ("whose blue bowl is this?", "whose", "", ""),
        ("bread knife is still there, its mine", "whose", "", ""),
    ],
)
def test_a_sentence_of_affairs_is_read(words, kind, name, thing):
    (found,) = read_affairs(words)

    assert (found.kind, found.name, found.thing) == (kind, name, thing)


@pytest.mark.parametrize(
    "words",
    [
        "I paid attention",
        "dinner was 7",
        "we are 12",
        "bringing 12 rolls for the kids",
        "my wife is at work",
        "my son is in hospital",
        "the rolls are mine",
        "can vegans eat the stew",
        "what can i eat",
        "when do we eat",
        "is there room in the bin",
        "pago yo luego",
    ],
)
def test_what_only_sounds_like_it_is_left_alone(words):
    assert [a for lang in ("en", "es") for a in read_affairs(words, lang)] == []


@given(st.decimals(min_value=Decimal("0.01"), max_value=Decimal(99999), places=2), st.sampled_from(["$", "€", "£"]))
def test_a_sum_is_read_to_the_cent(amount, sign):
    (found,) = read_affairs(f"i paid {sign}{amount} for ice")

    assert found.amount == amount


@given(st.text(max_size=80))
def test_any_words_at_all_are_read_without_harm(words):
    assert all(a.amount is None or a.amount > 0 for lang in ("en", "es") for a in read_affairs(words, lang))


def test_a_peso_and_a_bare_sum_are_those_of_the_place():
    assert currency_of("peso", "America/Bogota", None) == "COP"
    assert currency_of("peso", "America/Mexico_City", None) == "MXN"
    assert currency_of("", "Europe/Madrid", None) == "EUR"
    assert currency_of("", "America/Chicago", None) == "USD"
    assert currency_of("", "America/Chicago", "EUR") == "EUR"


@pytest.mark.parametrize(
    ("words", "language", "sums"),
    [
        ("he pagado 24 de bebidas y luz 9 de hielo, lo repartimos", "es", [("", "24"), ("luz", "9")]),
        ("bought drinks 36 dollars and tomas paid 12 for cheese", "en", [("", "36"), ("tomas", "12")]),
        ("i paid 12 for wine, mei 8.50 for ice and ravi 20 for the meat", "en",
         [("", "12"), ("mei", "8.50"), ("ravi", "20")]),
    ],
)  # fmt: skip
def test_sums_of_several_people_in_one_sentence_are_each_their_own(words, language, sums):
    assert [(a.name, str(a.amount)) for a in read_affairs(words, language)] == sums


@pytest.mark.parametrize(
    ("words", "language"),
    [("vale, la tiro", "es"), ("las tiramos todas", "es"), ("ok binning it", "en"), ("i'll throw it out", "en")],
)
def test_throwing_out_what_was_spoken_of_is_read(words, language):
    assert [a.kind for a in read_affairs(words, language)] == ["binned"]


@pytest.mark.parametrize(
    ("words", "paid"),
    [
        ("kev's gas 32, i got drinks 27.50", [("kev", "32", "gas"), ("", "27.50", "drinks")]),
        ("pria's chickens were 17.98, i did 6 for juice", [("pria", "17.98", "chickens"), ("", "6", "juice")]),
        ("room was 45, i paid", [("", "45", "room")]),
        ("41.20 on me", [("", "41.20", "")]),
    ],
)
def test_sums_are_whose_the_words_say(words: str, paid: list[tuple[str, str, str]]) -> None:
    assert [(a.name, str(a.amount), a.thing) for a in read_affairs(words)] == paid


@pytest.mark.parametrize("words", ["tom's chili 12", "chili for 12", "we are 14 for lunch"])
def test_a_figure_beside_a_dish_is_no_money(words: str) -> None:
    assert not any(a.kind == "paid" for a in read_affairs(words))


@pytest.mark.parametrize(
    ("words", "language", "sums"),
    [
        ("soda and ice cost me 18", "en", {"soda and ice": "18"}),
        ("i spent 40 on meat and 12 on plates, how much each?", "en", {"meat": "40", "plates": "12"}),
        (
            "gasté 1800 pesos en la carne y 350 en los platos, cuánto le toca a cada quien?", "es",
            {"la carne": "1800", "los platos": "350"},
        ),
    ],
)  # fmt: skip
def test_two_sums_of_one_person_are_two_and_a_thing_is_named_whole(
    words: str, language: str, sums: dict[str, str]
) -> None:
    assert {a.thing: str(a.amount) for a in read_affairs(words, language)} == sums


@pytest.mark.parametrize(
    ("words", "name", "to", "amount"),
    [
        ("gave Walt 8 in cash", "", "walt", "8"),
        ("paid walt back 12.50", "", "walt", "12.50"),
        ("mei sent 20 to walt", "mei", "walt", "20"),
        ("settled up with Walt", "", "walt", "None"),
        ("ya le di 300", "", "", "300"),
        ("a Walt ya le pagué 50", "", "walt", "50"),
        ("Walt le pagó 200 a Mei", "walt", "mei", "200"),
    ],
)
def test_what_one_gives_another_is_told_apart_from_what_is_paid_for_all(words, name, to, amount):
    found = (read_affairs(words) or read_affairs(words, "es"))[0]

    assert (found.kind, found.name, found.to, str(found.amount)) == ("handed", name, to, amount)


@pytest.mark.parametrize("words", ["gave Walt 2 trays", "gave the kids 2 cookies", "the ham is 12 lb"])
def test_what_is_given_is_not_always_money(words):
    assert not any(a.kind in ("handed", "paid") for a in read_affairs(words))


@pytest.mark.parametrize(
    ("words", "language", "amount", "thing"),
    [
        ("I paid 31.40 for cheese and wine. no wait 13.40", "en", "13.40", "cheese and wine"),
        ("I spent 18 on cheese, sorry 15", "en", "15", "cheese"),
        ("Pagué 300 por el hielo. Perdón, fueron 350", "es", "350", "el hielo"),
        ("el pastel costó 900 pesos, lo pagué yo", "es", "900", "pastel"),
        ("las bebidas salieron en 640, las puse yo", "es", "640", "bebidas"),
        ("I paid 9 for spuds, split between everyone who came", "en", "9", "spuds"),
    ],
)
def test_a_sum_stands_as_it_was_put_right_and_for_what_it_was_paid(words, language, amount, thing):
    (paid,) = read_affairs(words, language)

    assert (str(paid.amount), paid.thing) == (amount, thing)


def test_two_sums_for_two_things_are_both_kept_whoever_says_sorry():
    assert [str(a.amount) for a in read_affairs("sorry, I paid 9 for lemons and 22 for cheese")] == ["9", "22"]
