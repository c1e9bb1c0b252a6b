"""Ovens with a temperature, as constraints: what may be in one together, and the gaps between set-points."""

from __future__ import annotations

from itertools import combinations
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from planning.kitchen.model import Model, OvenUse


def one_set_point_at_a_time(m: Model) -> None:
    """Two uses of one oven at different set-points never meet, and leave time for the change between them."""
    by: dict[str, list[OvenUse]] = {}
    for use in m.oven_uses:
        by.setdefault(use.whose, []).append(use)
    for (a, uses_a), (b, uses_b) in combinations(by.items(), 2):
        gaps = {m.problem.gap(x.mode, y.mode) for x in uses_a for y in uses_b if x.mode.oven == y.mode.oven}
        if not gaps or gaps == {0}:
            continue
        if all(x.mode.low == x.mode.high for x in (*uses_a, *uses_b)):
            _points(m, a, uses_a, b, uses_b)
        else:
            _ranges(m, a, uses_a, b, uses_b)


def _points(m: Model, a: str, uses_a: list[OvenUse], b: str, uses_b: list[OvenUse]) -> None:
    """For a, b in one oven: same set-point, or a before b, or b before a.

    a before b: (S_b - E_a) minutes >= gap + |t_a - t_b| / (degrees a minute), t the chosen set-point.
    """
    problem, model = m.problem, m.model
    warm_a, warm_b = {u.mode.low for u in uses_a}, {u.mode.low for u in uses_b}
    first, second = model.new_bool_var(f"{a} before {b}"), model.new_bool_var(f"{b} before {a}")
    m.before[a, b], m.before[b, a] = first, second
    choices = [first, second]
    temp_a, temp_b = _temperature(uses_a), _temperature(uses_b)
    if warm_a & warm_b:
        same = m.alike[a, b] = model.new_bool_var(f"{a} like {b}")
        model.add(temp_a == temp_b).only_enforce_if(same)
        choices.append(same)
    unit = problem.slot_min * problem.degrees_per_min
    for before, end, start in ((first, uses_a[0].end, uses_b[0].start), (second, uses_b[0].end, uses_a[0].start)):
        for apart in (temp_a - temp_b, temp_b - temp_a):
            change = problem.gap_min * problem.degrees_per_min + apart
            model.add(unit * (start - end) >= change).only_enforce_if(before)
    model.add_at_most_one(first, second)
    for oven in sorted({u.mode.oven or "" for u in uses_a} & {u.mode.oven or "" for u in uses_b}):
        there = [_in_oven(m, who, uses, oven) for who, uses in ((a, uses_a), (b, uses_b))]
        model.add_bool_or([*choices, *(x.negated() for x in there)])


def _temperature(uses: list[OvenUse]) -> Any:
    """The set-point as a sum over the modes; a constant where there is only one."""
    if len({u.mode.low for u in uses}) == 1:
        return uses[0].mode.low
    return sum(u.literal * u.mode.low for u in uses)


def _in_oven(m: Model, who: str, uses: list[OvenUse], oven: str) -> Any:
    return m.any_of([u.literal for u in uses if u.mode.oven == oven], f"{who} in {oven}")


def _ranges(m: Model, a: str, uses_a: list[OvenUse], b: str, uses_b: list[OvenUse]) -> None:
    """For modes whose ranges do not meet: x_a and x_b -> S_b >= E_a + g or S_a >= E_b + g.

    Pairs are enough: ranges on a line that meet two by two have a point in common (Helly).
    """
    first = m.before.get((a, b))
    for x in uses_a:
        for y in uses_b:
            if not (gap := m.problem.gap(x.mode, y.mode)):
                continue
            if first is None:
                first = m.before[a, b] = m.model.new_bool_var(f"{a} before {b}")
            m.model.add(y.start >= x.end + gap).only_enforce_if([x.literal, y.literal, first])
            m.model.add(x.start >= y.end + gap).only_enforce_if([x.literal, y.literal, first.negated()])
