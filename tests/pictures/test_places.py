from __future__ import annotations

from itertools import permutations

import numpy as np
import pytest

from drills.core.meanings import Place, Relation, Scene
from drills.pictures import THING_KEYS, can_draw, drawing
from drills.pictures.geometry import bounds
from drills.pictures.places import parts
from drills.pictures.raster import raster
from drills.pictures.shapes import Drawing, Mark


def _drawable(relation: Relation, stride: int = 7) -> list[tuple[str, str]]:
    """A spread of pairs; tests/bench/bench_pictures.py tries them all."""
    return [
        (thing, landmark)
        for thing, landmark in permutations(THING_KEYS, 2)
        if can_draw(Place(relation=relation, thing=thing, landmark=landmark))
    ][::stride]


WITH_ROOM = ("chair", "table", "tree", "umbrella")
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


@pytest.mark.parametrize(("thing", "landmark"), _drawable(Relation.IN_FRONT_OF))
def test_in_front_hides_some_of_the_landmark_and_stands_lower(thing, landmark):
    place = Place(relation=Relation.IN_FRONT_OF, thing=thing, landmark=landmark)
    assert _seen(place, "thing") == 1.0
    assert 0.42 <= _seen(place, "landmark") <= 0.98
    front, back = _extent(place, "thing"), _extent(place, "landmark")
    assert front.top + front.height >= back.top + back.height + 9
    assert back.top < front.top + 2


@pytest.mark.parametrize(("thing", "landmark"), _drawable(Relation.BEHIND))
def test_behind_is_in_front_with_the_things_exchanged(thing, landmark):
    behind = Place(relation=Relation.BEHIND, thing=thing, landmark=landmark)
    assert _seen(behind, "landmark") == 1.0
    assert 0.42 <= _seen(behind, "thing") <= 0.98
    far, near = _extent(behind, "thing"), _extent(behind, "landmark")
    assert far.left + far.width / 2 < near.left + near.width / 2 + 1


@pytest.mark.parametrize(("thing", "landmark"), _drawable(Relation.ON))
def test_on_rests_on_top_and_under_is_its_reverse(thing, landmark):
    on = Place(relation=Relation.ON, thing=thing, landmark=landmark)
    above, below = _extent(on, "thing"), _extent(on, "landmark")
    assert below.top - 2 <= above.top + above.height <= below.top + 0.62 * below.height
    assert above.left < below.left + below.width
    assert below.left < above.left + above.width
    under = Place(relation=Relation.UNDER, thing=landmark, landmark=thing)
    if thing in WITH_ROOM:
        return  # what is under it stands between its legs
    assert [shapes for _, shapes in parts(on)] == [shapes for _, shapes in parts(under)]


@pytest.mark.parametrize(("thing", "landmark"), _drawable(Relation.IN, 4))
def test_in_is_held_by_the_landmark_and_still_seen(thing, landmark):
    place = Place(relation=Relation.IN, thing=thing, landmark=landmark)
    inner, outer = _extent(place, "thing"), _extent(place, "landmark")
    assert outer.left <= inner.left
    assert inner.left + inner.width <= outer.left + outer.width
    # A tent's door is open to the ground.
    most = 1.0 if landmark == "tent" else 0.96
    assert 0.35 <= _seen(place, "thing") <= most


@pytest.mark.parametrize(("thing", "landmark"), _drawable(Relation.NEXT_TO, 29))
def test_next_to_stands_level_and_apart(thing, landmark):
    place = Place(relation=Relation.NEXT_TO, thing=thing, landmark=landmark)
    left, right = _extent(place, "thing"), _extent(place, "landmark")
    assert left.left + left.width + 3 < right.left
    assert abs(left.top + left.height - right.top - right.height) < 3.5


@pytest.mark.parametrize("landmark", WITH_ROOM)
def test_under_stands_in_the_room_below(landmark):
    found = [thing for thing, other in _drawable(Relation.UNDER, 1) if other == landmark]
    assert len(found) >= 12
    for thing in found:
        place = Place(relation=Relation.UNDER, thing=thing, landmark=landmark)
        low, over = _extent(place, "thing"), _extent(place, "landmark")
        assert over.left <= low.left
        assert low.left + low.width <= over.left + over.width
        assert low.top > over.top + 0.1 * over.height
        assert _seen(place, "thing") >= 0.55, place


def test_nothing_is_put_into_a_thing_without_an_opening():
    with pytest.raises(ValueError, match="nothing can be put"):
        parts(Place(relation=Relation.IN, thing="cup", landmark="bell"))
