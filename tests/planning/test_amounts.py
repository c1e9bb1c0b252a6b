"""Amounts in words and figures.

Factors are checked against the exact figures of NIST Handbook 44, appendix C, and NIST SP 811, appendix B
(quoted from memory), and against pint's own default registry; written numbers against Babel's formatting.
"""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pint
import pytest
from babel.numbers import format_decimal
from hypothesis import given
from hypothesis import strategies as st

from planning import amounts
from planning.tables import rows

READ = [
    ("3 lb", 3, "pound", "mass"),
    ("3lbs.", 3, "pound", "mass"),
    ("5#", 5, "pound", "mass"),
    ("1 1/2 cups", Fraction(3, 2), "cup", "volume"),
    ("1½ cups", Fraction(3, 2), "cup", "volume"),
    ("1-1/2 cups", Fraction(3, 2), "cup", "volume"),
    (".5 l", Fraction(1, 2), "liter", "volume"),
    ("2 dozen", 24, "piece", "count"),
    ("half a dozen", 6, "piece", "count"),
    ("a couple of bags", 2, "bag", "package"),
    ("a 9x13 pan", 1, "pan-9x13", "pan"),
    ("two 13 x 9 inch pans", 2, "pan-9x13", "pan"),
    ("2 half pans", 2, "half_pan", "pan"),
    ("48 oz bag", 48, "ounce", "mass"),
    ("two 15-oz cans", 30, "ounce", "mass"),
    ("3 x 500 g", 1500, "gram", "mass"),
    ("No. 10 can", 1, "can-no-10", "can"),
    ("2 #10 cans", 2, "can-no-10", "can"),
    ("three litres", 3, "liter", "volume"),
    ("1,5 l", Fraction(3, 2), "liter", "volume"),
    ("1,500 g", 1500, "gram", "mass"),
    ("12 fl oz", 12, "fluid_ounce", "volume"),
    ("1 T", 1, "tablespoon", "volume"),
    ("1 t", 1, "teaspoon", "volume"),
    ("a stick", 1, "stick", "mass"),
    ("two bunches", 2, "bunch", "count"),
    ("2 lb 8 oz", Fraction(5, 2), "pound", "mass"),
    ("for 12", 12, "serving", "serving"),
    ("enough for twenty people", 20, "serving", "serving"),
    ("one and a half pounds", Fraction(3, 2), "pound", "mass"),
    ("twenty-four", 24, "piece", "count"),
]


@pytest.mark.parametrize(("text", "value", "unit", "kind"), READ)
def test_an_amount_is_read_as_a_cook_reads_it(text: str, value: float, unit: str, kind: str) -> None:
    amount = amounts.parse(text)

    assert amount is not None
    assert (amount.value, amount.unit, amount.kind) == (value, unit, kind)


@pytest.mark.parametrize(("text", "low", "high"), [("8-10", 8, 10), ("feeds 8 to 10", 8, 10), ("10-8 lb", 8, 10)])
def test_a_range_keeps_both_its_ends(text: str, low: int, high: int) -> None:
    amount = amounts.parse(text)

    assert amount is not None
    assert (amount.value, amount.high, amount.most) == (low, high, high)


@pytest.mark.parametrize(
    "text",
    ["", "a", "für 12", "9**9**9 cups", "1/0 cup", "10^12", "1e9", "24 rolls", "cups", "3 parsecs", "for us", "2 x 48"],
)
def test_what_is_not_an_amount_is_none(text: str) -> None:
    assert amounts.parse(text) is None


def test_a_text_longer_than_the_cap_is_no_amount() -> None:
    assert amounts.parse("1 lb" + " " * 61) is None


def test_an_amount_splits_from_what_it_is_of() -> None:
    split = amounts.split("two 9x13 pans of baked ziti")

    assert split is not None
    assert (split[0].value, split[0].unit, split[1]) == (2, "pan-9x13", "baked ziti")


HANDBOOK = [
    ("pound", "gram", Fraction("453.59237")),  # Handbook 44 appendix C: exactly
    ("ounce", "gram", Fraction("28.349523125")),  # 1/16 of it
    ("gallon", "milliliter", Fraction("3785.411784")),  # 231 cubic inches of 16.387 064 mL
    ("quart", "milliliter", Fraction("946.352946")),
    ("pint", "milliliter", Fraction("473.176473")),
    ("cup", "fluid_ounce", Fraction(8)),
    ("cup", "tablespoon", Fraction(16)),
    ("tablespoon", "teaspoon", Fraction(3)),
    ("gallon", "cup", Fraction(16)),
    ("pound", "stick", Fraction(4)),  # common practice, no source
    ("dozen", "piece", Fraction(12)),
]


@pytest.mark.parametrize(("unit", "into", "factor"), HANDBOOK)
def test_a_factor_is_exactly_the_handbooks(unit: str, into: str, factor: Fraction) -> None:
    assert amounts.factor(unit, into) == factor


def test_factors_agree_with_the_default_registry_of_pint() -> None:
    theirs = pint.UnitRegistry()
    pairs = [
        ("pound", "kilogram"), ("ounce", "gram"), ("gallon", "liter"), ("quart", "pint"), ("cup", "milliliter"),
        ("fluid_ounce", "milliliter"), ("tablespoon", "teaspoon"), ("deciliter", "cup"), ("centiliter", "liter"),
    ]  # fmt: skip

    for unit, into in pairs:
        assert float(amounts.factor(unit, into) or 0) == pytest.approx(theirs.Quantity(1, unit).to(into).magnitude)


@pytest.mark.parametrize(
    ("unit", "into"), [("pound", "cup"), ("piece", "serving"), ("bag", "pound"), ("head", "piece")]
)
def test_different_kinds_are_never_converted(unit: str, into: str) -> None:
    assert amounts.factor(unit, into) is None


def test_every_unit_word_is_read_with_a_number() -> None:
    unread = [row["word"] for row in rows("words_units") if amounts.parse(f"3 {row['word']}") is None]

    assert unread == []


@given(st.decimals(0, 999_999, places=2, allow_nan=False))
def test_numbers_as_babel_writes_them_are_read_back(value: Decimal) -> None:
    amount = amounts.parse(f"{format_decimal(value, locale='en_US')} lb")

    assert amount is not None
    assert amount.value == Fraction(value)


def test_number_words_up_to_a_hundred_are_read() -> None:
    ones = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine"]
    for ten, word in enumerate(["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"], start=2):
        for one, small in enumerate(ones, start=1):
            assert amounts.read_number([f"{word}-{small}"]) == (10 * ten + one, 1)
            assert amounts.read_number([word, small]) == (10 * ten + one, 2)


SHOWN = [
    (20, "oz", "us", "1¼ lb"),
    (3.3, "cup", "us", "3¼ cups"),
    (0.1, "cup", "us", "1½ tbsp"),
    (18, "cup", "us", "1¼ gal"),
    (5, "lb", "metric", "2.3 kg"),
    (300, "ml", "us", "1¼ cups"),
    (0.02, "lb", "metric", "9 g"),
]


@pytest.mark.parametrize(("value", "unit", "system", "text"), SHOWN)
def test_an_amount_is_shown_in_round_numbers(value: float, unit: str, system: str, text: str) -> None:
    assert amounts.show(value, unit, system) == text


UNITS = ["pound", "ounce", "gram", "kilogram", "cup", "quart", "gallon", "milliliter", "liter", "tablespoon"]


@given(st.floats(0.01, 5000), st.sampled_from(UNITS), st.sampled_from(["us", "metric"]))
def test_what_is_shown_is_read_back_as_shown(value: float, unit: str, system: str) -> None:
    shown = amounts.friendly(value, unit, system)

    read = amounts.parse(amounts.show(value, unit, system))

    assert read is not None
    assert (read.unit, pytest.approx(float(read.value), rel=0.01)) == (shown[1], float(shown[0]))


@given(st.floats(1, 5000), st.sampled_from(UNITS), st.sampled_from(["us", "metric"]))
def test_rounding_stays_within_a_fifth_or_half_a_unit(value: float, unit: str, system: str) -> None:
    shown, name = amounts.friendly(value, unit, system)

    exact = value * float(amounts.factor(unit, name) or 0)
    assert abs(float(shown) - exact) <= max(0.2 * exact, 0.5)


@given(st.integers(1, 999), st.integers(1, 8), st.sampled_from([2, 3, 4, 8]), st.sampled_from(["lb", "cups", "kg"]))
def test_mixed_numbers_are_sums(whole: int, top: int, bottom: int, unit: str) -> None:
    amount = amounts.parse(f"{whole} {top}/{bottom} {unit}")

    assert amount is not None
    assert amount.value == whole + Fraction(top, bottom)


@given(st.text(max_size=80))
def test_no_text_breaks_the_reader_of_amounts(text: str) -> None:
    amount = amounts.parse(text)

    assert amount is None or (amount.value >= 0 and amount.kind in amounts.KINDS)
