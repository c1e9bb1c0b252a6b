"""The instances of the benches, made by a seed: crowds, problems of asks, bars."""

from __future__ import annotations

import random
from datetime import UTC, datetime

from planning.asks import Gap, Person, Problem, Profile, Template
from planning.potluck import Answer, Bar, Guest, Kitchen, Oven, Party, Potluck, Promise, SlowCooker, Topping

START = datetime(2027, 9, 18, 22, tzinfo=UTC)
NOW = datetime(2027, 9, 11, 22, tzinfo=UTC)


def crowd(parties: int, seed: int) -> tuple[Guest, ...]:
    """Parties of one to nine people with answers of all kinds."""
    chance = random.Random(seed)
    return tuple(
        Guest(
            f"g{n}",
            f"Guest {n}",
            Answer(chance.choice(("yes", "yes", "yes", "maybe", "none", "no"))),
            Party(*(chance.randint(low, high) for low, high in ((1, 3), (0, 1), (0, 3), (0, 1), (0, 1)))),
            diets=(chance.choice(("vegetarian", "vegan", "gluten-free")),) if chance.random() < 0.15 else (),
            travel_min=chance.choice((0, 10, 20, 40, 70)),
            has_oven=chance.random() < 0.85,
            can_cook=chance.random() < 0.85,
        )
        for n in range(parties)
    )


DISHES = (
    ("lasagna", "main"), ("chili", "main"), ("pulled pork", "main"), ("coleslaw", "salad"),
    ("green bean casserole", "side"), ("scalloped potatoes", "side"), ("potato salad", "salad"),
    ("cornbread", "bread"), ("dinner rolls", "bread"), ("apple pie", "dessert"), ("brownies", "dessert"),
    ("lemonade", "drink"), ("fruit salad", "dessert"), ("deviled eggs", "starter"), ("hummus", "starter"),
    ("baked beans", "side"),
)  # fmt: skip


def supper(guests: int, promises: int, seed: int) -> Potluck:
    """A harvest supper with a potato bar."""
    people = crowd(guests, seed)
    made = tuple(
        Promise(f"p{n}", people[n % guests].id, *DISHES[n % len(DISHES)], servings=8 + n % 3 * 4)
        for n in range(promises)
    )
    toppings = tuple(
        Topping(name, people[n].id) for n, name in enumerate(("grated cheddar", "butter", "chives", "bacon bits"))
    )
    return Potluck(
        f"p{seed}", START, "America/Chicago", host=people[0].id, guests=people, promises=made,
        bar=Bar("baked potato", toppings), kitchen=Kitchen((Oven(), Oven()), slow_cookers=(SlowCooker(),) * 2),
    )  # fmt: skip


PARTS = ("main", "side", "salad", "dessert", "bread", "drink")
WEIGHTS = (4, 2, 2, 2, 1, 2)


def asking(people: int, seed: int, tight: bool = False) -> Problem:
    """Two dozen things to ask for, each person able to do most of them, each with a liking of their own.

    Balanced: seven in ten people could close all gaps. Tight: all of them together cannot.
    """
    chance = random.Random(seed)
    profiles = tuple(
        Profile((need,), part, chance.randint(1, max(1, people // 12)))
        for need in ("vegan", "gluten-free", "nut-free")
        for part in PARTS[:4]
    )
    templates = []
    for n in range(24):
        part = PARTS[n % len(PARTS)]
        fits = frozenset(p for p, profile in enumerate(profiles) if profile.part == part and chance.random() < 0.3)
        servings = chance.choice((6, 8, 10, 12, 16))
        templates.append(Template(part, servings, chance.randint(1, 3), (f"dish {n}",), fits, most=max(2, people // 8)))
    needs_oven = [chance.random() < 0.4 for _ in templates]
    travels = [chance.random() < 0.8 for _ in templates]
    asked = []
    for n in range(people):
        oven, near = chance.random() < 0.8, chance.random() < 0.8
        can = {
            t: chance.randint(1, 10)
            for t in range(len(templates))
            if (oven or not needs_oven[t]) and (near or travels[t]) and chance.random() < 0.95
        }
        asked.append(Person(f"g{n}", chance.choice((0, 0, 0, 1, 1, 2, 3)), can))
    each = (1.3 if tight else 0.7) * people * 10 / sum(WEIGHTS)
    gaps = tuple(
        Gap(part, round(each * weight), max(1, round(each * weight / 12)), weight)
        for part, weight in zip(PARTS, WEIGHTS, strict=True)
    )
    return Problem(tuple(asked), tuple(templates), gaps, profiles)


def bar(
    seed: int, toppings: int = 60, combinations: int = 200, skew: float = 0.6
) -> list[tuple[frozenset[str], float]]:
    """Combinations of two to five toppings, of which the commoner ones are in more of them (`skew` 0: none is)."""
    chance = random.Random(seed)
    names = [f"t{n:02}" for n in range(toppings)]
    weights = [1 / (n + 1) ** skew for n in range(toppings)]
    made = []
    for _ in range(combinations):
        wanted: set[str] = set()
        size = chance.randint(2, 5)
        while len(wanted) < size:
            wanted.update(chance.choices(names, weights))
        made.append((frozenset(wanted), round(chance.random(), 2)))
    return made
