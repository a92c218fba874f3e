"""Where things are: in, on, under, behind, in front of, next to. The thing stands on the left."""

from __future__ import annotations

from dataclasses import replace

from drills.core.meanings import Place, Relation
from drills.pictures.objects import OPEN, THINGS, UPRIGHT, Thing
from drills.pictures.shapes import Ellipse, Mark, Polygon, Shape, Stroke

CONTAINERS = ("cup", "box", "hat", "shoe", "bucket")
_SHADE = (170, 154, 128)


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


def _inside(thing: Thing, landmark: Thing) -> tuple[Shape, ...]:
    """The landmark is large, and the thing stands out of its mouth by half."""
    assert landmark.mouth is not None
    large = 1.7
    x, height, half = (part * large for part in landmark.mouth)
    size = min(1.15, 2 * half / thing.width)
    sunk = thing.height * size * 0.42
    return (
        _shadow(landmark, 0, 0, large),
        *put(landmark.back, 0, 0, large),
        *put(thing.shapes, x, -height + sunk, size),
        *put(landmark.front, 0, 0, large),
    )


def _upon(upper: Thing, lower: Thing) -> tuple[Shape, ...]:
    return (
        _shadow(lower, 0, 0),
        *put(lower.shapes, 0, 0),
        *put(upper.shapes, 0, -lower.rest),
    )


def _before(near: Thing, far: Thing) -> tuple[Shape, ...]:
    """`near` stands lower and overlaps `far`, which shows above and at the right."""
    offset = near.width * 0.5 + far.width * 0.5 - min(near.width, far.width) * 0.48
    lift = max(13.0, near.height * 0.62 - far.height * 0.35)
    return (
        _shadow(far, offset, -lift),
        *put(far.shapes, offset, -lift),
        _shadow(near, 0, 0),
        *put(near.shapes, 0, 0),
    )


def _beside(thing: Thing, landmark: Thing) -> tuple[Shape, ...]:
    offset = thing.width * 0.5 + landmark.width * 0.5 + 9
    return (
        _shadow(thing, 0, 0),
        _shadow(landmark, offset, 0),
        *put(thing.shapes, 0, 0),
        *put(landmark.shapes, offset, 0),
    )


def arrange(place: Place) -> tuple[Shape, ...]:
    """The things of `place`, the located one on the left where sides apply.

    Raises: KeyError for a thing that has no drawing.
    """
    thing, landmark = place.thing, place.landmark
    match place.relation:
        case Relation.IN:
            return _inside(UPRIGHT[thing](), OPEN[landmark]())
        case Relation.ON:
            return _upon(THINGS[thing](), THINGS[landmark]())
        case Relation.UNDER:
            return _upon(THINGS[landmark](), THINGS[thing]())
        case Relation.IN_FRONT_OF:
            return _before(UPRIGHT[thing](), UPRIGHT[landmark]())
        case Relation.BEHIND:
            near, far = UPRIGHT[landmark](), UPRIGHT[thing]()
            return _flipped(_before(near, far))
        case Relation.NEXT_TO:
            return _beside(UPRIGHT[thing](), UPRIGHT[landmark]())


def _flipped(shapes: tuple[Shape, ...]) -> tuple[Shape, ...]:
    from drills.pictures.geometry import mirrored

    return tuple(mirrored(shape) for shape in shapes)
