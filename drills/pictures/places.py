"""Where things are: in, on, under, behind, in front of, next to. The thing stands on the left."""

from __future__ import annotations

from drills.core.meanings import Place, Relation
from drills.pictures.geometry import mirrored, put
from drills.pictures.objects import CLOSED, OPEN, THINGS, UPRIGHT
from drills.pictures.shapes import Ellipse, Shape
from drills.pictures.thing import Thing

CONTAINERS = tuple(name for name in THINGS if OPEN[name]().mouth is not None)
_SHADE = (170, 154, 128)

Parts = tuple[tuple[str, tuple[Shape, ...]], ...]


def _shadow(thing: Thing, x: float, y: float, size: float = 1.0) -> Shape:
    return Ellipse(centre=(x + 2, y), radii=(thing.width * 0.52 * size, 3.0), fill=_SHADE)


_LARGE = 1.7


def _size_inside(thing: Thing, landmark: Thing) -> float:
    _, height, half = landmark.mouth or (0.0, 0.0, 0.0)
    most = 1.15 if height else 1.0
    return min(most, 2 * half * _LARGE / thing.width)


def _inside(thing: Thing, landmark: Thing) -> Parts:
    """The landmark is large, and the thing stands out of its mouth by half."""
    if landmark.mouth is None:
        raise ValueError("nothing can be put into this thing")
    x, height, _ = (part * _LARGE for part in landmark.mouth)
    size = _size_inside(thing, landmark)
    # Through a door on the ground the whole thing is seen.
    sunk = thing.height * size * 0.42 if height else 0.0
    return (
        ("shade", (_shadow(landmark, 0, 0, _LARGE),)),
        ("landmark", put(landmark.back, 0, 0, _LARGE)),
        ("thing", put(thing.shapes, x, -height + sunk, size)),
        ("landmark", put(landmark.front, 0, 0, _LARGE)),
    )


def _size_beneath(thing: Thing, landmark: Thing) -> float:
    _, high, half = landmark.room or (0.0, 0.0, 0.0)
    return min(1.0, high * 1.3 / thing.height, 2 * half * 1.3 / thing.width)


def _beneath(thing: Thing, landmark: Thing) -> Parts:
    """In the room between a landmark's legs or below its crown."""
    x = landmark.room[0] * 1.3 if landmark.room else 0.0
    size = _size_beneath(thing, landmark)
    return (
        ("shade", (_shadow(landmark, 0, 0, 1.3),)),
        ("landmark", put(landmark.back, 0, 0, 1.3)),
        ("thing", put(thing.shapes, x, 0, size)),
        ("landmark", put(landmark.front, 0, 0, 1.3)),
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


def why_not(place: Place) -> str | None:
    """Why no picture can show `place`, or None when one can."""
    thing, landmark = place.thing, place.landmark
    unknown = [name for name in (thing, landmark) if name not in THINGS]
    if unknown:
        return f"there is no drawing of {unknown[0]}"
    if thing == landmark:
        return "a thing is not placed by itself"
    reason = None
    match place.relation:
        case Relation.IN:
            reason = _why_not_in(thing, landmark)
        case Relation.ON:
            reason = _why_not_on(thing, landmark)
        case Relation.UNDER:
            reason = _why_not_under(thing, landmark)
        case Relation.IN_FRONT_OF:
            reason = _why_not_before(thing, landmark)
        case Relation.BEHIND:
            reason = _why_not_before(landmark, thing)
        case Relation.NEXT_TO:
            pass
    return reason


def _why_not_under(thing: str, landmark: str) -> str | None:
    below, above = UPRIGHT[thing](), THINGS[landmark]()
    if above.room is None:
        return _why_not_on(landmark, thing)
    if below.bulk > 2 or _size_beneath(below, above) < 0.5:
        return f"there is no room for {thing} under {landmark}"
    return None


def _why_not_in(thing: str, landmark: str) -> str | None:
    inner, outer = UPRIGHT[thing](), OPEN[landmark]()
    if outer.mouth is None:
        return f"nothing can be in {landmark}"
    if inner.bulk > outer.bulk or inner.bulk == 3:
        return f"{thing} does not go into {landmark}"
    lost = inner.height < 14 or (inner.thin and inner.height > 30)
    size = _size_inside(inner, outer)
    if lost or size < 0.6:
        return f"{thing} would not be seen in {landmark}"
    if outer.mouth[1] and size < 1 and inner.height < inner.width / 2:
        return f"{thing} would look to lie on {landmark}"
    return None


def _why_not_on(upper: str, lower: str) -> str | None:
    above, below = THINGS[upper](), CLOSED[lower]()
    if not below.flat:
        return f"nothing stands on {lower}"
    if above.bulk > below.bulk or above.bulk == 3:
        return f"{upper} does not stand on {lower}"
    return None


def _why_not_before(near: str, far: str) -> str | None:
    front, back = UPRIGHT[near](), UPRIGHT[far]()
    if front.thin or sum(front.core) < 16:
        return f"{near} is too thin to hide anything"
    if back.thin or back.height < 0.62 * front.height or back.height < 20:
        return f"{near} would hide {far}, or not touch it"
    if back.bulk == 3 and front.bulk == 1 and sum(front.core) < 24:
        return f"{near} hides too little of {far}"
    return f"{near} would hide {far}" if front.bulk == 3 and back.bulk < 3 else None


def parts(place: Place) -> Parts:
    """The shapes of `place` in painting order, each group with what it is part of.

    The located thing is on the left where sides apply. Names: shade, thing, landmark.
    Raises: KeyError for a thing that has no drawing, ValueError for one that holds nothing.
    """
    thing, landmark = place.thing, place.landmark
    made: Parts
    match place.relation:
        case Relation.IN:
            made = _inside(UPRIGHT[thing](), OPEN[landmark]())
        case Relation.ON:
            made = _upon(THINGS[thing](), CLOSED[landmark](), ("thing", "landmark"))
        case Relation.UNDER if THINGS[landmark]().room is not None:
            made = _beneath(UPRIGHT[thing](), THINGS[landmark]())
        case Relation.UNDER:
            made = _upon(THINGS[landmark](), CLOSED[thing](), ("landmark", "thing"))
        case Relation.IN_FRONT_OF:
            made = _before(UPRIGHT[thing](), UPRIGHT[landmark](), ("thing", "landmark"))
        case Relation.BEHIND:
            turned = _before(UPRIGHT[landmark](), UPRIGHT[thing](), ("landmark", "thing"))
            made = tuple((name, tuple(map(mirrored, shapes))) for name, shapes in turned)
        case Relation.NEXT_TO:
            made = _beside(UPRIGHT[thing](), UPRIGHT[landmark]())
    return made


def arrange(place: Place) -> tuple[Shape, ...]:
    """Every shape of `place`, as `parts` gives them."""
    return tuple(shape for _, shapes in parts(place) for shape in shapes)
