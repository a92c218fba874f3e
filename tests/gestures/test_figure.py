"""The arm and the hand as geometry."""

from math import dist

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from drills.gestures.figure import bend
from drills.gestures.hands import Hand, HandShape, draw
from drills.pictures.geometry import bounds

places = st.floats(-40, 40)


@given(places, places, st.booleans())
def test_a_bent_arm_keeps_the_length_of_its_bones(x: float, y: float, left: bool) -> None:
    # The definition: the elbow lies on a circle round each end, of radius 25 and 24.
    assume(1.1 < dist((0, 0), (x, y)) < 49)
    elbow = bend((0, 0), (x, y), left)
    assert dist((0, 0), elbow) == pytest.approx(25)
    assert dist((x, y), elbow) == pytest.approx(24)


def test_the_elbow_bends_to_the_side_that_was_asked() -> None:
    assert bend((0, 0), (0, -30), True)[0] < 0 < bend((0, 0), (0, -30), False)[0]


def test_a_reach_too_long_straightens_the_arm() -> None:
    elbow = bend((0, 0), (100, 0), True)
    assert elbow == pytest.approx((25, 0))


@pytest.mark.parametrize("shape", HandShape)
@pytest.mark.parametrize("turned", [0.0, 90.0, -130.0])
def test_every_hand_is_near_its_wrist_and_of_a_hands_size(shape: HandShape, turned: float) -> None:
    layers = draw(Hand(shape=shape, wrist=(5, 7), turned=turned, thumb_right=True, bend=0.5))
    held = bounds((*layers.under, *layers.over))
    assert held.left - 1 <= 5 <= held.left + held.width + 1
    assert held.top - 1 <= 7 <= held.top + held.height + 1
    assert 10 < held.width < 40
    assert 10 < held.height < 40


def test_the_other_side_of_the_thumb_is_the_mirror_image() -> None:
    one, other = (
        Hand(shape=HandShape.OPEN, wrist=(0, 0), turned=0, thumb_right=right)
        for right in (True, False)
    )
    for along, across in ((0, 5), (12, -3), (20, 8)):
        x, y = one.at(along, across)
        assert other.at(along, across) == pytest.approx((-x, y))


def test_fingers_bend_as_they_are_told() -> None:
    # Seen from the edge, closed fingers come back over the palm: half the length is left.
    straight, bent = (
        bounds(
            draw(
                Hand(shape=HandShape.BECKON, wrist=(0, 0), turned=0, thumb_right=True, bend=amount)
            ).over
        )
        for amount in (0.0, 1.0)
    )
    assert bent.height < 0.6 * straight.height
