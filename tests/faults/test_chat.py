"""Any interleaving of people, presses, repeated updates and forgeries keeps what people said."""

from hypothesis import HealthCheck, settings

from tests.faults.chat_machine import ChatMachine
from tests.faults.fuzz import fuzz

TestChat = ChatMachine.TestCase
TestChat.settings = settings(
    max_examples=12, stateful_step_count=20, deadline=None, suppress_health_check=list(HealthCheck)
)


def test_updates_with_anything_in_them_and_of_any_shape_crash_nothing_stop_nothing_and_leak_nothing() -> None:
    stage = fuzz(100)

    assert stage.fed >= 200
    assert stage.done == stage.fed
    assert stage.odd > 0
