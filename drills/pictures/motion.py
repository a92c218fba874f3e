"""How a part of a picture moves through one round; 0 is the still picture."""

from __future__ import annotations

import math

Step = tuple[float, float]


def rise(at: float) -> float:
    """0 in the still picture, 1 half a round later, 0 again at the end."""
    return (1 - math.cos(2 * math.pi * at)) / 2


def swing(at: float) -> float:
    """To 1 and to -1 and back within one round; 0 in the still picture."""
    return math.sin(2 * math.pi * at)


def paced(at: float, near: Step, far: Step) -> tuple[Step, Step]:
    """The two feet on their way to each other's place; the one that goes forward is lifted."""
    share, lift = rise(at), swing(at)
    lifted = 0.16 * abs(near[0] - far[0])
    back_lift, fore_lift = lifted * max(0.0, -lift), lifted * max(0.0, lift)
    return (
        (near[0] + (far[0] - near[0]) * share, near[1] + (far[1] - near[1]) * share + back_lift),
        (far[0] + (near[0] - far[0]) * share, far[1] + (near[1] - far[1]) * share + fore_lift),
    )
