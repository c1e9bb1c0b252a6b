"""How the benches of the arithmetic measure: in turns, the quickest run of each, beside its baseline."""

from __future__ import annotations

import time
from collections.abc import Callable, Sequence


def quickest(calls: Sequence[Callable[[], object]], rounds: int) -> list[float]:
    """Seconds of the quickest run of each call, the calls taking turns so that a busy machine slows all alike."""
    best = [float("inf")] * len(calls)
    for _ in range(max(1, rounds)):
        for at, call in enumerate(calls):
            began = time.perf_counter()
            call()
            best[at] = min(best[at], time.perf_counter() - began)
    return best


def per_call(call: Callable[[], object], times: int) -> float:
    """Seconds of one call, of so many in a row."""
    began = time.perf_counter()
    for _ in range(times):
        call()
    return (time.perf_counter() - began) / times


def line(name: str, *figures: str, width: int = 14) -> str:
    return f"{name:<32}" + "".join(f"{figure:>{width}}" for figure in figures)
