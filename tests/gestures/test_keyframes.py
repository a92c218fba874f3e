"""Poses between poses, and what a scene holds."""

import pytest

from drills.gestures.figure import Mouth, View
from drills.gestures.hands import HandShape
from drills.gestures.keyframes import (
    HELD,
    ROUND,
    TO_AND_FRO,
    Motion,
    Pose,
    compose,
    drawings,
    pose_at,
)
from drills.gestures.tools import sign, toothbrush
from drills.pictures.shapes import Mark

SQUARE = Motion(
    view=View.FRONT,
    hand=HandShape.FLAT,
    poses=(
        Pose(wrist=(-50, 40)),
        Pose(wrist=(-40, 40), turned=20),
        Pose(wrist=(-40, 60), amount=1),
        Pose(wrist=(-50, 60)),
    ),
    steps=ROUND,
)


def test_a_pose_on_the_way_is_between_its_neighbours() -> None:
    assert pose_at(SQUARE, 0.5) == Pose(wrist=(-45, 40), turned=10)
    assert pose_at(SQUARE, 1.25) == Pose(wrist=(-40, 45), turned=15, amount=0.25)


def test_the_last_pose_leads_back_to_the_first() -> None:
    assert pose_at(SQUARE, 3.5) == Pose(wrist=(-50, 50))
    assert pose_at(SQUARE, 4.0) == pose_at(SQUARE, 0.0)


def test_to_and_fro_comes_back_by_the_way_it_went() -> None:
    assert TO_AND_FRO[0] == 0
    assert max(TO_AND_FRO) == TO_AND_FRO[4] == 1
    assert TO_AND_FRO[1:4] == TO_AND_FRO[:4:-1]


def test_all_frames_of_a_movement_share_one_frame() -> None:
    assert len({drawing.frame for drawing in drawings(SQUARE)}) == 1


def test_a_hand_beyond_the_head_is_painted_before_it() -> None:
    def hand_comes_first(behind: bool) -> bool:
        motion = Motion(
            view=View.FRONT, hand=HandShape.GRIP, tool=toothbrush, poses=(Pose(wrist=(-5, 45)),),
            steps=HELD, behind_head=behind,
        )  # fmt: skip
        scene = compose(motion, 0)
        eye = next(n for n, shape in enumerate(scene.shapes) if isinstance(shape, Mark))
        return scene.shapes.index(scene.acting[0]) < eye

    assert hand_comes_first(True)
    assert not hand_comes_first(False)


@pytest.mark.parametrize("mouth", [Mouth.PUFFED, Mouth.TEETH])
def test_a_face_alone_has_no_hand_but_changes(mouth: Mouth) -> None:
    motion = Motion(
        view=View.FRONT, hand=None, mouth=mouth, poses=(Pose(amount=1), Pose()), steps=TO_AND_FRO,
        signs=(sign((0, 0), (1, 1)),),
    )  # fmt: skip
    assert compose(motion, 0).acting == motion.signs
    assert compose(motion, 0).shapes != compose(motion, 1).shapes
