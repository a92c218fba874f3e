"""What the frames show: inside, moving, calm, and the same every time."""

from dataclasses import replace
from itertools import combinations, pairwise

import numpy as np
import pytest

from drills.core.problems import BadInput
from drills.gestures import KEYS, frames
from drills.gestures.figure import EYES, FACE
from drills.gestures.frames import drawn
from drills.gestures.hands import Hand, HandShape
from drills.gestures.keyframes import compose
from drills.gestures.motions import MOTIONS
from drills.pictures.cells import Cells, Encoding
from drills.pictures.geometry import bounds
from drills.pictures.raster import raster
from drills.pictures.shapes import Frame

MOVING = [key for key in KEYS if len(MOTIONS[key].steps) > 1]
SIZES = [(40, 18), (38, 14)]


def shown(cells: Cells) -> np.ndarray:
    """Colours of half cells, lines x 2 by columns."""
    rows = []
    for row in cells.rows:
        rows.append([cell.ink if cell.character != " " else cell.paper for cell in row])
        rows.append([cell.paper for cell in row])
    return np.array(rows, dtype=float)


def halves(key: str, size: tuple[int, int]) -> list[np.ndarray]:
    columns, lines = size
    return [shown(f) for f in frames(key, columns=columns, lines=lines, encoding=Encoding.HALVES)]


def luminance(pixels: np.ndarray) -> np.ndarray:
    """Relative luminance (WCAG 2.2, definition of relative luminance, from memory)."""
    share = pixels / 255
    linear = np.where(share <= 0.04045, share / 12.92, ((share + 0.055) / 1.055) ** 2.4)
    return linear @ np.array([0.2126, 0.7152, 0.0722])


def test_the_luminance_of_white_and_black_is_one_and_nought() -> None:
    # WCAG: contrast of black on white is 21, that is (1 + 0.05) / (0 + 0.05).
    white, black = (luminance(np.array([[c, c, c]], dtype=float))[0] for c in (255, 0))
    assert (white + 0.05) / (black + 0.05) == pytest.approx(21)


def test_an_unknown_drawing_is_said_with_what_there_is() -> None:
    with pytest.raises(BadInput, match=r"juggle.*wave"):
        frames("juggle", columns=40, lines=18, encoding=Encoding.HALVES)


@pytest.mark.parametrize("encoding", Encoding)
@pytest.mark.parametrize(("columns", "lines"), SIZES)
def test_frames_fill_the_space_that_was_asked(columns: int, lines: int, encoding: Encoding) -> None:
    for cells in frames("wave", columns=columns, lines=lines, encoding=encoding):
        assert (cells.columns, cells.lines) == (columns, lines)


@pytest.mark.parametrize("key", KEYS)
def test_hand_arm_and_tool_stay_inside_the_frame(key: str) -> None:
    for drawing, step in zip(drawn(key), MOTIONS[key].steps, strict=True):
        acting = compose(MOTIONS[key], step).acting
        if acting:
            assert inside(bounds(acting), drawing.frame)


def inside(held: Frame, frame: Frame) -> bool:
    return (
        held.left >= frame.left
        and held.top >= frame.top
        and held.left + held.width <= frame.left + frame.width
        and held.top + held.height <= frame.top + frame.height
    )


@pytest.mark.parametrize("key", KEYS)
def test_the_hand_never_covers_an_eye(key: str) -> None:
    eyes = EYES[MOTIONS[key].view]
    for drawing, step in zip(drawn(key), MOTIONS[key].steps, strict=True):
        acting = compose(MOTIONS[key], step).acting
        for x, y in eyes:
            around = Frame(left=x - 2.5, top=y - 2, width=5, height=4)
            bare = replace(drawing, shapes=(), frame=around)
            covered = replace(bare, shapes=acting)
            assert (
                raster(bare, width=10, height=8, outline=0)
                == raster(covered, width=10, height=8, outline=0)
            ).all()


@pytest.mark.parametrize("key", KEYS)
def test_the_hand_starts_from_the_viewers_left(key: str) -> None:
    motion = MOTIONS[key]
    if motion.hand is not None:
        assert all(pose.wrist[0] < FACE[0] for pose in motion.poses)


def test_an_open_palm_has_its_thumb_toward_the_head() -> None:
    # The left hand, palm away, has its thumb to the right; so it is in a mirror (anatomy).
    for key in ("wave", "stop"):
        pose = MOTIONS[key].poses[0]
        hand = Hand(
            shape=MOTIONS[key].hand or HandShape.OPEN,
            wrist=pose.wrist,
            turned=0,
            thumb_right=MOTIONS[key].thumb_right,
        )
        assert hand.at(8, 11)[0] > hand.at(8, 0)[0]


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("key", MOVING)
def test_a_movement_can_be_seen(key: str, size: tuple[int, int]) -> None:
    loop = halves(key, size)
    share = max(float((np.abs(f - loop[0]).max(axis=2) > 40).mean()) for f in loop)
    # The least is a smile, about fourteen half cells of a thousand.
    assert share >= 0.012


@pytest.mark.parametrize("key", MOVING)
def test_no_two_frames_in_turn_flash(key: str) -> None:
    # WCAG 2.3.1 (from memory): a flash is a change of a tenth of the greatest luminance, over a
    # quarter of the middle of the view. Nothing is as large, so nothing is counted a second.
    loop = halves(key, SIZES[0])
    for before, after in pairwise([*loop, loop[0]]):
        changed = np.abs(luminance(after) - luminance(before)) > 0.1
        assert changed.mean() < 0.25


@pytest.mark.parametrize("key", MOVING)
def test_a_loop_closes_without_a_jump(key: str) -> None:
    loop = halves(key, SIZES[0])
    steps = [float(np.abs(b - a).mean()) for a, b in pairwise([*loop, loop[0]])]
    assert steps[-1] <= 1.2 * max(steps[:-1])


def test_frames_are_the_same_every_time() -> None:
    for key in KEYS:
        first = frames(key, columns=24, lines=9, encoding=Encoding.BLOCKS)
        frames.cache_clear()
        assert frames(key, columns=24, lines=9, encoding=Encoding.BLOCKS) == first


def test_no_two_gestures_look_the_same() -> None:
    first = {key: halves(key, SIZES[1])[0] for key in KEYS}
    for a, b in combinations(KEYS, 2):
        differing = (np.abs(first[a] - first[b]).max(axis=2) > 40).mean()
        assert differing > 0.05, (a, b)
