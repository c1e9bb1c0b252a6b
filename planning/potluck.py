"""The values a potluck is made of.

Every instant is an aware datetime in UTC; `Potluck.timezone` (an IANA name) says on which wall
clock people read it. Temperatures are degrees Fahrenheit, as in the sources the rules come from.
A *serving* is one eater's portion. Ids are strings; nothing refers to anything by position.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from decimal import Decimal
from enum import StrEnum
from functools import cached_property
from zoneinfo import ZoneInfo

CATEGORIES = ("main", "side", "salad", "starter", "bread", "dessert", "drink", "topping", "supplies")
"""In the order a table is laid; the order in which everything is shown."""

FOOD_CATEGORIES = tuple(c for c in CATEGORIES if c not in ("drink", "supplies"))

AGE_GROUPS = ("adults", "teens", "children", "toddlers", "infants")
"""Infants under 1, toddlers 1-3, children 4-12, teens 13-17."""


class Answer(StrEnum):
    """What a guest said about coming; NONE until they say anything."""

    YES = "yes"
    MAYBE = "maybe"
    NO = "no"
    NONE = "none"


class Stage(StrEnum):
    """PLANNED until the host cancels it or the thanks have gone out."""

    PLANNED = "planned"
    CANCELLED = "cancelled"
    DONE = "done"


@dataclass(frozen=True)
class Say:
    """A sentence before it has words: a text key and its facts (plain JSON values)."""

    key: str
    facts: Mapping[str, object] = field(default_factory=dict)


@dataclass(frozen=True)
class Money:
    amount: Decimal
    currency: str = "USD"


@dataclass(frozen=True)
class Party:
    """Who comes with one answer, by age group; each 0 or more."""

    adults: int = 1
    teens: int = 0
    children: int = 0
    toddlers: int = 0
    infants: int = 0

    @property
    def total(self) -> int:
        return self.adults + self.teens + self.children + self.toddlers + self.infants

    def counts(self) -> Iterator[tuple[str, int]]:
        """(age group, people), only groups with somebody in them."""
        for group in AGE_GROUPS:
            if (n := getattr(self, group)) > 0:
                yield group, n


@dataclass(frozen=True)
class Need:
    """A diet or allergy of `count` members of a party.

    `need` is a diet word ("vegetarian") or an allergen word ("peanut"); `severity` is
    "allergy", "intolerance", "diet" or "" when nobody said; `open` is true only when the owner
    wrote it where everybody could read it.
    """

    need: str
    count: int = 1
    severity: str = ""
    open: bool = False


@dataclass(frozen=True)
class Guest:
    """One answer and the party behind it. `id` is the account's id, or "n<number>" for a person
    somebody else named (`added_by`), who may have no account."""

    id: str
    name: str
    answer: Answer = Answer.NONE
    party: Party = field(default_factory=Party)
    diets: tuple[str, ...] = ()
    allergies: tuple[str, ...] = ()
    needs: tuple[Need, ...] = ()
    pregnant: bool = False
    travel_min: int = 0
    can_cook: bool = True
    has_oven: bool = True
    added_by: str | None = None
    username: str | None = None
    arrived_at: datetime | None = None

    def all_needs(self) -> tuple[Need, ...]:
        """Bare diets and allergies count for one unnamed member of the party each."""
        bare = tuple(Need(d, 1, "diet") for d in self.diets) + tuple(
            Need(a, 1, "allergy") for a in self.allergies
        )
        return bare + self.needs


@dataclass(frozen=True)
class HeatStep:
    """One link of a dish's chain of work.

    `kind`: oven, stove, slow-cooker-low, slow-cooker-high, microwave, grill, rest, prep,
    keep-warm, chill, thaw, transport, serve. `minutes` > 0; `at` is "venue" or "home";
    `hands_min` is how long a cook is busy with it; `movable` false forbids another set-point.
    """

    kind: str
    minutes: int
    temp_f: float | None = None
    pans: int = 1
    covered: bool = False
    at: str = "venue"
    hands_min: int = 0
    movable: bool = True
    watts: int | None = None
    own_appliance: bool = False


@dataclass(frozen=True)
class Promise:
    """A guest said they will bring it. `sharers` are others who bring it together with `guest`.

    `began_at`: it went on the heat then, as was told. Afterwards: `takers` take what is left of it home,
    `outcome` is "ran-out" or "came-back", `returned` says that its container is back with its owner.
    """

    id: str
    guest: str
    dish: str
    category: str
    servings: float | None = None
    quantity: str | None = None
    ingredients: tuple[str, ...] | None = None
    heat: tuple[HeatStep, ...] | None = None
    arrives_at: datetime | None = None
    frozen_lb: float | None = None
    serve: str | None = None
    out_since: datetime | None = None
    out_min: float = 0.0
    sharers: tuple[str, ...] = ()
    takers: tuple[str, ...] = ()
    outcome: str = ""
    returned: bool = False
    began_at: datetime | None = None


@dataclass(frozen=True)
class Topping:
    """`guest` is None while nobody has taken it."""

    name: str
    guest: str | None = None


@dataclass(frozen=True)
class Combo:
    name: str
    toppings: tuple[str, ...]


@dataclass(frozen=True)
class Bar:
    """A build-your-own bar. `combos` None means the base's own list from the tables."""

    base: str
    toppings: tuple[Topping, ...] = ()
    combos: tuple[Combo, ...] | None = None
    most_asks: int = 3


@dataclass(frozen=True)
class Oven:
    racks: int = 2
    pans_per_rack: int = 2
    off_f: float = 0.0
    """How much hotter than its dial says it is (°F; below 0: colder), as somebody measured."""


@dataclass(frozen=True)
class SlowCooker:
    quarts: float = 6.0
    watts: int = 250


@dataclass(frozen=True)
class Microwave:
    watts: int = 1200


@dataclass(frozen=True)
class Circuit:
    amps: float = 15.0
    volts: float = 120.0
    outlets: int = 4


@dataclass(frozen=True)
class Kitchen:
    """What the host has. `awake` is the host's own waking day, local wall time "HH:MM"."""

    ovens: tuple[Oven, ...] = (Oven(),)
    burners: int = 4
    grills: int = 0
    slow_cookers: tuple[SlowCooker, ...] = ()
    microwaves: tuple[Microwave, ...] = (Microwave(),)
    circuits: tuple[Circuit, ...] = (Circuit(), Circuit())
    cooks: int = 2
    fridge_l: float | None = None
    awake: tuple[str, str] = ("07:00", "22:00")


@dataclass(frozen=True)
class PastAnswer:
    """One guest at one earlier potluck: what they said and how many came."""

    date: str
    guest: str
    category: str | None
    said: str
    came: bool


@dataclass(frozen=True)
class Price:
    """The host's own figure for one `per` (a unit or package word) of an item."""

    money: Money
    per: str


@dataclass(frozen=True)
class Payment:
    """What a guest paid for all; with `to` a guest it was handed to that one, to settle what was owed."""

    guest: str
    money: Money
    what: str = ""
    to: str = ""


@dataclass(frozen=True)
class Declined:
    guest: str
    category: str


@dataclass(frozen=True)
class Potluck:
    """One gathering, whole. Frozen: changes make a new value (see `changes.py`)."""

    id: str
    starts_at: datetime
    timezone: str
    host: str | None = None
    title: str = ""
    ends_at: datetime | None = None
    place: str = ""
    stage: Stage = Stage.PLANNED
    mealtime: str = "meal"
    setting: str = "indoor"
    outdoor_temp_f: float | None = None
    units: str = "us"
    service_level: float = 0.9
    budget: Money | None = None
    cohosts: tuple[str, ...] = ()
    guests: tuple[Guest, ...] = ()
    expected_people: int | None = None
    """The host's first guess ("about 24"): the people the plan reckons with while fewer have answered."""
    answer_by: datetime | None = None
    promises: tuple[Promise, ...] = ()
    bar: Bar | None = None
    items: tuple[str, ...] = ()
    kitchen: Kitchen = field(default_factory=Kitchen)
    history: tuple[PastAnswer, ...] = ()
    answer_odds: Mapping[str, float] | None = None
    prices: Mapping[str, Price] = field(default_factory=dict)
    payments: tuple[Payment, ...] = ()
    previous: Mapping[str, object] | None = None
    declined: tuple[Declined, ...] = ()
    kitchen_before: Kitchen | None = None
    """The whole kitchen, while something in it has failed."""
    weather: str = ""
    """In the host's own words."""
    parking: str = ""
    door_code: str = ""
    """Told only to those who come, privately."""
    pin: tuple[float, float] | None = None
    """Latitude and longitude in degrees."""
    repeats: str = ""
    """"monthly" where the next one is proposed when this one is over."""
    hearty: float = 0.0
    """The share of the crowd that eats for one and a half (a rowing club, field hands), 0 to 1."""
    corrections: Mapping[str, float] = field(default_factory=dict)
    """Portions of a category against the table's, learned from the group's own potlucks (1 = as in the table)."""
    last_number: int = 0
    """The highest number used in an id made here; ids are never used twice."""

    @property
    def zone(self) -> ZoneInfo:
        return ZoneInfo(self.timezone)

    def on_its_day(self, now: datetime) -> bool:
        """Whether it is the potluck's day where it is held, or people still sit together."""
        return self.local(now).date() == self.local(self.starts_at).date() or self.starts_at <= now <= self.ends

    @property
    def ends(self) -> datetime:
        """When people go home: as set, else three hours after the start (common practice, no source)."""
        return self.ends_at or self.starts_at + timedelta(hours=3)

    def guest(self, guest_id: str | None) -> Guest | None:
        return self._by_id.get(guest_id)

    @cached_property
    def _by_id(self) -> dict[str | None, Guest]:
        """Kept, since one change asks for guests dozens of times. Of two with one id the first."""
        return {g.id: g for g in reversed(self.guests)}

    def promise(self, promise_id: str | None) -> Promise | None:
        return next((p for p in self.promises if p.id == promise_id), None)

    def brings_topping(self, topping: Topping) -> bool:
        """Whether somebody has taken it who has not said that they can't come."""
        guest = self.guest(topping.guest) if topping.guest is not None else None
        return topping.guest is not None and (guest is None or guest.answer is not Answer.NO)

    def promises_of(self, guest_id: str) -> tuple[Promise, ...]:
        return tuple(p for p in self.promises if p.guest == guest_id or guest_id in p.sharers)

    def local(self, instant: datetime) -> datetime:
        """The instant on the potluck's wall clock."""
        return instant.astimezone(self.zone)
