"""The plan as JSON: values from planning, sentences from the texts beside their key and facts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict
from datetime import datetime
from decimal import Decimal
from fractions import Fraction
from typing import Any

from bot.texts import Voice
from planning.headcount import odds, odds_in_words
from planning.kitchen import Fix, Timeline
from planning.plan import Plan
from planning.portions import Package
from planning.potluck import Money, Potluck, Say


def number(value: float | Fraction | Decimal) -> float | int:
    """At most four digits after the point, whole numbers without one: the same bytes on every machine."""
    rounded = round(float(value), 4)
    return int(rounded) if rounded == int(rounded) else rounded


class Writer:
    def __init__(self, potluck: Potluck, voice: Voice) -> None:
        self.potluck = potluck
        self.voice = voice

    def at(self, instant: datetime | None) -> str | None:
        return None if instant is None else self.potluck.local(instant).isoformat()

    def plain(self, value: Any) -> Any:
        """Any fact as JSON."""
        if isinstance(value, Say):
            return {"key": value.key, "facts": self.plain(value.facts), "text": self.words(value)}
        if isinstance(value, Mapping):
            return {str(k): self.plain(v) for k, v in value.items()}
        if isinstance(value, datetime):
            return self.at(value)
        if isinstance(value, Money):
            return self.money(value)
        if isinstance(value, (set, frozenset)):
            return sorted(self.plain(v) for v in value)
        if isinstance(value, (list, tuple)):
            return [self.plain(v) for v in value]
        if isinstance(value, bool) or value is None or isinstance(value, (str, int)):
            return value
        if isinstance(value, (float, Fraction, Decimal)):
            return number(value)
        return str(value)

    def words(self, said: Say) -> str:
        return self.voice.plain(said.key, **said.facts)

    def sentence(self, name: str, said: Say) -> dict[str, Any]:
        """The words under `name`, with the key and facts they were made from beside them."""
        return {name: self.words(said), "key": said.key, "facts": self.plain(said.facts)}

    @staticmethod
    def money(money: Money | None) -> dict[str, str] | None:
        return None if money is None else {"amount": str(money.amount), "currency": money.currency}


def _source(source: str) -> str:
    return "common practice, no source" if source in ("practice", "") else source


def _packages(packages: tuple[Package, ...]) -> list[dict[str, Any]]:
    return [{"size": p.size, "count": p.count} for p in packages]


def write(plan: Plan, potluck: Potluck, now: datetime, voice: Voice) -> dict[str, Any]:
    """The plan file's object. No wall time stands in it: the same plan gives the same bytes."""
    w = Writer(potluck, voice.on(potluck.timezone))
    return {
        "headcount": {
            **_headcount(plan),
            "odds": asdict(odds(potluck)),
            **w.sentence("why", odds_in_words(potluck)),
        },
        "menu": [_menu_row(r) for r in plan.menu],
        "portions": [_portion(p) for p in plan.portions],
        "diets": [
            {
                "guest": d.guest,
                "need": d.need,
                "category": d.category,
                "safe_promises": list(d.safe_promises),
                "ask_first": list(d.ask_first),
                "short": d.short,
            }
            for d in plan.diets
        ],
        "asks": [
            {
                "guest": a.guest,
                "how": a.how,
                "category": a.category,
                "dish": a.dish,
                "servings": number(a.servings),
                **w.sentence("why", a.why),
                "cost": w.money(a.cost),
                "alternative": a.alternative,
                "minutes": a.minutes,
                "needs": list(a.needs),
            }
            for a in plan.asks
        ],
        "bar": _bar(plan),
        "kitchen": kitchen_section(plan.kitchen, w),
        "shopping": [_shopping(r, w) for r in plan.shopping],
        "evening_out": [{"from": t.from_, "to": t.to, "amount": w.money(t.money)} for t in plan.evening_out],
        "safety": [
            {
                "promise": s.promise,
                "rule": s.rule,
                **w.sentence("say", s.say),
                "value": w.plain(s.value),
                "unit": s.unit,
                "deadline": w.at(s.deadline),
                "severity": s.severity,
                "source": _source(s.source),
            }
            for s in plan.safety
        ],
        "reminders": [
            {
                "due_at": w.at(r.due_at),
                "to": r.to,
                "kind": r.kind,
                **w.sentence("about", r.about),
                "id": r.key,
                "expires_at": w.at(r.expires_at),
            }
            for r in sorted(plan.reminders, key=lambda r: (r.due_at, r.key))
        ],
    }


def _headcount(plan: Plan) -> dict[str, Any]:
    h = plan.headcount
    known = asdict(h)
    return {
        "expected": number(h.expected),
        "low": number(h.low),
        "high": number(h.high),
        "at_service_level": number(h.at_service_level),
        "eaters": number(h.eaters),
        "expected_eaters": number(h.expected_eaters),
        "pmf": [[n, float(f"{p:.10g}")] for n, p in h.pmf],
        "by_age": {group: number(n) for group, n in dict(known["by_age"]).items()},
    }


def _menu_row(r: Any) -> dict[str, Any]:
    return {
        "category": r.category,
        "target_servings": number(r.target_servings),
        "target_dishes": r.target_dishes,
        "promised_servings": number(r.promised_servings),
        "promised_dishes": r.promised_dishes,
        "short_servings": number(r.short_servings),
        "short_dishes": r.short_dishes,
        "surplus_servings": number(r.surplus_servings),
        "covered_servings": number(r.covered_servings),
        "lacking_servings": number(r.lacking_servings),
        "too_much_servings": number(r.too_much_servings),
        "source": _source(r.source),
    }


def _portion(p: Any) -> dict[str, Any]:
    return {
        "item": p.item,
        "category": p.category,
        "per_eater": p.per_eater,
        "total": {"value": number(p.total), "unit": p.total_unit},
        "buy": {"value": number(p.buy), "unit": p.buy_unit},
        "packages": _packages(p.packages),
        "left_over": number(p.left_over),
        "factors": {name: number(value) for name, value in p.factors.items()},
        "source": _source(p.source),
    }


def _bar(plan: Plan) -> dict[str, Any]:
    return {
        "combos": [{"name": c.name, "possible": c.possible, "missing": list(c.missing)} for c in plan.combos],
        "next_toppings": [{"topping": t.topping, "opens": list(t.opens)} for t in plan.next_toppings],
        "amounts": [
            {
                "topping": a.topping,
                "total": {"value": number(a.total), "unit": a.total_unit},
                "buy": {"value": number(a.buy), "unit": a.buy_unit},
                "packages": _packages(a.packages),
                "guest": a.guest,
                "warm": a.warm,
                "source": _source(a.source),
            }
            for a in plan.topping_amounts
        ],
    }


def kitchen_section(t: Timeline, w: Writer) -> dict[str, Any]:
    return {
        "status": t.status,
        "objective": t.objective,
        "bound": t.bound,
        "steps": [
            {
                "promise": s.promise,
                "kind": s.kind,
                "appliance": s.appliance,
                "circuit": s.circuit,
                "start": w.at(s.start),
                "end": w.at(s.end),
                "temp_f": s.temp_f,
                "pans": s.pans,
                "watts": s.watts,
                "at": s.at,
                "step": s.step,
                "hands_min": s.hands_min,
                "covered": s.covered,
            }
            for s in t.steps
        ],
        "dishes": [
            {
                "promise": d.promise,
                "ready_at": w.at(d.ready_at),
                "serve_at": w.at(d.serve_at),
                "late_min": d.late_min,
                "unsafe_min": d.unsafe_min,
                "off_heat_min": d.off_heat_min,
            }
            for d in t.dishes
        ],
        "conflicts": [
            {
                "promises": list(c.promises),
                "rule": c.rule,
                **w.sentence("why", c.why),
                "fix": _fix(c.fix, w),
                "others": [_fix(other, w) for other in c.others],
            }
            for c in t.conflicts
        ],
    }


def _fix(f: Fix, w: Writer) -> dict[str, Any]:
    return {
        "kind": f.kind,
        "minutes": f.minutes,
        "saves_min": f.saves_min,
        "cost": w.money(f.cost),
        **w.sentence("text", f.text),
    }


def _shopping(r: Any, w: Writer) -> dict[str, Any]:
    return {
        "item": r.item,
        "need": {"value": number(r.need), "unit": r.unit},
        "packages": _packages(r.packages),
        "left_over": number(r.left_over),
        "cost": w.money(r.cost),
        "estimated": r.estimated,
        "running": w.money(r.running),
        "over_budget": r.over_budget,
        "for": r.why,
        "source": _source(r.source),
    }
