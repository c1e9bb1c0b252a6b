"""Sentences about food in some state, their kitchens, and what each must come to."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import UTC, datetime
from functools import cache
from pathlib import Path
from zoneinfo import ZoneInfo

from planning.potluck import Answer, Guest, Party, Potluck, Promise
from planning.theday.situation import Judged, judge

HERE = Path(__file__).parent


@dataclass(frozen=True)
class Said:
    scene: str
    clock: str
    words: str
    wanted: str


def _scene(name: str) -> Potluck:
    zone, day = {
        "hall": ("America/Chicago", (2027, 10, 16)),
        "yard": ("America/Chicago", (2027, 8, 14)),
        "casa": ("America/Mexico_City", (2027, 10, 16)),
        "patio": ("America/Bogota", (2027, 10, 16)),
    }[name]
    start = datetime(*day, 18, 0, tzinfo=ZoneInfo(zone)).astimezone(UTC)
    metric = name in ("casa", "patio")
    dishes = (
        Promise("p1", "g2", "chili", "main", 10, serve="hot"),
        Promise("p2", "g3", "turkey breast" if not metric else "pavo", "main", 12, frozen_lb=6, serve="hot"),
        Promise("p3", "g4", "potato salad" if not metric else "ensalada de papa", "salad", 12, serve="cold"),
        Promise("p4", "g5", "lasagna" if not metric else "lasaña", "main", 12, serve="hot"),
        Promise("p5", "g6", "brownies", "dessert", 24),
    )
    guests = tuple(Guest(f"g{n}", f"Guest {n}", Answer.YES, Party(2)) for n in range(1, 8))
    outdoor = name in ("yard", "patio")
    return Potluck("pot", start, zone, host="g1", guests=guests, promises=dishes,
                   setting="outdoor" if outdoor else "indoor", units="metric" if metric else "us")  # fmt: skip


@cache
def scene(name: str) -> Potluck:
    return _scene(name)


def corpus(file: str) -> tuple[Said, ...]:
    lines = (HERE / file).read_text(encoding="utf-8").splitlines()
    rows = (line.split("\t") for line in lines if line.strip() and not line.startswith("#"))
    return tuple(Said(*row) for row in rows)


def judged(said: Said) -> Judged | None:
    """As the open chat hears it, from a guest who brings nothing."""
    potluck = scene(said.scene)
    hour, minute = map(int, said.clock.split(":"))
    now = potluck.local(potluck.starts_at).replace(hour=hour, minute=minute).astimezone(UTC)
    language = "es" if potluck.units == "metric" else "en"
    recent, found = None, None
    for words in said.words.split(" || "):
        found = judge(words, potluck, "g7", now, language=language, recent=recent)
        recent = found.remembered(now) if found is not None else recent
    return found


def told(found: Judged | None) -> dict[str, str]:
    if found is None:
        return {}
    if found.oven_f is not None:
        return {"oven": "oven"}
    out = {v.food.label or "everything": v.kind for v in found.verdicts}
    if not out and found.outside is not None:
        return {"heat": "heat"}
    if not out and found.freezer:
        return {"": "freezer"}
    return out


def fits(said: Said) -> bool:
    """Every food that is wanted has one of its verdicts, and no other is spoken of."""
    got = told(judged(said))
    if said.wanted == "-":
        return not got
    if said.wanted in ("heat", "oven"):
        return set(got) == {said.wanted}
    wanted = [part.strip() for part in said.wanted.split(";")]
    if not got:
        return any(part.startswith("-") for part in wanted)
    left = dict(got)
    for part in wanted:
        part = part.removeprefix("-|")
        food, _, kinds = part.partition("=")
        names = {food} | {k.partition("=")[0] for k in kinds.split("|") if "=" in k}
        allowed = {k.partition("=")[2] or k for k in kinds.split("|")}
        hit = next((name for name in left if any(n.casefold() in name.casefold() for n in names)), None)
        if hit is None or left.pop(hit) not in allowed:
            return False
    return not left


__all__ = ["corpus", "fits", "judged", "replace", "told"]
