"""For the whole suite: how fast a machine is fails no test, and what takes longest begins first."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import settings

from tests.databases import empty_postgres, postgres, shared_postgres, url

__all__ = ["empty_postgres", "postgres", "shared_postgres", "url"]

settings.register_profile("suite", deadline=None)
settings.load_profile("suite")

LONGEST_FIRST = (
    "faults/test_kills.py",
    "room/test_page_help.py",
    "faults/test_machine.py",
    "replies/test_properties.py",
    "planning/kitchen/test_rules_hold.py",
    "planning/kitchen/test_odd_files.py",
    "replies/test_floor.py",
    "prints/test_any_words.py",
    "room/test_page.py",
    "room/test_second_client.py",
    "planning/kitchen/test_fixes.py",
    "capabilities/test_food_that_stood.py",
    "capabilities/test_trouble_on_the_day.py",
    "storage/test_round_trip.py",
    "prints/test_pictures.py",
    "replies/test_third_language.py",
    "planning/asks/test_solving.py",
)
"""Where files are shared out among processes, one of these begun last would keep the others waiting at the end."""


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    folder = Path(__file__).parent
    place = {folder / name: n for n, name in enumerate(LONGEST_FIRST)}
    items.sort(key=lambda item: place.get(item.path, len(place)))
