"""Where things are: in, on, under, behind, in front of, next to. The thing stands on the left."""

from __future__ import annotations

from dataclasses import replace

from drills.core.meanings import Place, Relation
from drills.pictures.geometry import mirrored
from drills.pictures.objects import OPEN, THINGS, UPRIGHT, Thing
from drills.pictures.shapes import Ellipse, Mark, Polygon, Shape, Stroke

CONTAINERS = ("cup", "box", "hat", "shoe", "bucket")
_SHADE = (170, 154, 128)

Parts = tuple[tuple[str, tuple[Shape, ...]], ...]


def put(shapes: tuple[Shape, ...], x: float, y: float, size: float = 1.0) -> tuple[Shape, ...]:
    """Shapes made at (0, 0), at `size` and moved to (x, y)."""

    def at(point: tuple[float, float]) -> tuple[float, float]:
        return (x + point[0] * size, y + point[1] * size)

    moved: list[Shape] = []
    for shape in shapes:
        match shape:
            case Ellipse():
                radii = (shape.radii[0] * size, shape.radii[1] * size)
                moved.append(replace(shape, centre=at(shape.centre), radii=radii))
            case Polygon():
                moved.append(replace(shape, points=tuple(map(at, shape.points))))
            case Stroke():
                points = tuple(map(at, shape.points))
                moved.append(replace(shape, points=points, width=shape.width * size))
            case Mark():
                moved.append(replace(shape, at=at(shape.at)))
    return tuple(moved)


def _shadow(thing: Thing, x: float, y: float, size: float = 1.0) -> Shape:
    return Ellipse(centre=(x + 2, y), radii=(thing.width * 0.52 * size, 3.0), fill=_SHADE)


def _inside(thing: Thing, landmark: Thing) -> Parts:
    """The landmark is large, and the thing stands out of its mouth by half."""
    if landmark.mouth is None:
        raise ValueError("nothing can be put into this thing")
    large = 1.7
    x, height, half = (part * large for part in landmark.mouth)
    size = min(1.15, 2 * half / thing.width)
    sunk = thing.height * size * 0.42
    return (
        ("shade", (_shadow(landmark, 0, 0, large),)),
        ("landmark", put(landmark.back, 0, 0, large)),
        ("thing", put(thing.shapes, x, -height + sunk, size)),
        ("landmark", put(landmark.front, 0, 0, large)),
    )


def _upon(upper: Thing, lower: Thing, names: tuple[str, str]) -> Parts:
    return (
        ("shade", (_shadow(lower, 0, 0),)),
        (names[1], put(lower.shapes, 0, 0)),
        (names[0], put(upper.shapes, lower.rest_at, -lower.rest)),
    )


def _before(near: Thing, far: Thing, names: tuple[str, str]) -> Parts:
    """`near` stands lower and overlaps `far`, which shows above and at the right."""
    hidden = 0.48 * min(sum(near.core), sum(far.core))
    offset = near.core[1] + far.core[0] - hidden
    lift = max(13.0, near.height * 0.62 - far.height * 0.35)
    return (
        ("shade", (_shadow(far, offset, -lift),)),
        (names[1], put(far.shapes, offset, -lift)),
        ("shade", (_shadow(near, 0, 0),)),
        (names[0], put(near.shapes, 0, 0)),
    )


def _beside(thing: Thing, landmark: Thing) -> Parts:
    offset = thing.width * 0.5 + landmark.width * 0.5 + 9
    return (
        ("shade", (_shadow(thing, 0, 0), _shadow(landmark, offset, 0))),
        ("thing", put(thing.shapes, 0, 0)),
        ("landmark", put(landmark.shapes, offset, 0)),
    )


def parts(place: Place) -> Parts:
    """The shapes of `place` in painting order, each group with what it is part of.

    The located thing is on the left where sides apply. Names: shade, thing, landmark.
    Raises: KeyError for a thing that has no drawing, ValueError for one that holds nothing.
    """
    thing, landmark = place.thing, place.landmark
    match place.relation:
        case Relation.IN:
            return _inside(UPRIGHT[thing](), OPEN[landmark]())
        case Relation.ON:
            return _upon(THINGS[thing](), THINGS[landmark](), ("thing", "landmark"))
        case Relation.UNDER:
            return _upon(THINGS[landmark](), THINGS[thing](), ("landmark", "thing"))
        case Relation.IN_FRONT_OF:
            return _before(UPRIGHT[thing](), UPRIGHT[landmark](), ("thing", "landmark"))
        case Relation.BEHIND:
            made = _before(UPRIGHT[landmark](), UPRIGHT[thing](), ("landmark", "thing"))
            return tuple((name, tuple(map(mirrored, shapes))) for name, shapes in made)
        case Relation.NEXT_TO:
            return _beside(UPRIGHT[thing](), UPRIGHT[landmark]())


def arrange(place: Place) -> tuple[Shape, ...]:
    """Every shape of `place`, as `parts` gives them."""
    return tuple(shape for _, shapes in parts(place) for shape in shapes)
