"""A group in Spanish, and a person who reads another language than their group."""

from tests.capabilities.conftest import board, press, say

PRIVATE = {"in": "private"}


async def test_a_group_that_chose_spanish_reads_the_board_and_the_answers_in_spanish(play):
    played = await play(say("ines", "/settings language es"), press("ravi", "Voy", on="board"))

    assert "Vienen: 2" in played.board
    assert played.answers[-1].startswith("Vienes: 1 adulto")


async def test_a_language_may_be_named_in_its_own_words(play):
    played = await play(say("ines", "/settings language Español"))

    assert "Ajustes de este grupo" in played.last()


async def test_an_unknown_language_is_refused_with_those_there_are(play):
    played = await play(say("ines", "/settings language tlh"))

    assert "English" in played.last()
    assert "Español" in played.last()


async def test_who_reads_another_language_in_private_does_not_change_the_groups(play):
    played = await play(
        say("ravi", "/start", **PRIVATE),
        say("ravi", "/settings language es", **PRIVATE),
        say("ravi", "/list", **PRIVATE),
        press("ravi", "Coming", on="board"),
    )

    assert any("Recibes avisos" in t for t in played.texts("ravi"))
    assert "Coming: 2" in played.board


async def test_in_private_a_spanish_groups_people_are_spoken_to_in_spanish(play):
    played = await play(
        say("ines", "/settings language es"), press("ravi", "Voy", on="board"), say("ravi", "/list", **PRIVATE)
    )

    assert "Vienes: 1 adulto" in played.last("ravi")


async def test_a_reminder_comes_in_the_readers_own_language(play):
    played = await play(
        say("ravi", "/start", **PRIVATE),
        say("ravi", "/settings language es", **PRIVATE),
        press("ravi", "Coming", on="board"),
        say("ravi", "/bring slaw for 12"),
        {"clock": "2027-09-18T10:00"},
    )

    (reminder,) = played.reminders("bring")
    assert "Hoy es el día" in reminder["text"]


async def test_the_host_tells_of_trouble_in_spanish(play):
    played = await play(
        say("ines", "/settings language es"), {"clock": "2027-09-18T14:00"}, board("ines", "se rompió el horno")
    )

    assert "El horno no va" in played.last()


async def test_whoever_has_no_group_with_us_yet_is_answered_in_the_language_they_write(play):
    played = await play(
        say("mei", "/start", **PRIVATE),
        say("mei", "hola, ¿qué puedo llevar a la cena?", **PRIVATE),
        say("mei", "hello, what can I bring to the supper?", **PRIVATE),
    )

    spanish, english = played.texts("mei")[-2:]
    assert "convite tuyo" in spanish
    assert english.startswith("I know of no potluck")
