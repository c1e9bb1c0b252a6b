"""Commits one change after the other and says so, until it is killed: see `test_trouble.py`."""

from __future__ import annotations

import asyncio
import sys

from bot.storage import Batch, NewAction, Post, Store
from planning.potluck import Promise
from tests.storage.helpers import CHAT, NOW, Reminder, later, with_guest, with_promise


async def main(url: str) -> None:
    store = await Store.open(url)
    while True:
        seen = await store.potluck("p1")
        assert seen is not None
        n = seen.revision
        after = with_promise(with_guest(seen.potluck, "1", travel_min=n), Promise(f"d{n}", "1", "rolls", "bread"))
        await store.commit(
            Batch(
                NOW,
                update_id=n,
                changed=((seen, after),),
                actions=(NewAction("p1", "1", NOW, "promised"),),
                posts=(Post(CHAT, "sendMessage", {"n": n}),),
                reminders=(("p1", (Reminder(f"k{n}", later(days=1)),)),),
            )
        )
        sys.stdout.write(f"{n}\n")
        sys.stdout.flush()


asyncio.run(main(sys.argv[1]))
