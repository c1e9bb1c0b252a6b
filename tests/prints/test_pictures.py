from __future__ import annotations

import itertools
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace

import pytest
from fontTools.ttLib import TTFont

from bot import prints
from bot.prints.render import HERE
from bot.prints.say import Writer
from bot.prints.table import table_data
from bot.prints.timeline import timeline_data
from planning.potluck import Need
from tests.prints.builders import NAMES, START, a_plan, a_potluck, with_bar, with_kitchen, with_needs, words_from_texts
from tests.prints.papers import has_ink_at_edges, image_of

WORDS = words_from_texts()
PHOTO_SUM, PHOTO_RATIO = 10_000, 20
"""The platform takes a photo when width and height add up to at most 10000 pixels and their ratio is at most 20
(Telegram Bot API, sendPhoto)."""


def _writer(potluck):
    return Writer(potluck, WORDS)


def _table(potluck, plan=None, **options):
    return table_data(potluck, plan or a_plan(potluck), _writer(potluck), **options)


def _blocks(data):
    return [b for column in data["columns"] for b in column]


def _needs(potluck, plan=None, **options):
    return [entry for column in _table(potluck, plan, **options)["diets"] for entry in column]


@pytest.mark.parametrize("promises", [0, 1, 5, 12, 40, 80, 200])
def test_a_table_of_any_size_is_a_photo_the_platform_takes(promises: int) -> None:
    potluck = with_bar(with_needs(a_potluck(promises)))

    wide, high = image_of(prints.table_picture(potluck, a_plan(potluck), WORDS)).size

    assert wide + high <= PHOTO_SUM
    assert high / wide <= PHOTO_RATIO


def test_every_promise_stands_in_the_picture_with_its_cook() -> None:
    potluck = a_potluck(80)

    lines = [(line["dish"], line["who"]) for b in _blocks(_table(potluck)) for line in b["lines"]]

    write = _writer(potluck)
    assert lines == sorted(lines, key=lines.index)
    assert {(p.dish, write.name(p.guest)) for p in potluck.promises} == set(lines)


def test_what_is_missing_is_listed_first_and_in_whole_servings() -> None:
    potluck = a_potluck(1)  # 8 servings of a main; 24 are wanted
    plan = a_plan(potluck)
    plan["menu"] = [{**plan["menu"][0], "short_servings": 15.2}]

    assert _table(potluck, plan)["missing"] == ["Mains: 16 servings"]


def test_nothing_missing_is_said_in_words() -> None:
    potluck = a_potluck(1)
    plan = a_plan(potluck, menu=[])

    assert _table(potluck, plan)["missing_title"] == WORDS("prints-nothing-missing")


@pytest.mark.parametrize(
    ("promised", "target", "short"), [(0, 24, 24), (8, 24, 16), (24, 24, 0), (60, 24, 0), (5, 0, 0)]
)
def test_bars_are_shares_of_the_target(promised: float, target: float, short: float) -> None:
    potluck = a_potluck(1)
    row = {"category": "main", "target_servings": target, "promised_servings": promised, "short_servings": short}

    bar = _blocks(_table(potluck, a_plan(potluck, menu=[row])))[0]

    wanted = target or promised
    assert bar["have"] == pytest.approx(min(1, promised / wanted))
    assert bar["missing"] == pytest.approx(short / wanted)
    assert bar["have"] + bar["missing"] <= 1 + 1e-9
    assert (bar["extra"] > 0) == (target > 0 and promised > target)


def test_a_need_is_tied_to_a_name_only_when_its_owner_wrote_it_openly() -> None:
    potluck = with_needs(a_potluck(12))

    shown = [d["who"] for d in _needs(potluck)]

    assert "Mei: peanuts (allergy)" in shown
    assert not any("Ravi" in who for who in shown)


def test_the_host_sees_whose_need_it_is() -> None:
    potluck = with_needs(a_potluck(12))

    assert any(d["who"].startswith("Ravi") for d in _needs(potluck, for_host=True))


def test_what_does_not_fit_a_need_is_named_in_full_even_when_it_is_long() -> None:
    potluck = with_needs(a_potluck(40))
    plan = a_plan(potluck)
    for row in plan["diets"]:
        row["safe_promises"] = []
        row["ask_first"] = []

    for entry in _needs(potluck, plan):
        assert all(p.dish in entry["unfit"] for p in potluck.promises if p.category != "supplies")


def test_an_unsure_dish_is_never_among_those_that_fit() -> None:
    potluck = with_needs(a_potluck(5))
    potluck = replace(potluck, guests=(replace(potluck.guests[0], needs=(Need("egg", 1, "allergy", True),)),))
    plan = a_plan(potluck)

    (entry,) = _needs(potluck, plan)

    asking, fits = entry["rest"]
    assert potluck.promises[1].dish in asking
    assert potluck.promises[1].dish not in fits


def test_no_picture_calls_a_dish_safe() -> None:
    potluck = with_needs(a_potluck(12))

    assert "safe" not in str(_table(potluck)).lower()


def test_a_topping_that_opens_nothing_by_itself_is_named_with_the_one_that_does() -> None:
    potluck = with_bar(a_potluck(5))
    plan = a_plan(potluck)
    steps = [("cheddar", []), ("bacon bits", ["Hay Barn"]), ("baked beans", ["School Dinner"]), ("salsa", [])]
    plan["bar"]["next_toppings"] = [{"topping": topping, "opens": opens} for topping, opens in steps]

    first, then = _table(potluck, plan)["bar"]["next"]

    assert first == "With cheddar, bacon bits also: Hay Barn"
    assert then == "Then with baked beans also: School Dinner"


def test_the_oven_changes_when_the_last_dish_of_the_old_setting_is_out() -> None:
    potluck, plan = with_kitchen(a_potluck(9))

    dials = [
        (d["time"].replace("\u00a0", " "), d["text"]) for d in timeline_data(potluck, plan, _writer(potluck))["dials"]
    ]

    assert [time for time, _ in dials] == ["2:45 PM", "3:40 PM", "4:40 PM"]  # 3:00 less 15 min; 3:40 out; 4:40 off
    assert "400" in dials[1][1]
    assert "325" in dials[1][1]


def test_metric_kitchens_turn_the_dial_in_celsius() -> None:
    potluck, plan = with_kitchen(a_potluck(9, units="metric"))

    text = " ".join(d["text"] for d in timeline_data(potluck, plan, _writer(potluck))["dials"])

    assert "205\u00a0°C" in text  # 400 °F = 204.4 °C
    assert "165\u00a0°C" in text  # 325 °F = 162.8 °C
    assert "°F" not in text


def test_bars_of_one_appliance_never_cover_each_other() -> None:
    potluck, plan = with_kitchen(a_potluck(9))

    for row in timeline_data(potluck, plan, _writer(potluck))["rows"]:
        for lane in range(row["lanes"]):
            bars = sorted((s["x"], s["x"] + s["w"]) for s in row["steps"] if s["lane"] == lane)
            assert all(a[1] <= b[0] + 1e-9 for a, b in itertools.pairwise(bars))


def test_the_now_line_shows_only_while_the_kitchen_is_at_work() -> None:
    potluck, plan = with_kitchen(a_potluck(9))

    assert timeline_data(potluck, plan, _writer(potluck), START)["now"]
    assert timeline_data(potluck, plan, _writer(potluck), START.replace(month=8))["now"] is None


def test_a_kitchen_that_cannot_work_says_so_with_the_way_out_first() -> None:
    potluck, plan = with_kitchen(a_potluck(9))
    conflict = {"promises": ["p1"], "rule": "oven", "why": "Two roasts, one oven.", "fix": {"text": "Roast at home."}}
    plan["kitchen"] = {**plan["kitchen"], "status": "impossible", "conflicts": [conflict]}

    data = timeline_data(potluck, plan, _writer(potluck))

    assert data["trouble"] == WORDS("prints-kitchen-impossible")
    assert data["conflicts"] == [{"why": "Two roasts, one oven.", "fix": "Roast at home."}]


def test_a_potluck_without_any_kitchen_work_still_has_a_picture() -> None:
    potluck = a_potluck(3)

    assert image_of(prints.timeline_picture(potluck, {}, WORDS)).size[0] > 1000


def test_nothing_in_a_picture_runs_over_its_edge() -> None:
    long = "W" * 200
    potluck, plan = with_kitchen(with_bar(with_needs(a_potluck(9))))
    potluck = replace(
        potluck,
        title=long,
        place=long,
        guests=tuple(replace(g, name=long) for g in potluck.guests),
        promises=tuple(replace(p, dish=long, quantity=long, servings=None) for p in potluck.promises),
    )

    for png in (prints.table_picture(potluck, plan, WORDS), prints.timeline_picture(potluck, plan, WORDS, now=START)):
        assert not has_ink_at_edges(image_of(png).convert("L"), border=12)


def test_the_shipped_fonts_hold_every_letter_of_names_in_eight_scripts() -> None:
    letters = {ord(c) for f in (HERE / "fonts").glob("*.?tf") for c in map(chr, TTFont(f, lazy=True).getBestCmap())}

    assert not [c for name in NAMES for c in name if ord(c) not in letters]


def test_pictures_differ_where_only_the_script_of_a_name_differs() -> None:
    # A script without a font would show the same empty boxes for two names of equal length.
    def picture(name: str) -> bytes:
        potluck = a_potluck(1)
        potluck = replace(potluck, guests=(replace(potluck.guests[0], name=name),))
        return prints.table_picture(potluck, a_plan(potluck), WORDS)

    for one, other in (
        ("王小", "李大"),
        ("שרה", "כהן"),
        ("मान", "वाद"),
        ("فاطم", "زينب"),
        ("👩", "🥔"),
        ("Юля", "Щит"),
    ):
        assert picture(one) != picture(other)


def test_the_same_plan_gives_the_same_bytes_from_many_threads_at_once() -> None:
    potluck = a_potluck(5)
    plan = a_plan(potluck)

    with ThreadPoolExecutor(6) as pool:
        pictures = set(pool.map(lambda _: prints.table_picture(potluck, plan, WORDS), range(12)))

    assert len(pictures) == 1


def test_a_picture_is_also_a_vector_for_the_room() -> None:
    potluck, plan = with_kitchen(a_potluck(9))

    assert b"<svg" in prints.table_picture(potluck, plan, WORDS, svg=True)[:300]
    assert b"<svg" in prints.timeline_picture(potluck, plan, WORDS, svg=True)[:300]


def test_what_ends_on_another_day_than_it_starts_names_that_day() -> None:
    potluck, plan = with_kitchen(a_potluck(3))
    thaw = {"promise": "p0", "kind": "thaw", "appliance": None, "start": "2027-09-16T13:00", "end": "2027-09-18T13:00"}
    plan["kitchen"] = {"status": "feasible", "steps": [thaw]}

    events = timeline_data(potluck, plan, _writer(potluck))["events"]

    thawing = next(e for column in events for e in column if e["kind"] == "work")
    assert thawing["time"].replace("\u00a0", " ") == "Thu 1:00 PM"
    assert "until Sat 1:00" in thawing["text"]


def test_a_late_dish_is_told_once() -> None:
    potluck, plan = with_kitchen(a_potluck(3))
    late = [{"promise": "p0", "late_min": 20}, {"promise": "p1", "late_min": 5}]
    conflict = {"promises": ["p0"], "why": "Bean chilli is late.", "fix": {"text": "Start earlier."}}
    plan["kitchen"] = {**plan["kitchen"], "status": "impossible", "conflicts": [conflict], "dishes": late}

    told = [c["why"] for c in timeline_data(potluck, plan, _writer(potluck))["conflicts"]]

    assert told == ["Bean chilli is late.", WORDS("prints-late", dish="Roast squash", minutes=5)]


def test_every_shipped_font_is_under_the_open_font_licence_whose_text_is_beside_it() -> None:
    fonts = list((HERE / "fonts").glob("*.?tf"))

    assert "SIL OPEN FONT LICENSE Version 1.1" in (HERE / "fonts" / "OFL.txt").read_text("utf-8")
    assert len(fonts) > 20
    for font in fonts:
        licence = TTFont(font, lazy=True)["name"].getDebugName(13) or ""
        assert "SIL Open Font License" in licence, font.name
    assert sum(f.stat().st_size for f in fonts) < 25_000_000


@pytest.mark.parametrize("lang", ["ar", "he", "hi", "zh", "ru", "el", "de", "pt-BR", "xx"])
def test_pictures_and_their_numbers_can_be_in_any_language(lang: str) -> None:
    potluck, plan = with_kitchen(with_bar(with_needs(a_potluck(9))))

    for png in (prints.table_picture(potluck, plan, WORDS, lang), prints.timeline_picture(potluck, plan, WORDS, lang)):
        assert not has_ink_at_edges(image_of(png).convert("L"), border=12)
