"""A message that tells of food in some state, or asks of it: which foods, which state each, and the verdict on each.

A state belongs to the food named before it; one named before every food belongs to all that have none of their own;
what comes after "and" or "too" shares. What is planned, remembered, joked or of another house is none of it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from planning.potluck import Potluck, Promise
from planning.safety.words import has
from planning.theday.situation.figures import Weather, oven_off, weather
from planning.theday.situation.foods import PARTS, Food, all_foods, as_said, english, folded, foods_in
from planning.theday.situation.heard import Heard, joined, when
from planning.theday.situation.patterns import LANGUAGES
from planning.theday.situation.states import measured, ours, states
from planning.theday.situation.verdicts import State, Verdict, verdict

FOLLOWS, MEASURES = timedelta(minutes=45), timedelta(hours=3)
"""So long the next words, or the next figure, of the same person may be about the same food (common practice, no
source)."""
SHORT, SHORTEST, LONGEST = 14, 9, 60
"""Words of a message that may follow another, of one that only says since when, and of any that is read."""
EVERYTHING = Food("", "", "")
STERN = ("over", "below", "raw", "cool", "warm", "freezer", "icy", "frozen", "running", "ask")
_MINE = re.compile(r"\b(?:mine|my (?:dish|one|slow cooker|crock ?pot)|el mio|la mia)\b")


@dataclass(frozen=True)
class Recent:
    """What this person spoke of a moment ago."""

    at: datetime
    verdicts: tuple[Verdict, ...]
    freezer: bool = False
    frozen: bool = False


@dataclass(frozen=True)
class Judged:
    """`outside` the weather told; `oven_f` how much hotter than it says the oven is (°F, less than 0: colder).

    `freezer`: one was open or off, and no food was named. `quiet`: told in passing; only the next words may make it
    something to speak of.
    """

    verdicts: tuple[Verdict, ...] = ()
    outside: Weather | None = None
    oven_f: float | None = None
    freezer: bool = False
    quiet: tuple[Verdict, ...] = ()

    def remembered(self, now: datetime) -> Recent:
        verdicts = self.verdicts or self.quiet
        frozen = any(v.kind == "frozen" for v in verdicts)
        cold = self.freezer or any(v.kind == "freezer" for v in verdicts)
        return Recent(now, verdicts, cold, frozen)


def judge(
    words: str,
    potluck: Potluck,
    me: str,
    now: datetime,
    *,
    language: str = "en",
    addressed: bool = False,
    recent: Recent | None = None,
) -> Judged | None:
    """None where the words tell of nothing of the kind. Pure; any text, of which 600 letters are looked at."""
    text = folded(words)
    if not text or len(text.split()) > LONGEST:
        return None
    since = now - recent.at if recent is not None else timedelta(-1)
    measures = recent if timedelta() <= since <= MEASURES else None
    follows = recent if timedelta() <= since <= FOLLOWS else None
    codes = dict.fromkeys((language if language in LANGUAGES else "en", *LANGUAGES))
    freezer = follows is not None and follows.freezer
    heard = [Heard(text, as_said(words), code, potluck, now, addressed, freezer) for code in codes]
    if any(one.talk() for one in heard):
        return None
    for one in heard:
        judged = _One(one, me, follows, measures).judged()
        if judged is not None:
            return judged
    return None


@dataclass
class _One:
    """One message in one language, from one person."""

    heard: Heard
    me: str
    recent: Recent | None
    measures: Recent | None

    def judged(self) -> Judged | None:
        heard = self.heard
        off = oven_off(heard.text, heard.language, metric=heard.metric)
        if off is not None:
            return Judged(oven_f=off)
        outside = weather(heard.text, heard.language, metric=heard.metric)
        foods = foods_in(heard.text, heard.potluck.promises, self.me, heard.said)
        if outside is not None:
            heard.without(outside.start, outside.end)
        # A breast or a thigh alone is the bird's that is named, or promised.
        foods = tuple(f for f in foods if not f.part or f.promise or all(g.part for g in foods))
        f = outside.f if outside is not None else None
        told, quiet = self._told(foods)
        if told:
            return Judged(self._verdicts(told, f), outside)
        if quiet and outside is None:
            return Judged(quiet=self._verdicts(quiet, None))
        if heard.says("freezer") and not foods and not heard.says("plan"):
            return Judged(freezer=True)
        return Judged(outside=outside) if outside is not None else None

    def _verdicts(self, told: Iterable[tuple[Food, State]], outside_f: float | None) -> tuple[Verdict, ...]:
        """One a food; of two on the same the sterner."""
        best: dict[str, Verdict] = {}
        for food, state in told:
            one = verdict(self.heard.potluck, food, state, self.heard.now, outside_f)
            key = food.promise or food.label
            if key not in best or _sternness(one) < _sternness(best[key]):
                best[key] = one
        return tuple(best.values())

    def _told(self, foods: tuple[Food, ...]) -> tuple[list[tuple[Food, State]], list[tuple[Food, State]]]:
        """(food, state) to speak of, and what is only remembered."""
        heard = self.heard
        if heard.says("limit") and not heard.says("limit-not"):
            named = foods or self._meant(always=heard.addressed or heard.says("it"))
            return [(f, State("limit")) for f in named], []
        if not foods:
            return self._without_food(), []
        told, quiet = [], []
        for food, state in zip(foods, states(heard, foods), strict=True):
            if state is None:
                continue
            if ours(heard, food, state, several=len(foods) > 1, follows=self.recent is not None):
                told.append((self._bird(food), state))
            elif state.place in ("out", "car", "off") and state.since is None and not heard.says("selfgo", "plan"):
                quiet.append((food, state))
        return told, quiet

    # -- which food, where none is named

    def _own(self) -> list[Promise]:
        return [
            p for p in self.heard.potluck.promises if p.guest == self.me and p.category not in ("drink", "supplies")
        ]

    def _poultry(self) -> list[Promise]:
        birds = [p for p in self.heard.potluck.promises if has(replace(p, dish=english(p.dish)), "poultry")]
        return [p for p in birds if p.guest == self.me] or birds

    def _bird(self, food: Food) -> Food:
        """Whose breast or thigh: the one poultry dish of the list."""
        birds = self._poultry() if food.part and not food.promise else []
        return replace(_food(birds[0]), part=True) if len(birds) == 1 else food

    def _meant(self, *, always: bool = False) -> tuple[Food, ...]:
        """What "it" is: what this person spoke of, else the one dish they bring."""
        if self.recent is not None and self.recent.verdicts:
            return tuple(v.food for v in self.recent.verdicts)
        own = self._own()
        return (_food(own[0]),) if always and len(own) == 1 else ()

    def _without_food(self) -> list[tuple[Food, State]]:
        """It, they, a thigh, or nothing at all: about what was spoken of, or about the one dish that fits."""
        heard = self.heard
        state = heard.state(heard.text)
        if heard.says("selfgo"):
            return []
        if state is not None and state.f is not None:
            return [(f, measured(heard, f, state)) for f in self._measured_foods()]
        lies = state is not None and state.place in ("out", "car", "sun", "off") and not heard.says("plan")
        if state is not None and lies and all_foods(heard.text) and (state.since or state.minutes) is not None:
            return [(EVERYTHING, state)]
        if self.recent is not None and self.recent.verdicts and len(heard.text.split()) <= SHORT:
            follows = self._follows(self.recent, state)
            if follows:
                return follows
        if state is None or heard.says("plan"):
            return []
        bird = self._bird_said() if state.place in ("raw", "frozen", "thaw", "freezer") else None
        if bird is not None:
            return [(bird, state)]
        timed = state.since is not None or state.minutes is not None
        if state.place in ("out", "car", "sun", "off") and all_foods(heard.text) and timed:
            return [(EVERYTHING, state)]
        if heard.addressed and timed and state.place in ("off", "car", "out"):
            return [(f, state) for f in self._meant(always=True)] or [(EVERYTHING, state)]
        if heard.addressed and (heard.asks or state.place in ("raw", "frozen", "thaw")):
            return [(f, state) for f in self._meant(always=True)]
        return []

    def _follows(self, recent: Recent, state: State | None) -> list[tuple[Food, State]]:
        """The next words about the same food."""
        heard, spoken = self.heard, [(v.food, v.state) for v in recent.verdicts]
        if recent.frozen and heard.says("thaw", "frozen"):
            return [(food, replace(was, place="frozen")) for food, was in spoken]
        if recent.freezer and heard.says("soft", "crystals"):
            return [(food, State("freezer", crystals=heard.says("crystals"))) for food, _ in spoken]
        unknown = [(v.food, v.state) for v in recent.verdicts if v.kind == "ask"]
        told = heard.times()
        if unknown and told and len(heard.text.split()) <= SHORTEST:
            since, minutes = when(told, heard.text)
            return [(food, replace(was, since=since, minutes=minutes)) for food, was in unknown]
        if heard.asks or (state is not None and heard.says("it")):
            same = state is None or state.place in ("hot", "cold")
            return [(food, was if same or state is None else joined(was, state)) for food, was in spoken]
        return []

    def _bird_said(self) -> Food | None:
        """The bird of which only a part is named: the one of the list, else any."""
        birds = self._poultry()
        part = next((w for w in re.findall(r"[a-z]+", self.heard.text) if w in PARTS), None)
        if part is None:
            return None
        return replace(_food(birds[0]), part=True) if len(birds) == 1 else Food(part, "", "chicken", part=True)

    def _measured_foods(self) -> tuple[Food, ...]:
        """What was measured, where only a figure is said."""
        heard, bird = self.heard, self._bird_said()
        if bird is not None and bird.promise:
            return (bird,)
        if self.measures is not None and (len(self.measures.verdicts) == 1 or heard.says("in-there")):
            return tuple(v.food for v in self.measures.verdicts)
        if bird is not None:
            return (bird,)
        own = self._own()
        mine = heard.addressed or _MINE.search(heard.text) is not None or heard.says("inside")
        if len(own) == 1 and mine:
            return (_food(own[0]),)
        # Whose dish nobody has on a list: a figure is answered all the same.
        return (EVERYTHING,) if _MINE.search(heard.text) is not None else ()


def _food(dish: Promise) -> Food:
    return Food(dish.dish, dish.id, english(dish.dish))


def _sternness(one: Verdict) -> int:
    return STERN.index(one.kind) if one.kind in STERN else len(STERN)
