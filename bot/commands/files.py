"""Reading and writing what the commands are given: one clear sentence when it can't be done."""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Any, NoReturn


class Stop(Exception):
    """The command ends here: `lines` for standard error, `code` for the shell."""

    def __init__(self, *lines: str, code: int = 2) -> None:
        super().__init__(*lines)
        self.lines = lines
        self.code = code


def complain(*lines: str) -> None:
    for line in lines:
        sys.stderr.write(f"tureen: {line}\n")


def read_json(name: str) -> Any:
    """The JSON document of a file, or of standard input for "-"; NaN and doubled keys are refused."""
    try:
        text = sys.stdin.read() if name == "-" else Path(name).read_text("utf-8")
    except FileNotFoundError:
        raise Stop(f"{name}: there is no such file; check the name") from None
    except UnicodeDecodeError:
        raise Stop(f"{name}: not UTF-8 text; save it as UTF-8") from None
    except OSError as error:
        raise Stop(f"{name}: can't be read ({error.strerror}); check the name and the rights") from None
    try:
        return json.loads(text, parse_constant=_no_constant, object_pairs_hook=_no_doubles)
    except ValueError as error:
        raise Stop(f"{name}: not JSON: {error}") from None
    except RecursionError:
        raise Stop(f"{name}: nested too deeply to be a potluck file") from None


def _no_constant(text: str) -> NoReturn:
    raise ValueError(f"{text} is not a number")


def _no_doubles(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found = dict(pairs)
    if len(found) != len(pairs):
        keys = [k for k, _ in pairs]
        raise ValueError(f"the key {next(k for k in keys if keys.count(k) > 1)!r} stands twice in one object")
    return found


def write_json(document: Any, name: str | Path | None) -> None:
    text = json.dumps(document, ensure_ascii=False, indent=1) + "\n"
    if name is None:
        sys.stdout.write(text)
        return
    try:
        Path(name).write_text(text, "utf-8")
    except OSError as error:
        raise Stop(f"{name}: can't be written ({error.strerror}); choose another place") from None


def database_url(name: str) -> str:
    """A database URL from an SQLite file's name, or the URL itself."""
    return name if "://" in name else f"sqlite+aiosqlite:///{Path(name).resolve()}"
