"""The line that opens a potluck: "Sat 18 Sep 5pm, about 24 people, outdoors, at the allotment hut, potato bar"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal

from planning.amounts import read_number
from planning.kitchen_words import kitchen_within
from planning.potluck import Money, Say
from planning.when.reading import parse_when
from planning.when.values import LONGEST, Unclear, When
from planning.when.where import BLANK, PLACE, place_and_rest

MOST_PEOPLE = 1000
"""More are a slip (common practice, no source)."""


@dataclass(frozen=True)
class Opening:
    """What the line said; None where it said nothing. `unclear` are sentences about what could not be acted on."""

    when: When | None = None
    people: int | None = None
    setting: str | None = None
    place: str | None = None
    title: str | None = None
    mealtime: str | None = None
    budget: Money | None = None
    bar_base: str | None = None
    kitchen: str = ""
    """In words `read_kitchen` reads."""
    unclear: tuple[Say, ...] = ()


_N = r"(?P<n>[0-9]{1,18}(?:[,.][0-9]{3})*|an? (?:couple (?:of )?)?dozen|(?:twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety)(?:[- ](?:one|two|three|four|five|six|seven|eight|nine))?|(?:a|one|two|three) hundred|two dozen|three dozen|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|eighteen|nineteen)"
_ABOUT = r"(?:(?:about|around|roughly|approx\.?|approximately|circa|ca\.?|some|maybe|perhaps|up to|at most|max\.?|~|≈|probably|expecting|expect|we are|we're|there will be|for) ?)*"
_WHO = r"(?:people|persons|ppl|peeps|guests|folks|heads|pax|adults|eaters|souls|attendees|members|neighbours|neighbors|friends|of us)\b(?: or so| in all| in total| total| expected| coming| max)*"
_PEOPLE = (
    re.compile(rf"{_ABOUT}(?<![\w.$€£-])(?:{_N})(?: ?(?:-|–|to|or) ?(?P<hi>[0-9]{{1,5}}))?(?:ish)? {_WHO}", re.IGNORECASE),
    re.compile(rf"\b(?:party|group|crowd|gathering) of {_ABOUT}{_N}\b(?: {_WHO})?", re.IGNORECASE),
    re.compile(rf"(?<![\w])(?:for|expecting|headcount:?|people:|guests:) {_ABOUT}{_N}(?: ?(?:-|–|to|or) ?(?P<hi>[0-9]{{1,5}}))?(?=\s*(?:$|[,;.]))", re.IGNORECASE),
    re.compile(r"(?<![\w])(?:about|around|roughly|~|≈) ?(?P<n>[0-9]{2,4})(?=\s*(?:$|[,;.]))", re.IGNORECASE),
)  # fmt: skip
_AMOUNT = r"(?P<amount>[0-9]{1,3}(?:,[0-9]{3})+(?:\.[0-9]{2})?|[0-9]{1,7}(?:[.,][0-9]{1,2})?)"
_CURRENCY = {
    "$": "USD", "us$": "USD", "usd": "USD", "dollar": "USD", "dollars": "USD", "bucks": "USD", "€": "EUR", "eur": "EUR",
    "euro": "EUR", "euros": "EUR", "£": "GBP", "gbp": "GBP", "pound": "GBP", "pounds": "GBP", "quid": "GBP",
    "cad": "CAD", "c$": "CAD", "aud": "AUD", "a$": "AUD", "nzd": "NZD", "chf": "CHF", "sek": "SEK", "nok": "NOK",
    "dkk": "DKK", "pln": "PLN", "zł": "PLN", "yen": "JPY", "¥": "JPY", "jpy": "JPY", "₹": "INR", "inr": "INR",
}  # fmt: skip
_SIGN = "|".join(re.escape(c) for c in sorted(_CURRENCY, key=len, reverse=True))
_BUDGET = (
    re.compile(rf"\b(?:with )?(?:a )?(?:total )?budget(?: is| of| about| around|:| =)* ?(?P<a>{_SIGN})? ?{_AMOUNT} ?(?P<b>{_SIGN})?(?![\w])", re.IGNORECASE),
    re.compile(rf"(?P<a>{_SIGN}) ?{_AMOUNT}(?: ?(?:budget|to spend|in all|total|max(?:imum)?|kitty))?(?![\w])", re.IGNORECASE),
    re.compile(rf"(?<![\w.]){_AMOUNT} ?(?P<b>{_SIGN})(?: ?(?:budget|to spend|in all|total|max(?:imum)?|kitty))?(?![\w])", re.IGNORECASE),
)  # fmt: skip
_OUT = re.compile(
    r"\b(?:(?:it is |held )?(?:all )?(?:outdoors?|outside|open[- ]air|al fresco|alfresco)|out(?= (?:on|in|under) (?:the|our|my)))\b", re.IGNORECASE
)
_IN = re.compile(r"\b(?:(?:it is |held )?(?:indoors?|inside))\b", re.IGNORECASE)
_OUT_PLACE = re.compile(
    r"\b(?:garden|allotment|backyard|back yard|yard|park|beach|meadow|orchard|field|lawn|terrace|patio|picnic|lake|river|campsite|rooftop|plot|barbecue|bbq|cookout|(?:the|our) street|driveway|car park|parking lot|courtyard|town square|plaza|deck|poolside|riverside|woods|playground|sports ground)\b",
    re.IGNORECASE,
)
_IN_PLACE = re.compile(
    r"\b(?:hut|hall|house|apartment|flat|kitchen|church|school|room|community cent(?:re|er)|barn|club|clubhouse|loft|cabin|shed)\b",
    re.IGNORECASE,
)
_BAR = re.compile(
    r"\b(?:(?:with|and|plus|we do|we'll do|doing|having) )?(?:an? |the )?(?:toppings? |build[- ]your[- ]own )?(?P<base>(?:baked potato|jacket potato|[a-z]+(?:[ -][a-z]+)?)) (?:toppings? )?bar\b(?: with toppings)?"
    r"|\bbar: ?(?P<base2>[a-z]+(?: [a-z]+){0,2})",
    re.IGNORECASE,
)
_NOT_A_BASE = frozenset(
    [
        "the",
        "a",
        "snack",
        "wine",
        "cocktail",
        "beer",
        "sports",
        "juice",
        "open",
        "cash",
        "local",
        "coffee",
        "at",
        "in",
        "our",
        "my",
        "your",
        "hotel",
        "piano",
        "corner",
        "rooftop",
        "beach",
        "pool",
        "space",
        "mini",
    ]
)
_BETWEEN = re.compile(
    r"\b(?:afternoon tea|high tea|tea party|coffee and cake|coffee morning|tea and cake|cake sale|dessert (?:party|potluck|night|swap)|cookie (?:swap|exchange)|snacks only|just snacks|just desserts?|between meals|drinks (?:party|and nibbles)|nibbles|elevenses)\b",
    re.IGNORECASE,
)
_MEAL = re.compile(
    r"\b(?:lunch|luncheon|brunch|breakfast|dinner|supper|meal|barbecue|bbq|cookout|picnic|feast|banquet|buffet|tea time|iftar|seder|thanksgiving)\b",
    re.IGNORECASE,
)
_TITLE = re.compile(r"[“\"](?P<q>[^”\"\n]{2,80})[”\"]|\b(?:called|named|titled?:?) (?P<n>[^,;\n]{2,80})", re.IGNORECASE)

_JOINER = "\u2060"
_NO_DAY = re.compile(r"\b(?:3[2-9]|[4-9][0-9]|[0-9]{3})(?:st|nd|rd|th)\b", re.IGNORECASE)
"""A birthday or a jubilee ("grandma's 80th"), which is no day of a month."""


def _blank(text: str, match: re.Match[str]) -> str:
    """Takes a match out; a mark stays, so that its two sides do not become one phrase."""
    return text[: match.start()] + BLANK + text[match.end() :]


_BELOW_ZERO = re.compile(rf"(?<!\w)[-−–] ?(?P<n>[0-9]{{1,7}}) {_WHO}", re.IGNORECASE)


_FREE_NUMBER = re.compile(
    r"(?<![\w])(?:about|around|roughly|~|≈) ?(?P<n>[0-9]{1,4})(?=\s*(?:$|[,;.\x00]))", re.IGNORECASE
)
"""Without the date a lone small number can only be people."""


def _people(text: str, *more: re.Pattern[str]) -> tuple[str, int | None, Say | None]:
    if (below := _BELOW_ZERO.search(text)) is not None and not text[: below.start()].rstrip().endswith(
        tuple("0123456789")
    ):
        facts = {"n": f"-{below['n']}", "low": 1, "high": MOST_PEOPLE}
        return _blank(text, below), None, Say("when-people-number", facts)
    for pattern in (*_PEOPLE, *more):
        match = pattern.search(text)
        if match is None:
            continue
        high = match.groupdict().get("hi")
        n = _counted(match["n"])
        if high:
            n = max(n, int(high))
        text = _blank(text, match)
        if not 1 <= n <= MOST_PEOPLE:
            return text, None, Say("when-people-number", {"n": str(n), "low": 1, "high": MOST_PEOPLE})
        return text, n, None
    return text, None, None


def _counted(word: str) -> int:
    """ "30", "thirty", "a couple of dozen"; 0 when it is no number."""
    word = word.lower().replace(",", "")
    if word.isdecimal():
        return int(word)
    if "couple" in word:
        return 24
    read = read_number(word.split())
    return int(read[0]) if read else 0


_SIZE = re.compile(
    rf"^{_ABOUT}(?:between )?(?P<n>{_N[6:-1]})(?: ?(?:-|–|to|or|and) ?(?P<hi>{_N[6:-1]}))?(?:ish)?(?: {_WHO})?(?: or (?:so|more|less)| give or take.*| i (?:think|guess|hope)| tops| at most| maybe)*(?=$|[,;.!?]| at | in )",
    re.IGNORECASE,
)


def read_size(text: str) -> int | None:
    """How many people an answer to "about how many?" says, 1 to 1000: "30", "about thirty", "20-25" (the upper end,
    as too much food is the smaller fault); None when it says no such number.

    >>> read_size("between 20 and 25, I think"), read_size("a couple of dozen"), read_size("moved to 6")
    (25, 24, None)
    """
    match = _SIZE.match(" ".join(text[:LONGEST].split()))
    if match is None:
        return None
    found = [_counted(word) for word in (match["n"], match["hi"]) if word]
    return max(found) if 1 <= max(found) <= MOST_PEOPLE else None


def _budget(text: str) -> tuple[str, Money | None]:
    for pattern in _BUDGET:
        match = pattern.search(text)
        if match is None:
            continue
        got = match.groupdict()
        sign = (got.get("a") or got.get("b") or "$").lower()
        digits = match["amount"]
        digits = (
            digits.replace(",", "")
            if re.fullmatch(r"[0-9]{1,3}(?:,[0-9]{3})+(?:\.[0-9]{2})?", digits)
            else digits.replace(",", ".")
        )
        amount = Decimal(digits).quantize(Decimal("0.01"))
        return _blank(text, match), Money(amount, _CURRENCY[sign]) if amount > 0 else None
    return text, None


def parse_potluck_line(text: str, now: datetime, timezone: str) -> Opening:
    """What the line says, piece by piece, in any order; what is left over is the title.

    Never raises for any text: a date that can't be acted on comes back in `unclear`. Without any date `when` is
    None and nothing is unclear. A party given as a range ("20-30 people") is taken at its upper end: too much food is the smaller fault.
    """
    text = " ".join(re.sub(r"[\r\n;]+", ", ", text[:LONGEST]).replace(BLANK, " ").replace(_JOINER, "").split())
    text = _NO_DAY.sub(lambda m: _JOINER.join(m[0]), text)
    unclear: list[Say] = []
    title = None
    if (match := _TITLE.search(text)) is not None:
        title = (match["q"] or match["n"]).strip()
        text = _blank(text, match)
    text, budget = _budget(text)
    text, kitchen = kitchen_within(text, BLANK)
    text, people, wrong = _people(text)
    if wrong is not None:
        unclear.append(wrong)
    base = None
    for match in _BAR.finditer(text):
        found = (match["base"] or match["base2"]).strip().lower()
        words = [
            w
            for w in re.split(r"[ -]", found)
            if w not in ("with", "and", "plus", "toppings", "topping", "a", "the", "our")
        ]
        if words and words[-1] not in _NOT_A_BASE and words[0] not in _NOT_A_BASE:
            base = " ".join(words)
            text = _blank(text, match)
            break
    setting = None
    for pattern, word in ((_OUT, "outdoor"), (_IN, "indoor")):
        match = pattern.search(text)
        # "outside the hut" names a place as well: the word stays for it.
        if match is not None and setting is None:
            setting = word
            if not re.match(r" (?:the|our|my|of) ", text[match.end() :]):
                text = _blank(text, match)
    mealtime = "between-meals" if _BETWEEN.search(text) or (title and _BETWEEN.search(title)) else None
    if mealtime is None and (_MEAL.search(text) or (title and _MEAL.search(title))):
        mealtime = "meal"
    when, rest = _when(text, now, timezone, unclear)
    if people is None and wrong is None:
        # "Supper for 24 Sat 18 Sep": the number stands free only once the date is gone.
        rest, people, wrong = _people(rest, _FREE_NUMBER)
        if wrong is not None:
            unclear.append(wrong)
        rest = rest.replace(BLANK, " ").strip(" ,")
    place, left = place_and_rest(rest)
    if title is None and left:
        title = left
    if setting is None and place:
        setting = "outdoor" if _OUT_PLACE.search(place) and not _IN_PLACE.search(place) else None
    title, place = (piece.replace(_JOINER, "") if piece else piece for piece in (title, place))
    return Opening(when, people, setting, place, title, mealtime, budget, base, kitchen, tuple(unclear))


def _when(text: str, now: datetime, timezone: str, unclear: list[Say]) -> tuple[When | None, str]:
    try:
        when = parse_when(text.replace(BLANK, " , "), now, timezone, foreign=False)
    except Unclear as wrong:
        if wrong.say.key != "when-not-understood":
            unclear.append(wrong.say)
            return None, ""
        if (found := _foreign_piece(text, now, timezone)) is not None:
            return found
        return None, text
    if not when.has_date:
        if (found := _foreign_piece(text, now, timezone)) is not None and found[0].has_time:
            return found
        unclear.append(Say("when-no-date", {"words": when.words}))
        return None, when.rest
    return when, when.rest


def _foreign_piece(text: str, now: datetime, timezone: str) -> tuple[When, str] | None:
    """A piece between commas that is a date in another language."""
    pieces = [p.strip() for p in re.split(rf"[,{BLANK}]", text) if p.strip()]
    for piece in pieces[:4]:
        if len(piece.split()) > 5 or _MEAL.search(piece) or PLACE.match(piece):
            continue
        try:
            when = parse_when(piece, now, timezone)
        except Unclear:
            continue
        if when.has_date:
            return when, ", ".join(p for p in pieces if p != piece)
    return None
