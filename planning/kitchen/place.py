"""One dish at a time into what is already there: the latest moment it can be ready, found exactly.

A dish is a chain of tasks. Forwards through the chain go the sets of slots in which each task could
start if those before it can stand somewhere; backwards goes the choice, from the cheapest end.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from planning.kitchen.chains import Chain, Stand, make_ready
from planning.kitchen.core import Mode, Placed, Problem, Schedule
from planning.kitchen.grid import Grid, Way, later

TRIES = 40
"""How many ends are tried for a dish whose own steps could get into each other's way."""


class Placer:
    """Puts chains onto a grid and takes them off again."""

    def __init__(self, problem: Problem, chains: Sequence[Sequence[str]]) -> None:
        self.problem = problem
        self.grid = Grid(problem)
        self.chains = [make_ready(self.grid, names) for names in chains]
        self.slot = problem.slot_min
        self._held: dict[tuple[Mode, int], Way] = {}

    def reach(self, chain: Chain) -> list[list[int]]:
        """For each task and way, the slots in which it can start if the tasks before it can stand."""
        grid, width = self.grid, self.grid.width
        found: list[list[int]] = []
        for k, ways in enumerate(chain.ways):
            row = [grid.open(way, allowed) for way, allowed in zip(ways, chain.allowed[k], strict=True)]
            if k:
                most = chain.lags[k - 1].most
                before = found[-1]
                after: dict[int, dict[int, int]] = {}
                for a, starts in enumerate(before):
                    if starts:
                        ends = starts << (chain.ways[k - 1][a].mode.duration * width)
                        for b, least in enumerate(chain.apart[k - 1][a]):
                            of = after.setdefault(b, {})
                            of[least] = of.get(least, 0) | ends
                cache: dict[tuple[int, int], int] = {}
                for b in range(len(row)):
                    if not row[b]:
                        continue
                    may = 0
                    for least, ends in after.get(b, {}).items():
                        if (least, ends) not in cache:
                            cache[least, ends] = self._following(ends, least, most)
                        may |= cache[least, ends]
                    row[b] &= may
            found.append(row)
            if not any(row):
                break
        return found

    def _following(self, ends: int, least: int, most: int | None) -> int:
        grid = self.grid
        if most is None:
            return grid.span(grid.first(ends) + least, grid.slots - 1)
        return later(ends << (least * grid.width), most - least + 1, grid.width) if most >= least else 0

    def ready_by(self, chain: Chain, served: int) -> int | None:
        """The latest slot not after `served` at which the chain could be ready as things stand; None for none."""
        reach = self.reach(chain)
        ends = 0
        if len(reach) == len(chain.tasks):
            for starts, way in zip(reach[-1], chain.ways[-1], strict=True):
                ends |= starts << (way.mode.duration * self.grid.width)
        ends &= self.grid.span(0, served)
        return self.grid.last(ends) if ends else None

    def stands(self, chain: Chain, served: int, draw: Callable[[int], int], *, soon: bool) -> Iterator[Stand]:
        """Ways to place the chain, at most one of each kind: not held, held, and ready after `served`.

        `draw(n)` chooses below n among equals. With `soon`, tasks that need not stand close to the
        next one stand early, where nobody is in each other's way; otherwise as late as they can.
        """
        reach = self.reach(chain)
        if len(reach) < len(chain.tasks):
            return
        grid, width = self.grid, self.grid.width
        last = [starts << (w.mode.duration * width) for starts, w in zip(reach[-1], chain.ways[-1], strict=True)]
        in_time = grid.span(0, served)
        after = grid.span(served + 1, grid.slots - 1)
        if not chain.must:
            stand = self._best(chain, reach, [e & in_time for e in last], draw, soon=soon, late=False)
            if stand is not None:
                yield stand
                if stand.end == served:
                    return
        for number, (way, goes) in enumerate(chain.holds):
            if not way.possible:
                continue
            taken = grid.full(way) & grid.span(0, served - 1)
            room = grid.span(grid.last(taken) + 1 if taken else 0, served)
            ends = [
                e & room if goes in (None, w.number) and not self.problem.gap(w.mode, way.mode) else 0
                for e, w in zip(last, chain.ways[-1], strict=True)
            ]
            stand = self._best(chain, reach, ends, draw, soon=soon, late=False, hold=number)
            if stand is not None:
                yield stand
        held_late = next((n for n, (_, goes) in enumerate(chain.holds) if goes is None), 0) if chain.must else None
        stand = self._best(chain, reach, [e & after for e in last], draw, soon=soon, late=True, hold=held_late)
        if stand is not None:
            if chain.must:
                goes_with = next((n for n, (_, g) in enumerate(chain.holds) if g in (None, stand.ways[-1].number)), 0)
                stand = Stand(stand.ways, stand.starts, stand.end, stand.spare_min, stand.off_slots, goes_with)
            yield stand

    def _best(self, chain: Chain, reach: list[list[int]], ends: list[int], draw: Callable[[int], int], *, soon: bool,
              late: bool, hold: int | None = None) -> Stand | None:  # fmt: skip
        """The stand with the latest end of the sets (`late`: the earliest)."""
        grid, width = self.grid, self.grid.width
        ends = list(ends)
        for _ in range(TRIES if chain.tangled or hold is not None else 1):
            union = 0
            for some in ends:
                union |= some
            if not union:
                return None
            end = grid.first(union) if late else grid.last(union)
            bit = 1 << (end * width + width - 1)
            choices = [n for n, some in enumerate(ends) if some & bit]
            stand = self._back(chain, reach, choices[draw(len(choices))], end, draw, soon=soon, hold=hold)
            if stand is not None:
                return stand
            ends = [some & ~bit for some in ends]
        return None

    def _back(self, chain: Chain, reach: list[list[int]], number: int, end: int, draw: Callable[[int], int], *,
              soon: bool, hold: int | None) -> Stand | None:  # fmt: skip
        """From the last task's way and end backwards through the chain."""
        grid = self.grid
        way = chain.ways[-1][number]
        ways, starts = [way], [end - way.mode.duration]
        for k in range(len(chain.tasks) - 2, -1, -1):
            lag = chain.lags[k]
            early = soon and lag.most is None
            top: list[tuple[int, int]] = []
            best: int | None = None
            for a, some in enumerate(reach[k]):
                if not some:
                    continue
                least = chain.apart[k][a][number]
                length = chain.ways[k][a].mode.duration
                lowest = starts[-1] - lag.most if lag.most is not None else 0
                fits = some & grid.span(lowest - length, starts[-1] - least - length)
                if not fits:
                    continue
                at = grid.first(fits) if early else grid.last(fits)
                rank = -at if early else at + length
                if best is None or rank > best:
                    best, top = rank, [(a, at)]
                elif rank == best:
                    top.append((a, at))
            if not top:
                return None
            number, at = top[draw(len(top))]
            ways.append(chain.ways[k][number])
            starts.append(at)
        ways.reverse()
        starts.reverse()
        if chain.tangled and not self._apart(ways, starts):
            return None
        if hold is not None and any(
            start + way.mode.duration + self.problem.gap(way.mode, chain.holds[hold][0].mode) > end
            for way, start in zip(ways[:-1], starts, strict=False)
        ):
            return None
        heat = ways[chain.heat]
        off = end - starts[chain.heat] - heat.mode.duration
        return Stand(tuple(ways), tuple(starts), end, heat.mode.spare_min, off, hold)

    def _apart(self, ways: Sequence[Way], starts: Sequence[int]) -> bool:
        return all(
            starts[k] + ways[k].mode.duration + self.problem.gap(ways[k].mode, ways[j].mode) <= starts[j]
            for k in range(len(ways)) for j in range(k + 1, len(ways)) if self.problem.gap(ways[k].mode, ways[j].mode)
        )  # fmt: skip

    def forced(self, chain: Chain) -> Stand:
        """Somewhere within its windows, whatever stands there: for what fits nowhere."""
        ways, starts, bound = [], [], 0
        for k, task in enumerate(chain.tasks):
            way = chain.ways[k][0]
            may = self.grid.starts(task) & self.grid.span(bound, self.grid.slots - 1)
            at = self.grid.first(may) if may else bound
            ways.append(way)
            starts.append(at)
            bound = at + way.mode.duration
        heat = ways[chain.heat]
        off = bound - starts[chain.heat] - heat.mode.duration
        return Stand(tuple(ways), tuple(starts), bound, heat.mode.spare_min, off)

    def take(self, chain: Chain, stand: Stand, served: int) -> None:
        for way, start in zip(stand.ways, stand.starts, strict=True):
            self.grid.take(way, start)
        self.hold(chain, stand, served, 1)

    def give(self, chain: Chain, stand: Stand, served: int) -> None:
        for way, start in zip(stand.ways, stand.starts, strict=True):
            self.grid.give(way, start)
        self.hold(chain, stand, served, -1)

    def hold(self, chain: Chain, stand: Stand, served: int, sign: int) -> None:
        if stand.hold is None or served <= stand.end:
            return
        mode, length = chain.holds[stand.hold][0].mode, served - stand.end
        way = self._held.get((mode, length)) or self._held.setdefault(
            (mode, length), self.grid.way(mode, 0, length=length)
        )
        for at, pattern, before in way.takes:
            self.grid.used[at] += sign * ((pattern << (stand.end * self.grid.width)) >> before)

    def can_hold(self, chain: Chain, stand: Stand, since: int, until: int) -> bool:
        """Whether the dish can be held as it is from `since` to `until`."""
        if stand.hold is None or until <= since:
            return True
        return not self.grid.full(chain.holds[stand.hold][0]) & self.grid.span(since, until - 1)

    def schedule(self, stands: Sequence[Stand], served: dict[str, int]) -> Schedule:
        """The stands of all chains as a schedule of the core."""
        placed: dict[str, Placed] = {}
        held: dict[str, int] = {}
        for chain, stand in zip(self.chains, stands, strict=True):
            for task, way, start in zip(chain.tasks, stand.ways, stand.starts, strict=True):
                placed[task.id] = Placed(start, way.number)
            if chain.dish is not None and stand.hold is not None:
                held[chain.dish.id] = stand.hold
        return Schedule(placed, dict(served), held)
