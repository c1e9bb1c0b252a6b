"""The square on paper that opens the bot at this potluck."""

from __future__ import annotations

import io

import segno


def qr_svg(link: str | None) -> str:
    """SVG text of the code for a link, with the quiet zone of four modules the standard asks for
    (ISO/IEC 18004); empty without a link."""
    if not link:
        return ""
    out = io.BytesIO()
    segno.make(link, error="m", micro=False).save(out, kind="svg", border=4, xmldecl=False, dark="#000", light="#fff")
    return out.getvalue().decode()
