"""Pictures drawn once for the size they are shown at, also ahead of time."""

from __future__ import annotations

from functools import lru_cache

from drills.core.cells import Cells, Encoding
from drills.core.meanings import Scene
from drills.gestures import frames
from drills.pictures import draw
from drills.pictures import frames as scene_frames

SCENE_FRAME_SECONDS = 0.25


@lru_cache(maxsize=48)
def pictures(
    scenes: tuple[Scene, ...], *, columns: int, lines: int, encoding: Encoding
) -> tuple[Cells, ...]:
    """`scenes` at one common scale. Safe to call from any thread."""
    return draw(scenes, columns=columns, lines=lines, encoding=encoding)


@lru_cache(maxsize=16)
def moving(scene: Scene, *, columns: int, lines: int, encoding: Encoding) -> tuple[Cells, ...]:
    """The act as it happens, a round of frames; one frame where nothing moves."""
    return scene_frames(scene, columns=columns, lines=lines, encoding=encoding)


@lru_cache(maxsize=8)
def gesture_frames(
    drawing: str, *, columns: int, lines: int, encoding: Encoding
) -> tuple[Cells, ...]:
    """One round of the movement. Safe to call from any thread."""
    return frames(drawing, columns=columns, lines=lines, encoding=encoding)
