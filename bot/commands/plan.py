"""`plan FILE`: no chat, no database: a potluck file in, the plan out."""

from __future__ import annotations

import argparse
import time

from bot.commands.files import Stop, complain, read_json, write_json


def main(args: argparse.Namespace) -> int:
    from bot import plan_json
    from bot.texts import Voice
    from planning import potluck_file
    from planning.plan import plan

    try:
        document = read_json(args.file)
        potluck, now, warnings = potluck_file.read(document)
        voice = Voice(zone=potluck.zone, units=potluck.units)
        for warning in warnings:
            complain(f"{args.file}: {voice.plain(warning.key, **warning.facts)}")
        made = plan(potluck, now, effort=args.effort, seed=args.seed, seconds=args.seconds, clock=time.monotonic)
        write_json(plan_json.write(made, potluck, now, voice), args.out)
    except potluck_file.Faults as faults:
        voice = Voice()
        complain(*(f"{args.file}: {voice.plain(f.key, **f.facts)}" for f in faults.faults))
        return 2
    except Stop as stop:
        complain(*stop.lines)
        return stop.code
    return 0
