"""What people write when they mean an amount, read by anchored patterns of our own.

No chat text ever reaches an expression parser (where "1 1/2 cups" is half a cup and "9**9**9 cups" never ends).
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from planning.amounts.numbers import NUMBER, fraction, read_number
from planning.amounts.units import Unit, factor, unit_of, unit_or_package

LONGEST = 64
"""Characters; a longer text is not an amount."""

KINDS = ("mass", "volume", "count", "pan", "serving", "can", "package")


@dataclass(frozen=True)
class Amount:
    """`value` of `unit`, or from `value` to `high` when a range was given ("8-10").

    `unit` is a name from `units.txt` ("pound", "cup", "piece", "serving"), or a package word, "pan-9x13" or
    "can-no-10". A package that states its contents is measured by them: "two 48 oz bags" is 96 ounces, with
    `package` "bag" and `packages` 2.
    """

    value: Fraction
    unit: str
    kind: str
    high: Fraction | None = None
    package: str | None = None
    packages: Fraction | None = None

    @property
    def most(self) -> Fraction:
        """The upper end of a range, else the value."""
        return self.high if self.high is not None else self.value


_SHAPE = re.compile(
    rf"(?:(?:about|around|roughly|approx\.?|approximately|at least|up to|maybe|some|ca\.?|~|≈) ?)?"
    rf"({NUMBER})(?: ?(?:-|–|—|to|or) ?({NUMBER}))?(?![0-9/⁄]) ?[-–]? ?([^0-9].*)?",
    re.IGNORECASE,
)
_SERVES = re.compile(
    r"(?:(?:it |that |which )?(?:serves|feeds|serving|feeding)|(?:is |good |enough |plenty )?(?:for|to feed|to serve))"
    r" (?:up to |about |around )?",
    re.IGNORECASE,
)
_PAN = re.compile(
    r"(?:([0-9]{1,3}|[a-z]+(?:-[a-z]+)?) )?([0-9]{1,2}) ?(?:\"|in\.?|inch(?:es)?|cm)? ?(?:x|×|by) ?([0-9]{1,2})"
    r"(?: ?(?:x|×) ?[0-9]{1,2})?(?:\"| ?in\.?| ?-?inch(?:es)?| ?cm)?[ -]?"
    r"(pan|pans|dish|dishes|baking dish|baking dishes|tray|trays|casserole|casseroles|s|'s)?",
    re.IGNORECASE,
)
_KNOWN_PANS = frozenset(
    {(8, 8), (9, 9), (8, 11), (7, 11), (9, 13), (10, 15), (11, 17), (13, 18), (12, 20), (10, 12), (18, 26), (12, 16)}
)
_CAN = re.compile(
    r"(?:([0-9]{1,3}|[a-z]+) )?(?:no\.? ?|#|number |nr\.? ?|№ ?)([0-9]{1,3}(?:\.5|½| 1/2)?)[ -](?:size )?(?:can|tin)s?",
    re.IGNORECASE,
)
_TIMES = re.compile(rf"({NUMBER}) ?(?:x|×|of|times)? ?({NUMBER})[ -]?(.+)", re.IGNORECASE)
_SPACE = re.compile(r"\s+")


def parse(text: str) -> Amount | None:
    """The amount the whole text states, or None. Never raises; a number alone counts pieces.

    "8-10" is a range, but "1-1/2 cups" is one and a half; "for 12" and "feeds 8-10" are servings.
    """
    if len(text) > LONGEST:
        return None
    text = text.strip()
    if "  " in text or "\n" in text or "\t" in text or "\u00a0" in text:
        text = _SPACE.sub(" ", text)
    match = _SHAPE.fullmatch(text)
    if match is not None:
        first, second, rest = match.groups()
        rest = (rest or "").strip()
        value = fraction(first)
        high = fraction(second) if second else None
        if value is None or (second and high is None):
            return None
        if high is not None:
            if high < 1 and value.denominator == 1 and value >= 1:
                value, high = value + high, None
            elif high < value:
                value, high = high, value
        if not rest:
            return Amount(value, "piece", "count", high)
        if (known := unit_or_package(rest)) is not None:
            return _made(value, high, known[0], known[1])
    return _parse_rarer(text)


def _made(value: Fraction, high: Fraction | None, unit: Unit, package: str | None) -> Amount:
    if unit.name == "dozen":
        return Amount(value * 12, "piece", "count", high * 12 if high is not None else None, package)
    return Amount(value, unit.name, unit.kind, high, package, Fraction(1) if package else None)


def _small(word: str | None) -> Fraction | None:
    """A count before a pan or can: digits, a number word, "a" or nothing."""
    if word is None or word.lower() in ("a", "an", "one", "my", "the"):
        return Fraction(1)
    if word.isdecimal():
        return Fraction(int(word))
    read = read_number([word.lower()])
    return read[0] if read else None


def _parse_rarer(text: str) -> Amount | None:
    """Servings, pans, sized cans and packages, numbers in words, two units together."""
    if (match := _SERVES.match(text)) is not None:
        inner = parse(text[match.end() :])
        if inner is not None and (inner.kind == "serving" or inner.unit == "piece"):
            return Amount(inner.value, "serving", "serving", inner.high)
        return None
    if (match := _PAN.fullmatch(text)) is not None:
        count, sides, word = _small(match[1]), sorted((int(match[2]), int(match[3]))), match[4]
        if count is not None and sides[0] > 0 and (word or tuple(sides) in _KNOWN_PANS):
            return Amount(count, f"pan-{sides[0]}x{sides[1]}", "pan")
    if (match := _CAN.fullmatch(text)) is not None:
        if (count := _small(match[1])) is not None:
            size = match[2].replace("½", ".5").replace(" 1/2", ".5")
            return Amount(count, f"can-no-{size}", "can")
        return None
    if (match := _TIMES.fullmatch(text)) is not None and (found := _contents(match)) is not None:
        return found
    if (unit := unit_of(text)) is not None and " " in text:
        return Amount(Fraction(1), unit.name, unit.kind)  # "half pan", "six pack"
    words = text.split(" ")
    lowered = [w.lower() for w in words]
    read = read_number(lowered)
    if read is None and lowered[0] in ("a", "an", "one") and len(words) > 1:
        read = (Fraction(1), 1)
    if read is None:
        return _compound(text)
    value, after = read
    if words[after : after + 1] == ["of"]:
        after += 1
    high: Fraction | None = None
    if after + 1 < len(words) and lowered[after] in ("to", "or") and (more := read_number(lowered, after + 1)):
        high, after = more
    rest = " ".join(words[after:]).lstrip("-")
    if not rest:
        return Amount(min(value, high or value), "piece", "count", max(high, value) if high is not None else None)
    if (known := unit_or_package(rest)) is not None:
        return _made(value, high, known[0], known[1])
    inner = parse(rest) if rest[0].isdecimal() else None
    if inner is not None and inner.package is not None and inner.packages is not None:
        return Amount(inner.value * value, inner.unit, inner.kind, None, inner.package, value)
    return _compound(text)


def _contents(match: re.Match[str]) -> Amount | None:
    """ "2 48 oz bags", "3 x 500 g", "two 15-oz cans": so many of a stated size."""
    many, size, rest = fraction(match[1]), fraction(match[2]), match[3].strip()
    if many is None or size is None or (known := unit_or_package(rest)) is None:
        return None
    unit, package = known
    if unit.kind not in ("mass", "volume", "count") or unit.name == "dozen":
        return None
    if package is None and "x" not in match[0].lower() and "×" not in match[0]:
        return None
    return Amount(many * size, unit.name, unit.kind, None, package, many)


_COMPOUND = re.compile(rf"({NUMBER}) ?([a-z]+\.?)(?:,? and|,)? ?({NUMBER}) ?([a-z. ]+)", re.IGNORECASE)


def _compound(text: str) -> Amount | None:
    """ "2 lb 8 oz", "1 gallon 2 cups": both parts of one kind, in the first one's unit."""
    if (match := _COMPOUND.fullmatch(text)) is None:
        return None
    big, small = unit_of(match[2]), unit_of(match[4])
    value, more = fraction(match[1]), fraction(match[3])
    if big is None or small is None or value is None or more is None:
        return None
    if big.kind != small.kind or big.kind not in ("mass", "volume") or factor(small.name, big.name) is None:
        return None
    return Amount(value + more * (factor(small.name, big.name) or 0), big.name, big.kind)


def split(text: str) -> tuple[Amount, str] | None:
    """The longest amount the text begins with, and the rest without a leading "of"; None when there is none.

    "3 lb of potatoes" -> (3 pounds, "potatoes"). Looks at the first eight words only.
    """
    words = text.split()
    for n in range(min(8, len(words)), 0, -1):
        amount = parse(" ".join(words[:n]))
        if amount is not None:
            rest = words[n:]
            return amount, " ".join(rest[1:] if rest[:1] == ["of"] else rest)
    return None


def to_unit(amount: Amount, unit: str) -> Fraction | None:
    """The amount's value (the lower end of a range) in `unit`, or None when they don't measure the same thing.

    Weight never becomes volume here: that needs a density of the item.
    """
    known = unit_of(unit)
    rate = factor(amount.unit, known.name if known is not None else unit)
    return amount.value * rate if rate is not None else None
