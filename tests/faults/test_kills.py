"""Small runs of what `python -m tests.faults` does at length, on both databases."""

import pytest

from planning.potluck import Answer
from tests.faults import killed, line
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
