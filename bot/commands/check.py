"""`check`: settings, database, migrations, clock and token verified; one line each."""

from __future__ import annotations

import argparse
import asyncio
import sys


def main(args: argparse.Namespace) -> int:
    from bot import log
    from bot.clock import RealClock
    from bot.health import check
    from bot.texts import Voice

    log.set_up("error")
    findings = asyncio.run(check(RealClock()))
    voice = Voice()
    for found in findings:
        mark = "ok " if found.ok else "BAD"
        sys.stdout.write(log.redact(f"{mark} {voice.plain(found.key, **found.facts)}\n"))
    return 0 if all(f.ok for f in findings) else 1
