"""Both encodings, against the names of the characters and a plain least-squares solver."""

import time
import unicodedata

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drills.pictures.cells import Cell, Cells, Encoding
from drills.pictures.encode import DRAWN, FITTED, GRID, blocks, encode, halves
from drills.pictures.raster import raster
from drills.pictures.shapes import Drawing, Ellipse, Frame, Mark, Polygon

INK = (20, 30, 40)
SCENE = Drawing(
    shapes=(
        Ellipse(centre=(-8, -12), radii=(7, 9), fill=(215, 160, 120), outline=INK),
        Polygon(points=((2, 0), (14, -22), (18, -3)), fill=(200, 40, 40), outline=INK),
        Ellipse(centre=(9, -9), radii=(9, 2), fill=(240, 240, 90), angle=35),
    ),
    frame=Frame(left=-20, top=-26, width=40, height=30),
)
EIGHTHS = {
    "ONE EIGHTH": 1, "ONE QUARTER": 2, "THREE EIGHTHS": 3, "HALF": 4,
    "FIVE EIGHTHS": 5, "THREE QUARTERS": 6, "SEVEN EIGHTHS": 7,
}  # fmt: skip


def named_shape(character: str) -> np.ndarray:
    """The shape that the Unicode character database names, on a grid of 8 x 8."""
    shape = np.zeros((8, 8), dtype=bool)
    name = unicodedata.name(character)
    if name.startswith("QUADRANT "):
        for quarter in name.removeprefix("QUADRANT ").split(" AND "):
            down, across = quarter.split()
            rows = slice(0, 4) if down == "UPPER" else slice(4, 8)
            columns = slice(0, 4) if across == "LEFT" else slice(4, 8)
            shape[rows, columns] = True
    elif name != "SPACE":
        side, amount = name.removesuffix(" BLOCK").split(" ", 1)
        n = EIGHTHS[amount]
        shape[
            {
                "LOWER": (slice(8 - n, 8), slice(0, 8)),
                "UPPER": (slice(0, n), slice(0, 8)),
                "LEFT": (slice(0, 8), slice(0, n)),
            }[side]
        ] = True
    return shape


def shown(cells: Cells) -> np.ndarray:
    """What the cells look like, 8 x 8 pixels each, by the names of their characters."""
    rows = [
        np.concatenate(
            [
                np.where(named_shape(c.character)[:, :, None], np.array(c.ink), np.array(c.paper))
                for c in row
            ],
            axis=1,
        )
        for row in cells.rows
    ]
    return np.concatenate(rows)


def error(cells: Cells, pixels: np.ndarray) -> float:
    return float(((shown(cells) - pixels.astype(float)) ** 2).sum())


def solved(pixels: np.ndarray) -> float:
    """The least squared error of a cell by any Block Element, with numpy's own solver."""
    flat = pixels.reshape(64, 3).astype(float)
    errors = []
    for code in (0x20, *range(0x2580, 0x2588), *range(0x2589, 0x2590), *range(0x2596, 0x25A0)):
        inked = named_shape(chr(code)).reshape(64).astype(float)
        design = np.stack([inked, 1 - inked], axis=1)
        colours = np.linalg.lstsq(design, flat, rcond=None)[0]
        errors.append(((design @ colours - flat) ** 2).sum())
    return float(min(errors))


def chance_cells(seed: int) -> np.ndarray:
    """Three cells of noise, edges and gradients."""
    rng = np.random.default_rng(seed)
    noise = rng.integers(0, 256, (8, 8, 3))
    edge = np.where(
        (np.add.outer(np.arange(8), np.arange(8) * rng.uniform(-2, 2)) > rng.uniform(0, 8))[
            :, :, None
        ],
        rng.integers(0, 256, 3),
        rng.integers(0, 256, 3),
    )
    slope = np.linspace(rng.integers(0, 256, 3), rng.integers(0, 256, 3), 64).reshape(8, 8, 3)
    return np.concatenate([noise, edge, slope], axis=1).astype(np.uint8)


def test_every_shape_is_what_unicode_names() -> None:
    assert len(FITTED) == 20
    for character, shape in DRAWN.items():
        assert (shape == named_shape(character)).all(), unicodedata.name(character)


@settings(max_examples=40, deadline=None)
@given(st.integers(0, 2**32 - 1))
def test_blocks_fit_as_well_as_solving_every_block_element(seed: int) -> None:
    pixels = chance_cells(seed)
    cells = blocks(pixels)
    for column in range(3):
        part = pixels[:, column * 8 : column * 8 + 8]
        got = error(Cells(((cells.rows[0][column],),)), part)
        # Whole colours: at most half a grey level in 64 pixels of 3 channels. And 1: no edge
        # is drawn for less.
        assert got <= solved(part) + 64 * 3 * 0.25 + 1


@settings(max_examples=40, deadline=None)
@given(st.integers(0, 2**32 - 1))
def test_blocks_are_never_worse_than_halves(seed: int) -> None:
    pixels = chance_cells(seed)
    halved = np.rint(pixels.reshape(2, 4, 3, 8, 3).mean(axis=(1, 3))).astype(np.uint8)
    # Whole colours again: both sides round.
    assert error(blocks(pixels), pixels) <= error(halves(halved), pixels) + 3 * 64 * 3 * 0.25


def test_blocks_are_closer_than_halves_on_a_drawing() -> None:
    pixels = raster(SCENE, width=38 * GRID, height=20 * GRID, tall=2, outline=4)
    halved = np.rint(pixels.reshape(40, 4, 38, 8, 3).mean(axis=(1, 3))).astype(np.uint8)
    assert error(blocks(pixels), pixels) < 0.8 * error(halves(halved), pixels)


@given(st.tuples(*[st.integers(0, 255)] * 3))
def test_a_flat_colour_gives_blank_cells(colour: tuple[int, int, int]) -> None:
    flat = np.full((16, 24, 3), colour, dtype=np.uint8)
    for cells in (blocks(flat), halves(flat)):
        assert all(
            cell.character == " " and cell.paper == colour for row in cells.rows for cell in row
        )


@settings(deadline=None)
@given(st.integers(1, 5), st.integers(1, 4), st.integers(0, 2**32 - 1))
def test_halves_show_every_pixel_exactly(columns: int, lines: int, seed: int) -> None:
    pixels = np.random.default_rng(seed).integers(0, 256, (lines * 2, columns, 3)).astype(np.uint8)
    cells = halves(pixels)
    assert (cells.columns, cells.lines) == (columns, lines)
    assert (shown(cells)[::4, ::8] == pixels).all()


@pytest.mark.parametrize("encoding", Encoding)
@pytest.mark.parametrize(("columns", "lines"), [(38, 20), (24, 7), (1, 1)])
def test_the_cells_fill_the_space_that_was_asked(
    encoding: Encoding, columns: int, lines: int
) -> None:
    cells = encode(SCENE, columns=columns, lines=lines, encoding=encoding)
    assert (cells.columns, cells.lines) == (columns, lines)
    assert all(len(row) == columns for row in cells.rows)


@pytest.mark.parametrize("encoding", Encoding)
def test_an_eye_survives_beside_hair_and_skin(encoding: Encoding) -> None:
    eye = {Encoding.SIXTEEN: (0, 0, 0), Encoding.GREY: (2, 2, 2)}.get(encoding, (1, 2, 3))
    face = Drawing(
        shapes=(
            Ellipse(centre=(0, 0), radii=(18, 18), fill=(215, 160, 120), outline=INK),
            Polygon(points=((-20, -20), (20, -20), (20, -3), (-20, -3)), fill=(90, 30, 10)),
            Mark(at=(-7, 0), fill=(1, 2, 3)),
            Mark(at=(7, 0), fill=(1, 2, 3)),
        ),
        frame=Frame(left=-20, top=-20, width=40, height=40),
    )
    cells = encode(face, columns=12, lines=6, encoding=encoding)
    holding = [c for row in cells.rows for c in row if eye in (c.ink, c.paper)]
    # In sixteen colours outlines are black as well.
    assert len(holding) == 2 or (encoding is Encoding.SIXTEEN and len(holding) > 2)
    assert all(cell.ink != cell.paper for cell in holding)


@pytest.mark.parametrize("count", [1, 2, 3])
def test_marked_quarters_show_their_own_colour_and_the_rest_its_mean(count: int) -> None:
    marked = np.array([[True, count > 2], [False, count > 1]])
    wanted = marked.repeat(4, axis=0).repeat(4, axis=1)
    pixels = np.where(wanted[:, :, None], (9, 9, 9), (200, 100, 50)).astype(np.uint8)
    pixels[0, 4:] = np.where(wanted[0, 4:, None], (9, 9, 9), (0, 0, 0))
    cells = blocks(pixels, marked=marked)
    assert (shown(cells)[wanted] == 9).all()
    assert (shown(cells)[~wanted] == np.rint(pixels[~wanted].mean(axis=0))).all()


def test_a_cell_that_is_all_mark_is_blank() -> None:
    pixels = np.full((8, 8, 3), 7, dtype=np.uint8)
    marked = np.ones((2, 2), dtype=bool)
    assert blocks(pixels, marked=marked) == Cells(((Cell(" ", (7, 7, 7), (7, 7, 7)),),))


def test_the_time_of_a_picture_is_printed(capsys: pytest.CaptureFixture[str]) -> None:
    started = time.perf_counter()
    for _ in range(10):
        cells = encode(SCENE, columns=38, lines=20, encoding=Encoding.BLOCKS)
    with capsys.disabled():
        print(f"\nBLOCKS 38 x 20: {(time.perf_counter() - started) * 100:.1f} ms a picture")
    assert cells.columns == 38
