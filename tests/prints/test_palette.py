from __future__ import annotations

import itertools
import re
from pathlib import Path

import pytest

from bot.prints.palette import COLOURS, SHAPE_PAIRS, TEXT_PAIRS, contrast, luminance

TEMPLATES = Path(__file__).parents[2] / "bot" / "prints" / "templates"


def test_contrast_of_black_on_white_is_21_as_wcag_2_2_defines_it() -> None:
    assert contrast("#000000", "#FFFFFF") == pytest.approx(21.0)


def test_contrast_of_the_grey_known_to_just_pass_is_4_54() -> None:
    # #767676 on white is the lightest grey commonly shown to pass AA: 4.54 to 1.
    assert contrast("#767676", "#FFFFFF") == pytest.approx(4.54, abs=0.01)


@pytest.mark.parametrize(("text", "ground"), TEXT_PAIRS)
def test_every_text_reaches_wcag_2_2_aa(text: str, ground: str) -> None:
    # Success criterion 1.4.3, contrast (minimum): 4.5 to 1 for text of any size.
    assert contrast(COLOURS[text], COLOURS[ground]) >= 4.5


@pytest.mark.parametrize(("shape", "ground"), SHAPE_PAIRS)
def test_every_shape_that_means_something_reaches_wcag_2_2_non_text_contrast(shape: str, ground: str) -> None:
    # Success criterion 1.4.11, non-text contrast: 3 to 1 against the neighbouring colour.
    assert contrast(COLOURS[shape], COLOURS[ground]) >= 3.0


def _seen(colour: str, matrix: tuple[tuple[float, float, float], ...]) -> str:
    linear = [((int(colour[i : i + 2], 16) / 255 + 0.055) / 1.055) ** 2.4 for i in (1, 3, 5)]
    mixed = [sum(m * c for m, c in zip(row, linear, strict=True)) for row in matrix]
    encoded = [1.055 * max(0.0, min(1.0, c)) ** (1 / 2.4) - 0.055 for c in mixed]
    return "#" + "".join(f"{round(255 * max(0.0, min(1.0, c))):02X}" for c in encoded)


# Machado, Oliveira and Fernandes 2009, severity 1.0 (from memory).
COLOUR_BLIND = {
    "protan": ((0.152286, 1.052583, -0.204868), (0.114503, 0.786281, 0.099216), (-0.003882, -0.048116, 1.051998)),
    "deutan": ((0.367322, 0.860646, -0.227968), (0.280085, 0.672501, 0.047413), (-0.011820, 0.042940, 0.968881)),
    "tritan": ((1.255528, -0.076749, -0.178779), (-0.078411, 0.930809, 0.147602), (0.004733, 0.691367, 0.303900)),
}


@pytest.mark.parametrize("kind", COLOUR_BLIND)
def test_promised_and_missing_stay_apart_for_colour_blind_eyes(kind: str) -> None:
    have, ground = _seen(COLOURS["have"], COLOUR_BLIND[kind]), _seen(COLOURS["miss_pale"], COLOUR_BLIND[kind])

    assert contrast(have, ground) >= 3.0


def test_fills_that_mean_different_things_differ_in_greyscale() -> None:
    fills = [luminance(COLOURS[c]) for c in ("have", "have_pale", "ink")]

    assert all(abs(a - b) > 0.05 for a, b in itertools.combinations(fills, 2))


def test_templates_use_no_colour_outside_the_palette() -> None:
    for template in TEMPLATES.glob("*.typ"):
        source = template.read_text("utf-8")
        assert set(re.findall(r"colour\.(\w+)", source)) - {"insert"} <= set(COLOURS)
        assert not re.findall(r"rgb\(\"|luma\(|cmyk\(", source), template.name


def test_templates_hold_no_sentence() -> None:
    # Every word people read is data: neither markup text in brackets nor a quoted string of several words.
    for template in TEMPLATES.glob("*.typ"):
        code = re.sub(r"regex\(\"[^\"]*\"\)|//.*", "", template.read_text("utf-8"))
        assert not re.findall(r"\[[^\]#]*[A-Za-z]{2,}[^\]#]*\]", code), template.name
        assert not [s for s in re.findall(r"\"([^\"]*)\"", code) if re.search("[a-z] [a-z]", s)]
