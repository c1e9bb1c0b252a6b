"""Small runs of what `python -m tests.faults` does at length, on both databases."""

import pytest

from planning.potluck import Answer
from tests.faults import killed, line
from tests.faults.__main__ import main as faults
from tests.faults.table import Row, table


def good(row: Row) -> bool:
    """The table is in the message when it is not."""
    assert not row.bad, table([row])
    return True


@pytest.mark.parametrize("database", ["SQLite", "PostgreSQL"])
async def test_a_kill_loses_nothing_acknowledged_leaves_nothing_half_done_and_doubles_at_most_one_reminder(
    database: str,
) -> None:
    assert good(await killed.on(database, updates=80, rounds=2, reminders=20, groups=5))


async def test_faults_of_the_platform_and_updates_twice_and_out_of_order_lose_nothing() -> None:
    row = await line.on("SQLite", 60, reminders=20)

    assert good(row)
    assert "presses acknowledged: 60 of 60" in row.notes


def test_the_comparison_knows_what_was_done() -> None:
    assert killed.outcome([]) == (Answer.NONE, 0, 0)
    assert killed.outcome([7, Answer.YES]) == (Answer.YES, 1, 1)
    assert killed.outcome([Answer.NO, 7, Answer.MAYBE, 8]) == (Answer.MAYBE, 4, 2)


def test_the_table_says_when_something_is_lost() -> None:
    row = Row("kill -9", "SQLite", "5 kills", 1, 2, 0, ("LOST presses: 7",), may_double=5)

    assert row.bad
    assert [line.split() for line in table([row]).splitlines()[2:]] == [
        ["kill", "-9", "SQLite", "1", "2", "5", "0", "5", "kills"],
        ["LOST", "presses:", "7"],
    ]


def test_more_doubled_ones_than_faults_explain_are_bad() -> None:
    assert not Row("kill -9", "SQLite", "5 kills", 0, 5, 0, may_double=5).bad
    assert Row("kill -9", "SQLite", "5 kills", 0, 6, 0, may_double=5).bad


def test_a_part_that_broke_off_is_a_bad_row_and_the_others_are_told(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    async def breaks(_: object) -> list[Row]:
        raise TimeoutError("the board never came")

    async def ends(_: object) -> list[Row]:
        return [Row("any update", "SQLite", "12 updates", 0, 0, 0)]

    monkeypatch.setattr("tests.faults.crowd.rows", breaks)
    monkeypatch.setattr("tests.faults.fuzz.rows", ends)
    monkeypatch.setattr("sys.argv", ["faults", "crowd", "fuzz"])
    code = faults()
    told = capsys.readouterr().out

    assert code == 1
    assert "BROKE OFF" in told
    assert "TimeoutError: the board never came" in told
    assert "12 updates" in told


def test_two_boards_where_one_was_to_come_are_bad() -> None:
    assert Row("many groups", "SQLite", "60 groups", 0, 1, 0, may_double=0).bad
