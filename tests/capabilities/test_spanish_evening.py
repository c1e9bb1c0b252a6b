"""A whole small evening in Spanish: what people write is understood and what they read is Spanish."""

import re

import pytest

from tests.capabilities.conftest import board, press, say, until

ENGLISH = re.compile(
    r"\b(?:the|you|your|and|with|for|is|are|what|who|bring|brings|coming|needs?|dish(?:es)?|please|noted|short|oven"
    r"|servings?|listed|contains?|cook|table|missing|somebody|kitchen|minutes|by)\b",
    re.IGNORECASE,
)
OPEN = (
    say("ines", "/settings language es"),
    say("ines", "/potluck sábado 18 de septiembre 17:00, unas 24 personas, en la caseta del huerto"),
)


async def evening(play, *lines, **more):
    return await play(*OPEN, *lines, opened=False, **more)


async def test_the_opening_line_is_read_in_spanish(play):
    played = await evening(play)

    assert played.state["starts_at"].startswith("2027-09-18T17:00")
    assert played.state["expected_people"] == 24
    assert played.state["place"] == "la caseta del huerto"


@pytest.mark.parametrize(
    ("words", "start"),
    [("domingo a las 2 de la tarde", "2027-09-19T14:00"), ("mañana a las 8 de la noche", "2027-09-11T20:00")],
)
async def test_days_and_hours_in_words_are_read(play, words, start):
    played = await evening(play, say("ines", f"/when {words}"))

    assert played.state["starts_at"].startswith(start)


async def test_answers_parties_needs_and_dishes_in_one_message_are_kept(play):
    played = await evening(
        play,
        board("ravi", "vamos 3, dos adultos y una niña de 6, llevo ensalada de papa para 12"),
        board("mei", "llevo lasaña para 10 y soy alérgica al maní"),
    )

    ravi, mei = played.guest("ravi"), played.guest("mei")
    assert (ravi["answer"], ravi["adults"], ravi["children"]) == ("yes", 2, 1)
    assert [n["need"] for n in mei["needs"]] == ["peanut"]
    assert [(p["dish"], p["category"], p["servings"]) for p in played.promises()] == [
        ("ensalada de papa", "salad", 12),
        ("lasaña", "main", 10),
    ]


async def test_what_a_cook_lists_in_spanish_is_found_to_hold_the_allergen(play):
    played = await evening(
        play,
        board("mei", "llevo flan para 10"),
        say("mei", "/contains flan: huevo, leche, azúcar"),
        say("ines", "/table"),
    )

    assert "contiene huevo y leche" in played.last()


async def test_a_dish_without_a_list_is_known_by_its_spanish_name(play):
    played = await evening(play, board("mei", "llevo ensaladilla rusa para 10"), say("ines", "/table"))

    assert "huevo" in played.last()


async def test_a_dish_is_heated_as_its_cook_says_in_spanish(play):
    played = await evening(
        play, board("mei", "llevo lasaña para 10"), say("mei", "/heat lasaña: 40 minutos a 190 °C, tapado")
    )

    (step,) = played.promises("mei")[0]["heat"]
    assert (step["kind"], step["minutes"], step["covered"]) == ("oven", 40, True)


async def test_the_bar_and_the_shopping_list_are_in_spanish(play):
    played = await evening(play, say("ines", "/bar papa al horno"), say("ines", "/bar"), say("ines", "/shopping"))

    assert "papas al horno" in played.last()
    assert played.state["bar"]["base"] == "baked potato"


async def test_nothing_anybody_reads_all_evening_is_english(play):
    played = await evening(
        play,
        board("ravi", "vamos 3, llevo ensalada de papa para 12"),
        press("mei", "Voy", on="board"),
        board("mei", "llevo lasaña para 10 y soy alérgica al maní"),
        board("tom", "quizás, depende del turno"),
        board("tom", "¿qué falta?"),
        board("tom", "¿hay estacionamiento?"),
        say("ravi", "/list"),
        press("ravi", "Llevar algo", on="board"),
        say("ines", "/table"),
        say("ines", "/kitchen"),
        say("mei", "/needs"),
        say("ines", "/asks"),
        until("2027-09-18T14:00"),
        board("ines", "se rompió el horno"),
        board("mei", "llego 20 minutos tarde"),
        until("2027-09-18T17:10"),
        say("ines", "/out lasaña"),
        until("2027-09-18T20:30"),
        say("mei", "/leftovers"),
        until("2027-09-20T11:00"),
    )

    said = [r["text"] for r in played.rows if r["from"] == "bot" and r.get("text")]
    # Titles of sources are quoted as published; commands are the same in every language.
    own = [re.sub(r"\([^()]*(?:\([^()]*\)[^()]*)*\)|/\w+", "", text) for text in said]
    found = [m.group() for text in own for m in ENGLISH.finditer(text)]
    assert found == []


async def test_what_there_is_to_cook_with_and_what_could_be_asked_for_are_said_in_spanish(play):
    played = await evening(
        play,
        board("ines", "un horno con tres rejillas y 5 hornallas"),
        board("ravi", "voy y llevo ceviche para 20"),
        board("mei", "¿el ceviche lleva pescado?"),
        say("ines", "/asks"),
    )

    assert (played.state["kitchen"]["ovens"][0]["racks"], played.state["kitchen"]["burners"]) == (3, 5)
    assert any("pescado" in text and "Suele hacerse con" in text for text in played.texts())
    assert not re.search(r"\b(?:baked|salad|casserole|bread|pulled|rolls|plates)\b", played.last())
