from __future__ import annotations

from itertools import combinations

import colorspacious
import numpy as np
import pytest

from drills.core.kinds import Side
from drills.core.meanings import Act, Scene
from drills.pictures import PEOPLE_KEYS, VERB_KEYS, Encoding, draw, share_apart
from drills.pictures.animals import Gait, animal_figure
from drills.pictures.cast import PEOPLE
from drills.pictures.cells import Cell, Cells
from drills.pictures.compositions import build_of
from drills.pictures.contrast import DEFICIENCIES, lab, seen_by, share_that_differs
from drills.pictures.geometry import bounds
from drills.pictures.herd import ANIMALS
from drills.pictures.palette import grey_of
from drills.pictures.people import figure
from drills.pictures.poses import stance
from drills.pictures.raster import raster
from drills.pictures.shapes import Drawing, Frame
from drills.pictures.skeleton import build_for


def test_lab_agrees_with_colorspacious():
    # Independent reference: the colorspacious package, "CIELab" under D65.
    steps = np.array([0, 1, 8, 10, 11, 63, 128, 200, 255])
    grid = np.stack(np.meshgrid(steps, steps, steps), axis=-1).reshape(-1, 3).astype(float)
    theirs = colorspacious.cspace_convert(grid, "sRGB255", "CIELab")
    assert np.abs(lab(grid) - theirs).max() < 0.05


@pytest.mark.parametrize(
    ("deficiency", "theirs"),
    [("protan", "protanomaly"), ("deutan", "deuteranomaly"), ("tritan", "tritanomaly")],
)
def test_missing_cones_agree_with_colorspacious(deficiency, theirs):
    # Independent reference: the colorspacious package, which holds the matrices of Machado,
    # Oliveira & Fernandes 2009, at severity 100.
    steps = np.array([0, 5, 40, 90, 150, 210, 255])
    grid = np.stack(np.meshgrid(steps, steps, steps), axis=-1).reshape(-1, 3).astype(float)
    space = {"name": "sRGB1+CVD", "cvd_type": theirs, "severity": 100}
    expected = np.clip(colorspacious.cspace_convert(grid / 255, space, "sRGB1"), 0, 1) * 255
    assert np.abs(seen_by(deficiency, grid) - expected).max() < 0.5


CAST = (*PEOPLE, *ANIMALS)
SIGHTS = ("normal", *DEFICIENCIES, "grey")


def _alone(key: str, lines: int) -> np.ndarray:
    """One figure standing alone, as half cells of a picture half as wide as usual."""
    build = build_for(lines)
    if key in PEOPLE:
        own = build_of(key, build)
        shapes = figure(PEOPLE[key], own, stance(own)).shapes
    else:
        shapes = animal_figure(ANIMALS[key], build, Gait()).shapes
    high = build.stature * 1.35
    wide = high * 19 / (2 * lines)
    box = bounds(shapes)
    frame = Frame(
        left=box.left + box.width / 2 - wide / 2, top=-high * 0.93, width=wide, height=high
    )
    made = Drawing(shapes=shapes, frame=frame)
    return raster(made, width=19, height=2 * lines, supersample=8, outline=0.35)


def _as_seen(pixels: np.ndarray, sight: str) -> np.ndarray:
    if sight == "grey":
        return np.array([[grey_of(tuple(map(int, one))) for one in row] for row in pixels])
    return pixels if sight == "normal" else seen_by(sight, pixels.astype(float))


@pytest.mark.parametrize("lines", [20, 15, 9])
@pytest.mark.parametrize("sight", SIGHTS)
def test_everyone_is_told_from_everyone_by_any_eyes(lines, sight):
    colours = {key: lab(_as_seen(_alone(key, lines), sight).astype(float)) for key in CAST}
    for one, other in combinations(CAST, 2):
        apart = np.linalg.norm(colours[one] - colours[other], axis=-1)
        assert (apart > 12).mean() >= 0.12, (one, other)


def test_a_picture_does_not_differ_from_itself_and_wholly_from_its_negative():
    black, white = (0, 0, 0), (255, 255, 255)
    dark = Cells(((Cell("▀", black, black),) * 4,))
    half = Cells(((Cell("▀", black, white),) * 4,))
    light = Cells(((Cell("▀", white, white),) * 4,))
    assert share_that_differs(dark, dark) == 0.0
    assert share_that_differs(dark, half) == 0.5
    assert share_that_differs(dark, light) == 1.0


REVERSED = tuple(
    Act(verb=verb, doer=PEOPLE_KEYS[n], done_to=PEOPLE_KEYS[(n * 3 + 4) % 16])
    for verb in VERB_KEYS
    for n in (0, 3, 10, 13)
)


@pytest.mark.parametrize(("lines", "gate"), [(15, 0.20), (9, 0.15)])
@pytest.mark.parametrize("side", list(Side))
def test_most_reversals_look_different_from_their_target(lines, gate, side):
    # Side.RIGHT keeps everyone's place, so that the act alone turns round.
    shares = [
        share_apart(
            Scene(meaning=act), Scene(meaning=act.reversed(), side=side), columns=38, lines=lines
        )
        for act in REVERSED
    ]
    assert sum(share >= gate for share in shares) >= 0.9 * len(shares)
    for verb in VERB_KEYS:
        own = [share for act, share in zip(REVERSED, shares, strict=True) if act.verb == verb]
        assert max(own) >= gate, verb


@pytest.mark.parametrize("lines", [15, 9])
@pytest.mark.parametrize(("doer", "done_to"), [("nurse", "farmer"), ("baker", "judge")])
def test_no_two_acts_of_one_pair_look_alike(doer, done_to, lines):
    scenes = [Scene(meaning=Act(verb=verb, doer=doer, done_to=done_to)) for verb in VERB_KEYS]
    for pair in combinations(scenes, 2):
        made = draw(pair, columns=38, lines=lines, encoding=Encoding.HALVES)
        assert share_that_differs(*made) >= 0.09, pair
