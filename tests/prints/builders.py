"""A harvest supper and its plan, as small as a test needs or as large as it asks for."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

from fluent.runtime import FluentBundle, FluentResource

from planning.potluck import CATEGORIES, Answer, Bar, Combo, Guest, HeatStep, Need, Party, Potluck, Promise, Topping

TEXTS = Path(__file__).parents[2] / "bot" / "texts" / "en"
START = datetime(2027, 9, 18, 22, 0, tzinfo=UTC)  # 5 pm in Chicago
NAMES = (
    "Inés Łukasiewicz",
    "Ravi",
    "Ελένη Παπαδοπούλου",
    "Юлия Щукина",
    "فاطمة الزهراء",
    "שרה כהן",
    "अनुष्का क्षेत्री",
    "王小明",
    "Tom 👩‍🌾",
    "Mei",
    "김민수",
    "Bea",
)
DISHES = (
    ("Bean chilli", "main"),
    ("Roast squash", "side"),
    ("Cabbage slaw", "salad"),
    ("Onion dip", "starter"),
    ("Soda bread", "bread"),
    ("Plum crumble", "dessert"),
    ("Apple juice", "drink"),
    ("Paper plates", "supplies"),
)


def words_from_texts() -> Any:
    """`words(key, **facts)` from the English texts; a missing key or fact fails the test."""
    bundle = FluentBundle(["en"], use_isolating=False)
    for name in ("prints.ftl", "amounts.ftl"):
        bundle.add_resource(FluentResource((TEXTS / name).read_text("utf-8")))

    def words(key: str, **facts: Any) -> str:
        message = bundle.get_message(key)
        assert message.value is not None
        text, errors = bundle.format_pattern(message.value, facts)
        assert not errors, (key, facts, errors)
        return str(text)

    return words


def a_guest(number: int, **changes: Any) -> Guest:
    name = NAMES[number % len(NAMES)] + ("" if number < len(NAMES) else f" {number}")
    return Guest(**{"id": f"g{number}", "name": name, "answer": Answer.YES, "party": Party(adults=2), **changes})


def a_promise(number: int, **changes: Any) -> Promise:
    dish, category = DISHES[number % len(DISHES)]
    facts: dict[str, Any] = {
        "id": f"p{number}",
        "guest": f"g{number}",
        "dish": dish if number < len(DISHES) else f"{dish} {number}",
        "category": category,
        "servings": 8 + number % 5,
    }
    return Promise(**{**facts, **changes})


def a_potluck(many: int = 5, /, **changes: Any) -> Potluck:
    facts: dict[str, Any] = {
        "id": "k7",
        "title": "Harvest supper at the plots",
        "starts_at": START,
        "timezone": "America/Chicago",
        "host": "g0",
        "place": "The old seed shed",
        "guests": tuple(a_guest(n) for n in range(max(many, 3))),
        "promises": tuple(a_promise(n) for n in range(many)),
    }
    return Potluck(**{**facts, **changes})


def with_needs(potluck: Potluck) -> Potluck:
    """Mei (g9) wrote openly that she is allergic to peanuts; somebody (g1) is vegetarian, not openly."""
    from dataclasses import replace

    needs = {"g9": (Need("peanut", 1, "allergy", True),), "g1": (Need("vegetarian", 2, "diet"),)}
    return replace(potluck, guests=tuple(replace(g, needs=needs.get(g.id, ())) for g in potluck.guests))


def with_bar(potluck: Potluck) -> Potluck:
    from dataclasses import replace

    bar = Bar(
        "baked potato",
        (Topping("grated cheddar", "g1"), Topping("chives", "g2"), Topping("bean chilli", "g3"), Topping("sour cream")),
        (Combo("The Plotholder", ("grated cheddar", "chives")), Combo("Chilli Night", ("bean chilli", "sour cream"))),
    )
    return replace(potluck, bar=bar)


def a_plan(potluck: Potluck, **changes: Any) -> dict[str, Any]:
    """The plan's parts the prints read, in the shape of the plan file; sums are kept honest."""
    menu = []
    for category in CATEGORIES:
        promised = [p for p in potluck.promises if p.category == category]
        have = float(sum(p.servings or 0 for p in promised))
        target = 24.0 if category in ("main", "side") else 12.0
        if category == "topping" and not potluck.bar:
            target = 0.0
        menu.append(
            {
                "category": category,
                "target_servings": target,
                "target_dishes": 2,
                "promised_servings": have,
                "promised_dishes": len(promised),
                "short_servings": max(0.0, target - have),
                "short_dishes": 1 if have < target else 0,
                "surplus_servings": max(0.0, have - target),
            }
        )
    ids = [p.id for p in potluck.promises]
    diets = [
        {
            "guest": g.id,
            "need": n.need,
            "category": None,
            "safe_promises": ids[2:],
            "ask_first": ids[1:2],
            "short": n.need == "vegetarian",
        }
        for g in potluck.guests
        for n in g.all_needs()
    ]
    plan = {
        "headcount": {"expected": 24.2, "low": 20, "high": 27, "at_service_level": 27, "eaters": 25.5},
        "menu": menu,
        "diets": diets,
        "portions": [],
        "asks": [],
        "bar": {
            "combos": [
                {"name": "The Plotholder", "possible": True, "missing": []},
                {"name": "Chilli Night", "possible": False, "missing": ["sour cream"]},
            ],
            "next_toppings": [{"topping": "sour cream", "opens": ["Chilli Night"]}],
            "amounts": [
                {
                    "topping": "grated cheddar",
                    "total": {"value": 1.5, "unit": "lb"},
                    "buy": {"value": 2, "unit": "lb"},
                    "packages": [{"size": "8 oz", "count": 4}],
                },
                {
                    "topping": "chives",
                    "total": {"value": 3, "unit": "oz"},
                    "buy": {"value": 3, "unit": "oz"},
                    "packages": [],
                },
            ],
        }
        if potluck.bar
        else {},
        "shopping": [
            {
                "item": "russet potatoes",
                "section": "produce",
                "need": {"value": 14, "unit": "lb"},
                "packages": [{"size": "5 lb", "count": 3}],
                "cost": {"amount": "14.97", "currency": "USD"},
                "for": ["bar"],
            },
            {
                "item": "sour cream",
                "section": "dairy",
                "need": {"value": 3, "unit": "lb"},
                "packages": [{"size": "16 oz", "count": 3}],
                "cost": {"amount": "8.50", "currency": "USD"},
                "for": ["bar"],
            },
            {
                "item": "napkins",
                "section": "paper",
                "need": "60",
                "packages": [{"size": "pack of 40", "count": 2}],
                "cost": None,
                "for": ["everybody"],
            },
        ],
        "kitchen": {},
        "safety": [],
        "reminders": [],
        "evening_out": [],
    }
    return {**plan, **changes}


def with_kitchen(potluck: Potluck) -> tuple[Potluck, dict[str, Any]]:
    """The same supper with an oven that changes once, a slow cooker, a stove and a microwave."""
    from dataclasses import replace

    def at(hour: int, minute: int = 0) -> str:
        return f"2027-09-18T{hour:02}:{minute:02}:00"

    promises = tuple(
        replace(
            p,
            arrives_at=START - timedelta(minutes=100 - 10 * n),
            serve="hot" if n < 3 else "cold",
            heat=(HeatStep("oven", 40, 350.0),) if n < 2 else None,
        )
        for n, p in enumerate(potluck.promises)
    )
    steps = [
        {
            "promise": "p0",
            "kind": "slow-cooker-low",
            "appliance": "slow-cooker:0",
            "circuit": 0,
            "start": at(10, 30),
            "end": at(16, 30),
            "temp_f": None,
            "pans": 1,
            "watts": 250,
        },
        {
            "promise": "p1",
            "kind": "oven",
            "appliance": "oven:0",
            "circuit": None,
            "start": at(15, 0),
            "end": at(15, 40),
            "temp_f": 400,
            "pans": 2,
            "watts": None,
        },
        {
            "promise": "p2",
            "kind": "oven",
            "appliance": "oven:0",
            "circuit": None,
            "start": at(15, 10),
            "end": at(15, 35),
            "temp_f": 400,
            "pans": 1,
            "watts": None,
        },
        {
            "promise": "p4",
            "kind": "oven",
            "appliance": "oven:0",
            "circuit": None,
            "start": at(15, 50),
            "end": at(16, 40),
            "temp_f": 325,
            "pans": 1,
            "watts": None,
        },
        {
            "promise": "p3",
            "kind": "stove",
            "appliance": "burner:0",
            "circuit": None,
            "start": at(16, 10),
            "end": at(16, 30),
            "temp_f": None,
            "pans": 1,
            "watts": None,
        },
        {
            "promise": "p1",
            "kind": "microwave",
            "appliance": "microwave:0",
            "circuit": 1,
            "start": at(16, 45),
            "end": at(16, 52),
            "temp_f": None,
            "pans": 1,
            "watts": 1200,
        },
        {
            "promise": "p1",
            "kind": "serve",
            "appliance": None,
            "circuit": None,
            "start": at(17),
            "end": at(17, 5),
            "temp_f": None,
            "pans": 1,
            "watts": None,
        },
    ]
    potluck = replace(potluck, promises=promises)
    plan = a_plan(
        potluck,
        kitchen={
            "status": "feasible",
            "objective": 3,
            "bound": 2,
            "steps": steps,
            "dishes": [
                {"promise": p.id, "ready_at": at(16, 40), "serve_at": at(17), "late_min": 0, "unsafe_min": 0}
                for p in promises
            ],
            "conflicts": [],
        },
        safety=[
            {
                "promise": "p1",
                "rule": "HOLD-01",
                "say": "Roast squash: put away or throw away what is left out.",
                "value": 2,
                "unit": "h",
                "deadline": at(19),
                "severity": "warn",
                "source": "HOLD-01",
            },
            {
                "promise": "p0",
                "rule": "COOK-02",
                "say": "Bean chilli must reach 165 °F before it goes on the table.",
                "value": 165,
                "unit": "°F",
                "deadline": None,
                "severity": "block",
                "source": "COOK-02",
            },
        ],
    )
    return potluck, plan
