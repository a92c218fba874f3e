"""Every gesture's movement, by the key of its drawing."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from drills.gestures import tools
from drills.gestures.figure import Mouth, View
from drills.gestures.hands import HandShape
from drills.gestures.keyframes import HELD, ROUND, TO_AND_FRO, Motion, Pose
from drills.gestures.tools import sign

_TOOLS = {
    "brush-teeth": Motion(
        view=View.FRONT, hand=HandShape.GRIP, mouth=Mouth.TEETH, tool=tools.toothbrush,
        poses=(Pose(wrist=(-10, 47), turned=8, amount=0.6),
               Pose(wrist=(-21, 47), turned=8, amount=0.6)),
        steps=TO_AND_FRO,
    ),
    "comb-hair": Motion(
        view=View.FRONT, hand=HandShape.PINCH, tool=tools.comb,
        poses=(Pose(wrist=(-28, 9), turned=82), Pose(wrist=(-33, 30), turned=48)),
        steps=TO_AND_FRO,
    ),
    "drink": Motion(
        view=View.SIDE, hand=HandShape.ROUND, mouth=Mouth.SIP, tool=tools.cup,
        poses=(Pose(wrist=(-1, 50), turned=-62), Pose(wrist=(-10, 70), turned=-90)),
        steps=(0, 0, 0.25, 0.75, 1, 1, 0.6, 0.2),
    ),
    "stir": Motion(
        view=View.SIDE, hand=HandShape.PINCH, tool=tools.spoon, scenery=tools.CUP_ON_TABLE,
        poses=(Pose(wrist=(-8, 53), turned=-100), Pose(wrist=(-15, 56), turned=-100),
               Pose(wrist=(-22, 53), turned=-100), Pose(wrist=(-15, 50), turned=-100)),
        steps=ROUND,
    ),
    "turn-key": Motion(
        view=View.SIDE, hand=HandShape.PINCH, tool=tools.key, scenery=tools.LOCK, seated=False,
        size=1.2,
        signs=(sign((-45, 61), (-38, 56), (-28, 56), (-22, 61)),
               sign((-27, 61), (-22, 62), (-21, 57))),
        poses=(Pose(wrist=(-2, 79), turned=-90), Pose(wrist=(-2, 79), turned=-90, amount=1)),
        steps=TO_AND_FRO,
    ),
    "hammer": Motion(
        view=View.SIDE, hand=HandShape.GRIP, tool=tools.hammer, scenery=tools.NAIL,
        poses=(Pose(wrist=(-18, 76), turned=-155), Pose(wrist=(-16, 62), turned=-78)),
        steps=TO_AND_FRO,
    ),
    "paint": Motion(
        view=View.SIDE, hand=HandShape.PINCH, tool=tools.flat_brush, scenery=tools.FENCE,
        seated=False,
        poses=(Pose(wrist=(-12, 46), turned=-80), Pose(wrist=(-12, 84), turned=-100)),
        steps=TO_AND_FRO,
    ),
    "wipe-window": Motion(
        view=View.FRONT, hand=HandShape.FLAT, tool=tools.cloth, scenery=tools.PANE, seated=False,
        size=1.2,
        poses=(Pose(wrist=(-52, 66), turned=-28), Pose(wrist=(-38, 56), turned=-6),
               Pose(wrist=(-22, 66), turned=16), Pose(wrist=(-38, 74), turned=-6)),
        steps=ROUND,
    ),
    "remote": Motion(
        view=View.SIDE, hand=HandShape.PRESS, tool=tools.remote,
        poses=(Pose(wrist=(-14, 66), turned=-90), Pose(wrist=(-14, 66), turned=-90, amount=1)),
        steps=TO_AND_FRO,
        signs=(sign((-57, 56), (-60, 60), (-57, 64)), sign((-63, 53), (-67, 60), (-63, 67))),
    ),
    "phone": Motion(
        view=View.FRONT, hand=HandShape.ROUND, tool=tools.phone, thumb_right=False,
        poses=(Pose(wrist=(-18, 35), turned=84),), steps=HELD,
    ),
}  # fmt: skip

_SIGNALS = {
    "wave": Motion(
        view=View.FRONT, hand=HandShape.OPEN, mouth=Mouth.SMILE,
        poses=(Pose(wrist=(-38, 42), turned=-28), Pose(wrist=(-30, 42), turned=24)),
        steps=TO_AND_FRO,
    ),
    "come-here": Motion(
        view=View.SIDE, hand=HandShape.BECKON, mouth=Mouth.SMILE,
        poses=(Pose(wrist=(-20, 62), turned=-85), Pose(wrist=(-18, 60), turned=-70, amount=1)),
        steps=TO_AND_FRO,
        signs=(sign((-44, 46), (-38, 40), (-30, 38), (-22, 40)),
               sign((-27, 36), (-22, 40), (-26, 44))),
    ),
    "stop": Motion(
        view=View.FRONT, hand=HandShape.FLAT, size=1.35, elbow=(-22, 88),
        poses=(Pose(wrist=(-16, 72), turned=-4),), steps=HELD,
    ),
    "very-good": Motion(
        view=View.FRONT, hand=HandShape.THUMB, mouth=Mouth.SMILE, thumb_right=False, size=1.2,
        elbow=(-30, 90), poses=(Pose(wrist=(-24, 74), turned=90),), steps=HELD,
    ),
    "be-quiet": Motion(
        view=View.FRONT, hand=HandShape.POINT, elbow=(-22, 84),
        poses=(Pose(wrist=(8, 63), turned=2),), steps=HELD,
    ),
    "listen": Motion(
        view=View.FRONT, hand=HandShape.FLAT, behind_head=True,
        poses=(Pose(wrist=(-3, 45), turned=-16),), steps=HELD,
        signs=(sign((-26, 22), (-24, 28), (-26, 34)), sign((-33, 19), (-30, 28), (-33, 37)),
               sign((-40, 16), (-36, 28), (-40, 40))),
    ),
}  # fmt: skip

_POSITIONS = {
    "palm-on-head": Motion(
        view=View.FRONT, hand=HandShape.FLAT, slim=0.55, elbow=(-31, 36),
        poses=(Pose(wrist=(-2, 5), turned=94),), steps=HELD,
    ),
    "hand-on-collarbone": Motion(
        view=View.FRONT, hand=HandShape.FLAT, thumb_right=False, elbow=(-18, 92),
        poses=(Pose(wrist=(11, 74), turned=54),), steps=HELD,
    ),
}  # fmt: skip

_MOUTHS = {
    "puff-cheeks": Motion(
        view=View.FRONT, hand=None, mouth=Mouth.PUFFED,
        poses=(Pose(amount=1), Pose(amount=0)), steps=(0, 0, 0, 0.5, 1, 1, 0.5, 0),
    ),
    "smile-wide": Motion(
        view=View.FRONT, hand=None, mouth=Mouth.TEETH,
        poses=(Pose(amount=1), Pose(amount=0)), steps=(0, 0, 0, 0.5, 1, 1, 0.5, 0),
    ),
}  # fmt: skip

MOTIONS: Mapping[str, Motion] = MappingProxyType(_TOOLS | _SIGNALS | _POSITIONS | _MOUTHS)
