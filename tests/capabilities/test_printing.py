"""Pictures, paper and the calendar file, asked for in the chat."""

import json
from pathlib import Path
from typing import Any

import icalendar
import pytest

from bot.capabilities.printing import is_photo
from bot.commands.rehearse import play as rehearse
from tests.capabilities.conftest import OPENED, PEOPLE, START, Played, board, press, say, until
from tests.prints.papers import text_of

PNG = b"\x89PNG\r\n\x1a\n"
"""PNG specification (W3C), 5.2."""


@pytest.fixture
def sent(tmp_path: Path):
    """What the bot sent, in order: (row of the record, bytes)."""

    def read(played: Played, chat: str = "group") -> list[tuple[dict[str, Any], bytes]]:
        rows = [r for r in played.rows if "file" in r and r["chat"] == chat and r["from"] == "bot"]
        # Of several plays the newest is meant.
        found = [max(tmp_path.glob(f"out*/{r['file']}"), key=lambda f: f.stat().st_mtime_ns) for r in rows]
        return [(r, f.read_bytes()) for r, f in zip(rows, found, strict=True)]

    return read


def names(sent: list[tuple[dict[str, Any], bytes]]) -> list[str]:
    return [row["file"].rpartition("/")[2].partition("-")[2] for row, _ in sent]


async def test_the_picture_of_the_table_is_a_photo_in_the_chat_it_is_asked_in(play, sent):
    played = await play(board("ravi", "slaw for 12"), say("mei", "/picture"))

    [(row, png)] = sent(played)
    assert (row["kind"], png[:8]) == ("photo", PNG)
    assert is_photo(png)
    assert "table" in row["text"]


async def test_after_more_promises_a_new_picture_shows_another_table(play, sent):
    played = await play(say("mei", "/picture"), board("ravi", "slaw for 12"), say("mei", "/picture"))

    [(_, before), (_, after)] = sent(played)
    assert before != after


async def test_the_kitchen_has_a_picture_of_its_own(play, sent):
    played = await play(
        say("ines", "/kitchen 1 oven"), say("ravi", "/bring lasagna for 12"),
        say("ravi", "/heat lasagna: 50 minutes at 375"), say("mei", "/picture kitchen"), say("mei", "/picture"),
    )  # fmt: skip

    [(kitchen, first), (_, second)] = sent(played)
    assert kitchen["kind"] == "photo"
    assert first[:8] == second[:8] == PNG
    assert first != second


def told_by(who: str, *after: dict[str, Any]) -> list[dict[str, Any]]:
    """Mei and Tom both come; one of them tells the bot in private what they can't eat."""
    return [
        press("mei", "Coming", on="board"), press("tom", "Coming", on="board"),
        {"from": who, "in": "private", "say": "/start @link"}, {"from": who, "in": "private", "press": "no peanut"},
        *after,
    ]  # fmt: skip


def private_picture(who: str) -> list[dict[str, Any]]:
    return [{"from": who, "in": "private", "say": "/start @link"}, {"from": who, "in": "private", "say": "/picture"}]


async def test_in_the_group_nobody_sees_from_the_picture_whose_a_need_is(play, sent):
    [(_, meis)] = sent(await play(*told_by("mei", say("ines", "/picture"))))
    [(_, toms)] = sent(await play(*told_by("tom", say("ines", "/picture"))))
    [(_, nobodys)] = sent(await play(press("mei", "Coming", on="board"), press("tom", "Coming", on="board"),
                                     say("ines", "/picture")))  # fmt: skip

    assert meis == toms
    assert meis != nobodys


async def test_in_the_group_a_need_written_openly_is_its_owners(play, sent):
    def openly(who: str) -> list[dict[str, Any]]:
        return [press("mei", "Coming", on="board"), press("tom", "Coming", on="board"),
                say(who, "/needs vegetarian"), say("ines", "/picture")]  # fmt: skip

    assert sent(await play(*openly("mei")))[0][1] != sent(await play(*openly("tom")))[0][1]


async def test_the_host_sees_in_private_whose_a_need_is(play, sent):
    [(_, meis)] = sent(await play(*told_by("mei", *private_picture("ines"))), "ines")
    [(_, toms)] = sent(await play(*told_by("tom", *private_picture("ines"))), "ines")

    assert meis != toms


async def test_another_guest_learns_no_more_in_private_even_as_an_administrator(play, sent):
    [(_, meis)] = sent(await play(*told_by("mei", *private_picture("ravi")), admins=("ravi",)), "ravi")
    [(_, toms)] = sent(await play(*told_by("tom", *private_picture("ravi")), admins=("ravi",)), "ravi")

    assert meis == toms


async def test_a_host_prints_what_the_button_names(play, sent):
    played = await play(say("ines", "/print"), press("ines", "Run sheet", on="last"))

    [(row, pdf)] = sent(played)
    assert (row["kind"], pdf[:5]) == ("document", b"%PDF-")  # ISO 32000-1, 7.5.2
    assert row["file"].endswith("run-sheet.pdf")


async def test_no_paper_tells_whose_a_need_is(play, sent, tmp_path):
    # Without a private chat papers come into the group, and on paper they lie about in any case.
    asked = [say("ines", "/bar baked potato"), board("ravi", "bean chili for 12"), say("ines", "/print everything")]
    meis = [pdf for _, pdf in sent(await play(*told_by("mei", *asked)))]
    toms = [pdf for _, pdf in sent(await play(*told_by("tom", *asked)))]

    # The links on them carry the potluck's id, which is another in every play: the words are compared.
    assert len(meis) == len(toms) == 5
    for mine, theirs in zip(meis, toms, strict=True):
        assert text_of(mine, tmp_path) == text_of(theirs, tmp_path)


async def test_everything_is_one_file_each_to_the_host_alone_once_they_opened_the_private_chat(play, sent):
    played = await play(
        say("ines", "/bar baked potato"), {"from": "ines", "in": "private", "say": "/start"},
        say("ines", "/print"), press("ines", "Everything", on="last"),
    )  # fmt: skip

    assert sent(played) == []
    assert names(sent(played, "ines")) == [
        "run-sheet.pdf", "table-cards.pdf", "bar-menu.pdf", "shopping-list.pdf", "name-tags.pdf",
    ]  # fmt: skip


async def test_the_cards_that_were_sent_name_the_dish(play, sent, tmp_path):
    played = await play(board("ravi", "slaw for 12"), say("ines", "/print cards"))

    [(_, pdf)] = sent(played)
    assert "slaw" in text_of(pdf, tmp_path)


async def test_a_bar_menu_is_not_offered_without_a_bar(play):
    played = await play(say("ines", "/print"))

    labels = [b["label"] for r in played.rows if r["kind"] == "message" for row in r.get("buttons", ()) for b in row]
    assert "Run sheet" in labels
    assert "Bar menu" not in labels


async def test_a_guest_may_not_print(play, sent):
    played = await play(press("ravi", "Coming", on="board"), say("ravi", "/print cards"), say("ravi", "/print"))

    assert sent(played) == []
    assert "Inés" in played.last()


async def test_a_guest_may_not_press_the_hosts_buttons(play, sent):
    played = await play(say("ines", "/print"), press("ravi", "Run sheet", on="last"))

    assert sent(played) == []


async def test_the_calendar_file_goes_to_whoever_asks_with_what_they_bring(play, sent):
    played = await play(
        board("ravi", "coming, slaw for 12"), {"from": "ravi", "in": "private", "say": "/start"},
        say("ravi", "/calendar"),
    )  # fmt: skip

    [(row, ics)] = sent(played, "ravi")
    event = icalendar.Calendar.from_ical(ics).walk("VEVENT")[0]
    assert row["kind"] == "document"
    assert "slaw" in event["description"]
    assert event["dtstart"].dt.isoformat() == "2027-09-18T17:00:00-05:00"


async def test_in_the_group_the_calendar_file_is_everybodys(play, sent):
    played = await play(board("ravi", "coming, slaw for 12"), say("ravi", "/calendar"))

    [(row, ics)] = sent(played)
    event = icalendar.Calendar.from_ical(ics).walk("VEVENT")[0]
    assert event["uid"].partition("@")[0].endswith("-all")
    assert row["buttons"]


async def test_a_newer_calendar_file_replaces_the_older(play, sent):
    """RFC 5545, 3.8.7.4 and RFC 5546, 2.1.5: the same UID, a higher SEQUENCE."""
    played = await play(say("mei", "/calendar"), say("ines", "/when 5:30pm"), say("mei", "/calendar"))

    first, second = (icalendar.Calendar.from_ical(ics).walk("VEVENT")[0] for _, ics in sent(played))
    assert first["uid"] == second["uid"]
    assert first["sequence"] < second["sequence"]


async def test_a_picture_asked_for_while_the_bot_was_down_arrives_afterwards(play, sent):
    played = await play({"down": True}, say("ravi", "/picture"), {"down": False})

    assert [row["kind"] for row, _ in sent(played)] == ["photo"]


async def test_a_flood_answer_delays_the_picture_and_loses_nothing(play, sent):
    played = await play({"fault": "429", "retry_after": 5, "count": 2, "method": "sendPhoto"}, say("ravi", "/picture"))

    [(_, png)] = sent(played)
    assert png[:8] == PNG


async def test_a_file_whose_answer_was_lost_is_sent_once_more_and_no_oftener(play, sent):
    lost = {"fault": "timeout", "method": "sendDocument", "count": 1}
    played = await play({**lost, "stored": False}, say("ines", "/print cards"))
    assert names(sent(played)) == ["table-cards.pdf"]

    played = await play({**lost, "stored": True, "count": 9}, say("ines", "/print cards"))
    assert names(sent(played)) == ["table-cards.pdf"] * 2


async def test_without_a_potluck_there_is_nothing_to_draw(play, sent):
    played = await play(say("ravi", "/picture"), opened=False)

    assert sent(played) == []
    assert len(played.texts()) == 1


async def test_a_picture_of_what_was_called_off_says_so(play, sent):
    played = await play(say("ines", "/cancel"), press("ines", "Yes", on="last"), say("mei", "/picture"))

    [(row, _)] = sent(played)
    assert row["text"].startswith("Cancelled")


async def test_the_kitchen_keeps_its_timeline_on_the_day_itself(play, sent):
    played = await play(
        say("ines", "/kitchen 1 oven"), say("ravi", "/bring lasagna for 12"),
        say("ravi", "/heat lasagna: 50 minutes at 375"), until("2027-09-18T16:30"), say("mei", "/picture kitchen"),
        until("2027-09-18T18:00"), say("mei", "/picture kitchen"),
    )  # fmt: skip

    assert [png[:8] for _, png in sent(played)] == [PNG, PNG]


async def test_the_groups_calendar_file_leads_to_ones_own(play, sent):
    played = await play(
        board("ravi", "coming, slaw for 12"), say("ravi", "/calendar"),
        {"from": "ravi", "in": "private", "say": "/start @link"},
    )  # fmt: skip

    [(_, ics)] = sent(played, "ravi")
    assert "slaw" in icalendar.Calendar.from_ical(ics).walk("VEVENT")[0]["description"]


async def test_the_link_on_paper_is_the_one_below_the_picture(play, sent):
    played = await play(say("ines", "/calendar"), say("ines", "/picture"))

    [(_, ics), (picture, _)] = sent(played)
    [[door]] = picture["buttons"]
    assert icalendar.Calendar.from_ical(ics).walk("VEVENT")[0]["url"] == door["url"]


async def test_that_link_opens_ones_list_and_for_a_newcomer_what_is_missing(play):
    opened = [{"from": who, "in": "private", "say": "/start @link"} for who in ("ravi", "tom")]
    played = await play(board("ravi", "coming, slaw for 12"), say("ines", "/picture"), *opened)

    assert "slaw" in played.last("ravi")
    assert "salad" in played.last("tom")


def test_a_picture_beyond_what_the_platform_takes_as_a_photo_is_a_document():
    def header(wide: int, high: int) -> bytes:
        return PNG + b"\0\0\0\rIHDR" + wide.to_bytes(4) + high.to_bytes(4)

    # Bot API, sendPhoto: sides together at most 10000, at most 20 to 1, at most 10 MB.
    assert is_photo(header(1000, 9000))
    assert not is_photo(header(1001, 9000))
    assert not is_photo(header(100, 2001))
    assert not is_photo(header(1000, 1000) + bytes(10_000_000))


SPANISH = say("ines", "/settings language es")


async def test_pictures_and_papers_may_be_asked_for_by_the_words_of_their_buttons_in_any_language(play, sent):
    played = await play(SPANISH, say("ines", "/picture cocina"), say("ines", "/print etiquetas hoja"),
                        say("ines", "/bar taco"), say("ines", "/print menú"))  # fmt: skip

    assert names(sent(played)) == ["kitchen.png", "run-sheet.pdf", "name-tags.pdf", "bar-menu.pdf"]


async def test_what_a_rehearsal_writes_is_in_the_groups_language_and_opens_the_chat(tmp_path):
    script = [START, {"people": PEOPLE, "group": "Plot Nine"}, OPENED, SPANISH, say("ines", "/bring lasaña para 12")]
    (tmp_path / "script.jsonl").write_text("\n".join(map(json.dumps, script)), "utf-8")

    assert await rehearse(tmp_path / "script.jsonl", tmp_path / "out", lambda _: None) == 0

    text = text_of((tmp_path / "out" / "run-sheet.pdf").read_bytes(), tmp_path)
    assert "Hoja de cocina" in text
    assert "Abrir en el chat" in text
