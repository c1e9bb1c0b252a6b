"""Which state belongs to which food of a message, and whether it is for us at all."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from planning.dishes import lookup
from planning.theday.situation.foods import Food
from planning.theday.situation.heard import Heard, joined, when
from planning.theday.situation.verdicts import State, served_cold

HELD = (
    "soup", "stew", "chili", "sauce", "chowder", "gravy", "bean", "curry", "mac", "macaroni", "broth", "pozole",
    "caldo", "queso", "fondue", "cheese dip",
)  # fmt: skip
"""What is rather kept hot than cooked through when somebody measures it."""
NIGHT_MIN = 720.0
"""A freezer found open in the morning (common practice, no source)."""
_ONE = r"[\s,&/+()~\d.]*"
_LISTED = re.compile(
    rf"{_ONE}(?:(?:and|or|y|e|with|half|the|both|some|of|about|lb|lbs|el|la|los|las|left|leftover)\b{_ONE})*"
)
_STORE = re.compile(r"\b(?:cooler|fridge|refrigerator|freezer|hielera|nevera|refri\w*|congelador)\b")
_MIDDLE = re.compile(r"\b(?:inside|center|centre|middle|por dentro|centro|done)\b")
_BOUGHT_FROZEN = re.compile(r"\bfrozen (?:margaritas?|yogurt|peas|corn|pizza|fries|berries|fruit)\b")
_COLOR = re.compile(r"\b(?:pink\w*|red|rosad[oa]s?)\b")
_UNDONE = re.compile(r"\b(?:raw|under\w+|blood\w*|crud[oa]s?|sangra)\b")
_STOPS = re.compile(r"[,.?!;:]")
_LATER = re.compile(r"\b(?:will|ill|gonna|going to|lets|please|voy a|pondre|pon|ponga|pongan|ponla|ponlo)\b")
_CARRIED = re.compile(
    r"\b(?:(?:took|laid|brought|pulled|got|carried|served|dished up"
    r"|(?:i|we|they|he|she|somebody|someone) (?:just )?(?:put|set))"
    r"|saque|sacamos|sacaron|saco|puse|pusimos|pusieron|servi|servimos|sirvieron|deje|dejamos|apague|apagamos|apagaron)"
    r"(?: \w+){0,2} $"
)
""" "Took the salad out at 2", "saqué la ensalada a las 2": the verb stands before the food."""
_OUT_AT = re.compile(r"^s? ?(?:\w+ )?(?:out|up)\b(?! of)|^s? ?a(?: eso de)? las? ")
_APART = re.compile(r"[,.?!;:](?!\d)")
_SO_FAR = re.compile(r"\b(?:been|was|were|since|desde|estuvo|estaba|lleva)\b")


def states(heard: Heard, foods: Sequence[Food]) -> list[State | None]:
    """One for each food, in their order; None where nothing was said of it."""
    text, bounds = heard.text, [f.start for f in foods]
    ends = [*bounds[1:], len(text)]
    parts = [text[f.end : end] for f, end in zip(foods, ends, strict=True)]
    gaps = [text[end:start] for end, start in zip([0, *(f.end for f in foods)], bounds, strict=False)]
    own = [
        heard.state(part, f.end) or _carried(heard, gap, part) for gap, part, f in zip(gaps, parts, foods, strict=True)
    ]
    whole = heard.state(text) if heard.says("freezer", "thaw", "frozen") else None
    told: list[State | None]
    if whole is not None and whole.place in ("freezer", "thaw", "frozen"):
        told = [_in_whole(whole, one) for one in own]
    else:
        told = _shared(heard, heard.state(text[: bounds[0]]), own, parts)
    if heard.says("leftover") and heard.says("asks") and heard.now >= heard.potluck.starts_at:
        # "Rice left over, what do I do with it": on the table since the meal began, as far as anybody knows.
        began = State("out", heard.potluck.starts_at)
        told = [began if s is None and not f.promise else s for f, s in zip(foods, told, strict=True)]
    return [measured(heard, f, s) if s is not None and s.f is not None else s for f, s in zip(foods, told, strict=True)]


def _carried(heard: Heard, gap: str, part: str) -> State | None:
    """Carried out at an hour that is told: the verb before the food, the hour behind it."""
    said = part[: stop.start()] if (stop := _APART.search(part)) is not None else part
    if _CARRIED.search(gap) is None or _OUT_AT.search(said) is None:
        return None
    since, minutes = when(heard.times(said), said)
    return State("out", since, minutes) if since is not None or minutes is not None else None


def _in_whole(whole: State, own: State | None) -> State:
    """A freezer that was open all night is told of everything that was in it."""
    if own is not None and whole.place == "freezer" and own.place in ("out", "car") and own.since is not None:
        return own
    if own is not None and own.f is not None:
        return replace(own, minutes=whole.minutes, since=whole.since)
    return whole


def _shared(heard: Heard, before: State | None, own: list[State | None], parts: list[str]) -> list[State | None]:
    """The foods without a state of their own share their neighbour's."""
    first = own[0]
    if before is not None and before.f is not None and first is None and not _timed(before):
        # "It says 58 in there. The platter has been in since 9": how long is said behind the food.
        since, minutes = when(heard.times(parts[0]), parts[0])
        before = replace(before, since=since, minutes=minutes)
    if before is not None and (first is None or len(own) == 1 or not (_timed(first) or first.f is not None)):
        own = [joined(before, first) if first is not None else before, *own[1:]]
    out = list(own)
    for n, state in enumerate(own):
        if state is None:
            out[n] = _neighbour(heard, n, before, own, out, parts)
    return out


def _neighbour(
    heard: Heard,
    n: int,
    before: State | None,
    own: list[State | None],
    so_far: list[State | None],
    parts: list[str],
) -> State | None:
    after = next((s for s in own[n + 1 :] if s is not None), None)
    earlier = so_far[n - 1] if n else None
    gap = parts[n]
    shares = heard.says("too", within=gap)
    one_list = _LISTED.fullmatch(gap) is not None or (n == 0 and own[1:2] != [None] and not _STOPS.search(gap))
    if after is not None and not shares and one_list:
        return after
    if earlier is not None and (shares or (earlier.place not in ("hot", "cold") and earlier.f is None)):
        return earlier
    if before is not None:
        return before
    # That one dish was kept says nothing of the next: how long it was out is asked.
    if heard.says("leftover") and (after is not None or earlier is not None):
        return State("out")
    return State("out") if earlier is not None and len(own) > 2 else None


def _timed(state: State) -> bool:
    return state.since is not None or state.minutes is not None


def measured(heard: Heard, food: Food, state: State) -> State:
    """Whether a figure is of cooking, of keeping hot or of keeping cold."""
    english = (food.english or food.label).casefold()
    if _STORE.search(heard.text) is not None or (heard.freezer and heard.says("in-there")):
        night = heard.freezer and not _timed(state)
        return replace(state, stage="cold", place="out", minutes=NIGHT_MIN if night else state.minutes)
    if served_cold(food) and (state.f or 0) < 100:
        return replace(state, stage="cold", place="out")
    wet = any(w in english for w in HELD)
    held = wet or heard.says("held-in") or heard.now >= heard.potluck.starts_at
    cooks = heard.says("inside") and not (wet and _MIDDLE.search(heard.text) is None)
    place = state.place if state.place in ("car", "off", "sun", "out") else "out"
    return replace(state, stage="hold" if held and not cooks else "cook", place=place)


def ours(heard: Heard, food: Food, state: State, *, several: bool, follows: bool) -> bool:
    """Whether it tells of a hazard, or asks; what is only planned, cooking or kept as it should be is not for us."""
    # "I'm in the car since 4, chili is in the cooler": it is the writer who sits there.
    sits = heard.says("selfgo") and not follows and not heard.asks and food.start > 0
    first = not any(c in heard.text[: food.start] for c in ",.;!?")
    if sits and (state.place == "cold" or (first and state.place in ("car", "out"))):
        return False
    plan = heard.says("plan")
    if state.f is not None:
        return not plan or heard.addressed
    match state.place:
        case "frozen":
            return _BOUGHT_FROZEN.search(heard.text) is None
        case "raw" if not food.part and _COLOR.search(heard.text) and not _UNDONE.search(heard.text):
            return lookup(food.english or food.label).category not in ("dessert", "drink", "bread", "topping")
        case "raw" | "thaw" | "freezer" | "limit":
            return True
        case "hot" | "cold" if plan:
            return False
        case "cold" if heard.says("out-fridge"):
            return True
        case "hot" | "cold":
            stood = several and heard.says("out", "out-car", "off") and bool(heard.times())
            return heard.asks or heard.says("leftover", "whole-time") or stood
    if plan and not _timed(state):
        return False
    if plan and _LATER.search(heard.text) and not _SO_FAR.search(heard.text):
        return False
    if heard.says("out-warm") and heard.now > heard.potluck.starts_at:
        return True
    return _timed(state) or heard.asks or heard.says("oops", "leftover")
