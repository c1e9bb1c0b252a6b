"""Each section of the plan: a chat message changes it, and the chat shows the consequence."""

import re

from tests.capabilities.conftest import board, press, say, until


async def test_headcount_an_answer_moves_the_number_planned_for(play):
    before = await play(say("ines", "/size 4"), say("ines", "/missing"), plan=True)
    after = await play(say("ines", "/size 4"), board("ravi", "there are 9 of us"), say("ines", "/missing"), plan=True)

    assert after.plan["headcount"]["at_service_level"] > before.plan["headcount"]["at_service_level"]
    assert f"For {after.plan['headcount']['at_service_level']} people" in after.last()


async def test_menu_a_promise_lowers_what_is_short(play):
    played = await play(say("ravi", "/bring green bean casserole for 12"), plan=True)

    side = next(r for r in played.plan["menu"] if r["category"] == "side")
    assert side["promised_servings"] == 12
    assert f"short by {round(side['short_servings'])}" in next(
        line for line in played.board.splitlines() if line.startswith("side dish")
    )


async def test_portions_the_amount_of_a_thing_follows_the_headcount_and_names_its_source(play):
    few = await play(say("ines", "/size 10"), say("ines", "/amount ice"))
    many = await play(say("ines", "/size 80"), say("ines", "/amount ice"))

    def pounds(text: str) -> float:
        return float(re.search(r": ([\d.]+)", text)[1])

    assert pounds(many.last()) > pounds(few.last())
    assert "Source: " in few.last()


async def test_diets_what_a_cook_lists_decides_what_is_fit_for_a_need(play):
    private = {"in": "private"}
    played = await play(
        say("ravi", "/bring slaw for 12"), say("ravi", "/contains slaw: cabbage, carrots, vinegar"),
        say("tom", "/bring pasta salad for 12"), say("tom", "/contains pasta salad: wheat pasta, peanuts"),
        press("mei", "Coming", on="board"), say("mei", "/start @link", **private),
        press("mei", "no peanut", **private), say("mei", "/eat", **private), plan=True,
    )  # fmt: skip

    told = played.last("mei")
    assert "nothing listed in slaw" in told
    assert "Not for you: pasta salad" in told
    assert told.count("pasta salad") == 1
    assert "safe" not in told.casefold()


async def test_asks_a_promise_takes_its_gap_off_the_list_of_asks(play):
    lines = (say("ines", "/size 8"), press("mei", "Coming", on="board"))
    before = await play(*lines, say("ines", "/asks"), plan=True)
    after = await play(*lines, say("tom", "/bring lasagna for 20"), say("ines", "/asks"), plan=True)

    assert "main" in {a["category"] for a in before.plan["asks"]}
    assert "main" not in {a["category"] for a in after.plan["asks"]}
    assert "(main dish)" in before.last()
    assert "(main dish)" not in after.last()


async def test_bar_a_topping_changes_what_is_still_needed(play):
    played = await play(
        say("ines", "/bar taco"), say("ravi", "/bar"), press("ravi", "★", on="last"), say("mei", "/bar"), plan=True
    )

    taken = [t["name"] for t in played.state["bar"]["toppings"] if t["guest"] == "ravi"]
    assert len(taken) == 1
    assert all(taken[0] not in c["missing"] for c in played.plan["bar"]["combos"])
    assert f"• {taken[0]}" in played.last()


async def test_kitchen_what_can_not_be_heated_is_told_with_a_way_out(play):
    played = await play(
        say("ines", "/kitchen 0 ovens, 0 microwaves"),
        say("ravi", "/bring lasagna for 12"), say("ravi", "/heat lasagna: 60 minutes at 350"),
        say("mei", "/bring corn bread for 12"), say("mei", "/heat corn bread: 425 for 20 minutes in the oven"),
        say("ines", "/kitchen"), plan=True,
    )  # fmt: skip

    assert played.plan["kitchen"]["conflicts"]
    assert played.plan["kitchen"]["conflicts"][0]["why"] in played.last()
    assert played.plan["kitchen"]["conflicts"][0]["fix"]["text"] in played.last()


async def test_kitchen_a_heat_step_stands_in_the_timeline(play):
    played = await play(
        say("ravi", "/bring lasagna for 12"), say("ravi", "/heat lasagna: 60 minutes at 350"), say("ines", "/kitchen")
    )

    assert "lasagna: oven" in played.last()
    assert "350 °F" in played.last()


async def test_shopping_what_somebody_brings_need_not_be_bought(play):
    before = await play(say("ines", "/shopping"), plan=True)
    after = await play(say("ravi", "/bring cups for 60"), say("ines", "/shopping"), plan=True)

    assert "cups" in before.last()
    assert "cups" not in after.last()


async def test_evening_out_a_payment_shows_who_owes_whom(play):
    played = await play(press("ravi", "Coming", on="board"), say("ines", "/paid 20 charcoal"), plan=True)

    assert played.plan["evening_out"] == [
        {"from": "ravi", "to": "ines", "amount": {"amount": "10.00", "currency": "USD"}}
    ]
    assert "Ravi gives Inés $10.00" in played.last()


async def test_safety_a_dish_on_the_table_gets_its_deadline(play):
    played = await play(
        say("ravi", "/bring slaw for 12"), until("2027-09-18T17:05"), say("ravi", "/out slaw"), plan=True
    )

    # Two hours, indoors: safety.csv TIME-01 (FDA advice, a secondary copy).
    assert "by 7:05 PM" in played.last()
    assert any(s["rule"] == "TIME-01" for s in played.plan["safety"])


async def test_reminders_a_promise_brings_its_reminder(play):
    played = await play(say("ravi", "/bring slaw for 12"), plan=True)

    assert [
        (r["kind"], r["due_at"][:16]) for r in played.plan["reminders"] if r["to"] == "ravi" and r["kind"] == "bring"
    ] == [("bring", "2027-09-18T09:00")]
