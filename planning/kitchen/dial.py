"""An oven's dial, and what was likely meant where a figure does not stand on it."""

from __future__ import annotations

import math

from planning.potluck import HeatStep

OVEN_MOST_F, OVEN_LEAST_F = 550.0, 170.0
"""The dial of a domestic oven; common practice, no source."""

CELSIUS_LIKELY_F = 250.0
"""Below this, a short bake was probably written in °C; common practice, no source."""

SHORT_BAKE_MIN = 90
HOTTEST_F = 1000.0
"""No step of a kitchen is hotter; common practice, no source."""


def likely_f(step: HeatStep) -> int | None:
    """What a figure off the dial was likely meant to be: a zero or two too many, or °C; None where nobody can tell.

    >>> likely_f(HeatStep("oven", 40, 3500)), likely_f(HeatStep("oven", 40, 190)), likely_f(HeatStep("oven", 40, 90))
    (350, 374, None)
    """
    temp = step.temp_f
    if step.kind != "oven" or temp is None or not math.isfinite(temp):
        return None
    if temp > OVEN_MOST_F:
        return next((round(temp / d) for d in (10, 100) if OVEN_LEAST_F <= temp / d <= OVEN_MOST_F), None)
    if looks_like_celsius(step):
        return round(temp * 9 / 5 + 32)
    return None


def looks_like_celsius(step: HeatStep) -> bool:
    """A figure that is no oven's in °F and one in °C; a long low bake may be meant as it stands."""
    temp = step.temp_f
    if step.kind != "oven" or temp is None or not 100 <= temp < CELSIUS_LIKELY_F:
        return False
    return temp < OVEN_LEAST_F or step.minutes < SHORT_BAKE_MIN
