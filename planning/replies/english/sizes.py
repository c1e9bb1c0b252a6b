"""How much: amounts before and behind the name of a dish ("2 dozen", "for 12", "should be around 24 of them")."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from planning import amounts
from planning.replies.english.lexicon import NUMBER, number_of, words
from planning.replies.text import Token, raw_words

_FOR = re.compile(
    rf"^ ?(?P<all>\(? ?(?:(?:that|which) )?(?:(?:should |will |can )?(?:feeds?|serves?|be|is) )?(?:enough |plenty |big enough |sized |made )?(?:for|to feed|to serve|feeds|serves|feeding|serving|(?:will|should|can) (?:feed|serve)) (?:about |around |up to |roughly |at least |approx |like |maybe |all )*(?P<n>[0-9]{{1,9}}(?:-[0-9]{{1,4}})?|a dozen|two dozen|{NUMBER})(?:(?: to | or |-| - )(?P<hi>[0-9]{{1,4}}|{NUMBER}))?(?! (?:dollars|bucks|years|hours|minutes|lb|oz|pm|am|kids of))(?: ?(?:people|persons|ppl|servings|portions|of us|guests|or so|ish|folks|adults|hungry people|at least|total|now|instead))* ?\)?)"
)
SERVINGS_OF = re.compile(
    rf"^ \(? ?(?P<n>[0-9]{{1,6}}(?:-[0-9]{{1,4}})?|{NUMBER}) (?:servings|portions|helpings|people)(?: worth)?(?: of)? ?\)?"
)
_FOR_ALL = re.compile(
    r"^ (?:\( )?(?:enough |plenty |sufficient )?(?:for|to feed|feeds|to go round|to go around) ?(?:everyone|everybody|all of us|all|the whole (?:group|crowd|gang|lot|party)|the crowd|the group|us all|the gang|the table|a crowd|the masses|the lot of us|you all)?(?: there)?(?: \))?"
)


def servings_in(match: re.Match[str]) -> float:
    if match["n"].endswith("dozen"):
        return 24.0 if match["n"].startswith("two") else 12.0
    low, _, high = match["n"].partition("-")
    first = float(low) if low.replace(".", "").isdecimal() else float(number_of(match["n"]))
    second = match.groupdict().get("hi") or high
    if second:
        return (first + (float(second) if second.isdecimal() else float(number_of(second)))) / 2
    return first


def tail(left: str) -> re.Match[str] | None:
    for pattern in (_FOR, SERVINGS_OF):
        if (match := pattern.match(left)) is not None:
            return match
    match = _FOR_ALL.match(left)
    return (
        match
        if match is not None and match[0].strip() not in ("for", "to feed", "feeds", "enough", "enough for")
        else None
    )


def counted(name: Sequence[Token]) -> bool:
    """Whether a bare number behind the name counts the things themselves ("napkins, 40"), not those who eat."""
    if not name:
        return False
    last = name[-1].plain
    return (last.endswith("s") and not last.endswith("ss")) or (last.endswith("i") and len(last) > 5)  # "pierogi, 60"


_BEHIND = re.compile(
    r"^(?: (?:big|small|large|whole|(?!need)[a-z]{3,}ed|or so|ish|easy|easily|comfortably|i think|i guess|i reckon|of them|of those|pieces|pcs|halves|bits|squares|rounds|slices|altogether|in total|total|in all|at least|each|or thereabouts|give or take))*"
)
_OPENERS = (",", "-", "–", "(", ":", "x", "×")


@dataclass(frozen=True)
class Behind:
    """An amount said after the name; `after` is the token where the sentence goes on."""

    after: int
    servings: float | None = None
    quantity: str | None = None
    amount: amounts.Amount | None = None
    for_all: bool = False


def amount_behind(tokens: Sequence[Token], i: int, last: int, name: Sequence[Token]) -> Behind | None:
    """How much of `name` there is, in the words from token `i` on; None when they say something else."""
    opened = tokens[i].plain in _OPENERS
    for start in (i, i + 1) if opened else (i,):
        left = " " + " ".join(t.plain for t in tokens[start:last])
        if (match := tail(left)) is not None:
            after = start + len(match[0].split())
            return Behind(after, for_all=True) if match.re is _FOR_ALL else Behind(after, servings_in(match))
    j = i + opened
    while (
        j < last
        and (tokens[j].plain in words("hedge") or (tokens[j].plain == "least" and tokens[j - 1].plain == "at"))
        and tokens[j].plain not in ("a", "an")
    ):
        j += 1
    if j >= last or j - i > 6:
        return None
    said = {t.plain for t in tokens[i:j]}
    number = amounts.read_number([t.plain for t in tokens[j : j + 6]])
    bare = re.fullmatch(r"([0-9]{1,5})(?:[-–]([0-9]{1,5}))?", tokens[j].plain)
    if bare is not None:
        value, after = (float(bare[1]) + float(bare[2] or bare[1])) / 2, j + 1
    elif number is not None:
        value, after = float(number[0]), j + number[1]
    else:
        value, after = 0.0, j
    if value and after < last and tokens[after].plain in words("eaters"):
        after += after + 1 < last and tokens[after + 1].plain == "worth"
        return _closed(tokens, after + 1, last, Behind(after + 1, value))
    if value and said & words("feeds").keys():
        return _closed(tokens, after, last, Behind(after, value))
    if value and (ones := _ONES.match(" " + " ".join(t.plain for t in tokens[after:last]))) is not None:
        return _closed(tokens, after + len(ones[0].split()), last, Behind(after, None, raw_words(tokens[j:after])))
    if value >= 2 and (pieces := _pieces(tokens, j, after, last)) > after:
        return _closed(tokens, pieces, last, Behind(pieces, None, raw_words(tokens[j:pieces])))
    for end in range(min(last, j + 5), j, -1):
        amount = _plainly(tokens, j, end) if end - j > 2 else None
        if amount is not None:
            return _closed(tokens, end, last, Behind(end, None, raw_words(tokens[j:end]), amount))
        amount = amounts.parse(raw_words(tokens[j:end])) or amounts.parse(" ".join(t.plain for t in tokens[j:end]))
        if (
            amount is None
            or amount.kind == "serving"
            or (amount.unit == "piece" and amount.value < 12 and end - j == 1)
        ):
            continue
        if amount.unit == "piece" and not re.search("dozen|doz", tokens[end - 1].plain):
            break
        return _closed(tokens, end, last, Behind(end, None, raw_words(tokens[j:end]), amount))
    if value and tokens[i].plain in ("x", "×"):
        return _closed(tokens, after, last, Behind(after, None, raw_words(tokens[j:after])))
    if value and not (said or opened) and counted(name) and 2 <= value <= 2000 and not _loose_end(tokens, after, last):
        return Behind(after, None, raw_words(tokens[j:after]))  # "plates 50"
    if value and opened and not said and counted(name) and 2 <= value < 6 and after >= len(tokens) and _BROUGHT & {t.plain for t in tokens[: i - len(name)]}:
        return Behind(after, None, raw_words(tokens[j:after]))  # "picking up chickens, 3"
    if not value or not (said or opened) or not 6 <= value <= 500:
        return None
    found = Behind(after, None, raw_words(tokens[j:after])) if counted(name) else Behind(after, value)
    closed = _closed(tokens, after, last, found)
    sized = said - {"i", "to"} or tokens[i].plain in ("(", "x", "×")
    return closed if closed is not None and (sized or closed.after >= len(tokens)) else None


_ONES = re.compile(
    r"^ (?:(?:(?:really|very|quite|fairly|pretty|of the|of them|of these) )?(?:big|small|large|huge|little|good|nice|whole|full|mini|tiny|generous|giant|medium|sized|good-sized|decent|fat|long|tall) )+(?:ones?|uns?)(?= |$)"
)
""" "Watermelon, 2 big ones"."""
_BROUGHT = frozenset(("bring", "bringing", "make", "making", "do", "doing", "bake", "baking", "pick", "picking", "buy", "buying", "get", "getting", "grab", "grabbing", "cook", "cooking", "have", "got", "smoke", "smoking", "grill", "grilling"))
_PIECES = frozenset(("pieces", "piece", "pcs", "ears", "heads", "cobs", "racks", "rack", "slabs", "links", "patties", "fillets", "wedges", "skewers", "sticks", "balls", "strips", "wings", "thighs", "drumsticks", "logs", "rounds", "squares", "ct", "count", "pack", "pk", "units", "sheets"))


def _pieces(tokens: Sequence[Token], j: int, after: int, last: int) -> int:
    """Where "40 pieces", "three dozen ears", "36 ct" ends; `after` where no such word follows."""
    if after < last and tokens[after].plain in ("dozen", "doz", "hundred"):
        after += 1
    return after + 1 if after < last and (tokens[after].plain in _PIECES or tokens[after].plain == "dz") else after


def _plainly(tokens: Sequence[Token], j: int, end: int) -> amounts.Amount | None:
    """ "Two big bags": an amount with a word for a size before its unit."""
    if tokens[j + 1].plain not in words("sizeword"):
        return None
    amount = amounts.parse(" ".join(t.plain for t in (tokens[j], *tokens[j + 2 : end])))
    return amount if amount is not None and amount.kind not in ("serving",) and amount.unit != "piece" else None


def _loose_end(tokens: Sequence[Token], i: int, last: int) -> bool:
    """Whether the sentence goes on with something else than the next thing."""
    return i < last and tokens[i].plain not in (",", "and", "&", "+", "plus", "/", "-", "–", ")", "from", "all")


_FOR_THE_MEAL = re.compile(
    r"^ for (?:the |our |your )?(?:bbq|barbecue|barbie|cookout|picnic|feast|potluck|supper|dinner|party|meal|grill|table|gathering|get-together|event|kids|children)(?= |$)"
)


def _closed(tokens: Sequence[Token], i: int, last: int, found: Behind) -> Behind | None:
    """The amount, if the words really end there: nothing may follow that makes it an hour, a price or an age."""
    more = _BEHIND.match(" " + " ".join(t.plain for t in tokens[i:last]))
    i += len(more[0].split()) if more is not None else 0
    meal = _FOR_THE_MEAL.match(" " + " ".join(t.plain for t in tokens[i:last]))
    if meal is not None:  # "4 kg for the barbecue"
        i += len(meal[0].split())
        found = replace(found, after=i)
    if i < last and tokens[i].plain == ")":
        i += 1
    elif i < last and tokens[i].plain not in (
        ",",
        "and",
        "&",
        "+",
        "plus",
        "-",
        "–",
        "but",
        "from",
        "if",
        "as",
        "too",
        "instead",
        "now",
        "so",
        "then",
        "please",
    ):
        return None
    return replace(found, after=i)


def amount_at(tokens: list[Token], i: int, last: int) -> tuple[amounts.Amount, str, int] | None:
    """The longest amount from token `i`, its text, and the position after it and its "of"."""
    if i >= last:
        return None
    plain = tokens[i].plain
    if not (
        plain[0].isdecimal()
        or plain[0] in "½⅓⅔¼¾⅛#"
        or plain in amounts.number_words()
        or plain in ("a", "an", "no.", "half", "couple", "several")
        or "-" in plain
    ):
        return None
    top = min(last, i + 7)
    for j in range(top, i, -1):
        if j < last and tokens[j].plain == "-":
            continue
        text = raw_words(tokens[i:j])
        if len(text) > amounts.LONGEST:
            continue
        amount = amounts.parse(text)
        if amount is None and tokens[j - 1].plain != tokens[j - 1].raw:
            amount = amounts.parse(" ".join(t.plain for t in tokens[i:j]))
        if amount is None:
            continue
        if amount.kind == "serving" and not any(
            t.plain in ("servings", "portions", "serving", "portion", "people", "helpings") for t in tokens[i:j]
        ):
            continue
        if j < last and tokens[j].plain in ("with", "full") and tokens[j + 1 : j + 2] and tokens[j + 1].plain != "of":
            continue  # "a cooler with ice" is a cooler
        if (
            amount.package is None
            and amount.kind in ("package", "pan", "can")
            and amount.value == Fraction(1)
            and j - i == 2
            and tokens[i].plain in ("a", "an")
        ):
            pass  # "a bag" is an amount when "of" something follows, else perhaps the thing itself
        if j < last and tokens[j].plain == "of":
            return amount, text, j + 1
        if j + 1 < last and tokens[j].plain == "full" and tokens[j + 1].plain == "of":
            return amount, text, j + 2
        if j < last and tokens[j].plain not in (",", "and", "for", "but", ")", "+", "&", "with", "full"):
            return amount, text, j
        if amount.unit == "piece" or (j >= last and amount.kind not in ("mass", "volume")):
            continue
        return amount, text, j
    return None
