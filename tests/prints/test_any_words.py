from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

from babel import localedata
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from bot import prints
from bot.prints.say import Writer, apart
from bot.prints.table import table_data
from tests.prints.builders import START, with_bar, with_kitchen, with_needs, words_from_texts
from tests.prints.builders import a_potluck as a_potluck_of
from tests.prints.papers import image_of
from tests.prints.test_paper import listing

WORDS = words_from_texts()

tricky = st.sampled_from(
    [
        "#panic()",
        "$x$ *bold* _i_ `raw` <label> @ref",
        '"quote" \\ [b] {c}',
        "\u202eevil",
        "\x00\x1b\ufffe",
        "\ud800",
        "a\nb\r\n\tc",
        "👩‍👩‍👧‍👦" * 20,
        "ﷺ" * 60,
        "é" * 90,
        "{ $name }",
        "//",
        "/* */",
        "́" * 100,
        "",
    ]
)
any_text = st.one_of(st.text(st.characters(exclude_categories=()), max_size=60), tricky)


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(any_text, any_text, any_text)
def test_any_names_at_all_print(title: str, name: str, dish: str) -> None:
    potluck, plan = with_kitchen(with_bar(with_needs(a_potluck_of(3))))
    potluck = replace(
        potluck,
        title=title,
        place=dish,
        guests=tuple(replace(g, name=name) for g in potluck.guests),
        promises=tuple(replace(p, dish=dish, quantity=name, servings=None) for p in potluck.promises),
    )
    plan["shopping"] = [{"item": dish, "section": name, "need": title, "packages": None, "cost": None, "for": name}]

    assert image_of(prints.table_picture(potluck, plan, WORDS)).size[0] > 1000
    assert image_of(prints.timeline_picture(potluck, plan, WORDS)).size[0] > 1000
    for pdf in (
        prints.table_cards(potluck, plan, WORDS, listed=listing),
        prints.bar_menu(potluck, plan, WORDS, listed=listing),
        prints.shopping_list(potluck, plan, WORDS),
        prints.name_tags(potluck, plan, WORDS),
        prints.run_sheet(potluck, plan, WORDS),
    ):
        assert pdf.startswith(b"%PDF")


minutes = st.integers(-3000, 3000)


@settings(max_examples=25, deadline=None)
@given(
    st.lists(
        st.tuples(
            st.sampled_from(["oven:0", "oven:1", "burner:0", "slow-cooker:0", "own:oven", "home", None]),
            minutes,
            st.integers(0, 900),
            st.one_of(st.none(), st.floats(100, 5000)),
            st.sampled_from(["p0", "p1", "gone"]),
        ),
        max_size=12,
    ),
    minutes,
)
def test_any_timeline_at_all_is_drawn(rows: list, now: int) -> None:
    potluck, plan = with_kitchen(a_potluck_of(3))
    steps = [
        {
            "promise": promise,
            "kind": "oven" if appliance else "prep",
            "appliance": appliance,
            "start": (START + timedelta(minutes=at)).isoformat(),
            "end": (START + timedelta(minutes=at + long)).isoformat(),
            "temp_f": temp,
        }
        for appliance, at, long, temp, promise in rows
    ]
    plan["kitchen"] = {"status": "feasible", "steps": steps}

    png = prints.timeline_picture(potluck, plan, WORDS, now=START + timedelta(minutes=now))

    assert image_of(png).size[0] > 1000


def test_nothing_is_shortened_by_a_voice_that_shortens_for_the_chat() -> None:
    def curt(key: str, /, **facts: object) -> str:
        return WORDS(key, **{name: v[:20] if isinstance(v, str) else v for name, v in facts.items()})

    potluck, plan = with_kitchen(with_bar(with_needs(a_potluck_of(12))))
    potluck = replace(potluck, promises=tuple(replace(p, dish=f"{p.id} " + "x" * 80) for p in potluck.promises))
    plan["diets"] = [{**row, "safe_promises": [], "ask_first": []} for row in plan["diets"]]

    [(entry, _)] = table_data(potluck, plan, Writer(potluck, curt))["diets"]

    assert all(p.dish in entry["unfit"] for p in potluck.promises if p.category != "supplies")


def test_a_name_that_turns_the_writing_direction_turns_only_itself() -> None:
    assert apart("evil\u202e") == "evil"
    assert apart("\u2067\u2066a") == "a"
    assert apart("שרה") == "\u2068שרה\u2069"


def test_numbers_and_times_can_be_written_in_every_language_there_is() -> None:
    potluck = a_potluck_of(1)

    for language in localedata.locale_identifiers():
        write = Writer(potluck, WORDS, language)
        assert all(part in write.listed("abc") for part in "abc"), language
        assert write.when
        assert write.number(3.5)
        assert write.moment(START - timedelta(days=9))
        assert write.money({"amount": "3.50", "currency": "EUR"})
