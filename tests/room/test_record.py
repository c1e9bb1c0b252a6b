"""The record of a rehearsal as people read it."""

from typing import Any

from bot.room.record import changed_lines, markdown, page

NAMES = {"ines": "Inés"}


def row(kind: str, text: str, message: int = 1, who: str = "bot") -> dict[str, Any]:
    at = "2027-09-08T18:30:00-05:00"
    return {"at": at, "chat": "group", "from": who, "kind": kind, "text": text, "message": message}


ROWS = [row("message", "Supper\nComing: 1\nsalad 0/26"), row("edit", "Supper\nComing: 1\nsalad 12/26\n• slaw – Ravi")]


def test_an_edit_tells_only_the_lines_that_became_different() -> None:
    (_, first), (_, news) = changed_lines(ROWS)

    assert first is None
    assert news == ["salad 12/26", "• slaw – Ravi"]


def test_the_same_number_of_a_message_in_another_chat_is_another_message() -> None:
    elsewhere = {**row("edit", "Hello"), "chat": "ines"}

    assert [news for _, news in changed_lines([ROWS[0], elsewhere])] == [None, None]


def test_both_records_show_the_board_once_in_full_and_then_what_changed() -> None:
    said = markdown(ROWS, "Plot Nine", NAMES)
    shown = page(ROWS, "Plot Nine", NAMES)

    assert said.count("Coming: 1") == 1
    assert "changed it: salad 12/26 / • slaw – Ravi" in said
    assert "<summary>18:30 <bdi>Tureen</bdi> changed it: <bdi>salad 12/26 / • slaw – Ravi</bdi></summary>" in shown
    assert shown.count('<p class="text"') == 2, "the whole board as it was then can be opened"


def test_a_picture_has_words_for_who_cannot_see_it() -> None:
    photo = {**row("photo", ""), "file": "files/file_1-table.png"}

    assert 'alt="Picture: files/file_1-table.png"' in page([photo], "Plot Nine", NAMES)


def test_days_stand_above_the_lines_in_the_groups_language() -> None:
    rows = [{"at": "2027-09-08T18:30:00+02:00", "chat": "group", "from": "ines", "kind": "message", "text": "hola"}]

    assert "## miércoles, 8 de septiembre de 2027" in markdown(rows, "Huerto", {}, "es")
    assert '<html lang="es">' in page(rows, "Huerto", {}, "es")
