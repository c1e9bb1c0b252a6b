"""`python -m bot COMMAND`, also installed as `tureen COMMAND`."""

from __future__ import annotations

import argparse
import importlib
import sys


def parser() -> argparse.ArgumentParser:
    top = argparse.ArgumentParser(prog="tureen", description="A bot in the group's chat that plans feeding a crowd.")
    commands = top.add_subparsers(dest="command", required=True, metavar="COMMAND")

    commands.add_parser("run", help="the bot on Telegram; settings come from TUREEN_* in the environment")

    room = commands.add_parser("room", help="the same bot against a loopback server, with a chat page in the browser")
    room.add_argument("--port", type=_port, default=0, help="the page's port (default: any free one)")
    room.add_argument("--db", metavar="FILE", help="an SQLite file to keep (default: forgotten at the end)")
    room.add_argument("--demo", action="store_true", help="play the demo supper first")
    room.add_argument("--no-browser", action="store_true", help="print the address, open nothing")

    rehearse = commands.add_parser("rehearse", help="play a script of chat lines on a simulated clock")
    rehearse.add_argument("script", metavar="SCRIPT", help="a *.jsonl file, one object a line")
    rehearse.add_argument("--out", metavar="DIR", required=True, help="where chat.jsonl, state.json, plan.json … go")

    plan = commands.add_parser("plan", help="read a potluck file, write the plan as JSON")
    plan.add_argument("file", metavar="FILE", help="a potluck file (JSON), or - for standard input")
    plan.add_argument("--out", metavar="FILE", help="where to write (default: standard output)")
    plan.add_argument("--effort", type=_positive, default=1.0, metavar="N", help="deterministic budget (default 1)")
    plan.add_argument("--seconds", type=_positive, metavar="S", help="wall-clock backstop")
    plan.add_argument("--seed", type=int, default=0, metavar="N")

    export = commands.add_parser("export", help="write a potluck of a database as JSON, as `plan` reads it")
    export.add_argument("--db", metavar="FILE", required=True, help="an SQLite file or a database URL")
    export.add_argument("--potluck", metavar="ID", help="which one (default: the only or latest one)")
    export.add_argument("--out", metavar="FILE", help="where to write (default: standard output)")

    backup = commands.add_parser("backup", help="copy everything from one database into an empty one, and verify it")
    backup.add_argument("--from", dest="source", metavar="URL", required=True, help="an SQLite file or a database URL")
    backup.add_argument("--to", dest="target", metavar="URL", required=True, help="an SQLite file or a database URL")

    commands.add_parser("check", help="verify settings, database, migrations, clock and token")
    return top


def _port(text: str) -> int:
    if not text.isdecimal() or not 0 <= int(text) < 65536:
        raise argparse.ArgumentTypeError("give a port from 0 to 65535")
    return int(text)


def _positive(text: str) -> float:
    try:
        value = float(text)
    except ValueError:
        value = 0.0
    if not 0 < value < 1e6:
        raise argparse.ArgumentTypeError("give a number above 0")
    return value


def main(argv: list[str] | None = None) -> int:
    args = parser().parse_args(argv)
    command = importlib.import_module(f"bot.commands.{args.command}")
    try:
        return int(command.main(args))
    except KeyboardInterrupt:
        return 130
    except BrokenPipeError:
        return 1


if __name__ == "__main__":
    sys.exit(main())
