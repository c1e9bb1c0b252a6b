"""A kitchen under construction: where each dish stands, when each course is served, what it all costs."""

from __future__ import annotations

from collections.abc import Sequence

from planning.kitchen.chains import Chain, Stand, least_worth, worth
from planning.kitchen.core import Problem, Schedule
from planning.kitchen.draw import Draw
from planning.kitchen.place import Placer

State = tuple[list[int], list[Stand | None], list[int], dict[str, int], set[int]]


class Layout:
    """Dishes by number, in the order of the chains given; those not placed yet stand nowhere.

    Costs are in the problem's own weights. `work` counts the tasks placed so far: a measure of effort
    that does not depend on the machine.
    """

    def __init__(self, problem: Problem, chains: Sequence[Sequence[str]], seed: int = 0) -> None:
        self.problem = problem
        self.placer = Placer(problem, chains)
        self.chains: list[Chain] = self.placer.chains
        self.draw = Draw(seed)
        self.slot = problem.slot_min
        self.due = {c.id: c.due for c in problem.courses}
        self.late = {c.id: c.late_weight * problem.slot_min for c in problem.courses}
        self.of_course: dict[str, list[int]] = {c: [] for c in self.due}
        for n, chain in enumerate(self.chains):
            if chain.dish is not None:
                self.of_course[chain.dish.course].append(n)
        self.stands: list[Stand | None] = [None] * len(self.chains)
        self.served = dict(self.due)
        self.price: list[int] = [0] * len(self.chains)
        self.forced: set[int] = set()
        self.soon = False
        self.work = 0
        self.things = [
            {at for ways in chain.ways for w in ways for at in (*(a for a, _ in w.asks), *(t[0] for t in w.touches))}
            for chain in self.chains
        ]
        """What each chain could draw on."""
        self.floor = self._floor()

    def _floor(self) -> int:
        """No schedule costs less: each dish alone in the kitchen, or its whole course a slot late."""
        found = 0
        for course, members in self.of_course.items():
            alone = 0
            for n in members:
                dish = self.chains[n].dish
                assert dish is not None
                ready = self.placer.ready_by(self.chains[n], self.due[course])
                alone += self.late[course] if ready is None else least_worth(self.chains[n], ready, self.due[course],
                                                                             self.slot)  # fmt: skip
            found += min(alone, self.late[course])
        return found

    def size(self, n: int) -> int:
        """Slots of work in a chain."""
        return sum(min(w.mode.duration for w in ways) for ways in self.chains[n].ways)

    def total(self) -> int:
        return sum(self.price) + sum((at - self.due[c]) * self.late[c] for c, at in self.served.items())

    def remove(self, n: int) -> None:
        chain, stand = self.chains[n], self.stands[n]
        if stand is not None:
            self.placer.give(chain, stand, self._served(chain))
            self.stands[n] = None
            self.price[n] = 0
            self.forced.discard(n)

    def _served(self, chain: Chain) -> int:
        return -1 if chain.dish is None else self.served[chain.dish.course]

    def insert(self, n: int) -> list[int]:
        """Put the chain where it costs least; the chains that had to go for it."""
        chain = self.chains[n]
        served = self._served(chain)
        self.work += len(chain.tasks)
        best: Stand | None = None
        least = 0
        for stand in self.placer.stands(chain, served, self.draw, soon=self.soon):
            if chain.dish is None:
                price = 0
            elif stand.end <= served:
                price = worth(chain.dish, stand, served, self.slot)
            else:
                price = worth(chain.dish, stand, stand.end, self.slot)
                price += self.late[chain.dish.course] * (stand.end - served)
                if best is None or price < least:
                    price += self._delay(chain.dish.course, stand.end)
            if best is None or price < least:
                best, least = stand, price
        if best is None:
            best = self.placer.forced(chain)
            self.forced.add(n)
        moved: list[int] = []
        if chain.dish is not None and best.end > served:
            moved = self._serve(chain.dish.course, best.end)
        self._stand(n, best)
        return moved

    def _stand(self, n: int, stand: Stand) -> None:
        chain = self.chains[n]
        self.stands[n] = stand
        self.placer.take(chain, stand, self._served(chain))
        if chain.dish is not None:
            self.price[n] = worth(chain.dish, stand, self.served[chain.dish.course], self.slot)

    def _delay(self, course: str, until: int) -> int:
        """What it costs the rest of the course to be served at `until` and not as now."""
        price = 0
        for n in self.of_course[course]:
            dish, stand = self.chains[n].dish, self.stands[n]
            if stand is not None and dish is not None:
                price += worth(dish, stand, until, self.slot) - self.price[n]
        return price

    def _serve(self, course: str, at: int) -> list[int]:
        """Serve the course at another time; dishes whose keeping hot no longer fits are taken off."""
        held = [n for n in self.of_course[course] if (s := self.stands[n]) is not None and s.hold is not None]
        now = self.served[course]
        moved = []
        for n in held:
            stand = self.stands[n]
            assert stand is not None
            self.placer.hold(self.chains[n], stand, now, -1)
            if at > now and not self.placer.can_hold(self.chains[n], stand, max(now, stand.end), at):
                moved.append(n)
                for way, start in zip(stand.ways, stand.starts, strict=True):
                    self.placer.grid.give(way, start)
                self.stands[n] = None
                self.price[n] = 0
            else:
                self.placer.hold(self.chains[n], stand, at, 1)
        self.served[course] = at
        for n in self.of_course[course]:
            dish, stand = self.chains[n].dish, self.stands[n]
            if stand is not None and dish is not None:
                self.price[n] = worth(dish, stand, at, self.slot)
        return moved

    def tighten(self) -> None:
        """Serve every course as early as its dishes allow."""
        for course, members in self.of_course.items():
            ready = max((s.end for n in members if (s := self.stands[n]) is not None), default=0)
            at = max(self.due[course], ready)
            if at < self.served[course]:
                self._serve(course, at)

    def place(self, order: Sequence[int]) -> None:
        """Insert these one after the other, and again those that had to go."""
        queue = list(order)
        budget = 4 * len(queue) + 8
        while queue:
            n = queue.pop(0)
            if self.stands[n] is None:
                queue.extend(self.insert(n))
            budget -= 1
            if budget == 0:
                break
        for n in queue:
            if self.stands[n] is None:
                self._stand(n, self.placer.forced(self.chains[n]))
                self.forced.add(n)
        self.tighten()

    def state(self) -> State:
        return list(self.placer.grid.used), list(self.stands), list(self.price), dict(self.served), set(self.forced)

    def restore(self, state: State) -> None:
        used, stands, price, served, forced = state
        self.price[:] = price
        self.placer.grid.used[:] = used
        self.stands[:] = stands
        self.served.update(served)
        self.forced = set(forced)

    def schedule(self) -> Schedule:
        stands = [s for s in self.stands if s is not None]
        return self.placer.schedule(stands, self.served)

    def load(self, schedule: Schedule) -> None:
        """Take over a schedule that keeps every rule."""
        for n in range(len(self.chains)):
            self.remove(n)
        self.served.update(schedule.served)
        for n, chain in enumerate(self.chains):
            ways, starts = [], []
            for task, some in zip(chain.tasks, chain.ways, strict=True):
                where = schedule.placed[task.id]
                ways.append(next(w for w in some if w.number == where.mode))
                starts.append(where.start)
            end = starts[-1] + ways[-1].mode.duration
            heat = ways[chain.heat]
            off = end - starts[chain.heat] - heat.mode.duration
            hold = schedule.held.get(chain.dish.id) if chain.dish is not None else None
            self._stand(n, Stand(tuple(ways), tuple(starts), end, heat.mode.spare_min, off, hold))

    def settle(self) -> None:
        """Steps that stand early without need go as late as they can, at no cost."""
        self.soon = False
        ends = [s.end if s is not None else 0 for s in self.stands]
        for n in sorted(range(len(self.chains)), key=lambda n: -ends[n]):
            before, cost = self.state(), self.total()
            self.remove(n)
            self.place([n])
            if self.total() > cost or len(self.forced) > len(before[4]):
                self.restore(before)
