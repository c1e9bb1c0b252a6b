"""Reads the tables in `planning/data/`: the only file reading there is in `planning/`.

Every table is a CSV file with a heading line; every row names where its figure comes from in a column
`source`, an id found by `sources()`. The id "practice" means "common practice, no source".
"""

from __future__ import annotations

import csv
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

PRACTICE = "practice"
"""The source id of a figure which nobody has published, or of which we know no publication."""


@dataclass(frozen=True)
class Source:
    """Where a figure was found. `how_known` tells how firmly: read, read second-hand, or from memory."""

    id: str
    title: str
    publisher: str
    year: str
    where: str
    how_known: str


@cache
def rows(name: str) -> tuple[dict[str, str], ...]:
    """All rows of `data/<name>.csv`, in the file's order. Callers never change what they get.

    Raises FileNotFoundError when there is no such table, ValueError when a row has too many or too few cells.
    """
    text = files("planning").joinpath("data", f"{name}.csv").read_text(encoding="utf-8")
    reader = csv.reader(text.splitlines())
    heading = next(reader)
    found = []
    for number, cells in enumerate(reader, start=2):
        if not cells:
            continue
        if len(cells) != len(heading):
            raise ValueError(f"{name}.csv line {number}: {len(cells)} cells under {len(heading)} headings")
        found.append(dict(zip(heading, (cell.strip() for cell in cells), strict=True)))
    return tuple(found)


@cache
def table_names() -> tuple[str, ...]:
    """The names of all tables, sorted."""
    listed = (entry.name for entry in files("planning").joinpath("data").iterdir())
    return tuple(sorted(name.removesuffix(".csv") for name in listed if name.endswith(".csv")))


@cache
def in_languages(table: str) -> tuple[str, ...]:
    """The codes of the languages that have a table of this sort ("dishes" for `dishes_es.csv`), sorted."""
    found = (name.removeprefix(f"{table}_") for name in table_names() if name.startswith(f"{table}_"))
    return tuple(code for code in found if len(code) == 2)


@cache
def sources() -> dict[str, Source]:
    """Every source by its id, from all files `sources*.csv` together."""
    found = {PRACTICE: Source(PRACTICE, "common practice, no source", "", "", "", "practice")}
    for name in table_names():
        if not name.startswith("sources"):
            continue
        for row in rows(name):
            found.setdefault(
                row["id"],
                Source(row["id"], row["title"], row["publisher"], row["year"], row["where"], row["how_known"]),
            )
    return found


def source_text(source_id: str) -> str:
    """How a source is named in a plan: its id, or the words for a figure without one.

    >>> source_text("practice")
    'common practice, no source'
    """
    return "common practice, no source" if source_id in ("", PRACTICE) else source_id


def path_of(name: str) -> str:
    """Where `data/<name>` lies, for a library that reads its own kind of file itself."""
    return str(files("planning").joinpath("data", name))
