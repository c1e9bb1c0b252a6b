"""Reading what was printed back: text, fonts and pictures of pages, with poppler's tools."""

from __future__ import annotations

import io
import subprocess
from pathlib import Path

from PIL import Image

ZERO_WIDTH = dict.fromkeys(map(ord, "\u200b\u2066\u2067\u2068\u2069\u202a\u202b\u202c\u202d\u202e\u200e\u200f"))


def _poppler(tool: str, pdf: bytes, folder: Path, *arguments: str) -> bytes:
    source = folder / "printed.pdf"
    source.write_bytes(pdf)
    done = subprocess.run([tool, *arguments, str(source), "-"], capture_output=True, check=True)
    return done.stdout


def text_of(pdf: bytes, folder: Path) -> str:
    """The words of all pages, spaces evened out, marks that are not seen taken away."""
    text = _poppler("pdftotext", pdf, folder, "-raw").decode()
    return " ".join(text.translate(ZERO_WIDTH).split())


def boxes_of(pdf: bytes, folder: Path) -> str:
    """Every word with the box it stands in, as XML; lengths in points."""
    return _poppler("pdftotext", pdf, folder, "-bbox").decode()


def letters_of(pdf: bytes, folder: Path) -> str:
    """The same without any space, for words broken over lines."""
    return text_of(pdf, folder).replace(" ", "")


def fonts_of(pdf: bytes, folder: Path) -> set[str]:
    source = folder / "printed.pdf"
    source.write_bytes(pdf)
    out = subprocess.run(["pdffonts", str(source)], capture_output=True, check=True).stdout.decode()
    return {line.split()[0].split("+")[-1] for line in out.splitlines()[2:]}


def pages_of(pdf: bytes, folder: Path, dpi: int = 40) -> list[Image.Image]:
    source = folder / "printed.pdf"
    source.write_bytes(pdf)
    subprocess.run(["pdftoppm", "-png", "-r", str(dpi), str(source), str(folder / "page")], check=True)
    return [Image.open(p).convert("L") for p in sorted(folder.glob("page-*.png"))]


def size_of(pdf: bytes, folder: Path) -> tuple[float, float]:
    """Width and height of the first page in points."""
    source = folder / "printed.pdf"
    source.write_bytes(pdf)
    out = subprocess.run(["pdfinfo", str(source)], capture_output=True, check=True).stdout.decode()
    line = next(line for line in out.splitlines() if line.startswith("Page size:"))
    return float(line.split()[2]), float(line.split()[4])


def image_of(png: bytes) -> Image.Image:
    return Image.open(io.BytesIO(png))


def has_ink_at_edges(page: Image.Image, border: int = 3) -> bool:
    """Something dark touches the rim: cut off when printed."""
    wide, high = page.size
    rims = ((0, 0, wide, border), (0, high - border, wide, high), (0, 0, border, high), (wide - border, 0, wide, high))
    return any(page.crop(r).getextrema()[0] < 100 for r in rims)
