"""`rehearse SCRIPT --out DIR`: a script of chat lines through the same bot, on a simulated clock."""

from __future__ import annotations

import argparse
import asyncio
import sys
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from bot.commands.files import complain, write_json


def main(args: argparse.Namespace) -> int:
    return asyncio.run(play(Path(args.script), Path(args.out)))


async def play(script: Path, out: Path, progress: Any = None) -> int:
    from bot import log
    from bot.rehearsed import Rehearsed
    from bot.room.rehearsal import rehearse, void

    log.set_up("error")
    out.mkdir(parents=True, exist_ok=True)
    held: list[Rehearsed] = []

    def make_bot(setup: Any) -> Rehearsed:
        held.append(Rehearsed(setup))
        return held[-1]

    async def state(path: Path, people: Mapping[int, str]) -> None:
        write_json(await held[-1].state(people), path)

    async def plan(path: Path, people: Mapping[int, str]) -> None:
        write_json(await held[-1].plan(people), path)

    async def prints(folder: Path, people: Mapping[int, str]) -> None:
        await held[-1].prints(folder, people)

    async def language() -> str:
        return await held[-1].language() if held else "en"

    say = progress or (lambda text: void(sys.stderr.write(f"{text}\n")))
    code = await rehearse(script, out, make_bot, state, plan, prints, say, lambda text: complain(text), language)
    if held:
        await held[-1].close()
    return code
