"""The parts of a potluck file that describe things, not people: the kitchen and the bar."""

from __future__ import annotations

from planning.potluck import CATEGORIES, Bar, Circuit, Combo, Kitchen, Microwave, Oven, SlowCooker, Topping
from planning.potluck_file.fields import Fields


def read_kitchen(f: Fields | None) -> Kitchen:
    """What is left out is the usual kitchen (one oven of two racks, four burners, two circuits)."""
    if f is None:
        return Kitchen()
    usual = Kitchen()
    ovens = tuple(
        Oven(o.count("racks", 2), o.count("pans_per_rack", 2), o.number("off_f", 0.0)) for o in f.each("ovens")
    )
    cookers = tuple(SlowCooker(c.number("quarts", 6.0, above=0), c.count("watts", 250)) for c in f.each("slow_cookers"))
    circuits = tuple(
        Circuit(c.number("amps", 15.0, above=0), c.number("volts", 120.0, above=0), c.count("outlets", 4))
        for c in f.each("circuits")
    )
    # Microwaves are given one by one or as a plain number.
    if isinstance(f.value.get("microwaves"), (int, float)):
        microwaves = (Microwave(),) * min(f.count("microwaves"), 50)
    else:
        microwaves = tuple(Microwave(m.count("watts", 1200)) for m in f.each("microwaves"))
    awake = f.texts("awake")
    if awake and (len(awake) != 2 or not all(_is_wall_time(t) for t in awake)):
        f.notes.fault("file-awake", place=f.at("awake"))
        awake = ()
    given = f.value
    kitchen = Kitchen(
        ovens=ovens if "ovens" in given else usual.ovens,
        burners=f.count("burners", usual.burners),
        grills=f.count("grills", 0),
        slow_cookers=cookers,
        microwaves=microwaves if "microwaves" in given else usual.microwaves,
        circuits=circuits if "circuits" in given else usual.circuits,
        cooks=f.count("cooks", usual.cooks),
        fridge_l=f.number("fridge_l", None, low=0),
        awake=(awake[0], awake[1]) if awake else usual.awake,
    )
    f.unknown_keys()
    return kitchen


def _is_wall_time(text: str) -> bool:
    hours, colon, minutes = text.partition(":")
    return (
        bool(colon)
        and hours.isdecimal()
        and minutes.isdecimal()
        and len(minutes) == 2
        and int(hours) * 60 + int(minutes) <= 24 * 60
        and int(minutes) < 60
    )


def read_bar(f: Fields | None) -> Bar | None:
    if f is None:
        return None
    if f.value.get("base") is None:
        f.notes.fault("file-missing", place=f.at("base"))
    combos = f.get("combos")
    bar = Bar(
        base=f.text("base"),
        toppings=tuple(Topping(t.text("name"), t.text("guest", None)) for t in f.each("toppings")),
        combos=None if combos is None else tuple(Combo(c.text("name"), c.texts("toppings")) for c in f.each("combos")),
        most_asks=f.count("most_asks", 3),
    )
    f.unknown_keys()
    return bar


def read_pin(top: Fields) -> tuple[float, float] | None:
    value = top.get("pin")
    if value is None:
        return None
    numbers = [v for v in value if isinstance(v, (int, float))] if isinstance(value, list) else []
    if len(numbers) != 2 or not (abs(numbers[0]) <= 90 and abs(numbers[1]) <= 180):
        top.notes.fault("file-wrong-type", place="pin", wanted="latitude-longitude")
        return None
    return float(numbers[0]), float(numbers[1])


def read_corrections(f: Fields | None) -> dict[str, float]:
    if f is None:
        return {}
    found = {c: f.number(c, None, above=0) for c in CATEGORIES}
    f.unknown_keys()
    return {c: float(v) for c, v in found.items() if v is not None}
