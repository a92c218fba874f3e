"""A thing that can be somewhere: it stands on its base at (0, 0), about 30 units wide."""

from __future__ import annotations

from dataclasses import dataclass

from drills.pictures.shapes import Shape


@dataclass(frozen=True, slots=True, kw_only=True)
class Thing:
    """A painted thing.

    back: what lies behind something put into it.   front: the rest.
    rest, rest_at: height and x at which a thing stands on it.
    core: how far its bulk, that can hide things, reaches to the left and right of x = 0.
    mouth: (x, height, half width) of its opening, None when nothing can be in it.
    room: (x, height, half width) of the space beneath it, None when nothing fits under it.
    bulk: 1 is held in a hand, 2 in two arms, 3 by nobody.   flat: things can stand on it.
    thin: hides too little of what is behind it, and is itself lost when half hidden.
    """

    back: tuple[Shape, ...]
    front: tuple[Shape, ...]
    width: float
    height: float
    rest: float
    rest_at: float = 0.0
    core: tuple[float, float] = (13.0, 13.0)
    mouth: tuple[float, float, float] | None = None
    room: tuple[float, float, float] | None = None
    bulk: int = 1
    flat: bool = True
    thin: bool = False

    @property
    def shapes(self) -> tuple[Shape, ...]:
        return self.back + self.front
