"""Money, hosting, dishes thrown out and pots, said in words."""

from tests.capabilities.conftest import board, press, say, until

COMING = (board("ravi", "2 of us, bringing lasagna for 12"), board("mei", "coming, plates for 24"))
DAY = until("2027-09-18T12:00")
AFTER = until("2027-09-18T18:30")


async def test_sums_in_one_sentence_are_noted_for_whoever_paid_them(play):
    played = await play(*COMING, board("ines", "bought drinks 36 dollars and ravi paid 12 for cheese"))

    assert [(p["guest"], p["amount"]["amount"]) for p in played.state["payments"]] == [
        ("ines", "36.00"),
        ("ravi", "12.00"),
    ]


async def test_the_host_names_a_co_host_in_words(play):
    played = await play(*COMING, board("ines", "mei is my cohost"))

    assert played.state["cohosts"] == ["mei"]


async def test_who_is_asked_to_take_over_does_so_by_a_press_and_the_old_hosts_place_is_named(play):
    at_mine = board("ines", "/where my place")

    played = await play(*COMING, at_mine, board("ines", "mei, can you take over?"), press("mei", "Mei is the host"))

    assert (played.state["host"], "Inés’s place" in played.last()) == ("mei", True)


async def test_nobody_becomes_host_by_offering_alone(play):
    played = await play(*COMING, board("ravi", "i'll take over"))

    assert played.state["host"] == "ines"
    assert "Ravi offers to take over" in played.last()


async def test_what_was_thrown_out_is_off_the_list_and_the_rest_of_the_message_is_read(play):
    played = await play(*COMING, DAY, board("ravi", "tossed mine. bringing pizza for 12 instead"))

    assert [p["dish"] for p in played.promises("ravi")] == ["pizza"]


async def test_when_a_dish_goes_in_is_told_from_the_timeline(play):
    heat = say("ravi", "/heat lasagna: oven 50 min at 375")

    played = await play(*COMING, heat, DAY, board("ravi", "so when does my lasagna go in then?"))

    assert "lasagna: oven" in played.last()


async def test_whether_a_dish_is_for_somebody_is_told_to_the_host_alone(play):
    need = say("mei", "/needs vegan", **{"in": "private"})
    opened = (say("mei", "/start", **{"in": "private"}), say("ines", "/start", **{"in": "private"}))

    played = await play(
        *COMING, *opened, need, board("ines", "is the lasagna ok for mei?"), board("ravi", "is the lasagna ok for mei?")
    )

    assert "For Mei" in played.last("ines")
    assert "vegan" not in " ".join(played.texts()).casefold()


async def test_whose_pot_it_is_brings_the_list_of_what_waits(play):
    played = await play(*COMING, AFTER, board("tom", "whose blue bowl is this?"))

    assert "lasagna → Ravi" in played.last()


async def test_a_dish_thrown_out_after_it_was_spoken_of_leaves_the_table_and_its_successor_comes(play):
    played = await play(
        say("ines", "/settings language es"),
        board("ravi", "ensaladilla para 12"),
        until("2027-09-18T15:00"),
        say("ravi", "se quedó la nevera abierta toda la noche, la ensaladilla estaba dentro"),
        say("ravi", "vale, la tiro. hago una ensalada de tomate para 10"),
        first={"bot_sees_all": True},
    )

    assert [p["dish"] for p in played.promises("ravi")] == ["ensalada de tomate"]


async def test_throwing_something_out_with_no_food_spoken_of_takes_no_dish_away(play):
    played = await play(
        board("ravi", "chili for 12"),
        until("2027-09-18T15:00"),
        say("ravi", "that old chair? i'll throw it out"),
        first={"bot_sees_all": True},
    )

    assert [p["dish"] for p in played.promises("ravi")] == ["chili"]
