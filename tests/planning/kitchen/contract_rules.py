"""The kitchen rules of the outside contract, checked on the documents themselves: a potluck file and its plan.

Written from the contract's sentences alone; shares no code with the planner or with the other verifier, which
replays the planner's own values. `broken` gives one line for each broken rule; none means all are kept.

A home has one oven of two racks with two pans each, four burners and one microwave, unless one dish alone asks for
more: common practice, no source.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping
from datetime import datetime, time, timedelta
from itertools import pairwise
from typing import Any
from zoneinfo import ZoneInfo

HEAT = ("oven", "stove", "slow-cooker-low", "slow-cooker-high", "microwave", "grill")
PLACE = {"oven": "oven", "stove": "burner", "slow-cooker-low": "slow-cooker", "slow-cooker-high": "slow-cooker",
         "microwave": "microwave", "grill": "grill"}  # fmt: skip
NEEDS_A_PLUG = ("slow-cooker-low", "slow-cooker-high", "microwave")
TOLD_APART = 0.51
"""Minutes are told whole."""

Doc = Mapping[str, Any]


def broken(document: Doc, kitchen: Doc) -> list[str]:
    """Every rule that the plan's kitchen section breaks without saying so."""
    return list(_Replay(document, kitchen).faults())


class _Replay:
    def __init__(self, document: Doc, kitchen: Doc) -> None:
        self.document, self.kitchen = document, kitchen
        self.zone = ZoneInfo(document["timezone"])
        self.serving = self.at(document["starts_at"])
        self.now = self.at(document["now"]) if document.get("now") else self.serving - timedelta(days=7)
        has = document.get("kitchen") or {}
        self.ovens = has.get("ovens", [{}])
        self.count = {"burner": has.get("burners", 4), "grill": has.get("grills", 0), "oven": len(self.ovens)}
        waves = has.get("microwaves", [{}])
        self.count["microwave"] = waves if isinstance(waves, int) else len(waves)
        self.count["slow-cooker"] = len(has.get("slow_cookers", []))
        self.circuits = has.get("circuits", [{}, {}])
        self.cooks = has.get("cooks", 2)
        self.up, self.down = (self._hour(t) for t in has.get("awake", ["07:00", "22:00"]))
        self.promises = {p["id"]: p for p in document.get("promises", [])}
        self.guests = {g["id"]: g for g in document["guests"]}
        self.steps = [{**s, "from": self.at(s["start"]), "to": self.at(s["end"])} for s in kitchen["steps"]]
        self.excused = {p for c in kitchen["conflicts"] for p in c["promises"]}
        local = self.serving.astimezone(self.zone)
        waking = datetime.combine(local.date(), self.up, self.zone)
        if waking >= local:
            waking = datetime.combine(local.date() - timedelta(days=1), self.up, self.zone)
        self.waking = waking

    @staticmethod
    def _hour(text: str) -> time:
        hour, _, minute = text.partition(":")
        return time(int(hour) % 24, int(minute))

    def at(self, text: str) -> datetime:
        when = datetime.fromisoformat(text)
        return when if when.tzinfo else when.replace(tzinfo=self.zone)

    def faults(self) -> Iterator[str]:
        yield from self._all_there()
        for name in self.promises:
            mine = sorted((s for s in self.steps if s["promise"] == name), key=lambda s: s["step"])
            if mine:
                yield from self._one_dish(name, mine)
        yield from self._ovens()
        yield from self._units()
        yield from self._plugs()
        yield from self._hands()

    def up_before(self, moment: datetime) -> datetime:
        """When the cook got up before a moment; on the day itself nobody is expected to get up again."""
        if moment >= self.waking:
            return self.waking
        local = moment.astimezone(self.zone)
        up = datetime.combine(local.date(), self.up, self.zone)
        return up if up <= moment else datetime.combine(local.date() - timedelta(days=1), self.up, self.zone)

    def awake(self, moment: datetime) -> bool:
        """Whether the cook is up, by hours that may run over midnight."""
        wall = moment.astimezone(self.zone).time()
        if self.up < self.down:
            return self.up <= wall <= self.down
        return wall >= self.up or wall <= self.down

    def given(self, step: Doc) -> Doc | None:
        heat = self.promises[step["promise"]].get("heat") or []
        return heat[step["step"]] if step["step"] < len(heat) else None

    def home_of(self, step: Doc) -> str:
        return f"home of {self.promises[step['promise']]['guest']}"

    def _all_there(self) -> Iterator[str]:
        planned = {s["promise"] for s in self.steps}
        for name, promise in self.promises.items():
            guest = self.guests.get(promise["guest"], {})
            wanted = [s for s in promise.get("heat") or [] if s["minutes"] > 0]
            if wanted and name not in planned and name not in self.excused and guest.get("answer") != "no":
                yield f"{name}: no step, and nothing says why"
            if guest.get("answer") == "no" and name in planned:
                yield f"{name}: planned though its cook cannot come"
        told = {d["promise"]: d for d in self.kitchen["dishes"]}
        if set(told) != planned:
            yield "dishes and steps do not name the same promises"
        bad = any(d["late_min"] or d["unsafe_min"] for d in told.values()) or any(map(self.lacking, self.steps))
        if bad and self.kitchen["status"] != "impossible":
            yield f"something is broken in a plan called {self.kitchen['status']}"
        for name, dish in told.items():
            if (dish["late_min"] or dish["unsafe_min"]) and name not in self.excused:
                yield f"{name}: late or too long off heat, and no conflict says so"
        if self.kitchen["bound"] > self.kitchen["objective"]:
            yield "a bound above the objective"
        if self.kitchen["status"] == "optimal" and self.kitchen["bound"] != self.kitchen["objective"]:
            yield "called optimal, not proved"

    def lacking(self, step: Doc) -> bool:
        """A step at the venue for which the kitchen has nothing."""
        return step["at"] == "venue" and step["appliance"] is None and step["kind"] in (*HEAT, "keep-warm")

    def _one_dish(self, name: str, mine: list[dict[str, Any]]) -> Iterator[str]:
        promise = self.promises[name]
        told = next(d for d in self.kitchen["dishes"] if d["promise"] == name)
        heat = promise.get("heat")
        if heat is not None:
            wanted = [n for n, s in enumerate(heat) if s["minutes"] > 0]
            if [s["step"] for s in mine if s["step"] < len(heat)] != wanted:
                yield f"{name}: steps {[s['step'] for s in mine]}, given {wanted}"
        for a, b in pairwise(mine):
            if b["from"] < a["to"]:
                yield f"{name}: {b['kind']} begins before {a['kind']} ends"
        arrival = self.at(promise["arrives_at"]) if promise.get("arrives_at") else None
        for step in mine:
            given = self.given(step)
            who = f"{name}: {step['kind']} at {step['from']:%d %H:%M}"
            if given is not None:
                if given["kind"] != step["kind"] or given.get("at", "venue") != step["at"]:
                    yield f"{who}: not the step given"
                due = float(given["minutes"])
                if step["kind"] == "oven" and given.get("temp_f") and step["temp_f"]:
                    due *= given["temp_f"] / step["temp_f"]
                length = (step["to"] - step["from"]).total_seconds() / 60
                if not due - 0.01 <= length <= due + 1:
                    yield f"{who}: {length} minutes, not {due}"
                if step["kind"] == "oven" and given.get("temp_f") and not given.get("own_appliance"):
                    apart = abs((step["temp_f"] or 0) - given["temp_f"])
                    if apart > 25 or (apart > 0 and not given.get("movable", True)):
                        yield f"{who}: set to {step['temp_f']}, wanted {given['temp_f']}"
            elif step["kind"] != "keep-warm" or (step["temp_f"] or 0) < 140:
                yield f"{who}: nobody asked for it and it does not keep hot"
            if step["from"] < self.now:
                yield f"{who}: in the past"
            if arrival and step["at"] == "venue" and step["kind"] != "transport" and step["from"] < arrival:
                yield f"{who}: before it arrives"
            if step["from"] < self.waking and not self.awake(step["from"]):
                yield f"{who}: the cook sleeps"
            if self.lacking(step) and name not in self.excused:
                yield f"{who}: in nothing, and no conflict says so"
        home = [s for s in mine if s["at"] == "home" or s["kind"] == "transport"]
        there = [s for s in mine if s not in home]
        if home and there and min(s["from"] for s in there) < max(s["to"] for s in home):
            yield f"{name}: at the venue before it has left home"
        ready = max(s["to"] for s in mine)
        late = max(0.0, (ready - self.serving).total_seconds() / 60)
        if abs(late - told["late_min"]) > TOLD_APART:
            yield f"{name}: {late} minutes late, told {told['late_min']}"
        if promise.get("serve") == "hot":
            held = [s["to"] for s in mine if s["kind"] == "keep-warm" and (s["temp_f"] or 140) >= 140]
            hot = [*held, *(s["to"] for s in mine if s["kind"] in HEAT)]
            off = (max(self.serving, ready) - max(hot)).total_seconds() / 60 if hot else 0.0
            if abs(max(0.0, off - 30) - told["unsafe_min"]) > TOLD_APART:
                yield f"{name}: {off} minutes off heat, told {told['unsafe_min']} too many"

    def _ovens(self) -> Iterator[str]:
        by: dict[str, list[dict[str, Any]]] = defaultdict(list)
        room: dict[str, int] = {}
        for step in self.steps:
            given, place = self.given(step), step["appliance"] or ""
            if place.startswith("oven:"):
                number = int(place[5:])
                if number >= len(self.ovens):
                    yield f"there is no {place}"
                    continue
                by[place].append(step)
                room[place] = self.ovens[number].get("racks", 2) * self.ovens[number].get("pans_per_rack", 2)
            elif given and given["kind"] == "oven" and step["at"] == "home" and not given.get("own_appliance"):
                home = self.home_of(step)
                by[home].append(step)
                room[home] = max(4, room.get(home, 0), given.get("pans", 1))
        for place, steps in by.items():
            for s in steps:
                if (s["from"] - max(self.now, self.up_before(s["from"]))).total_seconds() < 15 * 60:
                    yield f"{place}: no time to preheat for {s['promise']}"
                if s["temp_f"] is None and len(steps) > 1:
                    yield f"{place}: no set-point for {s['promise']}"
                given = self.given(s)
                if given and given["kind"] == "oven" and s["pans"] != given.get("pans", 1):
                    yield f"{place}: {s['pans']} pans of {s['promise']}, {given.get('pans', 1)} given"
            for moment in sorted({s["from"] for s in steps}):
                inside = [s for s in steps if s["from"] <= moment < s["to"]]
                if sum(s["pans"] for s in inside) > room[place]:
                    yield f"{place}: {sum(s['pans'] for s in inside)} pans at {moment:%H:%M}, room for {room[place]}"
                if len({s["temp_f"] for s in inside}) > 1:
                    yield f"{place}: set to {[(s['promise'], s['temp_f']) for s in inside]} at {moment:%H:%M}"
            for a in steps:
                for b in steps:
                    if a["to"] <= b["from"] and a["temp_f"] != b["temp_f"]:
                        need = 5 + abs((a["temp_f"] or 0) - (b["temp_f"] or 0)) / 10
                        have = (b["from"] - a["to"]).total_seconds() / 60
                        if have < need - 0.01:
                            yield f"{place}: {have} minutes from {a['temp_f']} to {b['temp_f']}"

    def _units(self) -> Iterator[str]:
        using: dict[str, list[dict[str, Any]]] = defaultdict(list)
        at_home: dict[tuple[str, str], list[dict[str, Any]]] = defaultdict(list)
        for step in self.steps:
            place, given = step["appliance"] or "", self.given(step)
            if given and given.get("own_appliance"):
                continue
            if step["at"] == "home":
                if step["kind"] in ("stove", "microwave"):
                    at_home[self.home_of(step), step["kind"]].append(step)
                continue
            group, _, number = place.partition(":")
            if step["kind"] in PLACE and group not in (PLACE[step["kind"]], ""):
                yield f"{step['promise']}: {step['kind']} in {place}"
            if group in self.count and (not number.isdigit() or int(number) >= self.count[group]):
                yield f"{step['promise']}: there is no {place}"
            if group in self.count and group != "oven":
                using[place].append(step)
        for place, steps in using.items():
            if _most_at_once(steps) > 1:
                yield f"{place}: two at once, of {[s['promise'] for s in steps]}"
        for (home, kind), steps in at_home.items():
            if _most_at_once(steps) > {"stove": 4, "microwave": 1}[kind]:
                yield f"{home}: too many of {kind} at once"

    def _plugs(self) -> Iterator[str]:
        for step in self.steps:
            place = step["appliance"] or ""
            own = place.startswith("own:") and step["kind"] != "grill"
            needs = step["kind"] in NEEDS_A_PLUG or own or place.startswith(("slow-cooker:", "microwave:"))
            if step["at"] == "venue" and needs and step["circuit"] is None and not self.lacking(step):
                yield f"{step['promise']}: {step['kind']} is not plugged in"
            if step["circuit"] is not None and step["circuit"] >= len(self.circuits):
                yield f"there is no circuit {step['circuit']}"
        for number, circuit in enumerate(self.circuits):
            plugged = [s for s in self.steps if s["circuit"] == number]
            most = 0.8 * circuit.get("amps", 15) * circuit.get("volts", 120)
            for moment in {s["from"] for s in plugged}:
                on = [s for s in plugged if s["from"] <= moment < s["to"]]
                if sum(s["watts"] for s in on) > most + 0.01 or len(on) > circuit.get("outlets", 4):
                    yield f"circuit {number}: {[s['watts'] for s in on]} W at {moment:%H:%M}"

    def _hands(self) -> Iterator[str]:
        spans: list[dict[str, Any]] = []
        for step in self.steps:
            given = self.given(step)
            if given is None or step["kind"] == "transport" or step["at"] == "home":
                continue
            minutes = given["minutes"] if given["kind"] == "prep" else min(given.get("hands_min", 0), given["minutes"])
            if minutes > 0:
                spans.append({"from": step["from"], "to": step["from"] + timedelta(minutes=minutes)})
        if self.cooks > 0 and _most_at_once(spans) > self.cooks:
            yield f"more than {self.cooks} pairs of hands"


def _most_at_once(spans: list[dict[str, Any]]) -> int:
    return max((sum(s["from"] <= m["from"] < s["to"] for s in spans) for m in spans), default=0)
