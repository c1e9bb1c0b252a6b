"""What is reckoned with is the host's to set, and the plan follows it."""

from tests.capabilities.conftest import press, say


async def test_the_odds_are_explained_in_one_line(play):
    played = await play(say("ravi", "/reckon"))

    assert "common practice, no source" in played.last()


async def test_the_hosts_own_odds_move_the_headcount(play):
    lines = (press("ravi", "Maybe", on="board"), press("mei", "Maybe", on="board"))
    first = {"from": "ines", "say": "/potluck Sat 18 Sep 5pm"}
    usual = await play(first, *lines, opened=False, plan=True)
    sure = await play(first, *lines, say("ines", "/reckon maybe 100"), opened=False, plan=True)

    assert sure.plan["headcount"]["expected"] > usual.plan["headcount"]["expected"]
    assert sure.plan["headcount"]["odds"]["maybe"] == 1
    assert "host's own figures" in sure.plan["headcount"]["why"]


async def test_a_surer_table_has_more_on_it(play):
    low = await play(say("ines", "/reckon level 60"), plan=True)
    high = await play(say("ines", "/reckon level 99"), plan=True)

    assert high.plan["headcount"]["at_service_level"] > low.plan["headcount"]["at_service_level"]


async def test_a_hearty_crowd_is_given_more(play):
    def main(played):
        return next(r["target_servings"] for r in played.plan["menu"] if r["category"] == "main")

    usual, hearty = await play(plan=True), await play(say("ines", "/reckon hearty"), plan=True)

    assert main(hearty) > main(usual)


async def test_a_guest_sets_nothing_and_a_wrong_figure_is_refused(play):
    played = await play(say("ravi", "/reckon yes 10"), say("ines", "/reckon yes 300"), say("ines", "/reckon level 100"))

    assert played.state["answer_odds"] is None
    assert played.state["service_level"] == 0.9
