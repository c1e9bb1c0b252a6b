"""The kitchen timeline: who does what when, so that everything is hot at once."""

from planning.kitchen.assemble import timeline
from planning.kitchen.result import Conflict, DishTimes, Fix, PlannedStep, Timeline

__all__ = ["Conflict", "DishTimes", "Fix", "PlannedStep", "Timeline", "timeline"]
