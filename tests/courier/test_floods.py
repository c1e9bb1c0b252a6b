"""A flood through the real client library: what is over is not handled, its sender is told, the operator sees it."""

from __future__ import annotations

from pathlib import Path

import telegram

from bot.floods import PERSON
from tests.courier.rig import Rig
from tests.courier.test_metrics import shown


async def test_a_flood_is_cut_told_once_and_counted(tmp_path: Path) -> None:
    told = []

    async def tell(update: telegram.Update) -> None:
        told.append(update.update_id)

    async with Rig(tmp_path) as rig:
        rig.bot.flooded = tell
        for n in range(PERSON.at_once + 30):
            rig.room.say(rig.ravi, rig.ravi, f"spam {n}")
        rig.room.say(rig.ines, rig.ines, "hello")
        await rig.settle(waits=False)

        assert len(rig.seen) == PERSON.at_once + 1
        assert "hello" in [text for _, text in rig.seen]
        assert len(told) == 1
        assert shown(rig.bot.courier)["tureen_updates_passed_over_total"] == 30
