"""Local search over whole kitchens: some dishes are taken off and put back where they now fit best.

Ruin and recreate with a falling threshold (Schrimpf et al., Journal of Computational Physics 2000;
from memory). Chance is a small generator of its own with a seed: the same input gives the same result.
"""

from __future__ import annotations

from collections.abc import Callable

from planning.kitchen.core import Schedule
from planning.kitchen.layout import Layout

LONG, SHORT = 36, 12
"""Slots about a dish within which others are thought to be in its way: three hours and one."""


class Search(Layout):
    """A layout that improves itself."""

    def victims(self) -> list[int]:
        """Which dishes to take off: mostly one that costs something, and others about its time."""
        draw = self.draw
        count = len(self.chains)
        first = self.costly() if draw(8) else draw(count)
        some = self.stands[first]
        assert some is not None
        size = 2 + draw(min(count, 14))
        if not draw(6):
            near = [n for n in range(count) if n != first]
        else:
            lo, hi = some.starts[0], max(some.end, self._served(self.chains[first]))
            reach = 6 if draw(2) else 0
            lo = max(lo, hi - LONG)
            near = [n for n in range(count)
                    if n != first and (s := self.stands[n]) is not None and s.end > lo - reach
                    and s.starts[-1] - reach < hi]  # fmt: skip
            if draw(2):
                things = self.things[first]
                near = [n for n in near if self.things[n] & things] or near
        chosen = [first]
        while near and len(chosen) < size:
            chosen.append(near.pop(draw(len(near))))
        return chosen

    def costly(self) -> int:
        """A dish, each as often as it costs; any where none does."""
        costs = list(self.price)
        for course, at in self.served.items():
            if at > self.due[course]:
                for n in self.of_course[course]:
                    if (s := self.stands[n]) is not None and s.end == at:
                        costs[n] += self.late[course]
        mark = self.draw(sum(costs) or len(costs))
        if not any(costs):
            return mark
        for n, own in enumerate(costs):
            mark -= own
            if mark < 0:
                return n
        return len(costs) - 1

    def hurry(self, course: str) -> list[int]:
        """Serve a late course earlier; the dishes taken off for it."""
        draw = self.draw
        now = self.served[course]
        at = max(self.due[course], now - 1 - draw(draw(6) + 1))
        chosen = [n for n in self.of_course[course] if (s := self.stands[n]) is not None and s.end > at]
        near = [n for n in range(len(self.chains)) if n not in chosen
                and (s := self.stands[n]) is not None and s.end > at - SHORT and s.starts[-1] < at + 2]  # fmt: skip
        size = len(chosen) + draw(8)
        while near and len(chosen) < size:
            chosen.append(near.pop(draw(len(near))))
        for n in chosen:
            self.remove(n)
        chosen += self._serve(course, at)
        return chosen

    def delay(self, course: str) -> list[int]:
        """Serve a course later; all its dishes are taken off for it, or a part."""
        draw = self.draw
        at = self.served[course] + 1 + draw(1 + draw(6))
        part = 1 + draw(3)
        chosen = [n for n in self.of_course[course] if self.stands[n] is not None and not draw(part)]
        for n in chosen:
            self.remove(n)
        chosen += self._serve(course, at)
        return chosen

    def improve(
        self,
        rounds: int,
        enough: Callable[[], bool] = lambda: False,
        heard: Callable[[Schedule], None] | None = None,
        warmth: int = 10,
    ) -> int:
        """So many rounds, fewer when there is nothing left to gain or `enough` says so.

        Ends in the best state met, whose cost it returns. Worse states by up to a `warmth`-th of
        the first cost are gone through at the beginning, by less and less towards the end.
        """
        draw = self.draw
        now = best = self.total()
        kept = self.state()
        heat = max(1, now // warmth)
        for turn in range(rounds):
            if (best <= self.floor and not self.forced) or enough():
                break
            before = self.state()
            self.place(self._upset())
            cost = self.total()
            limit = now + (heat * draw(1000) // 1000) * (rounds - turn) // rounds if draw(3) == 0 else now
            fewer = len(self.forced) - len(before[4])
            if fewer < 0 or (cost <= limit and fewer == 0):
                now = cost
                if cost < best or fewer < 0:
                    best, kept = cost, self.state()
                    if heard is not None:
                        heard(self.schedule())
            else:
                self.restore(before)
        self.restore(kept)
        return best

    def _upset(self) -> list[int]:
        """Take some dishes off; in which order to put them back."""
        draw = self.draw
        self.soon = bool(draw(3))
        late = [c for c, at in self.served.items() if at > self.due[c]]
        if late and draw(2):
            chosen = self.hurry(late[draw(len(late))])
        elif not draw(12):
            chosen = self.delay(list(self.due)[draw(len(self.due))])
        else:
            chosen = self.victims()
            for n in chosen:
                self.remove(n)
            self.tighten()
        if not chosen or not draw(3):
            return sorted(chosen, key=lambda n: draw(1 << 20))
        weight = {n: self.size(n) * (3 + draw(8)) for n in chosen[1:]}
        rest = sorted(weight, key=lambda n: (-weight[n], n))
        return [*rest, chosen[0]] if draw(2) else [chosen[0], *rest]
