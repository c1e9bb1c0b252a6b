"""Food in some state, in free words: what it is, how it stands, and what the published rules say of it."""

from planning.theday.situation.foods import Food
from planning.theday.situation.reading import MEASURES, Judged, Recent, judge
from planning.theday.situation.verdicts import State, Verdict, verdict

__all__ = ["MEASURES", "Food", "Judged", "Recent", "State", "Verdict", "judge", "verdict"]
