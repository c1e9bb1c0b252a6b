"""Amounts in chat text, beside pint's default registry on those it reads at all."""

from __future__ import annotations

import random
import statistics

import pint

from planning.amounts import parse
from tests.bench.timing import line, per_call

UNITS = ("lb", "oz", "cups", "quarts", "kg", "g", "gallons", "dozen", "bags", "cans", "bunches", "liters", "tbsp")
SHAPES = (
    "{n} {unit}", "{n}{unit}", "{n} 1/2 {unit}", "{n}½ {unit}", "{n}-{m} {unit}", "{n}.5 {unit}", "about {n} {unit}",
    "a dozen", "9x13 pan", "{n} 48 oz bags", "{n} No. 10 cans", "feeds {m}", "for {n}", "half a dozen", "two {unit}",
    "{n}", "{n} lb 8 oz", "potato salad", "twenty-four",
)  # fmt: skip


def texts(seed: int) -> list[str]:
    chance = random.Random(seed)
    return [
        shape.format(n=chance.randint(1, 9), m=chance.randint(10, 40), unit=chance.choice(UNITS))
        for shape in SHAPES * 20
    ]


async def run(rounds: int = 3) -> list[str]:
    """The lines to print."""
    for text in texts(0):
        parse(text)
    ours = [min(per_call(lambda t=text: parse(t), 50) for _ in range(max(3, rounds))) * 1e6 for text in texts(0)]
    registry = pint.UnitRegistry()
    plain = [f"{n} {unit}" for n in (3, 12) for unit in ("lb", "oz", "cups", "quarts", "kg", "liters")]
    theirs = [min(per_call(lambda t=text: registry.parse_expression(t), 20) for _ in range(3)) * 1e6 for text in plain]
    mine = [min(per_call(lambda t=text: parse(t), 50) for _ in range(3)) * 1e6 for text in plain]
    return [
        "Amounts read (microseconds a text)",
        line("", "median", "slowest"),
        line(f"ours, {len(ours)} texts", f"{statistics.median(ours):.1f}", f"{max(ours):.1f}"),
        line("ours, number and unit only", f"{statistics.median(mine):.1f}", f"{max(mine):.1f}"),
        line("pint's default registry on these", f"{statistics.median(theirs):.1f}", f"{max(theirs):.1f}"),
    ]
