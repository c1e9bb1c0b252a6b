"""What people write of everything around the food: who paid what, who hosts, what was thrown out, when a dish goes in,
whether it is for somebody, whose bowl this is. The sentences stand in `data/words_affairs.csv`.
"""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from functools import cache

from planning.tables import rows
from planning.word_patterns import restored, said_in

LONGEST, MOST_WORDS, MOST_FOUND = 400, 26, 6
_ENDS = re.compile(r"(?<=[!?…])\s+|(?<=[^\d\W][.])\s+|(?<=\d[.])\s+(?=[^\d])|\n+")
_CLAUSES = re.compile(r"\s*(?:,|;|\band\b|\by\b|&)\s*(?=\S)")
_SIGNS = re.compile(r"[\U0001f000-\U0001faff\u2600-\u27bf\ufe0f\u200d]+|(?<!\w)[:;]-?[()DpP](?!\w)")
_UNITS = {
    "$": "USD", "dollar": "USD", "buck": "USD", "usd": "USD", "dólares": "USD", "dolares": "USD", "€": "EUR",
    "euro": "EUR", "eur": "EUR", "£": "GBP", "pound": "GBP", "quid": "GBP", "gbp": "GBP", "mxn": "MXN", "cop": "COP",
    "peso": "peso", "soles": "PEN",
}  # fmt: skip
_OF_A_ZONE = (
    ("Europe/London", "GBP"), ("Europe/", "EUR"), ("America/Mexico", "MXN"), ("America/Monterrey", "MXN"),
    ("America/Tijuana", "MXN"), ("America/Bogota", "COP"), ("America/Lima", "PEN"), ("America/Argentina", "ARS"),
    ("America/Santiago", "CLP"), ("America/Toronto", "CAD"), ("America/Vancouver", "CAD"), ("Australia/", "AUD"),
)  # fmt: skip
"""By CLDR's currency of the territory; elsewhere in the Americas a peso is a Mexican one, and a bare sum is in USD."""


@dataclass(frozen=True)
class Affair:
    """`name` a person as said ("" the writer), `to` who was given it, `thing` a dish or what was paid for, `amount` and
    `unit` a sum as said; `rest` the other sentences of the message, as typed."""

    kind: str
    name: str = ""
    thing: str = ""
    amount: Decimal | None = None
    unit: str = ""
    rest: str = ""
    to: str = ""


def read_affairs(words: str, language: str = "en") -> tuple[Affair, ...]:
    """What the first sentence of such a kind says; several of money, each a clause. Pure; 400 characters are read.

    >>> [(a.name, str(a.amount), a.thing) for a in read_affairs("omar paid 9 for lemons, tess 22 for cheese")]
    [('omar', '9', 'lemons'), ('tess', '22', 'cheese')]
    """
    sentences = [s for s in _ENDS.split(_sum_mended(words[:LONGEST])) if s.strip()]
    for n, sentence in enumerate(sentences):
        plain = _plain(sentence)
        if not plain or len(plain.split()) > MOST_WORDS:
            continue
        rest = " ".join(s.strip() for k, s in enumerate(sentences) if k != n)
        found = list(_of(plain, language))
        if found:
            more = [a for s in sentences[n + 1 :] if found[0].kind == "paid" for a in _of(_plain(s), language)]
            paid = tuple(a for a in (*found, *more) if a.kind == "paid")[:MOST_FOUND]
            if paid:
                return paid
            return (Affair(**{**found[0].__dict__, "rest": rest}),)
        first, _, tail = plain.partition(",")
        head = next(_one(first.strip(), language), None) if tail else None
        if head is not None and head.kind in ("binned", "take-over", "cohost", "host"):
            return (Affair(**{**head.__dict__, "rest": " ".join(p for p in (tail.strip(), rest) if p)}),)
    return ()


_FIGURE = r"[$€£]? ?\d{1,7}(?:[.,]\d{1,3})?"
_MENDED = re.compile(
    rf"^(?P<before>.*?)(?P<old>{_FIGURE})(?![\d.,]*\d)(?P<between>[^\d]*?)[\s.,;!—–-]*\b"
    r"(?:no,? wait|wait,? no|wait|oops|no,? sorry|sorry|i mean|i meant|correction|scratch that|make that|rather|perd[oó]n|digo|no,? espera|espera|mejor dicho|corrijo|me corrijo|me equivoqu[eé])"
    rf"[,:;.\s]*(?:(?:no|it|it's|that's|was|were|is|i mean|only|actually|make that|fue|fueron|era|eran|son|es|solo)\s+)*(?P<new>{_FIGURE})(?P<unit>[^\d,.;!?]{{0,12}})[.!]*\s*$",
    re.IGNORECASE | re.DOTALL,
)


def _sum_mended(words: str) -> str:
    """A sum that is put right in the same breath stands as it was put right.

    >>> _sum_mended("I paid 64.20 for ham. no wait 46.20")
    'I paid 46.20 for ham'
    """
    told = _MENDED.match(words)
    if told is None or len(re.findall(r"\d+(?:[.,]\d+)?", words)) != 2:
        return words
    return " ".join(f"{told['before']} {told['new'].strip()} {told['between']}".split())


def _plain(sentence: str) -> str:
    return " ".join(restored(_SIGNS.sub(" ", sentence)).casefold().split()).strip(" .!?…,¿¡")


def _of(plain: str, language: str) -> Iterator[Affair]:
    """Clauses of money one by one, where each is one; else the whole."""
    pieces = [p for p in _split(plain, language) if p]
    if len(pieces) > 1:
        yield from pieces
        return
    yield from _one(plain, language)


_SUMS = ("paid", "paid-on", "paid-bare")


def _split(plain: str, language: str) -> list[Affair]:
    """The sentence cut at its commas and "and"s wherever every part, or two joined, tells of money."""
    cuts = [0, *(m.end() for m in _CLAUSES.finditer(plain)), len(plain) + 1]
    found: list[Affair] = []
    at, sure = 0, False
    while at < len(cuts) - 1:
        for end in range(len(cuts) - 1, at, -1):
            piece = plain[cuts[at] : cuts[end]]
            piece = re.sub(r"\s*(?:,|;|\band|\by|&)\s*$", "", piece).strip()
            one = next((a for a in _one(piece, language, also_on=True) if a.kind in _SUMS), None)
            if one is not None and one.kind == "paid-on" and "," in piece and len(_FIGURES.findall(piece)) > 1:
                one = None  # two sums, cut further
            if one is not None and not _holds_two(piece):
                sure = sure or one.kind == "paid"
                again = one.kind == "paid-bare" and bool(found)  # "omar paid 9 for lemons and 22 for cheese"
                name, unit = (found[-1].name, one.unit or found[-1].unit) if again else (one.name, one.unit)
                found.append(Affair("paid", name, one.thing, one.amount, unit))
                at = end
                break
        else:
            return []
    # "Beer was 36, rolls 22.80": two sums, one of them to the cent.
    return found if sure or (len(found) > 1 and _CENTS.search(plain) is not None) else []


_CENTS = re.compile(r"\d[.,]\d\d(?!\d)")
_FIGURES = re.compile(r"\d+(?:[.,]\d+)?")
_SUM_TOLD = re.compile(
    r"(?:paid|spent|pag[oó]|gast[oó]|pagu[eé]|gast[eé])\b"
    r"|\b\w+ \d+(?:[.,]\d+)?(?: (?:pesos?|euros?|dollars?|d[oó]lares|bucks|quid|pounds?))? (?:for|on|por|de|en)\b"
)


def _holds_two(piece: str) -> bool:
    """Two sums of money in one piece: it is to be cut further."""
    return len(_SUM_TOLD.findall(piece)) > 1


def _one(plain: str, language: str, *, also_on: bool = False) -> Iterator[Affair]:
    for kind, pattern in _patterns(language):
        match = pattern.fullmatch(plain)
        if match is None or (kind == "paid-on" and not also_on):
            continue
        got = match.groupdict()
        name = (got.get("name") or "").strip()
        thing = (got.get("what") or got.get("thing") or "").strip(" ,.")
        amount, unit = _sum(got.get("sum") or "")
        if kind in ("paid", "paid-on", "paid-bare", "owe") and (amount is None or amount <= 0):
            continue
        whose = _WHOSE.fullmatch(thing) if kind == "paid" and not name else None
        if whose is not None:  # "Pria's chickens were 17.98"
            name, thing = whose["name"], whose["thing"]
        yield Affair(kind, "" if name in ("i", "we") else name, thing, amount, unit, to=(got.get("to") or "").strip())
        return


_WHOSE = re.compile(r"(?P<name>[^\W\d_][\w-]{1,30})['’]s (?P<thing>.{2,60})")


def _sum(said: str) -> tuple[Decimal | None, str]:
    digits = re.search(r"\d+(?:[.,]\d+)?", said)
    if digits is None:
        return None, ""
    figure = digits.group()
    # "45.000" has thousands, "19.40" has cents.
    plain = re.sub(r"[.,](?=\d{3}$)", "", figure).replace(",", ".")
    unit = next((u for word, u in _UNITS.items() if word in said), "")
    return Decimal(plain), unit


def currency_of(unit: str, timezone: str, known: str | None) -> str:
    """The currency of a sum: as said, else the one already reckoned in, else that of the zone's country."""
    of_zone = next((c for zone, c in _OF_A_ZONE if timezone.startswith(zone)), "")
    if unit == "peso":
        return known or (of_zone if of_zone not in ("", "EUR", "GBP", "AUD", "CAD") else "MXN")
    if unit == "USD" and of_zone not in ("", "EUR", "GBP"):
        return known or of_zone  # the sign, which many pesos and dollars share
    return unit or known or of_zone or "USD"


@cache
def _patterns(language: str) -> tuple[tuple[str, re.Pattern[str]], ...]:
    return tuple((row["kind"], said) for row, said in said_in("words_affairs", language))


def languages() -> tuple[str, ...]:
    return tuple(dict.fromkeys(row["language"] for row in rows("words_affairs")))
