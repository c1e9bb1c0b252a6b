"""What stands behind a button can't be forged, moved to another chat, or too long."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.buttons import MOST_BYTES, Button, Forged, Signer, base36

SIGNER = Signer("1234:a-token-for-tests")
words = st.text("abcdefghijklmnopqrstuvwxyz0123456789-", min_size=1, max_size=8)


@given(words.filter(str.isalnum), words, st.lists(words, max_size=2), st.integers(-(2**52), 2**52))
def test_what_was_signed_is_read_back(name, potluck, args, chat):
    data = SIGNER.sign(chat, Button("Label", name, tuple(args), potluck=potluck), "")

    pressed = SIGNER.read(chat, data)

    assert (pressed.name, pressed.potluck, pressed.args, pressed.owner) == (name, potluck, tuple(args), None)
    assert len(data.encode()) <= MOST_BYTES


@given(st.integers(1, 2**52), st.integers(-(2**52), 2**52), st.integers(-(2**52), 2**52))
def test_a_button_works_in_its_own_chat_only(owner, chat, other):
    data = SIGNER.sign(chat, Button("Yes", "ans", ("yes",), owner=str(owner)), "abc")

    assert SIGNER.read(chat, data).owner == str(owner)
    if other != chat:
        with pytest.raises(Forged):
            SIGNER.read(other, data)


@given(st.text(max_size=64))
def test_anything_else_is_forged(data):
    with pytest.raises(Forged):
        SIGNER.read(-100, data)


def test_one_letter_changed_is_forged():
    data = SIGNER.sign(-100, Button("Coming", "ans", ("yes",)), "abcdef")

    with pytest.raises(Forged):
        SIGNER.read(-100, data.replace("yes", "yeS"))


def test_another_tokens_button_is_forged():
    data = Signer("5678:another-token-for-tests").sign(-100, Button("Coming", "ans", ("yes",)), "abcdef")

    with pytest.raises(Forged):
        SIGNER.read(-100, data)


def test_what_can_not_be_carried_is_refused_when_it_is_made():
    with pytest.raises(ValueError, match="can't carry"):
        SIGNER.sign(-100, Button("Long", "ans", ("x" * 60,)), "abcdef")


@given(st.integers())
def test_base36_is_read_back_by_python(number):
    assert int(base36(number), 36) == number
