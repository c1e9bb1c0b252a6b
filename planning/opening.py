"""A potluck opened in one line: "Sat 18 Sep 5pm, about 24 people, outdoors, at the hut, potato bar, budget $120"."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal

from planning.amounts import read_number
from planning.bar import base_named
from planning.potluck import Money, Say
from planning.when import Unclear, When, parse_when

LONGEST = 1000

_COUNT_WORDS = "people|persons|guests|of us|ppl|folks|heads|adults|participants|pax"
_PEOPLE = re.compile(
    r"(?<![\w-])(?:(?:for|with)\s+)?(?:about|around|roughly|some|approx\.?|approximately|maybe|up to|max\.?|ca\.?|circa|~)?\s*"
    rf"(?P<a>-?\d[\d.]*)\s*(?:(?:-|–|to|or)\s*(?P<b>\d+)\s*)?(?:{_COUNT_WORDS})\b"
    r"|\b(?:for|about|around|roughly|approx\.?|~)\s+(?:about|around)?\s*(?P<c>-?\d+)\b(?!\s*(?:am|pm|:|\$|€|£|°|hours?|min))"
    rf"|\b(?P<w>[a-z]+(?:[ -][a-z]+)?)\s+(?:{_COUNT_WORDS})\b",
    re.IGNORECASE,
)
_OUTDOOR = re.compile(
    r"\b(?:outdoors?|outside|open air|in (?:the|our|my) (?:garden|park|yard|backyard)|on (?:the|our|my) (?:lawn|terrace))\b", re.IGNORECASE
)
_INDOOR = re.compile(r"\b(?:indoors?|inside)\b", re.IGNORECASE)
_BUDGET = re.compile(
    r"\b(?:budget|spend|up to)?\s*(?:of|is|:)?\s*(?P<pre>[$€£])\s*(?P<n>\d[\d,]*(?:\.\d{1,2})?)"
    r"|\b(?:budget|spend)\s*(?:of|is|:)?\s*(?P<n2>\d[\d,]*(?:\.\d{1,2})?)\s*(?P<post>[$€£]|dollars?|euros?|pounds?|USD|EUR|GBP)?",
    re.IGNORECASE,
)
_BAR = re.compile(r"\b(?:with\s+)?(?:an?\s+)?(?P<base>[a-z][a-z -]{2,40}?)[ -]bar\b", re.IGNORECASE)
_BETWEEN = re.compile(r"\b(?:between meals|just snacks|snacks only|coffee and cake|afternoon tea)\b", re.IGNORECASE)
_TITLE = re.compile(r"[\"“„«](?P<t>[^\"”»]{1,200})[\"”»]|\b(?:title|called|named)\s*:?\s+(?P<t2>[^,;\n]{1,200})", re.IGNORECASE)
_PLACE = re.compile(r"\b(?:at|place:|where:|in)\s+(?P<p>(?!\d)[^,;\n]{2,200})", re.IGNORECASE)

_CURRENCY = {"$": "USD", "€": "EUR", "£": "GBP", "d": "USD", "e": "EUR", "p": "GBP", "u": "USD", "g": "GBP"}


@dataclass(frozen=True)
class Opening:
    """What the line says; None where it says nothing. `unclear` holds why a date was not taken."""

    when: When | None = None
    people: int | None = None
    setting: str | None = None
    place: str | None = None
    title: str | None = None
    mealtime: str | None = None
    budget: Money | None = None
    bar_base: str | None = None
    unclear: tuple[Say, ...] = ()


def parse_potluck_line(text: str, now: datetime, timezone: str) -> Opening:
    """Read the line in any order of its parts. Numbers out of range are kept: the change refuses them."""
    text = text[:LONGEST]
    quoted, text = _take(_TITLE, text)
    title = (quoted["t"] or quoted["t2"]).strip() if quoted else None
    budget, text = _take(_BUDGET, text)
    when, rest, unclear = _when(text, now, timezone)
    people, rest = _people(rest)
    # The bar before the place: "at the potato bar" is still a bar.
    bar, rest = _bar(rest)
    place = _place(rest)
    if place:
        rest = rest.replace(place.group(0), " ", 1)
    outdoor, _ = _take(_OUTDOOR, text)
    indoor, _ = _take(_INDOOR, text)
    between, rest = _take(_BETWEEN, rest)
    rest = _INDOOR.sub(" ", _OUTDOOR.sub(" ", rest))
    return Opening(
        when=when,
        people=people,
        setting="outdoor" if outdoor else "indoor" if indoor else None,
        place=_tidy_place(place) if place else None,
        title=title or _title(rest),
        mealtime="between-meals" if between else None,
        budget=_money(budget) if budget else None,
        bar_base=bar,
        unclear=unclear,
    )


def _take(pattern: re.Pattern[str], text: str) -> tuple[re.Match[str] | None, str]:
    match = pattern.search(text)
    return match, text if match is None else f"{text[: match.start()]} {text[match.end() :]}"


def _when(text: str, now: datetime, timezone: str) -> tuple[When | None, str, tuple[Say, ...]]:
    try:
        when = parse_when(text, now, timezone)
    except Unclear as unclear:
        if unclear.say.key in ("when-not-understood", "when-which-day"):
            return None, text, ()
        return None, text, (unclear.say,)
    return (when if when.has_date else None), when.rest if when.has_date else text, ()


def _people(text: str) -> tuple[int | None, str]:
    for match in _PEOPLE.finditer(text):
        digits = match["b"] or match["a"] or match["c"]
        if digits is not None:
            # A thousands mark is not a decimal point here: nobody invites half a person.
            number = int(float(digits)) if digits.count(".") <= 1 and len(digits) < 12 else 10**9
        else:
            read = read_number(re.split(r"[ -]", match["w"].casefold()))
            if read is None:
                continue
            number = int(read[0])
        return number, f"{text[: match.start()]} {text[match.end() :]}"
    return None, text


def _bar(text: str) -> tuple[str | None, str]:
    for match in _BAR.finditer(text):
        words = match["base"].strip()
        # "and a baked potato bar": the longest run of words from the right that names a base.
        parts = words.split()
        for first in range(len(parts)):
            known = base_named(" ".join(parts[first:]))
            if known is not None:
                return known, f"{text[: match.start()]} {' '.join(parts[:first])} {text[match.end() :]}"
    return None, text


def _place(text: str) -> re.Match[str] | None:
    return next((m for m in _PLACE.finditer(text) if not _OUTDOOR.fullmatch(m.group(0).strip())), None)


def _tidy_place(match: re.Match[str]) -> str:
    words = _INDOOR.sub("", re.sub(r"\boutdoors?\b|\boutside\b", "", match["p"], flags=re.IGNORECASE))
    return " ".join(words.split()).strip(" .") or match["p"].strip()


def _title(rest: str) -> str | None:
    """What is left between commas, if it reads like a name: some letters, not a lone joining word."""
    for part in re.split(r"[,;\n]", rest):
        clean = " ".join(part.split()).strip(" .:-–")
        letters = sum(c.isalpha() for c in clean)
        if letters >= 3 and clean.casefold() not in ("and", "with", "for", "the", "about", "please", "on"):
            return clean[:200]
    return None


def _money(match: re.Match[str]) -> Money:
    digits = (match["n"] or match["n2"]).replace(",", "")
    sign = (match["pre"] or match["post"] or "$").casefold()[0]
    return Money(Decimal(digits).quantize(Decimal("0.01")), _CURRENCY[sign])
