"""Typst, asked from Python: a template, its data, and out come the bytes.

All text goes in as JSON data; nothing people typed ever becomes typst source. Fonts come only from the
`fonts` folder beside this file, so a picture is the same on every machine and needs no network.
"""

from __future__ import annotations

import json
import struct
import threading
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from functools import cache
from pathlib import Path
from typing import Any

import typst

from bot.prints.palette import COLOURS

HERE = Path(__file__).parent
PICTURE_PPI = 200.0
"""390 pt, a phone's width, becomes 1083 pixels: what the platform keeps of a photo."""

WIDE_PPI = 170.0
MOST_COLUMNS = 3
TALLEST = 2.4
"""A picture taller than this many times its width is set wider: clients show a photo at most 1280 pixels on its
longer side (from memory), and a ribbon would keep too few across to be read."""
MOST_PIXELS = 10_000
"""The platform takes a photo whose width and height add up to this at most (Bot API, sendPhoto)."""

_AT_ONCE = threading.BoundedSemaphore(2)
_idle: list[typst.Compiler] = []
"""Compilers waiting for work. One compiler refuses to be used by two threads at once; two of them are
enough, as typst lets go of the interpreter while it sets a page."""


@contextmanager
def _compiler() -> Iterator[typst.Compiler]:
    with _AT_ONCE:
        try:
            compiler = _idle.pop()
        except IndexError:
            compiler = typst.Compiler(
                root=str(HERE / "templates"), font_paths=[str(HERE / "fonts")], ignore_system_fonts=True
            )
        try:
            yield compiler
        finally:
            _idle.append(compiler)


@cache
def _source(template: str) -> bytes:
    return (HERE / "templates" / f"{template}.typ").read_bytes()


def _inputs(data: Mapping[str, Any], lang: str) -> dict[str, str]:
    whole = {**data, "colours": COLOURS, "lang": lang.split("-")[0].split("_")[0]}
    return {"data": json.dumps(_clean(whole), ensure_ascii=False)}


def _clean(value: Any) -> Any:
    """Without what no page can carry: control characters, lone surrogates, marks that turn the rest of a line."""
    if isinstance(value, str):
        return "".join(" " if c in "\t\n\r" else c for c in value if c in "\t\n\r" or _drawable(c))
    if isinstance(value, Mapping):
        return {str(k): _clean(v) for k, v in value.items()}
    if isinstance(value, list | tuple):
        return [_clean(v) for v in value]
    return value


def _drawable(char: str) -> bool:
    point = ord(char)
    return not (
        point < 0x20
        or 0x7F <= point < 0xA0
        or 0x202A <= point <= 0x202E
        or 0xD800 <= point <= 0xDFFF
        or point & 0xFFFF >= 0xFFFE
    )


def picture(template: str, shapes: Callable[[int], Mapping[str, Any]], lang: str) -> bytes:
    """PNG of a one-page template, as tall as its content and as wide as keeps it readable.

    `shapes(columns)` gives the data laid out in at least that many columns; where a picture comes out too
    tall, it is set again wider, and in the end with fewer pixels: the platform refuses what is too large.
    """
    for columns in range(1, MOST_COLUMNS + 1):
        data = shapes(columns)
        ppi = PICTURE_PPI if data["width"] < 500 else WIDE_PPI
        png = _png(template, data, lang, ppi)
        wide, high = size(png)
        if high <= TALLEST * wide:
            break
    while sum(size(png)) > MOST_PIXELS and ppi > 20:
        ppi *= min(0.9, MOST_PIXELS / sum(size(png)))
        png = _png(template, data, lang, ppi)
    return png


def _png(template: str, data: Mapping[str, Any], lang: str, ppi: float) -> bytes:
    with _compiler() as compiler:
        png = compiler.compile(input=_source(template), format="png", ppi=ppi, sys_inputs=_inputs(data, lang))
    return _one(png)


def size(png: bytes) -> tuple[int, int]:
    """Width and height in pixels, as the header says (PNG specification, IHDR)."""
    wide, high = struct.unpack(">II", png[16:24])
    return wide, high


def vector(template: str, data: Mapping[str, Any], lang: str) -> bytes:
    """SVG of a one-page template, for the room's page."""
    with _compiler() as compiler:
        svg = compiler.compile(input=_source(template), format="svg", sys_inputs=_inputs(data, lang))
    return _one(svg)


def paper(template: str, data: Mapping[str, Any], lang: str, standard: str | None = None) -> bytes:
    """PDF. The stamp in it is fixed, so that the same potluck gives the same bytes.

    `standard` ("ua-1") has the setter check the file and raise where it falls short; off in use, as a name in a
    script we have no font for is better shown as a box than not printed at all.
    """
    with _compiler() as compiler:
        pdf = compiler.compile(
            input=_source(template),
            format="pdf",
            sys_inputs=_inputs(data, lang),
            timestamp=0,
            pdf_standards=[standard] if standard else [],  # type: ignore[list-item]
        )
    return _one(pdf)


def _one(made: bytes | list[bytes] | None) -> bytes:
    """The only file: pictures are one page long and papers one document."""
    if made is None or (isinstance(made, list) and len(made) != 1):
        raise ValueError("a template of one page made several")
    return made[0] if isinstance(made, list) else made
