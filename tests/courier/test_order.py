"""Taking and sending in order."""

from tests.courier.rig import Rig


async def test_what_is_said_comes_back_in_order(rig: Rig) -> None:
    for n in range(10):
        rig.room.say(rig.ravi, rig.group, f"line {n}")

    await rig.settle()

    assert rig.texts(rig.group) == [f"line {n}" for n in range(10)]
