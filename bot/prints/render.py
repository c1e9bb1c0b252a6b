"""Typst, asked from Python: a template, its data, and out come the bytes.

All text goes in as JSON data; nothing people typed ever becomes typst source. Fonts come only from the
`fonts` folder beside this file, so a picture is the same on every machine and needs no network.
"""

from __future__ import annotations

import json
import threading
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from functools import cache
from pathlib import Path
from typing import Any

import typst

from bot.prints.palette import COLOURS

HERE = Path(__file__).parent
PICTURE_PPI = 200.0
"""390 pt, a phone's width, becomes 1083 pixels: what the platform keeps of a photo."""

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
    """Without what no font can draw and no page can carry: control characters and lone surrogates."""
    if isinstance(value, str):
        return "".join(" " if c in "\t\n\r" else c for c in value if c in "\t\n\r" or _drawable(c))
    if isinstance(value, Mapping):
        return {str(k): _clean(v) for k, v in value.items()}
    if isinstance(value, list | tuple):
        return [_clean(v) for v in value]
    return value


def _drawable(char: str) -> bool:
    point = ord(char)
    return not (point < 0x20 or 0x7F <= point < 0xA0 or 0xD800 <= point <= 0xDFFF or point & 0xFFFF >= 0xFFFE)


def picture(template: str, data: Mapping[str, Any], lang: str) -> bytes:
    """PNG of a one-page template as tall as its content."""
    with _compiler() as compiler:
        png = compiler.compile(
            input=_source(template), format="png", ppi=data.get("ppi", PICTURE_PPI), sys_inputs=_inputs(data, lang)
        )
    return png[0] if isinstance(png, list) else png


def vector(template: str, data: Mapping[str, Any], lang: str) -> bytes:
    """SVG of a one-page template, for the room's page."""
    with _compiler() as compiler:
        svg = compiler.compile(input=_source(template), format="svg", sys_inputs=_inputs(data, lang))
    return svg[0] if isinstance(svg, list) else svg


def paper(template: str, data: Mapping[str, Any], lang: str) -> bytes:
    """PDF. The stamp in it is fixed, so that the same potluck gives the same bytes."""
    with _compiler() as compiler:
        return compiler.compile(input=_source(template), format="pdf", sys_inputs=_inputs(data, lang), timestamp=0)
