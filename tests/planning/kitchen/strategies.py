"""Kitchens nobody has thought of."""

from __future__ import annotations

from hypothesis import strategies as st

from planning.potluck import Circuit, HeatStep, Kitchen, Microwave, Oven, Potluck, Promise, SlowCooker
from tests.planning.kitchen.builders import at, dish, potluck

MINUTES = st.integers(1, 100)


@st.composite
def steps(draw: st.DrawFn) -> tuple[HeatStep, ...]:
    chain: list[HeatStep] = []
    hands = st.integers(0, 15)
    if draw(st.booleans()):
        chain.append(HeatStep("prep", draw(st.integers(1, 45))))
    kind = draw(
        st.sampled_from(["oven", "oven", "oven", "stove", "slow-cooker-low", "microwave", "grill", "cold", "home"])
    )
    if kind == "oven":
        for _ in range(draw(st.integers(1, 2))):
            chain.append(HeatStep("oven", draw(MINUTES), draw(st.sampled_from([325, 350, 360, 375, 400, 425, 450])),
                                  pans=draw(st.integers(1, 3)), hands_min=draw(hands),
                                  movable=draw(st.booleans())))  # fmt: skip
        if draw(st.integers(0, 3)) == 0:
            chain.append(HeatStep("keep-warm", draw(st.integers(5, 60)), draw(st.sampled_from([None, 150, 200]))))
    elif kind == "home":
        chain = [
            HeatStep("oven", draw(MINUTES), 350, at="home"),
            HeatStep("transport", draw(st.integers(1, 50)), at="home"),
        ]
    elif kind == "slow-cooker-low":
        watts = draw(st.none() | st.integers(80, 400))
        own = draw(st.booleans())
        chain.append(HeatStep(kind, draw(st.integers(60, 540)), hands_min=draw(hands), own_appliance=own, watts=watts))
        if draw(st.booleans()):
            chain.append(HeatStep("keep-warm", draw(st.integers(5, 60))))
    elif kind != "cold":
        chain.append(HeatStep(kind, draw(st.integers(1, 40)), hands_min=draw(hands)))
    if kind not in ("cold", "home") and draw(st.booleans()):
        chain.append(HeatStep("rest", draw(st.integers(1, 25))))
    if kind == "cold":
        chain += [HeatStep("prep", draw(st.integers(1, 30))), HeatStep("chill", draw(st.integers(10, 900)))]
    return tuple(chain)


@st.composite
def kitchens(draw: st.DrawFn) -> Kitchen:
    circuits = st.builds(Circuit, st.sampled_from([15.0, 20.0]), st.just(120.0), st.integers(1, 3))
    return Kitchen(
        ovens=tuple(draw(st.lists(st.builds(Oven, st.integers(1, 2), st.integers(1, 2)), min_size=1, max_size=2))),
        burners=draw(st.integers(1, 3)),
        grills=draw(st.integers(0, 1)),
        slow_cookers=tuple(draw(st.lists(st.sampled_from([SlowCooker(), SlowCooker(4, 180)]), max_size=3))),
        microwaves=tuple(draw(st.lists(st.builds(Microwave, st.sampled_from([900, 1200])), max_size=2))),
        circuits=tuple(draw(st.lists(circuits, min_size=1, max_size=3))),
        cooks=draw(st.integers(1, 3)),
    )  # fmt: skip


@st.composite
def kitchen_potlucks(draw: st.DrawFn, most: int = 7) -> Potluck:
    promises: list[Promise] = []
    for number in range(draw(st.integers(1, most))):
        arrives = draw(st.none() | st.sampled_from(["12:00", "15:30", "16:20"]))
        chain = draw(steps())
        serve = draw(st.sampled_from(["hot", "hot", "cold", "room"]))
        promises.append(dish(f"d{number}", *chain, serve=serve, arrives_at=None if arrives is None else at(arrives)))
    return potluck(*promises, kitchen=draw(kitchens()))
