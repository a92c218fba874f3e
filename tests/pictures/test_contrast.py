from __future__ import annotations

from itertools import combinations

import colorspacious
import numpy as np
import pytest

from drills.core.kinds import Side
from drills.core.meanings import Act, Scene
from drills.pictures import PEOPLE_KEYS, VERB_KEYS, Encoding, draw
from drills.pictures.cells import Cell, Cells
from drills.pictures.contrast import lab, share_that_differs


def test_lab_agrees_with_colorspacious():
    # Independent reference: the colorspacious package, "CIELab" under D65.
    steps = np.array([0, 1, 8, 10, 11, 63, 128, 200, 255])
    grid = np.stack(np.meshgrid(steps, steps, steps), axis=-1).reshape(-1, 3).astype(float)
    theirs = colorspacious.cspace_convert(grid, "sRGB255", "CIELab")
    assert np.abs(lab(grid) - theirs).max() < 0.05


def test_a_picture_does_not_differ_from_itself_and_wholly_from_its_negative():
    black, white = (0, 0, 0), (255, 255, 255)
    dark = Cells(((Cell("▀", black, black),) * 4,))
    half = Cells(((Cell("▀", black, white),) * 4,))
    light = Cells(((Cell("▀", white, white),) * 4,))
    assert share_that_differs(dark, dark) == 0.0
    assert share_that_differs(dark, half) == 0.5
    assert share_that_differs(dark, light) == 1.0


def _reversal_share(verb: str, doer: str, done_to: str, lines: int, *, places_kept: bool) -> float:
    act = Act(verb=verb, doer=doer, done_to=done_to)
    side = Side.RIGHT if places_kept else Side.LEFT
    scenes = (Scene(meaning=act), Scene(meaning=act.reversed(), side=side))
    return share_that_differs(*draw(scenes, columns=38, lines=lines, encoding=Encoding.HALVES))


PAIRS = tuple((PEOPLE_KEYS[n], PEOPLE_KEYS[(n * 3 + 4) % 16]) for n in (0, 3, 10, 13))


@pytest.mark.parametrize("verb", VERB_KEYS)
@pytest.mark.parametrize(("lines", "gate"), [(15, 0.20), (9, 0.15)])
def test_a_reversal_looks_different_from_its_target(verb, lines, gate):
    shares = [
        _reversal_share(verb, doer, done_to, lines, places_kept=kept)
        for doer, done_to in PAIRS
        for kept in (True, False)
    ]
    assert sum(shares) / len(shares) >= gate


@pytest.mark.parametrize("lines", [15, 9])
@pytest.mark.parametrize(("doer", "done_to"), [("nurse", "farmer"), ("baker", "judge")])
def test_no_two_acts_of_one_pair_look_alike(doer, done_to, lines):
    scenes = [Scene(meaning=Act(verb=verb, doer=doer, done_to=done_to)) for verb in VERB_KEYS]
    for pair in combinations(scenes, 2):
        made = draw(pair, columns=38, lines=lines, encoding=Encoding.HALVES)
        assert share_that_differs(*made) >= 0.10, pair
