"""The page in a real browser, with the small bot in the room."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import httpx
import pytest

from tests.room.browsing import in_a_browser, open_room


@in_a_browser
async def test_an_evening_by_mouse_board_press_toast_and_deep_link(window: Any, tmp_path: Path) -> None:
    async with window(tmp_path) as w:
        await w.say("group", "/board")
        await w.page.wait_for_selector("#board button")
        await w.be("Ravi")
        await w.page.click('#board button:has-text("Coming")')
        await w.page.wait_for_selector(".toast >> text=Noted")
        await w.page.wait_for_selector("#board >> text=1 coming")
        await w.page.click('#board button:has-text("My needs")')
        await w.page.wait_for_selector("#private-log >> text=opened with /start needs_7")
        await w.page.wait_for_selector("#why >> text=Counted Ravi in")

        assert await w.page.locator(".tour li.done").count() == 3, "a board is there, Coming pressed, the link followed"
        assert w.complaints == []


@in_a_browser
async def test_everything_can_be_done_with_the_keyboard(window: Any, tmp_path: Path) -> None:
    async with window(tmp_path) as w:
        keyboard = w.page.keyboard
        await keyboard.press("Tab")  # the way past the head of the page
        await keyboard.press("Enter")
        await keyboard.type("/board")
        await keyboard.press("Enter")
        await w.page.wait_for_selector("#board button")
        await keyboard.press("Shift+Tab")
        for _ in range(40):
            if await w.page.evaluate("document.activeElement.textContent") == "Coming":
                break
            await keyboard.press("Shift+Tab")
        await keyboard.press("Enter")
        await w.page.wait_for_selector("#board >> text=1 coming")

        assert await w.page.evaluate("document.activeElement.textContent") == "Coming", "the focus stays where it was"
        assert w.complaints == []


@in_a_browser
async def test_the_clock_moves_to_the_next_reminder_and_it_is_sent(window: Any, tmp_path: Path) -> None:
    async with window(tmp_path) as w:
        await w.say("group", "/later")
        before = await w.page.text_content("#now")
        await w.page.click("text=Next reminder")
        await w.page.wait_for_selector("#group-log >> text=time to preheat")

        assert before is not None
        assert "9:00 AM" in before
        assert "11:00 AM" in (await w.page.text_content("#now") or "")


@in_a_browser
async def test_html_that_people_write_stays_text(window: Any, tmp_path: Path) -> None:
    async with window(tmp_path) as w:
        await w.say("group", "<img src=x onerror=alert(1)> <b>hi</b>")
        text = await w.page.text_content("#group-log .text")

        assert text == "<img src=x onerror=alert(1)> <b>hi</b>"
        assert await w.page.locator("#group-log img").count() == 0


@in_a_browser
async def test_on_a_phone_nothing_is_wider_than_the_screen_and_the_chats_are_behind_tabs(
    window: Any, tmp_path: Path
) -> None:
    async with window(tmp_path, 375, 740) as w:
        await w.say("group", "/board")
        await w.page.wait_for_selector("#board button")
        widths = [await w.page.evaluate("document.documentElement.scrollWidth")]
        for tab in ("Private", "Guide"):
            await w.page.click(f".tabs >> text={tab}")
            widths.append(await w.page.evaluate("document.documentElement.scrollWidth"))

        await w.page.click(".tabs >> text=Group")
        await w.page.evaluate("document.querySelector('#board > div').prepend('a line of a long board, '.repeat(200))")
        begins = await w.page.evaluate("document.querySelector('#group-log').getBoundingClientRect().top + scrollY")
        await w.page.click(".tabs >> text=Guide")

        assert begins < 640, "the chat begins on the first screen, however long the board is"
        assert max(widths) <= 375
        assert not await w.page.is_visible("#group")


@in_a_browser
async def test_every_field_and_button_has_a_name_for_a_screen_reader(window: Any, tmp_path: Path) -> None:
    async with window(tmp_path) as w:
        await w.say("group", "/board")
        await w.page.wait_for_selector("#board button")
        nameless = await w.page.evaluate(
            """() => [...document.querySelectorAll('button, select, textarea, input')].filter((e) =>
              !e.closest('[hidden]') &&
              !(e.textContent.trim() && e.tagName === 'BUTTON') && !e.getAttribute('aria-label') && !e.labels?.length
            ).map((e) => e.outerHTML)"""
        )

        assert nameless == []
        assert await w.page.get_attribute("#group-log", "aria-live") == "polite"


def contrast(one: str, other: str) -> float:
    """WCAG 2.2, success criterion 1.4.3: (L1 + 0.05) / (L2 + 0.05), L the relative luminance of sRGB."""

    def luminance(colour: str) -> float:
        parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
        linear = [p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts]
        return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]

    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_the_contrast_formula_gives_the_standards_own_extremes() -> None:
    assert contrast("#ffffff", "#000000") == pytest.approx(21)
    assert contrast("#777777", "#ffffff") == pytest.approx(4.48, abs=0.01)  # the usual example of just too little


@pytest.mark.parametrize("mode", [0, 1])
@pytest.mark.parametrize(
    ("ink", "ground"),
    [
        ("ink", "paper"), ("ink", "sheet"), ("ink", "leaf-wash"), ("ink", "note"), ("soft", "paper"),
        ("soft", "leaf-wash"), ("soft", "note"), ("leaf", "leaf-wash"), ("sheet", "leaf"), ("brick", "sheet"),
        ("brick", "leaf-wash"), ("brick", "note"), ("paper", "ink"),
    ],
)  # fmt: skip
def test_text_stands_out_by_4_5_to_1_in_daylight_and_in_the_dark(mode: int, ink: str, ground: str) -> None:
    style = (Path(__file__).parents[2] / "bot/room/page/style.css").read_text()
    block = style.split(":root {")[1 + mode].split("}")[0]
    colours = dict(
        part.strip().removeprefix("--").split(": ") for part in block.split(";") if part.strip().startswith("--")
    )

    assert contrast(colours[ink], colours[ground]) >= 4.5


# --- who may speak through the page ---


@pytest.mark.parametrize(
    ("headers", "status"),
    [
        ({}, 200),
        ({"host": "evil.example"}, 403),
        ({"origin": "https://evil.example"}, 403),
        ({"content-type": "text/plain"}, 415),
    ],
)
async def test_only_the_rooms_own_page_may_speak(tmp_path: Path, headers: dict[str, str], status: int) -> None:
    async with open_room(tmp_path) as address, httpx.AsyncClient(base_url=address) as web:
        state = (await web.get("/room/state")).json()
        asked = {"do": "say", "who": state["people"][0]["id"], "chat": state["group"], "text": "hello"}

        answer = await web.post(
            "/room/do", content=json.dumps(asked), headers={"content-type": "application/json"} | headers
        )

    assert answer.status_code == status


@pytest.mark.parametrize(
    "asked",
    [
        {}, {"do": "fly", "who": 1000001}, {"do": "say", "who": 5},
        {"do": "say", "who": 1000001, "chat": 1000002, "text": "x"},
        {"do": "press", "who": 1000001, "chat": 1000001, "message": 1, "row": 0, "column": 0},
        {"do": "move", "to": "yesterday"}, {"do": "move", "to": "2020-01-01T00:00"},
        {"do": "move", "by_min": 1e9}, {"do": "move", "to": "next"},
    ],
)  # fmt: skip
async def test_what_cannot_be_done_is_refused_in_one_sentence(tmp_path: Path, asked: dict[str, Any]) -> None:
    async with open_room(tmp_path) as address, httpx.AsyncClient(base_url=address) as web:
        answer = await web.post("/room/do", json=asked)

    assert answer.status_code == 400
    assert answer.json()["error"]
