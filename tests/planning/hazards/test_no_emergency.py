"""An illness told in advance is no emergency, and neither is a cake that fell in; what happens now always is one."""

import pytest

from planning.safety.urgent import emergency
from planning.theday.hazards import PEOPLE, hazard


def is_told(words):
    return any(emergency(words, language, told=True) for language in ("en", "es"))


@pytest.mark.parametrize("words", [
    "my daughter has anaphylaxis to sesame, she's 5. there are 4 of us", "anaphylaxis with nuts here",
    "Leo: anaphylaxis (cashew)", "she gets anaphylaxis from kiwi", "I have had anaphylaxis twice from prawns",
    "he gets hives all over from strawberries", "mi hija tiene anafilaxia al ajonjolí",
    "mi hijo sufre anafilaxia con cacahuate",
])  # fmt: skip
def test_an_illness_told_in_advance_is_no_emergency(words):
    assert not is_told(words)


@pytest.mark.parametrize("words", [
    "she has anaphylaxis right now", "anaphylaxis!! help", "my daughter is in anaphylaxis",
    "anaphylaxis from the sesame, she just ate it", "my son ate the cake and has anaphylaxis", "he has hives all over",
    "she ate the cake, allergic reaction to the nuts, hives", "hay anafilaxia, ayuda", "tiene anafilaxia ahora mismo",
])  # fmt: skip
def test_one_that_happens_now_is(words):
    assert is_told(words)


@pytest.mark.parametrize("words", [
    "pavlovas collapsed in the heat, doing a trifle instead", "the cake collapsed", "the whole tent collapsed",
    "my soufflé has collapsed, sorry", "trifle collapsed in the sun",
])  # fmt: skip
def test_a_thing_that_collapsed_is_nobody_in_danger(words):
    assert not is_told(words)
    assert hazard(words, kinds=PEOPLE) is None


@pytest.mark.parametrize("words", [
    "grandpa collapsed", "one of the kids collapsed in the heat", "somebody collapsed", "Chris collapsed",
])  # fmt: skip
def test_a_person_who_collapsed_is(words):
    assert is_told(words)
