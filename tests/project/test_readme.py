"""What the README counts is what stands in the tables."""

import csv
import re
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]


def test_the_ratio_of_items_with_a_source_is_the_true_one() -> None:
    with (ROOT / "planning" / "data" / "portions.csv").open(encoding="utf-8", newline="") as file:
        sources = [row["source"] for row in csv.DictReader(file)]
    named = sum(source != "practice" for source in sources)

    assert f"Of {len(sources)} items {named} take their portion from a named publication" in (
        ROOT / "README.md"
    ).read_text("utf-8")


def test_every_command_is_named() -> None:
    from bot.__main__ import parser

    text = (ROOT / "README.md").read_text("utf-8")
    commands = next(a for a in parser()._actions if a.dest == "command").choices

    for name in commands:
        assert f"python -m bot {name}" in text


def test_every_picture_shown_is_there_and_is_described() -> None:
    shown = re.findall(r"!\[([^\]]*)\]\(([^)]+)\)", (ROOT / "README.md").read_text("utf-8"))

    assert shown
    assert [path for words, path in shown if not words.strip() or not (ROOT / path).is_file()] == []
