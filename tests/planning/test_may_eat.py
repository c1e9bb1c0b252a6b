"""May somebody eat it, as people ask it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.diets.contents import contents_told, short_list
from planning.diets.mayeat import asks_about, asks_again, asks_may_eat, asks_to_avoid, honey_for_an_infant


@pytest.mark.parametrize(("words", "what"), [
    ("can he have the fried rice?", "fried rice"), ("could my daughter try a bit of your tart?", "tart"),
    ("is it ok for Lena to eat the slaw?", "slaw"), ("is the lasagna safe for my son?", "the lasagna"),
    ("¿puede mi hijo comer el mole?", "mole"), ("can I give her some of the soup?", "soup"),
])  # fmt: skip
def test_the_dish_somebody_may_eat_or_not_is_heard(words, what):
    assert asks_may_eat(words)[1] == what


@pytest.mark.parametrize("words", ["he can have the fried rice", "can you bring the rice?", "we can have a look at it"])
def test_other_words_ask_nothing_of_the_kind(words):
    assert asks_may_eat(words) is None


@pytest.mark.parametrize("words", [
    "what should she avoid from the list?", "so what can't I have?", "what must my wife stay away from?",
    "¿qué debe evitar?", "qué no puede comer mi mujer?",
])  # fmt: skip
def test_what_somebody_should_leave_alone_is_asked(words):
    assert asks_to_avoid(words)


@pytest.mark.parametrize("words", ["what should I bring?", "what can she eat?", "what should we have ready?"])
def test_what_to_bring_or_to_eat_is_another_question(words):
    assert not asks_to_avoid(words)


@pytest.mark.parametrize("words", [
    "could the 4 month old have a bit of cake? it's just honey", "is honey ok to give the baby?",
    "our newborn had a lick of honey", "can my 11-month-old taste the honey glaze?", "¿le puedo dar miel al bebé?",
    "el niño tiene ocho meses, puede probar la miel?",
])  # fmt: skip
def test_honey_and_a_child_under_one_are_heard_together(words):
    assert honey_for_an_infant(words)


@pytest.mark.parametrize("words", [
    "no honey for the baby please", "honey cake for 12", "the baby has a nap", "baby carrots with honey for 20",
    "my 4 year old eats honey", "melon and honeydew, the baby eats that",
])  # fmt: skip
def test_other_words_of_honey_or_babies_raise_no_alarm(words):
    assert not honey_for_an_infant(words)


def test_the_same_is_asked_again_and_of_another_dish():
    assert all(asks_again(words) for words in ("and now?", "¿y ahora?"))
    assert not asks_again("now what time is it?")
    assert asks_about("and the spring rolls?") == "the spring rolls"
    assert asks_about("and then we left") == ""


@pytest.mark.parametrize(("words", "dish", "holds"), [
    ("there's egg and soy and shrimp in the rice btw", "the rice", ("egg", "soy", "shrimp")),
    ("one dip is taramasalata, other is hummus", "dip", ("taramasalata", "hummus")),
    ("in the fried rice: egg, soy, shrimp", "the fried rice", ("egg", "soy", "shrimp")),
    ("it'll have egg", "", ("egg",)), ("i always put anchovies in the caesar", "the caesar", ("anchovies",)),
    ("walnuts go in the brownies", "the brownies", ("walnuts",)),
    ("hay huevo y soya en el arroz", "el arroz", ("huevo", "soya")), ("there's egg in the dough", "", ("egg",)),
])  # fmt: skip
def test_what_is_told_in_passing_is_of_the_dish_it_names(words, dish, holds):
    (told,) = contents_told(words)

    assert (told.dish, told.holds) == (dish, holds)


def test_a_short_list_holds_what_is_said_and_not_what_is_denied():
    told = short_list("pork, and yes sesame seeds on top, no egg")

    assert (told.holds, told.without) == (("pork", "sesame seeds"), ("no egg",))


@pytest.mark.parametrize("words", ["we need milk", "milk please", "see you there", "do you want eggs?", "I love pork"])
def test_other_words_are_no_list(words):
    assert short_list(words) is None


@given(st.text(max_size=80))
def test_any_text_is_looked_at_without_error(text):
    asks_may_eat(text), asks_to_avoid(text), asks_again(text), asks_about(text), honey_for_an_infant(text)
    short_list(text)
