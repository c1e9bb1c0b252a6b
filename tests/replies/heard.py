"""Fits the weights of `planning/data/words_overheard.csv`: which messages of the open group are for us."""

from __future__ import annotations

import csv
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np
from scipy.optimize import minimize
from scipy.sparse import csr_matrix

from planning.replies import english
from planning.replies.decide import tidy, with_implied
from planning.replies.english import listening, message_of, open_chat
from tests.replies.corpus import Line, context_of, lines

TABLE = Path(__file__).parents[2] / "planning" / "data" / "words_overheard.csv"
RIDGE = 1.0
LEAST = 2
SMALL = 0.05
OPEN_COUNTS = 3.0
"""A sentence of the open group weighs like three below the board: there are few of them, and they are the case."""
TOLD = frozenset(("answer", "bring", "party", "needs", "vague", "drop", "change", "add", "noneeds", "top"))


@dataclass(frozen=True)
class Example:
    line: Line
    found: frozenset[str]
    passes: bool
    told: bool
    asked: bool


def examples() -> list[Example]:
    """The lines below the board and in the open, as the model sees them."""
    made = []
    for line in lines():
        if line.place.removeprefix("host:").startswith(("q:", "person", "bot")):
            continue
        context = context_of(line.place)
        message = message_of(line.text)
        if not message.sentences or sum(len(s.tokens) for s in message.sentences) > listening.MOST_WORDS:
            continue
        below = replace(context, replying_to="board")
        found = with_implied(tidy(english.read(open_chat.again(message), below)[0]), below)
        kinds = {kind for kind, _ in line.expected}
        seen = listening.features(message, found, below)
        passes = listening.for_us(message, found, replace(context, replying_to=None)) if _fitted() else False
        made.append(Example(line, seen, passes, bool(kinds & TOLD), "ask" in kinds))
    return made


def _fitted() -> bool:
    return TABLE.exists()


def fit(given: Sequence[tuple[frozenset[str], bool, float]]) -> dict[str, float]:
    """Ridge-penalised logistic regression; the feature "" is the constant."""
    seen = Counter(feature for found, _, _ in given for feature in found)
    known = {feature: i for i, feature in enumerate(sorted(f for f, n in seen.items() if n >= LEAST))}
    at = [(i, known[f]) for i, (found, _, _) in enumerate(given) for f in found if f in known]
    shape = (len(given), len(known))
    x = csr_matrix((np.ones(len(at)), ([i for i, _ in at], [j for _, j in at])), shape=shape)
    y = np.array([float(label) for _, label, _ in given])
    weight = np.array([w for _, _, w in given])

    def loss(p: np.ndarray) -> tuple[float, np.ndarray]:
        z = x @ p[:-1] + p[-1]
        slope = weight * (1 / (1 + np.exp(-z)) - y)
        value = np.sum(weight * (np.logaddexp(0, z) - y * z)) + RIDGE * np.sum(p[:-1] ** 2) / 2
        return float(value), np.concatenate([x.T @ slope + RIDGE * p[:-1], [slope.sum()]])

    found = minimize(loss, np.zeros(shape[1] + 1), jac=True, method="L-BFGS-B", options={"maxiter": 300}).x
    return {"": float(found[-1])} | {f: float(found[i]) for f, i in known.items()}


def _models(given: Sequence[Example]) -> tuple[dict[str, float], dict[str, float]]:
    told = fit([(e.found, e.told, 1.0 if e.line.addressed else OPEN_COUNTS) for e in given])
    asked = fit([(e.found, e.asked, 1.0 if e.line.addressed else OPEN_COUNTS) for e in given])
    return told, asked


def write() -> str:
    """Fit both models to every line and write the table."""
    told, asked = _models(examples())
    kept = sorted(f for f in {*told, *asked} if not f or max(abs(told.get(f, 0)), abs(asked.get(f, 0))) >= SMALL)
    with TABLE.open("w", encoding="utf-8", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(["feature", "change", "ask", "source"])
        for feature in kept:
            writer.writerow([feature, f"{told.get(feature, 0):.2f}", f"{asked.get(feature, 0):.2f}", "own-corpus"])
    return f"{len(kept)} weights of what is overheard"


def leave_out() -> list[str]:
    """Each file in turn left out: of what the open group said for us, how much would pass, and how much talk."""
    given = examples()
    out = [f"{'open group, left out':<34}{'for us':>8}{'passed':>8}{'talk':>8}{'passed':>8}"]
    sums = Counter[str]()
    for name in sorted({e.line.file for e in given if not e.line.addressed}):
        told, _ = _models([e for e in given if e.line.file != name])
        row = Counter[str]()
        for e in given:
            if e.line.file != name or e.line.addressed:
                continue
            score = told[""] + sum(told.get(f, 0.0) for f in e.found)
            passed = 1 / (1 + np.exp(-score)) >= listening.NEAR and any(f.startswith("read:") for f in e.found)
            row["us" if e.told else "talk"] += 1
            row["us passed" if e.told else "talk passed"] += passed
        out.append(f"{name:<34}{row['us']:>8}{row['us passed']:>8}{row['talk']:>8}{row['talk passed']:>8}")
        sums.update(row)
    out.append(f"{'all':<34}{sums['us']:>8}{sums['us passed']:>8}{sums['talk']:>8}{sums['talk passed']:>8}")
    return out
