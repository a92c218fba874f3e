"""Contrast of every colour of text, by WCAG 2.2.

Relative luminance and contrast ratio as WCAG 2.2 defines them (w3.org/TR/WCAG22, "relative
luminance", "contrast ratio"); 7:1 is success criterion 1.4.6. The anchors are the ratios that are
commonly quoted for greys on white: #767676 4.54, #595959 7.00 (common practice, no source).
"""

from __future__ import annotations

import pytest

from drills.core.items import Kind
from drills.core.material import Material
from drills.tui import theme
from tests.tui.player import plan_of, playing


def luminance(colour: tuple[int, int, int]) -> float:
    def linear(channel: float) -> float:
        return channel / 12.92 if channel <= 0.04045 else ((channel + 0.055) / 1.055) ** 2.4

    red, green, blue = (linear(channel / 255) for channel in colour)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: tuple[int, int, int], other: tuple[int, int, int]) -> float:
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def rgb(text: str) -> tuple[int, int, int]:
    return int(text[1:3], 16), int(text[3:5], 16), int(text[5:7], 16)


@pytest.mark.parametrize(
    ("grey", "ratio"), [("#000000", 21.0), ("#767676", 4.54), ("#595959", 7.0)]
)
def test_the_formula_gives_the_known_ratios(grey: str, ratio: float) -> None:
    assert contrast(rgb(grey), rgb("#ffffff")) == pytest.approx(ratio, abs=0.005)


@pytest.mark.parametrize("ground", [theme.GROUND, theme.CARD])
@pytest.mark.parametrize("ink", [theme.INK, theme.QUIET, theme.MARKED, theme.TROUBLE])
def test_every_colour_of_text_has_a_contrast_of_seven(ink: str, ground: str) -> None:
    assert contrast(rgb(ink), rgb(ground)) >= 7


@pytest.mark.parametrize("ground", [theme.GROUND, theme.CARD])
def test_lines_of_frames_have_a_contrast_of_three(ground: str) -> None:
    # WCAG 2.2, 1.4.11: parts of a control need 3:1.
    assert contrast(rgb(theme.LINE), rgb(ground)) >= 3


@pytest.mark.parametrize(
    "plan", [plan_of(Kind.CLOZE, "C4"), plan_of(Kind.GESTURE, "wave")], ids=["words", "gesture"]
)
async def test_the_text_that_reaches_the_screen_has_it_too(
    plan: object, material: Material
) -> None:
    async with playing(material, plan=plan) as player:  # type: ignore[arg-type]
        await player.until_text("Leave")
        poor = player.poor_contrasts(contrast)
        await player.begin()
        poor += player.poor_contrasts(contrast)
        await player.press("h", "h")
        await player.settle()
        poor += player.poor_contrasts(contrast)
        assert poor == []
