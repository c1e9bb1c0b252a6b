"""What people write when they mean an amount: "3 lb", "1½ cups", "8-10", "2 dozen", "a 9x13 pan".

Numbers are read by anchored patterns of our own and units through a table of words, so that no chat text
ever reaches an expression parser (where "1 1/2 cups" is half a cup and "9**9**9 cups" never ends).
Values are exact fractions. Spoons, cups, pints and gallons are the customary ones of the United States.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Any

from planning.potluck import Say
from planning.tables import path_of, rows

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


@dataclass(frozen=True)
class Unit:
    name: str
    kind: str
    system: str


@cache
def _units() -> dict[str, Unit]:
    return {row["word"]: Unit(row["unit"], row["kind"], row["system"]) for row in rows("words_units")}


@cache
def number_words() -> dict[str, tuple[Fraction, str]]:
    """Number word -> (its value, its role: unit, ten, scale or fraction)."""
    return {row["word"]: (Fraction(row["value"]), row["role"]) for row in rows("words_numbers")}


_VULGAR = {
    "½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5", "⅘": "4/5",
    "⅙": "1/6", "⅚": "5/6", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
}  # fmt: skip
_V = "".join(_VULGAR)
_NUMBER = (
    rf"[0-9]{{1,9}} ?[{_V}]|[{_V}]"
    r"|[0-9]{1,9}[ -][0-9]{1,3}[/⁄][0-9]{1,3}|[0-9]{1,9} and [0-9]{1,3}[/⁄][0-9]{1,3}|[0-9]{1,3}[/⁄][0-9]{1,3}"
    r"|[0-9]{1,3}(?:,[0-9]{3}){1,3}(?:\.[0-9]{1,6})?(?![0-9])|[0-9]{1,12}(?:[.,][0-9]{1,6})?|\.[0-9]{1,6}"
)
_SHAPE = re.compile(
    rf"(?:(?:about|around|roughly|approx\.?|approximately|at least|up to|maybe|some|ca\.?|~|≈) ?)?"
    rf"({_NUMBER})(?: ?(?:-|–|—|to|or) ?({_NUMBER}))?(?![0-9/⁄]) ?[-–]? ?([^0-9].*)?",
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
_TIMES = re.compile(rf"({_NUMBER}) ?(?:x|×|of|times)? ?({_NUMBER})[ -]?(.+)", re.IGNORECASE)
_SPACE = re.compile(r"\s+")


def _fraction(text: str) -> Fraction | None:
    """A matched number's value; None for a fraction over nothing."""
    if text.isdigit() and text.isascii():
        return Fraction(int(text))
    whole = Fraction(0)
    if text[-1] in _VULGAR:
        head = text[:-1].strip()
        return Fraction(int(head) if head else 0) + Fraction(_VULGAR[text[-1]])
    if "/" in text or "⁄" in text:
        text = text.replace("⁄", "/").replace(" and ", " ").replace("-", " ")
        head, _, tail = text.rpartition(" ")
        top, _, bottom = tail.partition("/")
        if head:
            whole = Fraction(int(head))
        return whole + Fraction(int(top), int(bottom)) if int(bottom) else None
    if re.fullmatch(r"[0-9]{1,3}(?:,[0-9]{3})+(?:\.[0-9]+)?", text):
        return Fraction(text.replace(",", ""))
    return Fraction(text.replace(",", "."))


def read_number(words: Sequence[str], start: int = 0) -> tuple[Fraction, int] | None:
    """A number in words from `words[start]` on, and the position after it.

    "twelve", "twenty-four", "two hundred", "a dozen", "half a dozen", "one and a half", "a couple", "half".
    Words are lower case; a bare "a" counts as one only before dozen, hundred, half, couple.
    """
    table, i, end = number_words(), start, len(words)
    total, found = Fraction(0), False
    if i < end and words[i] in ("a", "an") and i + 1 < end:
        if words[i + 1] == "couple":
            return Fraction(2), i + 2 + (i + 2 < end and words[i + 2] == "of")
        if words[i + 1] in ("dozen", "hundred", "thousand", "half", "quarter"):
            total, found, i = Fraction(1), words[i + 1] not in ("half", "quarter"), i + 1
            total = total if found else Fraction(0)
        else:
            return None
    while i < end:
        word = words[i]
        if word in table:
            value, role = table[word]
            if role == "fraction":
                if found and word in ("half", "quarter", "third"):
                    break
                total, found, i = value * (total or 1), True, i + 1
                if i < end and words[i] in ("a", "an", "of"):
                    i += 1 + (i + 1 < end and words[i : i + 2] == ["of", "a"])
                if i < end and words[i] in ("dozen", "doz"):
                    total, i = total * 12, i + 1
                break
            if role == "scale":
                if not found:
                    break
                total, i = total * value, i + 1
                continue
            if found and not (role == "unit" and value < 10 and total % 100 >= 20 and total % 10 == 0):
                break
            total, found, i = total + value, True, i + 1
        elif "-" in word and all(part in table for part in word.split("-")) and not found:
            tens, *units = word.split("-")
            if table[tens][1] != "ten" or len(units) != 1 or not 0 < table[units[0]][0] < 10:
                break
            total, found, i = table[tens][0] + table[units[0]][0], True, i + 1
        elif word in ("dozen", "dozens", "doz") and found:
            return total * 12, i + 1
        elif word == "and" and found and list(words[i + 1 : i + 3]) in (["a", "half"], ["a", "quarter"]):
            return total + table[words[i + 2]][0], i + 3
        else:
            break
    return (total, i) if found else None


def unit_of(word: str) -> Unit | None:
    """The unit a word means, or None. "T" is a tablespoon and "t" a teaspoon; other case is ignored."""
    units = _units()
    if (unit := units.get(word)) is not None:
        return unit
    return units.get(word.lower().rstrip(".").replace(". ", " "))


def _unit_or_package(rest: str) -> tuple[Unit, str | None] | None:
    """"lb" -> pound; "oz bags" -> ounces in a bag."""
    if (unit := unit_of(rest)) is not None:
        return unit, None
    head, space, tail = rest.partition(" ")
    while space:
        unit, package = unit_of(head), unit_of(tail)
        if unit is not None and package is not None and unit.kind in ("mass", "volume", "count"):
            return (unit, package.name) if package.kind in ("package", "can") else None
        more, space, tail = tail.partition(" ")
        head = f"{head} {more}"
    return None


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
        value = _fraction(first)
        high = _fraction(second) if second else None
        if value is None or (second and high is None):
            return None
        if high is not None:
            if high < 1 and value.denominator == 1 and value >= 1:
                value, high = value + high, None
            elif high < value:
                value, high = high, value
        if not rest:
            return Amount(value, "piece", "count", high)
        if (known := _unit_or_package(rest)) is not None:
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
    if word.isdigit():
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
    if (known := _unit_or_package(rest)) is not None:
        return _made(value, high, known[0], known[1])
    inner = parse(rest) if rest[0].isdigit() else None
    if inner is not None and inner.package is not None and inner.packages is not None:
        return Amount(inner.value * value, inner.unit, inner.kind, None, inner.package, value)
    return _compound(text)


def _contents(match: re.Match[str]) -> Amount | None:
    """"2 48 oz bags", "3 x 500 g", "two 15-oz cans": so many of a stated size."""
    many, size, rest = _fraction(match[1]), _fraction(match[2]), match[3].strip()
    if many is None or size is None or (known := _unit_or_package(rest)) is None:
        return None
    unit, package = known
    if unit.kind not in ("mass", "volume", "count") or unit.name == "dozen":
        return None
    if package is None and "x" not in match[0].lower() and "×" not in match[0]:
        return None
    return Amount(many * size, unit.name, unit.kind, None, package, many)


_COMPOUND = re.compile(rf"({_NUMBER}) ?([a-z]+\.?)(?:,? and|,)? ?({_NUMBER}) ?([a-z. ]+)", re.IGNORECASE)


def _compound(text: str) -> Amount | None:
    """"2 lb 8 oz", "1 gallon 2 cups": both parts of one kind, in the first one's unit."""
    if (match := _COMPOUND.fullmatch(text)) is None:
        return None
    big, small = unit_of(match[2]), unit_of(match[4])
    value, more = _fraction(match[1]), _fraction(match[3])
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


@cache
def registry() -> Any:
    """The private unit registry, built once from `data/units.txt`; only unit names of that file go in."""
    import pint  # here, because loading it takes longer than most commands

    return pint.UnitRegistry(path_of("units.txt"), non_int_type=Fraction)


@cache
def factor(unit: str, into: str) -> Fraction | None:
    """How many `into` one `unit` is, exactly; None when they don't measure the same thing."""
    if unit == into:
        return Fraction(1)
    units = registry()
    if unit not in units or into not in units:
        return None
    if units.get_dimensionality(unit) != units.get_dimensionality(into):
        return None
    return Fraction(units.Quantity(Fraction(1), unit).to(into).magnitude)


def to_unit(amount: Amount, unit: str) -> Fraction | None:
    """The amount's value (the lower end of a range) in `unit`, or None when they don't measure the same thing.

    Weight never becomes volume here: that needs a density of the item.
    """
    known = unit_of(unit)
    rate = factor(amount.unit, known.name if known is not None else unit)
    return amount.value * rate if rate is not None else None


_STEPS: dict[tuple[str, str], tuple[tuple[str, Fraction, Fraction], ...]] = {
    # (kind, system) -> (unit, used from this many of it on, rounded to this step), largest first.
    ("mass", "us"): (
        ("pound", Fraction(10), Fraction(1)),
        ("pound", Fraction(4), Fraction(1, 2)),
        ("pound", Fraction(1), Fraction(1, 4)),
        ("ounce", Fraction(4), Fraction(1)),
        ("ounce", Fraction(0), Fraction(1, 4)),
    ),
    ("mass", "metric"): (
        ("kilogram", Fraction(10), Fraction(1, 2)),
        ("kilogram", Fraction(1), Fraction(1, 10)),
        ("gram", Fraction(200), Fraction(10)),
        ("gram", Fraction(20), Fraction(5)),
        ("gram", Fraction(0), Fraction(1)),
    ),
    ("volume", "us"): (
        ("gallon", Fraction(10), Fraction(1)),
        ("gallon", Fraction(1), Fraction(1, 4)),
        ("quart", Fraction(2), Fraction(1, 2)),
        ("cup", Fraction(1, 4), Fraction(1, 4)),
        ("tablespoon", Fraction(1), Fraction(1, 2)),
        ("teaspoon", Fraction(0), Fraction(1, 4)),
    ),
    ("volume", "metric"): (
        ("liter", Fraction(10), Fraction(1, 2)),
        ("liter", Fraction(1), Fraction(1, 10)),
        ("milliliter", Fraction(200), Fraction(10)),
        ("milliliter", Fraction(20), Fraction(5)),
        ("milliliter", Fraction(0), Fraction(1)),
    ),
}  # fmt: skip
_SYMBOL = {
    "pound": "lb", "ounce": "oz", "kilogram": "kg", "gram": "g", "gallon": "gal", "quart": "qt", "cup": "cup",
    "tablespoon": "tbsp", "teaspoon": "tsp", "liter": "l", "milliliter": "ml",
}  # fmt: skip
_SIGN = {Fraction(v): k for k, v in _VULGAR.items()}


def friendly(value: float | Fraction, unit: str, system: str = "us") -> tuple[Fraction, str]:
    """The amount as one would say it: a unit of that system ("us" or "metric") and a round number of it.

    Rounds to nearest; what must not fall short is rounded up by the caller beforehand. Never rounds to
    nothing what is more than nothing.
    """
    exact = Fraction(value).limit_denominator(1_000_000)
    known = unit_of(unit)
    name, kind = (known.name, known.kind) if known else (unit, "")
    if name == "dozen":
        exact, name = exact * 12, "piece"
    steps = _STEPS.get((kind, system))
    if steps is None:
        step = Fraction(1, 4) if 0 < exact < 5 else Fraction(1)
        return _rounded(exact, step), name
    for target, least, step in steps:
        there = exact * (factor(name, target) or 1)
        if _nearest(there, step) >= least:
            return _rounded(there, step), target
    return exact, name


def _nearest(value: Fraction, step: Fraction) -> Fraction:
    return Fraction(int(value / step + Fraction(1, 2))) * step


def _rounded(value: Fraction, step: Fraction) -> Fraction:
    return _nearest(value, step) or (step if value > 0 else Fraction(0))


def number(value: float | Fraction) -> str:
    """A number as cooks write it: "3", "1½", "0.7"."""
    exact = Fraction(value).limit_denominator(1000)
    whole, part = divmod(exact, 1)
    if not part:
        return str(whole)
    if part in _SIGN and part.denominator <= 4:
        return f"{whole if whole else ''}{_SIGN[part]}"
    return f"{float(exact):.2f}".rstrip("0").rstrip(".")


def show(value: float | Fraction, unit: str, system: str = "us") -> str:
    """A short form with the unit's sign: show(20, "oz") -> "1¼ lb"; `parse` reads it back.

    Units without a sign are named as they are ("12 serving"); use `say` where people read a sentence.
    """
    shown, name = friendly(value, unit, system)
    sign = _SYMBOL.get(name, name.replace("_", " "))
    return f"{number(shown)} {sign}{'s' if sign == 'cup' and shown > 1 else ''}"


def say(value: float | Fraction, unit: str, system: str = "us") -> Say:
    """The same as a text key and facts: `number` as it is written, `unit`, `count` for the plural (1 for "½ cup")."""
    shown, name = friendly(value, unit, system)
    return Say("amount", {"number": number(shown), "count": max(1.0, float(shown)), "unit": name})
