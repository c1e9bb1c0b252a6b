"""Whatever a file says, there is an answer: a plan for what can be planned, and conflicts for the rest."""

from __future__ import annotations

from datetime import timedelta

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from bot.texts import Voice
from planning.kitchen import timeline
from planning.potluck import Circuit, Guest, HeatStep, Kitchen, Microwave, Oven, Potluck, Promise, SlowCooker
from planning.reminders import reminders
from planning.safety import safety
from tests.planning.kitchen.builders import SERVING, WEEK_BEFORE, potluck

whole = st.sampled_from([-(10**12), -1, 0, 1, 2, 30, 90, 600, 20_000, 10**6, 10**12])
real = st.sampled_from([float("nan"), float("inf"), -float("inf"), -40.0, 0.0, 0.4, 14.0, 180.0, 350.0, 3500.0, 1e12])
kinds = st.sampled_from(["oven", "stove", "slow-cooker-low", "slow-cooker-high", "microwave", "grill", "rest", "prep",
                         "keep-warm", "chill", "thaw", "transport", "serve", "", "fry"])  # fmt: skip
steps = st.builds(
    HeatStep, kinds, whole, st.none() | real, pans=whole, at=st.sampled_from(["venue", "home", "?"]),
    hands_min=whole, movable=st.booleans(), watts=st.none() | whole, own_appliance=st.booleans(),
)  # fmt: skip
instants = st.sampled_from([-4000, -48, -3, -0.3, 0, 1, 30, 4000]).map(lambda h: SERVING + timedelta(hours=h))
promises = st.builds(
    Promise, st.just(""), st.sampled_from(["g", "nobody"]), st.sampled_from(["chili", "turkey", "bread", ""]),
    st.sampled_from(["main", "dessert", "drink"]), servings=st.none() | real,
    quantity=st.sampled_from([None, "", "4 qt", "9" * 200]), heat=st.none() | st.lists(steps, max_size=4).map(tuple),
    arrives_at=st.none() | instants, frozen_lb=st.none() | real, serve=st.sampled_from([None, "hot", "cold"]),
    out_since=st.none() | instants, out_min=real,
)  # fmt: skip
kitchens = st.builds(
    Kitchen,
    ovens=st.lists(st.builds(Oven, whole, whole), max_size=2).map(tuple), burners=whole, grills=whole,
    slow_cookers=st.lists(st.builds(SlowCooker, real, whole), max_size=2).map(tuple),
    microwaves=st.lists(st.builds(Microwave, whole), max_size=2).map(tuple),
    circuits=st.lists(st.builds(Circuit, real, real, whole), max_size=2).map(tuple), cooks=whole,
    awake=st.sampled_from([("07:00", "22:00"), ("22:00", "07:00"), ("25:99", "x"), ("17:00", "17:00")]),
)  # fmt: skip


@st.composite
def odd_potlucks(draw: st.DrawFn) -> Potluck:
    given_ones = draw(st.lists(promises, max_size=4))
    numbered = [Promise(**{**vars(p), "id": f"p{n}"}) for n, p in enumerate(given_ones)]
    guest = Guest("g", "G", travel_min=draw(whole))
    return potluck(*numbered, kitchen=draw(kitchens), guests=(guest,), outdoor_temp_f=draw(st.none() | real),
                   setting=draw(st.sampled_from(["indoor", "outdoor"])))  # fmt: skip


@settings(max_examples=150, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
@given(odd_potlucks(), instants)
def test_odd_values_are_answered_and_said(party: Potluck, now: object) -> None:
    found = timeline(party, WEEK_BEFORE, effort=0)
    again = timeline(party, now, effort=0)  # type: ignore[arg-type]
    voice = Voice()

    sentences = [s for plan in (found, again) for c in plan.conflicts for s in (c.why, c.fix.text)]
    sentences += [n.say for n in safety(party, WEEK_BEFORE, found)]
    sentences += [r.about for r in reminders(party, found, WEEK_BEFORE)]
    assert all(voice.say(s) for s in sentences)
    assert all(s.end >= s.start for s in found.steps)


@settings(max_examples=25, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
@given(odd_potlucks())
def test_odd_values_do_not_upset_the_solver(party: Potluck) -> None:
    assert timeline(party, WEEK_BEFORE, effort=0.02).status in ("optimal", "feasible", "impossible")
