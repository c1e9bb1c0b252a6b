"""Spanish by its parts: forms of verbs, persons counted off, things and amounts, slips of the pen."""

from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.replies import read
from planning.replies.spanish import message_of
from planning.replies.spanish.members import counts_of, groups
from planning.replies.spanish.spelling import mended
from planning.replies.spanish.things import read_things
from planning.replies.spanish.verbs import conjugate, verbs
from tests.replies.corpus import context_of, said
from tests.replies.stress import fates


def pieces(text: str, place: str = "board") -> list[tuple[str, str]]:
    reading = read(text, replace(context_of(place), language="es"))
    return [p for i in reading.intents if not getattr(i, "implied", False) for p in said(i)]


@pytest.mark.parametrize(
    ("verb", "irregular", "slot", "form"),
    [  # forms as the grammars of the language give them, from memory
        ("llevar", "", "f1", "llevaremos"),
        ("ofrecer", "", "1s", "ofrezco"),
        ("acercar", "", "p1", "acerque"),
        ("conseguir", "change=e>i", "1s", "consigo"),
        ("conseguir", "change=e>i", "3s", "consigue"),
        ("contar", "change=o>ue", "3p", "cuentan"),
        ("caer", "1s=caigo s=caig", "p3", "cayeron"),
        ("traer", "1s=traigo s=traig past=traj", "p3", "trajeron"),
        ("jugar", "change=u>ue", "s1", "juegue"),
        ("recoger", "", "1s", "recojo"),
    ],
)
def test_verbs_have_the_forms_of_the_grammar(verb: str, irregular: str, slot: str, form: str) -> None:
    assert form in conjugate(verb, irregular)[slot]


def test_no_form_has_an_accent_or_a_space() -> None:
    assert all(f.isalpha() and f == f.lower() for v in verbs() for forms in v.forms.values() for f in forms)


@pytest.mark.parametrize(
    ("words", "party"),
    [
        ("mi mujer , yo y los peques ( 4 y 7 )", {"adults": 1, "children": 2}),
        ("2 mayores , un crio de 7 y una de 2", {"adults": 2, "children": 1, "toddlers": 1}),
        ("mis suegros y el bebe de 8 meses", {"adults": 2, "infants": 1}),
        ("los mellizos de 14 años", {"teens": 2}),
        ("mi hermano de 15", {"teens": 1}),
    ],
)
def test_persons_are_counted_off_with_their_ages(words: str, party: dict[str, int]) -> None:
    found = counts_of(groups(words.split()))

    assert {k: v for k, v in found.items() if v} == party


@given(st.integers(1, 12), st.integers(4, 12))
def test_so_many_children_of_one_age_are_so_many_children(count: int, age: int) -> None:
    assert counts_of(groups(f"{count} niños de {age} años".split()))["children"] == count


@pytest.mark.parametrize(
    ("words", "amount"),
    [
        ("docena y media de empanadas", "1.5 docena"),
        ("un par de botellas de vino", "2 botellas"),
        ("medio kilo de pan", "0.5 kilo"),
        ("2 kilos y medio de arroz", "2.5 kilos"),
        ("vino , 3 botellas", "3 botellas"),
        ("tamales ( 30 )", "30"),
    ],
)
def test_amounts_are_told_before_and_behind(words: str, amount: str) -> None:
    things, _ = read_things(words.split(), 0)

    assert [t.quantity for t in things] == [amount]


@given(st.integers(2, 200))
def test_for_how_many_is_read_wherever_it_is_said(n: int) -> None:
    for words in (f"flan para {n} personas", f"flan , que alcance como para {n}", f"flan ( para {n} )"):
        things, _ = read_things(words.split(), 0)

        assert [t.servings for t in things] == [float(n)]


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("alerjica", "alergica"),
        ("ensalda", "ensalada"),
        ("bejetariana", "vegetariana"),
        ("grcias", "gracias"),
    ],
)
def test_slips_are_mended_into_words_of_ours(typed: str, meant: str) -> None:
    assert mended(typed) == meant


@pytest.mark.parametrize("word", ["cansada", "verano", "coche", "alegre", "ventana", "camiseta", "perro", "lunes"])
def test_real_words_stay_as_they_are(word: str) -> None:
    assert mended(word) is None


def test_numbers_of_several_words_are_one() -> None:
    assert message_of("treinta y cinco empanadas").plain == "35 empanadas"


def test_what_was_brought_once_is_told_apart_by_its_accent() -> None:
    assert pieces("llevo ensalada", "chat") == [("bring", "ensalada|salad||")]
    assert pieces("llevó ensalada", "chat") == []


def test_a_dish_named_before_is_taken_off_by_a_pronoun() -> None:
    assert pieces("La slaw y yo nos dimos un tiempo. Sacala de la lista", "bot+slaw") == [("drop", "p1")]


def test_a_throat_that_closed_once_makes_an_allergy_severe() -> None:
    assert pieces("mi hijo no puede comer gambas, la última vez se le cerró la garganta") == [("needs", "shellfish!!")]


def test_a_spanish_sentence_told_otherwise_is_seldom_read_as_something_else() -> None:
    tally = Counter(became for _, became, _, _ in fates(every=7, spanish=True))

    assert tally["wrong silent"] / tally.total() <= 0.01
    assert tally["kept"] / tally.total() >= 0.94
