"""Facts in both systems of units, so that a sentence can be said in the potluck's own.

The rules are in °F, pounds and quarts, as their sources are; the other figures are rounded for saying only.
"""

from __future__ import annotations

from collections.abc import Mapping

from planning.potluck import Potluck, Say

DIAL_F = 170
"""From here on a temperature is an oven's, whose dial is marked in fives; below it is food's, told to the degree."""

TEMPERATURES = ("temp", "likely", "least")
KG_PER_LB, L_PER_QT, L_PER_CU_FT = 0.45359237, 0.946352946, 28.316846592
"""Exact by definition: the international pound (1959), 57.75 cubic inches to the quart, and the foot (NIST HB 44)."""


def celsius(temp_f: float) -> int:
    """For saying: 350 °F is 175 °C on an oven's dial, 165 °F inside food is 74 °C.

    >>> celsius(350), celsius(165), celsius(140), celsius(40)
    (175, 74, 60, 4)
    """
    exact = (temp_f - 32) * 5 / 9
    return 5 * round(exact / 5) if temp_f >= DIAL_F else round(exact)


def in_units(potluck: Potluck, facts: Mapping[str, object]) -> dict[str, object]:
    """The facts with `metric` ("yes" or "no"), and `..._c`, `..._kg`, `..._l` beside °F, pounds and quarts."""
    told: dict[str, object] = {**facts, "metric": "yes" if potluck.units == "metric" else "no"}
    for name, value in facts.items():
        if isinstance(value, bool) or not isinstance(value, (int, float)):
            # A figure that is none is told as it is.
            told |= {"temp": {"temp_c": value}, "lb": {"lb_kg": value}}.get(name, {})
            continue
        if name in TEMPERATURES:
            told[f"{name}_c"] = celsius(value)
        elif name == "lb" or (name == "most" and "lb" in facts):
            told[f"{name}_kg"] = round(value * KG_PER_LB, 1)
        elif name in ("litres", "room"):
            # The kitchen's own figures are metric.
            told[f"{name}_ft"] = round(value / L_PER_CU_FT, 1)
        elif name == "volume" or (name == "size" and "volume" in facts):
            told[f"{name}_l"] = round(value * L_PER_QT, 1)
    return told


def say_in_units(potluck: Potluck, said: Say) -> Say:
    """The same sentence with the facts of both systems."""
    return Say(said.key, in_units(potluck, said.facts))
