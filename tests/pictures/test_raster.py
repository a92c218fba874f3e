"""The raster: geometry, averaging, edges and marks."""

from math import pi

import numpy as np
import pytest
from PIL import Image

from drills.pictures.raster import raster
from drills.pictures.shapes import Drawing, Ellipse, Frame, Mark, Polygon, Shape, Stroke

SKY, EARTH = (0, 0, 0), (0, 90, 0)
WHITE, RED = (255, 255, 255), (255, 0, 0)
FRAME = Frame(left=-20, top=-20, width=40, height=40)


def draw(*shapes: Shape, frame: Frame = FRAME, ground: float | None = None) -> Drawing:
    return Drawing(shapes=shapes, frame=frame, sky=SKY, earth=EARTH, ground=ground)


def lit(pixels: np.ndarray) -> float:
    return float(pixels[:, :, 0].astype(float).sum() / 255)


@pytest.mark.parametrize("angle", [0.0, 30.0, 90.0])
def test_an_ellipse_has_the_area_of_an_ellipse(angle: float) -> None:
    # Area of an ellipse: pi times both radii (geometry, common knowledge).
    shape = Ellipse(centre=(0, 0), radii=(15, 8), fill=WHITE, angle=angle)
    pixels = raster(draw(shape), width=160, height=160, supersample=4)
    assert lit(pixels) / 16 == pytest.approx(pi * 15 * 8, rel=0.02)


def test_a_stroke_has_the_area_of_a_bar_with_round_ends() -> None:
    shape = Stroke(points=((-10, 0), (10, 0)), width=6, fill=WHITE)
    pixels = raster(draw(shape), width=160, height=160, supersample=4)
    assert lit(pixels) / 16 == pytest.approx(20 * 6 + pi * 9, rel=0.03)


def test_tall_pixels_show_a_circle_as_high_as_wide() -> None:
    circle = Ellipse(centre=(0, 0), radii=(10, 10), fill=WHITE)
    pixels = raster(draw(circle), width=80, height=40, tall=2)
    rows, columns = np.nonzero(pixels[:, :, 0] > 127)
    assert np.ptp(columns) + 1 == pytest.approx(2 * (np.ptp(rows) + 1), abs=2)


@pytest.mark.parametrize(("width", "height"), [(90, 40), (40, 90)])
def test_the_frame_is_centred_and_whole_in_any_space(width: int, height: int) -> None:
    square = Polygon(points=((-19, -19), (19, -19), (19, 19), (-19, 19)), fill=WHITE)
    pixels = raster(draw(square), width=width, height=height)
    rows, columns = np.nonzero(pixels[:, :, 0] > 127)
    assert (rows.min() + rows.max()) / 2 == pytest.approx((height - 1) / 2, abs=0.6)
    assert (columns.min() + columns.max()) / 2 == pytest.approx((width - 1) / 2, abs=0.6)
    assert np.ptp(rows) + 1 == pytest.approx(38, abs=1)
    assert np.ptp(columns) + 1 == pytest.approx(38, abs=1)


def test_each_pixel_is_the_mean_of_what_was_painted_finer() -> None:
    shape = Ellipse(centre=(1, 2), radii=(13, 9), fill=WHITE, outline=RED, angle=20)
    fine = raster(draw(shape), width=160, height=160, supersample=1, outline=4)
    coarse = raster(draw(shape), width=40, height=40, supersample=4, outline=1)
    # Pillow's own BOX resampling is the reference for area averaging.
    reference = np.asarray(Image.fromarray(fine).resize((40, 40), Image.Resampling.BOX))
    assert np.abs(coarse.astype(int) - reference.astype(int)).max() <= 1


def test_earth_lies_below_the_ground_and_sky_above() -> None:
    pixels = raster(draw(ground=10), width=40, height=40)
    assert (pixels[:30] == SKY).all()
    assert (pixels[31:] == EARTH).all()


def test_no_earth_without_ground() -> None:
    assert (raster(draw(), width=40, height=40) == SKY).all()


def test_an_edge_line_is_as_wide_as_asked_at_any_scale() -> None:
    square = Polygon(points=((-10, -10), (10, -10), (10, 10), (-10, 10)), fill=WHITE, outline=RED)
    for width in (80, 160):
        row = raster(draw(square), width=width, height=width, outline=3)[width // 2]
        red = (row[: width // 2] == RED).all(axis=1).sum()
        assert red == pytest.approx(3, abs=1)


def test_a_mark_is_whole_pixels_of_its_own_colour() -> None:
    face = Ellipse(centre=(0, 0), radii=(15, 15), fill=WHITE)
    pixels = raster(draw(face, Mark(at=(3.3, -4.7), fill=RED)), width=40, height=40, mark=(4, 4))
    rows, columns = np.nonzero((pixels == RED).all(axis=2))
    assert (len(rows), rows.min() % 4, columns.min() % 4) == (16, 0, 0)
    assert rows.min() <= 20 - 4.7 < rows.max() + 1
    assert columns.min() <= 20 + 3.3 < columns.max() + 1


def test_a_mark_outside_the_frame_is_not_drawn() -> None:
    assert (raster(draw(Mark(at=(99, 0), fill=RED)), width=40, height=40) == SKY).all()
