"""Amounts in words and figures. Factors are checked against NIST SP 811 appendix B and Handbook 44 appendix C."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning import amounts

READ = [
    ("3 lb", 3, "pound", "mass"),
    ("3lbs.", 3, "pound", "mass"),
    ("1 1/2 cups", Fraction(3, 2), "cup", "volume"),
    ("1½ cups", Fraction(3, 2), "cup", "volume"),
    ("1-1/2 cups", Fraction(3, 2), "cup", "volume"),
    ("2 dozen", 24, "piece", "count"),
    ("half a dozen", 6, "piece", "count"),
    ("a 9x13 pan", 1, "pan-9x13", "pan"),
    ("two 13 x 9 inch pans", 2, "pan-9x13", "pan"),
    ("48 oz bag", 48, "ounce", "mass"),
    ("two 15-oz cans", 30, "ounce", "mass"),
    ("No. 10 can", 1, "can-no-10", "can"),
    ("three litres", 3, "liter", "volume"),
    ("1,5 l", Fraction(3, 2), "liter", "volume"),
    ("1,500 g", 1500, "gram", "mass"),
    ("1 T", 1, "tablespoon", "volume"),
    ("1 t", 1, "teaspoon", "volume"),
    ("a stick", 1, "stick", "mass"),
    ("two bunches", 2, "bunch", "count"),
    ("2 lb 8 oz", Fraction(5, 2), "pound", "mass"),
    ("for 12", 12, "serving", "serving"),
    ("one and a half pounds", Fraction(3, 2), "pound", "mass"),
    ("twenty-four", 24, "piece", "count"),
]


@pytest.mark.parametrize(("text", "value", "unit", "kind"), READ)
def test_an_amount_is_read_as_a_cook_reads_it(text: str, value: float, unit: str, kind: str) -> None:
    amount = amounts.parse(text)

    assert amount is not None
    assert (amount.value, amount.unit, amount.kind) == (value, unit, kind)


@pytest.mark.parametrize(
    "text",
    ["", "a", "für 12", "9**9**9 cups", "1/0 cup", "10^12", "1e9", "24 rolls", "cups", "3 parsecs", "for us", "2 x 48"],
)
def test_what_is_not_an_amount_is_none(text: str) -> None:
    assert amounts.parse(text) is None
