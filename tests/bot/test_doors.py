"""Links of one person's own: theirs alone, for a while, and of our making."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot import doors
from bot.buttons import Forged, Signer

SIGNER = Signer("1:the-bot")
NOW = datetime(2027, 9, 10, 9, 0, tzinfo=UTC)
PEOPLE = st.integers(1, 2**52 - 1)  # the Bot API: "at most 52 significant bits"
POTLUCKS = st.one_of(st.none(), st.text("abcdefghijkmnpqrstuvwxyz23456789", min_size=6, max_size=12))
KINDS = st.sampled_from(["board", "cal", "door", "eat", "mydata", "needs"])


@given(KINDS, POTLUCKS, PEOPLE, st.timedeltas(timedelta(0), doors.LASTS))
def test_a_link_of_ones_own_opens_what_it_names_while_it_lasts(
    kind: str, potluck: str | None, person: int, later: timedelta
) -> None:
    payload = doors.own(SIGNER, kind, potluck, person, NOW)

    assert doors.opened(SIGNER, payload, person, NOW + later) == doors.Door(kind, potluck)


@given(KINDS, POTLUCKS, PEOPLE)
def test_a_link_fits_what_the_platform_carries_and_names_its_owner(
    kind: str, potluck: str | None, person: int
) -> None:
    payload = doors.own(SIGNER, kind, potluck, person, NOW)

    assert len(payload) <= 64  # the Bot API's deep linking: A-Z, a-z, 0-9, _ and -, up to 64
    assert doors.owner(payload) == person


@given(PEOPLE, PEOPLE)
def test_nobody_elses_link_opens_anything(person: int, other: int) -> None:
    payload = doors.own(SIGNER, "needs", "abcdefgh", person, NOW)
    if other != person:
        with pytest.raises(doors.NotTheirs):
            doors.opened(SIGNER, payload, other, NOW)


@given(st.timedeltas(timedelta(hours=1), timedelta(days=3000)))
def test_an_hour_after_its_time_a_link_opens_nothing(past: timedelta) -> None:
    payload = doors.own(SIGNER, "needs", "abcdefgh", 7, NOW)
    with pytest.raises(doors.Expired):
        doors.opened(SIGNER, payload, 7, NOW + doors.LASTS + past)


@given(st.data())
def test_a_link_with_any_letter_changed_is_not_ours(data: st.DataObject) -> None:
    payload = doors.own(SIGNER, "needs", "abcdefgh", 77, NOW)
    at = data.draw(st.integers(0, len(payload) - 1))
    letter = data.draw(st.sampled_from("abcXYZ0189-_").filter(lambda c: c != payload[at]))
    with pytest.raises(Forged):
        doors.opened(SIGNER, payload[:at] + letter + payload[at + 1 :], 77, NOW)


def test_another_bots_link_is_not_ours() -> None:
    payload = doors.own(Signer("2:another"), "needs", "abcdefgh", 77, NOW)
    with pytest.raises(Forged):
        doors.opened(SIGNER, payload, 77, NOW)


@given(st.text(max_size=64))
def test_a_shared_link_is_nobodys_own(payload: str) -> None:
    if not payload.startswith("my-"):
        assert doors.owner(payload) is None
