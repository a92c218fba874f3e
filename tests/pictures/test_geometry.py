from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from drills.pictures.geometry import bounds, mirrored, turn
from drills.pictures.shapes import Ellipse, Mark, Polygon, Stroke

coordinate = st.floats(-100, 100)
point = st.tuples(coordinate, coordinate)
points = st.lists(point, min_size=3, max_size=6).map(tuple)
colour = st.just((10, 20, 30))
shapes = st.one_of(
    st.builds(
        Ellipse,
        centre=point,
        radii=st.tuples(st.floats(1, 30), st.floats(1, 30)),
        fill=colour,
        angle=st.floats(-180, 180),
    ),
    st.builds(Polygon, points=points, fill=colour),
    st.builds(Stroke, points=points, width=st.floats(1, 9), fill=colour),
    st.builds(Mark, at=point, fill=colour),
)


@given(shapes)
def test_a_shape_mirrored_twice_is_itself(shape):
    assert mirrored(mirrored(shape)) == shape


@given(shapes)
def test_a_mirror_image_has_the_mirrored_bounds(shape):
    one, other = bounds([shape]), bounds([mirrored(shape)])
    assert abs(other.left + one.left + one.width) < 1e-6
    assert (other.top, other.height) == (one.top, one.height)


def test_an_upright_ellipse_on_its_side_is_as_wide_as_it_was_high():
    box = bounds([Ellipse(centre=(5, 5), radii=(10, 3), fill=(0, 0, 0), angle=90)])
    assert round(box.width, 9) == 6
    assert round(box.height, 9) == 20


def test_a_quarter_turn_takes_right_to_down():
    x, y = turn((1.0, 0.0), 90)
    assert abs(x) < 1e-12
    assert abs(y - 1) < 1e-12
