"""Rules of the house that a reviewer would otherwise have to remember."""

import re
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SOURCES = [*ROOT.glob("planning/**/*.py"), *ROOT.glob("bot/**/*.py")]
TOP = {"README.md", "DEVELOPERS.md", "pyproject.toml", "bot", "planning", "tests", "deploy"}


def tracked() -> list[str]:
    listed = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=True)
    return listed.stdout.splitlines()


def test_only_the_clock_file_reads_the_clock() -> None:
    reads = re.compile(r"\b(?:datetime\.(?:now|utcnow|today)|date\.today|time\.(?:time|localtime))\(")
    found = [p.relative_to(ROOT).as_posix() for p in SOURCES if reads.search(p.read_text("utf-8"))]

    assert found == ["bot/clock.py"]


def test_planning_reads_files_in_one_place_only() -> None:
    opens = re.compile(
        r"(?<![\w.])(?<!def )open\(|\.read_text\(|\.read_bytes\(|importlib\.resources|from importlib import resources"
    )
    found = [
        p.relative_to(ROOT).as_posix() for p in ROOT.glob("planning/**/*.py") if opens.search(p.read_text("utf-8"))
    ]

    assert found == ["planning/tables.py"]


def test_planning_is_ready_without_the_solver() -> None:
    code = "import planning.plan, sys; print([m for m in ('ortools', 'pandas', 'scipy') if m in sys.modules])"
    loaded = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True)

    assert loaded.stdout.strip() == "[]"


def test_the_top_level_is_the_agreed_one() -> None:
    names = {name.split("/")[0] for name in tracked()}

    assert {n for n in names if not n.startswith(".")} <= TOP


def test_no_package_registry_and_no_machine_path_is_named() -> None:
    # Put together here, so that this file does not hold what it looks for.
    words = ("index" + "-url", "/sim" + "ple/", "registry.np" + "mjs", "py" + "pi.org")
    forbidden = re.compile("|".join(map(re.escape, words)) + r"|/(?:home|Users)/\w+/")
    found = []
    for name in tracked():
        path = ROOT / name
        if path.suffix in (".py", ".md", ".toml", ".txt", ".sh", ".jsonl", ".yaml", ".yml") and path.exists():
            if path == Path(__file__):
                continue
            if forbidden.search(path.read_text("utf-8")):
                found.append(name)

    assert found == []


def test_no_test_is_skipped_and_nothing_is_left_to_do() -> None:
    unfinished = re.compile(
        r"\b(?:TODO|FIXME|XXX)\b|NotImplemented" + r"Error|pytest\.mark\.(?:skip|xfail)|pytest\.skip"
    )
    found = [
        p.relative_to(ROOT).as_posix()
        for p in [*SOURCES, *ROOT.glob("tests/**/*.py")]
        if p != Path(__file__) and unfinished.search(p.read_text("utf-8"))
    ]

    assert found == []


def test_every_file_that_is_to_begin_first_is_there() -> None:
    from tests.conftest import LONGEST_FIRST

    assert [name for name in LONGEST_FIRST if not (ROOT / "tests" / name).is_file()] == []
