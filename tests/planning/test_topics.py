"""Asked who says so in everyday words, the right row of the table answers, in English and Spanish."""

from __future__ import annotations

import pytest

from planning import tables
from planning.safety.topics import names, rules_about
from planning.safety.why import because
from tests.planning.kitchen.builders import WEEK_BEFORE, potluck

ROWS = {row["id"] for row in tables.rows("safety")}


@pytest.mark.parametrize(
    ("words", "rule"),
    [
        ("thawing", "THAW-03"), ("descongelar", "THAW-03"), ("honey", "SPEC-09"), ("la miel", "SPEC-09"),
        ("how long may it stand out", "TIME-01"), ("dos horas", "TIME-01"), ("reheating", "REHEAT-01"),
        ("recalentar", "REHEAT-01"), ("slow cooker", "SLOW-03"), ("olla lenta", "SLOW-03"), ("leftovers", "LEFT-03"),
        ("las sobras", "LEFT-03"), ("rice", "SPEC-11"), ("arroz", "SPEC-11"), ("raw egg", "SPEC-04"),
        ("huevo crudo", "SPEC-04"), ("power cut", "POWER-01"), ("apagón", "POWER-01"), ("ill cook", "ILL-01"),
        ("circuits", "ELEC-03"), ("vatios", "ELEC-03"), ("kidney beans", "SLOW-18"), ("choking", "CHOKE-01"),
    ],
)  # fmt: skip
def test_everyday_words_find_the_rule(words: str, rule: str) -> None:
    assert rule in [one.rule for one in because(potluck(), WEEK_BEFORE, None, words)]


def test_what_no_rule_is_about_finds_none() -> None:
    assert rules_about("balloons") == ()


def test_every_topic_names_rows_of_the_table_and_is_found_by_its_name() -> None:
    for row in tables.rows("words_topics"):
        assert set(row["rules"].split("|")) <= ROWS
        for name in (row["name_en"], row["name_es"]):
            assert rules_about(name), name
    assert len(names("es")) == len(names("en")) == len(set(names("en")))
