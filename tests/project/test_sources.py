"""Every figure in planning/data names a source that exists."""

import csv
import re
from pathlib import Path

import pytest

from planning.tables import sources

DATA = Path(__file__).resolve().parents[2] / "planning" / "data"
TABLES = sorted(p for p in DATA.glob("*.csv") if not p.name.startswith("sources"))


@pytest.mark.parametrize("path", TABLES, ids=lambda p: p.stem)
def test_every_row_names_a_source_that_is_listed(path: Path) -> None:
    known = set(sources()) | {"practice", "invented", ""}
    with path.open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            for column in (c for c in row if c and (c == "source" or c.endswith("_source"))):
                assert set((row[column] or "").split()) <= known or row[column] in known, (path.name, row)


def test_at_least_one_table_of_figures_has_sources() -> None:
    assert len(sources()) > 50


def test_every_source_the_code_names_is_listed() -> None:
    # An id nobody knows would be shown as "common practice, no source".
    root = DATA.parents[1]
    named = {
        (path.name, found)
        for folder in ("planning", "bot")
        for path in (root / folder).rglob("*.py")
        for found in re.findall(r'"([A-Z]{2,8}-\d{2})"', path.read_text(encoding="utf-8"))
    }
    assert len(named) > 40
    assert not sorted((file, source) for file, source in named if source not in sources())
