"""The potluck file: read, refused with one line for each fault, written back the same."""

import json
from dataclasses import replace
from datetime import UTC, datetime

import pytest
from hypothesis import given

from planning import potluck_file
from planning.potluck_file import Faults
from tests.strategies import potlucks

NOW = datetime(2027, 9, 10, 14, tzinfo=UTC)
LEAST = {"starts_at": "2027-09-18T17:00", "timezone": "America/Chicago", "guests": []}


def faults(**more) -> list[str]:
    with pytest.raises(Faults) as caught:
        potluck_file.read({**LEAST, **more})
    return [f.key for f in caught.value.faults]


def whole(potluck):
    """Without the names of people who are not there, which a file may not have."""
    known = {g.id for g in potluck.guests}
    return replace(
        potluck,
        host=potluck.host if potluck.host in known else None,
        payments=tuple(p for p in potluck.payments if p.guest in known),
        declined=tuple(d for d in potluck.declined if d.guest in known),
    )


@given(potlucks().map(whole))
def test_what_is_written_is_read_back_the_same(potluck):
    document = json.loads(json.dumps(potluck_file.write(potluck, NOW)))

    read, now, warnings = potluck_file.read(document)

    assert json.loads(json.dumps(potluck_file.write(read, now))) == document
    assert warnings == ()


def test_a_start_a_zone_and_guests_are_enough_and_now_is_a_week_before():
    potluck, now, _ = potluck_file.read(LEAST)

    # 17:00 in Chicago in September is 22:00 UTC (IANA: America/Chicago, daylight time, UTC-5).
    assert potluck.starts_at == datetime(2027, 9, 18, 22, tzinfo=UTC)
    assert now == datetime(2027, 9, 11, 22, tzinfo=UTC)


def test_a_skipped_hour_is_moved_forward_and_a_doubled_one_is_the_first():
    # Clocks in Chicago: 14 March 2027 02:00 -> 03:00, 7 November 2027 02:00 -> 01:00 (IANA database).
    skipped, _, _ = potluck_file.read({**LEAST, "starts_at": "2027-03-14T02:30"})
    doubled, _, _ = potluck_file.read({**LEAST, "starts_at": "2027-11-07T01:30"})

    assert skipped.local(skipped.starts_at).strftime("%H:%M") == "03:30"
    assert doubled.starts_at == datetime(2027, 11, 7, 6, 30, tzinfo=UTC)


@pytest.mark.parametrize(
    ("more", "key"),
    [
        ({"starts_at": None}, "file-missing"),
        ({"starts_at": "next week"}, "file-bad-time"),
        ({"timezone": "Mars/Base"}, "file-unknown-zone"),
        ({"guests": None}, "file-missing"),
        ({"guests": [{"id": "a", "adults": -1}]}, "file-too-low"),
        ({"guests": [{"id": "a", "adults": 1.5}]}, "file-not-whole"),
        ({"guests": [{"id": "a"}, {"id": "a"}]}, "file-doubled-id"),
        ({"guests": [{"name": "nobody"}]}, "file-missing"),
        ({"guests": [{"id": "a", "answer": "perhaps"}]}, "file-unknown-word"),
        ({"promises": [{"id": "p", "guest": "x", "dish": "slaw", "category": "salad"}]}, "file-promise-of-nobody"),
        ({"guests": [{"id": "a"}], "promises": [{"id": "p", "guest": "a", "dish": "slaw", "category": "tasty"}]},
         "file-unknown-word"),
        ({"service_level": 1.5}, "file-service-level"),
        ({"host": "nobody"}, "file-unknown-guest"),
        ({"ends_at": "2027-09-18T16:00"}, "file-ends-before-start"),
        ({"format": 2}, "file-format"),
        ({"guests": "many"}, "file-wrong-type"),
        ({"payments": [{"guest": "x", "amount": {"amount": "3", "currency": "USD"}}]}, "file-payment-of-nobody"),
        ({"history": [{"date": "2027-99-10", "guest": "a", "said": "yes", "came": True}]}, "file-bad-date"),
        ({"guests": [{"id": "a", "adults": 10**400}]}, "file-wrong-type"),
    ],
)  # fmt: skip
def test_a_fault_of_the_schema_is_named(more, key):
    assert key in faults(**more)


def test_all_faults_are_told_at_once():
    assert len(faults(timezone="Mars/Base", guests=[{"id": "a", "adults": -1}, {"id": "a"}])) == 3


def test_unknown_keys_warn_with_their_place():
    _, _, warnings = potluck_file.read({**LEAST, "guests": [{"id": "a", "hat": "red"}], "music": "jazz"})

    assert sorted(str(w.facts["place"]) for w in warnings) == ["guests[0].hat", "music"]


def test_implausible_values_are_left_for_the_plan():
    potluck, _, _ = potluck_file.read(
        {**LEAST, "guests": [{"id": "a"}],
         "promises": [{"id": "p", "guest": "a", "dish": "slaw", "category": "salad", "servings": 10**12,
                       "heat": [{"kind": "oven", "minutes": 40, "temp_f": 3500}]}]}
    )  # fmt: skip

    assert potluck.promises[0].heat[0].temp_f == 3500


def test_who_is_gone_may_have_declined():
    _, _, warnings = potluck_file.read({**LEAST, "declined": [{"guest": "x", "category": "salad"}]})

    assert [w.key for w in warnings] == ["file-declined-by-nobody"]


def test_a_list_instead_of_an_object_is_one_fault():
    with pytest.raises(Faults) as caught:
        potluck_file.read([LEAST])

    assert [f.key for f in caught.value.faults] == ["file-not-object"]
