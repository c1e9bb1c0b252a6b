"""The colours of everything people look at, and how well they read.

Few colours, each with one meaning, and no meaning in colour alone: promised is a filled bar, missing is
hatched, a warning has a mark and words. The tests hold every text pair to the contrast of WCAG 2.2.
"""

from __future__ import annotations

COLOURS: dict[str, str] = {
    "paper": "#FFFDF8",
    "ink": "#1B211E",
    "soft": "#4D5551",
    "line": "#C9C3B4",
    "track": "#EFEBE0",
    "have": "#17557A",
    "have_pale": "#D5E6F0",
    "miss": "#9C3500",
    "miss_pale": "#FBE4D3",
    "heat": "#FFDD99",
    "heat_edge": "#7A5200",
    "white": "#FFFFFF",
}

TEXT_PAIRS: tuple[tuple[str, str], ...] = (
    ("ink", "paper"),
    ("ink", "white"),
    ("ink", "track"),
    ("ink", "have_pale"),
    ("ink", "miss_pale"),
    ("ink", "heat"),
    ("soft", "paper"),
    ("soft", "white"),
    ("soft", "track"),
    ("have", "paper"),
    ("have", "white"),
    ("miss", "paper"),
    ("miss", "white"),
    ("miss", "miss_pale"),
    ("white", "have"),
    ("white", "miss"),
    ("white", "ink"),
    ("white", "heat_edge"),
)
"""Every (text, background) pair the templates use."""

SHAPE_PAIRS: tuple[tuple[str, str], ...] = (
    ("have", "paper"),
    ("have", "track"),
    ("miss", "track"),
    ("miss", "miss_pale"),
    ("have", "have_pale"),
    ("heat_edge", "heat"),
    ("ink", "track"),
)
"""Every pair of neighbouring surfaces that must be told apart to read a bar, a mark or an outline."""


def luminance(colour: str) -> float:
    """Relative luminance, 0 to 1, of "#RRGGBB" (WCAG 2.2, definition of relative luminance)."""
    channels = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    red, green, blue = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio, 1 to 21 (WCAG 2.2, definition of contrast ratio)."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)
