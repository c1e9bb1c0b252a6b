"""`python -m tests.replies.report [--show]`: how well sentences are read, with 95 % intervals (Wilson's score)."""

from __future__ import annotations

import sys
from collections import Counter
from math import sqrt

from tests.replies.corpus import FROZEN, Outcome, lines, outcome


def interval(hits: int, total: int) -> tuple[float, float]:
    """Wilson's score interval at 95 % (E. B. Wilson, 1927, J. Am. Stat. Assoc. 22, 209-212)."""
    if not total:
        return 0.0, 1.0
    z, p = 1.96, hits / total
    middle = p + z * z / (2 * total)
    half = z * sqrt(p * (1 - p) / total + z * z / (4 * total * total))
    return (middle - half) / (1 + z * z / total), (middle + half) / (1 + z * z / total)


def rate(hits: int, total: int) -> str:
    low, high = interval(hits, total)
    return f"{hits / total if total else 1:6.3f} [{low:.3f}, {high:.3f}] {hits:4}/{total}"


def counts(outcomes: list[Outcome]) -> dict[str, Counter[str]]:
    tally = {name: Counter[str]() for name in ("right", "wrong", "missed", "silent-right", "silent-wrong")}
    for o in outcomes:
        for piece in o.right:
            tally["right"][piece[0]] += 1
            tally["silent-right"][piece[0]] += piece in o.silent
        for piece in o.wrong:
            tally["wrong"][piece[0]] += 1
            tally["silent-wrong"][piece[0]] += piece in o.silent
        for kind, _ in o.missed:
            tally["missed"][kind] += 1
    return tally


def table(outcomes: list[Outcome]) -> None:
    tally = counts(outcomes)
    print(f"{len(outcomes)} sentences, {sum(not o.line.expected for o in outcomes)} of them chatter and traps\n")
    print(f"{'intent':<10}{'precision':^36}{'recall':^36}")
    for kind in sorted(set(tally["right"]) | set(tally["wrong"]) | set(tally["missed"])):
        right, wrong, missed = (tally[n][kind] for n in ("right", "wrong", "missed"))
        print(f"{kind:<10}{rate(right, right + wrong):<36}{rate(right, right + missed):<36}")
    total = {name: sum(c.values()) for name, c in tally.items()}
    print(f"\nany change         precision {rate(total['right'], total['right'] + total['wrong'])}")
    print(f"silent changes     precision {rate(total['silent-right'], total['silent-right'] + total['silent-wrong'])}")
    addressed = counts([o for o in outcomes if o.line.addressed])
    hits, lost = sum(addressed["right"].values()), sum(addressed["missed"].values())
    print(f"replies to the bot recall    {rate(hits, hits + lost)}")
    whole = [o for o in outcomes if o.line.addressed and o.right and not (o.wrong or o.missed or o.line.asks)]
    print(f"needlessly asked about       {rate(sum(o.reading.question is not None for o in whole), len(whole))}")
    quiet = [o for o in outcomes if not o.line.expected and not o.line.asks]
    silent = sum(not o.reading.intents and o.reading.question is None for o in quiet)
    print(f"chatter left alone           {rate(silent, len(quiet))}")


def confusion(outcomes: list[Outcome]) -> None:
    """Of dishes whose name was read right: which category or amount was read in place of which."""
    swapped: Counter[tuple[str, str, str]] = Counter()
    for o in outcomes:
        wrong = {v.split("|")[0]: v.split("|") for k, v in o.wrong if k == "bring"}
        for _, missed in (p for p in o.missed if p[0] == "bring"):
            dish, *expected = missed.split("|")
            for name, want, got in zip(
                ("category", "servings", "quantity"), expected, wrong.get(dish, [])[1:], strict=False
            ):
                if want != got:
                    swapped[name, want or "none", got or "none"] += 1
    for (name, want, got), n in swapped.most_common():
        print(f"{name:<10}{want:<14} read as {got:<14}{n:4}")


def main() -> None:
    show, pattern = "--show" in sys.argv, next((a for a in sys.argv[1:] if not a.startswith("-")), "corpus_*.tsv")
    outcomes = [outcome(line) for line in lines(pattern)]
    table(outcomes)
    print("\nconfusions of amounts and categories")
    confusion(outcomes)
    if pattern == "corpus_*.tsv" and (frozen := [outcome(line) for line in lines(FROZEN)]):
        print("\nfrozen: written by somebody who has not seen the reader")
        table(frozen)
    if show:
        for o in outcomes:
            if o.wrong or o.missed:
                mark = (
                    "SURE"
                    if o.wrong & o.silent
                    else "sure"
                    if o.reading.sure
                    else "ask "
                    if o.reading.question
                    else "    "
                )
                print(f"{mark} {o.line.file[7:-4]}:{o.line.number} [{o.line.place}] {o.line.text!r}")
                print(f"       wrong {sorted(o.wrong)} missed {sorted(o.missed)}")


if __name__ == "__main__":
    main()
