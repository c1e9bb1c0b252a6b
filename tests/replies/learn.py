"""`python -m tests.replies.learn`: fits the weights of `planning/data/words_evidence.csv` and `words_overheard.csv` to
the labelled sentences.

With `--leave-out` nothing is written: each file of the corpus in turn is left out, and what the rest makes of it is
printed, as a stranger's sentences would be. The frozen files are never looked at.
"""

from __future__ import annotations

import csv
import sys
from collections import Counter
from pathlib import Path

import numpy as np
from scipy.optimize import minimize
from scipy.sparse import csr_matrix

from planning.replies.english import message_of
from planning.replies.evidence import CLASSES, LIKELY, features
from tests.replies import heard
from tests.replies.corpus import Line, context_of, lines

TABLE = Path(__file__).parents[2] / "planning" / "data" / "words_evidence.csv"
RIDGE = 1.0
LEAST = 2
"""A feature seen less often says nothing of strangers."""
SMALL = 0.1
"""Smaller weights are left out of the table."""

Example = tuple[frozenset[str], int]


def example(line: Line) -> Example:
    answers = [value for kind, value in line.expected if kind == "answer" and "@" not in value]
    asked = context_of(line.place).asked
    return features(message_of(line.text), asked), CLASSES.index(answers[0]) if answers else 0


def fit(examples: list[Example]) -> dict[str, list[float]]:
    """Ridge-penalised multinomial logistic regression; the feature "" is the constant."""
    seen = Counter(feature for found, _ in examples for feature in found)
    known = {feature: i for i, feature in enumerate(sorted(f for f, n in seen.items() if n >= LEAST))}
    at = [(i, known[f]) for i, (found, _) in enumerate(examples) for f in found if f in known]
    shape = (len(examples), len(known))
    x = csr_matrix((np.ones(len(at)), ([i for i, _ in at], [j for _, j in at])), shape=shape)
    y = np.eye(len(CLASSES))[[label for _, label in examples]]
    size = shape[1] * len(CLASSES)

    def loss(p: np.ndarray) -> tuple[float, np.ndarray]:
        w, b = p[:size].reshape(shape[1], -1), p[size:]
        z = x @ w + b
        z -= z.max(axis=1, keepdims=True)
        likely = np.exp(z) / np.exp(z).sum(axis=1, keepdims=True)
        slope = likely - y
        value = -np.sum(y * np.log(likely + 1e-12)) + RIDGE * np.sum(w * w) / 2
        return float(value), np.concatenate([(x.T @ slope + RIDGE * w).ravel(), slope.sum(axis=0)])

    found = minimize(loss, np.zeros(size + len(CLASSES)), jac=True, method="L-BFGS-B", options={"maxiter": 300}).x
    weights = {feature: list(found[:size].reshape(shape[1], -1)[i]) for feature, i in known.items()}
    return {"": list(found[size:])} | {f: w for f, w in weights.items() if max(map(abs, w)) >= SMALL}


def main() -> None:
    addressed = [line for line in lines() if line.addressed]
    if "--leave-out" in sys.argv:
        leave_out(addressed)
        print()
        print("\n".join(heard.leave_out()))
        return
    print(heard.write())
    weights = fit([example(line) for line in addressed])
    with TABLE.open("w", encoding="utf-8", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(["feature", *CLASSES, "source"])
        for feature in sorted(weights):
            writer.writerow([feature, *(f"{w:.2f}" for w in weights[feature]), "own-corpus"])
    print(f"{len(addressed)} sentences, {len(weights)} weights")


def leave_out(addressed: list[Line]) -> None:
    told = [(line.file, *example(line)) for line in addressed]
    print(f"{'left out':<34}{'sentences':>10}{'guessed':>9}{'right':>7}")
    sums = Counter[str]()
    for name in sorted({file for file, _, _ in told}):
        weights = fit([(found, label) for file, found, label in told if file != name])
        guessed = right = 0
        rest = [(found, label) for file, found, label in told if file == name]
        for found, label in rest:
            score = np.sum([weights[f] for f in (*found, "") if f in weights], axis=0)
            likely = np.exp(score - score.max()) / np.exp(score - score.max()).sum()
            best = int(likely.argmax())
            if best and likely[best] >= LIKELY:
                guessed += 1
                right += best == label
        print(f"{name:<34}{len(rest):>10}{guessed:>9}{right:>7}")
        sums.update(guessed=guessed, right=right)
    print(f"{sums['right']}/{sums['guessed']} of the guesses were right")


if __name__ == "__main__":
    main()
