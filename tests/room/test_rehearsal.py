"""The player, with a small bot on the real client library over loopback HTTP."""

from __future__ import annotations

import json
from datetime import datetime
from pathlib import Path
from typing import Any

from bot.room.rehearsal import rehearse
from tests.room.fake_bot import FakeBot

HEAD = [
    {"clock": "2027-09-10T09:00", "timezone": "America/Chicago"},
    {
        "people": [{"id": "ines", "name": "Inés"}, {"id": "ravi", "name": "Ravi"}, {"id": "mei", "name": "Mei"}],
        "group": "Plot 9 Supper",
        "admins": ["ines"],
    },
]


async def play(tmp_path: Path, *lines: dict[str, Any], head: list[dict[str, Any]] = HEAD) -> list[dict[str, Any]]:
    code, rows, complaints = await attempt(tmp_path, *lines, head=head)
    assert (code, complaints) == (0, [])
    return rows


async def attempt(
    tmp_path: Path, *lines: dict[str, Any], head: list[dict[str, Any]] = HEAD
) -> tuple[int, list[dict[str, Any]], list[str]]:
    script = tmp_path / "script.jsonl"
    script.write_text("".join(json.dumps(line) + "\n" for line in [*head, *lines]), encoding="utf-8")
    shelf: dict[str, Any] = {}
    complaints: list[str] = []
    out = tmp_path / "out"

    def write(path: Path, people: Any) -> None:
        target = path / "prints.txt" if path.is_dir() else path
        target.write_text(json.dumps({str(k): v for k, v in people.items()}))

    code = await rehearse(
        script, out, lambda setup: FakeBot(setup, shelf), write, write, write, lambda _: None, complaints.append
    )
    record = out / "chat.jsonl"
    rows = [json.loads(line) for line in record.read_text().splitlines()] if record.exists() else []
    return code, rows, complaints


async def test_a_pressed_button_is_answered_and_the_board_is_edited(tmp_path: Path) -> None:
    rows = await play(
        tmp_path,
        {"from": "ines", "say": "/board"},
        {"from": "ravi", "press": "coming", "on": "board"},
    )

    kinds = [(row["from"], row["kind"], row["text"]) for row in rows]
    assert kinds == [
        ("ines", "message", "/board"),
        ("bot", "message", "Supper, 0 coming"),
        ("bot", "pin", "Supper, 0 coming"),
        ("ravi", "press", "Coming"),
        ("bot", "answer", "Noted"),
        ("bot", "edit", "Supper, 1 coming"),
    ]
    assert rows[4]["to"] == "ravi"
    assert rows[5]["buttons"][0][0] == {"label": "Coming"}


async def test_a_deep_link_is_followed_into_the_private_chat(tmp_path: Path) -> None:
    rows = await play(
        tmp_path,
        {"from": "ines", "say": "/board"},
        {"from": "mei", "in": "private", "say": "/start @link"},
    )

    assert [(r["chat"], r["from"], r["text"]) for r in rows[-2:]] == [
        ("mei", "mei", "/start needs_7"),
        ("mei", "bot", "opened with /start needs_7"),
    ]


async def test_each_line_moves_the_clock_one_second_on_the_groups_own_wall_clock(tmp_path: Path) -> None:
    rows = await play(tmp_path, {"from": "ines", "say": "one"}, {"from": "ines", "say": "two"})

    assert [row["at"] for row in rows] == ["2027-09-10T09:00:01-05:00", "2027-09-10T09:00:02-05:00"]


async def test_a_reminder_goes_out_at_its_minute_while_the_clock_moves_past_it(tmp_path: Path) -> None:
    rows = await play(tmp_path, {"from": "ines", "say": "/later"}, {"clock": "2027-09-11T09:00"})

    assert rows[-1]["at"] == "2027-09-10T11:00:01-05:00"
    assert rows[-1]["reminder"] == "preheat"


async def test_a_wait_of_the_bots_runs_on_the_simulated_clock_before_the_next_line(tmp_path: Path) -> None:
    rows = await play(tmp_path, {"from": "ines", "say": "/slow"}, {"from": "ines", "say": "next"})

    assert [row["text"] for row in rows] == ["/slow", "half a minute later", "next"]
    seconds = [datetime.fromisoformat(row["at"]).second for row in rows]
    assert seconds == [1, 31, 32]


async def test_what_is_said_while_the_bot_is_down_is_heard_when_it_is_back(tmp_path: Path) -> None:
    rows = await play(
        tmp_path,
        {"down": True},
        {"from": "mei", "in": "private", "say": "hello"},
        {"down": False},
    )

    assert [(row["from"], row["text"]) for row in rows] == [("mei", "hello"), ("bot", "heard hello")]


async def test_the_bot_comes_back_by_itself_after_down_for(tmp_path: Path) -> None:
    rows = await play(tmp_path, {"down_for": "PT6H"}, {"from": "mei", "in": "private", "say": "hello"})

    assert rows[-1]["text"] == "heard hello"
    assert rows[-1]["at"] == "2027-09-10T15:00:01-05:00"


async def test_with_privacy_on_the_bot_hears_no_chatter_and_with_it_off_it_does(tmp_path: Path) -> None:
    quiet = await play(tmp_path, {"from": "ravi", "say": "hello all"})
    open_head = [HEAD[0] | {"bot_sees_all": True}, HEAD[1]]
    loud = await play(tmp_path, {"from": "ravi", "say": "hello all"}, head=open_head)

    assert [row["text"] for row in quiet] == ["hello all"]
    assert [row["text"] for row in loud] == ["hello all", "heard hello all"]


async def test_a_reply_to_the_board_reaches_the_bot_in_spite_of_privacy(tmp_path: Path) -> None:
    rows = await play(tmp_path, {"from": "ines", "say": "/board"}, {"from": "ravi", "say": "3 of us", "reply": "board"})

    assert rows[-2]["reply_to"] == rows[1]["message"]
    assert rows[-1]["text"] == "heard 3 of us"


async def test_a_button_that_is_not_there_ends_with_2_and_the_lines_number(tmp_path: Path) -> None:
    code, rows, complaints = await attempt(
        tmp_path, {"from": "ines", "say": "/board"}, {"from": "ravi", "press": "Dance"}
    )

    assert code == 2
    assert len(complaints) == 1
    assert "line 4" in complaints[0]
    assert rows, "what was seen until then is still written"


async def test_the_topic_named_in_a_script_exists_and_the_bot_answers_in_it(tmp_path: Path) -> None:
    rows = await play(tmp_path, {"from": "ravi", "in": "topic:Food", "say": "/start"})

    assert [row.get("topic") for row in rows] == ["Food", "Food"]


async def test_the_group_goes_on_under_its_new_id_after_an_upgrade(tmp_path: Path) -> None:
    rows = await play(tmp_path, {"event": "upgraded"}, {"from": "ravi", "say": "/start"})

    assert [row["chat"] for row in rows] == ["group"] * 3
    assert rows[-1]["text"] == "opened with /start"


async def test_records_for_people_are_written_beside_the_one_for_programs(tmp_path: Path) -> None:
    await play(tmp_path, {"from": "ines", "say": "<b>not bold</b>"}, {"note": "a note"})

    out = tmp_path / "out"
    assert "&lt;b&gt;not bold" in (out / "chat.html").read_text()
    assert "a note" in (out / "chat.md").read_text()
    assert json.loads((out / "state.json").read_text()) == {"1000001": "ines", "1000002": "ravi", "1000003": "mei"}


async def test_the_bot_is_not_there_before_bot_added_and_is_told_of_it(tmp_path: Path) -> None:
    rows = await play(
        tmp_path, {"from": "ravi", "say": "/start"}, {"event": "bot-added"}, {"from": "ravi", "say": "/start"}
    )

    assert [(row["from"], row["kind"]) for row in rows] == [
        ("ravi", "message"),
        ("ines", "service"),
        ("ravi", "message"),
        ("bot", "message"),
    ]


async def test_a_person_who_joins_in_the_script_was_not_there_before(tmp_path: Path) -> None:
    code, _, complaints = await attempt(tmp_path, {"event": "joined", "who": "mei"}, {"event": "joined", "who": "mei"})
    again = await attempt(tmp_path, {"event": "left", "who": "mei"}, {"from": "mei", "say": "still here"})

    assert (code, complaints) == (0, [])
    assert again[0] == 2
    assert "line 4: Mei is not in Plot 9 Supper" in again[2][0]


async def test_faults_on_order_reach_the_bot_and_the_story_goes_on(tmp_path: Path) -> None:
    rows = await play(
        tmp_path,
        {"fault": "timeout", "stored": True, "method": "sendMessage"},
        {"from": "ravi", "say": "/start"},
        {"fault": "500"},
        {"from": "ravi", "say": "/start"},
        {"from": "ravi", "say": "/start"},
    )

    assert [row["from"] for row in rows] == ["ravi", "bot", "ravi", "ravi", "bot"]


async def test_a_migration_on_order_moves_the_group(tmp_path: Path) -> None:
    rows = await play(
        tmp_path, {"fault": "migrate"}, {"from": "ravi", "say": "/start"}, {"from": "mei", "say": "/start"}
    )

    assert [(row["from"], row["kind"]) for row in rows] == [
        ("ravi", "message"),
        ("ines", "service"),
        ("mei", "message"),
        ("bot", "message"),
    ]


async def test_a_blocked_bot_hears_nothing_more_until_it_is_written_to_again(tmp_path: Path) -> None:
    rows = await play(
        tmp_path,
        {"from": "mei", "in": "private", "say": "/start"},
        {"event": "blocked", "who": "mei"},
        {"from": "mei", "in": "private", "say": "hello"},
    )

    assert [(row["kind"], row["text"]) for row in rows[2:]] == [
        ("service", "Mei stopped the bot"),
        ("service", "Mei let the bot in again"),
        ("message", "hello"),
        ("message", "heard hello"),
    ]


async def test_a_press_with_no_place_named_finds_a_button_in_the_private_chat_too(tmp_path: Path) -> None:
    rows = await play(
        tmp_path,
        {"from": "mei", "in": "private", "say": "/board"},
        {"from": "mei", "press": "coming"},
    )

    assert [row["chat"] for row in rows if row["kind"] == "press"] == ["mei"]


async def test_a_reply_by_number_counts_back_from_the_newest_message(tmp_path: Path) -> None:
    rows = await play(
        tmp_path,
        {"from": "ines", "say": "who brings plates?"},
        {"from": "mei", "say": "not me"},
        {"from": "ravi", "say": "me", "reply": 2},
    )

    assert rows[2]["reply_to"] == rows[0]["message"]


async def test_what_was_changed_is_the_persons_own_last_message(tmp_path: Path) -> None:
    rows = await play(
        tmp_path,
        {"from": "ravi", "say": "3 of us"},
        {"from": "mei", "say": "2 of us"},
        {"from": "ravi", "edit": "last", "say": "4 of us"},
    )

    assert (rows[2]["kind"], rows[2]["message"], rows[2]["text"]) == ("edit", rows[0]["message"], "4 of us")


async def test_a_script_that_is_not_there_or_is_ill_ends_with_2_and_one_line(tmp_path: Path) -> None:
    complaints: list[str] = []

    code = await rehearse(
        tmp_path / "nowhere.jsonl", tmp_path / "out", FakeBot, print, print, print, complaints.append, complaints.append
    )  # type: ignore[arg-type]

    assert code == 2
    assert len(complaints) == 1
    assert "\n" not in complaints[0]


async def test_the_same_script_gives_the_same_record_twice(tmp_path: Path) -> None:
    lines = [{"from": "ines", "say": "/board"}, {"from": "ravi", "press": "coming"}, {"clock": "2027-09-11T09:00"}]
    first, second = tmp_path / "one", tmp_path / "two"
    first.mkdir()
    second.mkdir()

    assert await play(first, *lines) == await play(second, *lines)
