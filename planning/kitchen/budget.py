"""How much may still be done: deterministic effort, and a wall-clock limit as a backstop."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Protocol

SECONDS_A_UNIT = 4.0
"""A deterministic unit takes about so long on a common machine (measured: 2.5 to 4)."""


class Worker(Protocol):
    """Anything that counts what it does."""

    work: int


class Budget:
    """`effort` is in the constraint solver's deterministic units; everything else is converted to them.

    With a `clock` (seconds, from anywhere) the limit `seconds` is kept exactly; without, only the
    solver's own time and an estimate of ours count. Only `seconds` can make two runs differ.
    """

    def __init__(
        self, effort: float, seconds: float | None = None, clock: Callable[[], float] | None = None, seed: int = 0
    ) -> None:
        self.effort, self.seconds, self.seed = effort, seconds, seed
        self.clock = clock
        self.began = clock() if clock is not None else 0.0
        self.solved = 0.0
        self.wall = 0.0
        self.watched: list[tuple[Worker, float]] = []

    def watch(self, worker: Worker, unit: float) -> None:
        """Count the worker's work, `unit` of effort each."""
        self.watched.append((worker, unit))

    def left(self) -> float:
        return self.effort - self.solved - self._ours()

    def over(self) -> bool:
        return self.left() <= 0 or (self.seconds is not None and self.elapsed() >= self.seconds)

    def elapsed(self) -> float:
        if self.clock is not None:
            return self.clock() - self.began
        return self.wall + self._ours() * SECONDS_A_UNIT

    def _ours(self) -> float:
        return sum(worker.work * unit for worker, unit in self.watched)

    def run(
        self, cp_model: Any, model: Any, most: float, heard: Any = None, *, linear: bool = False
    ) -> tuple[Any, Any]:
        """Solve a model with at most `most` units, by linear relaxations too if `linear`: the solver and its status."""
        solver = cp_model.CpSolver()
        solver.parameters.num_workers = 1
        solver.parameters.random_seed = self.seed
        solver.parameters.max_deterministic_time = max(1e-4, min(most, self.left()))
        if self.seconds is not None:
            solver.parameters.max_time_in_seconds = max(0.01, self.seconds - self.elapsed())
        # Linear relaxations say little about who stands in whose way: without them a long search is faster.
        solver.parameters.linearization_level = int(linear)
        status = solver.solve(model, heard)
        self.solved += solver.response_proto.deterministic_time
        self.wall += solver.wall_time
        return solver, status
