"""Questions about raw milk, raw eggs and the like, and foods somebody swells up from."""

import pytest

from planning.safety.risky import risky, swells_from


@pytest.mark.parametrize(
    ("words", "tag"),
    [
        ("i'd bring the tiramisu but it has raw eggs, is that a problem?", "raw-egg"),
        ("the cheese is raw milk, can i eat it?", "unpasteurized"),
        ("el queso es de leche bronca, lo puedo comer?", "unpasteurized"),
        ("there's feta in it, ok for me? i'm pregnant", "soft-cheese"),
        ("can a pregnant woman eat the ceviche?", "raw-animal"),
        ("la mayonesa lleva huevo crudo, ¿puede comerla una embarazada?", "raw-egg"),
    ],
)
def test_a_question_about_risky_food_is_known(words, tag):
    assert tag in [found for found, _ in risky(words)]


@pytest.mark.parametrize("words", ["i bring feta", "who brings sushi?", "is the salad ok?", "we love tiramisu"])
def test_other_words_are_no_such_question(words):
    assert risky(words) == ()


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("please no kiwi, my daughter swells up", "my daughter is allergic to kiwi"),
        ("no shellfish please, i end up in hospital", "i am allergic to shellfish"),
        ("no cashews because my son breaks out", "my son is allergic to cashews"),
        ("no worries, my daughter is fine", None),
        ("no pork for us", None),
    ],
)
def test_a_food_somebody_swells_up_from_is_an_allergy(words, said):
    assert swells_from(words) == said
