"""Small pictures within a picture: framed panels in order, and what a speaker says."""

from __future__ import annotations

from collections.abc import Sequence

from drills.pictures.geometry import INK, area, bounds, line, patch, put
from drills.pictures.shapes import Colour, Point, Shape

_SKY: Colour = (208, 230, 252)
_EARTH: Colour = (139, 172, 98)
_PAPER: Colour = (252, 252, 246)


def _fitted(
    shapes: Sequence[Shape], left: float, top: float, width: float, height: float
) -> tuple[tuple[Shape, ...], float]:
    """`shapes` as large as fits, centred, standing at the bottom; and their scale."""
    box = bounds(shapes)
    scale = min(width / box.width, height / box.height)
    x = left + width / 2 - (box.left + box.width / 2) * scale
    y = top + height - (box.top + box.height) * scale
    return put(shapes, x, y, scale), scale


def panel(
    shapes: Sequence[Shape], left: float, top: float, width: float, height: float
) -> tuple[Shape, ...]:
    """A framed picture with its own sky and ground."""
    right, low = left + width, top + height
    earth = low - height * 0.09
    margin = min(width, height) * 0.05
    inner, _ = _fitted(
        shapes, left + margin, top + margin, width - 2 * margin, height * 0.93 - margin
    )
    edge = ((left, top), (right, top), (right, low), (left, low), (left, top))
    return (
        patch(_SKY, (left, top), (right, top), (right, low), (left, low)),
        patch(_EARTH, (left, earth), (right, earth), (right, low), (left, low)),
        *inner,
        line(INK, min(width, height) * 0.018, *edge),
    )


def in_order(earlier: Sequence[Shape], later: Sequence[Shape], aspect: float) -> tuple[Shape, ...]:
    """Two panels, the earlier on the left, and an arrow to the later one."""
    height = 100.0
    gap = 24.0 if aspect > 1.5 else 20.0
    width = max(44.0, (height * aspect - gap) / 2 * 0.97)
    size = gap * 0.46
    x, y = width + gap / 2, -height / 2
    arrow = patch(
        INK, (x - size, y - size * 0.3), (x, y - size * 0.3), (x, y - size * 0.9), (x + size, y),
        (x, y + size * 0.9), (x, y + size * 0.3), (x - size, y + size * 0.3),
    )  # fmt: skip
    return (
        *panel(earlier, 0.0, -height, width, height),
        *panel(later, width + gap, -height, width, height),
        arrow,
    )


def balloon(shapes: Sequence[Shape], corner: Point, size: Point, mouth: Point) -> tuple[Shape, ...]:
    """A speech balloon whose tail comes from `mouth`, with a picture in it."""
    (left, top), (width, height) = corner, size
    right, low = left + width, top + height
    cut = min(width, height) * 0.14
    root = (
        min(max(mouth[0], left + cut), right - cut * 3),
        min(max(mouth[1], top + cut), low - cut * 2),
    )
    below = mouth[1] > low
    tail: tuple[Point, ...] = (
        ((root[0], low - 2), mouth, (root[0] + cut * 1.5, low - 2))
        if below
        else ((left + 2, root[1]), mouth, (left + 2, root[1] + cut * 1.2))
    )
    inner, _ = _fitted(
        shapes, left + cut * 0.7, top + cut * 0.7, width - cut * 1.4, height - cut * 1.4
    )
    body = (
        (left + cut, top), (right - cut, top), (right, top + cut), (right, low - cut),
        (right - cut, low), (left + cut, low), (left, low - cut), (left, top + cut),
    )  # fmt: skip
    return (area(_PAPER, *tail), area(_PAPER, *body), patch(_PAPER, *tail), *inner)
