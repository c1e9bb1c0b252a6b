"""Every conflict, fix, reminder and safety note that the code can name has words."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

import planning.kitchen.asleep
import planning.kitchen.check
import planning.kitchen.conflicts
import planning.kitchen.implausible
import planning.kitchen.thawing
import planning.kitchen.ways
import planning.reminders
import planning.reminders_kitchen
import planning.reminders_out
import planning.safety
from bot.texts import Voice
from planning.kitchen import timeline
from planning.potluck import HeatStep
from tests.planning.kitchen.builders import WEEK_BEFORE, dish, kitchen, oven, potluck

RULES = r'say_conflict\(\s*(?:one|names|\(\)|\(promise\.id,\)),\s*"([a-z-]+)",\s*"([a-z-]+)"'
RULES_SET_APART = ("off-heat", "arrives-late", "too-long", "late")


def source_of(module: object) -> str:
    return Path(str(module.__file__)).read_text("utf-8")  # type: ignore[attr-defined]


def named() -> set[str]:
    keys = set()
    told_by = (planning.kitchen.check, planning.kitchen.implausible, planning.kitchen.asleep, planning.kitchen.thawing)
    for rule, fix in re.findall(RULES, "".join(map(source_of, told_by))):
        keys |= {f"kitchen-{rule}", f"fix-{fix}"}
    keys |= {f"fix-{way}" for way in re.findall(r'Way\(\s*"([a-z-]+)"', source_of(planning.kitchen.conflicts))}
    keys |= {f"fix-{way}" for way in re.findall(r'Way\(\s*"([a-z-]+)"', source_of(planning.kitchen.ways))}
    keys |= {"fix-keep-hot"}
    keys |= {f"kitchen-{rule}" for rule in RULES_SET_APART}
    for module in (planning.reminders, planning.reminders_kitchen, planning.reminders_out):
        keys |= set(re.findall(r'"(reminder-[a-z-]+)"', source_of(module)))
    for path in Path(str(planning.safety.__file__)).parent.glob("*.py"):
        text = path.read_text("utf-8")
        keys |= {f"safety-{k}" for k in re.findall(r'note\(\s*[^()]*?(?:WARN|NOTE|BLOCK|late),?\s*"([a-z-]+)"', text)}
    return keys


def test_many_keys_are_found() -> None:
    assert len(named()) > 110
    assert {"kitchen-asleep", "kitchen-thaw-short", "kitchen-no-slow-cooker", "reminder-out-limit-unsaid"} <= named()


@pytest.mark.parametrize("key", sorted(named()))
def test_a_key_has_words(key: str) -> None:
    assert Voice().has(key)


@pytest.mark.parametrize("temp", [3500.0, 99999.0, 180.0, 30.0, float("nan")])
def test_a_wrong_temperature_is_said_in_a_sentence(temp: float) -> None:
    for conflict in timeline(potluck(dish("bad", oven(30, temp))), WEEK_BEFORE, effort=0).conflicts:
        assert Voice().say(conflict.why).endswith((".", "?"))
        assert Voice().say(conflict.fix.text).endswith((".", "?"))


def test_late_dishes_are_said_in_sentences() -> None:
    stews = (dish(f"stew {n}", HeatStep("slow-cooker-low", 400)) for n in range(2))
    long = dish("roast", oven(900))
    found = timeline(potluck(*stews, long, kitchen=kitchen()), WEEK_BEFORE, effort=0)

    said = [Voice().say(s) for c in found.conflicts for s in (c.why, c.fix.text)]

    assert len(said) >= 4
    assert all(s.endswith(".") for s in said)
