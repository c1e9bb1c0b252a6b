"""The page for everybody: side by side, in Spanish, step by step, with a screen reader, while work takes time."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

import httpx
import pytest
from axe_playwright_python.async_playwright import Axe

from bot.clock import SimulatedClock
from bot.room.browser import Pages
from bot.room.player import Player
from bot.room.room import Room
from bot.room.words import page_words, spoken
from bot.texts import languages
from tests.room.browsing import START, in_a_browser, open_room


@in_a_browser
@pytest.mark.parametrize("dark", [False, True])
@pytest.mark.parametrize(("width", "mode"), [(1280, "one"), (1280, "all"), (900, "one"), (375, "one")])
async def test_axe_finds_no_fault_of_accessibility(
    window: Any, tmp_path: Path, width: int, mode: str, dark: bool
) -> None:
    # axe-core's own rules, which stand for success criteria of WCAG 2 and for good practice.
    async with window(tmp_path, width, 800, dark=dark) as w:
        await w.say("group", "/board")
        await w.page.wait_for_selector("#board button")
        await w.page.evaluate("mode => document.querySelector(`button[data-mode=${mode}]`).click()", mode)
        views = ("group", "private", "side") if width < 1100 else ("group",)
        faults = []
        for view in views:
            await w.page.evaluate("view => document.querySelector(`[data-show=${view}]`).click()", view)
            found = await Axe().run(w.page)
            faults += [(view, v["id"], v["nodes"][0]["html"]) for v in found.response["violations"]]

        assert faults == []


@in_a_browser
async def test_side_by_side_four_private_chats_stand_open_and_each_speaks_for_its_own_person(
    window: Any, tmp_path: Path
) -> None:
    async with window(tmp_path) as w:
        await w.page.click("button[data-mode=all]")
        headings = await w.page.locator("section.pane:visible h2").all_text_contents()
        await w.page.locator("#private-2 .begin").click()
        await w.page.wait_for_selector("#private-2 .log >> text=opened with /start")
        await w.say("private-2", "hello")
        await w.page.wait_for_selector("#private-2 .log >> text=heard hello")
        await w.page.click("#private-1 >> text=Speak in the group as Ravi")

        assert headings[1:] == [f"{name} and the bot" for name in ("Inés", "Ravi", "Mei", "Tomasz")]
        assert await w.page.locator("#private .log >> text=hello").count() == 0
        assert await w.page.locator("#who input:checked").evaluate("i => i.labels[0].textContent") == "Ravi"
        assert w.complaints == []


@in_a_browser
async def test_a_browser_set_to_spanish_gets_a_spanish_page_and_can_change_it(window: Any, tmp_path: Path) -> None:
    async with window(tmp_path, language="es-MX") as w:
        await w.page.wait_for_selector("text=Cinco cosas para probar")
        assert await w.page.get_attribute("html", "lang") == "es"

        await w.page.select_option("#language", "en")
        await w.page.wait_for_selector("text=Five things to try")

        assert await w.page.get_attribute("html", "lang") == "en"
        assert await w.page.get_attribute("#group-text", "placeholder") == "Write in the group as Inés"


@in_a_browser
async def test_the_five_things_lead_from_one_to_the_next(window: Any, tmp_path: Path) -> None:
    async with window(tmp_path) as w:
        steps = w.page.locator(".tour li")
        current = w.page.locator(".tour li[aria-current=step]")
        assert "Start a potluck" in await current.inner_text()
        await current.get_by_text("Write it for Inés").click()
        assert (await w.page.input_value("#group-text")).startswith("/potluck")

        await w.say("group", "/board")  # the small bot's own word for it
        await w.page.wait_for_selector(".tour li.done")
        assert "Answer as a guest" in await current.inner_text()
        await current.get_by_text("Take me there as Ravi").click()
        assert await w.page.evaluate("document.activeElement.textContent") == "Coming"
        await w.page.keyboard.press("Enter")
        await w.page.wait_for_selector("li.current:has-text('in your own words')")
        await current.get_by_text("Write it for Mei").click()
        assert await w.page.is_visible("#group .aim"), "it is written as a reply to the board"
        await w.page.keyboard.press("Enter")
        await w.page.wait_for_selector("li.current:has-text('in private')")
        await current.get_by_text("Take me there as Tomasz").click()
        await w.page.keyboard.press("Enter")
        await w.page.wait_for_selector("li.current:has-text('Let time pass')")
        await current.get_by_text("Skip").click()

        assert await steps.count() == await w.page.locator(".tour li.done").count() == 5
        assert await w.page.text_content("#tour-count") == "All five done. The room is yours."


@in_a_browser
async def test_every_command_that_is_suggested_can_be_sent_with_two_presses(window: Any, tmp_path: Path) -> None:
    async with window(tmp_path) as w:
        await w.page.click("#more button >> text=/missing")
        await w.page.keyboard.press("Enter")

        await w.page.wait_for_selector("#group-log .text >> text=/missing")


def test_who_comes_while_a_script_is_played_sees_how_far_it_is() -> None:
    clock = SimulatedClock(START)
    room = Room(clock)
    pages = Pages(room, Player(room, clock), ZoneInfo("UTC"))

    pages.played(3, 10)
    assert pages.playing == {"done": 3, "of": 10}
    pages.played(10, 10)
    assert pages.playing is None


@pytest.mark.parametrize("language", languages())
def test_the_pages_labels_leave_room_for_what_the_page_fills_in(language: str) -> None:
    words = page_words(language)

    assert words["write-group"].count("{name}") == 1
    assert "{n}" in words["playing"]
    assert words.keys() == page_words("en").keys()


@pytest.mark.parametrize(
    ("asked", "spoke"), [("es-MX", "es"), ("ES", "es"), ("en_GB", "en"), ("tlh", "en"), (None, "en")]
)
def test_the_nearest_language_we_have_is_spoken(asked: str | None, spoke: str) -> None:
    assert spoken(asked) == spoke


def test_every_label_the_page_asks_for_is_there() -> None:
    folder = Path(__file__).parents[2] / "bot/room/page"
    scripts = "".join(f.read_text("utf-8") for f in folder.iterdir())
    asked = set(re.findall(r"""\bt\("([a-z-]+)"|data-t(?:-label)?="([a-z-]+)"|"(more-[a-z]+)"\]""", scripts))
    keys = {key for found in asked for key in found if key} - {"more-title"}

    assert len(keys) > 50
    assert keys - page_words("en").keys() == set()


async def test_the_decisions_are_told_in_the_language_asked_for(tmp_path: Path) -> None:
    async with open_room(tmp_path) as address, httpx.AsyncClient(base_url=address) as web:
        told = (await web.get("/room/decisions?lang=es")).json()
        words = (await web.get("/room/words?lang=es")).json()

    assert told[0]["what"] == "Counted Ravi in"
    assert words["language"] == "es"


@in_a_browser
@pytest.mark.parametrize(("width", "mode"), [(1280, "one"), (1280, "all"), (900, "all"), (375, "one")])
async def test_no_name_is_so_long_that_it_widens_the_page(window: Any, tmp_path: Path, width: int, mode: str) -> None:
    async with window(tmp_path, width, people=("W" * 64, "王小明", "अनुष्का", "Tom 👩‍🌾"), title="G" * 128) as w:
        await w.say("group", "X" * 900)
        await w.page.wait_for_selector("#group-log .text")
        await w.page.evaluate("mode => document.querySelector(`button[data-mode=${mode}]`).click()", mode)

        assert await w.page.evaluate("document.documentElement.scrollWidth") <= width
        assert w.complaints == []


async def test_the_fonts_of_the_pictures_are_served_and_no_other_file_is(tmp_path: Path) -> None:
    async with open_room(tmp_path) as address, httpx.AsyncClient(base_url=address) as web:
        font = await web.get("/page/font/NotoSansHebrew-Regular.ttf")
        other = await web.get("/page/font/OFL.txt")

    assert font.status_code == 200
    assert len(font.content) > 5_000
    assert other.status_code == 404


def test_every_font_the_page_asks_for_is_shipped() -> None:
    root = Path(__file__).parents[2] / "bot"
    asked = re.findall(r"/page/font/([\w.-]+)", (root / "room/page/style.css").read_text("utf-8"))

    assert asked
    assert [name for name in asked if not (root / "prints/fonts" / name).is_file()] == []
