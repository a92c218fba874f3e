from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from drills.pictures.geometry import distance
from drills.pictures.skeleton import MIDDLE, SQUAT, TALL, build_for, reach

coordinates = st.floats(-60, 60)
points = st.tuples(coordinates, coordinates)
lengths = st.floats(5, 30)


@given(points, points, lengths, lengths, st.sampled_from((-1, 1)))
def test_bones_keep_their_lengths(root, target, upper, lower, bend):
    limb = reach(root, target, upper, lower, bend)
    assert abs(distance(limb.root, limb.joint) - upper) < 1e-6
    assert abs(distance(limb.joint, limb.end) - lower) < 1e-3


@given(points, points, lengths, lengths, st.sampled_from((-1, 1)))
def test_a_target_within_reach_is_reached(root, target, upper, lower, bend):
    limb = reach(root, target, upper, lower, bend)
    span = distance(root, target)
    if abs(upper - lower) + 1e-3 < span < (upper + lower) * 0.998:
        assert distance(limb.end, target) < 1e-6
    else:
        assert distance(root, limb.end) <= upper + lower


def test_a_three_four_five_triangle_bends_at_a_right_angle():
    # Euclid's triangle: bones 3 and 4, target 5 away, so the joint is square.
    limb = reach((0.0, 0.0), (5.0, 0.0), 3.0, 4.0, 1)
    assert abs(limb.joint[0] - 1.8) < 1e-9
    assert abs(limb.joint[1] - 2.4) < 1e-9


def test_heads_are_larger_where_rows_are_few():
    shares = [build.head * 2 / build.stature for build in (TALL, MIDDLE, SQUAT)]
    assert shares == sorted(shares)
    assert [build_for(lines) for lines in (20, 15, 9)] == [TALL, MIDDLE, SQUAT]
    # A standing grown-up is four heads high or more where there is room.
    assert shares[0] <= 0.25
