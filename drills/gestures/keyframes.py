"""Movements as a few key poses, and the frames between them."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from drills.gestures import figure
from drills.gestures.figure import Arm, Mouth, View
from drills.gestures.hands import Hand, HandShape
from drills.gestures.tools import SKY
from drills.pictures.geometry import between, bounds
from drills.pictures.shapes import Drawing, Frame, Point, Shape

TO_AND_FRO = (0.0, 0.15, 0.5, 0.85, 1.0, 0.85, 0.5, 0.15)
"""Out and back between two poses, slow at both ends."""

ROUND = (0.0, 0.5, 1.0, 1.5, 2.0, 2.5, 3.0, 3.5)
"""Round through four poses and on to the first again."""

HELD = (0.0,)
"""One pose, held."""

Tool = Callable[[Hand, float], tuple[Shape, ...]]
"""Draws what the hand pretends to hold, from the hand and the pose's `amount`."""

_HEAD_AND_CHEST: tuple[Point, Point] = ((-4.0, 4.0), (44.0, 72.0))
_MARGIN = 3.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Pose:
    """One moment.   turned: of the hand, see `Hand`.   amount: 0 to 1, for fingers, tool, mouth."""

    wrist: Point = (-30.0, 88.0)
    turned: float = 0.0
    amount: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Motion:
    """A gesture as it is drawn.

    steps: for each frame its place on the way through `poses`, which closes on itself.
    hand: None shows the face alone.   scenery: what the pretend tool works on.
    signs: thin lines that say how it moves.   behind_head: the hand is beyond the head.
    elbow: where the elbow stays when the arm comes toward the viewer; else it follows the hand.
    """

    view: View
    poses: tuple[Pose, ...]
    steps: tuple[float, ...]
    hand: HandShape | None
    thumb_right: bool = True
    elbow_left: bool = True
    elbow: Point | None = None
    size: float = 1.0
    slim: float = 1.0
    seated: bool = True
    mouth: Mouth = Mouth.PLAIN
    tool: Tool | None = None
    scenery: tuple[Shape, ...] = ()
    signs: tuple[Shape, ...] = ()
    behind_head: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Scene:
    """One frame before it is framed.   acting: hand, arm, tool and what it works on."""

    shapes: tuple[Shape, ...]
    acting: tuple[Shape, ...]


def pose_at(motion: Motion, step: float) -> Pose:
    """The pose at a place on the way: 1.5 is half-way from the second pose to the third."""
    count = len(motion.poses)
    number = int(step)
    here, there = motion.poses[number % count], motion.poses[(number + 1) % count]
    share = step - number
    return Pose(
        wrist=between(here.wrist, there.wrist, share),
        turned=here.turned + (there.turned - here.turned) * share,
        amount=here.amount + (there.amount - here.amount) * share,
    )


def compose(motion: Motion, step: float) -> Scene:
    """Everything that is painted at one place on the way."""
    pose = pose_at(motion, step)
    view = motion.view
    back = (
        *figure.body(view),
        *figure.resting(view, seated=motion.seated),
        *motion.scenery,
    )
    face = figure.head(view, motion.mouth, pose.amount)
    if motion.hand is None:
        return Scene(shapes=(*back, *face, *motion.signs), acting=motion.signs)
    arm = Arm(
        hand=Hand(
            shape=motion.hand,
            wrist=pose.wrist,
            turned=pose.turned,
            thumb_right=motion.thumb_right,
            bend=pose.amount,
            size=motion.size,
            slim=motion.slim,
        ),
        elbow_left=motion.elbow_left,
        elbow=motion.elbow,
    )
    tool = motion.tool(arm.hand, pose.amount) if motion.tool else ()
    hand = figure.hand_layers(arm, tool)
    sleeve = figure.arm(view, arm)
    moving = (*sleeve, *hand)
    middle = (*moving, *face) if motion.behind_head else (*face, *moving)
    return Scene(
        shapes=(*back, *middle, *motion.signs),
        acting=(*hand, *sleeve, *motion.scenery, *motion.signs),
    )


def drawings(motion: Motion) -> tuple[Drawing, ...]:
    """The frames of a movement, all in the one frame that holds hand and elbow at their widest."""
    scenes = [compose(motion, step) for step in motion.steps]
    frame = _frame(motion, scenes)
    return tuple(
        Drawing(shapes=scene.shapes, frame=frame, sky=SKY, ground=None) for scene in scenes
    )


def _frame(motion: Motion, scenes: list[Scene]) -> Frame:
    if motion.hand is None:
        return Frame(left=-14, top=4, width=56, height=50)
    held = bounds([shape for scene in scenes for shape in scene.acting])
    (left, top), (right, bottom) = _HEAD_AND_CHEST
    left, top = min(left, held.left) - _MARGIN, min(top, held.top) - _MARGIN
    right = max(right, held.left + held.width) + _MARGIN
    bottom = max(bottom, held.top + held.height + _MARGIN)
    return Frame(left=left, top=top, width=right - left, height=bottom - top)
