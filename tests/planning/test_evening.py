"""What guests write on the day: whole sentences of a kind, and what only sounds like one."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.theday.evening import KINDS, of_a_table, read_evening

SAID = (
    ("we're here", "here", ""),
    ("just parked", "here", ""),
    ("I'm at the door with the rolls", "here", "rolls"),
    ("arrived 🎉", "here", ""),
    ("I forgot the dip at home, sorry!", "forgot", "dip"),
    ("left my salad on the counter at home", "forgot", "salad"),
    ("oh no, the rolls are still in my fridge", "forgot", "rolls"),
    ("we ran out of plates", "ran-out", "plates"),
    ("there's no cheese left", "ran-out", "cheese"),
    ("the slaw is all gone", "ran-out", "slaw"),
    ("I'll take the chili home", "take-home", "chili"),
    ("took home the salad", "take-home", "salad"),
    ("who wants the rest of the pie?", "rest", "pie"),
    ("anyone want to take the chili home?", "rest", "chili"),
    ("can I take the chili home?", "may-i", "chili"),
    ("the potatoes are still hard", "hard", "potatoes"),
    ("my lasagna isn't done yet", "hard", "lasagna"),
    ("left over: chili, beans", "left", "chili, beans"),
    ("pork and lasagna left", "left", "pork and lasagna"),
    ("what about the leftover chicken?", "left", "leftover chicken"),
    ("can we keep the leftovers?", "left", "leftovers"),
    ("put it back in the fridge after 20 min", "away", "it"),
    ("the chili is on ice again", "away", "chili"),
    ("i take my pot", "own-back", "pot"),
    ("damn. we forgot the shepherds pie at home, we're 50 minutes away already", "forgot", "shepherds pie"),
    ("crisp forgot at home, going back, there 17:45", "forgot", "crisp"),
    ("aargh forgot the cake on the kitchen table at home", "forgot", "cake"),
    ("forgot the second tray", "forgot", "second tray"),
    ("late sorry, 15 min", "late", ""),
    ("running 10 late sorry", "late", ""),
    ("overslept, i'll be there 10:40, casserole not baked", "eta", ""),
    ("we'll be there at 6", "eta", ""),
    ("im here now, with the curry", "here", "curry"),
    ("we ran out of potatoes, sour cream left", "ran-out", "potatoes"),
)
DICHO = (
    ("ya llegamos", "here", ""),
    ("acabo de estacionar", "here", ""),
    ("se me olvidó la salsa en casa", "forgot", "salsa"),
    ("se acabaron los platos", "ran-out", "platos"),
    ("me llevo el chili a casa", "take-home", "chili"),
    ("¿quién quiere el resto del pastel?", "rest", "pastel"),
    ("las papas siguen duras", "hard", "papas"),
    ("sobró arroz y frijoles", "left", "arroz y frijoles"),
    ("guardé la ensalada en la nevera", "away", "la ensalada"),
    ("me llevo mi olla", "own-back", "olla"),
    ("llego 15 minutos tarde", "late", ""),
    ("llegamos a las 6", "eta", ""),
)


@pytest.mark.parametrize(
    ("words", "kind", "thing", "language"), [(*s, "en") for s in SAID] + [(*s, "es") for s in DICHO]
)
def test_a_sentence_of_the_evening_is_read(words, kind, thing, language):
    found = read_evening(words, language)

    assert (found.kind, found.thing) == (kind, thing)


@pytest.mark.parametrize(
    "words",
    [
        "is anyone here?",
        "we're here for the weekend",
        "here's the recipe",
        "I'm there in 10 minutes",
        "we're almost there",
        "I forgot to tell you",
        "who wants cake?",
        "the beans are hard to find",
        "I'll take the kids home",
        "ya casi llegamos",
        "ya llego",
    ],
)
def test_what_only_sounds_like_it_is_not_about_the_evening(words):
    found = [said for language in ("en", "es") if (said := read_evening(words, language)) is not None]

    assert not [said for said in found if not said.thing or of_a_table(said.thing)]


@pytest.mark.parametrize(("thing", "is_one"), [("plates", True), ("ice", True), ("time", False), ("luck", False)])
def test_only_what_belongs_on_a_table_runs_out(thing, is_one):
    assert of_a_table(thing) is is_one


def test_the_other_sentences_are_handed_on():
    assert read_evening("We're here! Where do we park?").rest == "Where do we park?"


@given(st.text(max_size=600), st.sampled_from(("en", "es", "xx")))
def test_any_text_is_one_of_the_kinds_or_nothing(words, language):
    found = read_evening(words, language)

    assert found is None or found.kind in KINDS


@given(st.sampled_from([s[0] for s in SAID]), st.sampled_from(("!", "...", " 😀", " 🎉🎉", ".")))
def test_a_sign_at_the_end_changes_nothing(words, sign):
    assert read_evening(words.rstrip("?!") + sign) == read_evening(words.rstrip("?!"))
