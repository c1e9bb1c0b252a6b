"""`room`: the same bot, handlers and storage, against a loopback server with a page in the browser."""

from __future__ import annotations

import argparse
import asyncio
import signal
import sys
import tempfile
import webbrowser
from importlib import resources
from pathlib import Path
from typing import Any

from bot.commands.files import complain


def main(args: argparse.Namespace) -> int:
    with tempfile.TemporaryDirectory(prefix="tureen-room-") as folder:
        return asyncio.run(_serve(args, Path(folder)))


def before_the_day(script: Path) -> Any:
    """The demo up to where days begin to pass: a visitor finds the potluck still ahead, and the clock to move."""
    from dataclasses import replace

    from bot.room.script import read_script

    whole = read_script(script)
    first_move = next((n for n, line in enumerate(whole.lines) if line.kind == "clock"), len(whole.lines))
    return replace(whole, lines=whole.lines[:first_move])


async def _serve(args: argparse.Namespace, folder: Path) -> int:
    from tzlocal import get_localzone_name

    from bot import log
    from bot.clock import RealClock
    from bot.rehearsed import Rehearsed
    from bot.room.rehearsal import void
    from bot.room.script import ScriptError
    from bot.room.serve import empty_script, serve_room

    log.set_up("error")
    if args.demo:
        script: Any = before_the_day(Path(str(resources.files("bot.room") / "demo" / "supper.jsonl")))
    else:
        script = empty_script(RealClock().now(), get_localzone_name())
    bots: list[Rehearsed] = []

    def make_bot(setup: Any) -> Rehearsed:
        bots.append(Rehearsed(setup, Path(args.db) if args.db else None))
        return bots[-1]

    stop = asyncio.Event()
    loop = asyncio.get_running_loop()
    for sign in (signal.SIGINT, signal.SIGTERM):
        loop.add_signal_handler(sign, stop.set)

    def ready(address: str) -> None:
        sys.stdout.write(f"The room is open: {address}\nStop with Ctrl-C.\n")
        sys.stdout.flush()
        if not args.no_browser:
            webbrowser.open(address)

    try:
        await serve_room(
            script, folder, make_bot, port=args.port, ready=ready, stop=stop,
            progress=lambda text: void(sys.stderr.write(f"{text}\n")),
            decisions=lambda language: bots[-1].decisions(language) if bots else [],
        )  # fmt: skip
    except ScriptError as fault:
        complain(f"{script}: {fault}")
        return 2
    except OSError as fault:
        complain(f"the room can't be opened: {fault.strerror or fault}; choose another --port")
        return 1
    finally:
        for bot in bots:
            await bot.close()
    return 0
