from __future__ import annotations

import re
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

import pytest
import typst

from bot import prints
from bot.prints import render
from bot.prints.bar import bar_menu_data
from bot.prints.cards import cards_data, name_tags_data
from bot.prints.qr import qr_svg
from bot.prints.run_sheet import run_sheet_data
from bot.prints.say import Writer
from bot.prints.shopping import section_of, shopping_data
from planning.potluck import Promise
from tests.prints.builders import (
    START,
    a_guest,
    a_plan,
    a_potluck,
    a_promise,
    with_bar,
    with_kitchen,
    with_needs,
    words_from_texts,
)  # fmt: skip
from tests.prints.papers import boxes_of, fonts_of, has_ink_at_edges, letters_of, pages_of, size_of, text_of

WORDS = words_from_texts()
LINK = "https://t.example/tureen_demo_bot?start=p_k7"
NINE = ("milk", "egg", "fish", "shellfish", "tree-nut", "peanut", "wheat", "soy", "sesame")
THIRTY = (*NINE, *(f"nut-{n}" for n in range(21)))


@dataclass(frozen=True)
class Listing:
    contains: frozenset[str] = frozenset()
    may_contain: frozenset[str] = frozenset()
    basis: str = "cook"
    breaks: frozenset[str] = frozenset()
    may_break: frozenset[str] = frozenset()
    holds: frozenset[str] = frozenset()
    unknown_ingredients: tuple[str, ...] = ()


def listing(promise: Promise) -> Listing:
    return Listing(frozenset({"milk", "wheat"}), frozenset({"sesame"}))


def everything(potluck, plan) -> dict[str, bytes]:
    return {
        "run sheet": prints.run_sheet(potluck, plan, WORDS, link=LINK),
        "cards": prints.table_cards(potluck, plan, WORDS, listed=listing),
        "bar menu": prints.bar_menu(potluck, plan, WORDS, listed=listing, link=LINK),
        "shopping": prints.shopping_list(potluck, plan, WORDS, link=LINK),
        "tags": prints.name_tags(potluck, plan, WORDS),
    }


def test_paper_is_us_letter_or_a4_by_the_potlucks_units(tmp_path: Path) -> None:
    # ANSI/ASME Y14.1: 8.5 x 11 in = 612 x 792 pt. ISO 216: 210 x 297 mm = 595.28 x 841.89 pt.
    for units, size in (("us", (612, 792)), ("metric", (595.28, 841.89))):
        potluck, plan = with_kitchen(with_bar(a_potluck(9, units=units)))
        for name, pdf in everything(potluck, plan).items():
            assert size_of(pdf, tmp_path) == pytest.approx(size, abs=0.5), name


def test_paper_is_set_in_the_shipped_fonts_only(tmp_path: Path) -> None:
    # A letter our fonts lack would be taken from another face, or show as an empty box.
    potluck, plan = with_kitchen(with_bar(with_needs(a_potluck(12))))

    for name, pdf in everything(potluck, plan).items():
        assert {f for f in fonts_of(pdf, tmp_path) if not f.startswith("Noto")} == set(), name


def test_paper_passes_the_setters_own_check_for_pdf_ua_with_names_in_eight_scripts() -> None:
    # PDF/UA-1 (ISO 14289-1): tagged, titled, pictures with words for them, and no glyph missing from its font.
    potluck, plan = with_kitchen(with_bar(with_needs(a_potluck(12))))
    write = Writer(potluck, WORDS)
    for template, data in (
        ("cards", cards_data(potluck, write, listing)),
        ("bar_menu", bar_menu_data(potluck, plan, write, listing, LINK)),
        ("name_tags", name_tags_data(potluck, write)),
        ("shopping", shopping_data(potluck, plan, write, LINK)),
        ("run_sheet", run_sheet_data(potluck, plan, write, LINK)),
    ):
        assert render.paper(template, data, "en", standard="ua-1").startswith(b"%PDF"), template


def test_the_check_for_missing_glyphs_can_fail() -> None:
    potluck = a_potluck(1)
    potluck = replace(potluck, guests=(replace(potluck.guests[0], name="\U0001b170"),))  # Nushu: no font of ours has it

    with pytest.raises(typst.TypstError):
        render.paper("name_tags", name_tags_data(potluck, Writer(potluck, WORDS)), "en", standard="ua-1")


def test_names_in_latin_greek_and_cyrillic_come_back_from_the_paper(tmp_path: Path) -> None:
    potluck, plan = with_kitchen(with_bar(a_potluck(9)))

    for pdf in (prints.run_sheet(potluck, plan, WORDS), prints.name_tags(potluck, plan, WORDS)):
        text = text_of(pdf, tmp_path)
        for name in ("Inés Łukasiewicz", "Ελένη Παπαδοπούλου", "Юлия Щукина", "王小明"):
            assert name in text


def test_the_run_sheet_tells_each_dish_its_place_heat_and_end(tmp_path: Path) -> None:
    potluck, plan = with_kitchen(a_potluck(9))

    text = text_of(prints.run_sheet(potluck, plan, WORDS), tmp_path).replace("\u00a0", " ")

    assert "3:00 PM" in text
    assert "Roast squash: Oven at 400 °F, until 3:40 PM" in text
    assert "Oven: from 400 °F to 325 °F, ready by 3:50 PM" in text
    assert "must reach 165 °F" in text


def test_a_card_says_who_listed_what_it_contains(tmp_path: Path) -> None:
    potluck = a_potluck(1)
    for basis, words in (
        ("cook", "Contains, as listed by the cook: milk, wheat"),
        ("usual recipe", "The usual recipe contains: milk, wheat"),
    ):
        listed = Listing(frozenset({"milk", "wheat"}), frozenset({"sesame"}), basis)

        text = text_of(prints.table_cards(potluck, a_plan(potluck), WORDS, listed=lambda _, x=listed: x), tmp_path)

        assert words in text
        assert "May also contain: sesame" in text
        assert ("Ask Inés Łukasiewicz before you eat" in text) == (basis != "cook")


def test_a_card_about_which_nothing_is_known_says_so_and_names_whom_to_ask(tmp_path: Path) -> None:
    potluck = a_potluck(1)

    pdf = prints.table_cards(potluck, a_plan(potluck), WORDS, listed=lambda _: Listing(basis="unknown"))

    text = text_of(pdf, tmp_path)
    assert "Nobody has listed what is in this dish" in text
    assert "Ask Inés Łukasiewicz" in text


def test_no_card_says_a_dish_is_safe_or_free_of_anything(tmp_path: Path) -> None:
    potluck = with_needs(a_potluck(9))

    text = text_of(prints.table_cards(potluck, {}, WORDS, listed=lambda _: Listing()), tmp_path).lower()

    assert "safe" not in text
    assert "gluten" not in text
    assert "vegan" in text
    assert text.count("free of") == text.count("promised to be free of anything")


def _card_text(what: Listing, folder: Path) -> str:
    potluck = a_potluck(1)
    return text_of(prints.table_cards(potluck, {}, WORDS, listed=lambda _: what), folder)


def test_a_diet_that_may_be_broken_is_not_on_the_card(tmp_path: Path) -> None:
    text = _card_text(Listing(breaks=frozenset({"vegan"}), may_break=frozenset({"vegetarian"})), tmp_path)

    assert "pescatarian" in text
    assert "vegan" not in text
    assert "it is vegetarian" not in text


def test_an_ingredient_nobody_knows_is_named_and_ends_every_claim(tmp_path: Path) -> None:
    text = _card_text(Listing(unknown_ingredients=("glimmer root",)), tmp_path)

    assert "glimmer root" in text
    assert "vegan" not in text
    assert "Ask Inés Łukasiewicz" in text


def test_meat_and_alcohol_stand_on_the_card(tmp_path: Path) -> None:
    text = _card_text(Listing(holds=frozenset({"pork", "alcohol", "milk"}), contains=frozenset({"milk"})), tmp_path)

    assert "Made with: pork, alcohol" in text


@pytest.mark.parametrize(
    ("item", "section"),
    [
        ("orange juice", "drinks"),
        ("oranges", "produce"),
        ("peanut butter", "dry"),
        ("butter", "dairy"),
        ("vanilla ice cream", "frozen"),
        ("ice", "frozen"),
        ("hamburger buns", "bakery"),
        ("paper plates", "paper"),
        ("glimmer root", None),
    ],
)
def test_items_are_found_where_a_shop_keeps_them(item: str, section: str | None) -> None:
    assert section_of(item) == section


def test_a_dish_name_of_200_letters_and_thirty_allergens_are_all_on_the_card(tmp_path: Path) -> None:
    name = "".join(chr(ord("a") + n % 26) for n in range(200))
    potluck = a_potluck(1)
    potluck = replace(potluck, promises=(replace(potluck.promises[0], dish=name),))

    pdf = prints.table_cards(potluck, {}, WORDS, listed=lambda _: Listing(frozenset(THIRTY)))

    letters = letters_of(pdf, tmp_path)
    assert letters.count(name) == 2  # both sides of the fold
    shown = [WORDS("prints-need", need=a).replace(" ", "") for a in THIRTY]
    assert all(word in letters for word in shown)
    assert not has_ink_at_edges(pages_of(pdf, tmp_path)[0])


def test_names_of_200_letters_stay_on_every_paper(tmp_path: Path) -> None:
    long = "W" * 200
    potluck, plan = with_kitchen(with_bar(with_needs(a_potluck(3))))
    potluck = replace(
        potluck,
        guests=tuple(replace(g, name=long) for g in potluck.guests),
        promises=tuple(replace(p, dish=long) for p in potluck.promises),
    )
    plan["shopping"] = [{**row, "item": long, "for": [long]} for row in plan["shopping"]]

    for name, pdf in everything(potluck, plan).items():
        if name != "cards":  # their cut and fold lines reach the edge on purpose
            assert not any(has_ink_at_edges(p) for p in pages_of(pdf, tmp_path)), name
        assert long in letters_of(pdf, tmp_path), name


def test_the_shopping_list_goes_by_section_with_packages_and_one_sum(tmp_path: Path) -> None:
    potluck = a_potluck(1)

    text = text_of(prints.shopping_list(potluck, a_plan(potluck), WORDS), tmp_path)

    assert text.index("Fruit and vegetables") < text.index("russet potatoes") < text.index("Dairy and eggs")
    assert "3 × 5 lb" in text
    assert "$23.47" in text  # 14.97 + 8.50
    assert "without the lines that have no price" in text


def test_a_price_that_is_ours_says_it_is_a_guess(tmp_path: Path) -> None:
    potluck = a_potluck(1)
    plan = a_plan(potluck)
    guess = WORDS("prints-shopping-estimated")

    assert guess not in text_of(prints.shopping_list(potluck, plan, WORDS), tmp_path)
    plan["shopping"][0]["estimated"] = True
    assert guess in text_of(prints.shopping_list(potluck, plan, WORDS), tmp_path)


def test_the_bar_menu_shows_what_can_be_built_apart_from_what_cannot(tmp_path: Path) -> None:
    potluck = with_bar(a_potluck(5))

    text = text_of(prints.bar_menu(potluck, a_plan(potluck), WORDS, listed=listing), tmp_path)

    assert text.index("The Plotholder") < text.index("One topping short") < text.index("Chilli Night")
    assert "1½ lb" in text.replace("\u00a0", " ")


def test_every_dish_gets_a_tag_to_go_home_with(tmp_path: Path) -> None:
    potluck = with_bar(a_potluck(9))

    text = text_of(prints.name_tags(potluck, {}, WORDS), tmp_path)

    taken = [t for t in potluck.bar.toppings if t.guest] if potluck.bar else []
    assert text.count(WORDS("prints-tags-line")) == len(potluck.promises) + len(taken)


@pytest.mark.parametrize("paper", [prints.name_tags, prints.table_cards])
def test_a_long_word_of_a_name_is_set_smaller_before_it_is_broken(paper: Any, tmp_path: Path) -> None:
    guests = (a_guest(0, name="Anastasiya Konstantinopolskaya-Bezborodko"), a_guest(1), a_guest(2))
    potluck = a_potluck(1, guests=guests, promises=(a_promise(0, dish="Grandmother's Sauerkrautauflaufspezialitaet"),))

    text = text_of(paper(potluck, a_plan(potluck), WORDS), tmp_path)

    assert "Konstantinopolskaya" in text
    assert "Sauerkrautauflaufspezialitaet" in text


def test_a_long_name_on_a_tag_leaves_its_dish_readable(tmp_path: Path) -> None:
    name = "María de los Ángeles Fernández de Córdoba y Álvarez de las Asturias"
    potluck = a_potluck(1, guests=(a_guest(0, name=name), *a_potluck().guests[1:]))

    boxes = boxes_of(prints.name_tags(potluck, a_plan(potluck), WORDS), tmp_path)
    top, bottom = re.search(r'yMin="([\d.]+)" xMax="[\d.]+" yMax="([\d.]+)">chilli<', boxes).groups()

    assert float(bottom) - float(top) > 9, "points, about the letters' size"


def test_the_code_has_the_quiet_zone_of_four_modules_the_standard_asks_for() -> None:
    # ISO/IEC 18004: a symbol of version v has 17 + 4 v modules a side; the quiet zone is 4 modules wide.
    import segno

    modules = segno.make(LINK, error="m", micro=False).symbol_size(border=0)[0]

    assert f'width="{modules + 8}"' in qr_svg(LINK)
    assert qr_svg(None) == ""


def test_the_code_on_paper_reads_module_by_module_as_the_encoder_made_it(tmp_path: Path) -> None:
    import segno

    potluck = a_potluck(1)
    page = pages_of(prints.shopping_list(potluck, a_plan(potluck), WORDS, link=LINK), tmp_path, dpi=300)[0]
    matrix = [list(row) for row in segno.make(LINK, error="m", micro=False).matrix]

    # The code is the only thing printed in the top right corner; the words under it begin below 39 mm.
    wide = page.size[0]
    corner = page.crop((wide - 600, 0, wide, round(38 / 25.4 * 300))).point(lambda v: 255 if v < 128 else 0)
    left, top, right, bottom = corner.getbbox()
    side = len(matrix)
    step_x, step_y = (right - left) / side, (bottom - top) / side
    read = [
        [int(corner.getpixel((int(left + (x + 0.5) * step_x), int(top + (y + 0.5) * step_y))) > 0) for x in range(side)]
        for y in range(side)
    ]

    assert read == matrix


def test_a_topping_of_pork_says_so_on_the_bars_menu(tmp_path: Path) -> None:
    potluck = with_bar(a_potluck(5))
    pork = Listing(holds=frozenset({"pork"}), basis="usual recipe")

    text = text_of(prints.bar_menu(potluck, a_plan(potluck), WORDS, listed=lambda _: pork), tmp_path)

    assert text.count("Made with: pork") == len(potluck.bar.toppings) + 1, "the base stands on it too"


def test_the_same_plan_gives_the_same_paper() -> None:
    potluck, plan = with_kitchen(with_bar(a_potluck(5)))

    assert everything(potluck, plan) == everything(potluck, plan)


def test_everything_is_written_into_one_folder(tmp_path: Path) -> None:
    potluck, plan = with_kitchen(with_bar(with_needs(a_potluck(9))))

    files = prints.write_all(potluck, plan, tmp_path / "out", WORDS, now=START, listed=listing, link=LINK)

    assert {f.name for f in files} == {f.name for f in (tmp_path / "out").iterdir()}
    assert {f.suffix for f in files} == {".png", ".pdf", ".ics"}


def test_a_potluck_of_nobody_prints_without_a_fault(tmp_path: Path) -> None:
    potluck = replace(a_potluck(0), guests=(), title="", place="", host=None)

    assert len(prints.write_all(potluck, {}, tmp_path, WORDS, now=START, listed=listing)) == 7
