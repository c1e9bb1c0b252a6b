"""Who could bring what: for every gap the people to ask, with the host's and the shop's way beside them."""

from planning.asks.build import problem_of
from planning.asks.problem import Gap, Person, Problem, Profile, Template
from planning.asks.solve import Solution, greedy, measure, solve
from planning.asks.suggest import asks
from planning.asks.ways import Ask

__all__ = [
    "Ask",
    "Gap",
    "Person",
    "Problem",
    "Profile",
    "Solution",
    "Template",
    "asks",
    "greedy",
    "measure",
    "problem_of",
    "solve",
]
