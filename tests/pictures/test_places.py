from __future__ import annotations

from itertools import permutations

import numpy as np
import pytest

from drills.core.meanings import Place, Relation, Scene
from drills.pictures import CONTAINERS, THING_KEYS, drawing
from drills.pictures.geometry import bounds
from drills.pictures.places import parts
from drills.pictures.raster import raster
from drills.pictures.shapes import Drawing, Mark

PAIRS = tuple(permutations(THING_KEYS, 2))
_FLAT = {"shade": (0, 0, 0), "thing": (255, 0, 0), "landmark": (0, 0, 255)}


def _painted(place: Place, *names: str) -> np.ndarray:
    """The scene with each thing in one flat colour, only `names` painted."""
    flat = tuple(
        type(shape)(
            **{
                **{field: getattr(shape, field) for field in shape.__dataclass_fields__},
                "fill": _FLAT[name],
                "outline": None,
            }
        )
        for name, shapes in parts(place)
        if name in names
        for shape in shapes
        if not isinstance(shape, Mark)
    )
    frame = drawing(Scene(meaning=place), columns=38, lines=15).frame
    made = Drawing(shapes=flat, frame=frame, sky=(0, 0, 0), ground=None)
    return raster(made, width=152, height=120, supersample=1)


def _seen(place: Place, name: str) -> float:
    """The share of the thing or landmark that nothing hides."""
    channel = 0 if name == "thing" else 2
    alone = _painted(place, name)[:, :, channel] > 0
    together = _painted(place, "thing", "landmark")[:, :, channel] > 0
    return float(together.sum() / alone.sum())


def _extent(place: Place, name: str):
    return bounds(shape for part, shapes in parts(place) if part == name for shape in shapes)


@pytest.mark.parametrize(("thing", "landmark"), PAIRS)
def test_in_front_hides_some_of_the_landmark_and_stands_lower(thing, landmark):
    place = Place(relation=Relation.IN_FRONT_OF, thing=thing, landmark=landmark)
    assert _seen(place, "thing") == 1.0
    assert 0.45 <= _seen(place, "landmark") <= 0.97
    front, back = _extent(place, "thing"), _extent(place, "landmark")
    assert front.top + front.height >= back.top + back.height + 9
    assert back.top < front.top + 2


@pytest.mark.parametrize(("thing", "landmark"), PAIRS)
def test_behind_is_in_front_with_the_things_exchanged(thing, landmark):
    behind = Place(relation=Relation.BEHIND, thing=thing, landmark=landmark)
    assert _seen(behind, "landmark") == 1.0
    assert 0.45 <= _seen(behind, "thing") <= 0.97
    far, near = _extent(behind, "thing"), _extent(behind, "landmark")
    assert far.left + far.width / 2 < near.left + near.width / 2 + 1


@pytest.mark.parametrize(("thing", "landmark"), PAIRS)
def test_on_rests_on_top_and_under_is_its_reverse(thing, landmark):
    on = Place(relation=Relation.ON, thing=thing, landmark=landmark)
    above, below = _extent(on, "thing"), _extent(on, "landmark")
    assert below.top - 1 <= above.top + above.height <= below.top + 0.45 * below.height
    assert above.left < below.left + below.width
    assert below.left < above.left + above.width
    under = Place(relation=Relation.UNDER, thing=landmark, landmark=thing)
    assert [shapes for _, shapes in parts(on)] == [shapes for _, shapes in parts(under)]


@pytest.mark.parametrize(("thing", "landmark"), [pair for pair in PAIRS if pair[1] in CONTAINERS])
def test_in_is_held_by_the_landmark_and_still_seen(thing, landmark):
    place = Place(relation=Relation.IN, thing=thing, landmark=landmark)
    inner, outer = _extent(place, "thing"), _extent(place, "landmark")
    assert outer.left <= inner.left
    assert inner.left + inner.width <= outer.left + outer.width
    assert 0.35 <= _seen(place, "thing") <= 0.8


@pytest.mark.parametrize(("thing", "landmark"), PAIRS)
def test_next_to_stands_level_and_apart(thing, landmark):
    place = Place(relation=Relation.NEXT_TO, thing=thing, landmark=landmark)
    left, right = _extent(place, "thing"), _extent(place, "landmark")
    assert left.left + left.width + 3 < right.left
    assert abs(left.top + left.height - right.top - right.height) < 2


def test_nothing_is_put_into_a_thing_without_an_opening():
    with pytest.raises(ValueError, match="nothing can be put"):
        parts(Place(relation=Relation.IN, thing="cup", landmark="bell"))
